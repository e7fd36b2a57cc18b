use super::draft::{Draft, Theme};
use super::edit::{add_garment, blank, change, choose, held, remove_garment, sample, step, travel};
use super::field::Field;
use super::keep;
use super::shop::{Clock, ShopMsg, tend};
use super::state::{Screen, State, Touch};
use crate::library::shelf::{Line, Trouble};
use crate::library::ticket::{Ticket, Unread};
use crate::optics::Lab;
use crate::optics::meter::MeterFile;
use crate::plan::{
    BleedForecast, CureKind, DyeClass, Finish, Opacity, Order, Pick, Priority, Report, Role, UseKind,
    WindowReport,
};
use crate::proof::{Diagnosis, Run, Seen};
use crate::quantity::FieldError;
use crate::wording::{Language, Phrase, Quantity, on};

/// Something that happened on the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    /// Nothing yet: work out the draft.
    Start,
    /// Text was typed into a field.
    Type(Field, String),
    /// A field went a number of taps up or down.
    Step(Field, i32),
    /// Something was chosen.
    Choose(Choice),
    /// Typing or dragging is over: the next touch is a new step of Undo.
    Done,
    /// Another garment is shown in the form.
    Garment(usize),
    /// One more garment.
    AddGarment,
    /// The shown garment goes.
    RemoveGarment,
    /// An order is put into the form under a title.
    Open(Box<Order>, String),
    /// A new order for the same shop.
    Blank,
    /// The share of the open mesh that lies on the cloth goes a step up or down; nothing = back to the prior.
    Transfer(Option<i32>),
    /// The other units.
    Units,
    /// The other language.
    Language,
    /// A theme.
    Theme(Theme),
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
    /// Back to the last draft that could be read.
    BackToReadable,
    /// The text of a colour meter's file was opened for the shown garment.
    Meter(String),
    /// One of its samples, by its place, is the garment's colour.
    Sample(usize),
    /// Another screen.
    Show(Screen),
    /// A way of the trade's picture was tapped.
    Tap(usize),
    /// A way to print is chosen by its key.
    Use(String),
    /// The set point was moved: set temperature, °C, and belt, m/min.
    Point(f64, f64),
    /// The set point goes back to the best.
    BestPoint,
    /// An order was answered.
    Answered(Box<Order>, Result<Box<Answer>, Vec<FieldError>>),
    /// A window was worked out for the way of this key.
    Windowed(String, Result<Box<WindowReport>, Vec<FieldError>>),
    /// How the white ages was worked out for the way of this key.
    Forecast(String, Result<Box<BleedForecast>, Vec<FieldError>>),
    /// Something happened to the shop's records, at this time.
    Shop(Clock, ShopMsg),
    /// So many changes of records were stored, or could not be; those stay in memory and are tried again.
    Stored(u32, Result<(), Trouble>),
    /// What stands on the page was kept, or could not be.
    Kept(Result<(), Trouble>),
    /// A kept draft was found after the desk was drawn.
    Found(Box<Draft>),
    /// Something happened to the store.
    Trouble(Trouble),
    /// What was told of the store was read.
    Understood,
    /// The text of a file is brought back.
    Bring(String),
    /// Something is seen on a print that went wrong.
    Seen(Option<Seen>),
    /// The causes that fit were worked out for the way of this key.
    Diagnosed(String, Result<Option<Box<Diagnosis>>, Vec<FieldError>>),
    /// A job sheet was read back, or could not be.
    Scanned(Result<Box<Ticket>, Unread>),
    /// What came of that was read.
    ScanSeen,
}

/// An answer with the colour of the cloth it is for.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The report.
    pub report: Report,
    /// Colour of the first garment's cloth, where known.
    pub cloth: Option<Lab>,
}

/// Something that is chosen, not typed.
#[derive(Clone, Debug, PartialEq)]
pub enum Choice {
    /// Whether the polyester is dyed.
    Dyed(Option<bool>),
    /// How well its dye holds.
    DyeClass(DyeClass),
    /// A finish is on it or not.
    Finish(Finish, bool),
    /// What matters most.
    Priority(Priority),
    /// What the white is for.
    Role(Role),
    /// How well it must cover.
    Opacity(Opacity),
    /// How the colours on top cure.
    ColourCure(CureKind),
    /// What it is worn for.
    Kind(UseKind),
    /// Stacked while hot.
    StackedHot(bool),
    /// The dryer, by its id.
    Dryer(String),
    /// A white or blocker is on the shelf or not.
    Shelf(String, bool),
}

/// Something for the browser to do.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// Work out an order and send [`Msg::Answered`].
    Answer(Box<Order>),
    /// Work out the window of a way and send [`Msg::Windowed`] with the key.
    Window {
        /// The order.
        order: Box<Order>,
        /// The way to print.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// The set point, °C and m/min; nothing = the best.
        at: Option<(f64, f64)>,
    },
    /// Work out how the white of a way ages and send [`Msg::Forecast`] with the key.
    Forecast {
        /// The order.
        order: Box<Order>,
        /// The way to print.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// The set point, °C and m/min; nothing = the best.
        at: Option<(f64, f64)>,
    },
    /// Work out the causes that fit what is seen and send [`Msg::Diagnosed`] with the key.
    Diagnose {
        /// The order.
        order: Box<Order>,
        /// The way to print.
        pick: Box<Pick>,
        /// Its key.
        key: String,
        /// How it was run.
        run: Run,
        /// What is seen.
        seen: Seen,
    },
    /// Keep the draft and send [`Msg::Kept`].
    Keep,
    /// Store these lines of the log and send [`Msg::Stored`].
    Append(Vec<Line>),
    /// Orders are answered with another library from now on.
    Learned,
}

/// The next state and what the browser has to do.
#[must_use]
pub fn update(mut state: State, msg: Msg) -> (State, Vec<Effect>) {
    let mut effects = Vec::new();
    match msg {
        Msg::Start => {
            reread(&mut state, &mut effects);
            keep::save(&mut state, &mut effects);
        }
        Msg::Type(field, text) => {
            let touch = Touch::Field(field, if field.of_garment() { state.draft.at } else { 0 });
            change(&mut state, Some(touch), &mut effects, |draft| draft.write(field, &text));
        }
        Msg::Step(field, taps) => step(&mut state, field, taps, &mut effects),
        Msg::Choose(choice) => change(&mut state, None, &mut effects, |draft| choose(draft, choice)),
        Msg::Done => {
            // A drag is kept where it ends.
            if state.touch.take() == Some(Touch::Point) {
                keep::save(&mut state, &mut effects);
            }
        }
        Msg::Garment(index) => state.draft.at = index.min(state.draft.garments.len().saturating_sub(1)),
        Msg::AddGarment => change(&mut state, None, &mut effects, add_garment),
        Msg::RemoveGarment => change(&mut state, None, &mut effects, remove_garment),
        Msg::Open(order, title) => change(&mut state, None, &mut effects, |draft| draft.open(&order, &title)),
        Msg::Blank => change(&mut state, None, &mut effects, blank),
        Msg::Units => change(&mut state, None, &mut effects, |draft| draft.convert(draft.units.other())),
        Msg::Language => {
            change(&mut state, None, &mut effects, |draft| draft.translate(draft.language.other()));
        }
        Msg::Theme(theme) => change(&mut state, None, &mut effects, |draft| draft.theme = theme),
        Msg::Undo => travel(&mut state, true, &mut effects),
        Msg::Redo => travel(&mut state, false, &mut effects),
        Msg::BackToReadable => {
            let readable = state.undo.iter().rev().find(|draft| draft.read().ok() == state.order).cloned();
            if let (Some(draft), true) = (readable, state.order.is_some()) {
                change(&mut state, None, &mut effects, |now| *now = draft);
            }
        }
        Msg::Meter(text) => {
            let file = MeterFile::read(&text);
            let only = matches!(&file, Ok(file) if file.samples.len() == 1);
            state.meter = Some(file);
            if only {
                sample(&mut state, 0, &mut effects);
            }
        }
        Msg::Sample(place) => sample(&mut state, place, &mut effects),
        Msg::Show(screen) => {
            state.screen = screen;
            look(&mut state, &mut effects);
        }
        Msg::Tap(way) => state.tapped = Some(way).filter(|way| state.tapped != Some(*way)),
        Msg::Use(key) => change(&mut state, None, &mut effects, |draft| {
            draft.chosen = Some(key);
            draft.set(Field::Air, None);
            draft.set(Field::Belt, None);
        }),
        Msg::Point(set_c, belt) => {
            let (set_c, belt) = held(&state, set_c, belt);
            change(&mut state, Some(Touch::Point), &mut effects, |draft| {
                draft.set(Field::Air, Some(set_c));
                draft.set(Field::Belt, Some(belt));
            });
        }
        Msg::BestPoint => change(&mut state, None, &mut effects, |draft| {
            draft.set(Field::Air, None);
            draft.set(Field::Belt, None);
        }),
        Msg::Answered(order, result) => answered(&mut state, &order, result, &mut effects),
        Msg::Windowed(key, result) => {
            worked_out(&mut state, &key, result, |state, it| state.window = Some(it));
        }
        Msg::Forecast(key, result) => {
            worked_out(&mut state, &key, result, |state, it| state.forecast = Some(dated(state, it)));
        }
        Msg::Stored(changes, result) => keep::stored(&mut state, changes, result),
        Msg::Shop(clock, what) => tend(&mut state, clock, what, &mut effects),
        Msg::Kept(result) => keep::kept(&mut state, result),
        Msg::Found(draft) => keep::found(&mut state, *draft, &mut effects),
        Msg::Trouble(trouble) => state.trouble = Some(trouble),
        Msg::Understood => state.trouble = None,
        Msg::Bring(text) => keep::bring(&mut state, &text, &mut effects),
        Msg::Seen(seen) => change(&mut state, None, &mut effects, |draft| draft.seen = seen),
        Msg::Diagnosed(key, result) => {
            worked_out(&mut state, &key, result.map(Box::new), |state, it| {
                state.diagnosis = it.map(|it| *it);
            });
        }
        Msg::Transfer(step) => {
            let next = step.map(|step| {
                let bound = crate::plan::bounds::TRANSFER;
                let next = ((state.transfer() / 0.05).round() + f64::from(step)) * 0.05;
                next.clamp(bound.min, bound.max)
            });
            change(&mut state, None, &mut effects, |draft| draft.rest.shop.transfer = next);
        }
        Msg::Scanned(read) => super::sheet::scanned(&mut state, read, &mut effects),
        Msg::ScanSeen => state.scanned = None,
    }
    (state, effects)
}

/// Reads the draft: a new order is asked about, the same one only clears the errors.
pub(super) fn reread(state: &mut State, effects: &mut Vec<Effect>) {
    match state.draft.read().map(|order| state.shop.with_trials(order)) {
        Err(errors) => {
            state.errors = errors;
            state.asked = None;
        }
        Ok(order) => {
            let known = state.asked.as_ref().or(state.order.as_ref());
            if known == Some(&order) {
                // Back at an order that was already answered: what the form said against another one is gone.
                if state.asked.is_none() {
                    state.errors.clear();
                    state.title = state.draft.text(Field::Title).into();
                }
                return;
            }
            state.asked = Some(order.clone());
            effects.push(Effect::Answer(Box::new(order)));
        }
    }
}

/// Asks anew about the order that was answered, because what it is answered with has changed.
pub(super) fn ask_again(state: &mut State, effects: &mut Vec<Effect>) {
    if let Ok(order) = state.draft.read() {
        let order = state.shop.with_trials(order);
        state.asked = Some(order.clone());
        effects.push(Effect::Answer(Box::new(order)));
    }
}

/// Asks for the window or the forecast that is on the screen, if the set point can be read.
pub(super) fn look(state: &mut State, effects: &mut Vec<Effect>) {
    let wanted = match state.screen {
        Screen::Job | Screen::Library | Screen::Shop | Screen::Settings => false,
        Screen::Wrong => return ask_why(state, effects),
        Screen::Window | Screen::Sheet => true,
        Screen::Forecast => state.bleeds(),
    };
    if !wanted || state.asked.is_some() {
        return;
    }
    match state.point() {
        Err(error) => state.window_errors = vec![error],
        Ok(at) => {
            state.window_errors.clear();
            if let (Some(order), Some(pick)) = (&state.order, state.way()) {
                let (order, pick) = (Box::new(order.clone()), Box::new(pick.clone()));
                let key = super::state::key(&pick);
                effects.push(match state.screen {
                    Screen::Forecast => Effect::Forecast { order, pick, key, at },
                    _ => Effect::Window { order, pick, key, at },
                });
            }
        }
    }
}

/// Asks for the causes of what is seen, if it can be read how the print was run.
fn ask_why(state: &mut State, effects: &mut Vec<Effect>) {
    state.diagnosis = None;
    let run = match state.run() {
        Err(errors) => {
            state.window_errors = errors;
            return;
        }
        Ok(run) => run,
    };
    state.window_errors.clear();
    if state.asked.is_none()
        && let (Some(seen), Some(order), Some(pick)) = (state.draft.seen, &state.order, state.pick())
    {
        let (order, pick) = (Box::new(order.clone()), Box::new(pick.clone()));
        let key = super::state::key(&pick);
        effects.push(Effect::Diagnose { order, pick, key, run, seen });
    }
}

fn answered(
    state: &mut State,
    order: &Order,
    result: Result<Box<Answer>, Vec<FieldError>>,
    effects: &mut Vec<Effect>,
) {
    if state.asked.as_ref() != Some(order) {
        return;
    }
    state.asked = None;
    match result {
        Err(errors) => state.errors = errors,
        Ok(answer) => {
            state.errors.clear();
            state.title = state.draft.text(Field::Title).into();
            state.order = Some(order.clone());
            state.cloth = answer.cloth;
            state.report = Some(answer.report);
            state.window = None;
            state.forecast = None;
            state.diagnosis = None;
            state.tapped = None;
            state.spoken = heard(state);
            look(state, effects);
        }
    }
}

/// The answer in one sentence, for the live region.
fn heard(state: &State) -> String {
    let voice = state.voice();
    match state.pick() {
        None => voice.say(&Phrase::HeardNo),
        Some(pick) => {
            let (air, belt) = pick.setting.map_or_else(
                || (voice.label(crate::wording::Label::WindowClosedHere).into(), "–".into()),
                |setting| {
                    (
                        voice.quantity(Quantity::Temperature, setting.air_c),
                        voice.quantity(Quantity::Belt, setting.belt_m_per_min),
                    )
                },
            );
            let verdict = voice.verdict(pick.verdict).into();
            voice.say(&Phrase::Heard { verdict, white: pick.name.clone(), air, belt })
        }
    }
}

/// A forecast with the dates of a print made today; without them while the edge has not said which day it is.
fn dated(state: &State, forecast: BleedForecast) -> BleedForecast {
    let clock = state.shop.clock();
    let due = state.order.as_ref().map_or("", |order| order.use_.due.as_str());
    if clock.now > 0 { forecast.dated(on(clock.now, clock.ahead), due) } else { forecast }
}

/// Puts what was worked out for a way where it belongs, if that way is still the chosen one.
fn worked_out<T>(
    state: &mut State,
    key: &str,
    result: Result<Box<T>, Vec<FieldError>>,
    put: impl FnOnce(&mut State, T),
) {
    if state.way().map(super::state::key).as_deref() != Some(key) {
        return;
    }
    match result {
        Ok(found) => {
            state.window_errors.clear();
            put(state, *found);
        }
        Err(errors) => state.window_errors = errors,
    }
}

/// The language that a browser's list of languages asks for.
#[must_use]
pub fn language_of(tag: &str) -> Language {
    if tag.to_lowercase().starts_with("es") { Language::Es } else { Language::En }
}
