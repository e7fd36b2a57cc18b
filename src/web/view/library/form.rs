//! A record written by hand.

use crate::desk::records::Records;
use crate::library::log::Kind;
use crate::library::table::{CellKind, Form, TableColumn};
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, Voice};

/// The form. What is typed into it is told letter by letter and drawn anew only when it is to be kept.
pub fn form(shop: &Records, writing: &Form, voice: Voice) -> String {
    let fields: String =
        writing.columns().map(|(at, column)| field(shop, writing, at, column, voice)).collect();
    let mut told = writing.errors.clone();
    for (_, column) in writing.columns() {
        let named: Vec<_> = writing.errors_of(column).cloned().collect();
        told.retain(|error| !named.contains(error));
    }
    let rest: String = told.iter().map(|error| wrong(&voice.problem(error))).collect();
    let word = if writing.id.is_some() { LibraryLabel::Edit } else { LibraryLabel::New };
    format!(
        "{}<div class=\"stack\" id=\"form\">{fields}{rest}<div class=\"row\">{}{}</div></div>",
        markup::head("rech", &format!("{}: {}", voice.word(word), voice.kind(writing.kind)), ""),
        markup::button("btn-main", "put", voice.word(LibraryLabel::KeepIt)),
        markup::button("btn-tall", "drop", voice.word(LibraryLabel::LeaveIt)),
    )
}

fn field(shop: &Records, writing: &Form, at: usize, column: &TableColumn, voice: Voice) -> String {
    let shown = writing.shown.get(at).map_or("", String::as_str);
    let unit = match column.what {
        CellKind::Number(bound) | CellKind::Sourced(bound) if !matches!(bound.unit, "" | "1") => {
            format!(", {}", bound.unit)
        }
        _ => String::new(),
    };
    let name = markup::text(&format!("{}{unit}", voice.field(column.name)));
    let input = match column.what {
        CellKind::Word(words) => {
            let words = words.iter().map(|&word| (word.to_owned(), voice.value(Some(&word.into()))));
            choose(at, shown, words.collect())
        }
        CellKind::Flag => {
            let both = [("no", LibraryLabel::No), ("yes", LibraryLabel::Yes)];
            choose(
                at,
                shown,
                both.map(|(word, name)| (word.to_owned(), voice.word(name).to_owned())).to_vec(),
            )
        }
        CellKind::Of(kind) => choose(at, shown, known(shop, kind, shown)),
        _ => {
            let (kind, mode) = match column.what {
                CellKind::Day => ("date", "none"),
                CellKind::Number(_) | CellKind::Sourced(_) => ("text", "decimal"),
                CellKind::Count(_) => ("text", "numeric"),
                _ => ("text", "text"),
            };
            format!(
                "<input class=\"field\" id=\"c-{at}\" data-column=\"{at}\" type=\"{kind}\" inputmode=\"{mode}\" \
                 autocomplete=\"off\" value=\"{}\">",
                markup::text(shown)
            )
        }
    };
    let wrong: String = writing.errors_of(column).map(|error| wrong(&voice.problem(error))).collect();
    format!("<div><label class=\"label\" for=\"c-{at}\">{name}</label>{input}{wrong}</div>")
}

fn wrong(sentence: &str) -> String {
    format!("<p class=\"err\"><span aria-hidden=\"true\">×</span><span>{}</span></p>", markup::text(sentence))
}

fn choose(at: usize, shown: &str, words: Vec<(String, String)>) -> String {
    let none = [(String::new(), "–".to_owned())];
    let option = |(word, name): (String, String)| {
        let chosen = if word == shown { " selected" } else { "" };
        format!("<option value=\"{}\"{chosen}>{}</option>", markup::text(&word), markup::text(&name))
    };
    let options: String = none.into_iter().chain(words).map(option).collect();
    format!("<select class=\"field\" id=\"c-{at}\" data-column=\"{at}\">{options}</select>")
}

/// Most cloths that are offered: the rest are found by search, where a trial is begun on them.
const OFFERED: usize = 60;

/// Records of a kind by id and name, the one that stands there first.
fn known(shop: &Records, kind: Kind, shown: &str) -> Vec<(String, String)> {
    let library = shop.library();
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
