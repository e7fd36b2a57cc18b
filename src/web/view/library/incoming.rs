//! What waits to be imported, before it does anything.

use super::record;
use crate::desk::Action;
use crate::desk::records::{Incoming, Records};
use crate::library::file::Header;
use crate::library::log::{Conflict, Key, MergePreview};
use crate::library::table::{Preview, RecordTable};
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};
use maud::{Markup, html};

/// Changes of a table that are shown one by one.
const SHOWN: usize = 30;

/// The preview; nothing while nothing waits.
pub fn incoming(records: &Records, voice: Voice) -> Markup {
    if let Some(refused) = records.refused() {
        let head = voice.say(&LibraryPhrase::Refused { name: refused.name.clone() });
        let why = paragraph(&voice.file_error(&refused.why));
        return block(&head, "", &why, &dismiss(voice, LibraryLabel::Understood));
    }
    let Some(incoming) = records.incoming() else { return Markup::default() };
    match incoming {
        Incoming::Merge { name, header, preview, chosen, .. } => {
            merge(records, name, header, preview, chosen, voice)
        }
        Incoming::Table { name, preview, .. } => table(records, name, preview, voice),
        Incoming::Newer { name, records, .. } => {
            let said = LibraryPhrase::NewerFile { name: name.clone(), records: voice.count(*records) };
            block(name, "", &paragraph(&voice.say(&said)), &dismiss(voice, LibraryLabel::Understood))
        }
        Incoming::Draft { name, .. } => {
            let choices = html! {
                (import(voice.word(LibraryLabel::OpenDraft)))
                (dismiss(voice, LibraryLabel::LeaveIt))
            };
            block(name, "", &paragraph(voice.word(LibraryLabel::DraftFound)), &choices)
        }
    }
}

fn block(head: &str, aside: &str, inside: &Markup, choices: &Markup) -> Markup {
    html! {
        section class="blk" id="incoming" aria-labelledby="mg" tabindex="-1" {
            (markup::head("mg", head, aside))
            (inside)
            div class="row blk" { (choices) }
        }
    }
}

fn paragraph(words: &str) -> Markup {
    html! { p class="plain" { (words) } }
}

fn import(words: &str) -> Markup {
    markup::button("btn-main", &Action::Import, words)
}

fn dismiss(voice: Voice, word: LibraryLabel) -> Markup {
    markup::button("btn-tall", &Action::DismissImport, voice.word(word))
}

fn merge(
    records: &Records,
    name: &str,
    header: &Header,
    preview: &MergePreview,
    chosen: &[usize],
    voice: Voice,
) -> Markup {
    let clock = records.clock();
    let saved = voice.moment(header.at, clock.now, clock.ahead);
    let aside = voice.say(&LibraryPhrase::MergeFrom { name: name.to_owned(), saved });
    let head = voice.word(LibraryLabel::Merge);
    if preview.is_empty() {
        let say = paragraph(voice.word(LibraryLabel::NothingToMerge));
        return block(head, &aside, &say, &dismiss(voice, LibraryLabel::Understood));
    }
    let conflicts = preview.conflicts.iter().zip(chosen).enumerate();
    let inside = html! {
        div class="counts" { (counts(preview, voice)) }
        @if !preview.conflicts.is_empty() {
            h3 class="sec-head gap" { (voice.word(LibraryLabel::Choose)) }
            @for (at, ((key, conflict), which)) in conflicts {
                (choice(records, at, key, conflict, *which, voice))
            }
        }
    };
    let count = voice.count(preview.entries);
    let choices = html! {
        (import(&voice.say(&LibraryPhrase::MergeNow { count })))
        (dismiss(voice, LibraryLabel::LeaveIt))
        p class="cap fill" { (voice.word(LibraryLabel::NothingYet)) }
    };
    block(head, &aside, &inside, &choices)
}

/// How many records are the same, new, newer, to choose and lost; the number of each leads its words.
fn counts(preview: &MergePreview, voice: Voice) -> Markup {
    let count = |count: usize| voice.count(count);
    let said = [
        LibraryPhrase::Same { count: count(preview.same + preview.ahead) },
        LibraryPhrase::New { count: count(preview.new.len()) },
        LibraryPhrase::Newer { count: count(preview.changed.len()) },
        LibraryPhrase::ToChoose { count: count(preview.conflicts.len()) },
        LibraryPhrase::Lost { count: count(preview.lost) },
    ];
    html! {
        @for phrase in &said {
            @let said = voice.say(phrase);
            @let (number, words) = said.split_once(' ').unwrap_or((&said, ""));
            p { b { (number) } " " (words) }
        }
    }
}

/// A value on which two tablets differ, with every claim.
fn choice(
    records: &Records,
    at: usize,
    key: &Key,
    conflict: &Conflict,
    which: usize,
    voice: Voice,
) -> Markup {
    let field = conflict.field.as_deref().map_or_else(String::new, |field| voice.field(field));
    html! {
        div class="differ" {
            p {
                b { (records.name_of(key, voice.language)) } " " (voice.kind(key.kind)) " " (field)
            }
            div class="seg" role="group" {
                @for (place, claim) in conflict.claims.iter().enumerate() {
                    @let mine = records.log().get(&claim.entry).is_some();
                    @let whose = if mine { LibraryLabel::ThisTablet } else { LibraryLabel::TheFile };
                    @let claimed = record::claimed(conflict, &claim.value, voice);
                    @let words = format!("{}: {claimed}", voice.word(whose));
                    (markup::answer(&Action::ChooseClaim(at, place), place == which, &words))
                }
            }
        }
    }
}

fn table(records: &Records, name: &str, preview: &Preview, voice: Voice) -> Markup {
    let kind = match preview.table {
        RecordTable::Fabrics => LibraryLabel::Fabrics,
        RecordTable::Whites => LibraryLabel::Whites,
        RecordTable::Trials => LibraryLabel::Trials,
    };
    let count = |count: usize| voice.count(count);
    let said = voice.say(&LibraryPhrase::TableRows {
        added: count(preview.added.len()),
        changed: count(preview.changed.len()),
        unchanged: count(preview.unchanged),
        wrong: count(preview.errors.len()),
    });
    let coming = preview.added.len() + preview.changed.len();
    let (say, choices) = if preview.errors.is_empty() && coming > 0 {
        let words = voice.say(&LibraryPhrase::ApplyRows { count: count(coming) });
        let choices = html! { (import(&words)) (dismiss(voice, LibraryLabel::LeaveIt)) };
        (LibraryLabel::NothingYet, choices)
    } else {
        let nothing = preview.errors.is_empty();
        let word = if nothing { LibraryLabel::NothingToMerge } else { LibraryLabel::FixRows };
        (word, dismiss(voice, LibraryLabel::Understood))
    };
    let head = format!("{}: {}", voice.word(LibraryLabel::TableOf), voice.word(kind));
    let inside = html! {
        (paragraph(&said))
        ol class="hist table-rows" { (table_rows(records, preview, voice)) }
        (paragraph(voice.word(say)))
    };
    block(&head, name, &inside, &choices)
}

/// Rows that are wrong, that change a record, and that are new: the first of each.
fn table_rows(records: &Records, preview: &Preview, voice: Voice) -> Markup {
    html! {
        @for error in preview.errors.iter().take(SHOWN) {
            @let place = LibraryPhrase::InRow { line: error.line, column: voice.field(&error.error.field) };
            li { b { (voice.say(&place)) } span { (voice.problem(&error.error)) } }
        }
        @for (key, changes) in preview.changed.iter().take(SHOWN) {
            li { b { (records.name_of(key, voice.language)) } span { (voice.changes(changes)) } }
        }
        @for key in preview.added.iter().take(SHOWN) {
            li { b { (key.id) } span { (voice.word(LibraryLabel::Made)) } }
        }
    }
}
