//! Days at the press: a rush job in red polyester, and a day in Spanish.

use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use anyhow::{Result, ensure};

/// A red polyester rush job: haste does not make it a bare go, and the sheet carries the same verdict and the days to look.
pub async fn a_red_polyester_rush_job_goes_to_the_press_with_its_care(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.open_desk(&address).await?;
        let (job, sheet) = (desk.job(), desk.job_sheet());
        job.label().fill("100% polyester interlock, 150 g/m2, red").await?;
        job.understood().says("polyester").await?;
        job.lot().fill("RUSH-1").await?;
        job.priorities().named("Fast").tap().await?;
        desk.settle().await?;
        let verdict = job.verdict().read().await?;
        ensure!(verdict != "Go", "red polyester in a hurry is a bare go");
        desk.turn_to(DeskScreen::Window).await?;
        desk.window().all().says("m/min").await?;
        desk.turn_to(DeskScreen::JobSheet).await?;
        sheet.verdict().says(&verdict).await?;
        sheet.paper().says("RUSH-1").await?;
        sheet.looks().says("the kept piece").await?;
        desk.go_back().await?;
        desk.window().all().says("m/min").await?;
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

/// What every screen says in Spanish; the sheet says it of the first piece, or of the limits where there is no room.
const SPANISH: [(DeskScreen, &[&str]); 7] = [
    (DeskScreen::Window, &["ventana"]),
    (DeskScreen::Forecast, &["blanco"]),
    (DeskScreen::PrintRoom, &["taller de muestra"]),
    (DeskScreen::Library, &["biblioteca"]),
    (DeskScreen::Diagnosis, &["¿qué se ve en la impresión?"]),
    (DeskScreen::JobSheet, &["primera pieza", "límites"]),
    (DeskScreen::Settings, &["humedad de la sala"]),
];

/// A day in Spanish, from the first order to the sheet and to what went wrong; decimals take a comma.
pub async fn a_spanish_speaking_operator_works_the_day(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.open_desk(&address).await?;
        desk.change_language().await?;
        desk.job().label().fill("50% algodón 50% poliéster, punto, 185 g/m2, rojo").await?;
        desk.job().understood().says("algodón").await?;
        for (screen, says) in SPANISH {
            desk.turn_to(screen).await?;
            desk.settle().await?;
            let seen = desk.everything().read().await?.to_lowercase();
            ensure!(
                says.iter().any(|words| seen.contains(words)),
                "{screen} says none of {says:?}: {}",
                seen.chars().take(600).collect::<String>()
            );
        }
        desk.turn_to(DeskScreen::Diagnosis).await?;
        desk.diagnosis().white_turned().tap().await?;
        desk.diagnosis().run_belt().fill("0,8").await?;
        desk.diagnosis().compared().says("Como se hizo").await?;
        let language = desk.language().await?;
        ensure!(language == "es", "the page says that it is in {language}");
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}
