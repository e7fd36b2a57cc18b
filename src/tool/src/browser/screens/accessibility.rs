//! What bars people from a screen: things too small for a finger, words that break, parts past the edge, a focus that is not
//! seen.

use super::DeskPage;
use anyhow::{Context, Result};
use serde_json::json;

/// What is to be tapped and is smaller than a finger, by its words. Text inside a sentence and what is moved out of sight for
/// screen readers do not count; a slider is held along its whole length.
const TOO_SMALL: &str = "const small = [];
    for (const it of all('button, a, input:not(.sr), textarea, select, summary, label.btn')) {
        if (!it.checkVisibility({ checkVisibilityCSS: true }) || it.disabled || it.closest('.sr, .skip')) continue;
        const { width, height } = it.getBoundingClientRect();
        if (width < 47.5 || height < 47.5)
            small.push(`${it.innerText || it.id || it.className} ${width.toFixed(0)}x${height.toFixed(0)}`);
    }
    return small;";

/// How far the page reaches past its right edge, and what reaches there.
const PAST_THE_EDGE: &str = "const wide = document.documentElement.clientWidth;
    const right = (it) => it.getBoundingClientRect().right;
    const past = all('main *').filter((it) => it.checkVisibility() && !it.closest('.scroll, .sr, svg') && right(it) > wide + 1);
    const named = past.slice(0, 3).map((it) => `${it.className} ${right(it).toFixed(0)}`);
    const all_of_it = document.documentElement.scrollWidth;
    return all_of_it > wide + 1 ? named.concat(`${all_of_it} of ${wide}`) : [];";

/// Words that are broken over two lines because they have no room.
const BROKEN_WORDS: &str = "const broken = [];
    const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
        const holds = text.parentElement;
        if (!holds?.checkVisibility() || holds.closest('.sr, svg, style, textarea')) continue;
        for (const word of text.data.matchAll(/[\\p{L}\\d]{2,}/gu)) {
            const range = document.createRange();
            range.setStart(text, word.index);
            range.setEnd(text, word.index + word[0].length);
            const lines = new Set(Array.from(range.getClientRects(), (line) => line.top.toFixed(0)));
            if (lines.size > 1) broken.push(word[0]);
        }
    }
    return broken.slice(0, 5);";

/// How many things the tabulator can reach.
const REACHABLE: &str = "return all('button, a[href], input, textarea, select, summary, [tabindex=\"0\"]')
        .filter((it) => !it.disabled && it.tabIndex >= 0 && it.checkVisibility({ checkVisibilityCSS: true })
            && (it.tagName === 'SUMMARY' || !it.closest('details:not([open])'))).length;";

/// Marks what has the focus, and says whether it was marked before, and whether the focus can be seen.
const FOCUSED: &str = "const it = root.activeElement;
    if (!it) return 'nothing';
    if (it.dataset.reached) return 'again';
    it.dataset.reached = 'yes';
    const seen = (of) => {
        const style = getComputedStyle(of);
        return style.outlineStyle !== 'none' || style.strokeWidth === '4px';
    };
    const label = it.closest('label');
    return seen(it) || (label && seen(label)) ? 'seen'
        : 'unseen ' + (it.id || it.innerText || it.className.baseVal || it.className);";

/// Takes those marks away again, and the focus.
const FORGET_FOCUSED: &str = "for (const it of all('[data-reached]')) delete it.dataset.reached;
    root.activeElement?.blur();";

/// Fills of pictures that hang on a pattern which is left out while it is below the fold.
const PATTERNS_LEFT_OUT: &str = "const left = [];
    for (const drawn of all('svg *')) {
        const look = getComputedStyle(drawn);
        for (const id of `${look.fill} ${look.stroke}`.matchAll(/url\\([^#]*#([^\"')]+)/g)) {
            let at = root.getElementById(id[1]);
            while (at && getComputedStyle(at).contentVisibility !== 'auto') at = at.parentElement;
            if (at) left.push(id[1]);
        }
    }
    return left;";

/// Whether titles are in the reader's own colour of text, and buttons have an edge.
const READERS_COLOURS: &str = "const shown = (colour) => {
        const it = document.createElement('i');
        it.style.color = colour;
        document.body.append(it);
        const text = getComputedStyle(it).color;
        it.remove();
        return text;
    };
    return getComputedStyle(root.querySelector('.head h1')).color === shown('CanvasText')
        && getComputedStyle(root.querySelector('.btn')).borderTopStyle !== 'none';";

/// What has the focus.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Focus {
    /// Nothing.
    Nowhere,
    /// Something that had it before.
    Again,
    /// Something new, and the focus is seen.
    Seen,
    /// Something new, by its words, and the focus is not seen.
    Unseen(String),
}

impl DeskPage {
    /// What is to be tapped and is smaller than a finger, 48 px.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails, as for all of these.
    pub async fn too_small_for_a_finger(&self) -> Result<Vec<String>> {
        self.list(TOO_SMALL).await
    }

    /// What reaches past the right edge of the page.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn past_the_edge(&self) -> Result<Vec<String>> {
        self.list(PAST_THE_EDGE).await
    }

    /// Words that are broken over two lines.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn broken_words(&self) -> Result<Vec<String>> {
        self.list(BROKEN_WORDS).await
    }

    /// Patterns that fill a picture and are left out below the fold.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn patterns_left_out(&self) -> Result<Vec<String>> {
        self.list(PATTERNS_LEFT_OUT).await
    }

    /// How many things the tabulator can reach.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn reachable(&self) -> Result<u64> {
        self.run(REACHABLE, vec![]).await?.as_u64().context("no count")
    }

    /// Forgets what had the focus. The frame stays from screen to screen, and with it what was marked.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn forget_focus(&self) -> Result<()> {
        self.run(FORGET_FOCUSED, vec![]).await.map(drop)
    }

    /// Presses the tabulator and says what has the focus then.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the browser is not Chromium.
    pub async fn press_tab(&self) -> Result<Focus> {
        for kind in ["rawKeyDown", "keyUp"] {
            let key = json!({ "type": kind, "key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9 });
            self.session.devtools("Input.dispatchKeyEvent", key).await?;
        }
        let focused = self.run(FOCUSED, vec![]).await?;
        Ok(match focused.as_str().unwrap_or_default() {
            "nothing" => Focus::Nowhere,
            "again" => Focus::Again,
            "seen" => Focus::Seen,
            unseen => Focus::Unseen(unseen.to_owned()),
        })
    }

    /// How many things move.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn moving(&self) -> Result<u64> {
        self.run("return document.getAnimations().length", vec![]).await?.as_u64().context("no count")
    }

    /// Whether the screen is in the reader's own colours where the reader brings some.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn takes_readers_colours(&self) -> Result<bool> {
        Ok(self.run(READERS_COLOURS, vec![]).await? == true)
    }

    /// Lays out what is below the fold, for a script that looks at all of the page.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn lay_out_everything(&self) -> Result<()> {
        let script = "for (const part of all(LEFT_OUT)) part.style.contentVisibility = 'visible';";
        self.run(script, vec![]).await.map(drop)
    }

    /// Puts a field without a name on the screen: something that a check must find.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn add_nameless_field(&self) -> Result<()> {
        let script = "root.querySelector('main').append(document.createElement('input'))";
        self.run(script, vec![]).await.map(drop)
    }

    async fn list(&self, script: &str) -> Result<Vec<String>> {
        Ok(serde_json::from_value(self.run(script, vec![]).await?)?)
    }
}
