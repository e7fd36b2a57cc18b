//! One design on several garments.

use crate::browser::drive::fixture::Fixture;
use anyhow::Result;

pub async fn a_second_garment_brings_a_plan_for_all(fixture: &Fixture) -> Result<()> {
    for tablet in [fixture.tablet(), fixture.tablet().upright().dark()] {
        let desk = tablet.opens_the_file().await?;
        desk.shows("#verdict").await?;
        desk.run(
            "const root = document.querySelector('whitehold-desk').shadowRoot;
            root.querySelector('#add-garment').closest('details').open = true;",
            vec![],
        )
        .await?;
        desk.taps("#add-garment").await?;
        desk.types("#label", "100% cotton jersey, 150 g/m2, black").await?;
        desk.says(".every-garment tbody", "cotton").await?;
        desk.says(".every-garment tbody", "polyester").await?;
        desk.says("#understood", "cotton").await?;
        desk.says(".every-garment", "the answer above is for this one").await?;
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    Ok(())
}

/// A meter's file: a bad one is refused by line and column, of a good one a sample is taken, and Undo takes it back.
pub async fn a_meter_file_colours_the_garment(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.run(
        "const root = document.querySelector('whitehold-desk').shadowRoot;
        root.querySelector('#meter-file').closest('details').open = true;",
        vec![],
    )
    .await?;
    let brings = async |text: &str| {
        let choose =
            "const input = document.querySelector('whitehold-desk').shadowRoot.querySelector('#meter-file');
            const files = new DataTransfer();
            files.items.add(new File([arguments[0]], 'meter.csv'));
            input.files = files.files;
            input.dispatchEvent(new Event('change', { bubbles: true, composed: true }));";
        desk.run(choose, vec![serde_json::json!(text)]).await
    };
    brings("name,L*,a*,b*\nlot 7,138,58,35\n").await?;
    desk.says("#meter", "Line 2, column 7").await?;
    brings("name,L*,a*,b*\nlot 7,38,58,35\nlot 8,20,5,-30\n").await?;
    desk.says("#meter", "D65").await?;
    desk.taps("#meter .seg .btn:last-child").await?;
    desk.says("#understood", "lot 8").await?;
    // The label says another colour: that is said, and one tap takes it.
    desk.says("#colour-clash", "The label says red").await?;
    desk.taps("#colour-clash button").await?;
    desk.says("#understood", "red").await?;
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.says("#understood", "lot 8").await?;
    desk.taps(".head [aria-label=\"Undo\"]").await?;
    desk.says("#understood", "red").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
