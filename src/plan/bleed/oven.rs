//! What a day in the oven proves of a print.

use super::ageing::{Ageing, AgeingCases};
use super::chance::{after_lot_test, chance, lots, visible};
use super::turning::Bled;
use crate::migration::accelerated::{OVEN_CEILING, acceleration};
use crate::migration::{DAY, FilmDiffusion, StoragePeriod};
use crate::optics::{DyeAbsorption, FreshPrint};
use crate::quantity::Band;
use crate::quantity::units::{celsius, kelvin};
use serde::{Deserialize, Serialize};

/// A warm store that stands for a shelf, and what its outcome lets one say.
///
/// The film and the cloth that lies on it quicken differently, so the test stands for two numbers of days. A clean
/// piece has proved the lesser of the two at least; a stained one may have shown what only the oven does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OvenTest {
    /// Hours in the oven.
    pub hours: f64,
    /// Its temperature, °C.
    pub oven_c: f64,
    /// Hottest oven that still stands for a shelf, °C: dry polyester opens some 15 K above it, and a hotter oven proves
    /// another thing.
    pub ceiling_c: f64,
    /// Whether this oven is hotter than that; then nothing below is to be read from it.
    pub over_ceiling: bool,
    /// Where the print will lie, °C.
    pub storage_c: f64,
    /// Days there that the test stands for in the film.
    pub film_days: Band,
    /// Days there that it stands for where dye comes from the cloth that lies on the print.
    pub cloth_days: f64,
    /// Hours in this oven that stand for the day that matters in the film.
    pub hours_for_film: Band,
    /// The same for the facing cloth.
    pub hours_for_cloth: f64,
    /// Colour difference that a piece may show against one kept cool, ΔE00.
    pub pass_mark: f64,
    /// Chance that a lot which turns by the day that matters stains in the oven, 0 to 1.
    pub power: f64,
    /// Chance that a lot which would stay white stains in the oven, 0 to 1.
    pub false_alarm: f64,
    /// Chance that the print turns by the day that matters, before the test.
    pub before: f64,
    /// After clean pieces; absent over the ceiling.
    pub after_clean: Option<f64>,
    /// After a stained piece; absent over the ceiling.
    pub after_stained: Option<f64>,
}

/// Activation energies of dye in film that are allowed for, J/mol: 70 (WLF) to 89 (plasticiser in PVC).
const ENERGIES: [f64; 2] = [70e3, 89e3];

/// What `hours` at `oven_c` tell of a film of which `before` is the chance that it turns by the day that matters.
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

    // The same lots on the shelf and in the oven: which of them pass the limit in which.
    let limit = visible(fresh, dye, rules.bleed);
    let worlds = AgeingCases::lots(bled.arrives.likely, lots(rules));
    let warm = |film: &Ageing| {
        film.stored([StoragePeriod::steady(f64::INFINITY, oven)].into(), hours * 3600.0 / DAY).reach(&worlds)
    };
    // The least dye that shows in the oven, in the middle or along the rim.
    let along = bled.rim.iter().map(|rim| rim.critical(dye, rules.bleed, &warm(&rim.ageing)));
    let stained = along.fold(warm(ageing).arrives_for(limit), f64::min);
    let share = |dye: f64| {
        // Without what no model sees: that is in the two powers.
        let lapse = rules.lapse;
        (chance(bled.arrives.likely, dye, rules) - lapse) / (1.0 - 2.0 * lapse)
    };
    let turns = share(bled.critical).clamp(1e-9, 1.0 - 1e-9);
    let stains = share(stained);
    let found = (stains / turns).min(1.0);
    let alarmed = ((stains - turns) / (1.0 - turns)).max(0.0);
    let false_alarm = rules.false_alarm + (1.0 - rules.false_alarm) * alarmed;
    // A test too short to stain what will turn stains by accident only: it says nothing, and never the contrary.
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
