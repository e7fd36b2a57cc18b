//! The library's queries, with what was worked out before.
//!
//! A window or forecast that is open is kept, so that dragging its set point runs no simulation.
//!
//! **Decision:** the last few answers are kept, each under its order and library.
//! **Because:** an order and a library have exactly one answer.
//! **Measured:** no time recorded; decided 2026-11-28.
//! **Reconsider when:** an answer depends on anything else, such as the time.

use crate::desk::Answer;
use crate::library::{self, Library, LibraryError, PrintRoom, RoomOrder};
use crate::optics::Lab;
use crate::plan::{
    BleedForecast, Code, DialSetting, Order, Pick, PickForecast, PickWindow, Report, SimulationCache, Value,
    WindowReport,
};
use crate::quantity::FieldError;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// The answer to an order, or every field that cannot be used.
type AnswerResult = Result<Answer, Vec<FieldError>>;

/// The library that ships, the demo print room, and the caches of the queries.
pub struct CachedQueries {
    /// The library that ships. The library with the shop's records in it is part of the page's state.
    pub library: Arc<Library>,
    /// The demo print room and its orders.
    pub room: PrintRoom,
    /// Simulations of earlier answers.
    memory: Mutex<SimulationCache>,
    /// Answers that were given or prefetched.
    answers: Mutex<Answers>,
    /// The window that is open, with its order and pick.
    open: Mutex<Option<(Order, Pick, PickWindow)>>,
    /// The forecast that is open, with its order and pick.
    aged: Mutex<Option<(Order, Pick, PickForecast)>>,
}

impl CachedQueries {
    /// What ships with this build, nothing worked out yet.
    ///
    /// # Errors
    /// [`LibraryError`] if a file of the library cannot be read.
    pub fn new() -> Result<Self, LibraryError> {
        Ok(Self {
            library: Arc::new(library::starter()?),
            room: library::harbour_lane()?,
            memory: Mutex::default(),
            answers: Mutex::default(),
            open: Mutex::new(None),
            aged: Mutex::new(None),
        })
    }

    /// The answer to an order.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used.
    pub fn answer(&self, order: &Order, library: &Arc<Library>) -> AnswerResult {
        if let Some(had) = unpoisoned(&self.answers).of(library).get(order) {
            return had.clone();
        }
        let report = library::answer_with(order, library, &mut unpoisoned(&self.memory));
        let answered =
            report.map(|report| Answer { cloth: self.shade(order, &report), report: Arc::new(report) });
        unpoisoned(&self.answers).of(library).add(order, answered.clone());
        answered
    }

    /// True if the order was answered with this library before.
    pub fn has_answered(&self, order: &Order, library: &Arc<Library>) -> bool {
        unpoisoned(&self.answers).of(library).get(order).is_some()
    }

    /// The window of a pick, at a set point or at the best.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used, or for a set point that the dryer cannot do.
    pub fn window(
        &self,
        library: &Library,
        order: &Order,
        pick: &Pick,
        at: Option<DialSetting>,
    ) -> Result<WindowReport, Vec<FieldError>> {
        let Ok(mut open) = self.open.lock() else { return library::window(order, library, pick, at) };
        let fits =
            |(for_order, for_pick, _): &&(Order, Pick, PickWindow)| for_order == order && for_pick == pick;
        if let Some((_, _, window)) = open.as_ref().filter(fits) {
            return library::report_at(pick, window, at);
        }
        let window = library::pick_window(order, library, pick)?;
        let report = library::report_at(pick, &window, at);
        *open = Some((order.clone(), pick.clone(), window));
        report
    }

    /// How the white of a pick ages, at a set point or at the best; `None` where nothing bleeds.
    ///
    /// # Errors
    /// A [`FieldError`] for each field that cannot be used, or for a set point that the dryer cannot do.
    pub fn forecast(
        &self,
        library: &Library,
        order: &Order,
        pick: &Pick,
        at: Option<DialSetting>,
    ) -> Result<Option<BleedForecast>, Vec<FieldError>> {
        let mut aged = unpoisoned(&self.aged);
        if let Some((for_order, for_pick, forecast)) = aged.as_ref()
            && (for_order, for_pick) == (order, pick)
        {
            return library::forecast_at(forecast, at);
        }
        let Some(forecast) = library::pick_forecast(order, library, pick)? else { return Ok(None) };
        let report = library::forecast_at(&forecast, at);
        *aged = Some((order.clone(), pick.clone(), forecast));
        report
    }

    /// Forgets the open window and forecast, because the library has changed.
    pub fn forget(&self) {
        if let Ok(mut open) = self.open.lock() {
            *open = None;
        }
        if let Ok(mut aged) = self.aged.lock() {
            *aged = None;
        }
    }

    /// Colour of the answered garment's cloth: measured, named, or read from its label.
    fn shade(&self, order: &Order, report: &Report) -> Option<Lab> {
        let colour = &order.garments.get(report.garment)?.colour;
        if let Some(lab) = colour.lab {
            return Some(lab.into());
        }
        let read = report
            .understood
            .iter()
            .find(|reason| matches!(reason.code, Code::ReadColour | Code::AssumedColour))
            .and_then(|reason| match reason.values.get("colour") {
                Some(Value::Word(word)) => Some(word.as_str()),
                _ => None,
            });
        let name = read.unwrap_or(&colour.name);
        self.library.colour(name).ok().map(|record| record.lab.into())
    }
}

/// Most answers that are kept, some 20 kB each as JSON: more than a day's orders and their variations. Chosen.
const MOST: usize = 32;

/// Answers given with one library.
#[derive(Default)]
struct Answers {
    library: Option<Arc<Library>>,
    /// The newest last.
    given: Vec<(Order, AnswerResult)>,
}

impl Answers {
    /// The answers with this library; another library empties the cache.
    fn of(&mut self, library: &Arc<Library>) -> &mut Self {
        if !self.library.as_ref().is_some_and(|had| Arc::ptr_eq(had, library)) {
            *self = Self { library: Some(Arc::clone(library)), given: Vec::new() };
        }
        self
    }

    fn get(&self, order: &Order) -> Option<&AnswerResult> {
        self.given.iter().find(|(had, _)| had == order).map(|(_, answered)| answered)
    }

    fn add(&mut self, order: &Order, answered: AnswerResult) {
        if self.given.len() >= MOST {
            drop(self.given.remove(0));
        }
        self.given.push((order.clone(), answered));
    }
}

/// What a lock holds. Wasm has one thread, and a panic ends it, so a poisoned lock is never read.
fn unpoisoned<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Number, customer and title of an order of the demo print room in one line.
#[must_use]
pub fn title(order: &RoomOrder) -> String {
    format!("{} · {}, {}", order.id, order.customer, order.title)
}
