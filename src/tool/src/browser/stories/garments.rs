//! One design on several garments.

use crate::browser::bench::Bench;
use anyhow::Result;

pub async fn a_second_garment_brings_a_plan_for_all(bench: &Bench) -> Result<()> {
    for tablet in [bench.tablet(), bench.tablet().upright().dark()] {
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
