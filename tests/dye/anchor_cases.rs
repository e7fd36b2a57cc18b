//! The prints whose frequency of failure the trade knows (`data/anchors.json`), and what the model says of each.

use serde::Deserialize;
use whitehold::dryer::DriftRange;
use whitehold::ink::WhiteClass;
use whitehold::library::{Library, Limit};
use whitehold::plan::{
    self, DialSetting, DyeClass, Garment, HeatEvent, Order, Pick, PickForecast, Print, Shop,
};
use whitehold::quantity::{FieldError, Problem, Sourced};
use whitehold::textile::Fibre;

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
    /// The case in words.
    pub case: String,
    /// The cloth, as its label says it.
    pub label: String,
    /// Name of its colour.
    pub colour: String,
    /// What kind of dye is on its polyester.
    #[serde(default)]
    pub dye_class: DyeClass,
    /// Class of the white.
    pub white_class: WhiteClass,
    /// Whether the white is low-cure.
    pub low_cure: bool,
    /// Whether a blocker lies under it.
    pub blocker: bool,
    /// How the dryer was run.
    pub setting: AnchorSetting,
    /// Heat after the print has cured.
    #[serde(default)]
    pub heat_after: Vec<HeatEvent>,
    /// Whether its polyester is recycled.
    #[serde(default)]
    pub recycled: bool,
    /// Stretch white stirred into the white, %.
    #[serde(default)]
    pub stretch_white_percent: f64,
    /// What each of those asked said, blind to the others, 0 to 1.
    pub estimates: Vec<f64>,
    /// Share of such jobs whose white turns later, 0 to 1: the mean of the estimates' log-odds, and the medians of the
    /// ends of the ranges that each would bet eight in ten on.
    pub fails: Sourced,
    /// Whether the row is fitted; the others only check the fit.
    pub fitted: bool,
    /// Day it was written down.
    pub date: String,
}

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

/// How often the white turns by the model for an anchor, in the dryer of this id with the drift of a shop that has not
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
    if anchor.stretch_white_percent > 0.0 {
        shelf.extend(
            library
                .whites
                .iter()
                .find(|white| white.class == WhiteClass::Stretch)
                .map(|white| white.id.clone()),
        );
    }
    if anchor.blocker {
        shelf.extend(library.blockers.first().map(|blocker| blocker.id.clone()));
    }
    let order = Order {
        garments: vec![Garment {
            label: anchor.label.clone(),
            colour: plan::Colour { name: anchor.colour.clone(), lab: None },
            dyed_fibres: Some(vec![Fibre::Polyester]),
            dye_class: anchor.dye_class,
            recycled: anchor.recycled,
            ..Garment::default()
        }],
        print: Print { heat_after: anchor.heat_after.clone(), ..Print::default() },
        shop: Shop { shelf, dryer: dryer.into(), ..Shop::default() },
        ..Order::default()
    };
    let mut job = whitehold::library::job(&order, library)?;
    job.dryer.drift = unmeasured_drift();
    let stuck =
        || vec![FieldError::new("anchor", &anchor.id, Problem::Contradiction { with: "window".into() })];
    let mut white = white.id.clone();
    if anchor.stretch_white_percent > 0.0 {
        let same = |mix: &&plan::Mix| {
            mix.of == white && (f64::from(mix.mixture.percent) - anchor.stretch_white_percent).abs() < 0.5
        };
        let mix = job.mixes.iter().find(same).ok_or_else(stuck)?.white.clone();
        white = mix.id.clone();
        job.whites.push(mix);
    }
    let pick: Pick = plan::assess_white(&job, &white, anchor.blocker).ok().flatten().ok_or_else(stuck)?;
    let setting = pick.setting.ok_or_else(stuck)?;
    let at = match anchor.setting {
        AnchorSetting::Robust => setting.dialled(),
        AnchorSetting::Over18K => DialSetting { set_c: setting.set_c + 18.0, ..setting.dialled() },
        AnchorSetting::TwoPasses => {
            job.order.shop.passes = 2;
            setting.dialled()
        }
    };
    let forecast = PickForecast::new(job, pick).ok().flatten().ok_or_else(stuck)?;
    let report = forecast.report(Some(at)).ok().flatten().ok_or_else(stuck)?;
    Ok(1.0 - report.stays_white)
}
