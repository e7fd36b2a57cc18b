//! The JS API: plain objects in the shape of the JSON contract, in and out. Errors are thrown as arrays of plain
//! objects, one a field, each with a `message`.

use super::brain::Brain;
use crate::desk::key;
use crate::plan::{Order, Pick};
use crate::quantity::{FieldError, Problem};
use crate::textile::label;
use crate::wording::{self, Language, Units, Voice};
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
export type Language = "en" | "es";
export type Units = "metric" | "us";
export interface Options { language?: Language; units?: Units; }
export interface WindowOptions extends Options {
  /** Id of the white, where the best pick is not meant. */
  white?: string;
  /** Set point; the robust one where absent. */
  at?: { set_c: number; belt_m_per_min: number };
}
export interface MountOptions extends Options {
  styles?: string[];
  theme?: "device" | "light" | "dark";
  standalone?: boolean;
  order?: object;
}
/** Thrown, in an array: which field, what stood there, what is wrong, and the way out in words. */
export interface FieldProblem { field: string; value: string; problem: string; message: string; }
"#;

#[wasm_bindgen]
extern "C" {
    /// `Options` of the declaration above.
    #[wasm_bindgen(typescript_type = "Options")]
    pub type JsOptions;
    /// `WindowOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "WindowOptions")]
    pub type JsWindowOptions;
    /// `MountOptions` of the declaration above.
    #[wasm_bindgen(typescript_type = "MountOptions")]
    pub type JsMountOptions;
}

/// How an answer is worded.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Options {
    language: Language,
    units: Units,
    white: Option<String>,
    at: Option<Point>,
}

impl Options {
    fn voice(&self) -> Voice {
        Voice { language: self.language, units: self.units }
    }
}

#[derive(Deserialize)]
struct Point {
    set_c: f64,
    belt_m_per_min: f64,
}

/// A field error with its sentence.
#[derive(Serialize)]
struct Told {
    #[serde(flatten)]
    error: FieldError,
    message: String,
}

/// A value as a plain object.
pub fn plain(value: &impl Serialize) -> Result<JsValue, JsValue> {
    Ok(value.serialize(&serde_wasm_bindgen::Serializer::json_compatible())?)
}

/// A plain object as a value; an absent one is the default. It is read as JSON text, by the one reader that also
/// reads the library and the kept draft.
pub fn read<T: serde::de::DeserializeOwned + Default>(
    value: &JsValue,
    name: &str,
    voice: Voice,
) -> Result<T, JsValue> {
    if value.is_undefined() || value.is_null() {
        return Ok(T::default());
    }
    let text = js_sys::JSON::stringify(value)?;
    serde_json::from_str(&String::from(text)).map_err(|error| {
        thrown(vec![FieldError::new(name, error.to_string(), Problem::NotUnderstood)], voice)
    })
}

fn thrown(errors: Vec<FieldError>, voice: Voice) -> JsValue {
    let told: Vec<Told> =
        errors.into_iter().map(|error| Told { message: voice.problem(&error), error }).collect();
    plain(&told).unwrap_or_else(|error| error)
}

fn brain() -> Result<Brain, JsValue> {
    Brain::new().map_err(|error| JsValue::from_str(&error.to_string()))
}

/// The library that ships: every record with value, unit, range and source.
///
/// # Errors
/// If a file of the library cannot be read.
#[wasm_bindgen(js_name = starterLibrary)]
pub fn starter_library() -> Result<JsValue, JsValue> {
    plain(&*brain()?.library)
}

/// The answer to an order, worded.
///
/// # Errors
/// An array with one object for each field that cannot be used.
#[wasm_bindgen]
pub fn plan(order: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    let voice = options.voice();
    let order: Order = read(order, "order", voice)?;
    let brain = brain()?;
    let mut report = brain.answer(&order, &brain.library).map_err(|errors| thrown(errors, voice))?.report;
    wording::fill(&mut report, voice);
    plain(&report)
}

/// The cure window of the best pick of an order, or of the pick with the white named in the options.
///
/// # Errors
/// As `plan`; also where there is no such pick.
#[wasm_bindgen(js_name = cureWindow)]
pub fn cure_window(order: &JsValue, options: Option<JsWindowOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    let voice = options.voice();
    let order: Order = read(order, "order", voice)?;
    let brain = brain()?;
    let report = brain.answer(&order, &brain.library).map_err(|errors| thrown(errors, voice))?.report;
    let wanted =
        |pick: &&Pick| options.white.as_ref().is_none_or(|white| *white == pick.white || *white == key(pick));
    let pick = report.picks.iter().find(wanted).ok_or_else(|| {
        let accepted = report.picks.iter().map(|pick| pick.white.clone()).collect();
        let given = options.white.clone().unwrap_or_default();
        thrown(
            vec![FieldError::new("white", given, Problem::Unknown { nearest: Vec::new(), accepted })],
            voice,
        )
    })?;
    let at = options.at.as_ref().map(|point| (point.set_c, point.belt_m_per_min));
    plain(&brain.window(&brain.library, &order, pick, at).map_err(|errors| thrown(errors, voice))?)
}

/// What a garment label says.
///
/// # Errors
/// An array with one object for each part that cannot be read.
#[wasm_bindgen(js_name = parseLabel)]
pub fn parse_label(text: &str, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    plain(&label::read(text).map_err(|errors| thrown(errors, options.voice()))?)
}
