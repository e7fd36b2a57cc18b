//! What the code on a job sheet holds: the order, the way to print and the setting, as one line of text.
//!
//! The line begins with [`MARK`], so that a code of anything else is known at once, and goes on as JSON. Whatever
//! stands at its default is left out: an order of the week takes 300 to 500 bytes, which a code of 40 mm holds with
//! modules of more than 0.4 mm. [`Code`] draws the line as squares, [`text_in`] finds it in a picture again.

mod code;

pub use code::{Code, text_in};

use crate::plan::{Garment, Order};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What the text of a job sheet begins with; the digit is the version.
pub const MARK: &str = "WHITEHOLD1 ";
/// The same without its version.
const FAMILY: &str = "WHITEHOLD";

/// What a job sheet tells the next desk.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Ticket {
    /// The order.
    #[serde(rename = "o")]
    pub order: Order,
    /// Its title.
    #[serde(rename = "t", default)]
    pub title: String,
    /// The way to print, by its key.
    #[serde(rename = "w", default)]
    pub way: String,
    /// The dryer: set temperature, °C, and belt, m/min; absent where it has no setting.
    #[serde(rename = "s", default)]
    pub at: Option<(f64, f64)>,
}

/// Why a picture gave no ticket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// The browser cannot open the picture.
    NoPicture,
    /// No code is to be seen.
    NoCode,
    /// There is a code, and too much of it is hidden, bent or smeared.
    Damaged,
    /// The code is of something else.
    NotOurs,
    /// A newer Whitehold wrote it.
    Newer,
}

impl Ticket {
    /// The text for the code.
    #[must_use]
    pub fn write(&self) -> String {
        let mut whole = serde_json::to_value(self).unwrap_or_default();
        let plain = serde_json::to_value(Order::default()).unwrap_or_default();
        let garment = serde_json::to_value(Garment::default()).unwrap_or_default();
        if let Some(order) = whole.get_mut("o") {
            if let Some(Value::Array(garments)) = order.get_mut("garments") {
                for one in garments {
                    shorten(one, &garment);
                }
            }
            shorten(order, &plain);
        }
        format!("{MARK}{whole}")
    }

    /// The ticket in a text.
    ///
    /// # Errors
    /// [`Unread::NotOurs`] or [`Unread::Newer`].
    pub fn read(text: &str) -> Result<Self, Unread> {
        match text.strip_prefix(MARK) {
            Some(json) => serde_json::from_str(json).map_err(|_| Unread::NotOurs),
            None if text.starts_with(FAMILY) => Err(Unread::Newer),
            None => Err(Unread::NotOurs),
        }
    }
}

/// Leaves out of an object whatever is as in `plain`, part by part.
fn shorten(whole: &mut Value, plain: &Value) {
    let (Value::Object(whole), Value::Object(plain)) = (whole, plain) else { return };
    whole.retain(|name, value| {
        let usual = plain.get(name);
        if Some(&*value) == usual {
            return false;
        }
        if let Some(usual) = usual {
            shorten(value, usual);
        }
        true
    });
}
