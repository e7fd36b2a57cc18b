//! What the code on a job sheet holds: the order, the way to print and the setting, as one line of text.
//!
//! The line begins with [`MARK`], so that a code of anything else is known at once, and goes on as JSON. Whatever
//! stands at its default is left out: an order of the week takes 300 to 500 bytes, which a code of 40 mm holds with
//! modules of more than 0.4 mm. [`QrSymbol`] draws the line as squares, [`text_in`] finds it in a picture again.

mod qr_symbol;

pub use qr_symbol::{QrSymbol, text_in};

use super::log::fields;
use crate::plan::{DialSetting, Garment, Order};
use serde_json::{Value, json};

/// What the text of a job sheet begins with; the digit is the version.
pub const MARK: &str = "WHITEHOLD1 ";
/// The same without its version.
const FAMILY: &str = "WHITEHOLD";

/// What a job sheet tells the next desk.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SheetCode {
    /// The order.
    pub order: Order,
    /// Its title.
    pub title: String,
    /// The way to print, by its key.
    pub way: String,
    /// The dryer: set temperature, °C, and belt, m/min; absent where it has no setting.
    pub at: Option<DialSetting>,
}

/// Why a picture gave no sheet code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetCodeError {
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

impl SheetCode {
    /// The text for the code.
    #[must_use]
    pub fn write(&self) -> String {
        let mut order = Value::Object(fields(&self.order));
        let garment = Value::Object(fields(&Garment::default()));
        if let Some(Value::Array(garments)) = order.get_mut("garments") {
            for one in garments {
                shorten(one, &garment);
            }
        }
        shorten(&mut order, &Value::Object(fields(&Order::default())));
        let at = self.at.map(|at| vec![at.set_c, at.belt_m_per_min]);
        let whole = json!({ "o": order, "t": self.title, "w": self.way, "s": at });
        format!("{MARK}{}", serde_json::to_string(&whole).unwrap_or_default())
    }

    /// The sheet code in a text.
    ///
    /// # Errors
    /// [`SheetCodeError::NotOurs`] or [`SheetCodeError::Newer`].
    pub fn read(text: &str) -> Result<Self, SheetCodeError> {
        match text.strip_prefix(MARK) {
            Some(json) => Self::of(json).ok_or(SheetCodeError::NotOurs),
            None if text.starts_with(FAMILY) => Err(SheetCodeError::Newer),
            None => Err(SheetCodeError::NotOurs),
        }
    }

    fn of(json: &str) -> Option<Self> {
        let whole: Value = serde_json::from_str(json).ok()?;
        let word = |name: &str| whole.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
        let at = match whole.get("s").and_then(Value::as_array).map(Vec::as_slice) {
            Some([set_c, belt]) => {
                Some(DialSetting { set_c: set_c.as_f64()?, belt_m_per_min: belt.as_f64()? })
            }
            _ => None,
        };
        // Through text, which is how every order is read: a reader of values would double the page's readers.
        let order = serde_json::from_str(&serde_json::to_string(whole.get("o")?).ok()?).ok()?;
        Some(Self { order, title: word("t"), way: word("w"), at })
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
