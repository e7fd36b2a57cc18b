//! The desk in Firefox and in WebKitGTK: it answers, follows the label, shows every screen, and goes on after a reload.

use crate::browser::drive::other_browsers::{self, OtherBrowser, size_page};
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::progress::say;
use anyhow::{Context, Result, ensure};
use serde_json::json;

/// Every screen once, the job last.
const TOUR: [DeskScreen; 8] = [
    DeskScreen::Window,
    DeskScreen::Forecast,
    DeskScreen::PrintRoom,
    DeskScreen::Library,
    DeskScreen::Diagnosis,
    DeskScreen::JobSheet,
    DeskScreen::Settings,
    DeskScreen::Job,
];

pub async fn the_desk_works_in_firefox(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: Firefox is driven on Linux only");
        return Ok(());
    }
    works(fixture, other_browsers::firefox(&fixture.workspace).await?).await
}

pub async fn the_desk_works_in_webkit(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: WebKitGTK is for Linux only");
        return Ok(());
    }
    works(fixture, other_browsers::webkit(&fixture.workspace).await?).await
}

/// From a stick in landscape, and from the shop's server in portrait.
async fn works(fixture: &Fixture, browser: OtherBrowser) -> Result<()> {
    let OtherBrowser { session, programs } = browser;
    let desk = DeskPage::new(session);
    for (address, size) in [(fixture.page.file()?, (1280, 800)), (fixture.page.site(""), (800, 1280))] {
        size_page(desk.session(), size).await?;
        visit(&desk, &address, size).await.with_context(|| address)?;
    }
    drop(programs);
    Ok(())
}

async fn visit(desk: &DeskPage, address: &str, (width, height): (u32, u32)) -> Result<()> {
    desk.session().open(address).await?;
    let size = desk.session().run("return [innerWidth, innerHeight]", vec![]).await?;
    ensure!(size == json!([width, height]), "the page is {size}, not {width} by {height}");
    let job = desk.job();
    let demo = job.verdict().read().await?;
    ensure!(demo != "Go", "the demo order is a bare go");
    job.set_temperature().says("°C").await?;

    job.label().fill("100% cotton jersey, 180 g/m2, black").await?;
    job.understood().says("cotton").await?;
    job.verdict().says("Go").await?;
    let cotton = job.white().read().await?;
    job.label().fill("100% polyester interlock, 150 g/m2, red").await?;
    job.understood().says("polyester").await?;
    desk.settle().await?;
    let (verdict, polyester) = (job.verdict().read().await?, job.white().read().await?);
    ensure!(
        verdict != "Go" && polyester != cotton,
        "polyester is answered as cotton is: {verdict}, {polyester}"
    );
    for screen in TOUR {
        desk.turn_to(screen).await?;
        desk.shows(screen).await?;
    }

    job.label().fill("100% cotton jersey, 210 g/m2, navy").await?;
    job.understood().says("210").await?;
    job.keep().tap().await?;
    job.is_kept().says("Kept in the library").await?;
    desk.is_saved().await?;
    desk.has_no_complaints().await?;
    desk.reload().await?;
    job.verdict().says("Go").await?;
    job.understood().says("210").await?;
    job.is_kept().says("Kept in the library").await?;
    desk.has_no_complaints().await?;
    // That the browser's complaints are heard at all: a picture from elsewhere is against the page's policy.
    desk.session().run("new Image().src = 'http://127.0.0.1:9/picture.png'", vec![]).await?;
    desk.settle().await?;
    let heard = desk.has_no_complaints().await;
    ensure!(
        heard.is_err_and(|it| it.to_string().contains("picture.png")),
        "a breach of the policy is not heard"
    );
    Ok(())
}
