//! The prints whose frequency of failure the trade knows (`data/anchors.json`), and what the model says of each.

use serde::Deserialize;
use std::collections::BTreeMap;
use whitehold::dryer::DriftRange;
use whitehold::ink::WhiteClass;
use whitehold::library::{Library, Limit};
use whitehold::plan::{self, DialSetting, DyeClass, Garment, Job, Order, PickWindow, Shop};
use whitehold::quantity::{FieldError, Problem, Sourced};
use whitehold::textile::{Construction, Depth, Fibre};

/// `data/anchors.json`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AnchorFile {
    unmeasured_drift: UnmeasuredDrift,
    anchors: Vec<AnchorRecord>,
}

/// How far a dryer drifts that has not been measured.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct UnmeasuredDrift {
    air: Limit,
    panel: Limit,
    h: Limit,
    exchange: Limit,
    film: Limit,
    stop: Limit,
}

/// How the dryer was run in an anchor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AnchorSetting {
    /// The robust set point of this cloth and white.
    Robust,
    /// The same, 18 K hotter.
    #[serde(rename = "over-18-k")]
    Over18K,
    /// The belt left as it was set for cotton.
    CottonBelt,
    /// The robust set point, twice through the dryer.
    TwoPasses,
}

/// One row of `data/anchors.json`: how often the trade sees a print of this kind fail.
///
/// The level of every bleed forecast hangs on these rows; the equations only give ratios between them.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AnchorRecord {
    /// Stable id, kebab-case.
    pub id: String,
    /// The cloth in words.
    pub case: String,
    /// Mass shares of the cloth, percent.
    pub composition_percent: BTreeMap<Fibre, f64>,
    /// How the cloth is made.
    pub construction: Construction,
    /// Weight of the cloth, g/m².
    pub areal_weight_gsm: f64,
    /// How deep it is dyed.
    pub depth: Depth,
    /// What kind of dye is on its polyester.
    pub dye_class: DyeClass,
    /// Class of the white.
    pub white_class: WhiteClass,
    /// Whether the white is low-cure.
    pub low_cure: bool,
    /// Whether a blocker lies under it.
    pub blocker: bool,
    /// How the dryer was run.
    pub setting: AnchorSetting,
    /// Share of such jobs whose white turns later, 0 to 1.
    pub fails: Sourced,
    /// Whether the row is fitted; the others only check the fit.
    pub fitted: bool,
    /// Day it was written down.
    pub date: String,
}

/// A dryer as shops leave it for cotton jersey, °C and s: 40 to 60 s at 175 °C of air under panels of 400 °C. Common
/// practice, no source.
const COTTON_SET: f64 = 175.0;
const COTTON_DWELL: f64 = 50.0;

fn file() -> AnchorFile {
    serde_json::from_str(include_str!("../../data/anchors.json")).expect("the anchors parse")
}

/// Every anchor.
pub fn anchors() -> Vec<AnchorRecord> {
    file().anchors
}

/// The drift of a dryer that has not been measured.
fn unmeasured_drift() -> DriftRange {
    let UnmeasuredDrift { air, panel, h, exchange, film, stop } = file().unmeasured_drift;
    DriftRange {
        air: air.value,
        panel: panel.value,
        h: h.value,
        exchange: exchange.value,
        film: film.value,
        stop: stop.value,
    }
}

/// The model's frequency of a late fault for an anchor, in the dryer of this id with the drift of a shop that has not
/// measured it.
///
/// # Errors
/// Records that are missing or cases whose window is closed.
pub fn anchor_chance(anchor: &AnchorRecord, library: &Library, dryer: &str) -> Result<f64, Vec<FieldError>> {
    let white = library
        .whites
        .iter()
        .find(|white| white.class == anchor.white_class && white.low_cure == anchor.low_cure)
        .ok_or_else(|| vec![FieldError::new("white", &anchor.id, Problem::Empty)])?;
    let mut shelf = vec![white.id.clone()];
    if anchor.blocker {
        shelf.extend(library.blockers.first().map(|blocker| blocker.id.clone()));
    }
    let order = Order {
        garments: vec![Garment {
            label: label(anchor),
            construction: Some(anchor.construction),
            areal_weight_gsm: Some(anchor.areal_weight_gsm),
            colour: plan::Colour { name: shade(anchor.depth).into(), lab: None },
            dyed_fibres: Some(anchor.composition_percent.keys().copied().collect()),
            dye_class: anchor.dye_class,
            ..Garment::default()
        }],
        shop: Shop { shelf, dryer: dryer.into(), ..Shop::default() },
        ..Order::default()
    };
    let mut job = whitehold::library::job(&order, library)?;
    job.dryer.drift = unmeasured_drift();
    let stuck =
        || vec![FieldError::new("anchor", &anchor.id, Problem::Contradiction { with: "window".into() })];
    let weigh =
        |job: &Job| plan::assess_white(job, &white.id, anchor.blocker).ok().flatten().ok_or_else(stuck);
    let pick = weigh(&job)?;
    let setting = pick.setting.ok_or_else(stuck)?;
    let at = match anchor.setting {
        AnchorSetting::Robust => return Ok(pick.fail_later.likely),
        AnchorSetting::Over18K => DialSetting { set_c: setting.set_c + 18.0, ..setting.dialled() },
        AnchorSetting::TwoPasses => {
            job.order.shop.passes = 2;
            setting.dialled()
        }
        AnchorSetting::CottonBelt => {
            // In the dryers of which this is said: so many seconds at this heat, whatever their length.
            let belt_m_per_min = job.dryer.heated_length() / COTTON_DWELL * 60.0;
            DialSetting { set_c: COTTON_SET, belt_m_per_min }
        }
    };
    let window = PickWindow::new(job, pick).ok().flatten().ok_or_else(stuck)?;
    let report = window.report(Some(at)).ok().flatten().ok_or_else(stuck)?;
    Ok(report.fail_later.likely)
}

fn label(anchor: &AnchorRecord) -> String {
    let shares = anchor.composition_percent.iter();
    let names: Vec<String> = shares.map(|(fibre, share)| format!("{share}% {}", fibre.name())).collect();
    names.join(" ")
}

fn shade(depth: Depth) -> &'static str {
    match depth {
        Depth::Undyed => "white",
        Depth::Pale => "pink",
        Depth::Medium => "coral",
        Depth::Deep => "red",
    }
}
