//! Pictures of the built page: each screen held both ways, in light and in dark.

use crate::browser::drive::fixture::Fixture;
use crate::host::progress::say;
use crate::host::workspace::Workspace;
use anyhow::Result;

/// Takes the pictures into `dist/shots`. `--spanish` among the screens: in Spanish. Behind a screen may stand what is
/// tapped on it, by its `data-do`: `library~look:3~see:5 long-kiln`.
pub async fn take(workspace: &Workspace, words: &[String]) -> Result<()> {
    let fixture = Fixture::set_up(workspace).await?;
    let spanish = words.iter().any(|word| word == "--spanish");
    let mut screens: Vec<&str> =
        words.iter().map(|word| word.trim_start_matches('#')).filter(|word| *word != "--spanish").collect();
    if screens.is_empty() {
        screens.push("");
    }
    for (held, tablet) in [("landscape", fixture.tablet()), ("portrait", fixture.tablet().upright())] {
        for (colours, tablet) in [("light", tablet.clone()), ("dark", tablet.dark())] {
            let desk = tablet.opens_the_file().await?;
            if spanish {
                desk.shows("#verdict").await?;
                desk.taps("#language").await?;
            }
            for wish in &screens {
                let mut wish = wish.split('~');
                let screen = wish.next().unwrap_or_default();
                desk.goes_to(&format!("{}#{screen}", fixture.page.file()?)).await?;
                desk.settles().await?;
                let mut name = if screen.is_empty() { "first".to_owned() } else { screen.to_owned() };
                for act in wish {
                    desk.taps(&format!("[data-do=\"{act}\"]")).await?;
                    desk.settles().await?;
                    name += &format!("-{}", act.replace(|it: char| !it.is_alphanumeric(), "-"));
                }
                let path = workspace.dist().join(format!("shots/{name}-{held}-{colours}.png"));
                desk.picture(&path).await?;
                say(&format!("    {}", path.display()));
            }
            desk.is_closed().await?;
        }
    }
    Ok(())
}
