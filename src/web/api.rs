//! The JS API: plain objects in the shape of the JSON contract, in and out. Errors are thrown as arrays of plain
//! objects, one a field, each with a `message`.

use super::cached_queries::CachedQueries;
use super::types::{JsForecastOptions, JsOptions, JsOvenOptions, JsWindowOptions};
use crate::desk::is_key_of;
use crate::library::{self, DryerRun, ProbeRun, TestedWhite};
use crate::optics::meter::{MeterError, MeterFile, MeterNote, MeterSample, StatedViewing};
use crate::optics::{Comparison, Grade, Lab, staining_grade};
use crate::plan::{DialSetting, Order, Pick};
use crate::quantity::{Day, FieldError, Problem};
use crate::textile::label;
use crate::wording::{self, Language, Units, Voice};
use serde::{Deserialize, Serialize};
use std::cell::OnceCell;
use std::rc::Rc;
use std::sync::Arc;
use wasm_bindgen::prelude::*;

/// How an answer is worded.
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

impl Options {
    fn voice(&self) -> Voice {
        Voice { language: self.language, units: self.units }
    }
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
    // What JSON cannot write stays what it is: a NaN arrives as NaN, not as null.
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

/// One for all calls: it keeps what was marched for the calls before.
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

/// The library that ships: every record with value, unit, range and source.
///
/// # Errors
/// If a file of the library cannot be read.
#[wasm_bindgen(js_name = starterLibrary)]
pub fn starter_library() -> Result<JsValue, JsValue> {
    plain(&*queries()?.library)
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
    let queries = queries()?;
    let answer = queries.answer(&order, &queries.library).map_err(|errors| thrown(errors, voice))?;
    let mut report = Arc::unwrap_or_clone(answer.report);
    wording::fill(&mut report, voice);
    plain(&report)
}

/// The cure window of the best pick of an order, or of the pick with the white named in the options; where a closed
/// window refuses the order, that window.
///
/// # Errors
/// As `plan`; also where there is no such pick.
#[wasm_bindgen(js_name = cureWindow)]
pub fn cure_window(order: &JsValue, options: Option<JsWindowOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    let voice = options.voice();
    let order: Order = read(order, "order", voice)?;
    let queries = queries()?;
    let pick = way(&queries, &order, &options)?;
    let at = options.at;
    plain(&queries.window(&queries.library, &order, &pick, at).map_err(|errors| thrown(errors, voice))?)
}

/// The best pick of an order, or the one with the white named in the options.
fn way(queries: &CachedQueries, order: &Order, options: &Options) -> Result<Pick, JsValue> {
    let voice = options.voice();
    let report = queries.answer(order, &queries.library).map_err(|errors| thrown(errors, voice))?.report;
    let wanted = |pick: &Pick| {
        options.white.as_ref().is_none_or(|white| *white == pick.white || is_key_of(white, pick))
    };
    report.find_pick(wanted).cloned().ok_or_else(|| {
        let ways = report.picks.iter().chain(report.closed.as_deref());
        let accepted = ways.map(|pick| pick.white.clone()).collect();
        let given = options.white.clone().unwrap_or_default();
        thrown(
            vec![FieldError::new("white", given, Problem::Unknown { nearest: Vec::new(), accepted })],
            voice,
        )
    })
}

/// How the white of a pick ages over the months after, at its own set point or at the one in the options; `null` where
/// its cloth has no dye to give or its window is closed. With `printed_on` its days have dates; the page is not asked
/// which day it is.
///
/// # Errors
/// As `cureWindow`.
#[wasm_bindgen(js_name = forecast, unchecked_return_type = "BleedForecast | null")]
pub fn forecast(order: &JsValue, options: Option<JsForecastOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    let voice = options.voice();
    let order: Order = read(order, "order", voice)?;
    let queries = queries()?;
    let pick = way(&queries, &order, &options)?;
    let at = options.at;
    let aged = library::pick_forecast(&order, &queries.library, &pick)
        .and_then(|aged| aged.map_or(Ok(None), |aged| library::forecast_at(&aged, at)));
    let mut aged = aged.map_err(|errors| thrown(errors, voice))?;
    if let Some(text) = &options.printed_on {
        let wrong = || thrown(vec![FieldError::new("printed_on", text, Problem::NotUnderstood)], voice);
        let day = Day::read(text).ok_or_else(wrong)?;
        aged = aged.map(|aged| aged.dated(day, &order.use_.due));
    }
    plain(&aged)
}

/// What hours in an oven prove of a pick's print, in the film and where cloth lies on it; `null` as `forecast`.
///
/// # Errors
/// As `cureWindow`; hours or heat outside what an oven test may be.
#[wasm_bindgen(js_name = acceleratedTest, unchecked_return_type = "OvenTest | null")]
pub fn accelerated_test(order: &JsValue, options: Option<JsOvenOptions>) -> Result<JsValue, JsValue> {
    let options: Options = read(&options.into(), "options", Voice::default())?;
    let voice = options.voice();
    let order: Order = read(order, "order", voice)?;
    let queries = queries()?;
    let pick = way(&queries, &order, &options)?;
    let (hours, oven) = (options.hours.unwrap_or(24.0), options.oven_c.unwrap_or(60.0));
    plain(&library::oven_test(&order, &queries.library, &pick, hours, oven).map_err(|e| thrown(e, voice))?)
}

/// Temperatures, water and fusion of one print over one run.
///
/// # Errors
/// An array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = temperatureHistory)]
pub fn temperature_history(run: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let run: DryerRun = read(run, "run", voice)?;
    plain(&run.curve(&queries()?.library).map_err(|errors| thrown(errors, voice))?)
}

/// What a probe's ride tells of a dryer: its air, heat transfer and emitter, each with how sure that is.
///
/// # Errors
/// An array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = calibrateDryer)]
pub fn calibrate_dryer(ride: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let ride: ProbeRun = read(ride, "ride", voice)?;
    plain(&ride.learn(&queries()?.library).map_err(|errors| thrown(errors, voice))?)
}

/// What washed, stretched and rubbed prints tell of a white: where and how fast it fuses, and how sure that is.
///
/// # Errors
/// An array with one object for each field that cannot be used.
#[wasm_bindgen(js_name = calibrateWhite)]
pub fn calibrate_white(tested: &JsValue, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let tested: TestedWhite = read(tested, "tested", voice)?;
    plain(&tested.learn(&queries()?.library).map_err(|errors| thrown(errors, voice))?)
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

/// A colour of the API: three numbers or text.
fn colour(value: &JsValue, name: &str, voice: Voice) -> Result<Lab, JsValue> {
    let read = match value.as_string() {
        Some(text) => Lab::read(&text).and_then(|read| {
            read.ok_or_else(|| {
                let accepted = vec!["38, 58, 35".into(), "#b01924".into()];
                FieldError::new("colour", &text, Problem::Unknown { nearest: Vec::new(), accepted })
            })
        }),
        None => read::<[f64; 3]>(value, name, voice).map(|lab| Lab::from(lab).check())?,
    };
    read.map_err(|error| thrown(vec![error.within(name)], voice))
}

/// How far two colours lie apart, in every figure that is asked for: ΔE00, ΔE*ab, CMC(2:1), both grey-scale grades,
/// whiteness and tint. `clean` is the fresh or unstained one.
///
/// # Errors
/// An array with one object for each colour that cannot be read or that no cloth can have.
#[wasm_bindgen(js_name = colourDifference)]
pub fn colour_difference(
    #[wasm_bindgen(unchecked_param_type = "Colour")] clean: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "Colour")] other: &JsValue,
    options: Option<JsOptions>,
) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let compared: Comparison = Comparison::of(colour(clean, "clean", voice)?, colour(other, "other", voice)?);
    plain(&compared)
}

/// The staining grade of ISO 105-A04 of a white against what it was.
///
/// # Errors
/// As `colourDifference`.
#[wasm_bindgen(js_name = stainingGrade)]
pub fn staining(
    #[wasm_bindgen(unchecked_param_type = "Colour")] clean: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "Colour")] stained: &JsValue,
    options: Option<JsOptions>,
) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let grade: Grade = staining_grade(colour(clean, "clean", voice)?, colour(stained, "stained", voice)?);
    plain(&grade)
}

/// A meter's file as a plain object.
#[derive(Serialize)]
struct Measured {
    samples: Vec<MeasuredSample>,
    seen: StatedViewing,
    notes: Vec<Noted>,
}

#[derive(Serialize)]
struct MeasuredSample {
    name: String,
    lab: Lab,
    swatch: String,
    line: usize,
}

#[derive(Serialize)]
struct Noted {
    code: MeterNote,
    text: &'static str,
}

/// A file error with its sentence.
#[derive(Serialize)]
struct ToldOfFile {
    #[serde(flatten)]
    error: MeterError,
    message: String,
}

/// The colours in the file of a colour meter: CGATS.17 text or a table.
///
/// # Errors
/// An array with one object that names line and column.
#[wasm_bindgen(js_name = readMeter)]
pub fn read_meter(text: &str, options: Option<JsOptions>) -> Result<JsValue, JsValue> {
    let voice = read::<Options>(&options.into(), "options", Voice::default())?.voice();
    let MeterFile { samples, seen, notes } = MeterFile::read(text).map_err(|error| {
        let told = vec![ToldOfFile { message: voice.meter_problem(&error), error }];
        plain(&told).unwrap_or_else(|error| error)
    })?;
    let sample =
        |MeterSample { name, lab, line, .. }| MeasuredSample { name, swatch: Lab::swatch(lab), lab, line };
    let notes = notes.into_iter().map(|code| Noted { code, text: voice.meter_note(code) }).collect();
    plain(&Measured { samples: samples.into_iter().map(sample).collect(), seen, notes })
}
