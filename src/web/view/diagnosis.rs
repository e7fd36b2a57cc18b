//! The screen that says what went wrong: what is seen, how it was run, and the causes that fit, the likeliest first.

use super::widgets::field::typed;
use super::widgets::markup;
use super::widgets::static_view::static_view;
use crate::desk::{Field, Msg, State};
use crate::diagnosis::{Cause, Defect, Diagnosis};
use crate::web::desk::Desk;
use crate::wording::{DiagnosisPhrase, Label, Voice};
use leptos::prelude::*;

/// The screen.
pub fn diagnosis(desk: Desk) -> impl IntoView {
    let say = move |fault: DiagnosisPhrase| move || desk.voice().say(&fault);
    view! {
        <div class="wrong">
            <div>
                {static_view(desk, what_is_seen, does)}
                <h2 class="sec-head gap">{say(DiagnosisPhrase::HowItWasRun)}</h2>
                <p class="cap">{say(DiagnosisPhrase::LeaveEmpty)}</p>
                <div class="three-fields">
                    {typed(desk, Field::RanSetTemperature, Label::DryerSet)}
                    {typed(desk, Field::RanBelt, Label::Belt)}
                    {typed(desk, Field::RanFilm, Label::FilmRan)}
                </div>
            </div>
            <div id="causes" aria-live="polite">{static_view(desk, causes, does)}</div>
        </div>
    }
}

fn does(desk: Desk, act: &str) {
    let seen = act.parse().ok().and_then(|at: usize| Defect::ALL.get(at).copied());
    desk.send(Msg::DefectSeen(seen.filter(|_| desk.with(|state| state.draft.seen) != seen)));
}

fn what_is_seen(state: &State) -> String {
    let voice = state.voice();
    let answers: String = Defect::ALL
        .iter()
        .enumerate()
        .map(|(at, &seen)| markup::answer(&at.to_string(), state.draft.seen == Some(seen), voice.seen(seen)))
        .collect();
    let question = voice.say(&DiagnosisPhrase::WhatIsSeen);
    let head = markup::head("seen", &question, "");
    format!("{head}<div class=\"seg seg-2\" role=\"group\" aria-labelledby=\"seen\">{answers}</div>")
}

fn causes(state: &State) -> String {
    let voice = state.voice();
    let head = markup::head("causes-head", &voice.say(&DiagnosisPhrase::Causes), "");
    let note =
        |fault: &DiagnosisPhrase| format!("{head}<p class=\"state\">{}</p>", markup::text(&voice.say(fault)));
    match (&state.diagnosis, state.draft.seen, state.pick().is_some_and(|pick| pick.setting.is_some())) {
        (Some(found), Some(_), _) => format!("{head}{}", listed(found, voice)),
        (_, _, false) if state.asked.is_none() => note(&DiagnosisPhrase::NoPlan),
        (_, Some(_), _) if state.run().is_err() => note(&DiagnosisPhrase::MendFirst),
        (_, Some(_), _) => format!("{head}<p class=\"state\">{}</p>", voice.label(Label::Reckoning)),
        _ => note(&DiagnosisPhrase::TapFirst),
    }
}

fn listed(found: &Diagnosis, voice: Voice) -> String {
    let (planned, ran) = (voice.chance(found.planned), voice.chance(found.ran));
    let said = if planned == ran {
        DiagnosisPhrase::Same { planned }
    } else {
        DiagnosisPhrase::Compare { planned, ran }
    };
    let said = markup::text(&voice.say(&said));
    let rows: String = found.causes.iter().map(|cause| one(cause, found.seen, voice)).collect();
    let prior = markup::text(&voice.say(&DiagnosisPhrase::Prior));
    format!(
        "<p class=\"plain\" id=\"compare\">{said}</p><ol class=\"causes\">{rows}</ol><p class=\"cap blk\">{prior}</p>"
    )
}

fn one(cause: &Cause, seen: Defect, voice: Voice) -> String {
    let text = |text: &str| markup::text(text);
    let share = voice.say(&DiagnosisPhrase::Share { chance: voice.chance(cause.share) });
    let wide = (cause.share * 100.0).clamp(0.0, 100.0);
    format!(
        "<li><div class=\"cause-h\"><b>{}</b><span class=\"num\">{}</span></div><svg class=\"share\" viewBox=\"0 0 100 3\" \
         preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect width=\"100\" height=\"3\"/><rect class=\"full\" width=\"{wide:.1}\" \
         height=\"3\"/></svg><p><b>{}</b> {}</p><p><b>{}</b> {}</p></li>",
        text(&voice.cause(cause.what)),
        text(&share),
        text(&voice.say(&DiagnosisPhrase::DoNext)),
        text(&voice.remedy(cause.what, seen)),
        text(&voice.say(&DiagnosisPhrase::TellApart)),
        text(voice.test(cause.what.test())),
    )
}
