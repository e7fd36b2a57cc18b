//! The job sheet: everything that is run and checked at the press, on one page, read from the answer.
//!
//! [`JobSheet::of`] gathers what the page shows from the state; nothing on it is computed anew. The dryer's setting
//! and the limits are those of the window at the set point, so that a set point that was moved by hand is printed
//! as it was moved. Figures are in both systems of units, because paper travels further than a tablet.

mod print_run;

pub use print_run::PaperStep;

use super::state::{State, key};
use crate::library::sheet_code::{QrSymbol, SheetCode};
use crate::plan::{Margin, OrderPlan, Pick, PrintStep, Report, Setting, Trial, Verdict, days_to_look};
use crate::wording::{JobSheetPhrase, Label, Phrase, Quantity, Voice, civil};

/// Reasons and limits that the page has room for.
const WHY: usize = 3;
const LIMITS: usize = 6;
/// Letters beyond which the page is set in smaller type. Found by printing on A4 and Letter.
const ROOMY: usize = 1200;
const DAY_MS: f64 = 86_400_000.0;

/// A figure with its name, and what is written small beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// What it is.
    pub name: String,
    /// The figure with its unit.
    pub value: String,
    /// The other unit and how well it must be held.
    pub beside: String,
}

/// A limit, and how far the print keeps it.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetLimit {
    /// What it is about.
    pub name: String,
    /// Likely value, range, limit.
    pub value: String,
    /// Whether the whole band keeps it.
    pub holds: bool,
}

/// The trial to run.
#[derive(Clone, Debug, PartialEq)]
pub struct PaperTrial {
    /// What to do.
    pub say: String,
    /// Pieces.
    pub pieces: u32,
    /// Whether they go into an oven.
    pub oven: bool,
    /// What to do when all pass.
    pub then: String,
}

/// What is printed.
#[derive(Clone, Debug, PartialEq)]
pub struct JobSheet {
    /// Name of the order.
    pub title: String,
    /// Pieces, cloth, lot, due day.
    pub about: Vec<String>,
    /// The verdict at this setting.
    pub verdict: Verdict,
    /// The white.
    pub white: String,
    /// Its class, what is mixed in, what to leave out.
    pub white_say: String,
    /// The dryer, figure by figure.
    pub figures: Vec<Figure>,
    /// Whether the set point was moved by hand, in words.
    pub by_hand: Option<String>,
    /// The print run.
    pub run: Vec<PaperStep>,
    /// Why.
    pub why: Vec<String>,
    /// The tightest limits.
    pub limits: Vec<SheetLimit>,
    /// Checks on the first piece.
    pub first: Vec<String>,
    /// The trial, where there is one.
    pub trial: Option<PaperTrial>,
    /// Days on which to look again, and at what.
    pub looks: Vec<(String, String)>,
    /// Other garments of the order.
    pub garments: Vec<String>,
    /// Cautions.
    pub careful: Vec<String>,
    /// The code; absent for an order too long for one.
    pub code: Option<QrSymbol>,
    /// The foot line.
    pub foot: Vec<String>,
    /// Whether there is so much that it is set in smaller type.
    pub tight: bool,
}

impl JobSheet {
    /// The sheet of a state; `None` while there is no answer, or where it is a refusal.
    #[must_use]
    pub fn of(state: &State) -> Option<Self> {
        let (report, pick, order) = (state.report.as_ref()?, state.pick()?, state.order.as_ref()?);
        let voice = state.voice();
        let window = state.window.as_ref();
        let setting = window.and_then(|window| window.setting).or(pick.setting);
        let garment = order.garments.get(pick.garment);
        let pieces = garment.map_or(0, |garment| garment.pieces);
        let margins = window.map_or(&pick.margins, |window| &window.margins);
        let verdict = window.map_or(pick.verdict, |window| window.verdict);
        let title =
            if state.title.is_empty() { voice.say(&JobSheetPhrase::Sheet) } else { state.title.clone() };
        let sheet_code = SheetCode {
            order: order.clone(),
            title: state.title.clone(),
            way: key(pick),
            at: setting.map(|setting| setting.dialled()),
        };
        let mut about = Vec::new();
        if let Some(garment) = garment {
            let pieces = voice.bare(Quantity::Plain, f64::from(garment.pieces));
            about.push(voice.say(&JobSheetPhrase::Pieces { pieces, label: garment.label.clone() }));
            let lot = (!garment.lot.is_empty()).then(|| JobSheetPhrase::Lot { lot: garment.lot.clone() });
            let due = &order.use_.due;
            let due = (!due.is_empty()).then(|| JobSheetPhrase::Due { day: voice.day(due) });
            let under = garment.under_print;
            let under = (!under.is_back_panel())
                .then(|| JobSheetPhrase::Under { what: voice.under_print(under).to_lowercase() });
            let parts: Vec<String> = lot.iter().chain(&due).chain(&under).map(|it| voice.say(it)).collect();
            about.push(parts.join(" · "));
        }
        let mut sheet = Self {
            title,
            about,
            verdict,
            white: pick.name.clone(),
            white_say: white_say(pick, voice),
            figures: figures(state, setting, &pick.steps, voice),
            by_hand: by_hand(pick.setting, setting, voice),
            run: print_run::print_run(pick, order, voice),
            why: pick.reasons.iter().take(WHY).map(|reason| voice.reason(reason)).collect(),
            limits: margins.iter().take(LIMITS).map(|margin| limit(margin, voice)).collect(),
            first: pick.first_piece.iter().map(|&code| voice.code(code)).collect(),
            trial: pick.trial.as_ref().map(|trial| trial_of(trial, pieces, voice)),
            looks: looks(state, pick, verdict, voice),
            garments: garments(report, pick, voice),
            careful: report.cautions.iter().map(|caution| voice.reason(caution)).collect(),
            code: QrSymbol::of(&sheet_code.write()),
            foot: foot(state, &order.shop.dryer, voice),
            tight: false,
        };
        sheet.tight = sheet.letters() > ROOMY;
        Some(sheet)
    }

    /// Letters in the parts whose length varies.
    fn letters(&self) -> usize {
        let parts = self.why.iter().chain(&self.first).chain(&self.careful).chain(&self.garments);
        let trial = self.trial.iter().map(|trial| &trial.say);
        let looks = self.looks.iter().map(|(_, what)| what);
        parts.chain(trial).chain(looks).map(|text| text.chars().count()).sum()
    }
}

/// A figure in the units of the voice, and in the other ones.
fn both(voice: Voice, quantity: Quantity, value: f64) -> (String, String) {
    let write = |units| Voice { units, ..voice }.quantity(quantity, value);
    (write(voice.units), write(voice.units.other()))
}

fn white_say(pick: &Pick, voice: Voice) -> String {
    let class =
        voice.say(&Phrase::WhiteOf { class: voice.class(pick.class).into(), low_cure: pick.low_cure });
    let parts: Vec<(String, String)> = pick
        .mix
        .iter()
        .map(|(name, share)| (name.clone(), voice.quantity(Quantity::Percent, *share)))
        .collect();
    let what = if parts.is_empty() { class } else { voice.say(&Phrase::MixOf { class, parts }) };
    let leave = pick.advice.iter().find(|advice| **advice == crate::plan::Advice::NoReducer);
    leave.map_or_else(|| what.clone(), |&advice| format!("{what}. {}", voice.advice(advice)))
}

fn figures(state: &State, setting: Option<Setting>, steps: &[PrintStep], voice: Voice) -> Vec<Figure> {
    let Some(setting) = setting else { return Vec::new() };
    let (air, other) = both(voice, Quantity::Temperature, setting.air_c);
    let hold = voice.quantity(Quantity::TemperatureDifference, setting.hold_c);
    let mut figures = vec![Figure {
        name: voice.label(Label::DryerAir).into(),
        value: air,
        beside: voice.say(&JobSheetPhrase::Hold { other, hold }),
    }];
    let (belt, other) = both(voice, Quantity::Belt, setting.belt_m_per_min);
    let ends = [-setting.hold_belt_m_per_min, setting.hold_belt_m_per_min];
    let [low, high] = ends.map(|off| voice.bare(Quantity::Belt, setting.belt_m_per_min + off));
    figures.push(Figure {
        name: voice.label(Label::Belt).into(),
        value: belt,
        beside: voice.say(&JobSheetPhrase::Between { other, low, high }),
    });
    let count = steps.iter().find_map(|step| match step {
        PrintStep::Dryer { passes } => Some(*passes),
        _ => None,
    });
    let passes = voice.say(&Phrase::PassCount { count: count.unwrap_or(1) });
    // The belt travels the heated length in the dwell time.
    let length = voice.quantity(Quantity::Length, setting.dwell_s * setting.belt_m_per_min / 60.0);
    figures.push(Figure {
        name: voice.label(Label::InTheHeat).into(),
        value: voice.quantity(Quantity::Seconds, setting.dwell_s.round()),
        beside: voice.say(&JobSheetPhrase::Heated { passes, length }),
    });
    let curve = state.window.as_ref().map(|window| window.curve.film_bottom_c.as_slice());
    if let Some(peak) = curve.and_then(|film| film.iter().copied().max_by(f64::total_cmp)) {
        let (value, other) = both(voice, Quantity::Temperature, peak);
        let name = voice.say(&JobSheetPhrase::FilmPeak);
        figures.push(Figure { name, value, beside: voice.say(&JobSheetPhrase::Underside { other }) });
    }
    figures
}

fn by_hand(best: Option<Setting>, now: Option<Setting>, voice: Voice) -> Option<String> {
    let (best, now) = (best?, now?);
    let off =
        (best.set_c - now.set_c).abs() > 0.05 || (best.belt_m_per_min - now.belt_m_per_min).abs() > 0.005;
    off.then(|| {
        voice.say(&JobSheetPhrase::ByHand {
            air: voice.quantity(Quantity::Temperature, best.set_c),
            belt: voice.quantity(Quantity::Belt, best.belt_m_per_min),
        })
    })
}

fn limit(margin: &Margin, voice: Voice) -> SheetLimit {
    let write = |value: f64| voice.margin(margin, value);
    SheetLimit {
        name: voice.topic(margin.what).into(),
        value: voice.say(&JobSheetPhrase::LimitOf {
            likely: write(margin.value.likely),
            low: write(margin.value.low),
            high: write(margin.value.high),
            limit: write(margin.limit),
        }),
        holds: margin.holds(),
    }
}

fn trial_of(trial: &Trial, pieces: u32, voice: Voice) -> PaperTrial {
    let oven = trial.hours > 0.0;
    let mark = voice.bare(Quantity::ColourDifference, trial.pass_mark);
    let say = if oven {
        let (oven, other) = both(voice, Quantity::Temperature, trial.oven_c);
        JobSheetPhrase::TrialDo {
            pieces: trial.pieces,
            rest: trial.pieces.saturating_sub(1),
            hours: voice.bare(Quantity::Plain, trial.hours),
            oven,
            other,
            mark,
            days: voice.bare(Quantity::Plain, trial.stands_for_days.round()),
        }
    } else {
        JobSheetPhrase::TrialLook { pieces: trial.pieces, mark }
    };
    let pieces = voice.bare(Quantity::Plain, f64::from(pieces));
    let then = voice.say(&JobSheetPhrase::AllPass { pieces });
    PaperTrial { say: voice.say(&say), pieces: trial.pieces, oven, then }
}

/// The date so many days from now.
fn day_in(state: &State, days: f64, voice: Voice) -> String {
    let clock = state.records.clock();
    let (year, month, day) = civil(clock.now.saturating_add((days * DAY_MS) as i64), clock.ahead);
    voice.day(&format!("{year:04}-{month:02}-{day:02}"))
}

/// When to look again: after the oven, before two held pieces ship, and on the usual days up to the one on which
/// the white is judged.
fn looks(state: &State, pick: &Pick, verdict: Verdict, voice: Voice) -> Vec<(String, String)> {
    let mut looks = Vec::new();
    let mut on = |days: f64, what: &JobSheetPhrase| looks.push((day_in(state, days, voice), voice.say(what)));
    if let Some(trial) = pick.trial.as_ref().filter(|trial| trial.hours > 0.0) {
        on(trial.hours / 24.0, &JobSheetPhrase::LookAfterOven);
    }
    if verdict == Verdict::GoWithCheck {
        on(1.0, &JobSheetPhrase::LookBeforeShipping);
    }
    if state.bleeds() {
        let looked_at = state.order.as_ref().map_or(0.0, |order| order.use_.looked_at_after_days);
        for days in days_to_look(looked_at) {
            on(days, &JobSheetPhrase::LookAfter { days: voice.bare(Quantity::Plain, days) });
        }
    }
    looks
}

/// The plan for the other garments of the order.
fn garments(report: &Report, pick: &Pick, voice: Voice) -> Vec<String> {
    let Some(whole) = &report.whole else { return Vec::new() };
    let together = whole.together.as_ref().filter(|plan: &&OrderPlan| plan.verdict <= whole.split.verdict);
    let plan = together.unwrap_or(&whole.split);
    let others = plan.parts.iter().filter(|part| part.garment != pick.garment);
    others
        .map(|part| {
            let setting = part.setting.map_or_else(
                || "–".into(),
                |setting| {
                    let air = voice.quantity(Quantity::Temperature, setting.air_c);
                    format!("{air}, {}", voice.quantity(Quantity::Belt, setting.belt_m_per_min))
                },
            );
            voice.say(&JobSheetPhrase::Garment {
                number: part.garment + 1,
                white: part.name.clone(),
                dried: part.dried,
                setting,
                verdict: voice.verdict(part.verdict).into(),
            })
        })
        .collect()
}

fn foot(state: &State, dryer: &str, voice: Voice) -> Vec<String> {
    let record = state.records.library().dryers.iter().find(|record| record.id == dryer);
    let dryer = record.map(|record| match &record.measured {
        Some(day) => JobSheetPhrase::Measured { dryer: record.name.clone(), day: voice.day(day) },
        None => JobSheetPhrase::NotMeasured { dryer: record.name.clone() },
    });
    let printed = JobSheetPhrase::Printed { day: day_in(state, 0.0, voice) };
    let mut foot: Vec<String> = dryer.iter().chain([&printed]).map(|it| voice.say(it)).collect();
    foot.push(concat!("Whitehold ", env!("CARGO_PKG_VERSION")).into());
    foot
}
