//! The band over days, with its limit, its grades and the day that matters.

use crate::desk::picture::ageing::{Ageing, HEIGHT, WIDTH, ageing};
use crate::plan::{BleedForecast, Spread, Topic};
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice};
use leptos::prelude::*;

/// A colour difference as it is written.
pub(super) fn write(voice: Voice, value: f64) -> String {
    voice.quantity(Quantity::ColourDifference, value)
}

/// A day as it is written.
pub(super) fn day(voice: Voice, value: f64) -> String {
    voice.bare(Quantity::Days, value)
}

/// The forecast in one sentence, as the picture's own title too.
pub(super) fn sentence(forecast: &BleedForecast, drawn: Option<&Ageing>, voice: Voice) -> String {
    let Some((fresh, end)) = forecast.de00.first().zip(forecast.de00.last()) else { return String::new() };
    let says = voice.say(&Phrase::AgeingSays {
        fresh: write(voice, fresh.likely),
        day: day(voice, forecast.looked_at_days),
        likely: write(voice, drawn.map_or(end.likely, |drawn| drawn.looked_at[2])),
        low: write(voice, end.low),
        high: write(voice, end.high),
        limit: write(voice, forecast.limit),
    });
    let shows = forecast.first_shows;
    let first = voice.say(&Phrase::FirstShows {
        early: shows.early_days.map(|it| day(voice, it)),
        likely: shows.likely_days.map(|it| day(voice, it)),
        last: day(voice, forecast.days.last().copied().unwrap_or_default()),
    });
    format!("{says} {first}")
}

/// The figure.
pub fn ageing_view(forecast: &BleedForecast, voice: Voice) -> Option<impl IntoView + use<>> {
    let drawn = ageing(forecast)?;
    let (left, right, top, foot) = (drawn.time.start, drawn.time.end, drawn.shift.end, drawn.shift.start);
    let [low, likely, high] = drawn.lines.clone();
    let heat = voice.quantity(Quantity::Temperature, forecast.storage_c);
    Some(view! {
        <figure>
            <figcaption class="sec-head">{voice.label(Label::HowItAges)}</figcaption>
            <svg class="fig" id="ageing" viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img">
                <title>{sentence(forecast, Some(&drawn), voice)}</title>
                <path class="w-dye" d=drawn.wide.clone()></path>
                <path class="band-core" d=drawn.core.clone()></path>
                <rect fill="url(#h-dye)" x=left y=top width=right - left height=drawn.limit - top></rect>
                <path class="f-dye f-thin" d=high></path>
                <path class="f-dye f-thin" d=low></path>
                <path class="point-halo" d=likely.clone()></path>
                <path class="f-dye" d=likely></path>
                {grades(&drawn, voice)}
                <path class="f-limit" d=format!("M{left} {:.1}H{:.1}", drawn.limit, right + 8.0)></path>
                <text class="t-b t-halo" x=left + 8.0 y=top + 21.0>{voice.past_limit(Topic::Bleed)}</text>
                <text class="t-halo" x=left + 8.0 y=top + 42.0>{voice.label(Label::BesideFresh)}</text>
                {day_that_matters(forecast, &drawn, voice)}
                {ends(forecast, &drawn, voice)}
                <path class="f-axis" d=format!("M{left} {top}V{foot}H{right}")></path>
                {axes(&drawn, voice)}
                <text class="t-b t-e" x=right y=HEIGHT - 10.0>{voice.say(&Phrase::DaysAt { heat })}</text>
                <text class="t-b" x="0" y=HEIGHT - 10.0>"ΔE00 ↑"</text>
            </svg>
            <p class="cap">{voice.label(Label::AgeingFigure)}</p>
        </figure>
    })
}

fn grades(drawn: &Ageing, voice: Voice) -> impl IntoView + use<> {
    let (left, right) = (drawn.time.start, drawn.time.end);
    drawn
        .grades
        .iter()
        .map(|(height, step)| {
            let grade = step.text().replace('-', "–");
            view! {
                <path class="f-axis f-dash" d=format!("M{left} {height:.1}H{right}")></path>
                <text class="t-halo" x=left + 8.0 y=height - 7.0>
                    {voice.say(&Phrase::GradeFrom { grade })}
                </text>
            }
        })
        .collect_view()
}

fn day_that_matters(forecast: &BleedForecast, drawn: &Ageing, voice: Voice) -> impl IntoView + use<> {
    let [x, y, value] = drawn.looked_at;
    let (top, foot) = (drawn.shift.end, drawn.shift.start);
    // The words stand on the roomier side of their line.
    let (words, class) = if x > 0.5 * (drawn.time.start + drawn.time.end) {
        (x - 12.0, "t-b t-halo t-e")
    } else {
        (x + 10.0, "t-b t-halo")
    };
    let says =
        voice.say(&Phrase::OnDay { day: day(voice, forecast.looked_at_days), value: write(voice, value) });
    let chance = voice.say(&Phrase::StaysWhite { chance: voice.chance(forecast.stays_white) });
    view! {
        <path class="f-limit f-thin" d=format!("M{x:.1} {top}V{foot}")></path>
        <text class=class x=words y=top + 72.0>{says}</text>
        <text class=class x=words y=top + 94.0>{chance}</text>
        <circle class="dot-w" cx=x cy=y r="8"></circle>
    }
}

/// What stands at the end of the band, beside it.
fn ends(forecast: &BleedForecast, drawn: &Ageing, voice: Voice) -> impl IntoView + use<> {
    let x = drawn.time.end + 12.0;
    let end = forecast.de00.last().copied();
    let named: [(Label, fn(&Spread) -> f64); 3] =
        [(Label::BestCase, |it| it.low), (Label::Likely, |it| it.likely), (Label::BadEnd, |it| it.high)];
    let texts = named
        .into_iter()
        .zip(drawn.labels)
        .map(|((label, of), y)| {
            let text = end.map(|end| format!("{} {}", write(voice, of(&end)), voice.label(label)));
            view! { <text class="t-b" x=x y=y + 6.0>{text}</text> }
        })
        .collect_view();
    let limit = voice.say(&Phrase::LimitAt { value: write(voice, forecast.limit) });
    view! {
        {texts}
        <text class="t-b" x=x y=drawn.labels[3] + 6.0>{limit}</text>
        <circle class="dot-w" cx=drawn.end[0] cy=drawn.end[1] r="8"></circle>
    }
}

fn axes(drawn: &Ageing, voice: Voice) -> impl IntoView + use<> {
    let (left, foot) = (drawn.time.start, drawn.shift.start);
    let numeral = Numeral(voice.language);
    let up = drawn
        .shift_ticks
        .iter()
        .map(|(y, value, digits)| {
            view! {
                <path class="f-axis" d=format!("M{left} {y:.1}h-7")></path>
                <text class="t-e" x=left - 12.0 y=y + 6.0>{numeral.fixed(*value, *digits)}</text>
            }
        })
        .collect_view();
    let along = drawn
        .day_ticks
        .iter()
        .map(|(x, value)| {
            view! {
                <path class="f-axis" d=format!("M{x:.1} {foot}v8")></path>
                <text class="t-m" x=*x y=foot + 27.0>{numeral.fixed(*value, 0)}</text>
            }
        })
        .collect_view();
    view! {
        {up}
        {along}
    }
}
