//! Pictures of the built page: each screen in landscape and in portrait, in light and in dark.

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::progress::say;
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result};

/// Takes the pictures into `dist/shots`. `--spanish` among the screens: in Spanish. A screen may be followed by what is
/// tapped on it, by the words there: `library~Whites~Gannet`.
///
/// # Errors
/// [`anyhow::Error`] if the page is not built, or there is no such screen or nothing of those words.
pub async fn take(workspace: &Workspace, words: &[String]) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    let spanish = words.iter().any(|word| word == "--spanish");
    let mut screens: Vec<&str> =
        words.iter().map(|word| word.trim_start_matches('#')).filter(|word| *word != "--spanish").collect();
    if screens.is_empty() {
        screens.push(DeskScreen::Job.address());
    }
    for (held, tablet) in [("landscape", fixture.tablet()), ("portrait", fixture.tablet().portrait())] {
        for (colours, tablet) in [("light", tablet.clone()), ("dark", tablet.dark())] {
            let desk = tablet.open_file().await?;
            if spanish {
                desk.change_language().await?;
            }
            for wish in &screens {
                let name = show(&desk, wish).await?;
                let path = workspace.dist().join(format!("shots/{name}-{held}-{colours}.png"));
                write(&path, desk.session().screenshot().await?)?;
                say(&format!("    {}", path.display()));
            }
            desk.close().await?;
        }
    }
    Ok(())
}

/// Turns to a screen and taps what is wished for there; hands back a name for the picture.
async fn show(desk: &DeskPage, wish: &str) -> Result<String> {
    let mut wish = wish.split('~');
    let address = wish.next().unwrap_or_default();
    let screen = DeskScreen::ALL.into_iter().find(|screen| screen.address() == address);
    desk.go_to(screen.with_context(|| format!("there is no screen `{address}`"))?).await?;
    let mut name = address.to_owned();
    for words in wish {
        desk.button(words).tap().await?;
        desk.settle().await?;
        name += &format!("-{}", words.replace(|it: char| !it.is_alphanumeric(), "-"));
    }
    Ok(name)
}
