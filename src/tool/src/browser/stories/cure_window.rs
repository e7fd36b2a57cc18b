//! The cure window, looked at and dragged.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Result, ensure};
use serde_json::json;

pub async fn a_closed_window_shows_its_map_and_what_opens_it(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().upright().dark()] {
        let desk = tablet.opens_the_file().await?;
        desk.shows("#verdict").await?;
        // Acrylic goes soft below the heat of every white on the demo's shelf.
        desk.types("#label", "100% acrylic jersey, 160 g/m2, black").await?;
        desk.shows(".plate-no").await?;
        desk.taps(".plate a[href='#window']").await?;
        desk.says(".plate-word", "closed").await?;
        desk.shows(".side .if-row").await?;
        let cells = desk.run(
            "return document.querySelector('whitehold-desk').shadowRoot.querySelectorAll('#map path').length",
            vec![],
        );
        ensure!(cells.await?.as_u64() > Some(3), "the map of a closed window is empty");
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

pub async fn a_dragged_set_point_says_where_it_fails(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.goes_to(&format!("{}#window", fixture.page.file()?)).await?;
    desk.says("#say", "Inside").await?;
    let boxes = "const root = document.querySelector('whitehold-desk').shadowRoot;
        root.querySelector('#map').scrollIntoView({ block: 'center' });
        return ['#set-point', '#map'].flatMap((id) => {
            const box = root.querySelector(id).getBoundingClientRect();
            return [box.x, box.y, box.width, box.height];
        });";
    let boxes = desk.run(boxes, vec![]).await?;
    let at = |index: usize| boxes[index].as_f64().unwrap_or_default();
    let (x, y) = (at(0) + at(2) / 2.0, at(1) + at(3) / 2.0);
    let point = |kind: &str, x: f64, y: f64, buttons: u32| json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1 });
    desk.devtools("Input.dispatchMouseEvent", point("mousePressed", x, y, 1)).await?;
    // Right is a faster belt and down a cooler dryer: the film does not fuse there.
    let (corner_x, corner_y) = (at(4) + at(6) * 0.9, at(5) + at(7) * 0.8);
    for step in 1..=10 {
        let share = f64::from(step) / 10.0;
        let moved = point("mouseMoved", x + (corner_x - x) * share, y + (corner_y - y) * share, 1);
        desk.devtools("Input.dispatchMouseEvent", moved).await?;
    }
    desk.devtools("Input.dispatchMouseEvent", point("mouseReleased", corner_x, corner_y, 0)).await?;
    desk.picture(&fixture.workspace.dist().join("shots/drag.png")).await?;
    desk.says("#say", "Outside").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
