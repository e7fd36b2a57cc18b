//! The Diagnosis screen: what is seen on a print, how it was run, and the causes that fit, the likeliest first.

use super::widgets::field::typed;
use super::widgets::markup;
use super::widgets::static_view::static_view;
use super::widgets::svg::tenths;
use crate::desk::{Action, Field, State};
use crate::diagnosis::{Cause, Defect, Diagnosis};
use crate::web::desk::Desk;
use crate::wording::{DiagnosisPhrase, Label, Voice};
use leptos::prelude::*;
use maud::{Markup, html};

/// The screen.
pub fn diagnosis(desk: Desk) -> impl IntoView {
    let say = move |phrase: DiagnosisPhrase| move || desk.voice().say(&phrase);
    view! {
        <div class="wrong">
            <div>
                {static_view(desk, what_is_seen)}
                <h2 class="sec-head gap">{say(DiagnosisPhrase::HowItWasRun)}</h2>
                <p class="cap">{say(DiagnosisPhrase::LeaveEmpty)}</p>
                <div class="three-fields">
                    {typed(desk, Field::RanSetTemperature, Label::DryerSet)}
                    {typed(desk, Field::RanBelt, Label::Belt)}
                    {typed(desk, Field::RanFilm, Label::FilmRan)}
                </div>
            </div>
            <div id="causes" aria-live="polite">{static_view(desk, causes)}</div>
        </div>
    }
}

fn what_is_seen(state: &State) -> Markup {
    let voice = state.voice();
    html! {
        (markup::head("seen", &voice.say(&DiagnosisPhrase::WhatIsSeen), ""))
        div class="seg seg-2" role="group" aria-labelledby="seen" {
            @for defect in Defect::ALL {
                @let pressed = state.draft.seen == Some(defect);
                (markup::answer(&Action::Defect(defect), pressed, voice.seen(defect)))
            }
        }
    }
}

fn causes(state: &State) -> Markup {
    let voice = state.voice();
    let note = |words: &str| html! { p class="state" { (words) } };
    let say = |phrase: DiagnosisPhrase| note(&voice.say(&phrase));
    let has_setting = state.pick().is_some_and(|pick| pick.setting.is_some());
    let said = match (&state.diagnosis, state.draft.seen, has_setting) {
        (Some(found), Some(_), _) => listed(found, voice),
        (_, _, false) if state.asked.is_none() => say(DiagnosisPhrase::NoPlan),
        (_, Some(_), _) if state.run().is_err() => say(DiagnosisPhrase::MendFirst),
        (_, Some(_), _) => note(voice.label(Label::Reckoning)),
        _ => say(DiagnosisPhrase::TapFirst),
    };
    html! { (markup::head("causes-head", &voice.say(&DiagnosisPhrase::Causes), "")) (said) }
}

fn listed(found: &Diagnosis, voice: Voice) -> Markup {
    let (planned, ran) = (voice.chance(found.planned), voice.chance(found.ran));
    let said = if planned == ran {
        DiagnosisPhrase::Same { planned }
    } else {
        DiagnosisPhrase::Compare { planned, ran }
    };
    html! {
        p class="plain" id="compare" { (voice.say(&said)) }
        ol class="causes" { @for cause in &found.causes { (one(cause, found.seen, voice)) } }
        p class="cap blk" { (voice.say(&DiagnosisPhrase::Prior)) }
    }
}

fn one(cause: &Cause, seen: Defect, voice: Voice) -> Markup {
    let wide = (cause.share * 100.0).clamp(0.0, 100.0);
    html! {
        li {
            div class="cause-h" {
                b { (voice.cause(cause.what)) }
                span class="num" { (voice.say(&DiagnosisPhrase::Share { chance: voice.chance(cause.share) })) }
            }
            svg class="share" viewBox="0 0 100 3" preserveAspectRatio="none" aria-hidden="true" {
                rect width="100" height="3" {}
                rect class="full" width=(tenths(wide)) height="3" {}
            }
            p { b { (voice.say(&DiagnosisPhrase::DoNext)) } " " (voice.remedy(cause.what, seen)) }
            p { b { (voice.say(&DiagnosisPhrase::TellApart)) } " " (voice.test(cause.what.test())) }
        }
    }
}
