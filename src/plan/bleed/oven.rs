//! What a test in the oven proves of a print.

use super::ageing::{Ageing, AgeingCases};
use super::chance::{after_lot_test, visible};
use super::lots::MIDDLE;
use super::turning::Bled;
use crate::migration::accelerated::{OVEN_CEILING, acceleration};
use crate::migration::{DAY, FilmDiffusion, StoragePeriod};
use crate::optics::{DyeAbsorption, FreshPrint};
use crate::quantity::Band;
use crate::quantity::units::{celsius, kelvin};
use serde::{Deserialize, Serialize};

/// A test in a warm oven in place of storage, and what its outcome implies.
///
/// Heat speeds up the film and the cloth that lies on it by different factors, so the test represents two
/// numbers of days. A clean piece has proved at least the lesser of the two; a stained one may show what
/// happens in the oven only.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OvenTest {
    /// Hours in the oven.
    pub hours: f64,
    /// Its temperature, °C.
    pub oven_c: f64,
    /// Hottest oven that still represents storage, °C: dry polyester opens some 15 K above it, and a hotter
    /// oven tests something else.
    pub ceiling_c: f64,
    /// Whether this oven is hotter than that; the numbers below then mean nothing.
    pub over_ceiling: bool,
    /// Storage temperature, °C.
    pub storage_c: f64,
    /// Days of storage that the test represents for dye in the film.
    pub film_days: Band,
    /// Days of storage that it represents for dye from the cloth that lies on the print.
    pub cloth_days: f64,
    /// Hours in this oven that represent the day that matters, for dye in the film.
    pub hours_for_film: Band,
    /// The same for dye from the facing cloth.
    pub hours_for_cloth: f64,
    /// Largest colour difference that a piece may show against one kept cool, ΔE00.
    pub pass_mark: f64,
    /// Chance that a lot which turns by the day that matters stains in the oven, 0 to 1.
    pub power: f64,
    /// Chance that a lot which would stay white stains in the oven, 0 to 1.
    pub false_alarm: f64,
    /// Chance that the print turns by the day that matters, before the test, 0 to 1.
    pub before: f64,
    /// The same chance after clean pieces; absent over the ceiling.
    pub after_clean: Option<f64>,
    /// The same chance after a stained piece; absent over the ceiling.
    pub after_stained: Option<f64>,
}

/// Range of the activation energy of dye in the film, J/mol: 70 kJ/mol (WLF) to 89 kJ/mol (plasticiser in
/// PVC).
const ENERGIES: [f64; 2] = [70e3, 89e3];

/// What `hours` at `oven_c` °C prove of a film that turns by the day that matters with the chance `before`.
pub fn oven_test(
    bled: &Bled,
    fresh: &FreshPrint,
    dye: &DyeAbsorption,
    hours: f64,
    oven_c: f64,
    before: f64,
) -> OvenTest {
    let ageing = &bled.ageing;
    let rules = &bled.rules;
    let (oven, store) = (kelvin(oven_c), ageing.store());
    let by = |energy: f64| {
        acceleration(&FilmDiffusion { energy, ..ageing.diffusion }, &ageing.dyed.dye, oven, store)
    };
    let likely = by(ageing.diffusion.energy);
    let film = Band::around(likely.film, &ENERGIES.map(|energy| by(energy).film));
    let wanted = ageing.looked_at * 24.0;

    // The same lots in storage and in the oven: which of them pass the limit in each.
    let limit = visible(fresh, dye, rules.bleed);
    let lots = bled.dye[1];
    let cases = AgeingCases::lots(bled.lots, bled.lots[MIDDLE]);
    let warm = |film: &Ageing| {
        film.stored([StoragePeriod::steady(f64::INFINITY, oven)].into(), hours * 3600.0 / DAY).reach(&cases)
    };
    // The least dye that shows in the oven, in the middle or along the rim.
    let along = bled.rim.iter().map(|rim| rim.critical(dye, rules.bleed, &warm(&rim.ageing)));
    let stained = along.fold(warm(ageing).arrives_for(limit), f64::min);
    // Without the share that no model covers: power and false alarm contain it.
    let turns = lots.share_over(bled.critical).clamp(1e-9, 1.0 - 1e-9);
    let stains = lots.share_over(stained);
    let found = (stains / turns).min(1.0);
    let alarmed = ((stains - turns) / (1.0 - turns)).max(0.0);
    let false_alarm = rules.false_alarm + (1.0 - rules.false_alarm) * alarmed;
    // Floor the power at the false-alarm rate: a test too short to reveal a bad lot then changes nothing, in
    // either direction.
    let power = (rules.power_weeks * found).max(false_alarm);
    let over_ceiling = oven > OVEN_CEILING + 0.5;
    let after = |stained: bool| (!over_ceiling).then(|| after_lot_test(before, stained, power, false_alarm));
    OvenTest {
        hours,
        oven_c,
        ceiling_c: celsius(OVEN_CEILING),
        over_ceiling,
        storage_c: celsius(store),
        film_days: film.map(|times| times * hours / 24.0),
        cloth_days: likely.cloth * hours / 24.0,
        hours_for_film: film.map(|times| wanted / times),
        hours_for_cloth: wanted / likely.cloth,
        pass_mark: rules.bleed,
        power,
        false_alarm,
        before,
        after_clean: after(false),
        after_stained: after(true),
    }
}
