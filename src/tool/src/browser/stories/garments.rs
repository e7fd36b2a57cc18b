//! One design on several garments, and a garment's colour from a meter.

use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use crate::host::workspace::write;
use anyhow::{Result, ensure};

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

/// A towel is one layer: its label proposes to say so, the answer follows, and the sheet for the press says it.
pub async fn a_flat_piece_is_entered_and_stands_on_its_sheet(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let job = desk.job();
    job.label().fill("100% cotton canvas tote bag, 340 g/m2, navy").await?;
    job.understood().says("one layer?").await?;
    desk.settle().await?;
    let garment = job.facts().read().await?;
    job.more_of_garment().unfold().await?;
    job.under_print().named("Nothing").tap().await?;
    desk.settle().await?;
    let flat = job.facts().read().await?;
    ensure!(flat != garment, "the answer does not follow: {flat}");
    ensure!(!job.understood().read().await?.contains("one layer?"), "it asks what was said");
    desk.go_to(DeskScreen::JobSheet).await?;
    desk.job_sheet().about().says("under the print: nothing").await?;
    let picture = fixture.workspace.dist().join("shots/flat.png");
    write(&picture, desk.session().screenshot().await?)?;
    desk.has_no_complaints().await?;
    desk.close().await
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
