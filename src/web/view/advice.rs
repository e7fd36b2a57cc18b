//! What would change the answer, what to do, other ways, what cannot do it, what to be careful of.

use super::icon;
use crate::desk::{Choice, Msg, State, key};
use crate::plan::{Code, Pick, Reason, Report, Step, Topic, Value, Verdict};
use crate::web::desk::Desk;
use crate::wording::{Label, Numeral, Phrase, Voice};
use leptos::prelude::*;

/// True for a code that says what would change the answer, not why it is so.
pub(super) fn is_change(code: Code) -> bool {
    matches!(
        code,
        Code::BuyClass
            | Code::UseBlocker
            | Code::IfUndyed
            | Code::IfDried
            | Code::IfHotter
            | Code::OtherHeat
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
pub(super) fn leads_to(reason: &Reason) -> Option<Verdict> {
    match reason.values.get("verdict") {
        Some(Value::Word(word)) => serde_json::from_value(serde_json::Value::String(word.clone())).ok(),
        _ => None,
    }
}

/// What would change the answer; what the desk can do at once is a button.
pub fn changes(desk: Desk, report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows: Vec<_> = report
        .to_make_it_possible
        .iter()
        .map(|reason| {
            let text = voice.reason(reason);
            let mark = leads_to(reason).map(|verdict| {
                view! {
                    <span class="num">{voice.verdict_short(verdict)}</span>
                    <span class=icon::verdict_class(verdict)>{icon::icon(96, icon::mark(verdict))}</span>
                }
            });
            if reason.code == Code::IfUndyed {
                view! {
                    <button
                        class="btn"
                        type="button"
                        on:click=move |_| desk.send(Msg::Choose(Choice::Dyed(Some(false))))
                    >
                        <span>{text}</span>
                        {mark}
                    </button>
                }
                .into_any()
            } else {
                view! { <p class="if-row"><span>{text}</span>{mark}</p> }.into_any()
            }
        })
        .collect();
    (!rows.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::WouldChange)}</h2>
                <div class="if">{rows}</div>
            </div>
        }
    })
}

pub(super) fn to_do(pick: &Pick, voice: Voice) -> impl IntoView + use<> {
    let list = |title: Label, rows: Vec<String>| {
        (!rows.is_empty()).then(|| {
            let rows = rows.into_iter().map(|row| view! { <li>{row}</li> }).collect_view();
            view! {
                <div class="blk">
                    <h2 class="sec-head">{voice.label(title)}</h2>
                    <ul class="plain dashes">{rows}</ul>
                </div>
            }
        })
    };
    let advice = pick.advice.iter().map(|advice| voice.advice(*advice).to_owned()).collect();
    let checks = pick.first_piece.iter().map(|code| voice.code(*code)).collect();
    view! {
        {list(Label::ToDo, advice)}
        {list(Label::FirstPiece, checks)}
    }
}

pub(super) fn other_ways(
    desk: Desk,
    report: &Report,
    chosen: &Pick,
    voice: Voice,
) -> Option<impl IntoView + use<>> {
    let numeral = Numeral(voice.language);
    let rows = report
        .picks
        .iter()
        .map(|pick| {
            let id = key(pick);
            let here = id == key(chosen);
            let base = pick.steps.iter().find_map(|step| match step {
                Step::Blocker { name, .. } => Some(name.clone()),
                _ => None,
            });
            let dried = pick.steps.iter().any(|step| matches!(step, Step::PreDry { .. }));
            let dried = dried.then(|| format!(", {}", voice.label(Label::DriedFirst)));
            let base = base.map_or_else(
                || voice.label(Label::NoBlocker).to_lowercase(),
                |blocker| voice.say(&Phrase::Needs { blocker }),
            );
            let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed);
            let bleed = bleed.map_or_else(|| "–".into(), |margin| voice.margin(margin, margin.value.likely));
            let choose = if here {
                view! { <b>{voice.label(Label::Chosen)}</b> }.into_any()
            } else {
                let name = format!("{} {}", voice.label(Label::Use), pick.name);
                view! {
                    <button
                        class="btn"
                        type="button"
                        aria-label=name
                        on:click=move |_| desk.send(Msg::Use(id.clone()))
                    >
                        {voice.label(Label::Use)}
                    </button>
                }
                .into_any()
            };
            view! {
                <tr>
                    <td class="mk">
                        <span class=icon::verdict_class(pick.verdict)>
                            {icon::icon(96, icon::mark(pick.verdict))}
                            <span class="sr">{voice.verdict(pick.verdict)}</span>
                        </span>
                    </td>
                    <td><b>{pick.name.clone()}</b><br/>{base}{dried}</td>
                    <td class="r">{bleed}</td>
                    <td class="r">{voice.chance(pick.fail_later.likely)}</td>
                    <td class="r">{numeral.fixed(pick.rate_per_hour.likely, 0)}</td>
                    <td class="r">{numeral.fixed(pick.cost_per_print.likely, 2)}</td>
                    <td>{choose}</td>
                </tr>
            }
        })
        .collect_view();
    (report.picks.len() > 1).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">
                    {voice.label(Label::OtherWays)}" "<span class="aside">{voice.label(Label::ShelfFirst)}</span>
                </h2>
                <div class="scroll" tabindex="0" role="region" aria-label=voice.label(Label::OtherWays)>
                    <table class="tbl">
                        <thead>
                            <tr>
                                <th class="mk"><span class="sr">{voice.label(Label::Verdict)}</span></th>
                                <th>{voice.label(Label::White)}</th>
                                <th class="r">{voice.topic(Topic::Bleed)}</th>
                                <th class="r">{voice.label(Label::LateFault)}</th>
                                <th class="r">{voice.label(Label::PerHour)}</th>
                                <th class="r">{voice.label(Label::PerPrint)}{move || desk.with(State::money)}</th>
                                <th><span class="sr">{voice.label(Label::Use)}</span></th>
                            </tr>
                        </thead>
                        <tbody>{rows}</tbody>
                    </table>
                </div>
            </div>
        }
    })
}

pub(super) fn worth_knowing(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .unknowns
        .iter()
        .map(|unknown| {
            let worth = voice.say(&Phrase::Worth { chance: voice.chance(unknown.worth) });
            view! { <p class="if-row"><span>{voice.reason(&unknown.ask)}</span><span class="lab">{worth}</span></p> }
        })
        .collect_view();
    (!report.unknowns.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::WorthKnowing)}</h2>
                <div class="if">{rows}</div>
            </div>
        }
    })
}

pub(super) fn cannot(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .rejected
        .iter()
        .map(|rejected| {
            let reasons = rejected.reasons.first().map(|reason| voice.reason(reason));
            view! {
                <li>
                    <span class="c-no">{icon::icon(96, icon::mark(Verdict::Refuse))}</span>
                    <p><b>{rejected.name.clone()}". "</b>{reasons}</p>
                </li>
            }
        })
        .collect_view();
    (!report.rejected.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::CannotDoIt)}</h2>
                <ul class="why">{rows}</ul>
            </div>
        }
    })
}

pub(super) fn careful(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .cautions
        .iter()
        .map(|caution| {
            view! {
                <div class="warn">
                    <span class="c-heat">{icon::icon(36, icon::caution(caution.code))}</span>
                    <p>{voice.reason(caution)}</p>
                </div>
            }
        })
        .collect_view();
    (!report.cautions.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::Careful)}</h2>
                {rows}
            </div>
        }
    })
}
