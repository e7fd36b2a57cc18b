//! The record that is open: what it holds, what belongs to it, what happened to it.

use super::named;
use crate::desk::records::{Fact, Moment, OpenRecord, RecordEvent, Records};
use crate::library::log::{Conflict, Kind};
use crate::library::table::columns;
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};

/// The record.
pub fn record(shop: &Records, open: &OpenRecord, voice: Voice) -> String {
    let whose = match (open.removed, open.own) {
        (true, _) => LibraryLabel::Removed,
        (_, true) => LibraryLabel::Yours,
        _ => LibraryLabel::Ships,
    };
    let kind = voice.kind(open.key.kind);
    let aside = format!("{kind}, {}", voice.word(whose));
    let conflicts: String = open.conflicts.iter().enumerate().map(|it| conflict(shop, it, voice)).collect();
    [
        markup::head("rech", &open.name, &aside),
        conflicts,
        acts(open, voice),
        facts(&open.facts, voice),
        parts(open, voice),
        past(shop, open, voice),
    ]
    .concat()
}

fn acts(open: &OpenRecord, voice: Voice) -> String {
    let mut acts = String::new();
    match open.key.kind {
        Kind::Fabric if !open.removed => {
            acts += &markup::button("btn-main", "take", voice.word(LibraryLabel::PrintOnThis));
        }
        Kind::Order if !open.removed => {
            acts += &markup::button("btn-main", "take", voice.word(LibraryLabel::OpenThis));
        }
        _ => {}
    }
    if !columns(open.key.kind).is_empty() && !open.removed {
        acts += &markup::button("btn-tall", "edit", voice.word(LibraryLabel::Edit));
    }
    let id = &open.key.id;
    for &(kind, word) in begins(open.key.kind) {
        acts += &markup::button("btn-tall", &format!("new:{} {id}", kind as usize), voice.word(word));
    }
    if open.own {
        acts += &markup::button("btn-tall", "remove", voice.word(LibraryLabel::TakeOut));
    }
    format!("<div class=\"row\">{acts}</div>")
}

/// What can be added to a record of a kind.
fn begins(kind: Kind) -> &'static [(Kind, LibraryLabel)] {
    match kind {
        Kind::Fabric => &[(Kind::Lot, LibraryLabel::NewLot), (Kind::Trial, LibraryLabel::NewTrial)],
        Kind::Lot => &[(Kind::Trial, LibraryLabel::NewTrial)],
        Kind::White => &[(Kind::Batch, LibraryLabel::NewBatch)],
        Kind::Dryer => {
            &[(Kind::DailyCheck, LibraryLabel::NewCheck), (Kind::Calibration, LibraryLabel::NewProbeRun)]
        }
        Kind::Trial => &[(Kind::Reading, LibraryLabel::NewReading), (Kind::FollowUp, LibraryLabel::NewLook)],
        _ => &[],
    }
}

fn facts(facts: &[Fact], voice: Voice) -> String {
    let one = |fact: &Fact| {
        let [name, value] = [voice.field(&fact.path), voice.value(Some(&fact.value))];
        format!("<dt>{}</dt><dd>{}</dd>", markup::text(&name), markup::text(&value))
    };
    let list: String = facts.iter().map(one).collect();
    format!("<dl class=\"holds blk\">{list}</dl>")
}

fn parts(open: &OpenRecord, voice: Voice) -> String {
    if open.parts.is_empty() {
        return String::new();
    }
    let one = |(key, facts): &(crate::library::log::Key, Vec<Fact>)| {
        let said: Vec<String> = facts
            .iter()
            .map(|fact| format!("{} {}", voice.field(&fact.path), voice.value(Some(&fact.value))))
            .collect();
        format!(
            "<li><button type=\"button\" class=\"hit\" data-do=\"{}\"><span class=\"fill\"><b>{} {}</b>\
             <span>{}</span></span></button></li>",
            markup::text(&format!("see:{}", named(key))),
            markup::text(voice.kind(key.kind)),
            markup::text(key.id.rsplit('/').next().unwrap_or_default()),
            markup::text(&said.join(" · ")),
        )
    };
    let list: String = open.parts.iter().map(one).collect();
    format!(
        "<h3 class=\"sec-head gap\">{}</h3><ul class=\"hits\">{list}</ul>",
        markup::text(voice.word(LibraryLabel::WhatBelongs))
    )
}

fn past(shop: &Records, open: &OpenRecord, voice: Voice) -> String {
    let list: String = open.past.iter().map(|moment| happened(shop, moment, voice)).collect();
    let list = if list.is_empty() {
        format!("<p class=\"cap\">{}</p>", markup::text(voice.word(LibraryLabel::NothingHappened)))
    } else {
        format!("<ol class=\"hist\">{list}</ol>")
    };
    format!("<h3 class=\"sec-head gap\">{}</h3>{list}", markup::text(voice.word(LibraryLabel::WhatHappened)))
}

fn happened(shop: &Records, moment: &Moment, voice: Voice) -> String {
    let mut said = match &moment.what {
        RecordEvent::Made => voice.word(LibraryLabel::Made).to_owned(),
        RecordEvent::Copied(changes) => {
            format!("{} {}", voice.word(LibraryLabel::Copied), voice.changes(changes))
        }
        RecordEvent::Changed(changes) => voice.changes(changes),
        RecordEvent::Removed => voice.word(LibraryLabel::TakenOut).to_owned(),
    };
    let mut aside = Vec::new();
    if moment.elsewhere {
        aside.push(voice.word(LibraryLabel::OnAnotherTablet).to_owned());
    }
    aside.extend(moment.from.iter().map(|name| voice.say(&LibraryPhrase::FromFile { name: name.clone() })));
    if !aside.is_empty() {
        said = format!("{said} ({})", aside.join(", "));
    }
    if !moment.counts {
        said = format!("{said} {}", voice.word(LibraryLabel::Undone));
    }
    let act = if moment.now {
        format!("<span class=\"cap\">{}</span>", markup::text(voice.word(LibraryLabel::AsItIsNow)))
    } else {
        markup::button("", &format!("back:{}", moment.entry), voice.word(LibraryLabel::BringBack))
    };
    let clock = shop.clock();
    format!(
        "<li><b>{}</b><span>{}</span>{act}</li>",
        markup::text(&voice.moment(moment.at, clock.now, clock.ahead)),
        markup::text(said.trim())
    )
}

/// Values among which somebody has to choose.
fn conflict(shop: &Records, (at, conflict): (usize, &Conflict), voice: Voice) -> String {
    let clock = shop.clock();
    let claims: String = conflict
        .claims
        .iter()
        .enumerate()
        .map(|(number, claim)| {
            let when = shop.log().get(&claim.entry).map_or_else(String::new, |entry| {
                format!(" · {}", voice.moment(entry.at, clock.now, clock.ahead))
            });
            let words = format!("{}{when}", claimed(conflict, &claim.value, voice));
            markup::button("btn-tall", &format!("settle:{at} {number}"), &words)
        })
        .collect();
    format!(
        "<div class=\"stale\"><p><b>{}</b> {}</p><div class=\"row\">{claims}</div></div>",
        markup::text(&conflict.field.as_deref().map_or_else(String::new, |field| voice.field(field))),
        markup::text(voice.word(LibraryLabel::Choose))
    )
}

/// What a claim says.
pub fn claimed(conflict: &Conflict, value: &serde_json::Value, voice: Voice) -> String {
    match (&conflict.field, value.as_bool()) {
        (None, Some(stays)) => {
            voice.word(if stays { LibraryLabel::Stays } else { LibraryLabel::Goes }).into()
        }
        _ => voice.value(Some(value)),
    }
}
