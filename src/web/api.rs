//! The JS API: plain objects in and out, in the shape of the core's serde types. Errors are thrown as arrays of plain
//! objects, one for each field, each with a `message` in the language of the options.

use super::cached_queries::CachedQueries;
use super::types::{JsForecastOptions, JsOptions, JsOvenOptions, JsWindowOptions};
use crate::desk::{Answer, is_key_of};
use crate::library::{self, DryerRun, ProbeRun, TestedWhite};
use crate::optics::meter::{MeterError, MeterFile, MeterNote, MeterSample, StatedViewing};
use crate::optics::{Comparison, Lab, staining_grade};
use crate::plan::{DialSetting, Order, Pick};
use crate::quantity::{Day, FieldError, Problem};
use crate::textile::label;
use crate::wording::{self, Language, Units, Voice};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use std::cell::OnceCell;
use std::rc::Rc;
use std::sync::Arc;
use wasm_bindgen::prelude::*;

/// Options of every function; each reads those that its declaration names.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Options {
    language: Language,
    units: Units,
    white: Option<String>,
    at: Option<DialSetting>,
    hours: Option<f64>,
    oven_c: Option<f64>,
    printed_on: Option<String>,
}

/// A field error with its sentence.
#[derive(Serialize)]
struct WordedError {
    #[serde(flatten)]
    error: FieldError,
    message: String,
}

/// A value as a plain object.
pub fn plain(value: &impl Serialize) -> Result<JsValue, JsValue> {
    // Numbers that JSON cannot write stay what they are: NaN arrives as NaN, not as null.
    Ok(value.serialize(&serde_wasm_bindgen::Serializer::json_compatible())?)
}

/// A plain object as a value; an absent one is the default. It is read as JSON text, by the reader that the library
/// and saved drafts need anyway.
///
/// # Errors
/// Throws an array with one field error of this name.
pub fn read<T: DeserializeOwned + Default>(value: &JsValue, name: &str, voice: Voice) -> Result<T, JsValue> {
    if value.is_undefined() || value.is_null() {
        return Ok(T::default());
    }
    let text = js_sys::JSON::stringify(value)?;
    serde_json::from_str(&String::from(text)).map_err(|error| {
        thrown(vec![FieldError::new(name, error.to_string(), Problem::NotUnderstood)], voice)
    })
}

fn thrown(errors: Vec<FieldError>, voice: Voice) -> JsValue {
    let worded: Vec<WordedError> =
        errors.into_iter().map(|error| WordedError { message: voice.problem(&error), error }).collect();
    plain(&worded).unwrap_or_else(|error| error)
}

/// The queries of all calls: simulations of earlier calls serve later ones.
fn queries() -> Result<Rc<CachedQueries>, JsValue> {
    thread_local! { static QUERIES: OnceCell<Rc<CachedQueries>> = const { OnceCell::new() } }
    QUERIES.with(|had| match had.get() {
        Some(queries) => Ok(queries.clone()),
        None => {
            let queries = CachedQueries::new().map_err(|error| JsValue::from_str(&error.to_string()))?;
            Ok(had.get_or_init(|| Rc::new(queries)).clone())
        }
    })
}

/// A call of the API: its options, and with them the language of its errors.
struct Call {
    options: Options,
    voice: Voice,
}

impl Call {
    fn new(options: impl Into<JsValue>) -> Result<Self, JsValue> {
        let options: Options = read(&options.into(), "options", Voice::default())?;
        let voice = Voice { language: options.language, units: options.units };
        Ok(Self { options, voice })
    }

    /// An argument of the call.
    fn read<T: DeserializeOwned + Default>(&self, value: &JsValue, name: &str) -> Result<T, JsValue> {
        read(value, name, self.voice)
    }

    /// A result, its errors thrown.
    fn check<T>(&self, result: Result<T, Vec<FieldError>>) -> Result<T, JsValue> {
        result.map_err(|errors| thrown(errors, self.voice))
    }

    /// A result as a plain object, its errors thrown.
    fn give<T: Serialize>(&self, result: Result<T, Vec<FieldError>>) -> Result<JsValue, JsValue> {
        plain(&self.check(result)?)
    }

    fn answer(&self, order: &Order) -> Result<Answer, JsValue> {
        let queries = queries()?;
        self.check(queries.answer(order, &queries.library))
    }

    /// The best pick of an order, or the one with the white named in the options; where a closed window refuses the
    /// order, the pick of that window.
    fn pick(&self, order: &Order) -> Result<Pick, JsValue> {
        let report = self.answer(order)?.report;
        let named = self.options.white.as_ref();
        let wanted = |pick: &Pick| named.is_none_or(|white| *white == pick.white || is_key_of(white, pick));
        self.check(report.find_pick(wanted).cloned().ok_or_else(|| {
            let picks = report.picks.iter().chain(report.closed.as_deref());
            let accepted = picks.map(|pick| pick.white.clone()).collect();
            let problem = Problem::Unknown { nearest: Vec::new(), accepted };
            vec![FieldError::new("white", named.cloned().unwrap_or_default(), problem)]
        }))
    }

    /// A colour: three numbers or text.
    fn colour(&self, value: &JsValue, name: &str) -> Result<Lab, JsValue> {
        let read = match value.as_string() {
            Some(text) => Lab::read(&text).and_then(|read| {
                read.ok_or_else(|| {
                    let accepted = vec!["38, 58, 35".into(), "#b01924".into()];
                    FieldError::new("colour", &text, Problem::Unknown { nearest: Vec::new(), accepted })
                })
            }),
            None => self.read::<[f64; 3]>(value, name).map(|lab| Lab::from(lab).check())?,
        };
        self.check(read.map_err(|error| vec![error.within(name)]))
    }
}

/// The library that ships: every record with value, unit, range and source.
///
/// # Errors
/// Throws text if a file of the library cannot be read.
#[wasm_bindgen(js_name = starterLibrary)]
pub fn starter_library() -> Result<JsValue, JsValue> {
    plain(&*queries()?.library)
}

/// The answer to an order, worded.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used.
#[wasm_bindgen(unchecked_return_type = "Report")]
pub fn plan(order: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    let order: Order = call.read(order, "order")?;
    let mut report = Arc::unwrap_or_clone(call.answer(&order)?.report);
    wording::fill(&mut report, call.voice);
    plain(&report)
}

/// The cure window of the best pick of an order, or of the pick with the white named in the options; where a closed
/// window refuses the order, that window.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used; also where there is no such pick.
#[wasm_bindgen(js_name = cureWindow)]
pub fn cure_window(order: &JsValue, options: Option<JsWindowOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    let order: Order = call.read(order, "order")?;
    let pick = call.pick(&order)?;
    let queries = queries()?;
    call.give(queries.window(&queries.library, &order, &pick, call.options.at))
}

/// How the white of a pick ages over the following months, at its own set point or at the one in the options;
/// `null` where its cloth has no dye to give or its window is closed. With `printed_on` its days have dates; the
/// clock is not read.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used; also where there is no such pick.
#[wasm_bindgen(js_name = forecast, unchecked_return_type = "BleedForecast | null")]
pub fn forecast(order: &JsValue, options: Option<JsForecastOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    let order: Order = call.read(order, "order")?;
    let pick = call.pick(&order)?;
    let aged = library::pick_forecast(&order, &queries()?.library, &pick);
    let mut aged = call.check(
        aged.and_then(|aged| aged.map_or(Ok(None), |aged| library::forecast_at(&aged, call.options.at))),
    )?;
    if let Some(text) = &call.options.printed_on {
        let wrong = || vec![FieldError::new("printed_on", text, Problem::NotUnderstood)];
        let day = call.check(Day::read(text).ok_or_else(wrong))?;
        aged = aged.map(|aged| aged.dated(day, &order.use_.due));
    }
    plain(&aged)
}

/// What hours in an oven show about a pick's print, in the film and where cloth lies on it; `null` where its cloth
/// has no dye to give or its window is closed.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used; also where there is no such pick, or hours or heat
/// lie outside the range of an oven test.
#[wasm_bindgen(js_name = acceleratedTest, unchecked_return_type = "OvenTest | null")]
pub fn accelerated_test(order: &JsValue, options: Option<JsOvenOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    let order: Order = call.read(order, "order")?;
    let pick = call.pick(&order)?;
    let (hours, oven_c) = (call.options.hours.unwrap_or(24.0), call.options.oven_c.unwrap_or(60.0));
    call.give(library::oven_test(&order, &queries()?.library, &pick, hours, oven_c))
}

/// Temperatures, water and fusion of one print over one run.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = temperatureHistory)]
pub fn temperature_history(run: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    call.give(call.read::<DryerRun>(run, "run")?.curve(&queries()?.library))
}

/// What the run of a probe through a dryer shows: its air, heat transfer and emitter, each with how sure that is.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = calibrateDryer)]
pub fn calibrate_dryer(ride: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    call.give(call.read::<ProbeRun>(ride, "ride")?.learn(&queries()?.library))
}

/// What washed, stretched and rubbed prints show about a white: where and how fast it fuses, and how sure that is.
///
/// # Errors
/// Throws an array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = calibrateWhite)]
pub fn calibrate_white(tested: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    call.give(call.read::<TestedWhite>(tested, "tested")?.learn(&queries()?.library))
}

/// What a garment label says.
///
/// # Errors
/// Throws an array with one object for each part that cannot be read.
#[wasm_bindgen(js_name = parseLabel)]
pub fn parse_label(text: &str, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    Call::new(options)?.give(label::read(text))
}

/// How far two colours are apart: ΔE00, ΔE*ab, CMC(2:1), both grey-scale grades, whiteness and tint. `clean` is the
/// fresh or unstained one.
///
/// # Errors
/// Throws an array with one object for each colour that cannot be read or that no cloth can have.
#[wasm_bindgen(js_name = colourDifference)]
pub fn colour_difference(
    #[wasm_bindgen(unchecked_param_type = "Colour")] clean: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "Colour")] other: &JsValue,
    options: Option<JsOptions>,
) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    plain(&Comparison::of(call.colour(clean, "clean")?, call.colour(other, "other")?))
}

/// The staining grade of ISO 105-A04 of a white against what it was.
///
/// # Errors
/// Throws an array with one object for each colour that cannot be read or that no cloth can have.
#[wasm_bindgen(js_name = stainingGrade)]
pub fn staining(
    #[wasm_bindgen(unchecked_param_type = "Colour")] clean: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "Colour")] stained: &JsValue,
    options: Option<JsOptions>,
) -> Result<JsValue, JsValue> {
    let call = Call::new(options)?;
    plain(&staining_grade(call.colour(clean, "clean")?, call.colour(stained, "stained")?))
}

/// A meter's file as a plain object.
#[derive(Serialize)]
struct Measured {
    samples: Vec<MeasuredSample>,
    seen: StatedViewing,
    notes: Vec<WordedNote>,
}

#[derive(Serialize)]
struct MeasuredSample {
    name: String,
    lab: Lab,
    swatch: String,
    line: usize,
}

#[derive(Serialize)]
struct WordedNote {
    code: MeterNote,
    text: &'static str,
}

/// A file error with its sentence.
#[derive(Serialize)]
struct WordedMeterError {
    #[serde(flatten)]
    error: MeterError,
    message: String,
}

/// The colours in the file of a colour meter: CGATS.17 text or a table.
///
/// # Errors
/// Throws an array with one object that names line and column.
#[wasm_bindgen(js_name = readMeter)]
pub fn read_meter(text: &str, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let Call { voice, .. } = Call::new(options)?;
    let MeterFile { samples, seen, notes } = MeterFile::read(text).map_err(|error| {
        let told = vec![WordedMeterError { message: voice.meter_problem(&error), error }];
        plain(&told).unwrap_or_else(|error| error)
    })?;
    let sample =
        |MeterSample { name, lab, line, .. }| MeasuredSample { name, swatch: Lab::swatch(lab), lab, line };
    let notes = notes.into_iter().map(|code| WordedNote { code, text: voice.meter_note(code) }).collect();
    plain(&Measured { samples: samples.into_iter().map(sample).collect(), seen, notes })
}
