//! What was found, and the record that is open beside it.

use super::{form, named, record};
use crate::desk::State;
use crate::desk::records::{Hit, RecordGroup, Records};
use crate::library::log::Kind;
use crate::library::table::RecordTable;
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Quantity, Voice};

/// What can be looked in.
pub fn groups(state: &State) -> String {
    let (shop, voice) = (&state.records, state.voice());
    let words = [
        LibraryLabel::Fabrics,
        LibraryLabel::Whites,
        LibraryLabel::Lots,
        LibraryLabel::Dryers,
        LibraryLabel::Orders,
    ];
    let one = |(at, (look, word)): (usize, (RecordGroup, LibraryLabel))| {
        let words = format!("{} {}", voice.word(word), voice.count(shop.count(look)));
        markup::answer(&format!("look:{at}"), shop.group() == look, &words)
    };
    RecordGroup::ALL.into_iter().zip(words).enumerate().map(one).collect()
}

/// The list, and beside it the record or the form.
pub fn found(shop: &Records, voice: Voice, autosaves: Option<bool>) -> String {
    let hits = shop.hits(voice.language);
    let beside = match shop.form() {
        Some(writing) => form::form(shop, writing, voice),
        None => match shop.record() {
            Some(open) => record::record(shop, &open, voice),
            None => nothing_open(shop, voice),
        },
    };
    let list = if hits.is_empty() { none(shop, voice) } else { list(shop, &hits, voice) };
    format!(
        "<div class=\"lib blk\"><section aria-labelledby=\"hits\">{list}</section>\
         <section id=\"rec\" tabindex=\"-1\">{beside}{}</section></div>",
        files(shop, voice, autosaves)
    )
}

fn list(shop: &Records, hits: &[Hit], voice: Voice) -> String {
    let rows: String = hits.iter().map(|hit| row(shop, hit, voice)).collect();
    let more = if shop.found() > hits.len() {
        format!(
            "<div class=\"row blk\">{}</div>",
            markup::button("btn-tall", "more", voice.word(LibraryLabel::ShowMore))
        )
    } else {
        String::new()
    };
    let order = if shop.asked().trim().is_empty() { "" } else { voice.word(LibraryLabel::NearestFirst) };
    let head = markup::head("hits", voice.word(LibraryLabel::Found), order);
    format!("{head}<ul class=\"hits\">{rows}</ul>{more}{}", fresh(shop, voice))
}

fn row(shop: &Records, hit: &Hit, voice: Voice) -> String {
    let swatch = hit.colour.map_or_else(String::new, |lab| {
        format!(
            "<svg class=\"swatch true-colour\" viewBox=\"0 0 24 24\" aria-hidden=\"true\">\
             <rect width=\"24\" height=\"24\" fill=\"{}\"/></svg>",
            lab.swatch()
        )
    });
    let mut about = Vec::new();
    if !matches!(hit.key.kind, Kind::Fabric | Kind::White) {
        about.push(voice.kind(hit.key.kind).to_owned());
    }
    about.extend(hit.gsm.map(|gsm| voice.quantity(Quantity::Weight, gsm)));
    if hit.lots > 0 {
        about.push(match hit.key.kind {
            Kind::Fabric => voice.say(&LibraryPhrase::LotsHere { lots: hit.lots }),
            _ => format!(
                "{} {}",
                hit.lots,
                voice.kind(if hit.key.kind == Kind::Trial { Kind::Reading } else { Kind::Batch })
            ),
        });
    }
    let whose = if hit.own { LibraryLabel::Yours } else { LibraryLabel::Ships };
    let whose = if hit.differs { LibraryLabel::Differs } else { whose };
    let here = if shop.open() == Some(&hit.key) { " aria-current=\"true\"" } else { "" };
    format!(
        "<li><button type=\"button\" class=\"hit\"{here} data-do=\"{}\">{swatch}<span class=\"fill\"><b>{}</b>\
         <span>{}</span></span><span class=\"hit-v\">{}</span></button></li>",
        markup::text(&format!("see:{}", named(&hit.key))),
        markup::text(&hit.name),
        markup::text(&about.join(" · ")),
        markup::text(voice.word(whose)),
    )
}

/// Nothing was found.
fn none(shop: &Records, voice: Voice) -> String {
    let asked = shop.asked().trim();
    let (head, say) = if asked.is_empty() {
        (voice.word(LibraryLabel::Found).to_owned(), voice.word(LibraryLabel::EmptyLibrary))
    } else {
        (voice.say(&LibraryPhrase::NoneCalled { asked: asked.into() }), voice.word(LibraryLabel::EmptySay))
    };
    let instead: String = shop
        .instead()
        .iter()
        .map(|(word, count)| {
            let words = voice.say(&LibraryPhrase::LookFor { word: word.clone(), count: voice.count(*count) });
            markup::button("btn-tall", &format!("ask:{word}"), &words)
        })
        .collect();
    format!(
        "<div class=\"none\"><h2 id=\"hits\">{}</h2><p class=\"plain\">{}</p>\
         <div class=\"row blk\">{instead}</div>{}</div>",
        markup::text(&head),
        markup::text(say),
        fresh(shop, voice)
    )
}

/// What can be begun here.
fn fresh(shop: &Records, voice: Voice) -> String {
    let new = |kind: Kind, word: LibraryLabel| {
        markup::button("btn-tall", &format!("new:{}", kind as usize), voice.word(word))
    };
    let ways = match shop.group() {
        RecordGroup::Fabrics => {
            let label = markup::button("btn-main", "new-cloth", voice.word(LibraryLabel::NewCloth));
            label + &markup::button("btn-tall", "keep-cloth", voice.word(LibraryLabel::KeepCloth))
        }
        RecordGroup::Whites => new(Kind::White, LibraryLabel::NewWhite),
        RecordGroup::Lots => new(Kind::Trial, LibraryLabel::NewTrial),
        RecordGroup::Dryers => {
            new(Kind::Dryer, LibraryLabel::NewDryer) + &new(Kind::Mesh, LibraryLabel::NewMesh)
        }
        RecordGroup::Orders => markup::button("btn-main", "keep-order", voice.word(LibraryLabel::KeepOrder)),
    };
    format!("<div class=\"row blk\">{ways}</div>")
}

/// The ways out and in.
fn files(shop: &Records, voice: Voice, autosaves: Option<bool>) -> String {
    let tables: String = RecordTable::ALL
        .into_iter()
        .zip([LibraryLabel::Fabrics, LibraryLabel::Whites, LibraryLabel::Trials])
        .enumerate()
        .map(|(at, (_, word))| {
            markup::download(&format!("table-{at}"), "", &format!("table:{at}"), voice.word(word))
        })
        .collect();
    let by_itself = match autosaves {
        None => String::new(),
        Some(on) => {
            let word = if on { LibraryLabel::SavesItself } else { LibraryLabel::SaveItself };
            markup::answer("handle", on, voice.word(word))
        }
    };
    let reminder = shop.reminder();
    let last = reminder.days.map_or_else(
        || voice.word(LibraryLabel::NeverSaved).to_owned(),
        |days| voice.say(&LibraryPhrase::SavedDaysAgo { days }),
    );
    format!(
        "{}<div class=\"row\">{}<label class=\"btn btn-tall\" for=\"open-file\">{}\
         <input class=\"sr\" type=\"file\" id=\"open-file\"></label>{by_itself}</div>\
         <p class=\"cap blk\">{}</p><p class=\"label blk\">{}</p><div class=\"row\">{tables}</div>",
        markup::head("files", voice.word(LibraryLabel::Files), &last),
        markup::download("save-library", "btn-tall", "save", voice.word(LibraryLabel::SaveFile)),
        markup::text(voice.word(LibraryLabel::ImportFile)),
        markup::text(voice.word(LibraryLabel::DropHere)),
        markup::text(voice.word(LibraryLabel::SaveTables)),
    )
}

fn nothing_open(shop: &Records, voice: Voice) -> String {
    let word = if shop.log().is_empty() { LibraryLabel::EmptyLibrary } else { LibraryLabel::TapOne };
    format!("<p class=\"plain\">{}</p>", markup::text(voice.word(word)))
}
