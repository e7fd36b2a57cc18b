//! The look of the page as it was approved: a few pictures in `tests/approved`, compared with the page as it is.
//!
//! The page takes its letters from the system it runs on. For a picture it is told to take the last ones that it names,
//! DejaVu's, which are the same file on every Linux; where they are missing, nothing can be compared.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use crate::browser::look::picture::{Picture, SHARE};
use crate::host::progress::{bytes, say};
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result, bail, ensure};

/// One picture, and how the page comes to look so.
struct Look {
    name: &'static str,
    screen: &'static str,
    upright: bool,
    dark: bool,
    spanish: bool,
    /// What is tapped on the screen first, by its `data-do`.
    taps: &'static [&'static str],
}

/// Few, and each for something that no other shows; in the order in which one page comes to show them.
const LOOKS: [Look; 6] = [
    Look { name: "job", screen: "job", upright: false, dark: false, spanish: false, taps: &[] },
    Look { name: "window", screen: "window", upright: false, dark: false, spanish: false, taps: &[] },
    Look { name: "forecast-dark", screen: "forecast", upright: false, dark: true, spanish: false, taps: &[] },
    Look { name: "sheet-upright", screen: "sheet", upright: true, dark: false, spanish: false, taps: &[] },
    Look { name: "job-upright-dark-es", screen: "job", upright: true, dark: true, spanish: true, taps: &[] },
    Look {
        name: "wrong-upright-es",
        screen: "wrong",
        upright: true,
        dark: false,
        spanish: true,
        taps: &["0"],
    },
];

/// Every day is the same Saturday at nine: the sheet says when it was printed and when to look again.
const SAME_DAY: &str = "const { Date: Calendar } = window;
    window.Date = class extends Calendar {
        constructor(...given) { if (given.length) super(...given); else super(2026, 10, 28, 9); }
        static now() { return new this().getTime(); }
    };";

/// Takes DejaVu's letters, and says whether they are there: where they are not, the next face of the list is measured.
const LETTERS: &str = "const faces = { '--face-words': 'DejaVu Serif Condensed', '--face-plate': 'DejaVu Sans Condensed' };
    const brush = document.createElement('canvas').getContext('2d');
    const wide = (face) => { brush.font = '40px ' + face; return brush.measureText('Whitehold 0123').width; };
    for (const [part, face] of Object.entries(faces)) {
        if (['monospace', 'cursive'].some((other) => wide(`\"${face}\", ${other}`) !== wide(`\"${face}\", sans-serif`))) return false;
        document.querySelector('whitehold-desk').style.setProperty(part, `\"${face}\"`);
    }
    return true;";

/// What is to be done where the letters are missing.
const NO_LETTERS: &str = "DejaVu's letters are not here (Debian: fonts-dejavu-core, fonts-dejavu-extra)";

/// Takes every picture, one after another on one page, or nothing where the letters are missing.
async fn takes(fixture: &Fixture) -> Result<Option<Vec<Picture>>> {
    let desk = fixture.tablet().without(SAME_DAY).opens_the_file().await?;
    desk.shows("#verdict").await?;
    if desk.run(LETTERS, vec![]).await? != true {
        desk.is_closed().await?;
        return Ok(None);
    }
    let mut taken = Vec::new();
    for look in &LOOKS {
        let tablet = if look.upright { fixture.tablet().upright() } else { fixture.tablet() };
        let tablet = if look.dark { tablet.dark() } else { tablet };
        tablet.is_held_to(&desk).await?;
        let spanish = desk.run("return document.documentElement.lang === 'es'", vec![]).await?;
        if spanish != look.spanish {
            desk.taps("#language").await?;
        }
        desk.goes_to(&format!("{}#{}", fixture.page.file()?, look.screen)).await?;
        desk.settles().await?;
        for act in look.taps {
            desk.taps(&format!("[data-do=\"{act}\"]")).await?;
            desk.settles().await?;
        }
        taken.push(is_still(&desk).await?);
        if taken.len() == 1 {
            another_digit_counts(&desk, &taken[0]).await?;
        }
    }
    desk.is_closed().await?;
    Ok(Some(taken))
}

/// That the comparison notices anything at all: one digit of the dryer's setting is another.
async fn another_digit_counts(desk: &Desk, picture: &Picture) -> Result<()> {
    let change =
        "const air = document.querySelector('whitehold-desk').shadowRoot.querySelector('[data-fact=air]');
        const text = document.createTreeWalker(air, NodeFilter.SHOW_TEXT).nextNode();
        const was = text.data;
        text.data = arguments[0] ?? was.replace(/[0-9](?=\\D*$)/, (digit) => (Number(digit) + 5) % 10);
        return was;";
    let was = desk.run(change, vec![]).await?;
    let difference = picture.differs(&is_still(desk).await?)?;
    ensure!(difference.counts(), "another digit than in {was} is no change: {}", difference.share);
    desk.run(change, vec![was]).await?;
    Ok(())
}

/// The screen once it no longer changes: what was tapped last may still fade.
async fn is_still(desk: &Desk) -> Result<Picture> {
    desk.run("const root = document.querySelector('whitehold-desk').shadowRoot; root.activeElement?.blur(); scrollTo(0, 0);", vec![])
        .await?;
    let mut last = desk.photograph().await?;
    for _ in 0..20 {
        tokio::time::sleep(std::time::Duration::from_millis(150)).await;
        let next = desk.photograph().await?;
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
/// When a picture cannot be taken.
pub async fn renew(workspace: &Workspace) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    for (look, picture) in LOOKS.iter().zip(takes(&fixture).await?.context(NO_LETTERS)?) {
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
/// Names each picture that is another one, and by how much.
pub async fn compare(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: letters are drawn otherwise than on Linux, where the pictures were approved");
        return Ok(());
    }
    let Some(taken) = takes(fixture).await? else {
        say(&format!("    left out: {NO_LETTERS}"));
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
