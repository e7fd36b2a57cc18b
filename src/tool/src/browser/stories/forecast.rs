//! How the white ages, looked at and dragged.

use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use anyhow::{Result, ensure};

pub async fn a_forecast_opens_by_its_address_and_follows_the_heat(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().portrait().dark()] {
        let desk = tablet.open_file().await?;
        desk.job().label().fill("100% polyester interlock, 150 g/m2, red").await?;
        desk.job().understood().says("polyester").await?;
        desk.go_to(DeskScreen::Forecast).await?;
        let forecast = desk.forecast();
        forecast.all().says("How the white ages").await?;
        forecast.all().says("Inside the film").await?;
        forecast.says().says("the limit is").await?;
        forecast.aged().says("that it shows before day 90").await?;
        forecast.aged().says("when it is due").await?;
        forecast.looks().says("When to look").await?;
        forecast.show_figures().tap().await?;
        for part in [
            "Where the dye went",
            "in the heat, as vapour",
            "If something is otherwise",
            "the dryer runs hot",
        ] {
            forecast.figures().says(part).await?;
        }
        let before = forecast.says().read().await?;
        forecast.slide_up(8).await?;
        desk.settle().await?;
        let after = forecast.says().read().await?;
        ensure!(before != after, "eight degrees more change nothing: {before}");
        desk.change_language().await?;
        forecast.says().says("el límite es").await?;
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

pub async fn a_cloth_without_dye_has_no_forecast(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    desk.job().label().fill("100% cotton jersey, 180 g/m2, red").await?;
    desk.job().understood().says("cotton").await?;
    desk.turn_to(DeskScreen::Forecast).await?;
    desk.forecast().nothing().says("no dye that travels").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
