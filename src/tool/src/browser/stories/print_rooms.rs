//! A shop of one's own: five taps and its first order; and what went wrong there.

use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use anyhow::{Result, ensure};

/// A new shop sets up and plans its first order; what it said is there after a reload.
pub async fn a_new_shop_sets_up_and_plans_its_first_order(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.open_desk(&address).await?;
        let (job, room) = (desk.job(), desk.print_room());
        desk.turn_to(DeskScreen::PrintRoom).await?;
        room.demo_note().says("demo print room").await?;
        room.missing().says("Still missing").await?;
        let whites = ["Chalk", "Tern", "Gannet"].map(|name| room.white(name));
        for answer in whites.into_iter().chain([room.dryer("Long Kiln"), room.money("€"), room.meshes()]) {
            answer.tap().await?;
            desk.settle().await?;
        }
        room.open().read().await?;
        room.heated_length().fill("2.2").await?;
        room.open().tap().await?;
        job.form().says("The garment").await?;
        // The desk moved on by itself, and Back leads to where one came from all the same.
        desk.go_back().await?;
        room.stock().says("Gannet").await?;
        desk.go_forward().await?;
        job.form().says("The garment").await?;
        job.label().fill("100% cotton jersey, 180 g/m2, black").await?;
        job.facts().says("Chalk").await?;
        job.set_temperature().says("°C").await?;
        desk.turn_to(DeskScreen::PrintRoom).await?;
        room.stock().says("Gannet").await?;
        desk.settle().await?;
        desk.reload().await?;
        room.stock().says("Gannet").await?;
        // One step back takes the opening back: the demo is there again.
        desk.undo().await?;
        room.demo_note().says("demo print room").await?;
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

/// A print that turned pink after it was run too hot: the heat is named first, with what to do.
pub async fn a_white_that_turned_is_traced_to_the_heat(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let diagnosis = desk.diagnosis();
    desk.turn_to(DeskScreen::Diagnosis).await?;
    diagnosis.says().says("Tap what is seen").await?;
    diagnosis.white_turned().tap().await?;
    diagnosis.compared().says("As planned it shows in").await?;
    diagnosis.run_temperature().fill("175").await?;
    diagnosis.causes().says("dialled too hot").await?;
    diagnosis.run_temperature().fill("cold").await?;
    diagnosis.run_temperature_error().says("cold").await?;
    diagnosis.run_temperature().fill("").await?;
    diagnosis.compared().says("run as planned").await?;
    desk.change_language().await?;
    diagnosis.compared().says("se hizo como se planeó").await?;
    let causes = diagnosis.causes().count().await?;
    ensure!(causes >= 2, "{causes} causes are named");
    desk.has_no_complaints().await?;
    desk.close().await
}

/// The settings change what every screen says, and say when the records were last saved as a file.
pub async fn the_settings_hold_on_every_screen(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let settings = desk.settings();
    desk.turn_to(DeskScreen::Settings).await?;
    settings.backup().says("Never saved").await?;
    settings.units("°F").tap().await?;
    settings.language("Español").tap().await?;
    settings.theme_head().says("Colores").await?;
    settings.theme("Oscuros").tap().await?;
    settings.button("Blanco que queda en la tela: menos").tap().await?;
    settings.all().says("según su impresión pesada").await?;
    settings.button("Volver a la práctica común").tap().await?;
    settings.money("€").tap().await?;
    desk.settle().await?;
    desk.turn_to(DeskScreen::Job).await?;
    desk.job().set_temperature().says("°F").await?;
    let theme = desk.theme().await?;
    ensure!(theme.as_deref() == Some("dark"), "the theme is {theme:?}");
    desk.has_no_complaints().await?;
    desk.close().await
}
