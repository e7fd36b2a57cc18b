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
    /// Lining, rib and the like, in the order of the label.
    pub parts: Vec<LabelSection>,
    /// How the body is made, where the label says so.
    pub construction: Option<Construction>,
    /// Weight, g/m², where the label says so.
    pub areal_weight_gsm: Option<f64>,
    /// English name of its colour, where the label says so.
    pub colour: Option<String>,
    /// How it looks, beyond its colour.
    pub looks: Vec<ClothLook>,
    /// What was assumed, what is asked, what was left out.
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
    /// Everything the section accounts for, percent.
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

/// How a cloth looks, beyond its colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ClothLook {
    /// Heather, mélange, marl: a mixture of coloured fibres. Says nothing of the composition.
    Heather,
    /// The cloth itself was printed by sublimation.
    SublimationPrinted,
}

/// What the reader has to say about a label that it could read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "note", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum LabelNote {
    /// One fibre stands without a share and was taken as all of it.
    AssumedWhole {
        /// The fibre.
        fibre: Fibre,
    },
    /// A word names no single fibre but leaves little doubt here.
    Assumed {
        /// The word.
        word: String,
        /// What it was taken for.
        fibre: Fibre,
    },
    /// A word names several fibres: is it the first?
    Ask {
        /// The word.
        word: String,
        /// What it was taken for until somebody answers.
        fibre: Fibre,
        /// What else it may be.
        or: Vec<Fibre>,
    },
    /// A misspelt fibre.
    ReadAs {
        /// The word as it stands.
        word: String,
        /// What it was read as.
        fibre: Fibre,
    },
    /// A word of the trade stands for shares that the label does not state.
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
    /// The shares make not quite 100, as rounding leaves it.
    Rounded {
        /// What they make, percent.
        sum: f64,
        /// Name of the section, empty for the body.
        section: String,
    },
    /// A word that was understood and changes nothing here (`organic`).
    Dropped {
        /// The word.
        word: String,
    },
    /// What the label leaves out of its shares (`exclusive of decoration`).
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
