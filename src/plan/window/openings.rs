//! What would open a closed window: one thing changed at a time, and each computed.

use super::demands::Demands;
use super::grid::Window;
use super::question::{Detail, Question};
use super::robust::robust;
use super::set_point::SetPoint;
use crate::dryer::{Dryer, HistoryError, Stack};
use crate::ink::CureKinetics;
use crate::plan::order::{Cloth, CureKind, Job};
use crate::plan::recipe::{Candidate, dry, stack_of, water};
use crate::plan::report::{Code, Reason};
use crate::quantity::Share;
use crate::quantity::units::{celsius, kelvin};

/// Factor by which another gear lets a belt run slower or faster. Common practice, no source: another
/// sprocket or pulley gives about that much.
const GEAR: f64 = 2.5;
/// Thinner film that still is a print, as a share of the planned one.
const THINNER: f64 = 0.65;

/// Looks for single changes under which a candidate has a set point, the cheapest first.
///
/// # Errors
/// [`HistoryError`] if a temperature history cannot be integrated.
pub fn openings(
    job: &Job,
    cloth: &Cloth,
    candidate: &Candidate<'_>,
    kinetics: [CureKinetics; 2],
    demands: &Demands,
) -> Result<Vec<Reason>, HistoryError> {
    let stack = stack_of(job, cloth, candidate);
    let fixed = job.order.shop.dryer_fixed.map(kelvin);
    let passes = job.order.shop.passes;
    let look = |stack: &Stack, dryer: &Dryer, passes: u32, fixed: Option<f64>, demands: &Demands| {
        let dyed = cloth.dyed.as_ref();
        let question = Question { stack, dryer, passes, kinetics, dyed, fixed, detail: Detail::Coarse };
        Ok::<_, HistoryError>(robust(&Window::compute(&question)?, dryer, demands, fixed))
    };
    let mut found: Vec<Reason> = Vec::new();
    let mut add = |code: Code, point: Option<SetPoint>, say: &dyn Fn(Reason) -> Reason| {
        if let Some(point) = point {
            let reason = Reason::new(code)
                .number("set", celsius(point.set))
                .number("belt", point.belt * 60.0)
                .flag("robust", point.robust);
            found.push(say(reason));
        }
    };

    if let Some(fixed) = fixed {
        let point = look(&stack, &job.dryer, passes, None, demands)?;
        let cooler = point.is_some_and(|point| point.set < fixed);
        add(if cooler { Code::OpensCooler } else { Code::OpensHotter }, point, &|reason| reason);
    }
    let dried = dry(stack.clone(), &cloth.fabric);
    if dried != stack {
        let water = water(&stack, &cloth.fabric);
        let point = look(&dried, &job.dryer, passes, fixed, demands)?;
        add(Code::OpensPreDry, point, &|reason| reason.percent("water_percent", Share(water).percent()));
    }
    let mut geared = job.dryer.clone();
    geared.belt.slowest /= GEAR;
    geared.belt.fastest *= GEAR;
    let point = look(&stack, &geared, passes, fixed, demands)?
        .filter(|point| point.belt < job.dryer.belt.slowest || point.belt > job.dryer.belt.fastest);
    let slower = point.is_some_and(|point| point.belt < job.dryer.belt.slowest);
    add(if slower { Code::OpensSlower } else { Code::OpensFaster }, point, &|reason| reason);

    if candidate.film > 40e-6 {
        let mut thin = stack.clone();
        thin.film.thickness *= THINNER;
        let point = look(&thin, &job.dryer, passes, fixed, demands)?;
        add(Code::OpensThinner, point, &|reason| reason.number("film", thin.film.thickness * 1e6));
    }
    if passes == 1 {
        let point = look(&stack, &job.dryer, 2, fixed, demands)?;
        add(Code::OpensTwoPasses, point, &|reason| reason);
    }
    let colours = &job.order.print.colours_on_top;
    let ordinary_on_top = colours.count > 0 && colours.cure == CureKind::Ordinary;
    if demands.must_fuse[0] && !ordinary_on_top {
        let low = demands.for_low_cure(&kinetics);
        add(Code::OpensLowCure, look(&stack, &job.dryer, passes, fixed, &low)?, &|reason| reason);
    }
    Ok(found)
}
