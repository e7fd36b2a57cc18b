//! The Content-Security-Policy of the page: what the browser must refuse.
//!
//! Everything is refused (`default-src 'none'`) except the page's own scripts, each allowed by its hash, and WebAssembly. So the
//! page can make no request by any means that a policy covers. A link that a person taps is not covered.
//!
//! **Decision:** the page refuses every request itself, whatever serves it; the list of imports
//! (`src/tool/src/page/imports`) closes the wasm, and a browser story tries every channel.
//! **Because:** what a shop types in must not leave its tablet, and the file is opened from sticks and
//! servers that set no headers.
//! **Measured:** no time to measure; the story in `src/tool/src/browser/stories/nothing_leaves.rs` fails if a
//! channel opens.
//! **Reconsider when:** a browser offers a channel that the policy does not cover: add it to that story
//! first.

use anyhow::{Context, Result};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The policy of a page with exactly these scripts.
#[must_use]
pub fn for_scripts(scripts: &[&str]) -> String {
    let hashes: String = scripts.iter().map(|script| format!(" '{}'", hash(script))).collect();
    format!(
        "default-src 'none'; script-src 'wasm-unsafe-eval'{hashes}; style-src 'none'; img-src data: blob:; \
         connect-src 'none'; worker-src 'none'; form-action 'none'; base-uri 'none'"
    )
}

/// The hash of a script as it is written in a policy: `sha256-…`.
#[must_use]
pub fn hash(script: &str) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(script.as_bytes())))
}

/// The policy that a finished page carries in its `<meta>`.
///
/// # Errors
/// [`anyhow::Error`] if the page carries none.
pub fn of_page(page: &str) -> Result<&str> {
    let start = "http-equiv=\"Content-Security-Policy\" content=\"";
    page.split_once(start)
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(policy, _)| policy)
        .context("the page carries no Content-Security-Policy")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: content-security-policy.com, "Using a hash with CSP", the worked example for `doSomething();`.
    #[test]
    fn a_script_is_hashed_as_browsers_do() {
        assert_eq!(hash("doSomething();"), "sha256-RFWPLDbv2BY+rCkDzsE+0fr8ylGr2R2faWMhq4lfEQc=");
    }

    #[test]
    fn the_policy_of_a_page_is_read_back() -> Result<()> {
        let policy = for_scripts(&["1", "2"]);
        assert_eq!(policy.matches("sha256-").count(), 2);
        let page = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\"><p>x");
        assert_eq!(of_page(&page)?, policy);
        assert!(of_page("<p>").is_err());
        Ok(())
    }
}
