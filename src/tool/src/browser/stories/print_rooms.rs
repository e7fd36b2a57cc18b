//! A shop of one's own: five taps and its first order; and what went wrong there.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Result, ensure};

/// A new shop sets up and plans its first order; what it said is there after a reload.
pub async fn a_new_shop_sets_up_and_plans_its_first_order(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.opens(&address).await?;
        desk.shows("#verdict").await?;
        desk.taps("nav a[href='#shop']").await?;
        desk.says(".none", "demo print room").await?;
        desk.says("#missing", "Still missing").await?;
        for act in ["shelf:chalk", "shelf:tern", "shelf:gannet", "dryer:long-kiln", "money:€"] {
            desk.taps(&format!("[data-do=\"{act}\"]")).await?;
            desk.settles().await?;
        }
        desk.taps("[data-do^=\"mesh:\"]").await?;
        desk.shows("[data-do=\"open\"]").await?;
        desk.types("#heated_length", "2.2").await?;
        desk.taps("[data-do=\"open\"]").await?;
        desk.says(".order", "The garment").await?;
        // The desk moved on by itself, and Back leads to where one came from all the same.
        desk.run("history.back()", vec![]).await?;
        desk.says("#stock", "Gannet").await?;
        desk.run("history.forward()", vec![]).await?;
        desk.says(".order", "The garment").await?;
        desk.types("#label", "100% cotton jersey, 180 g/m2, black").await?;
        desk.says(".facts", "Chalk").await?;
        desk.says("[data-fact='air']", "°C").await?;
        desk.taps("nav a[href='#shop']").await?;
        desk.says("#stock", "Gannet").await?;
        desk.settles().await?;
        desk.reloads().await?;
        desk.says("#stock", "Gannet").await?;
        // One step back takes the opening back: the demo stands there again.
        desk.taps(".head [aria-label=\"Undo\"]").await?;
        desk.says(".none", "demo print room").await?;
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

/// A print that turned pink after it was run too hot: the heat is named first, with what to do.
pub async fn a_white_that_turned_is_traced_to_the_heat(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.taps("nav a[href='#wrong']").await?;
    desk.says("#causes", "Tap what is seen").await?;
    desk.taps("[data-do='0']").await?;
    desk.says("#compare", "As planned it shows in").await?;
    desk.types("#ran_air", "175").await?;
    desk.says(".causes li", "dialled too hot").await?;
    desk.types("#ran_air", "cold").await?;
    desk.says("[data-error-for='ran_air']", "cold").await?;
    desk.types("#ran_air", "").await?;
    desk.says("#compare", "run as planned").await?;
    desk.taps("#language").await?;
    desk.says("#compare", "se hizo como se planeó").await?;
    let causes = desk.run("return document.querySelector('whitehold-desk').shadowRoot.querySelectorAll('.causes li').length", vec![]).await?;
    ensure!(causes.as_u64().unwrap_or(0) >= 2, "there is but one cause");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// The settings change what every screen says, and say when the records were last taken away.
pub async fn the_settings_hold_on_every_screen(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.taps("nav a[href='#settings']").await?;
    desk.says("#backup", "Never saved").await?;
    desk.taps("[data-do=\"units\"]").await?;
    desk.taps("[data-do=\"language\"]").await?;
    desk.says("#q-theme", "Colores").await?;
    desk.taps("[data-do=\"theme:dark\"]").await?;
    desk.taps("[data-do=\"transfer:less\"]").await?;
    desk.says(".settings", "según su impresión pesada").await?;
    desk.taps("[data-do=\"transfer:forget\"]").await?;
    desk.taps("[data-do=\"money:€\"]").await?;
    desk.settles().await?;
    desk.taps("nav a[href='#job']").await?;
    desk.says("[data-fact='air']", "°F").await?;
    let dark = desk.run("return document.querySelector('whitehold-desk').dataset.theme", vec![]).await?;
    ensure!(dark == "dark", "the theme is {dark}");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
