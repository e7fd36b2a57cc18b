//! What was found, and the record that is open beside it.

use super::{form, record};
use crate::desk::records::{Hit, RecordGroup, Records};
use crate::desk::{Action, State};
use crate::library::log::Kind;
use crate::library::table::RecordTable;
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Quantity, Voice};
use maud::{Markup, html};

/// The groups of records to search in.
pub fn groups(state: &State) -> Markup {
    let (records, voice) = (&state.records, state.voice());
    html! {
        @for group in RecordGroup::ALL {
            @let words = format!("{} {}", voice.word(name_of(group)), voice.count(records.count(group)));
            (markup::answer(&Action::Group(group), records.group() == group, &words))
        }
    }
}

fn name_of(group: RecordGroup) -> LibraryLabel {
    match group {
        RecordGroup::Fabrics => LibraryLabel::Fabrics,
        RecordGroup::Whites => LibraryLabel::Whites,
        RecordGroup::Lots => LibraryLabel::Lots,
        RecordGroup::Dryers => LibraryLabel::Dryers,
        RecordGroup::Orders => LibraryLabel::Orders,
    }
}

/// The list, and beside it the record or the form.
pub fn found(records: &Records, voice: Voice, autosaves: Option<bool>) -> Markup {
    let hits = records.hits(voice.language);
    html! {
        div class="lib blk" {
            section aria-labelledby="hits" {
                @if hits.is_empty() { (none(records, voice)) } @else { (list(records, &hits, voice)) }
            }
            section id="rec" tabindex="-1" {
                @if let Some(writing) = records.form() {
                    (form::form(records, writing, voice))
                } @else if let Some(open) = records.record() {
                    (record::record(records, &open, voice))
                } @else {
                    (nothing_open(records, voice))
                }
                (files(records, voice, autosaves))
            }
        }
    }
}

fn list(records: &Records, hits: &[Hit], voice: Voice) -> Markup {
    let everything = records.asked().trim().is_empty();
    let order = if everything { "" } else { voice.word(LibraryLabel::NearestFirst) };
    html! {
        (markup::head("hits", voice.word(LibraryLabel::Found), order))
        ul class="hits" { @for hit in hits { (row(records, hit, voice)) } }
        @if records.found() > hits.len() {
            div class="row blk" {
                (markup::button("btn-tall", &Action::ShowMore, voice.word(LibraryLabel::ShowMore)))
            }
        }
        (fresh(records, voice))
    }
}

fn row(records: &Records, hit: &Hit, voice: Voice) -> Markup {
    let whose = if hit.own { LibraryLabel::Yours } else { LibraryLabel::Ships };
    let whose = if hit.differs { LibraryLabel::Differs } else { whose };
    let here = (records.open() == Some(&hit.key)).then_some("true");
    html! {
        li {
            button type="button" class="hit" aria-current=[here] data-do=(Action::OpenRecord(hit.key.clone())) {
                @if let Some(lab) = hit.colour {
                    svg class="swatch true-colour" viewBox="0 0 24 24" aria-hidden="true" {
                        rect width="24" height="24" fill=(lab.swatch()) {}
                    }
                }
                span class="fill" { b { (hit.name) } span { (about(hit, voice)) } }
                span class="hit-v" { (voice.word(whose)) }
            }
        }
    }
}

/// Kind, weight, and how many records belong to it.
fn about(hit: &Hit, voice: Voice) -> String {
    let kind = hit.key.kind;
    let mut about = Vec::new();
    if !matches!(kind, Kind::Fabric | Kind::White) {
        about.push(voice.kind(kind).to_owned());
    }
    about.extend(hit.gsm.map(|gsm| voice.quantity(Quantity::Weight, gsm)));
    if hit.lots > 0 {
        about.push(match kind {
            Kind::Fabric => voice.say(&LibraryPhrase::LotsHere { lots: hit.lots }),
            Kind::Trial => format!("{} {}", hit.lots, voice.kind(Kind::Reading)),
            _ => format!("{} {}", hit.lots, voice.kind(Kind::Batch)),
        });
    }
    about.join(" · ")
}

/// Nothing was found.
fn none(records: &Records, voice: Voice) -> Markup {
    let asked = records.asked().trim();
    let (head, say) = if asked.is_empty() {
        (voice.word(LibraryLabel::Found).to_owned(), LibraryLabel::EmptyLibrary)
    } else {
        (voice.say(&LibraryPhrase::NoneCalled { asked: asked.into() }), LibraryLabel::EmptySay)
    };
    html! {
        div class="none" {
            h2 id="hits" { (head) }
            p class="plain" { (voice.word(say)) }
            div class="row blk" {
                @for (word, count) in records.instead() {
                    @let count = voice.count(*count);
                    @let words = voice.say(&LibraryPhrase::LookFor { word: word.clone(), count });
                    (markup::button("btn-tall", &Action::Search(word.clone()), &words))
                }
            }
            (fresh(records, voice))
        }
    }
}

/// What can be begun in this group.
fn fresh(records: &Records, voice: Voice) -> Markup {
    let button =
        |class: &str, action: Action, word: LibraryLabel| markup::button(class, &action, voice.word(word));
    let new = |kind: Kind, word: LibraryLabel| button("btn-tall", Action::NewRecord(kind, None), word);
    html! {
        div class="row blk" {
            @match records.group() {
                RecordGroup::Fabrics => {
                    (button("btn-main", Action::NewCloth, LibraryLabel::NewCloth))
                    (button("btn-tall", Action::KeepCloth, LibraryLabel::KeepCloth))
                }
                RecordGroup::Whites => { (new(Kind::White, LibraryLabel::NewWhite)) }
                RecordGroup::Lots => { (new(Kind::Trial, LibraryLabel::NewTrial)) }
                RecordGroup::Dryers => {
                    (new(Kind::Dryer, LibraryLabel::NewDryer))
                    (new(Kind::Mesh, LibraryLabel::NewMesh))
                }
                RecordGroup::Orders => {
                    (button("btn-main", Action::KeepOrder, LibraryLabel::KeepOrder))
                }
            }
        }
    }
}

/// Files out and in.
fn files(records: &Records, voice: Voice, autosaves: Option<bool>) -> Markup {
    let last = records.reminder().days.map_or_else(
        || voice.word(LibraryLabel::NeverSaved).to_owned(),
        |days| voice.say(&LibraryPhrase::SavedDaysAgo { days }),
    );
    let names = [LibraryLabel::Fabrics, LibraryLabel::Whites, LibraryLabel::Trials];
    let save = voice.word(LibraryLabel::SaveFile);
    html! {
        (markup::head("files", voice.word(LibraryLabel::Files), &last))
        div class="row" {
            (markup::download("save-library", "btn-tall", &Action::SaveLibrary, save))
            label class="btn btn-tall" for="open-file" {
                (voice.word(LibraryLabel::ImportFile))
                input class="sr" type="file" id="open-file";
            }
            @if let Some(on) = autosaves {
                @let word = if on { LibraryLabel::SavesItself } else { LibraryLabel::SaveItself };
                (markup::answer(&Action::AutosaveFile, on, voice.word(word)))
            }
        }
        p class="cap blk" { (voice.word(LibraryLabel::DropHere)) }
        p class="label blk" { (voice.word(LibraryLabel::SaveTables)) }
        div class="row" {
            @for (table, word) in RecordTable::ALL.into_iter().zip(names) {
                @let action = Action::SaveTable(table);
                @let id = action.to_string().replace(':', "-");
                (markup::download(&id, "", &action, voice.word(word)))
            }
        }
    }
}

fn nothing_open(records: &Records, voice: Voice) -> Markup {
    let empty = records.log().is_empty();
    let word = if empty { LibraryLabel::EmptyLibrary } else { LibraryLabel::TapOne };
    html! { p class="plain" { (voice.word(word)) } }
}
