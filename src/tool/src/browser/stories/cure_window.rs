//! The cure window, looked at and dragged.

use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use crate::host::workspace::write;
use anyhow::{Result, ensure};

pub async fn a_closed_window_shows_its_map_and_what_opens_it(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().portrait().dark()] {
        let desk = tablet.open_file().await?;
        // Polypropylene melts below the heat of every white on the demo's shelf.
        desk.job().label().fill("100% polypropylene jersey, 160 g/m2, black").await?;
        desk.job().refusal().read().await?;
        desk.job().show_window().tap().await?;
        desk.window().head().says("closed").await?;
        desk.window().openings().read().await?;
        let regions = desk.window().regions().count().await?;
        ensure!(regions > 3, "the map of a closed window has {regions} regions");
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

pub async fn a_dragged_set_point_says_where_it_fails(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    desk.go_to(DeskScreen::Window).await?;
    desk.window().says().says("Inside").await?;
    // Right is a faster belt and down a cooler dryer: the film does not fuse there.
    desk.window().drag_set_point(0.9, 0.8).await?;
    let picture = fixture.workspace.dist().join("shots/drag.png");
    write(&picture, desk.session().screenshot().await?)?;
    desk.window().says().says("Outside").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
