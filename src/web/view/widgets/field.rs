//! A field with its label, its error and suggested corrections; steppers and choices.

use super::icon;
use crate::desk::{Field, Msg, State, suggestions};
use crate::plan::DialSetting;
use crate::web::desk::Desk;
use crate::wording::{Label, Quantity};
use leptos::ev;
use leptos::prelude::*;

/// The unit after a field's label, if it has one.
fn unit(desk: Desk, field: Field) -> String {
    let voice = desk.voice();
    if field.quantity() == Some(Quantity::Money) {
        return desk.with(State::money);
    }
    match field.quantity().map(|quantity| quantity.unit(voice.units, voice.language)) {
        None | Some("") => String::new(),
        Some(unit) => format!(", {unit}"),
    }
}

fn bad(desk: Desk, field: Field) -> ReadSignal<bool> {
    desk.memo(move |state| state.errors_of(field).next().is_some())
}

/// The keyboard that a tablet shows.
fn keyboard(field: Field) -> &'static str {
    match field.quantity() {
        None => "text",
        Some(_) if field.whole() => "numeric",
        Some(_) => "decimal",
    }
}

fn error_id(field: Field) -> String {
    format!("{}-error", field.id())
}

/// The bare input of a field, without its label.
pub fn input(desk: Desk, field: Field, class: &'static str) -> impl IntoView {
    let bad = bad(desk, field);
    let text = desk.memo(move |state| shown(state, field));
    view! {
        <input
            class=class
            class:field-bad=move || bad.get()
            id=field.id()
            // A date is picked, so that it cannot be mistyped.
            type=if field == Field::Due { "date" } else { "text" }
            inputmode=keyboard(field)
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            enterkeyhint="next"
            prop:value=move || text.get()
            aria-invalid=move || bad.get().then_some("true")
            aria-describedby=move || bad.get().then(|| error_id(field))
            on:input=move |event| desk.send(Msg::Type(field, event_target_value(&event)))
            on:blur=move |_| desk.send(Msg::Done)
        />
    }
}

/// A slider for one of the two dials of the set point: the pictures follow as it moves.
pub fn slid(desk: Desk, field: Field, label: Label) -> impl IntoView {
    let range = desk.memo(move |state| state.bound(field).map(|bound| (bound.min, bound.max)));
    let here = desk.memo(move |state| {
        let typed = state.draft.value(field, None).ok().flatten();
        let stands = state.stands().map(|setting| match field {
            Field::SetTemperature => setting.set_c,
            _ => setting.belt_m_per_min,
        });
        typed.or(stands)
    });
    let words = move || {
        let (voice, quantity) = (desk.voice(), field.quantity());
        here.get().zip(quantity).map(|(value, quantity)| voice.quantity(quantity, value))
    };
    let moved = move |event: ev::Event| {
        let stands = desk.with(|state| {
            let setting = state.stands().map(|setting| setting.dialled());
            state.point().ok().flatten().or(setting)
        });
        let (Some(at), Ok(value)) = (stands, event_target_value(&event).parse()) else { return };
        desk.send(if field == Field::SetTemperature {
            Msg::Point(DialSetting { set_c: value, ..at })
        } else {
            Msg::Point(DialSetting { belt_m_per_min: value, ..at })
        });
    };
    view! {
        <input
            class="slide"
            type="range"
            id=format!("{}-slide", field.id())
            min=move || range.get().map_or(0.0, |range| range.0)
            max=move || range.get().map_or(1.0, |range| range.1)
            step=if field == Field::SetTemperature { "1" } else { "0.05" }
            prop:value=move || here.get().unwrap_or_default().to_string()
            aria-label=move || desk.label(label)
            aria-valuetext=words
            on:input=moved
            on:change=move |_| desk.send(Msg::Done)
        />
    }
}

/// What an input shows: the text as typed; for an empty dial of the set point, the setting of the screen.
fn shown(state: &State, field: Field) -> String {
    let text = state.draft.text(field);
    if !text.is_empty() || !matches!(field, Field::SetTemperature | Field::Belt) {
        return text.to_owned();
    }
    match (field, state.stands()) {
        (Field::SetTemperature, Some(setting)) => written(state, field, setting.set_c),
        (_, Some(setting)) => written(state, field, setting.belt_m_per_min),
        (_, None) => String::new(),
    }
}

fn written(state: &State, field: Field, value: f64) -> String {
    let mut draft = state.draft.clone();
    draft.set(field, Some(value));
    draft.text(field).to_owned()
}

/// What is wrong with a field, and a button for each suggested correction.
pub fn errors(desk: Desk, field: Field) -> impl IntoView {
    let wrong = desk.memo(move |state| {
        let voice = state.voice();
        let sentences: Vec<String> = state.errors_of(field).map(|error| voice.problem(&error)).collect();
        let ways: Vec<_> = state
            .errors_of(field)
            .flat_map(|error| suggestions(&error, &state.draft, state.bound(field)))
            .collect();
        (sentences, ways)
    });
    move || {
        let (sentences, ways) = wrong.get();
        (!sentences.is_empty()).then(|| {
            let buttons = ways
                .into_iter()
                .map(|way| {
                    let text = way.text.clone();
                    view! {
                        <button
                            class="btn"
                            type="button"
                            on:click=move |_| {
                                desk.send(Msg::Done);
                                desk.send(Msg::Type(field, text.clone()));
                            }
                        >
                            {way.say}
                        </button>
                    }
                })
                .collect_view();
            view! {
                <p class="err" id=error_id(field) data-error-for=field.id()>
                    {icon::icon(24, icon::CROSS)}
                    <span>{sentences.join(" ")}</span>
                </p>
                {(!buttons.is_empty()).then(|| view! {
                    <div class="suggestions" role="group" aria-label=desk.label(Label::DidYouMean)>
                        <p class="label">{desk.label(Label::DidYouMean)}</p>
                        {buttons}
                    </div>
                })}
            }
        })
    }
}

/// A labelled field to type into.
pub fn typed(desk: Desk, field: Field, label: Label) -> impl IntoView {
    view! {
        <div>
            <label class="label" for=field.id()>{move || desk.label(label)}{move || unit(desk, field)}</label>
            {input(desk, field, "field")}
            {errors(desk, field)}
        </div>
    }
}

/// A labelled number with a button on each side.
pub fn stepped(desk: Desk, field: Field, label: Label, large: bool) -> impl IntoView {
    let name = move |way: Label| move || format!("{}: {}", desk.label(label), desk.label(way));
    view! {
        <div>
            <label class="label" for=field.id()>
                <b>{move || desk.label(label)}</b>
                {move || unit(desk, field)}
            </label>
            <div class="step" class:step-main=large>
                <button
                    class="btn"
                    type="button"
                    aria-label=name(Label::Fewer)
                    on:click=move |_| desk.send(Msg::Step(field, -1))
                >
                    "\u{2212}"
                </button>
                {input(desk, field, if large { "field num" } else { "field" })}
                <button
                    class="btn"
                    type="button"
                    aria-label=name(Label::More)
                    on:click=move |_| desk.send(Msg::Step(field, 1))
                >
                    "+"
                </button>
            </div>
            {errors(desk, field)}
        </div>
    }
}

/// A question with one button for each answer; the pressed one is the answer.
pub fn choice<T: Clone + PartialEq + Send + Sync + 'static>(
    desk: Desk,
    id: &'static str,
    question: Label,
    answers: Vec<T>,
    name: impl Fn(Desk, &T) -> String + Clone + Send + 'static,
    now: impl Fn(&State) -> T + Copy + Send + Sync + 'static,
    choose: impl Fn(T) -> Msg + Clone + 'static,
) -> impl IntoView {
    let now = desk.memo(now);
    let class = if answers.len() > 3 { "seg seg-2" } else { "seg" };
    let buttons = answers
        .into_iter()
        .map(|answer| {
            let (named, sent) = (answer.clone(), answer.clone());
            let (name, choose) = (name.clone(), choose.clone());
            view! {
                <button
                    class="btn"
                    type="button"
                    aria-pressed=move || if now.get() == answer { "true" } else { "false" }
                    on:click=move |_: ev::MouseEvent| desk.send(choose(sent.clone()))
                >
                    {move || name(desk, &named)}
                </button>
            }
        })
        .collect_view();
    view! {
        <div>
            <p class="label" id=id>{move || desk.label(question)}</p>
            <div class=class role="group" aria-labelledby=id>{buttons}</div>
        </div>
    }
}

/// A button that is on or off.
pub fn toggle(
    desk: Desk,
    name: impl Fn(Desk) -> String + Send + 'static,
    now: impl Fn(&State) -> bool + Copy + Send + Sync + 'static,
    choose: impl Fn(bool) -> Msg + 'static,
) -> impl IntoView {
    let on = desk.memo(now);
    view! {
        <button
            class="btn"
            type="button"
            aria-pressed=move || if on.get() { "true" } else { "false" }
            on:click=move |_| desk.send(choose(!on.get_untracked()))
        >
            {move || name(desk)}
        </button>
    }
}
