//! Whites, their classes and kinetics, and blockers: the records as written and the values in SI.

use crate::optics::{Cards, DrawDown};
use crate::quantity::{Bound, FieldError, Sourced};
use serde::{Deserialize, Serialize};

/// What a white is made for, in the words of the trade. The properties of each class are in
/// `data/white_classes.json`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WhiteClass {
    /// For all-polyester cloth and the hardest blends.
    Polyester,
    /// General purpose, for blends with dyed polyester.
    LowBleed,
    /// For pale cotton where ghosting was seen.
    NonGhosting,
    /// For cloth with nothing that bleeds.
    Cotton,
    /// The softest hand; covers less.
    Soft,
    /// For elastane-rich cloth.
    Stretch,
    /// For nylon.
    Nylon,
}

/// One row of `data/white_classes.json`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WhiteClassRecord {
    /// Which class.
    pub class: WhiteClass,
    /// Density of the ink, kg/m³.
    pub density: Sourced,
    /// Dye that a kilogram of ink can bind, g/kg.
    pub dye_capacity: Sourced,
    /// Effective Kubelka-Munk scattering at 550 nm, 1/µm.
    pub scattering: Sourced,
    /// Reflectance of an endless film at 550 nm, 0 to 1.
    pub reflectance: Sourced,
    /// How well a film of it holds fibres down against the cotton white = 1.
    pub body: Sourced,
    /// Stretch of the fused film before it cracks, %.
    pub stretch: Sourced,
    /// Stiffness of the fused film against the cotton white = 1.
    pub stiffness: Sourced,
    /// How often it ghosts on a light or sensitive cotton shade, 0 to 1.
    pub ghosting: Sourced,
    /// Price per kilogram in the demo shop's money.
    pub price_per_kg: Sourced,
    /// Prints per hour against the cotton white = 1.
    pub pace: Sourced,
    /// Whether it is made to hold on nylon.
    pub holds_on_nylon: bool,
}

/// One row of `data/kinetics.json`: how a plastisol gels and fuses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KineticsRecord {
    /// `ordinary` or `low-cure`.
    pub id: String,
    /// Temperature of half fusion at equilibrium, °C.
    pub half_fused_c: Sourced,
    /// Width of the fusion equilibrium, K.
    pub width: Sourced,
    /// Time constant of fusion at `fusion_reference_c`, s.
    pub fusion_time: Sourced,
    /// Where `fusion_time` holds, °C.
    pub fusion_reference_c: Sourced,
    /// Activation energy of fusion, kJ/mol.
    pub fusion_energy: Sourced,
    /// Time constant of gelation at `gel_reference_c`, s.
    pub gel_time: Sourced,
    /// Where `gel_time` holds, °C.
    pub gel_reference_c: Sourced,
    /// Activation energy of gelation, kJ/mol.
    pub gel_energy: Sourced,
}

/// Gelation and fusion of one ink, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CureKinetics {
    /// Temperature of half fusion at equilibrium, K.
    pub half_fused: f64,
    /// Width of the fusion equilibrium, K.
    pub width: f64,
    /// Time constant of fusion at the reference, s.
    pub fusion_time: f64,
    /// Reference of fusion, K.
    pub fusion_reference: f64,
    /// Activation energy of fusion, J/mol.
    pub fusion_energy: f64,
    /// Time constant of gelation at the reference, s.
    pub gel_time: f64,
    /// Reference of gelation, K.
    pub gel_reference: f64,
    /// Activation energy of gelation, J/mol.
    pub gel_energy: f64,
}

/// One row of `data/whites.json`: one product. Anything not given comes from its class.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WhiteRecord {
    /// Stable id.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// Its class.
    pub class: WhiteClass,
    /// Whether it is a low-cure ink, which fuses some 25 K cooler.
    pub low_cure: bool,
    /// Temperature of half fusion, °C, if prints of it were tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub half_fused_c: Option<Sourced>,
    /// Time constant of fusion, s, if prints of it were tested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fusion_time: Option<Sourced>,
    /// Price per kilogram, if it differs from the class.
    pub price_per_kg: Option<Sourced>,
    /// A draw-down of it, if one was measured; it replaces the scattering and reflectance of its class.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub draw_down: Option<DrawDownRecord>,
    /// Where the record comes from.
    pub source: String,
}

impl WhiteRecord {
    /// Accepted temperature of half fusion.
    pub const HALF_FUSED: Bound = Bound { field: "half_fused_c", min: 90.0, max: 200.0, unit: "°C" };
    /// Accepted time constant of fusion.
    pub const FUSION_TIME: Bound = Bound { field: "fusion_time", min: 0.5, max: 60.0, unit: "s" };
}

/// A draw-down of a white over a card that is half black, half white.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrawDownRecord {
    /// Reflectance over the black half, 0 to 1.
    pub over_black: f64,
    /// Reflectance over the white half, 0 to 1.
    pub over_white: f64,
    /// Reflectance of the bare black half, 0 to 1.
    pub black_card: f64,
    /// Reflectance of the bare white half, 0 to 1.
    pub white_card: f64,
    /// Thickness of the film, µm.
    pub film_um: f64,
    /// Who measured it, when and with what.
    pub source: String,
}

impl DrawDownRecord {
    /// Scattering and absorption of the ink.
    ///
    /// # Errors
    /// A [`FieldError`] if a reflectance or the film is out of range or the four readings contradict each
    /// other; see [`DrawDown::read`].
    pub fn read(&self) -> Result<DrawDown, FieldError> {
        let cards = Cards { black: self.black_card, white: self.white_card };
        DrawDown::read(self.over_black, self.over_white, cards, self.film_um * 1e-6)
    }
}

/// A white in SI.
#[derive(Clone, Debug, PartialEq)]
pub struct White {
    /// Id of the record.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// Its class.
    pub class: WhiteClass,
    /// Whether it is a low-cure ink, which fuses some 25 K cooler.
    pub low_cure: bool,
    /// How it gels and fuses.
    pub kinetics: CureKinetics,
    /// Density, kg/m³.
    pub density: f64,
    /// Dye that it can bind, kg per kg of ink.
    pub dye_capacity: f64,
    /// Spread of that capacity between batches, as a factor above 1.
    pub dye_capacity_spread: f64,
    /// Effective scattering at 550 nm, 1/m.
    pub scattering: f64,
    /// Reflectance of an endless film at 550 nm.
    pub reflectance: f64,
    /// How well a film holds fibres down against the cotton white = 1.
    pub body: f64,
    /// Stretch before cracking, as a fraction.
    pub stretch: f64,
    /// Stiffness against the cotton white = 1.
    pub stiffness: f64,
    /// How often it ghosts on a light shade, 0 to 1.
    pub ghosting: f64,
    /// Price per kilogram.
    pub price_per_kg: f64,
    /// Prints per hour against the cotton white = 1.
    pub pace: f64,
    /// Whether it is made to hold on nylon.
    pub holds_on_nylon: bool,
}

impl White {
    /// Dye that a white must bind to count as one that blocks, kg/kg: a tenth of what the least of the blocking classes does.
    /// Chosen.
    const BLOCKING: f64 = 6e-6;

    /// Whether it blocks dye: it binds more than a trace.
    #[must_use]
    pub fn blocks(&self) -> bool {
        self.dye_capacity > Self::BLOCKING
    }
}

/// The barrier base printed under a white (also the row of `data/blockers.json`).
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Blocker {
    /// Stable id.
    pub id: String,
    /// Name, as the shop calls it.
    pub name: String,
    /// Density, kg/m³.
    pub density: Sourced,
    /// Dye that a kilogram can bind, g/kg.
    pub dye_capacity: Sourced,
    /// Reflectance of its surface (it is grey), 0 to 1.
    pub reflectance: Sourced,
    /// Film after one stroke, µm.
    pub film: Sourced,
    /// Price per kilogram in the demo shop's money.
    pub price_per_kg: Sourced,
    /// Where the record comes from.
    pub source: String,
}
