//! A record written by hand.

use crate::desk::Action;
use crate::desk::records::Records;
use crate::library::log::Kind;
use crate::library::table::{CellKind, Form, TableColumn};
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, Voice};
use maud::{Markup, html};

/// Most cloths that are offered: the rest are found by search, where a trial is begun on them.
const OFFERED: usize = 60;

/// The form. Its text is kept letter by letter, but it is drawn anew only when it is saved.
pub fn form(records: &Records, writing: &Form, voice: Voice) -> Markup {
    let mut rest = writing.errors.clone();
    for (_, column) in writing.columns() {
        let named: Vec<_> = writing.errors_of(column).cloned().collect();
        rest.retain(|error| !named.contains(error));
    }
    let word = if writing.id.is_some() { LibraryLabel::Edit } else { LibraryLabel::New };
    let head = format!("{}: {}", voice.word(word), voice.kind(writing.kind));
    html! {
        (markup::head("rech", &head, ""))
        div class="stack" id="form" {
            @for (at, column) in writing.columns() { (field(records, writing, at, column, voice)) }
            @for error in &rest { (wrong(&voice.problem(error))) }
            div class="row" {
                (markup::button("btn-main", &Action::SaveForm, voice.word(LibraryLabel::KeepIt)))
                (markup::button("btn-tall", &Action::DiscardForm, voice.word(LibraryLabel::LeaveIt)))
            }
        }
    }
}

fn field(records: &Records, writing: &Form, at: usize, column: &TableColumn, voice: Voice) -> Markup {
    let unit = match column.what {
        CellKind::Number(bound) | CellKind::Sourced(bound) if !matches!(bound.unit, "" | "1") => bound.unit,
        _ => "",
    };
    html! {
        div {
            label class="label" for={ "c-" (at) } {
                (voice.field(column.name))
                @if !unit.is_empty() { ", " (unit) }
            }
            (input(records, writing, at, column, voice))
            @for error in writing.errors_of(column) { (wrong(&voice.problem(error))) }
        }
    }
}

fn input(records: &Records, writing: &Form, at: usize, column: &TableColumn, voice: Voice) -> Markup {
    let shown = writing.shown.get(at).map_or("", String::as_str);
    let (kind, mode) = match column.what {
        CellKind::Word(words) => {
            let words = words.iter().map(|&word| (word.to_owned(), voice.value(Some(&word.into()))));
            return choice(at, shown, words.collect());
        }
        CellKind::Flag => {
            let both = [("no", LibraryLabel::No), ("yes", LibraryLabel::Yes)];
            let both = both.map(|(word, name)| (word.to_owned(), voice.word(name).to_owned()));
            return choice(at, shown, both.to_vec());
        }
        CellKind::Of(kind) => return choice(at, shown, known(records, kind, shown)),
        CellKind::Day => ("date", "none"),
        CellKind::Number(_) | CellKind::Sourced(_) => ("text", "decimal"),
        CellKind::Count(_) => ("text", "numeric"),
        _ => ("text", "text"),
    };
    html! {
        input class="field" id={ "c-" (at) } data-column=(at) type=(kind) inputmode=(mode) autocomplete="off"
            value=(shown);
    }
}

fn wrong(sentence: &str) -> Markup {
    html! { p class="err" { span aria-hidden="true" { "×" } span { (sentence) } } }
}

/// A choice among words with their names, or none of them.
fn choice(at: usize, shown: &str, words: Vec<(String, String)>) -> Markup {
    let none = [(String::new(), "–".to_owned())];
    html! {
        select class="field" id={ "c-" (at) } data-column=(at) {
            @for (word, name) in none.into_iter().chain(words) {
                option value=(word) selected[word == shown] { (name) }
            }
        }
    }
}

/// Records of a kind by id and name, the one that is chosen first.
fn known(records: &Records, kind: Kind, shown: &str) -> Vec<(String, String)> {
    let library = records.library();
    let mut all: Vec<(String, String)> = match kind {
        Kind::White => library.whites.iter().map(|it| (it.id.clone(), it.name.clone())).collect(),
        Kind::Dryer => library.dryers.iter().map(|it| (it.id.clone(), it.name.clone())).collect(),
        _ => library.fabrics.iter().rev().take(OFFERED).map(|it| (it.id.clone(), it.name.clone())).collect(),
    };
    if !shown.is_empty() && all.iter().all(|(id, _)| id != shown) {
        all.insert(0, (shown.to_owned(), shown.to_owned()));
    }
    all
}
