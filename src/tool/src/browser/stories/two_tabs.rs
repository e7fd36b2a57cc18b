//! Two tabs of one tablet write the same records, by turns and as fast as they can.

use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use anyhow::{Context, Result, ensure};
use serde_json::json;
use std::collections::BTreeSet;
use std::time::Duration;

/// Changes of each of two tabs.
const CHANGES: u64 = 20;

/// Opens the Library of the shop's own server in two tabs, and turns to the second.
async fn open_two_tabs(fixture: &Fixture, address: &str) -> Result<DeskPage> {
    let desk = fixture.tablet().open(address).await?;
    desk.library().hits().read().await?;
    desk.session().open_tab(address).await?;
    desk.library().hits().read().await?;
    Ok(desk)
}

/// The Library of the page on the shop's server.
fn address(fixture: &Fixture) -> String {
    fixture.page.site(&format!("#{}", DeskScreen::Library.address()))
}

/// Two tabs of one tablet write by turns, and both show everything.
pub async fn two_tabs_write_by_turns(fixture: &Fixture) -> Result<()> {
    let desk = open_two_tabs(fixture, &address(fixture)).await?;
    for number in 0..CHANGES {
        for tab in [0, 1] {
            desk.session().turn_to_tab(tab).await?;
            // What the other tab wrote is drawn here first: a tap that begins before it and ends after it meets nothing.
            desk.settle().await?;
            let mesh = format!("mesh-{tab}-{number}");
            write_mesh(&desk, &mesh).await.with_context(|| mesh.clone())?;
        }
    }
    for tab in [0, 1] {
        desk.session().turn_to_tab(tab).await?;
        desk.is_saved().await?;
        desk.reload().await?;
        desk.library().hits().read().await?;
        let counted = desk.library().sections().named("Dryers, meshes").read().await?;
        let found: u64 = counted.rsplit(' ').next().and_then(|it| it.parse().ok()).context("no count")?;
        ensure!(found >= 2 * CHANGES, "of {} meshes {found} are there", 2 * CHANGES);
    }
    desk.close().await
}

async fn write_mesh(desk: &DeskPage, name: &str) -> Result<()> {
    let library = desk.library();
    library.look_in("Dryers, meshes").await?;
    desk.settle().await?;
    let form = library.begin(library.new_mesh()).await?;
    for (label, text) in [
        ("name", name),
        ("threads a centimetre", "60"),
        ("thread,", "60"),
        ("thickness", "100"),
        ("stencil above", "20"),
    ] {
        form.fill(label, text).await?;
    }
    form.keep().tap().await?;
    library.name().says(name).await?;
    ensure!(!form.all().is_seen().await?, "the form stays open");
    Ok(())
}

/// Edits of each of two tabs, by turns of a few milliseconds.
const EDITS: u64 = 500;

/// Records that both tabs edit.
const SHARED: usize = 10;

/// What both tabs do: write as fast as they can, each edit another weight and note of a tub that the other tab
/// writes about too.
const EDIT: &str = "const [word, edits, shared] = arguments;
    for (let number = 1; number <= edits; number += 1) {
        await openRecord(`tub-${number % shared}`);
        await changeRecord({ 'left, kg': String(number), note: `${word} ${number}` });
        await saved();
        report(number);
    }";

/// The notes of all edits that are in the database.
const NOTES: &str = "return entries(await stored())
    .map((entry) => entry.change.edit.edits[0].put.fields.note)
    .filter((note) => / [0-9]+$/.test(note ?? ''));";

/// Begins a tub of a white that ships.
async fn begin_tub(desk: &DeskPage, name: &str) -> Result<()> {
    let library = desk.library();
    library.search().fill("gannet").await?;
    library.hit().named("Gannet").tap().await?;
    let form = library.begin(library.new_tub()).await?;
    form.fill("name", name).await?;
    form.keep().tap().await?;
    library.belongs().says(name).await
}

/// Two tabs edit the same ten records by turns, a thousand times: every edit is in the database once, and both tabs
/// show all of them.
pub async fn a_thousand_edits_of_two_tabs_are_all_there(fixture: &Fixture) -> Result<()> {
    let address = address(fixture);
    let desk = fixture.tablet().open(&address).await?;
    let library = desk.library();
    library.hits().read().await?;
    desk.settle().await?;
    library.look_in("Whites").await?;
    for number in 0..SHARED {
        begin_tub(&desk, &format!("tub-{number}")).await?;
    }
    desk.is_saved().await?;
    desk.session().open_tab(&address).await?;
    for tab in [0, 1] {
        desk.session().turn_to_tab(tab).await?;
        library.hits().read().await?;
        library.look_in("Whites").await?;
        library.search().fill("tub").await?;
        library.found().says(&format!("{SHARED} of")).await?;
    }
    for (tab, word) in [(0, "one"), (1, "other")] {
        desk.session().turn_to_tab(tab).await?;
        desk.start_script(EDIT, vec![json!(word), json!(EDITS), json!(SHARED)]).await?;
    }
    for tab in [0, 1] {
        desk.session().turn_to_tab(tab).await?;
        desk.reports(&json!(EDITS), Duration::from_secs(280)).await.with_context(|| format!("tab {tab}"))?;
    }
    let there: Vec<String> = serde_json::from_value(desk.run(NOTES, vec![]).await?)?;
    let distinct: BTreeSet<&String> = there.iter().collect();
    ensure!(distinct.len() as u64 == 2 * EDITS, "{} of {} edits are there", distinct.len(), 2 * EDITS);
    ensure!(there.len() == distinct.len(), "{} edits came twice", there.len() - distinct.len());
    for tab in [0, 1] {
        desk.session().turn_to_tab(tab).await?;
        desk.reload().await?;
        library.hits().read().await?;
        library.look_in("Whites").await?;
        library.search().fill("tub").await?;
        let mut shown = 0;
        for number in 0..SHARED {
            let tub = format!("tub-{number}");
            library.hit().named(&tub).tap().await?;
            library.name().says(&tub).await?;
            shown += library.moments().count().await?;
        }
        let all = 2 * EDITS + SHARED as u64;
        ensure!(shown == all, "tab {tab} shows {shown} of {all} moments");
    }
    desk.close().await
}
