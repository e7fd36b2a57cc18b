//! What would change the answer, what to do, other picks, whites that cannot do it, what to be careful of.

use crate::desk::{Action, key};
use crate::plan::{Code, Pick, PrintStep, Reason, Report, Topic, Value, Verdict};
use crate::web::view::widgets::icon;
use crate::web::view::widgets::markup::{self, mark};
use crate::wording::{Label, Numeral, Phrase, Voice};
use maud::{Markup, html};

/// True for a code that says what would change the answer, not why it is so.
pub fn is_change(code: Code) -> bool {
    matches!(
        code,
        Code::BuyClass
            | Code::UseBlocker
            | Code::IfUndyed
            | Code::IfDried
            | Code::OtherProcess
            | Code::OpensCooler
            | Code::OpensHotter
            | Code::OpensSlower
            | Code::OpensFaster
            | Code::OpensPreDry
            | Code::OpensThinner
            | Code::OpensTwoPasses
            | Code::OpensLowCure
    )
}

/// The verdict a change would lead to.
fn leads_to(reason: &Reason) -> Option<Verdict> {
    match reason.values.get("verdict") {
        Some(Value::Word(word)) => serde_json::from_value(serde_json::Value::String(word.clone())).ok(),
        _ => None,
    }
}

/// What would change the answer; what the page can do at once is a button.
pub fn changes(report: &Report, voice: Voice) -> Markup {
    let inside = |reason: &Reason| {
        html! {
            span { (voice.reason(reason)) }
            @if let Some(verdict) = leads_to(reason) {
                span class="num" { (voice.verdict_short(verdict)) }
                (mark(verdict))
            }
        }
    };
    let rows = html! {
        @for reason in &report.to_make_it_possible {
            @if reason.code == Code::IfUndyed {
                button class="btn" type="button" data-do=(Action::AssumeUndyed) { (inside(reason)) }
            } @else {
                p class="if-row" { (inside(reason)) }
            }
        }
    };
    titled(Label::WouldChange, &rows, |rows| html! { div class="if" { (rows) } }, voice)
}

/// A block with a list of rows; nothing where there is none. `list` puts the rows into their list.
fn titled(title: Label, rows: &Markup, list: impl Fn(&Markup) -> Markup, voice: Voice) -> Markup {
    html! { @if !rows.0.is_empty() { (markup::block(voice.label(title), "", &list(rows))) } }
}

/// What to do, and what to look at on the first piece.
pub fn to_do(pick: &Pick, voice: Voice) -> Markup {
    let advice = html! { @for advice in &pick.advice { li { (voice.advice(*advice)) } } };
    let checks = html! { @for code in &pick.first_piece { li { (voice.code(*code)) } } };
    let dashes = |rows: &Markup| html! { ul class="plain dashes" { (rows) } };
    html! {
        (titled(Label::ToDo, &advice, dashes, voice))
        (titled(Label::FirstPiece, &checks, dashes, voice))
    }
}

/// The picks as a table, each with a button that chooses it.
pub fn other_picks(report: &Report, chosen: &Pick, money: &str, voice: Voice) -> Markup {
    if report.picks.len() < 2 {
        return Markup::default();
    }
    let right = |label: Label| html! { th class="r" { (voice.label(label)) } };
    let heads = html! {
        (markup::mark_column(voice.label(Label::Verdict)))
        th { (voice.label(Label::White)) }
        th class="r" { (voice.topic(Topic::Bleed)) }
        (right(Label::LateFault))
        (right(Label::PerHour))
        th class="r" { (voice.label(Label::PerPrint)) (money) }
        th { span class="sr" { (voice.label(Label::Use)) } }
    };
    let rows = html! {
        @for pick in &report.picks { (pick_row(pick, std::ptr::eq(pick, chosen), voice)) }
    };
    let name = voice.label(Label::OtherWays);
    markup::block(name, voice.label(Label::ShelfFirst), &markup::table(name, &heads, &rows))
}

fn pick_row(pick: &Pick, chosen: bool, voice: Voice) -> Markup {
    let numeral = Numeral(voice.language);
    let blocker = pick.steps.iter().find_map(|step| match step {
        PrintStep::Blocker { name, .. } => Some(voice.say(&Phrase::Needs { blocker: name.clone() })),
        _ => None,
    });
    let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed);
    html! {
        tr {
            (markup::mark_cell(pick.verdict, voice.verdict(pick.verdict)))
            td {
                b { (pick.name) }
                br;
                (blocker.unwrap_or_else(|| voice.label(Label::NoBlocker).to_lowercase()))
                @if pick.is_dried() { ", " (voice.label(Label::DriedFirst)) }
            }
            td class="r" {
                (bleed.map_or_else(|| "–".into(), |margin| voice.margin(margin, margin.value.likely)))
            }
            td class="r" { (voice.chance(pick.fail_later.likely)) }
            td class="r" { (numeral.fixed(pick.rate_per_hour.likely, 0)) }
            td class="r" { (numeral.fixed(pick.cost_per_print.likely, 2)) }
            td {
                @if chosen {
                    b { (voice.label(Label::Chosen)) }
                } @else {
                    @let say = voice.label(Label::Use);
                    button class="btn" type="button" data-do=(Action::ChoosePick(key(pick)))
                        aria-label={ (say) " " (pick.name) } { (say) }
                }
            }
        }
    }
}

/// What is not known, and what it would be worth.
pub fn worth_knowing(report: &Report, voice: Voice) -> Markup {
    let rows = html! {
        @for unknown in &report.unknowns {
            p class="if-row" {
                span { (voice.reason(&unknown.ask)) }
                span class="lab" { (voice.say(&Phrase::Worth { chance: voice.chance(unknown.worth) })) }
            }
        }
    };
    titled(Label::WorthKnowing, &rows, |rows| html! { div class="if" { (rows) } }, voice)
}

/// The whites that cannot do it; those that fail for the same reason share a row.
pub fn cannot(report: &Report, voice: Voice) -> Markup {
    let mut reasons: Vec<(String, Vec<&str>)> = Vec::new();
    for rejected in &report.rejected {
        let why = rejected.reasons.first().map(|reason| voice.reason(reason)).unwrap_or_default();
        match reasons.iter_mut().find(|(other, _)| *other == why) {
            Some((_, names)) => names.push(&rejected.name),
            None => reasons.push((why, vec![&rejected.name])),
        }
    }
    let rows = html! {
        @for (why, names) in &reasons {
            li { (mark(Verdict::Refuse)) p { b { (names.join(", ")) ". " } (why) } }
        }
    };
    titled(Label::CannotDoIt, &rows, |rows| html! { ul class="why" { (rows) } }, voice)
}

/// What to be careful of.
pub fn careful(report: &Report, voice: Voice) -> Markup {
    let rows = html! {
        @for caution in &report.cautions {
            div class="warn" {
                span class="c-heat" { (markup::sign(36, icon::caution(caution.code))) }
                p { (voice.reason(caution)) }
            }
        }
    };
    titled(Label::Careful, &rows, Markup::clone, voice)
}
