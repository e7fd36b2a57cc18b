use super::Print;
use crate::migration::FastnessGrade;
use crate::textile::{Construction, Fibre};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// One design, the garments it goes on, and what the shop has to print it with.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Order {
    /// The garments; one design may go on several.
    pub garments: Vec<Garment>,
    /// The print.
    pub print: Print,
    /// What becomes of it.
    #[serde(rename = "use")]
    pub use_: Use,
    /// The shop that prints it.
    pub shop: Shop,
    /// Earlier tests of this lot, article or white.
    pub evidence: Vec<Evidence>,
    /// Fields of a newer Whitehold, kept so that nothing is lost.
    #[serde(flatten)]
    pub other: Map<String, Value>,
}

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
    /// Tests of the cloth alone: the supplier's heat-fastness grades, the shop's own press test.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fastness: Vec<FastnessGrade>,
    /// Made of recycled polyester.
    #[serde(skip_serializing_if = "is_false")]
    pub recycled: bool,
    /// Dyed over an older or a wrong shade, as blacks often are.
    #[serde(skip_serializing_if = "is_false")]
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

/// Kind of disperse dye on the polyester.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DyeClass {
    /// Not known.
    #[default]
    Unknown,
    /// Leaves easily with heat.
    LowEnergy,
    /// In between.
    MediumEnergy,
    /// Holds on.
    HighEnergy,
    /// Fluorescent: small molecules that leave easily and lie loose.
    Fluorescent,
    /// The cloth itself was printed by sublimation.
    SublimationPrinted,
    /// Coloured in the melt: nothing to leave.
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

/// What becomes of the print.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Use {
    /// What the garment is for.
    pub kind: UseKind,
    /// Age of the wearer, if a child.
    pub wearer_age_years: Option<f64>,
    /// Day it must leave (`2026-12-04`), empty if open.
    pub due: String,
    /// Days after which somebody judges the white.
    pub looked_at_after_days: f64,
    /// Temperature of the store, °C.
    pub storage_c: f64,
    /// Stacked while still hot.
    pub stacked_hot: bool,
    /// Whether cloth of its own kind lies on the print: folded or stacked, as garments usually are.
    #[serde(skip_serializing_if = "is_true")]
    pub faced: bool,
    /// Days in a container in summer, before the store.
    #[serde(skip_serializing_if = "is_zero")]
    pub container_days: f64,
    /// What the customer bans (`pvc`, `phthalates`).
    pub customer_bans: Vec<String>,
}

impl Default for Use {
    fn default() -> Self {
        Self {
            kind: UseKind::Everyday,
            wearer_age_years: None,
            due: String::new(),
            looked_at_after_days: 90.0,
            storage_c: 25.0,
            stacked_hot: false,
            faced: true,
            container_days: 0.0,
            customer_bans: Vec::new(),
        }
    }
}

// Serde hands the field by reference.
#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_true(value: &bool) -> bool {
    *value
}

#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_false(value: &bool) -> bool {
    !*value
}

#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_zero(value: &f64) -> bool {
    *value == 0.0
}

/// What the garment is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UseKind {
    /// Worn and washed at home.
    #[default]
    Everyday,
    /// Sports.
    Sport,
    /// Work clothes, industrial wash.
    Workwear,
    /// Protective, flame-resistant or high-visibility.
    Protective,
    /// Sleepwear.
    Sleepwear,
}

/// The shop: what stands on the shelf and what cures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Shop {
    /// Ids of the whites and blockers on the shelf.
    pub shelf: Vec<String>,
    /// Id of the dryer.
    pub dryer: String,
    /// Set temperature that cannot be changed for this order, °C.
    pub dryer_fixed: Option<f64>,
    /// Times each piece goes through the dryer for this print.
    pub passes: u32,
    /// Humidity of the room where the cloth lies, %.
    pub humidity_percent: f64,
    /// Share of the open mesh volume that lies on the cloth, from the shop's own weighed print; absent = the prior.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub transfer: Option<f64>,
}

impl Default for Shop {
    fn default() -> Self {
        Self {
            shelf: Vec::new(),
            dryer: String::new(),
            dryer_fixed: None,
            passes: 1,
            humidity_percent: 65.0,
            transfer: None,
        }
    }
}

/// An earlier test of this lot, article or white.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Evidence {
    /// `lot`, `article` or `white`: what it speaks about.
    pub about: String,
    /// Its id or name.
    pub name: String,
    /// Id of the white that was printed.
    pub white: String,
    /// Pieces looked at.
    pub pieces: u32,
    /// Pieces that turned.
    pub turned: u32,
    /// Days after printing; a 24 h oven test counts as the days it stands for.
    pub days: f64,
}
