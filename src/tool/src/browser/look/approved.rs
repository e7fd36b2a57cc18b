//! The look of the page as it was approved: a few pictures in `tests/approved`, compared with the page as it is.
//!
//! The page takes its fonts from the system. For a picture it is made to use the last ones in its list, DejaVu's, which are the
//! same file on every Linux; where they are missing, nothing can be compared.

use crate::browser::fixture::Fixture;
use crate::browser::look::picture::{Picture, SHARE};
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::progress::{bytes, say};
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result, bail, ensure};

/// One picture, and how the page comes to look so.
struct Look {
    name: &'static str,
    screen: DeskScreen,
    portrait: bool,
    dark: bool,
    spanish: bool,
}

/// The pictures, in the order in which one page shows them. Each shows something that no other does.
const LOOKS: [Look; 6] = [
    Look { name: "job", screen: DeskScreen::Job, portrait: false, dark: false, spanish: false },
    Look { name: "window", screen: DeskScreen::Window, portrait: false, dark: false, spanish: false },
    Look { name: "forecast-dark", screen: DeskScreen::Forecast, portrait: false, dark: true, spanish: false },
    Look {
        name: "sheet-portrait",
        screen: DeskScreen::JobSheet,
        portrait: true,
        dark: false,
        spanish: false,
    },
    Look { name: "job-portrait-dark-es", screen: DeskScreen::Job, portrait: true, dark: true, spanish: true },
    Look {
        name: "diagnosis-portrait-es",
        screen: DeskScreen::Diagnosis,
        portrait: true,
        dark: false,
        spanish: true,
    },
];

/// Sets the clock to a fixed moment, Saturday 28 November 2026, 9:00: the sheet says when it was printed.
const SAME_DAY: &str = "const { Date: Calendar } = window;
    window.Date = class extends Calendar {
        constructor(...given) { if (given.length) super(...given); else super(2026, 10, 28, 9); }
        static now() { return new this().getTime(); }
    };";

/// Draws the page in DejaVu's fonts and says whether they are there: where they are not, the next font of the list is
/// measured.
const USE_DEJAVU: &str = "const fonts = { '--face-words': 'DejaVu Serif Condensed', '--face-plate': 'DejaVu Sans Condensed' };
    const brush = document.createElement('canvas').getContext('2d');
    const width = (font) => { brush.font = '40px ' + font; return brush.measureText('Whitehold 0123').width; };
    for (const [part, font] of Object.entries(fonts)) {
        const missing = (other) => width(`\"${font}\", ${other}`) !== width(`\"${font}\", sans-serif`);
        if (['monospace', 'cursive'].some(missing)) return false;
        desk.style.setProperty(part, `\"${font}\"`);
    }
    return true;";

/// What is to be done where the fonts are missing.
const NO_FONTS: &str = "DejaVu's fonts are not here (Debian: fonts-dejavu-core, fonts-dejavu-extra)";

/// Takes every picture, one after another on one page, or nothing where the fonts are missing.
async fn take_all(fixture: &Fixture) -> Result<Option<Vec<Picture>>> {
    let desk = fixture.tablet().changed_by(SAME_DAY).open_file().await?;
    if desk.run(USE_DEJAVU, vec![]).await? != true {
        desk.close().await?;
        return Ok(None);
    }
    let mut taken = Vec::new();
    for look in &LOOKS {
        let tablet = if look.portrait { fixture.tablet().portrait() } else { fixture.tablet() };
        let tablet = if look.dark { tablet.dark() } else { tablet };
        tablet.apply_to(desk.session()).await?;
        if (desk.language().await? == "es") != look.spanish {
            desk.change_language().await?;
        }
        desk.go_to(look.screen).await?;
        if look.screen == DeskScreen::Diagnosis {
            desk.diagnosis().white_turned().tap().await?;
            desk.settle().await?;
        }
        taken.push(at_rest(&desk).await?);
        if taken.len() == 1 {
            another_digit_counts(&desk, &taken[0]).await?;
        }
    }
    desk.close().await?;
    Ok(Some(taken))
}

/// Changes the last digit of the set temperature, or writes back what was there; hands back what was there.
const CHANGE_DIGIT: &str = "const figure = find(PARTS.setTemperature);
    const text = document.createTreeWalker(figure, NodeFilter.SHOW_TEXT).nextNode();
    const was = text.data;
    text.data = arguments[0] ?? was.replace(/[0-9](?=\\D*$)/, (digit) => (Number(digit) + 5) % 10);
    return was;";

/// That the comparison notices anything at all: one digit of the dryer's setting is another.
async fn another_digit_counts(desk: &DeskPage, picture: &Picture) -> Result<()> {
    let was = desk.run(CHANGE_DIGIT, vec![]).await?;
    let difference = picture.differs(&at_rest(desk).await?)?;
    ensure!(difference.counts(), "another digit than in {was} is no change: {}", difference.share);
    desk.run(CHANGE_DIGIT, vec![was]).await.map(drop)
}

/// The screen once it no longer changes: what was tapped last may still fade.
async fn at_rest(desk: &DeskPage) -> Result<Picture> {
    desk.run("root.activeElement?.blur(); scrollTo(0, 0);", vec![]).await?;
    let mut last = desk.session().screenshot().await?;
    for _ in 0..20 {
        tokio::time::sleep(std::time::Duration::from_millis(150)).await;
        let next = desk.session().screenshot().await?;
        if next == last {
            return Picture::read(&next);
        }
        last = next;
    }
    bail!("the screen does not come to rest")
}

/// Renews the approved pictures.
///
/// # Errors
/// [`anyhow::Error`] if a picture cannot be taken.
pub async fn renew(workspace: &Workspace) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    for (look, picture) in LOOKS.iter().zip(take_all(&fixture).await?.context(NO_FONTS)?) {
        let path = workspace.root.join(format!("tests/approved/{}.png", look.name));
        let png = picture.png()?;
        say(&format!("    {}, {}", path.display(), bytes(png.len())));
        write(&path, png)?;
    }
    Ok(())
}

/// Compares the page with every approved picture; what differs is left in `dist/shots`.
///
/// # Errors
/// [`anyhow::Error`] that names each picture that differs, and by how much.
pub async fn compare(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: letters are drawn otherwise than on Linux, where the pictures were approved");
        return Ok(());
    }
    let Some(taken) = take_all(fixture).await? else {
        say(&format!("    left out: {NO_FONTS}"));
        return Ok(());
    };
    let mut wrong = Vec::new();
    for (look, now) in LOOKS.iter().zip(&taken) {
        if let Err(error) = is_as_approved(fixture, look.name, now) {
            wrong.push(format!("{}: {error:#}", look.name));
        }
    }
    ensure!(
        wrong.is_empty(),
        "{}\nIf that is how it should look: `cargo xtask shots --approve`, and look at what it wrote",
        wrong.join("\n")
    );
    Ok(())
}

fn is_as_approved(fixture: &Fixture, name: &str, now: &Picture) -> Result<()> {
    let approved = fixture.workspace.root.join(format!("tests/approved/{name}.png"));
    let approved =
        std::fs::read(&approved).with_context(|| format!("{} is not there", approved.display()))?;
    let difference = Picture::read(&approved)?.differs(now)?;
    if !difference.counts() {
        return Ok(());
    }
    let folder = fixture.workspace.dist().join("shots");
    let path = folder.join(format!("{name}-changed.png"));
    write(&path, difference.seen.png()?)?;
    write(&folder.join(format!("{name}-now.png")), now.png()?)?;
    bail!(
        "{:.3} % of it is another than approved, {:.3} % may be; see {}",
        100.0 * difference.share,
        100.0 * SHARE,
        path.display()
    )
}
