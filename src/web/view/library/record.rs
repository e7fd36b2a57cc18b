//! The record that is open: what it holds, what belongs to it, what happened to it.

use crate::desk::Action;
use crate::desk::records::{Fact, Moment, OpenRecord, RecordEvent, Records};
use crate::library::log::{Conflict, Kind};
use crate::library::table::columns;
use crate::web::view::widgets::markup;
use crate::wording::{LibraryLabel, LibraryPhrase, Voice};
use maud::{Markup, html};

/// The record.
pub fn record(records: &Records, open: &OpenRecord, voice: Voice) -> Markup {
    let whose = match (open.removed, open.own) {
        (true, _) => LibraryLabel::Removed,
        (_, true) => LibraryLabel::Yours,
        _ => LibraryLabel::Ships,
    };
    let aside = format!("{}, {}", voice.kind(open.key.kind), voice.word(whose));
    html! {
        (markup::head("rech", &open.name, &aside))
        @for (at, differing) in open.conflicts.iter().enumerate() { (conflict(records, at, differing, voice)) }
        div class="row" { (actions(open, voice)) }
        (facts(&open.facts, voice))
        (parts(open, voice))
        (past(records, open, voice))
    }
}

fn actions(open: &OpenRecord, voice: Voice) -> Markup {
    let kind = open.key.kind;
    let button =
        |class: &str, action: Action, word: LibraryLabel| markup::button(class, &action, voice.word(word));
    let into_form = match kind {
        Kind::Fabric => Some(LibraryLabel::PrintOnThis),
        Kind::Order => Some(LibraryLabel::OpenThis),
        _ => None,
    };
    html! {
        @if !open.removed {
            @if let Some(word) = into_form {
                (button("btn-main", Action::PutInForm(open.key.clone()), word))
            }
            @if !columns(kind).is_empty() { (button("btn-tall", Action::EditRecord, LibraryLabel::Edit)) }
        }
        @for &(kind, word) in parts_to_add(kind) {
            (button("btn-tall", Action::NewRecord(kind, Some(open.key.id.clone())), word))
        }
        @if open.own { (button("btn-tall", Action::RemoveRecord, LibraryLabel::TakeOut)) }
    }
}

/// What can be added to a record of a kind.
fn parts_to_add(kind: Kind) -> &'static [(Kind, LibraryLabel)] {
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

fn facts(facts: &[Fact], voice: Voice) -> Markup {
    html! {
        dl class="holds blk" {
            @for fact in facts { dt { (voice.field(&fact.path)) } dd { (voice.value(Some(&fact.value))) } }
        }
    }
}

fn parts(open: &OpenRecord, voice: Voice) -> Markup {
    let said = |facts: &[Fact]| {
        let said = |fact: &Fact| format!("{} {}", voice.field(&fact.path), voice.value(Some(&fact.value)));
        facts.iter().map(said).collect::<Vec<_>>().join(" · ")
    };
    html! {
        @if !open.parts.is_empty() {
            h3 class="sec-head gap" { (voice.word(LibraryLabel::WhatBelongs)) }
            ul class="hits" {
                @for (key, facts) in &open.parts {
                    @let id = key.id.rsplit('/').next().unwrap_or_default();
                    li {
                        button type="button" class="hit" data-do=(Action::OpenRecord(key.clone())) {
                            span class="fill" {
                                b { (voice.kind(key.kind)) " " (id) }
                                span { (said(facts)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn past(records: &Records, open: &OpenRecord, voice: Voice) -> Markup {
    html! {
        h3 class="sec-head gap" { (voice.word(LibraryLabel::WhatHappened)) }
        @if open.past.is_empty() {
            p class="cap" { (voice.word(LibraryLabel::NothingHappened)) }
        } @else {
            ol class="hist" { @for moment in &open.past { (happened(records, moment, voice)) } }
        }
    }
}

fn happened(records: &Records, moment: &Moment, voice: Voice) -> Markup {
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
    let clock = records.clock();
    html! {
        li {
            b { (voice.moment(moment.at, clock.now, clock.ahead)) }
            span { (said.trim()) }
            @if moment.now {
                span class="cap" { (voice.word(LibraryLabel::AsItIsNow)) }
            } @else {
                @let action = Action::BringBack(moment.entry.clone());
                (markup::button("", &action, voice.word(LibraryLabel::BringBack)))
            }
        }
    }
}

/// Values between which a choice has to be made.
fn conflict(records: &Records, at: usize, conflict: &Conflict, voice: Voice) -> Markup {
    let clock = records.clock();
    let field = conflict.field.as_deref().map_or_else(String::new, |field| voice.field(field));
    html! {
        div class="stale" {
            p { b { (field) } " " (voice.word(LibraryLabel::Choose)) }
            div class="row" {
                @for (place, claim) in conflict.claims.iter().enumerate() {
                    @let when = records.log().get(&claim.entry).map_or_else(String::new, |entry| {
                        format!(" · {}", voice.moment(entry.at, clock.now, clock.ahead))
                    });
                    @let words = format!("{}{when}", claimed(conflict, &claim.value, voice));
                    (markup::button("btn-tall", &Action::Resolve(at, place), &words))
                }
            }
        }
    }
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
