//! The print run: what happens to the shirt, in order.

use crate::plan::{Advice, Pick, PrintStep};
use crate::web::view::widgets::icon;
use crate::wording::{Label, Phrase, Quantity, Units, Voice};
use maud::{Markup, PreEscaped, html};

/// The strip of steps.
pub fn print_run(pick: &Pick, voice: Voice) -> Markup {
    let blocked = pick.steps.iter().any(|step| matches!(step, PrintStep::Blocker { .. }));
    // Nothing is printed before the cloth is dry.
    let printed = pick.steps.iter().position(|step| !matches!(step, PrintStep::PreDry { .. })).unwrap_or(0);
    let (dried, steps) = pick.steps.split_at(printed);
    html! {
        div class="blk" {
            h2 class="sr" { (voice.label(Label::PrintRun)) }
            ol class="run" {
                @for step in dried { (one(step, pick, voice)) }
                @if !blocked {
                    (drawn(icon::NO_BASE, voice.label(Label::NoBlocker), voice.label(Label::WithThisWhite)))
                }
                @for step in steps { (one(step, pick, voice)) }
            }
        }
    }
}

fn one(step: &PrintStep, pick: &Pick, voice: Voice) -> Markup {
    let film = |film_um: f64| voice.say(&Phrase::FilmNear { film: voice.quantity(Quantity::Film, film_um) });
    match step {
        PrintStep::PreDry { passes, water_percent, left_percent } => {
            let [before, after] =
                [*water_percent, *left_percent].map(|water| voice.quantity(Quantity::Percent, water));
            let under = voice.say(&Phrase::DriedIn { passes: *passes, before, after });
            drawn(icon::DRY, voice.label(Label::DryCloth), &under)
        }
        PrintStep::Blocker { name, film_um, .. } => drawn(icon::BASE, name, &film(*film_um)),
        PrintStep::White { strokes, threads_per_cm, film_um } => {
            let mesh = both_threads(voice, *threads_per_cm);
            let whites = || pick.steps.iter().filter(|step| matches!(step, PrintStep::White { .. }));
            let first = whites().next().is_some_and(|other| std::ptr::eq(other, step));
            let last = whites().next_back().is_some_and(|other| std::ptr::eq(other, step));
            // The mesh is named at the first strokes, the film at the last.
            let under = match (first, last) {
                (true, true) => format!("{mesh}, {}", film(*film_um)),
                (false, true) => film(*film_um),
                _ => mesh,
            };
            drawn(icon::STROKE, &voice.say(&Phrase::StrokeCount { count: *strokes }), &under)
        }
        PrintStep::Flash { seconds, .. } => {
            let time = voice.quantity(Quantity::Seconds, seconds.round());
            drawn(icon::FLASH, &voice.say(&Phrase::FlashFor { time }), voice.label(Label::DryTacky))
        }
        PrintStep::Smooth => {
            drawn(icon::SMOOTH, voice.label(Label::SmoothingScreen), voice.label(Label::NapPressedDown))
        }
        PrintStep::Dryer { passes } => {
            let cool = pick.advice.contains(&Advice::CoolBeforeStacking);
            let under = if cool || *passes < 2 {
                voice.label(Label::CoolThenStack).to_owned()
            } else {
                voice.say(&Phrase::PassCount { count: *passes })
            };
            drawn(icon::DRYER, voice.label(Label::Dryer), &under)
        }
    }
}

/// Threads in the units of the voice first, in the other behind: meshes are sold by both.
fn both_threads(voice: Voice, threads_per_cm: f64) -> String {
    let write = |units: Units| Voice { units, ..voice }.quantity(Quantity::Threads, threads_per_cm);
    format!("{} ({})", write(voice.units), write(voice.units.other()))
}

fn drawn(picture: &'static str, name: &str, under: &str) -> Markup {
    html! {
        li {
            svg class="pic" viewBox="0 0 150 44" aria-hidden="true" { (PreEscaped(picture)) }
            b { (name) }
            span { (under) }
        }
    }
}
