//! What the stories of keeping share: a hand that saves names, and an eye on what is really in the database.
//!
//! Each save is a name typed into the order. The page says `data-saved` when the browser has acknowledged it; what is
//! really there is read by plain calls of the browser's database, not by the page's own store.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result, bail};
use serde_json::{Value, json};
use std::path::PathBuf;

/// The form's field for the order's name, and whether it is kept.
const PAGE: &str = "
    const shadow = document.querySelector('whitehold-desk')?.shadowRoot;
    const desk = shadow?.querySelector('.desk');
    const name = shadow?.querySelector('#title');
    const type = (text) => {
        name.value = text;
        name.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    };
    // The attribute follows the state when the event is over: looked at sooner, it would still speak of the last save.
    const afterwards = () => new Promise((yes) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = yes;
        port2.postMessage(null);
    });
    // What is drawn after a tap is drawn when the event is over.
    const seen = async (selector) => { while (!shadow.querySelector(selector)) await afterwards(); };
    const tap = (selector) => shadow.querySelector(selector).click();
    const fill = (selector, text) => {
        const field = shadow.querySelector(selector);
        field.value = text;
        field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    };
    const saved = () => afterwards().then(() => new Promise((yes) => {
        if (desk.dataset.saved === 'true') return yes();
        const watch = new MutationObserver(() => {
            if (desk.dataset.saved === 'true') { watch.disconnect(); yes(); }
        });
        watch.observe(desk, { attributes: true });
    }));";

/// The browser's database, by its own calls.
const DATABASE: &str = "
    const done = (request) => new Promise((yes, no) => {
        request.onsuccess = () => yes(request.result);
        request.onerror = () => no(request.error);
    });
    const database = async (work) => {
        const open = await done(indexedDB.open('whitehold'));
        try { return await work(open); } finally { open.close(); }
    };";

/// Runs a script that may await, and hands back its value.
pub(super) async fn run(desk: &Desk, body: &str, arguments: Vec<Value>) -> Result<Value> {
    let script = format!(
        "const end = arguments[arguments.length - 1]; const given = arguments;
         (async () => {{ {DATABASE} {PAGE} {body} }})().then((value) => end([value ?? null]), (error) => end(String(error)));"
    );
    match desk.awaits(&script, arguments).await? {
        Value::Array(mut value) => value.pop().context("no value"),
        error => bail!("in the page: {error}"),
    }
}

/// The name that stands in the form.
pub(super) async fn name(desk: &Desk) -> Result<String> {
    Ok(run(desk, "return name.value", vec![]).await?.as_str().unwrap_or_default().to_owned())
}

/// Types a name and waits until it is kept.
pub(super) async fn saves(desk: &Desk, text: &str) -> Result<()> {
    run(desk, "type(given[0]); await saved();", vec![json!(text)]).await?;
    Ok(())
}

/// A folder of this name for a browser to remember in, empty.
pub(super) fn profile(fixture: &Fixture, name: &str) -> Result<PathBuf> {
    let folder = fixture.workspace.target().join("stories").join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}
