//! Anchors computed: what the model says of each case whose frequency the trade knows.

use super::{AnchorRecord, AnchorSetting, Library};
use crate::dryer::DriftRange;
use crate::plan::{self, DialSetting, Garment, Job, Order, PickWindow, Shop};
use crate::quantity::{FieldError, Problem};
use crate::textile::Depth;

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
    let mut job = super::job(&order, library)?;
    job.dryer.drift = unmeasured(library)?;
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
            // The dryer as it stands for a cotton jersey of this weight, heat and belt.
            let mut cotton = order.clone();
            for garment in &mut cotton.garments {
                garment.label = "100% cotton jersey".into();
                garment.dyed_fibres = None;
                garment.construction = None;
            }
            let mut cotton = super::job(&cotton, library)?;
            cotton.dryer.drift = job.dryer.drift;
            let cotton = weigh(&cotton)?.setting.ok_or_else(stuck)?;
            cotton.dialled()
        }
    };
    let window = PickWindow::new(job, pick).ok().flatten().ok_or_else(stuck)?;
    let report = window.report(Some(at)).ok().flatten().ok_or_else(stuck)?;
    Ok(report.fail_later.likely)
}

/// The drift of a dryer that nobody has measured.
fn unmeasured(library: &Library) -> Result<DriftRange, Vec<FieldError>> {
    let value = |id: &str| library.limit(id).map(|limit| limit.value.value).map_err(|error| vec![error]);
    Ok(DriftRange {
        air: value("drift-air")?,
        panel: value("drift-panel")?,
        h: value("drift-h")?,
        exchange: value("drift-exchange")?,
        film: value("drift-film")?,
        stop: value("drift-stop")?,
    })
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
