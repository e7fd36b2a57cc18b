//! How the white ages, looked at and dragged.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Result, ensure};

/// Moves a slider as a finger does, a step at a time.
const SLIDE: &str =
    "const slide = document.querySelector('whitehold-desk').shadowRoot.querySelector('#air-slide');
    for (let step = 0; step < 8; step++) {
        slide.value = Number(slide.value) + 1;
        slide.dispatchEvent(new Event('input', { bubbles: true }));
    }
    slide.dispatchEvent(new Event('change', { bubbles: true }));";

pub async fn a_forecast_opens_by_its_address_and_follows_the_heat(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().upright().dark()] {
        let desk = tablet.opens_the_file().await?;
        desk.shows("#verdict").await?;
        desk.types("#label", "100% polyester interlock, 150 g/m2, red").await?;
        desk.says("#understood", "polyester").await?;
        desk.goes_to(&format!("{}#forecast", fixture.page.file()?)).await?;
        desk.says(".fore", "How the white ages").await?;
        desk.says(".fore", "Inside the film").await?;
        desk.says("#say", "the limit is").await?;
        desk.says("#aged-says", "that it shows before day 90").await?;
        desk.says("#aged-says", "when it is due").await?;
        desk.says(".looks", "When to look").await?;
        desk.taps("details.more summary").await?;
        for part in [
            "Where the dye went",
            "in the heat, as vapour",
            "If something is otherwise",
            "the dryer runs hot",
        ] {
            desk.says("details.more", part).await?;
        }
        let before = desk.shows("#say").await?;
        desk.run(SLIDE, vec![]).await?;
        desk.settles().await?;
        let after = desk.shows("#say").await?;
        ensure!(before != after, "eight degrees more change nothing: {before}");
        desk.taps("#language").await?;
        desk.says("#say", "el límite es").await?;
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

pub async fn a_cloth_without_dye_has_no_forecast(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.types("#label", "100% cotton jersey, 180 g/m2, red").await?;
    desk.says("#understood", "cotton").await?;
    desk.taps("nav a[href='#forecast']").await?;
    desk.says(".plate-say", "no dye that travels").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
