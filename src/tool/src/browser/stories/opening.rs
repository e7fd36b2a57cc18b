//! Opening the page: from a stick, over http, inside another page.

use crate::browser::drive::fixture::Fixture;
use crate::browser::look::approved;
use anyhow::{Result, ensure};

/// The element that carries the answer.
const VERDICT: &str = "#verdict";

pub async fn the_file_opens_from_a_stick(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows(VERDICT).await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn the_page_opens_over_http(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().upright().dark().opens_the_site().await?;
    desk.shows(VERDICT).await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn a_page_of_ones_own_can_hold_the_desk(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens(&fixture.page.site("embed.html")).await?;
    desk.shows(VERDICT).await?;
    let framed = "return document.querySelector('iframe').contentDocument
        .querySelector('whitehold-desk').shadowRoot.querySelector('#verdict') !== null";
    ensure!(desk.run(framed, vec![]).await? == true, "the desk in the frame shows no verdict");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

pub async fn the_page_looks_as_approved(fixture: &Fixture) -> Result<()> {
    approved::compare(fixture).await
}

pub async fn an_open_page_asks_for_nothing(fixture: &Fixture) -> Result<()> {
    for address in [fixture.page.file()?, fixture.page.site("")] {
        let desk = fixture.tablet().opens(&address).await?;
        desk.shows(VERDICT).await?;
        desk.settles().await?;
        let requests = desk.requests().await?;
        ensure!(requests == [address.as_str()], "more was asked for than the page itself: {requests:?}");
        desk.is_closed().await?;
    }
    Ok(())
}
