//! Markup of what is only read and tapped: hundreds of records are drawn at once, and a Leptos view for each kind
//! of row costs the page more bytes than all the words on them. `maud` escapes whatever stands in round brackets;
//! only markup that it wrote itself, and the drawings of [`icon`](super::icon), go in unescaped. None is inlined: a
//! copy at each of a hundred places costs the page some kilobytes.

use super::icon;
use crate::desk::Action;
use crate::plan::Verdict;
use maud::{Markup, PreEscaped, html};

/// A button that asks for an action when it is tapped.
#[inline(never)]
pub fn button(class: &str, action: &Action, words: &str) -> Markup {
    html! { button class={ "btn " (class) } type="button" data-do=(action) { (words) } }
}

/// A button that is one of several answers.
#[inline(never)]
pub fn answer(action: &Action, pressed: bool, words: &str) -> Markup {
    html! { button class="btn" type="button" data-do=(action) aria-pressed=(pressed) { (words) } }
}

/// A link that becomes a download when it is tapped.
#[inline(never)]
pub fn download(id: &str, class: &str, action: &Action, words: &str) -> Markup {
    html! { a class={ "btn " (class) } id=(id) href="#library" data-do=(action) { (words) } }
}

/// A question with its answers.
#[inline(never)]
pub fn question(id: &str, asks: &str, answers: &Markup) -> Markup {
    html! {
        div class="blk" {
            h2 class="sec-head" id=(id) { (asks) }
            div class="seg" role="group" aria-labelledby=(id) { (answers) }
        }
    }
}

/// The heading of a section, with words beside it.
#[inline(never)]
pub fn head(id: &str, words: &str, aside: &str) -> Markup {
    html! { h2 class="sec-head gap-s" id=(id) { (words) " " span class="aside" { (aside) } } }
}

/// A drawing of the given view box; hidden from screen readers, which read the words beside it.
#[inline(never)]
pub fn sign(size: u32, inside: &'static str) -> Markup {
    html! { svg viewBox={ "0 0 " (size) " " (size) } aria-hidden="true" { (PreEscaped(inside)) } }
}

/// The mark of a verdict in its colour.
#[inline(never)]
pub fn mark(verdict: Verdict) -> Markup {
    html! { span class=(icon::verdict_class(verdict)) { (sign(96, icon::mark(verdict))) } }
}

/// The mark of a verdict as the first cell of a row; `words` are for screen readers.
#[inline(never)]
pub fn mark_cell(verdict: Verdict, words: &str) -> Markup {
    html! { td class="mk" { (mark(verdict)) span class="sr" { (words) } } }
}

/// The head of a column whose cells hold marks; `words` are for screen readers.
#[inline(never)]
pub fn mark_column(words: &str) -> Markup {
    html! { th class="mk" { span class="sr" { (words) } } }
}

/// A block of the answer under its heading, with words beside that.
#[inline(never)]
pub fn block(heading: &str, aside: &str, inside: &Markup) -> Markup {
    html! {
        div class="blk" {
            h2 class="sec-head" {
                (heading)
                @if !aside.is_empty() { " " span class="aside" { (aside) } }
            }
            (inside)
        }
    }
}

/// A table of a name with its head row, which scrolls sideways where it is too wide.
#[inline(never)]
pub fn table(name: &str, heads: &Markup, rows: &Markup) -> Markup {
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(name) {
            table class="tbl" { thead { tr { (heads) } } tbody { (rows) } }
        }
    }
}
