//! The Forecast screen: how the white ages at the set point, what the film looks like inside, and the trial.

mod ageing;
mod section;

use crate::desk::picture::ageing::ageing_chart as drawn;
use crate::desk::picture::swatches::Swatches;
use crate::desk::{Field, Msg};
use crate::optics::Lab;
use crate::plan::{BleedForecast, Trial, Verdict};
use crate::web::desk::Desk;
use crate::web::view::answer::cloth;
use crate::web::view::widgets::disclosure::is_open;
use crate::web::view::widgets::field::{slid, stepped};
use crate::web::view::widgets::icon;
use crate::web::view::window;
use crate::wording::{ForecastTable, Label, Phrase, Quantity, Voice};
use ageing::write;
use leptos::prelude::*;

/// A forecast with what its pictures need.
#[derive(Clone, PartialEq)]
struct Shown {
    forecast: BleedForecast,
    cloth: Lab,
    voice: Voice,
}

/// The screen.
pub fn forecast(desk: Desk) -> impl IntoView {
    let state = desk.memo(|state| {
        let busy = state.asked.is_some();
        (state.pick().is_some(), state.bleeds(), state.forecast.is_some(), busy, state.report.is_some())
    });
    move || match state.get() {
        (true, true, true, ..) => open(desk).into_any(),
        (true, true, ..) | (false, _, _, true, _) => waiting(desk, Label::Reckoning).into_any(),
        (true, ..) => waiting(desk, Label::NothingBleeds).into_any(),
        (false, _, _, _, true) => waiting(desk, Label::RefusedHere).into_any(),
        (false, ..) => waiting(desk, Label::NoForecastYet).into_any(),
    }
}

fn waiting(desk: Desk, say: Label) -> impl IntoView {
    window::waiting(desk, Label::Forecast, say)
}

fn open(desk: Desk) -> impl IntoView {
    let shown = desk.memo(|state| {
        let forecast = state.forecast.clone()?;
        // A cloth of unknown colour is drawn grey.
        let cloth = state.cloth.unwrap_or(Lab { lightness: 60.0, a: 0.0, b: 0.0 });
        Some(Shown { forecast, cloth, voice: state.voice() })
    });
    let trial =
        desk.memo(|state| (state.pick_or_closed().and_then(|pick| pick.trial.clone()), state.voice()));
    let moved = desk.memo(|state| {
        !state.draft.text(Field::SetTemperature).is_empty() || !state.draft.text(Field::Belt).is_empty()
    });
    let opened = RwSignal::new(false);
    view! {
        <div class="fore">
            {move || shown.get().map(|it| ageing::ageing_view(&it.forecast, it.voice))}
            {move || shown.get().map(|it| {
                let colours = it.colours();
                section::section_view(&it.forecast, &colours, &dye(&it), it.voice)
            })}
        </div>
        <div class="fore blk">
            <div>
                {move || shown.get().map(|it| said(&it))}
                <div class="set">
                    <div>{stepped(desk, Field::SetTemperature, Label::DryerSet, true)}{slid(desk, Field::SetTemperature, Label::DryerSet)}</div>
                    <div>{stepped(desk, Field::Belt, Label::Belt, true)}{slid(desk, Field::Belt, Label::Belt)}</div>
                </div>
                {move || moved.get().then(|| view! {
                    <button class="btn btn-wide set-back" type="button" on:click=move |_| desk.send(Msg::BestPoint)>
                        {desk.label(Label::BestPoint)}
                    </button>
                })}
                {move || shown.get().map(|it| beside(&it))}
            </div>
            {move || shown.get().map(|it| on_cloth(&it))}
        </div>
        // The table is drawn only while it is open: a drag draws everything else thirty times a second.
        <details
            class="more blk"
            on:toggle=move |event| opened.set(is_open(&event))
        >
            <summary class="btn btn-wide">{move || desk.label(Label::FiguresBehind)}</summary>
            {move || shown.get().filter(|_| opened.get()).map(|it| {
                let (forecast, voice) = (&it.forecast, it.voice);
                [voice.forecast_days(forecast), voice.forecast_ledger(forecast), voice.forecast_worlds(forecast)]
                    .map(table)
                    .collect_view()
            })}
        </details>
        <div class="looks">{move || shown.get().map(|it| table(it.voice.forecast_looks(&it.forecast)))}</div>
        {move || {
            let (trial, voice) = trial.get();
            trial.map(|trial| the_trial(&trial, voice))
        }}
    }
}

impl Shown {
    fn colours(&self) -> Swatches {
        Swatches::of(self.cloth, self.forecast.fresh, &self.forecast.turned)
    }
}

/// Colour of the migrating dye: the hue towards which it turns the white, at full strength; the cloth's own where
/// the white hardly turns.
fn dye(shown: &Shown) -> String {
    let (fresh, [.., turned]) = (shown.forecast.fresh, shown.forecast.turned);
    let (a, b) = (turned.a - fresh.a, turned.b - fresh.b);
    let size = a.hypot(b);
    if size < 0.2 {
        return shown.cloth.swatch();
    }
    Lab { lightness: 50.0, a: 55.0 * a / size, b: 55.0 * b / size }.swatch()
}

/// The forecast in words.
fn said(shown: &Shown) -> impl IntoView + use<> {
    let Shown { forecast, voice, .. } = shown;
    let text = ageing::sentence(forecast, drawn(forecast).as_ref(), *voice);
    let no = forecast.verdict == Verdict::Refuse;
    view! {
        <div class="say" class:say-no=no id="say" role="status">
            <span class=icon::verdict_class(forecast.verdict)>
                {icon::icon(96, icon::mark(forecast.verdict))}
            </span>
            <p><b>{voice.verdict_short(forecast.verdict)}"."</b>" "{text}</p>
        </div>
    }
}

/// What the band does not show: the chance, how full the white is, the rim of a blocker, and ghosting.
fn beside(shown: &Shown) -> impl IntoView + use<> {
    let Shown { forecast, voice, .. } = shown;
    let often = forecast.ghosting.frequency;
    let ghosts = (often > 0.002).then(|| voice.say(&Phrase::GhostsOften { chance: voice.chance(often) }));
    let mut says = voice.forecast_says(forecast);
    says.extend(ghosts);
    view! { <p class="cap blk" id="aged-says">{says.join(" ")}</p> }
}

/// The white on its cloth in true colour: fresh left, on the day that matters right.
fn on_cloth(shown: &Shown) -> impl IntoView + use<> {
    let voice = shown.voice;
    let colours = shown.colours();
    let names = [Label::BestCase, Label::Likely, Label::BadEnd]
        .map(|name| view! { <div><dt>{voice.label(name)}</dt></div> })
        .collect_view();
    view! {
        <div class="defs" inner_html=cloth::knit(&colours).into_string()></div>
        <figure>
            <figcaption class="sec-head">
                {voice.label(Label::OnThisCloth)}" "
                <span class="aside">{voice.label(Label::FreshAndForecast)}</span>
            </figcaption>
            <svg
                class="fig true-colour"
                viewBox="0 0 740 132"
                aria-hidden="true"
                inner_html=cloth::strip(&colours).into_string()
            ></svg>
            <dl class="three">{names}</dl>
            <p class="cap">{voice.forecast_on_cloth(&shown.forecast)}</p>
        </figure>
    }
}

/// A table of words and figures with its finding above it.
fn table(table: ForecastTable) -> impl IntoView + use<> {
    let cells = |cells: Vec<String>| {
        let cell = |(at, text): (usize, String)| view! { <td class:r={at > 0}>{text}</td> };
        view! { <tr>{cells.into_iter().enumerate().map(cell).collect_view()}</tr> }
    };
    let head = |(at, text): (usize, String)| view! { <th scope="col" class:r={at > 0}>{text}</th> };
    let says = (!table.says.is_empty()).then(|| view! { <p class="cap">{table.says.clone()}</p> });
    view! {
        <section class="blk">
            <h2 class="sec-head">{table.title.clone()}</h2>
            {says}
            <div class="scroll" tabindex="0" role="region" aria-label=table.title>
                <table class="tbl">
                    <thead><tr>{table.head.into_iter().enumerate().map(head).collect_view()}</tr></thead>
                    <tbody>{table.rows.into_iter().map(cells).collect_view()}</tbody>
                </table>
            </div>
        </section>
    }
}

fn the_trial(trial: &Trial, voice: Voice) -> impl IntoView + use<> {
    let pieces = view! { <li><b>{trial.pieces}</b><p>{voice.label(Label::PiecesToPrint)}</p></li> };
    let oven = (trial.hours > 0.0).then(|| {
        let hours = format!("{}\u{a0}h", voice.bare(Quantity::Plain, trial.hours));
        let heat = voice.quantity(Quantity::Temperature, trial.oven_c);
        let days = voice.quantity(Quantity::Days, trial.stands_for_days.round());
        view! {
            <li><b>{hours}</b><span>{heat}</span><p>{voice.label(Label::InTheOven)}</p></li>
            <li><b>{days}</b><p>{voice.label(Label::OnTheShelf)}</p></li>
        }
    });
    let mark = write(voice, trial.pass_mark);
    let warns = trial.hours > 0.0;
    view! {
        <section class="blk">
            <h2 class="sec-head">{voice.label(Label::TheTrial)}</h2>
            <ol class="steps">
                {pieces}
                {oven}
                <li><b>{mark}</b><span>"ΔE00"</span><p>{voice.label(Label::PassMark)}</p></li>
            </ol>
            {warns.then(|| view! {
                <div class="warn blk">
                    <span class="c-heat">{icon::icon(36, icon::WARN)}</span>
                    <p>{voice.label(Label::OvenCeiling)}</p>
                </div>
            })}
        </section>
    }
}
