//! How often a print comes off a fibre or a coating that plasticised PVC does not wet.

use crate::ink::White;
use crate::plan::order::{Cloth, Finish};
use crate::textile::Fibre;

/// Chances that a print lifts or washes off, 0 to 1: without and with adhesion additive, for a plain white and for one made
/// for nylon. No equation: class frequencies, common practice, no source. Nylon and water-repellent cloth are four blind
/// estimates pooled (80 in 100 of their bets: nylon .25 to .68, .01 to .09, .02 to .10; repellent .31 to .75, .07 to
/// .30), but for a plain white on repellent cloth and an additive in a nylon white, which are assumed.
const NYLON: [[f64; 2]; 2] = [[0.455, 0.044], [0.037, 0.03]];
const REPELLENT: [[f64; 2]; 2] = [[0.7, 0.2], [0.52, 0.156]];
/// On other coatings; common practice, no source.
const COATED: [[f64; 2]; 2] = [[0.55, 0.15], [0.15, 0.08]];
/// On polypropylene, ordinary and low-cure: it lifts or distorts; pooled as above (.70 to .98, .19 to .62).
const POLYPROPYLENE: [f64; 2] = [0.886, 0.396];
/// On fibres that plastisol holds on less well than on cotton: wool pooled as above (.03 to .17, of all its faults), the
/// others from memory.
const OTHERS: [(Fibre, f64); 4] =
    [(Fibre::Wool, 0.06), (Fibre::Silk, 0.04), (Fibre::Acetate, 0.04), (Fibre::Acrylic, 0.03)];
/// Share of a fibre from which it decides, 0 to 1. Assumed.
const DECIDES: f64 = 0.4;

/// Chance that the print comes off, 0 to 1; 0 where plastisol is at home.
pub fn comes_off(cloth: &Cloth, white: &White, additive: bool) -> f64 {
    let has = |finish: Finish| cloth.garment.finish.contains(&finish);
    let of = |table: &[[f64; 2]; 2]| table[usize::from(white.holds_on_nylon)][usize::from(additive)];
    let mostly = |fibre: Fibre| cloth.share(fibre) > DECIDES;
    if has(Finish::WaterRepellent) {
        of(&REPELLENT)
    } else if has(Finish::Coated) {
        of(&COATED)
    } else if mostly(Fibre::Nylon) {
        of(&NYLON)
    } else if mostly(Fibre::Polypropylene) {
        POLYPROPYLENE[usize::from(white.low_cure)]
    } else {
        OTHERS.into_iter().filter(|(fibre, _)| mostly(*fibre)).map(|(_, chance)| chance).fold(0.0, f64::max)
    }
}
