//! Pictures of the built page: each screen held both ways, in light and in dark.

use crate::browser::bench::Bench;
use crate::steps::say;
use crate::workshop::Workshop;
use anyhow::Result;

/// Takes the pictures into `dist/shots`.
pub async fn take(workshop: &Workshop, screens: &[String]) -> Result<()> {
    let bench = Bench::set_up(workshop).await?;
    let first = [String::new()];
    let screens = if screens.is_empty() { &first } else { screens };
    for (held, tablet) in [("landscape", bench.tablet()), ("portrait", bench.tablet().upright())] {
        for (colours, tablet) in [("light", tablet.clone()), ("dark", tablet.dark())] {
            let desk = tablet.opens_the_file().await?;
            for screen in screens {
                let screen = screen.trim_start_matches('#');
                desk.goes_to(&format!("{}#{screen}", bench.file()?)).await?;
                desk.settles().await?;
                let name = if screen.is_empty() { "first" } else { screen };
                let path = workshop.dist().join(format!("shots/{name}-{held}-{colours}.png"));
                desk.picture(&path).await?;
                say(&format!("    {}", path.display()));
            }
            desk.is_closed().await?;
        }
    }
    Ok(())
}
