//! Numbers that belong to no fibre, white or dryer: limits that a print must keep, assumptions about an
//! unmeasured dye lot, and the power of tests.

use serde::{Deserialize, Serialize};

/// A number of `data/limits.json`, with where it comes from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limit {
    /// The number.
    pub value: f64,
    /// Its unit.
    pub unit: String,
    /// Lowest and highest plausible value.
    pub range: [f64; 2],
    /// Where it comes from.
    pub source: String,
    /// What it means.
    pub note: String,
}

/// The numbers of `data/limits.json`, each by its name.
///
/// A name in the file without a field here, or a field here without a name in the file, stops the library
/// from loading. A number that belongs to one equation is a constant beside that equation instead.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Limits {
    /// Most scorch that passes, as an index.
    pub scorch_index: Limit,
    /// Shrinkage for each kelvin above the cloth's limit, %/K.
    pub shrink_slope: Limit,
    /// Most shrinkage that passes, %.
    pub shrink_allowed: Limit,
    /// Cloth peak that a coated face withstands, °C.
    pub coating_heat: Limit,
    /// Cloth peak that a water-repellent finish withstands, °C.
    pub repellent_heat: Limit,
    /// Highest film peak that passes, °C.
    pub film_heat: Limit,
    /// Film temperature from which unstabilised PVC loses acid, °C.
    pub acid_onset: Limit,
    /// Fused share at the film's bottom from which it counts as cured.
    pub fused_share: Limit,
    /// Gelled share at a flashed film's underside from which it is dry to the touch.
    pub gelled_share: Limit,
    /// Largest colour difference of the white that passes, ΔE00.
    pub bleed_limit: Limit,
    /// Loose dye on ordinary dyed polyester, mg/m².
    pub surface_dye: Limit,
    /// Loose dye on polyester that was printed by sublimation, mg/m².
    pub surface_dye_sublimation: Limit,
    /// Dye in a deep shade, % of fibre weight.
    pub dye_on_fibre: Limit,
    /// Dye in the fibre of cloth of polyester alone against the polyester of a blend.
    pub sportswear_dye: Limit,
    /// Loose dye on cloth of polyester alone against the polyester of a blend.
    pub sportswear_loose_dye: Limit,
    /// Dye of a red against that of another shade as deep.
    pub red_dye: Limit,
    /// Dye of a heather, in which only some of the polyester is dyed, against an even shade as deep.
    pub heather_dye: Limit,
    /// Loose dye on polyester with dyed elastane in it against polyester alone.
    pub elastane_loose_dye: Limit,
    /// How much more dye leaves recycled polyester.
    pub recycled_polyester_dye: Limit,
    /// How much more dye leaves cloth that was dyed over an older shade.
    pub over_dyed_dye: Limit,
    /// Loose dye on a fluorescent shade against an ordinary one.
    pub fluorescent_surface_dye: Limit,
    /// Dye in a pale shade, % of fibre weight.
    pub dye_on_fibre_pale: Limit,
    /// Dye in a medium shade, % of fibre weight.
    pub dye_on_fibre_medium: Limit,
    /// Diffusivity of dye in the fused film at 25 °C, m²/s.
    pub film_diffusivity_25c: Limit,
    /// Activation energy of that diffusivity, kJ/mol.
    pub film_diffusion_energy: Limit,
    /// Conductivity of fibre across a cloth, W/(m K).
    pub fibre_conductivity: Limit,
    /// Conductivity of the air between the fibres, W/(m K).
    pub air_conductivity: Limit,
    /// Stretch in wear that each percent of elastane adds, %/%.
    pub stretch_per_elastane: Limit,
    /// Share of jobs that fail for reasons outside the model.
    pub lapse: Limit,
    /// Standard deviation between lots of the logarithm of the dye that heat frees.
    pub heat_dye_spread: Limit,
    /// The same of the loose dye.
    pub loose_dye_spread: Limit,
    /// Chance of a late failure up to which the answer is go.
    pub go_share: Limit,
    /// Chance of a late failure up to which the answer is go with check.
    pub check_share: Limit,
    /// Chance of a late failure above which the answer is refuse.
    pub refuse_share: Limit,
    /// Share of bad lots that a look at the dryer exit finds, ordinary ink.
    pub test_power_exit: Limit,
    /// The same for low-cure ink.
    pub test_power_exit_low_cure: Limit,
    /// Share of bad lots that 24 h at 60 °C finds.
    pub test_power_hot_hold: Limit,
    /// Share of bad lots that a look after 7 to 30 days finds.
    pub test_power_weeks: Limit,
    /// Share of good lots that a test fails.
    pub test_false_alarm: Limit,
    /// Share of tests that find a bad lot in which a second piece turns too.
    pub test_second_piece: Limit,
    /// Share of tests that fail a good lot in which a second piece turns too.
    pub test_second_false_alarm: Limit,
    /// Washing out one white and filling another, min.
    pub white_change: Limit,
    /// Setting one screen more, min.
    pub screen_change: Limit,
}
