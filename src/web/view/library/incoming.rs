//! What waits to come in, before it does anything.

use super::record;
use crate::desk::records::{Incoming, Records};
use crate::library::file::Header;
use crate::library::log::{Conflict, Key, MergePreview};
use crate::library::table::{Preview, RecordTable};
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};

/// Changes of a table that are shown one by one.
const SHOWN: usize = 30;

/// The preview; nothing while nothing waits.
pub fn incoming(shop: &Records, voice: Voice) -> String {
    if let Some(refused) = shop.refused() {
        let head = voice.say(&LibraryPhrase::Refused { name: refused.name.clone() });
        return block(
            &head,
            "",
            &paragraph(&voice.file_error(&refused.why)),
            &leave(voice, LibraryLabel::Understood),
        );
    }
    let Some(incoming) = shop.incoming() else { return String::new() };
    match incoming {
        Incoming::Merge { name, header, preview, chosen, .. } => {
            merge(shop, name, header, preview, chosen, voice)
        }
        Incoming::Table { name, preview, .. } => table(shop, name, preview, voice),
        Incoming::Newer { name, records, .. } => {
            let said = LibraryPhrase::NewerFile { name: name.clone(), records: voice.count(*records) };
            block(name, "", &paragraph(&voice.say(&said)), &leave(voice, LibraryLabel::Understood))
        }
        Incoming::Draft { name, .. } => {
            let ways = markup::button("btn-main", "apply", voice.word(LibraryLabel::OpenDraft))
                + &leave(voice, LibraryLabel::LeaveIt);
            block(name, "", &paragraph(voice.word(LibraryLabel::DraftFound)), &ways)
        }
    }
}

fn block(head: &str, aside: &str, inside: &str, ways: &str) -> String {
    format!(
        "<section class=\"blk\" id=\"incoming\" aria-labelledby=\"mg\" tabindex=\"-1\">{}{inside}\
         <div class=\"row blk\">{ways}</div></section>",
        markup::head("mg", head, aside)
    )
}

fn paragraph(words: &str) -> String {
    format!("<p class=\"plain\">{}</p>", markup::text(words))
}

fn leave(voice: Voice, word: LibraryLabel) -> String {
    markup::button("btn-tall", "leave", voice.word(word))
}

fn merge(
    shop: &Records,
    name: &str,
    header: &Header,
    preview: &MergePreview,
    chosen: &[usize],
    voice: Voice,
) -> String {
    let clock = shop.clock();
    let saved = voice.moment(header.at, clock.now, clock.ahead);
    let aside = voice.say(&LibraryPhrase::MergeFrom { name: name.to_owned(), saved });
    if preview.is_empty() {
        let say = paragraph(voice.word(LibraryLabel::NothingToMerge));
        return block(voice.word(LibraryLabel::Merge), &aside, &say, &leave(voice, LibraryLabel::Understood));
    }
    let count = |count: usize| voice.count(count);
    let counts: String = [
        LibraryPhrase::Same { count: count(preview.same + preview.ahead) },
        LibraryPhrase::New { count: count(preview.new.len()) },
        LibraryPhrase::Newer { count: count(preview.changed.len()) },
        LibraryPhrase::ToChoose { count: count(preview.conflicts.len()) },
        LibraryPhrase::Lost { count: count(preview.lost) },
    ]
    .iter()
    .map(|told| {
        let told = voice.say(told);
        let (number, words) = told.split_once(' ').unwrap_or((&told, ""));
        format!("<p><b>{}</b> {}</p>", markup::text(number), markup::text(words))
    })
    .collect();
    let rows: String = preview
        .conflicts
        .iter()
        .zip(chosen)
        .enumerate()
        .map(|(at, ((key, conflict), &which))| choice(shop, at, key, conflict, which, voice))
        .collect();
    let rows = if rows.is_empty() {
        rows
    } else {
        format!("<h3 class=\"sec-head gap\">{}</h3>{rows}", markup::text(voice.word(LibraryLabel::Choose)))
    };
    let ways = [
        markup::button(
            "btn-main",
            "apply",
            &voice.say(&LibraryPhrase::MergeNow { count: count(preview.entries) }),
        ),
        leave(voice, LibraryLabel::LeaveIt),
        format!("<p class=\"cap fill\">{}</p>", markup::text(voice.word(LibraryLabel::NothingYet))),
    ];
    let inside = format!("<div class=\"counts\">{counts}</div>{rows}");
    block(voice.word(LibraryLabel::Merge), &aside, &inside, &ways.concat())
}

/// A value on which two tablets differ, with every claim.
fn choice(shop: &Records, at: usize, key: &Key, conflict: &Conflict, which: usize, voice: Voice) -> String {
    let claims: String = conflict
        .claims
        .iter()
        .enumerate()
        .map(|(number, claim)| {
            let mine = shop.log().get(&claim.entry).is_some();
            let whose = voice.word(if mine { LibraryLabel::ThisTablet } else { LibraryLabel::TheFile });
            let words = format!("{whose}: {}", record::claimed(conflict, &claim.value, voice));
            markup::answer(&format!("choose:{at} {number}"), number == which, &words)
        })
        .collect();
    let field = conflict.field.as_deref().map_or_else(String::new, |field| voice.field(field));
    format!(
        "<div class=\"differ\"><p><b>{}</b> {} {}</p><div class=\"seg\" role=\"group\">{claims}</div></div>",
        markup::text(&shop.name_of(key, voice.language)),
        markup::text(voice.kind(key.kind)),
        markup::text(&field)
    )
}

fn table(shop: &Records, name: &str, preview: &Preview, voice: Voice) -> String {
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
    let mut rows = String::new();
    for error in preview.errors.iter().take(SHOWN) {
        let place = LibraryPhrase::InRow { line: error.line, column: voice.field(&error.error.field) };
        rows += &format!(
            "<li><b>{}</b><span>{}</span></li>",
            markup::text(&voice.say(&place)),
            markup::text(&voice.problem(&error.error))
        );
    }
    for (key, changes) in preview.changed.iter().take(SHOWN) {
        let name = shop.name_of(key, voice.language);
        rows += &format!(
            "<li><b>{}</b><span>{}</span></li>",
            markup::text(&name),
            markup::text(&voice.changes(changes))
        );
    }
    for key in preview.added.iter().take(SHOWN) {
        rows += &format!(
            "<li><b>{}</b><span>{}</span></li>",
            markup::text(&key.id),
            markup::text(voice.word(LibraryLabel::Made))
        );
    }
    let coming = preview.added.len() + preview.changed.len();
    let (say, ways) = if preview.errors.is_empty() && coming > 0 {
        let bring = voice.say(&LibraryPhrase::ApplyRows { count: count(coming) });
        let say = voice.word(LibraryLabel::NothingYet);
        (say, markup::button("btn-main", "apply", &bring) + &leave(voice, LibraryLabel::LeaveIt))
    } else {
        let word =
            if preview.errors.is_empty() { LibraryLabel::NothingToMerge } else { LibraryLabel::FixRows };
        (voice.word(word), leave(voice, LibraryLabel::Understood))
    };
    let head = format!("{}: {}", voice.word(LibraryLabel::TableOf), voice.word(kind));
    let inside = format!("{}<ol class=\"hist table-rows\">{rows}</ol>{}", paragraph(&said), paragraph(say));
    block(&head, name, &inside, &ways)
}
