//! The shop's own trials as evidence for an order: they count wherever their lot is printed again.

use super::Records;
use crate::library::log::Kind;
use crate::library::{TrialReading, TrialRecord};
use crate::plan::{Evidence, Order};

impl Records {
    /// An order with the shop's own trials of its lots as evidence, each reading once. A trial without a lot is
    /// left out: one lot of a cloth says too little about the next.
    #[must_use]
    pub fn with_trials(&self, mut order: Order) -> Order {
        let lots: Vec<&str> = order.garments.iter().map(|garment| garment.lot.as_str()).collect();
        let mut seen: Vec<Evidence> = Vec::new();
        if lots.iter().all(|lot| lot.is_empty()) {
            return order;
        }
        for record in self.log.records(Kind::Trial) {
            let Ok(trial) = record.read::<TrialRecord>() else { continue };
            // A lot is named by its number or by its record, `cloth/number`.
            let number = trial.lot.rsplit('/').next().unwrap_or_default();
            if number.is_empty() || !lots.contains(&number) {
                continue;
            }
            let trial = TrialRecord { lot: number.into(), ..trial };
            let readings = self.log.records_of(Kind::Reading, &record.key.id);
            seen.extend(readings.filter_map(|it| Some(trial.evidence(&it.read::<TrialReading>().ok()?))));
        }
        seen.retain(|seen| seen.pieces > 0 && !order.evidence.contains(seen));
        order.evidence.extend(seen);
        order
    }
}
