//! The desk in Firefox and in WebKitGTK: it answers, follows the label, shows every screen, and goes on after a reload.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::other_browsers::{self, OtherBrowser};
use crate::browser::drive::session::Desk;
use crate::host::progress::say;
use anyhow::{Context, Result, ensure};
use serde_json::json;

/// Every screen by its address, and something that only it shows.
const SCREENS: [(&str, &str); 8] = [
    ("window", "#say"),
    ("forecast", "#aged-says"),
    ("shop", "#missing"),
    ("library", ".hits"),
    ("wrong", "#causes"),
    ("sheet", ".paper .p-verdict"),
    ("settings", "#q-theme"),
    ("job", "#verdict"),
];

pub async fn the_desk_works_in_firefox(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: Firefox is driven on Linux only");
        return Ok(());
    }
    works(fixture, &other_browsers::firefox(&fixture.workspace).await?).await
}

pub async fn the_desk_works_in_webkit(fixture: &Fixture) -> Result<()> {
    if !cfg!(target_os = "linux") {
        say("    left out: WebKitGTK is for Linux only");
        return Ok(());
    }
    works(fixture, &other_browsers::webkit(&fixture.workspace).await?).await
}

/// From a stick, lying on its long side; and from the shop's server, held upright.
async fn works(fixture: &Fixture, other: &OtherBrowser) -> Result<()> {
    for (address, size) in [(fixture.page.file()?, (1280, 800)), (fixture.page.site(""), (800, 1280))] {
        other.is_held(size).await?;
        visit(&other.desk, &address, size).await.with_context(|| address)?;
    }
    Ok(())
}

async fn visit(desk: &Desk, address: &str, (width, height): (u32, u32)) -> Result<()> {
    desk.goes_to(address).await?;
    let size = desk.run("return [innerWidth, innerHeight]", vec![]).await?;
    ensure!(size == json!([width, height]), "the page is {size}, not {width} by {height}");
    let demo = desk.shows("#verdict").await?;
    ensure!(demo != "Go", "the demo order is a bare go");
    desk.says("[data-fact='air']", "°C").await?;

    desk.types("#label", "100% cotton jersey, 180 g/m2, black").await?;
    desk.says("#understood", "cotton").await?;
    desk.says("#verdict", "Go").await?;
    let cotton = desk.shows("[data-fact='white']").await?;
    desk.types("#label", "100% polyester interlock, 150 g/m2, red").await?;
    desk.says("#understood", "polyester").await?;
    desk.settles().await?;
    let polyester = [desk.shows("#verdict").await?, desk.shows("[data-fact='white']").await?];
    ensure!(
        polyester[0] != "Go" && polyester[1] != cotton,
        "polyester is answered as cotton is: {polyester:?}"
    );
    for (screen, mark) in SCREENS {
        desk.taps(&format!("nav a[href='#{screen}']")).await?;
        desk.shows(mark).await.with_context(|| screen.to_owned())?;
    }

    desk.types("#label", "100% cotton jersey, 210 g/m2, navy").await?;
    desk.says("#understood", "210").await?;
    desk.taps("#keep-order").await?;
    desk.says("#keep-order + span", "Kept in the library").await?;
    desk.is_saved().await?;
    desk.has_no_complaints().await?;
    desk.reloads().await?;
    desk.says("#verdict", "Go").await?;
    desk.says("#understood", "210").await?;
    desk.says("#keep-order + span", "Kept in the library").await?;
    desk.has_no_complaints().await?;
    // That the browser's complaints are heard at all: a picture from elsewhere is against the page's policy.
    desk.run("new Image().src = 'http://127.0.0.1:9/picture.png'", vec![]).await?;
    desk.settles().await?;
    let heard = desk.has_no_complaints().await;
    ensure!(
        heard.is_err_and(|it| it.to_string().contains("picture.png")),
        "a breach of the policy is not heard"
    );
    Ok(())
}
