//! Numbers that belong to no fibre, white or dryer: limits that a print must keep, assumptions about an
//! unmeasured dye lot, and the power of tests.

use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize};
use std::collections::BTreeMap;

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

/// Writes [`Limits`] from a list of its fields, and reads it row by row: what serde derives for fifty fields is six times as
/// much code in the page.
macro_rules! limits {
    ($($(#[$meaning:meta])* $field:ident,)*) => {
        /// The numbers of `data/limits.json`, each by its name.
        ///
        /// A name in the file without a field here, or a field here without a name in the file, stops the library
        /// from loading. A number that belongs to one equation is a constant beside that equation instead.
        #[derive(Clone, Debug, Default, PartialEq, Serialize)]
        #[serde(rename_all = "kebab-case")]
        pub struct Limits {
            $($(#[$meaning])* pub $field: Limit,)*
        }

        impl<'de> Deserialize<'de> for Limits {
            fn deserialize<D: Deserializer<'de>>(file: D) -> Result<Self, D::Error> {
                let mut rows = BTreeMap::<String, Limit>::deserialize(file)?;
                let mut limits = Self::default();
                let fields: &mut [(&'static str, &mut Limit)] = &mut [$((stringify!($field), &mut limits.$field),)*];
                for (name, limit) in fields {
                    let name = name.replace('_', "-");
                    **limit = rows
                        .remove(&name)
                        .ok_or_else(|| D::Error::custom(format_args!("there is no row `{name}`")))?;
                }
                match rows.pop_first() {
                    Some((name, _)) => Err(D::Error::custom(format_args!("the row `{name}` is read by nothing"))),
                    None => Ok(limits),
                }
            }
        }
    };
}

limits! {
    /// Most scorch that passes, as an index.
    scorch_index,
    /// Shrinkage for each kelvin above the cloth's limit, %/K.
    shrink_slope,
    /// Most shrinkage that passes, %.
    shrink_allowed,
    /// Cloth peak that a coated face withstands, °C.
    coating_heat,
    /// Cloth peak that a water-repellent finish withstands, °C.
    repellent_heat,
    /// Highest film peak that passes, °C.
    film_heat,
    /// Film temperature from which unstabilised PVC loses acid, °C.
    acid_onset,
    /// Fused share at the film's bottom from which it counts as cured.
    fused_share,
    /// Gelled share at a flashed film's underside from which it is dry to the touch.
    gelled_share,
    /// Largest colour difference of the white that passes, ΔE00.
    bleed_limit,
    /// Loose dye on ordinary dyed polyester, mg/m².
    surface_dye,
    /// Loose dye on polyester that was printed by sublimation, mg/m².
    surface_dye_sublimation,
    /// Dye in a deep shade, % of fibre weight.
    dye_on_fibre,
    /// Dye in the fibre of cloth of polyester alone against the polyester of a blend.
    sportswear_dye,
    /// Loose dye on cloth of polyester alone against the polyester of a blend.
    sportswear_loose_dye,
    /// Dye of a red against that of another shade as deep.
    red_dye,
    /// Dye of a heather, in which only some of the polyester is dyed, against an even shade as deep.
    heather_dye,
    /// Loose dye on polyester with dyed elastane in it against polyester alone.
    elastane_loose_dye,
    /// How much more dye leaves recycled polyester.
    recycled_polyester_dye,
    /// How much more dye leaves cloth that was dyed over an older shade.
    over_dyed_dye,
    /// Loose dye on a fluorescent shade against an ordinary one.
    fluorescent_surface_dye,
    /// Dye in a pale shade, % of fibre weight.
    dye_on_fibre_pale,
    /// Dye in a medium shade, % of fibre weight.
    dye_on_fibre_medium,
    /// Diffusivity of dye in the fused film at 25 °C, m²/s.
    film_diffusivity_25c,
    /// Activation energy of that diffusivity, kJ/mol.
    film_diffusion_energy,
    /// Conductivity of fibre across a cloth, W/(m K).
    fibre_conductivity,
    /// Conductivity of the air between the fibres, W/(m K).
    air_conductivity,
    /// Stretch in wear that each percent of elastane adds, %/%.
    stretch_per_elastane,
    /// Share of jobs that fail for reasons outside the model.
    lapse,
    /// Standard deviation between lots of the logarithm of the dye that heat frees.
    heat_dye_spread,
    /// The same of the loose dye.
    loose_dye_spread,
    /// Chance of a late failure up to which the answer is go.
    go_share,
    /// Chance of a late failure up to which the answer is go with check.
    check_share,
    /// Chance of a late failure above which the answer is refuse.
    refuse_share,
    /// Share of bad lots that a look at the dryer exit finds, ordinary ink.
    test_power_exit,
    /// The same for low-cure ink.
    test_power_exit_low_cure,
    /// Share of bad lots that 24 h at 60 °C finds.
    test_power_hot_hold,
    /// Share of bad lots that a look after 7 to 30 days finds.
    test_power_weeks,
    /// Share of good lots that a test fails.
    test_false_alarm,
    /// Share of tests that find a bad lot in which a second piece turns too.
    test_second_piece,
    /// Share of tests that fail a good lot in which a second piece turns too.
    test_second_false_alarm,
    /// Washing out one white and filling another, min.
    white_change,
    /// Setting one screen more, min.
    screen_change,
}
