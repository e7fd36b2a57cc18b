//! The cut through the print: fresh, and on later days.

use super::ageing::day;
use crate::desk::picture::cloth::Swatches;
use crate::desk::picture::section::{FILM, HEIGHT, Section, WIDTH, fibres, sections};
use crate::plan::BleedForecast;
use crate::wording::{Label, Phrase, Quantity, Voice};
use leptos::prelude::*;

/// Top of the cuts in the picture, and how far they stand from each other.
const TOP: f64 = 54.0;
const STRIDE: f64 = 158.0;

/// The figure, in the colours of this print.
pub fn section_view(
    forecast: &BleedForecast,
    colours: &Swatches,
    dye: &str,
    voice: Voice,
) -> Option<impl IntoView + use<>> {
    let drawn = sections(forecast)?;
    let name = |cut: &Section| match cut.day {
        0.0 => voice.label(Label::Fresh).to_owned(),
        days => voice.say(&Phrase::DayNumber { day: day(voice, days) }),
    };
    let names: Vec<String> = drawn.cuts.iter().map(name).collect();
    let film = voice.quantity(Quantity::Film, forecast.film_um);
    let depth = voice.quantity(Quantity::Film, crate::migration::VISIBLE_DEPTH * 1e6);
    let blocker = drawn.blocker;
    let cuts = drawn
        .cuts
        .into_iter()
        .zip(names.clone())
        .enumerate()
        .map(|(index, (cut, name))| {
            let left = 32.0 + STRIDE * index as f64;
            let eye = drawn.eye;
            view! {
                <text class="t-b t-m" x=left + 0.5 * WIDTH y="20">{name}</text>
                // A picture within the picture cuts off what stands over its edge.
                <svg x=left y=TOP width=WIDTH height=HEIGHT>
                    <path d="M0 0h132v280h-132z" fill="#e3e6e6"></path>
                    <path
                        d="M0 0h132v208q-14 16-30-4-36-20-72 2-16 16-30 0z"
                        fill=colours.fresh.clone()
                    ></path>
                    {blocker.map(|top| view! {
                        <path class="cut-base" d=format!("M0 {top:.1}h132V{}h-132z", FILM - 4.0)></path>
                    })}
                    <path class="held" d=cut.bound></path>
                    <path class="dots" stroke=dye.to_owned() d=cut.free></path>
                    <path class="fibre-edge" stroke=colours.shade.clone() d=fibres()></path>
                    <path class="fibre" stroke=colours.cloth.clone() d=fibres()></path>
                    <path class="prof-halo" d=cut.line.clone()></path>
                    <path class="prof" d=cut.line></path>
                    <path class="f-eye" d=format!("M0 {eye:.1}h132")></path>
                </svg>
                <path class="f-axis" d=format!("M{left} {TOP}h{WIDTH}v{HEIGHT}h-{WIDTH}z")></path>
            }
        })
        .collect_view();
    let eye = drawn.eye;
    Some(view! {
        <figure class="fig-s">
            <figcaption class="sec-head">
                {voice.label(Label::InsideFilm)}" "
                <span class="aside">{voice.say(&Phrase::FilmNear { film })}</span>
            </figcaption>
            <svg class="fig true-colour" id="section" viewBox="0 0 488 368" role="img">
                <title>{voice.say(&Phrase::CutTitle { days: names })}</title>
                {cuts}
                <path class="f-limit f-thin" d=format!("M26 {TOP}h-12v{eye:.1}h12")></path>
                <text class="t-b" x="0" y="44">{voice.say(&Phrase::EyeSees { depth })}</text>
                <text class="t-m" x="256" y="358">{voice.label(Label::DyedFibres)}</text>
            </svg>
            <p class="cap">{voice.label(Label::CutFigure)}</p>
        </figure>
    })
}
