//! Opening the page: from a stick, over http, inside another page.

use crate::browser::fixture::Fixture;
use crate::browser::look::approved;
use anyhow::{Result, ensure};

pub async fn the_file_opens_from_a_stick(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

pub async fn the_page_opens_over_http(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().portrait().dark().open_site().await?;
    desk.has_no_complaints().await?;
    desk.close().await
}

pub async fn a_page_of_ones_own_can_hold_the_desk(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_desk(&fixture.page.site("embed.html")).await?;
    desk.has_no_complaints().await?;
    desk.session().enter_frame().await?;
    desk.job().verdict().read().await?;
    desk.close().await
}

pub async fn the_page_looks_as_approved(fixture: &Fixture) -> Result<()> {
    approved::compare(fixture).await
}

pub async fn an_open_page_asks_for_nothing(fixture: &Fixture) -> Result<()> {
    for address in [fixture.page.file()?, fixture.page.site("")] {
        let desk = fixture.tablet().open_desk(&address).await?;
        desk.settle().await?;
        let requests = desk.session().requests().await?;
        ensure!(requests == [address.as_str()], "more was asked for than the page itself: {requests:?}");
        desk.close().await?;
    }
    Ok(())
}
