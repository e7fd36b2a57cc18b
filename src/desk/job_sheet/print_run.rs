//! The print run on paper: screens in order, with mesh, strokes and flash.

use crate::plan::{Advice, CureKind, Order, Pick, PrintStep};
use crate::wording::{JobSheetPhrase, Label, Phrase, Quantity, Units, Voice};

/// One step: what is done, and what belongs to it.
#[derive(Clone, Debug, PartialEq)]
pub struct PaperStep {
    /// What is done.
    pub name: String,
    /// Mesh, film, how it should look.
    pub under: String,
}

/// The steps; the colours on top come before the dryer.
pub fn print_run(pick: &Pick, order: &Order, voice: Voice) -> Vec<PaperStep> {
    let mut steps: Vec<PaperStep> = pick.steps.iter().map(|step| one(step, pick, voice)).collect();
    let colours = &order.print.colours_on_top;
    if colours.count > 0 {
        let low_cure = colours.cure == CureKind::LowCure;
        let name = voice.say(&JobSheetPhrase::Colours { count: colours.count, low_cure });
        let last = steps.len().saturating_sub(1);
        steps.insert(last, PaperStep { name, under: String::new() });
    }
    steps
}

fn one(step: &PrintStep, pick: &Pick, voice: Voice) -> PaperStep {
    let film = |um: f64| voice.say(&Phrase::FilmNear { film: voice.quantity(Quantity::Film, um) });
    let (name, under) = match step {
        PrintStep::PreDry { passes, water_percent, left_percent } => {
            let [before, after] =
                [*water_percent, *left_percent].map(|water| voice.quantity(Quantity::Percent, water));
            let under = voice.say(&Phrase::DriedIn { passes: *passes, before, after });
            (voice.label(Label::DryCloth).into(), under)
        }
        PrintStep::Blocker { name, film_um, .. } => (name.clone(), film(*film_um)),
        PrintStep::White { strokes, threads_per_cm, film_um } => {
            let mesh = |units: Units| Voice { units, ..voice }.quantity(Quantity::Threads, *threads_per_cm);
            let both = format!("{} ({})", mesh(voice.units), mesh(voice.units.other()));
            (voice.say(&Phrase::StrokeCount { count: *strokes }), format!("{both}, {}", film(*film_um)))
        }
        PrintStep::Flash { seconds, film_c } => {
            let time = voice.quantity(Quantity::Seconds, seconds.round());
            let dry = voice.label(Label::DryTacky);
            let heat = voice.quantity(Quantity::Temperature, *film_c);
            (voice.say(&Phrase::FlashFor { time }), format!("{dry}, {heat}"))
        }
        PrintStep::Smooth => {
            (voice.label(Label::SmoothingScreen).into(), voice.label(Label::NapPressedDown).into())
        }
        PrintStep::Dryer { passes } => {
            let cool = pick.advice.contains(&Advice::CoolBeforeStacking) || *passes < 2;
            let under = if cool {
                voice.label(Label::CoolThenStack).into()
            } else {
                voice.say(&Phrase::PassCount { count: *passes })
            };
            (voice.label(Label::Dryer).into(), under)
        }
    };
    PaperStep { name, under }
}
