//! Days at the press: a rush job in red polyester, and a day in Spanish.

use crate::browser::drive::fixture::Fixture;
use anyhow::{Result, ensure};

/// A red polyester rush job: haste does not make it a bare go, and the sheet carries the same verdict and the days to look.
pub async fn a_red_polyester_rush_job_goes_to_the_press_with_its_care(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.opens(&address).await?;
        desk.shows("#verdict").await?;
        desk.types("#label", "100% polyester interlock, 150 g/m2, red").await?;
        desk.says("#understood", "polyester").await?;
        desk.types("#lot", "RUSH-1").await?;
        desk.run("document.querySelector('whitehold-desk').shadowRoot.querySelector('#q-most + .seg button:nth-child(6)').click()", vec![]).await?;
        desk.settles().await?;
        let verdict = desk.shows("#verdict").await?;
        ensure!(verdict != "Go", "red polyester in a hurry is a bare go");
        desk.taps("nav a[href='#window']").await?;
        desk.says(".win", "m/min").await?;
        desk.taps("nav a[href='#sheet']").await?;
        desk.says(".p-verdict", &verdict).await?;
        desk.says(".paper", "RUSH-1").await?;
        desk.says(".p-looks", "the kept piece").await?;
        desk.run("history.back()", vec![]).await?;
        desk.says(".win", "m/min").await?;
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

/// A day in Spanish, from the first order to the sheet and to what went wrong; decimals take a comma.
pub async fn a_spanish_speaking_operator_works_the_day(fixture: &Fixture) -> Result<()> {
    for (tablet, address) in fixture.both_ways()? {
        let desk = tablet.opens(&address).await?;
        desk.shows("#verdict").await?;
        desk.taps("#language").await?;
        desk.types("#label", "50% algodón 50% poliéster, punto, 185 g/m2, rojo").await?;
        desk.says("#understood", "algodón").await?;
        for (screen, says) in [
            ("window", "Ventana"),
            ("forecast", "blanco"),
            ("shop", "taller de muestra"),
            ("library", "Biblioteca"),
            ("wrong", "¿Qué se ve en la impresión?"),
            ("sheet", "Primera pieza"),
            ("settings", "Humedad de la sala"),
        ] {
            desk.taps(&format!("nav a[href='#{screen}']")).await?;
            desk.settles().await?;
            let seen = desk
                .run(
                    "return document.querySelector('whitehold-desk').shadowRoot.querySelector('.desk').innerText",
                    vec![],
                )
                .await?;
            let seen = seen.as_str().unwrap_or_default().to_lowercase();
            ensure!(
                seen.contains(&says.to_lowercase()) || screen == "sheet" && seen.contains("límites"),
                "{screen} does not say `{says}`: {}",
                seen.chars().take(600).collect::<String>()
            );
        }
        desk.taps("nav a[href='#wrong']").await?;
        desk.taps("[data-do='0']").await?;
        desk.types("#ran_belt", "1,2").await?;
        desk.says("#compare", "Como se hizo").await?;
        let tongue = desk.run("return document.documentElement.lang", vec![]).await?;
        ensure!(tongue == "es", "the page says that it is in {tongue}");
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}
