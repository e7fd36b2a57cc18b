//! The one file: everything the page needs, packed under its policy.
//!
//! The desk's style sheets, and the wasm with its binding, are packed as LZMA; a small wasm beside them unpacks both
//! (`src/unpack`). All three are written as UTF-16 text in script blocks that never run. The style sheet of the start is
//! written as it is, so that the page can explain itself when nothing can be unpacked. Two scripts run, each allowed by its own
//! hash: `www/boot.js`, which is part of the page, and the binding, which `boot.js` unpacks and adds to the page.
//!
//! **Decision:** the binding between wasm and page is packed with the wasm, and runs as a second script with
//! its own hash.
//! **Because:** the binding is plain text that packs well, and the policy can name the hash of each script.
//! **Measured:** 45 kB of the file when it stood there plainly (by 2026-11-25).
//! **Reconsider when:** the binding shrinks to a few kilobytes, or a policy can no longer name two hashes.

use crate::host::workspace::{Workspace, read};
use crate::page::lzma;
use crate::page::policy;
use crate::page::utf16;
use crate::page::wasm::WasmBinding;
use anyhow::{Context, Result, bail};

/// The most the one file may weigh, in bytes: it is copied to sticks and sent over a shop's slow wireless.
pub const BUDGET: usize = 900_000;

/// The style sheet that the page needs before its desk is drawn, and when it cannot be.
const START: &str = "page";

/// The last line of the binding: it hands the functions that `boot.js` waits for to it.
const HANDS_OVER: &str = "\ndocument.querySelector('whitehold-desk').bound({ initSync, mount });\n";

/// A style sheet of `www/`.
#[derive(Clone, Debug)]
pub struct StyleSheet {
    /// Its file name without the ending.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// Reads the style sheets of `www/`, in the order of their names.
///
/// # Errors
/// [`anyhow::Error`] if the folder or a sheet cannot be read.
pub fn sheets(workspace: &Workspace) -> Result<Vec<StyleSheet>> {
    let folder = workspace.www();
    let listed =
        std::fs::read_dir(&folder).with_context(|| format!("{} cannot be read", folder.display()))?;
    let mut sheets = Vec::new();
    for entry in listed {
        let path = entry?.path();
        if path.extension().is_some_and(|ending| ending == "css") {
            let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
            sheets.push(StyleSheet { name, text: read(&path)? });
        }
    }
    sheets.sort_by(|one, other| one.name.cmp(&other.name));
    Ok(sheets)
}

/// Packs the page.
///
/// # Errors
/// [`anyhow::Error`] if a source cannot be read, or a text would end the block it is put in.
pub fn pack(workspace: &Workspace, bound: &WasmBinding, unpacker: &[u8]) -> Result<String> {
    let template = read(&workspace.www().join("index.html"))?;
    let boot = read(&workspace.www().join("boot.js"))?;
    let module = script(&lean(&boot))?;
    let binding = format!("{}{HANDS_OVER}", script(&lean(&bound.glue))?);
    let (start, desk): (Vec<_>, Vec<_>) =
        sheets(workspace)?.into_iter().partition(|sheet| sheet.name == START);
    let start = start.first().context("www/page.css is missing")?;
    let desk: Vec<_> = desk.into_iter().map(|sheet| sheet.text).collect();
    let styles = utf16::encode(&lzma::pack(&serde_json::to_vec(&desk)?)?)?;
    let core = utf16::encode(&lzma::pack(&core(&binding, &bound.wasm)?)?)?;
    let unpack = utf16::encode(unpacker)?;
    let policy = policy::for_scripts(&[&module, &binding]);
    fill(
        &template,
        &[
            ("policy", &policy),
            ("start", inert(&start.text)?),
            ("styles", &styles),
            ("unpack", &unpack),
            ("core", &core),
            ("module", &module),
        ],
    )
}

/// What is packed together: the length of the binding (4 bytes, big-endian), the binding, the wasm.
fn core(binding: &str, wasm: &[u8]) -> Result<Vec<u8>> {
    let mut core = u32::try_from(binding.len())?.to_be_bytes().to_vec();
    core.extend(binding.as_bytes());
    core.extend(wasm);
    Ok(core)
}

/// Replaces each `{{name}}` of the template, once; a `{{name}}` in what is put in is left alone.
fn fill(template: &str, parts: &[(&str, &str)]) -> Result<String> {
    let mut page =
        String::with_capacity(template.len() + parts.iter().map(|(_, text)| text.len()).sum::<usize>());
    let mut rest = template;
    let mut filled = 0;
    while let Some((before, after)) = rest.split_once("{{") {
        let (name, after) = after.split_once("}}").context("www/index.html: a {{ has no }}")?;
        let Some((_, text)) = parts.iter().find(|(known, _)| *known == name) else {
            bail!("www/index.html asks for {{{{{name}}}}}, which the tool does not know");
        };
        page += before;
        page += text;
        rest = after;
        filled += 1;
    }
    if filled != parts.len() {
        let names = parts.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
        bail!("www/index.html must ask once for each of: {names}");
    }
    Ok(page + rest)
}

/// A script without its comment lines and its indentation, which are a fifth of the binding. A template string over several
/// lines may hold anything, and code may follow a comment on its line: a script with either is returned unchanged.
fn lean(script: &str) -> String {
    if script.lines().any(|line| line.matches('`').count() % 2 == 1) {
        return script.to_owned();
    }
    let mut lean = String::with_capacity(script.len());
    let mut in_comment = false;
    for line in script.lines().map(str::trim) {
        in_comment |= line.starts_with("/*");
        if in_comment && line.contains("*/") && !line.ends_with("*/") {
            return script.to_owned();
        }
        if !in_comment && !line.is_empty() && !line.starts_with("//") {
            lean.push_str(line);
            lean.push('\n');
        }
        in_comment &= !line.ends_with("*/");
    }
    lean
}

/// Makes a script safe to be part of a page: HTML ends a script block at the first `</script`, also inside a string.
fn script(text: &str) -> Result<String> {
    // A browser turns CR LF into LF before it hashes.
    let text = text.replace("\r\n", "\n").replace("</script", "<\\/script");
    if text.contains("<!--") {
        bail!(
            "the script holds `<!--`, after which HTML no longer sees where a script ends; write it as '<' + '!--'"
        );
    }
    Ok(text)
}

/// Checks that a text may be put in a block that never runs.
fn inert(text: &str) -> Result<&str> {
    if text.contains("</script") || text.contains("<!--") {
        bail!("a text that is put in a script block must hold neither `</script` nor `<!--`");
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_script_cannot_end_its_own_block() -> Result<()> {
        assert_eq!(script("let a = '</script>';\r\n")?, "let a = '<\\/script>';\n");
        assert!(script("'<!--'").is_err());
        assert!(inert("a { content: '</script' }").is_err());
        Ok(())
    }

    #[test]
    fn a_script_loses_its_comments_and_nothing_else() {
        let full = "/**\n * says `a`\n */\nfunction a() {\n  // why\n  return \"// no comment\"; /* nor this */ }\n\n/* one */\na();\n";
        assert_eq!(lean(full), "function a() {\nreturn \"// no comment\"; /* nor this */ }\na();\n");
        for kept in ["const a = `\n  // kept\n`;\n", "  /* one */ a();\n", "/* one\n two */ a();\n"] {
            assert_eq!(lean(kept), kept);
        }
    }

    #[test]
    fn each_part_is_put_in_once_and_not_read_again() -> Result<()> {
        let parts = [("policy", "p{{core}}"), ("core", "c")];
        assert_eq!(fill("<{{policy}}|{{core}}>", &parts)?, "<p{{core}}|c>");
        for wrong in ["{{policy}}", "{{policy}}{{core}}{{other}}", "{{policy}}{{core"] {
            assert!(fill(wrong, &parts).is_err(), "{wrong}");
        }
        Ok(())
    }
}
