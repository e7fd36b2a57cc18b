//! The white on this cloth, in its true colours: fresh on the left, predicted on the right.

use super::answer::Shown;
use crate::desk::picture::cloth::{Swatches, swatches};
use crate::plan::{Pick, Step, Topic};
use crate::wording::{Label, Phrase};
use leptos::prelude::*;

/// Colours of the white on the cloth at the good end, most likely, and at the bad end.
pub(super) fn colours(shown: &Shown, pick: &Pick) -> Option<Swatches> {
    let film = pick.steps.iter().rev().find_map(|step| match step {
        Step::White { film_um, .. } => Some(*film_um),
        _ => None,
    })?;
    let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed).map(|margin| margin.value);
    let differences = bleed.map_or([0.0; 3], |band| [band.low, band.likely, band.high]);
    swatches(shown.cloth?, film, &differences)
}

/// The knit of the cloth, in its own colour, for every picture of this answer.
pub(super) fn knit(colours: Option<&Swatches>) -> Option<impl IntoView + use<>> {
    let colours = colours?.clone();
    Some(view! {
        <svg class="defs" width="0" height="0" aria-hidden="true">
            <defs>
                <pattern id="knit" width="7" height="8" patternUnits="userSpaceOnUse">
                    <rect width="7" height="8" fill=colours.cloth></rect>
                    <path d="M0 1.5Q2 2 3.5 7Q5 2 7 1.5" fill="none" stroke=colours.shade stroke-width="1.6"></path>
                    <path
                        d="M0 5.5Q1 6 1.75 8M7 5.5Q6 6 5.25 8"
                        fill="none"
                        stroke=colours.light
                        stroke-width="1"
                    ></path>
                </pattern>
            </defs>
        </svg>
    })
}

/// The split circles of a strip of cloth 740 wide and 132 high.
pub(super) fn circles(colours: &Swatches) -> impl IntoView + use<> {
    colours
        .turned
        .iter()
        .enumerate()
        .map(|(index, turned)| {
            let left = 59.3 + 246.7 * index as f64;
            view! {
                <g transform=format!("translate({left:.1} 0)")>
                    <circle cx="64" cy="66" r="53" fill=colours.fresh.clone()></circle>
                    <path d="M64 13a53 53 0 0 1 0 106z" fill=turned.clone()></path>
                    <path d="M64 2v11M64 119v11" stroke="#fff" stroke-width="3"></path>
                </g>
            }
        })
        .collect_view()
}

pub(super) fn on_this_cloth(
    shown: &Shown,
    pick: &Pick,
    colours: Option<&Swatches>,
) -> Option<impl IntoView + use<>> {
    let voice = shown.voice;
    let colours = colours?.clone();
    let margin = pick.margins.iter().find(|margin| margin.what == Topic::Bleed)?.clone();
    let write = |value| voice.margin(&margin, value);
    let title = voice.say(&Phrase::ClothTitle {
        likely: write(margin.value.likely),
        high: write(margin.value.high),
        limit: write(margin.limit),
    });
    let circles = circles(&colours);
    let named = [
        (Label::BestCase, margin.value.low, None),
        (Label::Likely, margin.value.likely, None),
        (Label::BadEnd, margin.value.high, Some(Label::WorseOneInTen)),
    ]
    .map(|(name, value, note)| {
        let over = value > margin.limit;
        view! {
            <div>
                <dt>{voice.label(name)}</dt>
                <dd class:over=over>
                    {write(value)}" "<small>{note.map(|note| voice.label(note))}</small>
                </dd>
            </div>
        }
    })
    .collect_view();
    let limit = voice.say(&Phrase::LimitAt { value: write(margin.limit) });
    Some(view! {
        <figure class="blk">
            <figcaption class="sec-head">
                {voice.label(Label::OnThisCloth)}" "
                <span class="aside">{voice.label(Label::FreshAndForecast)}</span>
            </figcaption>
            <svg class="fig true-colour" viewBox="0 0 740 132" role="img">
                <title>{title}</title>
                <rect width="740" height="132" fill="url(#knit)"></rect>
                {circles}
            </svg>
            <dl class="three">{named}</dl>
            <p class="cap"><b>{limit}". "</b>{voice.label(Label::ClothFigure)}</p>
        </figure>
    })
}
