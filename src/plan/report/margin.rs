//! A value against its limit.

use crate::quantity::Band;
use serde::{Deserialize, Serialize};

/// What a margin is about. The same word is the first-piece check for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// Fused share at the film bottom.
    Fusion,
    /// Colour difference of the white at the date that matters.
    Bleed,
    /// Colour difference that is seen along the rim where the white stands over its blocker.
    Rim,
    /// How often the class ghosts on this shade.
    Ghosting,
    /// How much of the cloth still shows through the white.
    Opacity,
    /// What the film holds down against the nap it must lay down.
    Matting,
    /// Thickness times stiffness.
    Hand,
    /// Stretch before cracking.
    Stretch,
    /// How it shines, where the order asks for a finish.
    Gloss,
    /// Hold on nylon and coatings.
    Adhesion,
    /// Standing the wash of its use.
    Wash,
    /// Yellowing of the cloth.
    Scorch,
    /// Shrinkage and distortion.
    Shrink,
    /// Softening of the fibre.
    Softening,
    /// Overheating of the film itself.
    FilmHeat,
    /// Heat after the cure against what cloth and film withstand.
    LaterHeat,
}

/// Which side of its limit a value must lie on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// Not under the limit.
    AtLeast,
    /// Not over the limit.
    AtMost,
}

/// Unit of a margin's value and limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Unit {
    /// A ratio or an index.
    #[serde(rename = "")]
    One,
    /// Percent.
    #[serde(rename = "%")]
    Percent,
    /// Degrees Celsius.
    #[serde(rename = "°C")]
    Celsius,
    /// Micrometres.
    #[serde(rename = "µm")]
    Micrometres,
    /// Colour difference, CIEDE2000.
    #[serde(rename = "ΔE00")]
    ColourDifference,
    /// Gloss units of ISO 2813.
    #[serde(rename = "GU")]
    Gloss,
}

/// A value against its limit. Reasons and first-piece checks are read from margins.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Margin {
    /// What it is about.
    pub what: Topic,
    /// The limit.
    pub limit: f64,
    /// The value, with its spread.
    #[serde(flatten)]
    pub value: Band,
    /// Which side it must lie on.
    pub needed: Side,
    /// Unit of value and limit.
    pub unit: Unit,
}

impl Margin {
    /// True if the likely value keeps the limit.
    #[must_use]
    pub fn holds_likely(&self) -> bool {
        match self.needed {
            Side::AtLeast => self.value.likely >= self.limit,
            Side::AtMost => self.value.likely <= self.limit,
        }
    }

    /// True if the whole band keeps the limit.
    #[must_use]
    pub fn holds(&self) -> bool {
        match self.needed {
            Side::AtLeast => self.value.low >= self.limit,
            Side::AtMost => self.value.high <= self.limit,
        }
    }
}

/// A margin.
pub fn margin(what: Topic, value: Band, limit: f64, needed: Side, unit: Unit) -> Margin {
    Margin { what, limit, value, needed, unit }
}

/// How near a margin's worse end is to its limit, in units of the limit: 0 at the limit, negative beyond.
#[must_use]
pub fn tightness(margin: &Margin) -> f64 {
    let scale = margin.limit.abs().max(1e-9);
    match margin.needed {
        Side::AtLeast => (margin.value.low - margin.limit) / scale,
        Side::AtMost => (margin.limit - margin.value.high) / scale,
    }
}
