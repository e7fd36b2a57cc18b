//! How often a print comes off nylon or a coating.

use crate::ink::White;
use crate::plan::order::{Cloth, Finish};
use crate::textile::Fibre;

/// Chance that the print comes off nylon or a coating, 0 to 1; 0 on other cloth. No equation: class
/// frequencies, common practice, no source. Adhesion additive brings a plain white to the level of a nylon
/// white, and a nylon white a little further.
pub fn comes_off(cloth: &Cloth, white: &White, additive: bool) -> f64 {
    let coats = |finish: &Finish| matches!(finish, Finish::Coated | Finish::WaterRepellent);
    let nylon = cloth.share(Fibre::Nylon) > 0.4;
    let coated = cloth.garment.finish.iter().any(coats);
    match (nylon, coated, white.holds_on_nylon, additive) {
        (_, true, true, true) => 0.08,
        (_, true, true, false) | (_, true, false, true) => 0.15,
        (_, true, false, false) => 0.55,
        (true, false, true, true) => 0.02,
        (true, false, true, false) | (true, false, false, true) => 0.03,
        (true, false, false, false) => 0.22,
        (false, false, _, _) => 0.0,
    }
}
