//! The same print on cloth that was dried before: sent through the dryer once, or hung over it.
//!
//! Water holds a print at its wet-bulb temperature while it leaves, so that damp cloth needs a longer dwell, and its dye has
//! that much longer to travel. Dried cloth takes water up again within minutes: what is computed holds for cloth that is
//! printed at once.

use super::judge::{Judged, judge, stack_of};
use super::window::{Detail, Question, Window, robust};
use super::window_report::kinetics;
use super::{Cloth, Code, Job, Reason, explain::word};
use crate::dryer::{HistoryError, Stack};
use crate::numerics::Lanes;
use crate::quantity::units::kelvin;
use crate::textile::{Fabric, moisture};

/// Water left in cloth that has been through the dryer once, or hung over it. From memory: 1 to 3 %.
const LEFT: f64 = 0.02;
/// Water beyond that which is worth a pass through the dryer. Chosen.
const WORTH: f64 = 0.01;

/// Water in a stack's cloth as it lies in the room, as a share of its dry mass.
pub(super) fn water(stack: &Stack, fabric: &Fabric) -> f64 {
    moisture::regain(stack.humidity, fabric.regain_65) + stack.added_water
}

/// Humidity (0 to 1) at which dried cloth would lie in balance with what water is left in it; `None` where drying takes
/// nothing off.
pub(super) fn dried_humidity(stack: &Stack, fabric: &Fabric) -> Option<f64> {
    let held = Lanes::<1>::splat(fabric.regain_65.max(1e-3));
    let humidity = moisture::balance_humidity(Lanes::splat(LEFT), held)[0];
    (water(stack, fabric) > LEFT + WORTH).then(|| humidity.min(stack.humidity))
}

/// A way on cloth that was dried before, where that would come to a better verdict.
///
/// # Errors
/// As the march.
pub(super) fn if_dried(
    job: &Job,
    cloth: &Cloth,
    judged: &Judged<'_>,
) -> Result<Option<Reason>, HistoryError> {
    let stack = stack_of(job, cloth, &judged.way);
    let Some(humidity) = dried_humidity(&stack, &cloth.fabric) else { return Ok(None) };
    let wet = water(&stack, &cloth.fabric);
    let (mut job, mut cloth) = (job.clone(), cloth.clone());
    job.order.shop.humidity_percent = humidity * 100.0;
    cloth.garment.added_water_percent = 0.0;
    let fixed = job.order.shop.dryer_fixed.map(kelvin);
    let question = Question {
        stack: &Stack { humidity, added_water: 0.0, ..stack },
        dryer: &job.dryer,
        passes: job.order.shop.passes,
        kinetics: kinetics(&job, judged.way.white),
        dyed: cloth.dyed.as_ref(),
        fixed,
        detail: Detail::Coarse,
    };
    let Some(point) = robust(&Window::compute(&question)?, &job.dryer, &judged.demands, fixed) else {
        return Ok(None);
    };
    // Its flash as on the damp cloth: a little longer than dried cloth needs, and never in its favour.
    let dried = judge(&job, &cloth, judged.way, point, judged.demands, judged.flash)?;
    Ok((dried.verdict < judged.verdict).then(|| {
        Reason::new(Code::IfDried).number("water_percent", wet * 100.0).word("verdict", word(dried.verdict))
    }))
}
