use crate::dryer::{History, Place};
use crate::numerics::{Lanes, arrhenius};
use crate::quantity::units::kelvin;

/// Scorch index at `place`: 1 where cotton has just yellowed.
///
/// `integral of 1/60 s exp[-E/R (1/T - 1/473.15 K)] dt` with E 130 kJ/mol: one minute at 200 °C shows. Assumed, no
/// source; strength is no limit (cotton keeps it for two minutes at 220 °C: J. Appl. Polym. Sci. 23, 1979, abstract).
#[must_use]
pub fn scorch<const L: usize>(history: &History<L>, place: Place<L>) -> Lanes<L> {
    let mut index = Lanes::ZERO;
    history.walk(place, |seconds, temperature| {
        index += seconds * arrhenius(temperature, 60.0, kelvin(200.0), 130e3);
    });
    index
}
