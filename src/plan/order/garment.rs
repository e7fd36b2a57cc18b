//! The garments of an order: what is printed on.

use crate::dryer::{Board, Stack};
use crate::migration::FastnessGrade;
use crate::textile::{Construction, Fibre};
use serde::{Deserialize, Serialize};

/// One garment of an order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Garment {
    /// What the label says; may hold construction, weight and colour too.
    pub label: String,
    /// How it is made; absent = read from the label.
    pub construction: Option<Construction>,
    /// Weight, g/m²; absent = read from the label or assumed for the construction.
    pub areal_weight_gsm: Option<f64>,
    /// Colour.
    pub colour: Colour,
    /// Which fibres are dyed; absent = not known.
    pub dyed_fibres: Option<Vec<Fibre>>,
    /// What kind of dye is on the polyester.
    pub dye_class: DyeClass,
    /// Finishes that are on it.
    pub finish: Vec<Finish>,
    /// How far it stretches in wear, %.
    pub stretch_percent: f64,
    /// Liquid water on it, % of its dry weight.
    pub added_water_percent: f64,
    /// What lies under the printed cloth in the dryer.
    #[serde(skip_serializing_if = "UnderPrint::is_back_panel")]
    pub under_print: UnderPrint,
    /// Tests of the cloth alone: the supplier's heat-fastness grades, the shop's own press test.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fastness: Vec<FastnessGrade>,
    /// Made of recycled polyester.
    #[serde(skip_serializing_if = "super::wear::is_false")]
    pub recycled: bool,
    /// Dyed over an older or a wrong shade, as blacks often are.
    #[serde(skip_serializing_if = "super::wear::is_false")]
    pub over_dyed: bool,
    /// Dye lot.
    pub lot: String,
    /// Pieces to print.
    pub pieces: u32,
    /// Spares for tests and misprints.
    pub spares: u32,
    /// Worth of one printed piece, in the shop's money.
    pub value_each: f64,
}

impl Default for Garment {
    fn default() -> Self {
        Self {
            label: String::new(),
            construction: None,
            areal_weight_gsm: None,
            colour: Colour::default(),
            dyed_fibres: None,
            dye_class: DyeClass::Unknown,
            finish: Vec::new(),
            stretch_percent: 0.0,
            added_water_percent: 0.0,
            under_print: UnderPrint::BackPanel,
            fastness: Vec::new(),
            recycled: false,
            over_dyed: false,
            lot: String::new(),
            pieces: 1,
            spares: 0,
            value_each: 9.0,
        }
    }
}

/// A colour by name, by Lab, or both.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Colour {
    /// Name, English or Spanish; empty = read from the label.
    pub name: String,
    /// CIELAB, D65/10°; absent = from the name.
    pub lab: Option<[f64; 3]>,
}

/// What lies under the printed cloth in the dryer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnderPrint {
    /// The back of the garment.
    #[default]
    BackPanel,
    /// Nothing but the belt: a towel, a cut panel, one layer of a bag.
    Nothing,
    /// A board inside the garment.
    Board,
}

impl UnderPrint {
    /// What may lie under a print, in the order in which the form lists it.
    pub const ALL: [Self; 3] = [Self::BackPanel, Self::Nothing, Self::Board];

    /// The stack of a garment with this under its printed cloth in the place of its back.
    #[must_use]
    pub fn under(self, stack: Stack) -> Stack {
        match self {
            Self::BackPanel => stack,
            Self::Nothing => Stack { back: None, ..stack },
            Self::Board => Stack { back: None, board: Some(Board::USUAL), ..stack },
        }
    }

    /// True for the usual garment. Serde passes the field by reference.
    #[allow(clippy::trivially_copy_pass_by_ref)]
    pub fn is_back_panel(&self) -> bool {
        *self == Self::BackPanel
    }
}

/// Kind of disperse dye on the polyester.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DyeClass {
    /// Not known.
    #[default]
    Unknown,
    /// Leaves easily with heat.
    LowEnergy,
    /// Between the two.
    MediumEnergy,
    /// Leaves only with high heat.
    HighEnergy,
    /// Fluorescent: small molecules that leave easily; part of them lies loose on the yarns.
    Fluorescent,
    /// The cloth itself was printed by sublimation.
    SublimationPrinted,
    /// Coloured in the melt: the colorant cannot leave the fibre.
    MassDyed,
}

/// A finish on the garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Finish {
    /// Waterproof coating.
    Coated,
    /// Water repellent.
    WaterRepellent,
    /// Flame resistant.
    FlameResistant,
    /// Certified high visibility.
    HighVisibility,
}
