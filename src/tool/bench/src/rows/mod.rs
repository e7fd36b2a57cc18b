//! The rows of `dist/bench.json`: what is timed, and how exact it is.
//!
//! In: the scenarios. Out: one [`Row`] for each thing that is timed. The files beside this one do not know each other.

mod costs;
mod dye;
mod histories;
mod timing;
mod windows;

use crate::scenarios::{Failure, timed};
use serde_json::{Value, json};
use whitehold::dryer::{Dryer, Zone};

/// One row of the table.
#[derive(Clone, Debug)]
pub struct Row {
    /// What is measured.
    pub name: String,
    /// What ours takes.
    pub ours: f64,
    /// What the peer takes, and who it is.
    pub peer: Option<(f64, String)>,
    /// Unit of both.
    pub unit: &'static str,
    /// How exact both are, as text.
    pub accuracy: String,
}

impl Row {
    /// The row as JSON, without commit and machine.
    #[must_use]
    pub fn json(&self) -> Value {
        let peer = self.peer.as_ref();
        json!({
            "name": self.name, "ours": self.ours, "unit": self.unit, "accuracy": self.accuracy,
            "peer": peer.map(|(value, _)| value), "peer_name": peer.map(|(_, name)| name),
            "ratio": peer.map(|(value, _)| value / self.ours),
        })
    }
}

/// Every row.
///
/// # Errors
/// [`Failure`] if a solver gives up.
pub fn all() -> Result<Vec<Row>, Failure> {
    let scenarios = timed()?;
    let mut rows = histories::rows(&scenarios)?;
    let Some(first) = scenarios.first() else { return Ok(rows) };
    rows.extend(costs::rows(first)?);
    for (name, zones) in [("one zone", 1), ("three zones", 3)] {
        rows.extend(windows::rows(name, first, &with_zones(&first.dryer, zones))?);
    }
    rows.extend(dye::rows()?);
    Ok(rows)
}

/// The largest of some deviations: K, fused share.
fn worst(apart: impl IntoIterator<Item = [f64; 2]>) -> [f64; 2] {
    apart.into_iter().fold([0.0_f64; 2], |a, b| [a[0].max(b[0]), a[1].max(b[1])])
}

fn as_text([peak, fused]: [f64; 2]) -> String {
    format!("{peak:.3} K, {fused:.4}")
}

/// The dryer with its heated length in so many equal zones, each three kelvin hotter than the one before.
fn with_zones(dryer: &Dryer, count: usize) -> Dryer {
    let Some(first) = dryer.zones.first() else { return dryer.clone() };
    let length = dryer.heated_length() / count as f64;
    let zones = (0..count).map(|z| Zone { length, air_offset: 3.0 * z as f64, ..first.clone() });
    Dryer { zones: zones.collect(), ..dryer.clone() }
}
