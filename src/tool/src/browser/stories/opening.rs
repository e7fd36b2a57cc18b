//! Opening the page: from a stick, over http, inside another page.

use crate::browser::approved;
use crate::browser::bench::Bench;
use anyhow::{Result, ensure};

/// The element that carries the answer.
const VERDICT: &str = "#verdict";

pub async fn the_file_opens_from_a_stick(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_file().await?;
    desk.shows(VERDICT).await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn the_page_opens_over_http(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().upright().dark().opens_the_site().await?;
    desk.shows(VERDICT).await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn a_page_of_ones_own_can_hold_the_desk(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens(&bench.site("embed.html")).await?;
    desk.shows(VERDICT).await?;
    let framed = "return document.querySelector('iframe').contentDocument
        .querySelector('whitehold-desk').shadowRoot.querySelector('#verdict') !== null";
    ensure!(desk.run(framed, vec![]).await? == true, "the desk in the frame shows no verdict");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn the_page_looks_as_approved(bench: &Bench) -> Result<()> {
    approved::compare(bench).await
}

pub async fn an_open_page_asks_for_nothing(bench: &Bench) -> Result<()> {
    for address in [bench.file()?, bench.site("")] {
        let desk = bench.tablet().opens(&address).await?;
        desk.shows(VERDICT).await?;
        desk.settles().await?;
        let requests = desk.requests().await?;
        ensure!(requests == [address.as_str()], "more was asked for than the page itself: {requests:?}");
        desk.is_closed().await?;
    }
    Ok(())
}
