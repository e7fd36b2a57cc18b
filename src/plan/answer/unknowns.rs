//! What is worth finding out.

use crate::plan::order::{Cloth, DyeClass, Job};
use crate::plan::report::{Code, Reason, Unknown, sorted_insert};
use crate::plan::verdict::Judgement;

/// What is not known, most worth finding out first. `worth` is how far the chance of a late fault would move.
pub fn unknowns(job: &Job, cloth: &Cloth, best: Option<&Judgement<'_>>) -> Vec<Unknown> {
    let mut unknowns: Vec<Unknown> = Vec::new();
    let mut add =
        |unknown: Unknown| sorted_insert(&mut unknowns, unknown, |a, b| b.worth.total_cmp(&a.worth));
    let bleeds = best.map_or(0.0, |best| best.assessment.bleeds);
    if cloth.dyed.is_some() {
        if !cloth.dye_known {
            add(Unknown { ask: Reason::new(Code::AskDyed), worth: (bleeds - job.rules.lapse).max(0.0) });
        } else if cloth.garment.dye_class == DyeClass::Unknown {
            add(Unknown {
                ask: Reason::new(Code::AskDyeClass),
                worth: 0.5 * (bleeds - job.rules.lapse).max(0.0),
            });
        }
        if !cloth.garment.lot.is_empty() && bleeds > job.rules.go {
            let worth = bleeds * job.rules.power_hot_hold;
            add(Unknown { ask: Reason::new(Code::AskLotTest).word("lot", &cloth.garment.lot), worth });
        }
    }
    for ask in &cloth.asks {
        add(Unknown { ask: ask.clone(), worth: 0.01 });
    }
    if !job.dryer.measured {
        add(Unknown { ask: Reason::new(Code::AskMeasureDryer).word("dryer", &job.dryer.name), worth: 0.02 });
    }
    unknowns
}
