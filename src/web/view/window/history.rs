//! Temperatures of film and cloth over time, and how far the underside is fused.

use crate::desk::picture::history::{FUSED_HEIGHT, HEIGHT, HistoryCharts, WIDTH, history_charts};
use crate::plan::{Topic, WindowReport};
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice};
use leptos::prelude::*;

/// Both charts of a window report.
pub fn history_view(window: &WindowReport, voice: Voice) -> Option<impl IntoView + use<>> {
    let limit =
        window.walls.iter().find(|wall| wall.what == Topic::Fusion).map_or(0.9, |wall| wall.limit / 100.0);
    let drawn = history_charts(&window.curve, limit, voice.units)?;
    let peak = voice.quantity(Quantity::Temperature, drawn.peak_c);
    let curves = curves(&drawn, window.curve.leaves_s, voice);
    let fused = fused(&drawn, limit, voice);
    Some(view! {
        <figure class="fig-s win-hist">
            <figcaption class="sec-head">
                {voice.label(Label::FilmAndCloth)}" "
                <span class="aside">{voice.say(&Phrase::Peak { value: peak })}</span>
            </figcaption>
            {curves}
            {fused}
            <p class="cap">{voice.label(Label::CurveFigure)}</p>
        </figure>
    })
}

fn time_axis(drawn: &HistoryCharts, foot: f64, voice: Voice) -> impl IntoView + use<> {
    let numeral = Numeral(voice.language);
    drawn
        .time_ticks
        .iter()
        .map(|(x, value)| {
            view! {
                <path class="f-axis" d=format!("M{x:.1} {foot}v6")></path>
                <text class="t-m" x=x.min(WIDTH - 20.0) y=foot + 24.0>{numeral.fixed(*value, 0)}</text>
            }
        })
        .collect_view()
}

fn curves(drawn: &HistoryCharts, leaves_s: f64, voice: Voice) -> impl IntoView + use<> {
    let numeral = Numeral(voice.language);
    let (left, right, top, foot) = (drawn.time.start, drawn.time.end, drawn.heat.end, drawn.heat.start);
    let title = voice.say(&Phrase::CurveTitle {
        peak: voice.quantity(Quantity::Temperature, drawn.peak_c),
        time: voice.quantity(Quantity::Seconds, leaves_s.round()),
        lag: voice.quantity(Quantity::TemperatureDifference, drawn.lag.round()),
    });
    let up = drawn
        .heat_ticks
        .iter()
        .map(|(y, value)| {
            view! {
                <path class="f-grid" d=format!("M{left} {y:.1}H{right}")></path>
                <text class="t-e" x=left - 8.0 y=y + 6.0>{numeral.fixed(*value, 0)}</text>
            }
        })
        .collect_view();
    let leaves = drawn.leaves;
    let time = voice.say(&Phrase::InHeat { time: voice.quantity(Quantity::Seconds, leaves_s.round()) });
    let [(top_x, top_y), (cloth_x, cloth_y)] = drawn.marks;
    let low = (foot - 78.0).max(cloth_y + 60.0).min(foot - 40.0);
    let unit = Quantity::Temperature.unit(voice.units, voice.language);
    view! {
        <svg class="fig" viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img">
            <title>{title}</title>
            <rect class="w-heat" x=left y=top width=leaves - left height=foot - top></rect>
            {up}
            <text class="t-b t-m" x=((left + leaves) / 2.0).max(left + 60.0) y=top - 12.0>{time}</text>
            {(leaves < right - 90.0).then(|| view! {
                <text class="t-m t-q" x=(leaves + right) / 2.0 y=top - 12.0>{voice.label(Label::Cooling)}</text>
            })}
            <path class="f-axis f-dash" d=format!("M{leaves:.1} {}V{foot}", top - 6.0)></path>
            <path class="f-cloth f-dash" d=drawn.cloth.clone()></path>
            <path class="f-heat f-thin" d=drawn.bottom.clone()></path>
            <path class="f-heat" d=drawn.top.clone()></path>
            <path class="f-axis" d=format!("M{left} {top}V{foot}H{right}")></path>
            {time_axis(drawn, foot, voice)}
            <path class="f-tick" d=format!("M{:.1} {:.1}L{top_x:.1} {top_y:.1}", top_x - 6.0, top_y - 20.0)></path>
            <text class="t-b t-halo t-m" x=(top_x - 10.0).max(left + 46.0) y=(top_y - 26.0).max(top + 18.0)>
                {voice.label(Label::FilmTop)}
            </text>
            <path class="f-tick" d=format!("M{cloth_x:.1} {cloth_y:.1}L{cloth_x:.1} {:.1}", low - 20.0)></path>
            <text class="t-halo t-m" x=cloth_x.max(left + 76.0) y=low>{voice.label(Label::ClothDashed)}</text>
            <text class="t-halo t-m" x=cloth_x.max(left + 76.0) y=low + 24.0>{voice.label(Label::Underside)}</text>
            <text class="t-b t-e" x=right y=HEIGHT - 6.0>{voice.label(Label::SecondsAxis)}</text>
            <text class="t-b" x="0" y=HEIGHT - 6.0>{format!("{unit} ↑")}</text>
        </svg>
    }
}

fn fused(drawn: &HistoryCharts, limit: f64, voice: Voice) -> impl IntoView + use<> {
    let (left, right, top, foot) = (drawn.time.start, drawn.time.end, drawn.share.end, drawn.share.start);
    let percent = |share: f64| voice.quantity(Quantity::Percent, share * 100.0);
    let when = drawn.fused_at.map(|second| voice.quantity(Quantity::Seconds, second.round()));
    let title = voice.say(&Phrase::FusedTitle { end: percent(drawn.fused_end), when: when.clone() });
    let line = drawn.share.at(limit);
    let said = match &when {
        Some(time) => voice.say(&Phrase::FusedAt { time: time.clone() }),
        None => voice.say(&Phrase::NotFusedYet { value: percent(drawn.fused_end) }),
    };
    let dot = drawn.fused_at.map(|second| {
        view! { <circle class="point-core" cx=drawn.time.at(second) cy=line r="6"></circle> }
    });
    let at = drawn.fused_at.map_or(left + 160.0, |second| drawn.time.at(second));
    let (word_x, class) =
        if at > right - 140.0 { (at - 14.0, "t-b t-halo t-e") } else { (at + 14.0, "t-b t-halo") };
    let scale = [(0.0, "0"), (0.5, "50"), (1.0, "100")]
        .map(|(share, text)| view! { <text class="t-e" x=left - 8.0 y=drawn.share.at(share) + 6.0>{text}</text> })
        .collect_view();
    view! {
        <svg class="fig" viewBox=format!("0 0 {WIDTH} {FUSED_HEIGHT}") role="img">
            <title>{title}</title>
            <path class="w-fuse" d=drawn.fused_area.clone()></path>
            <path class="f-limit f-thin" d=format!("M{left} {line:.1}H{right}")></path>
            <text class="t-halo" x=left + 8.0 y=line + 20.0>
                {voice.say(&Phrase::NeedsFused { value: percent(limit) })}
            </text>
            <path class="f-fuse" d=drawn.fused.clone()></path>
            <path class="f-axis" d=format!("M{left} {top}V{foot}H{right}")></path>
            {scale}
            {time_axis(drawn, foot, voice)}
            {dot}
            <text class=class x=word_x y=line + 42.0>{said}</text>
            <text class="t-b" x="0" y=FUSED_HEIGHT - 6.0>{format!("{} ↑", voice.label(Label::FusedAxis))}</text>
            <text class="t-b t-e" x=right y=FUSED_HEIGHT - 6.0>{voice.label(Label::SecondsAxis)}</text>
        </svg>
    }
}
