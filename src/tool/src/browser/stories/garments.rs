//! One design on several garments, and a garment's colour from a meter.

use crate::browser::fixture::Fixture;
use crate::host::workspace::write;
use anyhow::Result;

pub async fn a_second_garment_brings_a_plan_for_all(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().portrait().dark()] {
        let desk = tablet.open_file().await?;
        let job = desk.job();
        job.add_garment().unfold().await?;
        job.add_garment().tap().await?;
        job.label().fill("100% cotton jersey, 150 g/m2, black").await?;
        job.garment_plan_rows().says("cotton").await?;
        job.garment_plan_rows().says("polyester").await?;
        job.understood().says("cotton").await?;
        job.garment_plans().says("the answer above is for this one").await?;
        desk.has_no_complaints().await?;
        desk.close().await?;
    }
    Ok(())
}

/// A meter's file: a bad one is refused by line and column, of a good one a sample is taken, and Undo takes it back.
pub async fn a_meter_file_colours_the_garment(fixture: &Fixture) -> Result<()> {
    let file = fixture.empty_folder("meter")?.join("meter.csv");
    let desk = fixture.tablet().open_file().await?;
    let job = desk.job();
    job.meter_file().unfold().await?;
    write(&file, "name,L*,a*,b*\nlot 7,138,58,35\n")?;
    job.meter_file().choose_file(&file).await?;
    job.meter().says("Line 2, column 7").await?;
    write(&file, "name,L*,a*,b*\nlot 7,38,58,35\nlot 8,20,5,-30\n")?;
    job.meter_file().choose_file(&file).await?;
    job.meter().says("D65").await?;
    job.meter_samples().named("lot 8").tap().await?;
    job.understood().says("lot 8").await?;
    // The label says another colour: that is said, and one tap takes it.
    job.colour_clash().says("The label says red").await?;
    job.take_colour_of_label().tap().await?;
    job.understood().says("red").await?;
    desk.undo().await?;
    job.understood().says("lot 8").await?;
    desk.undo().await?;
    job.understood().says("red").await?;
    desk.has_no_complaints().await?;
    desk.close().await
}
