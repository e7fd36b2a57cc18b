//! Nothing leaves the page: every way out is tried against a listener on this computer, under the page's own policy.

use crate::browser::drive::built_page::{file_address, serve_folder};
use crate::browser::drive::listener::Listener;
use crate::browser::fixture::Fixture;
use crate::host::workspace::write;
use crate::page::policy;
use crate::page::utf16;
use anyhow::{Context, Result, ensure};
use std::collections::BTreeSet;
use std::time::Duration;

/// Tries every way out.
const PROBE: &str = include_str!("probe.js");

/// The fewest ways that must reach the listener without a policy, for the probe to be worth anything.
const ENOUGH: usize = 10;

/// How a probe page is opened.
#[derive(Clone, Copy, Debug)]
enum Opened {
    File,
    Http,
}

pub async fn the_probe_reaches_a_listener_when_no_policy_forbids_it(fixture: &Fixture) -> Result<()> {
    for from in [Opened::File, Opened::Http] {
        let (heard, tried) = probe(fixture, from, false).await?;
        ensure!(
            heard.len() >= ENOUGH,
            "{from:?}: of {tried} ways only {} were heard: {heard:?}",
            heard.len()
        );
    }
    Ok(())
}

pub async fn nothing_reaches_a_listener_under_the_policy_of_the_page(fixture: &Fixture) -> Result<()> {
    for from in [Opened::File, Opened::Http] {
        let (heard, tried) = probe(fixture, from, true).await?;
        ensure!(tried > ENOUGH, "{from:?}: only {tried} ways were tried");
        ensure!(heard.is_empty(), "{from:?}: the listener heard {heard:?}");
    }
    Ok(())
}

/// Opens the probe and hands back what the listener heard, and how many ways the probe tried.
async fn probe(fixture: &Fixture, from: Opened, under_policy: bool) -> Result<(BTreeSet<String>, usize)> {
    let listener = Listener::start()?;
    let script = PROBE.replace("{{listener}}", &listener.address.to_string());
    let policy = if under_policy {
        let shipped = std::fs::read(fixture.workspace.dist().join("whitehold.html"))?;
        let shipped = utf16::text(&shipped).context("the page is no text")?;
        format!(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">",
            with_script(policy::of_page(&shipped)?, &script)?
        )
    } else {
        String::new()
    };
    let folder = fixture.workspace.target().join("stories/probe");
    let page = folder.join("index.html");
    write(
        &page,
        format!(
            "<!doctype html><meta charset=\"utf-8\">{policy}<title>probe</title><body><script>{script}</script>"
        ),
    )?;
    let address = match from {
        Opened::File => file_address(&page)?,
        Opened::Http => format!("http://{}/", serve_folder(folder).await?),
    };
    let desk = fixture.tablet().open(&address).await?;
    desk.start().page().says("tried").await?;
    // What a browser queues at low priority (prefetch) goes out a moment later.
    tokio::time::sleep(Duration::from_millis(1500)).await;
    let tried =
        desk.session().run("return tried", vec![]).await?.as_u64().context("the probe did not count")?;
    desk.session().run("document.querySelector('form').submit()", vec![]).await?;
    tokio::time::sleep(Duration::from_millis(1000)).await;
    desk.close().await?;
    Ok((listener.heard(), usize::try_from(tried)? + 1))
}

/// The shipped policy, letter for letter, with the probe's hash in the place of the page's script.
fn with_script(policy: &str, script: &str) -> Result<String> {
    let (before, rest) = policy.split_once("'sha256-").context("the policy lets no script in by its hash")?;
    let (_, after) = rest.split_once('\'').context("the hash in the policy has no end")?;
    Ok(format!("{before}'{}'{after}", policy::hash(script)))
}
