//! The content of the code on a job sheet: the order, the recipe and the setting, as one line of text.
//!
//! The line begins with [`MARK`], which tells it from any other code, and continues as JSON. Fields at
//! their defaults are left out: a usual order takes 300 to 500 bytes, which a symbol of 40 mm holds with
//! modules of more than 0.4 mm. [`QrSymbol`] draws the line as squares, [`text_in`] reads it from a
//! picture.

mod qr_symbol;

pub use qr_symbol::{QrSymbol, text_in};

use super::log::fields;
use crate::plan::{DialSetting, Garment, Order};
use serde_json::{Value, json};

/// Beginning of the text; the digit is the version.
pub const MARK: &str = "WHITEHOLD1 ";
/// The same without its version.
const FAMILY: &str = "WHITEHOLD";

/// What another desk needs to continue from a job sheet.
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
    /// The picture shows no code.
    NoCode,
    /// Too much of the code is hidden, bent or smeared.
    Damaged,
    /// The code holds something else.
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
    /// [`SheetCodeError::Newer`] if a later version of the program wrote the text,
    /// [`SheetCodeError::NotOurs`] if it is not the text of a job sheet.
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
        // Through text, which is how every order is read: a deserialiser from values would add a second
        // copy of every deserialiser to the page.
        let order = serde_json::from_str(&serde_json::to_string(whole.get("o")?).ok()?).ok()?;
        Some(Self { order, title: word("t"), way: word("w"), at })
    }
}

/// Removes from an object the fields that equal those of `plain`, at every level.
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
