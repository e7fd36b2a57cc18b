//! The Window screen: where the white works on this cloth, and what happens at the set point.

mod history;
mod map;

use crate::desk::{Field, Msg, Screen, State};
use crate::plan::{Code, Margin, Verdict, WindowReport};
use crate::web::desk::Desk;
use crate::web::view::answer::advice;
use crate::web::view::answer::margins::margin_table;
use crate::web::view::widgets::disclosure::disclosure;
use crate::web::view::widgets::field::stepped;
use crate::web::view::widgets::icon;
use crate::web::view::widgets::static_view::static_view;
use crate::wording::{Label, Phrase, Quantity, Voice};
use leptos::prelude::*;
use maud::{Markup, html};

/// The screen.
pub fn window(desk: Desk) -> impl IntoView {
    let state = desk.memo(|state| {
        let pick = state.pick_or_closed().map(|pick| pick.name.clone());
        let closed = state.window.as_ref().is_some_and(|window| window.setting.is_none());
        (pick, state.window.is_some(), closed, state.asked.is_some(), state.report.is_some())
    });
    move || match state.get() {
        (Some(white), true, closed, ..) => open(desk, white, closed).into_any(),
        (Some(_), false, ..) | (None, _, _, true, _) => {
            waiting(desk, Label::Window, Label::Reckoning).into_any()
        }
        (None, _, _, _, true) => waiting(desk, Label::Window, Label::RefusedHere).into_any(),
        (None, ..) => waiting(desk, Label::Window, Label::NoWindowYet).into_any(),
    }
}

/// No window or forecast to show, and why.
pub fn waiting(desk: Desk, head: Label, say: Label) -> impl IntoView {
    let wrong = desk.memo(|state| {
        let voice = state.voice();
        state.window_errors.iter().map(|error| voice.problem(error)).collect::<Vec<_>>().join(" ")
    });
    view! {
        <div class="plate plate-ask">
            <svg class="plate-mark" viewBox="0 0 96 96" aria-hidden="true" inner_html=icon::OPEN></svg>
            <div>
                <h2 class="plate-word">{move || desk.label(head)}</h2>
                <p class="plate-say">
                    {move || {
                        let wrong = wrong.get();
                        if wrong.is_empty() { desk.label(say).into() } else { wrong }
                    }}
                </p>
            </div>
            {back(desk)}
        </div>
    }
}

fn back(desk: Desk) -> impl IntoView {
    view! {
        <a class="btn btn-main" href="#job" on:click=move |event| desk.follow_link(&event, Screen::Job)>
            {move || desk.label(Label::BackToJob)}
        </a>
    }
}

fn open(desk: Desk, white: String, closed: bool) -> impl IntoView {
    let title = move || desk.voice().say(&Phrase::WhereItWorks { white: white.clone() });
    let side = if closed { what_opens_it(desk).into_any() } else { set_point(desk).into_any() };
    view! {
        {closed.then(|| closed_plate(desk))}
        <div class="win win-a" class:blk=closed>
            <figure class="win-map">
                <figcaption class="sec-head">
                    {title}" "<span class="aside">{move || (!closed).then(|| desk.label(Label::DragOrTap))}</span>
                </figcaption>
                {map::map_view(desk)}
                {map::caption(desk)}
            </figure>
            <div class="side">{side}</div>
        </div>
    }
}

fn closed_plate(desk: Desk) -> impl IntoView {
    view! {
        <div class="plate plate-no">
            <svg
                class="plate-mark c-no"
                viewBox="0 0 96 96"
                aria-hidden="true"
                inner_html=icon::mark(Verdict::Refuse)
            ></svg>
            <div>
                <h2 class="plate-word">{move || desk.label(Label::Closed)}</h2>
                <p class="plate-say">{move || desk.label(Label::ClosedSay)}</p>
            </div>
            {back(desk)}
        </div>
    }
}

fn what_opens_it(desk: Desk) -> impl IntoView {
    static_view(desk, opening)
}

fn opening(state: &State) -> Markup {
    let voice = state.voice();
    let report = state.report.as_deref();
    // A belt that could run slower opens some windows; then it is among the changes.
    let slower = report.is_some_and(|report| {
        report.to_make_it_possible.iter().any(|reason| reason.code == Code::OpensSlower)
    });
    let does_not = (!slower).then_some(Label::SlowerBeltNo);
    let does_not = does_not.into_iter().chain([Label::LongerFlashNo, Label::ReducerNo]);
    html! {
        @if let Some(report) = report { (advice::changes(report, voice)) }
        h3 class="sec-head gap" { (voice.label(Label::WhatDoesNot)) }
        ul class="plain dashes" { @for label in does_not { li { (voice.label(label)) } } }
    }
}

fn set_point(desk: Desk) -> impl IntoView {
    let shown = desk.memo(|state| (state.window.clone(), state.voice()));
    let moved = desk.memo(|state| {
        !state.draft.text(Field::SetTemperature).is_empty() || !state.draft.text(Field::Belt).is_empty()
    });
    view! {
        <div class="set">
            {stepped(desk, Field::SetTemperature, Label::DryerSet, true)}
            {stepped(desk, Field::Belt, Label::Belt, true)}
        </div>
        {move || {
            let (window, voice) = shown.get();
            window.map(|window| said(&window, voice))
        }}
        {move || moved.get().then(|| view! {
            <button class="btn btn-wide set-back" type="button" on:click=move |_| desk.send(Msg::BestPoint)>
                {desk.label(Label::BestPoint)}
            </button>
        })}
        {move || {
            let (window, voice) = shown.get();
            window.map(|window| history::history_view(&window, voice))
        }}
        // Drawn only while it is open: a drag draws everything else thirty times a second.
        {disclosure(desk, Label::MarginsHere, || true, move || {
            let (window, voice) = shown.get();
            window.map(|window| margin_table(&window.margins, voice)).unwrap_or_default()
        })}
    }
}

/// Whether the set point works: how much clearance it has, or what fails.
fn said(window: &WindowReport, voice: Voice) -> impl IntoView + use<> {
    let failing: Vec<&Margin> = window
        .margins
        .iter()
        .filter(|margin| !margin.holds_likely() && window.walls.iter().any(|wall| wall.what == margin.what))
        .collect();
    let inside = failing.is_empty();
    let text = if inside {
        let kelvin = |room: Option<f64>| room.map(|it| voice.quantity(Quantity::TemperatureDifference, it));
        let belt = |room: Option<f64>| room.map(|it| voice.belt_difference(it));
        voice.say(&Phrase::RoomLeft {
            cooler: kelvin(window.room.cooler),
            hotter: kelvin(window.room.hotter),
            slower: belt(window.room.slower),
            faster: belt(window.room.faster),
        })
    } else {
        failing
            .iter()
            .map(|margin| {
                voice.say(&Phrase::Fails {
                    what: voice.past_limit(margin.what).into(),
                    value: voice.margin(margin, margin.value.likely),
                    limit: voice.margin(margin, margin.limit),
                })
            })
            .collect::<Vec<_>>()
            .join(" ")
    };
    let verdict = if inside { window.verdict } else { Verdict::Refuse };
    let head = voice.label(if inside { Label::Inside } else { Label::Outside });
    view! {
        <div class="say" class:say-no=!inside id="say" role="status">
            <span class=icon::verdict_class(verdict)>{icon::icon(96, icon::mark(verdict))}</span>
            <p><b>{head}</b>" "{text}</p>
        </div>
    }
}
