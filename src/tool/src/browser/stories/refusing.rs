//! When the page cannot start it says why and what to do next, in English and in Spanish, and is never blank.

use crate::browser::drive::built_page::file_address;
use crate::browser::fixture::Fixture;
use crate::browser::screens::{DeskPage, DeskScreen};
use crate::host::workspace::write;
use crate::page::utf16;
use anyhow::{Context, Result, ensure};
use serde_json::json;

/// Checks that the page explains itself with the section of this id, and with no other.
async fn explains(desk: &DeskPage, section: &str) -> Result<()> {
    let start = desk.start();
    start.section(section).says("Next:").await?;
    start.section(section).says("Siguiente paso:").await?;
    let shown = start.shown_sections().await?;
    ensure!(shown == [section, "promise"], "what is shown: {shown:?}");
    start.promise().says("refuses every request").await
}

pub async fn a_browser_without_wasm_is_told_so(fixture: &Fixture) -> Result<()> {
    for lack in
        ["delete globalThis.WebAssembly;", "WebAssembly.compile = async () => { throw Error('no'); };"]
    {
        let desk = fixture.tablet().changed_by(lack).open(&fixture.page.file()?).await?;
        explains(&desk, "no-wasm").await?;
        desk.close().await?;
    }
    Ok(())
}

pub async fn a_browser_without_constructed_sheets_is_told_so(fixture: &Fixture) -> Result<()> {
    for lack in ["delete Element.prototype.attachShadow;", "delete Document.prototype.adoptedStyleSheets;"] {
        let desk = fixture.tablet().changed_by(lack).open(&fixture.page.file()?).await?;
        explains(&desk, "no-shadow").await?;
        desk.close().await?;
    }
    Ok(())
}

/// Half of a packed block is lost, as when a stick is pulled out too early: of the wasm, of the style sheets, of what
/// unpacks both.
pub async fn a_damaged_copy_is_told_so(fixture: &Fixture) -> Result<()> {
    let page = std::fs::read(fixture.workspace.dist().join("whitehold.html"))?;
    let page = utf16::text(&page).context("the page is no text")?;
    for block in ["core", "styles", "unpack"] {
        let opens = format!("id=\"{block}\">");
        let (before, rest) = page.split_once(&opens).with_context(|| format!("the page holds no {block}"))?;
        let (packed, after) = rest.split_once("</script>").context("a packed block has no end")?;
        let half: String = packed.chars().take(packed.chars().count() / 2).collect();
        let copy = fixture.workspace.target().join("stories/damaged.html");
        write(&copy, utf16::file(&format!("{before}{opens}{half}</script>{after}")))?;
        let desk = fixture.tablet().open(&file_address(&copy)?).await?;
        explains(&desk, "damaged").await?;
        desk.close().await?;
    }
    Ok(())
}

/// Scripts switched off, or the preview of a file on an iPad.
pub async fn a_page_without_scripts_is_told_so(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().start().await?;
    desk.session().devtools("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await?;
    desk.session().open(&fixture.page.file()?).await?;
    for words in ["iPad", "Next:", "Siguiente paso:"] {
        desk.start().no_scripts().says(words).await?;
    }
    desk.close().await
}

/// The browser refuses the page a copy of a node, as where memory has run out. The code that draws a screen cannot go on
/// without one and panics: the page says so, with the panic's own line, and starts again.
const NO_NODES: &str = "Node.prototype.cloneNode = () => { throw new RangeError('no memory for a node'); };";

pub async fn a_failure_while_working_is_told_so(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    desk.session().run(NO_NODES, vec![]).await?;
    desk.turn_to(DeskScreen::Settings).await?;
    explains(&desk, "broken").await?;
    desk.start().failure_line().says("no memory for a node").await?;
    desk.start().failure_line().says("panicked").await?;
    desk.start().start_again().tap().await?;
    desk.job().verdict().read().await?;
    desk.close().await
}
