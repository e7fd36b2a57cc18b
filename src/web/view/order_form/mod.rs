//! The order: the garment, the order, the shop.

mod colour_conflict;
mod demo_orders;
mod keep_order;
mod meter;
mod shop_fields;

use crate::desk::{Choice, Field, Msg};
use crate::plan::{
    Code, CureKind, DyeClass, Finish, Opacity, Priority, Reason, Role, Sheen, UnderPrint, UseKind, Value,
};
use crate::web::desk::Desk;
use crate::web::view::widgets::field::{choice, errors, stepped, toggle, typed};
use crate::web::view::widgets::icon;
use crate::wording::{Label, Phrase};
use leptos::prelude::*;

/// The order column.
pub fn order_form(desk: Desk) -> impl IntoView {
    view! {
        {demo_orders::demo_orders(desk)}
        {garment(desk)}
        {order(desk)}
        {desk.later(move || shop_fields::shop_fields(desk))}
        {desk.later(move || keep_order::keep_order(desk))}
    }
}

fn garment(desk: Desk) -> impl IntoView {
    let bad = desk.memo(|state| state.errors_of(Field::Label).next().is_some());
    let text = desk.memo(|state| state.draft.text(Field::Label).to_owned());
    view! {
        <h2 class="sec-head gap-s">{move || desk.label(Label::TheGarment)}</h2>
        <div class="stack">
            {garments(desk)}
            <div>
                <label class="label" for="label">{move || desk.label(Label::LabelSays)}</label>
                <textarea
                    class="field"
                    class:field-bad=move || bad.get()
                    id="label"
                    rows="2"
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    prop:value=move || text.get()
                    aria-invalid=move || bad.get().then_some("true")
                    aria-describedby=move || bad.get().then_some("label-error")
                    on:input=move |event| desk.send(Msg::Type(Field::Label, event_target_value(&event)))
                    on:blur=move |_| desk.send(Msg::Done)
                ></textarea>
                {errors(desk, Field::Label)}
            </div>
            {understood(desk)}
            {colour_conflict::colour_conflict(desk)}
            {dyed(desk)}
            <div class="two">
                {typed(desk, Field::Lot, Label::Lot)}
                {typed(desk, Field::Humidity, Label::Humidity)}
            </div>
            <details class="more">
                <summary class="btn btn-wide">{move || desk.label(Label::MoreAboutGarment)}</summary>
                {desk.later(move || more_of_garment(desk))}
            </details>
        </div>
    }
}

/// What is rarely needed of the garment.
fn more_of_garment(desk: Desk) -> impl IntoView {
    view! {
        <div class="stack">
            <div class="two">
                {typed(desk, Field::Colour, Label::Colour)}
                {typed(desk, Field::Weight, Label::Weight)}
            </div>
            {choice(
                desk,
                "q-under",
                Label::UnderPrint,
                UnderPrint::ALL.to_vec(),
                |desk, under| desk.voice().under_print(*under).into(),
                |state| state.draft.garment().map_or_else(UnderPrint::default, |garment| garment.rest.under_print),
                |under| Msg::Choose(Choice::UnderPrint(under)),
            )}
            {meter::meter(desk)}
            {choice(
                desk,
                "q-dye",
                Label::DyeKind,
                vec![
                    DyeClass::Unknown,
                    DyeClass::LowEnergy,
                    DyeClass::MediumEnergy,
                    DyeClass::HighEnergy,
                    DyeClass::Fluorescent,
                    DyeClass::SublimationPrinted,
                    DyeClass::MassDyed,
                ],
                |desk, class| desk.voice().dye_class(*class).into(),
                |state| state.draft.garment().map_or(DyeClass::Unknown, |garment| garment.rest.dye_class),
                |class| Msg::Choose(Choice::DyeClass(class)),
            )}
            <div>
                <p class="label" id="q-finish">{move || desk.label(Label::Finishes)}</p>
                <div class="seg seg-2" role="group" aria-labelledby="q-finish">
                    {[
                        Finish::Coated,
                        Finish::WaterRepellent,
                        Finish::FlameResistant,
                        Finish::HighVisibility,
                    ]
                        .map(|finish| toggle(
                            desk,
                            move |desk| desk.voice().finish(finish).into(),
                            move |state| {
                                let garment = state.draft.garment();
                                garment.is_some_and(|garment| garment.rest.finish.contains(&finish))
                            },
                            move |on| Msg::Choose(Choice::Finish(finish, on)),
                        ))
                        .collect_view()}
                </div>
            </div>
            {stepped(desk, Field::AddedWater, Label::AddedWater, false)}
        </div>
    }
}

/// Whether the polyester is dyed; asked only where there may be some.
fn dyed(desk: Desk) -> impl IntoView {
    let asked = desk.memo(|state| {
        let shares = || state.readings().iter().filter(|it| it.code == Code::ReadShare);
        let polyester = Value::Word("polyester".into());
        shares().next().is_none() || shares().any(|share| share.values.get("fibre") == Some(&polyester))
    });
    move || {
        asked.get().then(|| {
            choice(
                desk,
                "q-dyed",
                Label::IsItDyed,
                vec![Some(true), Some(false), None],
                |desk, answer| {
                    desk.label(match answer {
                        Some(true) => Label::Yes,
                        Some(false) => Label::No,
                        None => Label::NotKnown,
                    })
                    .into()
                },
                |state| state.draft.dyed(),
                |answer| Msg::Choose(Choice::Dyed(answer)),
            )
        })
    }
}

/// Which garment is shown, where there are several.
fn garments(desk: Desk) -> impl IntoView {
    let shape = desk.memo(|state| (state.draft.garments.len(), state.draft.at));
    move || {
        let (count, at) = shape.get();
        let tabs = (0..count)
            .map(|index| {
                let name = desk.voice().say(&Phrase::Garment { number: index + 1 });
                let pressed = if index == at { "true" } else { "false" };
                view! {
                    <button
                        class="btn"
                        type="button"
                        aria-pressed=pressed
                        on:click=move |_| desk.send(Msg::Garment(index))
                    >
                        {name}
                    </button>
                }
            })
            .collect_view();
        (count > 1).then(|| {
            view! {
                <div class="seg" role="group" aria-label=desk.label(Label::TheGarment)>{tabs}</div>
                <button class="btn btn-wide" type="button" on:click=move |_| desk.send(Msg::RemoveGarment)>
                    {desk.label(Label::RemoveGarment)}
                </button>
            }
        })
    }
}

/// What was read from the label, what was assumed, and what was left out, as chips.
fn understood(desk: Desk) -> impl IntoView {
    let read =
        desk.memo(|state| (state.readings().to_vec(), state.voice(), state.shade(), state.errors.is_empty()));
    move || {
        let (readings, voice, cloth, whole) = read.get();
        let chips = readings
            .iter()
            .map(|reading| {
                let sign = match (reading.code, cloth) {
                    (Code::ReadColour | Code::AssumedColour, Some(lab)) => {
                        let swatch = lab.swatch();
                        view! {
                            <svg class="true-colour" viewBox="0 0 18 18" aria-hidden="true">
                                <rect width="18" height="18" fill=swatch></rect>
                            </svg>
                        }
                        .into_any()
                    }
                    _ => icon::icon(24, if is_read(reading) { icon::TICK } else { icon::ASK }).into_any(),
                };
                view! { <li class:ask=!is_read(reading)>{sign}" "{voice.reason(reading)}</li> }
            })
            .collect_view();
        whole.then(|| {
            view! { <ul class="got" id="understood" aria-label=voice.label(Label::Understood)>{chips}</ul> }
        })
    }
}

fn is_read(reading: &Reason) -> bool {
    matches!(reading.code, Code::ReadShare | Code::ReadConstruction | Code::ReadWeight | Code::ReadColour)
}

fn order(desk: Desk) -> impl IntoView {
    view! {
        <h2 class="sec-head gap">{move || desk.label(Label::TheOrder)}</h2>
        <div class="stack">
            {stepped(desk, Field::Pieces, Label::Pieces, false)}
            <div class="two">
                {typed(desk, Field::Area, Label::PrintArea)}
                {typed(desk, Field::Coverage, Label::Covered)}
            </div>
            {choice(
                desk,
                "q-most",
                Label::MattersMost,
                Priority::ALL.to_vec(),
                |desk, priority| desk.voice().priority(*priority).into(),
                |state| state.draft.rest.print.priority,
                |priority| Msg::Choose(Choice::Priority(priority)),
            )}
            {stepped(desk, Field::Stretch, Label::MustStretch, false)}
            <details class="more">
                <summary class="btn btn-wide">{move || desk.label(Label::MoreAboutOrder)}</summary>
                {desk.later(move || more_of_order(desk))}
            </details>
        </div>
    }
}

/// What is rarely needed of the order.
fn more_of_order(desk: Desk) -> impl IntoView {
    view! {
        <div class="stack">
            {typed(desk, Field::Title, Label::Name)}
            <div class="two">
                {typed(desk, Field::Due, Label::Due)}
                {typed(desk, Field::Spares, Label::Spares)}
            </div>
            <div class="two">
                {typed(desk, Field::ValueEach, Label::PieceWorth)}
                {typed(desk, Field::LookedAt, Label::LookedAt)}
            </div>
            {choice(
                desk,
                "q-role",
                Label::WhiteIsFor,
                vec![Role::TopWhite, Role::Underbase, Role::Highlight],
                |desk, role| desk.voice().role(*role).into(),
                |state| state.draft.rest.print.role,
                |role| Msg::Choose(Choice::Role(role)),
            )}
            {stepped(desk, Field::ColoursOnTop, Label::ColoursOnTop, false)}
            {choice(
                desk,
                "q-cure",
                Label::ColourCure,
                vec![CureKind::Ordinary, CureKind::LowCure],
                |desk, cure| {
                    desk.label(if *cure == CureKind::Ordinary { Label::Ordinary } else { Label::LowCure })
                        .into()
                },
                |state| state.draft.rest.print.colours_on_top.cure,
                |cure| Msg::Choose(Choice::ColourCure(cure)),
            )}
            {choice(
                desk,
                "q-cover",
                Label::MustCover,
                vec![Opacity::Soft, Opacity::Standard, Opacity::Full],
                |desk, opacity| desk.voice().opacity(*opacity).into(),
                |state| state.draft.rest.print.opacity,
                |opacity| Msg::Choose(Choice::Opacity(opacity)),
            )}
            {choice(
                desk,
                "q-shine",
                Label::MustShine,
                vec![Sheen::Any, Sheen::Matt, Sheen::Gloss],
                |desk, sheen| desk.voice().sheen(*sheen).into(),
                |state| state.draft.rest.print.finish,
                |sheen| Msg::Choose(Choice::Sheen(sheen)),
            )}
            {choice(
                desk,
                "q-kind",
                Label::Kind,
                vec![
                    UseKind::Everyday,
                    UseKind::Sport,
                    UseKind::Workwear,
                    UseKind::Protective,
                    UseKind::Sleepwear,
                ],
                |desk, kind| desk.voice().use_kind(*kind).into(),
                |state| state.draft.rest.use_.kind,
                |kind| Msg::Choose(Choice::Kind(kind)),
            )}
            {typed(desk, Field::Age, Label::Age)}
            {stepped(desk, Field::Reducer, Label::Reducer, false)}
            {stepped(desk, Field::Overhang, Label::Overhang, false)}
            <div class="seg">
                {toggle(
                    desk,
                    |desk| desk.label(Label::StackedHot).into(),
                    |state| state.draft.rest.use_.stacked_hot,
                    |hot| Msg::Choose(Choice::StackedHot(hot)),
                )}
            </div>
            <button
                class="btn btn-wide"
                type="button"
                id="add-garment"
                on:click=move |_| desk.send(Msg::AddGarment)
            >
                {move || desk.label(Label::AnotherGarment)}
            </button>
        </div>
    }
}
