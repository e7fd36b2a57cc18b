//! What was read from a label.

use crate::numerics::sorting::map;
use crate::textile::{Composition, Construction, Fibre};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Most characters of a label.
pub const LONGEST: usize = 500;

/// What was read from one label.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LabelReading {
    /// The cloth that is printed on.
    pub body: LabelSection,
    /// Other parts, such as a lining or a rib, in the order of the label.
    pub parts: Vec<LabelSection>,
    /// How the body is made, if the label states it.
    pub construction: Option<Construction>,
    /// Weight, g/m², if the label states it.
    pub areal_weight_gsm: Option<f64>,
    /// English name of its colour, if the label states it.
    pub colour: Option<String>,
    /// Further properties of its look.
    pub looks: Vec<ClothLook>,
    /// What was assumed, asked or left out.
    pub notes: Vec<LabelNote>,
}

/// One section of a label.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LabelSection {
    /// Its name in English (`lining`); empty for the body.
    pub name: String,
    /// Mass shares, percent, as the label states them.
    pub shares: BTreeMap<Fibre, f64>,
    /// Share of `other fibres`, percent.
    pub other_percent: f64,
}

impl LabelSection {
    /// Sum of all shares, percent.
    #[must_use]
    pub fn sum(&self) -> f64 {
        self.shares.values().sum::<f64>() + self.other_percent
    }

    /// Mass shares of the named fibres, together 1; other fibres are taken to be like the named ones.
    #[must_use]
    pub fn composition(&self) -> Composition {
        let named: f64 = self.shares.values().sum();
        map(self.shares.iter().map(|(&fibre, share)| (fibre, share / named)))
    }
}

/// A property of how a cloth looks besides its colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClothLook {
    /// Heather, mélange, marl: a mixture of coloured fibres, whatever the composition.
    Heather,
    /// The cloth itself was printed by sublimation.
    SublimationPrinted,
    /// A piece of one layer: a towel, a cut panel, a side of a bag.
    Flat,
    /// Coated or laminated.
    Coated,
    /// Water repellent.
    WaterRepellent,
    /// Flame resistant.
    FlameResistant,
    /// Certified high visibility.
    HighVisibility,
}

/// A remark of the reader about a label that it could read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "note", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum LabelNote {
    /// A single fibre without a share was taken as 100 %.
    AssumedWhole {
        /// The fibre.
        fibre: Fibre,
    },
    /// A word that names no single fibre but leaves little doubt here.
    Assumed {
        /// The word.
        word: String,
        /// What it was taken for.
        fibre: Fibre,
    },
    /// A word that may mean several fibres.
    Ask {
        /// The word.
        word: String,
        /// What it is taken for until a person answers.
        fibre: Fibre,
        /// What else it may mean.
        or: Vec<Fibre>,
    },
    /// A misspelt fibre.
    ReadAs {
        /// The word on the label.
        word: String,
        /// What it was read as.
        fibre: Fibre,
    },
    /// A word of the trade that means shares which the label does not state.
    AssumedShares {
        /// The word.
        word: String,
        /// The shares it was taken for, percent.
        shares: BTreeMap<Fibre, f64>,
    },
    /// Part of a section is named only as other fibres.
    OtherFibres {
        /// How much, percent.
        percent: f64,
        /// Name of the section, empty for the body.
        section: String,
    },
    /// The shares add up to nearly 100, as rounded ones do.
    Rounded {
        /// Their sum, percent.
        sum: f64,
        /// Name of the section, empty for the body.
        section: String,
    },
    /// A word that was understood and has no effect (`organic`).
    Dropped {
        /// The word.
        word: String,
    },
    /// What the label excludes from its shares (`exclusive of decoration`).
    Excludes {
        /// The text.
        text: String,
    },
    /// Text that was not understood.
    LeftOut {
        /// The text.
        text: String,
    },
}
