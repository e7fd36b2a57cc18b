//! What the desk computes with: the library that ships and the demo print room.

use crate::desk::Answer;
use crate::library::{self, Library, LibraryError, PrintRoom, RoomOrder};
use crate::optics::Lab;
use crate::plan::{Code, Order, Pick, PickWindow, Report, Value, WindowReport};
use crate::quantity::FieldError;
use std::sync::Mutex;

/// The library and the demo print room.
pub struct Brain {
    /// Every record the plan may need.
    pub library: Library,
    /// The demo print room and its orders.
    pub room: PrintRoom,
    /// The window that is open, with the order and the pick it belongs to: dragging its set point marches no grid.
    open: Mutex<Option<(Order, Pick, PickWindow)>>,
}

impl Brain {
    /// What ships with this build.
    ///
    /// # Errors
    /// If a file of the library cannot be read.
    pub fn new() -> Result<Self, LibraryError> {
        Ok(Self { library: library::starter()?, room: library::harbour_lane()?, open: Mutex::new(None) })
    }

    /// The answer to an order.
    ///
    /// # Errors
    /// Every field that cannot be used, by its path.
    pub fn answer(&self, order: &Order) -> Result<Answer, Vec<FieldError>> {
        let report = library::answer(order, &self.library)?;
        Ok(Answer { cloth: self.shade(order, &report), report })
    }

    /// The window of a way to print, at a set point (°C, m/min) or at the best.
    ///
    /// # Errors
    /// As [`Self::answer`].
    pub fn window(
        &self,
        order: &Order,
        pick: &Pick,
        at: Option<(f64, f64)>,
    ) -> Result<WindowReport, Vec<FieldError>> {
        let Ok(mut open) = self.open.lock() else { return library::window(order, &self.library, pick, at) };
        let fits =
            |(for_order, for_pick, _): &&(Order, Pick, PickWindow)| for_order == order && for_pick == pick;
        if let Some((_, _, window)) = open.as_ref().filter(fits) {
            return library::report_at(order, pick, window, at);
        }
        let window = library::pick_window(order, &self.library, pick)?;
        let report = library::report_at(order, pick, &window, at);
        *open = Some((order.clone(), pick.clone(), window));
        report
    }

    /// Colour of the answered garment's cloth: given, named, or read from its label.
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

/// Number, customer and title of a room's order in one line.
#[must_use]
pub fn title(order: &RoomOrder) -> String {
    format!("{} · {}, {}", order.id, order.customer, order.title)
}
