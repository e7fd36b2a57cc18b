//! When the page cannot start it says why and what to do next, in English and in Spanish, and is never blank.

use crate::browser::drive::built_page::file_address;
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use crate::host::workspace::write;
use crate::page::utf16;
use anyhow::{Context, Result, ensure};
use serde_json::json;

/// Checks that the page explains itself with the section of this name, and with no other.
async fn explains(desk: &Desk, section: &str) -> Result<()> {
    desk.says(&format!("#{section}"), "Next:").await?;
    desk.says(&format!("#{section}"), "Siguiente paso:").await?;
    let seen = desk
        .run("return Array.from(document.querySelectorAll('section'), (part) => part.hidden ? '' : part.id).filter(Boolean).join(' ')", vec![])
        .await?;
    ensure!(seen == format!("{section} promise"), "what is seen: {seen}");
    desk.says("#promise", "refuses every request").await
}

pub async fn a_browser_without_wasm_is_told_so(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().without("delete globalThis.WebAssembly;").opens_the_file().await?;
    explains(&desk, "no-wasm").await?;
    desk.is_closed().await?;
    let desk = fixture
        .tablet()
        .without("WebAssembly.compile = async () => { throw Error('no'); };")
        .opens_the_file()
        .await?;
    explains(&desk, "no-wasm").await?;
    desk.is_closed().await
}

pub async fn a_browser_without_constructed_sheets_is_told_so(fixture: &Fixture) -> Result<()> {
    for lack in ["delete Element.prototype.attachShadow;", "delete Document.prototype.adoptedStyleSheets;"] {
        let desk = fixture.tablet().without(lack).opens_the_file().await?;
        explains(&desk, "no-shadow").await?;
        desk.is_closed().await?;
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
        let desk = fixture.tablet().opens(&file_address(&copy)?).await?;
        explains(&desk, "damaged").await?;
        desk.is_closed().await?;
    }
    Ok(())
}

/// Scripts switched off, or the preview of a file on an iPad.
pub async fn a_page_without_scripts_is_told_so(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().is_switched_on().await?;
    desk.devtools("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await?;
    desk.goes_to(&fixture.page.file()?).await?;
    desk.says("noscript", "iPad").await?;
    desk.says("noscript", "Next:").await?;
    desk.says("noscript", "Siguiente paso:").await?;
    desk.is_closed().await
}

pub async fn a_failure_while_working_is_told_so(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    let failure =
        "dispatchEvent(new CustomEvent('whitehold-failed', { detail: 'src/plan: a test of the words' }))";
    desk.run(failure, vec![]).await?;
    explains(&desk, "broken").await?;
    desk.says("#said", "a test of the words").await?;
    desk.taps("#broken a").await?;
    desk.shows("#verdict").await?;
    desk.is_closed().await
}
