//! What an order prints: the white's part in it, the colours with it, and what matters most.

use serde::{Deserialize, Serialize};

/// What is printed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Print {
    /// What the white is for.
    pub role: Role,
    /// Area of the print, cm².
    pub area_cm2: f64,
    /// Share of it that is printed, %.
    pub coverage_percent: f64,
    /// Where on the garment.
    pub locations: Vec<String>,
    /// Colours printed over the white.
    pub colours_on_top: ColoursOnTop,
    /// How well it must cover.
    pub opacity: Opacity,
    /// The finish asked for.
    #[serde(skip_serializing_if = "Sheen::is_any")]
    pub finish: Sheen,
    /// What matters most.
    pub priority: Priority,
    /// Reducer in the white, %.
    pub reducer_percent: f64,
    /// Width by which the white extends beyond the blocker under it, mm: the choke, plus the misregistration
    /// on the worse side.
    pub overhang_mm: f64,
    /// Additives, in the shop's words.
    pub additives: Vec<String>,
    /// Stretch the print must take, %.
    pub stretch_needed_percent: f64,
    /// Heat after the cure: pressed names, a second side.
    pub heat_after: Vec<HeatEvent>,
}

impl Default for Print {
    fn default() -> Self {
        Self {
            role: Role::TopWhite,
            area_cm2: 900.0,
            coverage_percent: 60.0,
            locations: vec!["front".into()],
            colours_on_top: ColoursOnTop::default(),
            opacity: Opacity::Standard,
            finish: Sheen::Any,
            priority: Priority::Balanced,
            reducer_percent: 0.0,
            overhang_mm: USUAL_OVERHANG_MM,
            additives: Vec::new(),
            stretch_needed_percent: 0.0,
            heat_after: Vec::new(),
        }
    }
}

/// Width of white beyond its blocker where the order does not give it, mm: a choke of 0.1, and a register
/// that holds to as much. 0.1 to 0.6: common practice, no source.
pub const USUAL_OVERHANG_MM: f64 = 0.2;

/// What the white is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// The white itself is seen.
    #[default]
    TopWhite,
    /// Colours go over it.
    Underbase,
    /// A white over colours.
    Highlight,
}

/// Colours printed over the white.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ColoursOnTop {
    /// How many.
    pub count: u32,
    /// How they cure.
    pub cure: CureKind,
}

/// Ordinary or low-cure ink.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CureKind {
    /// Fuses near 150 to 165 °C.
    #[default]
    Ordinary,
    /// Fuses near 125 to 140 °C.
    LowCure,
}

/// How well the white must cover.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Opacity {
    /// The cloth may show through a little.
    Soft,
    /// The usual.
    #[default]
    Standard,
    /// Nothing may show.
    Full,
}

/// What the order cares for most.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Priority {
    /// No one thing above the rest.
    #[default]
    Balanced,
    /// Stays white.
    StaysWhite,
    /// Soft to the touch.
    Soft,
    /// Covers.
    Opaque,
    /// Lasts in the wash.
    Durable,
    /// Printed quickly.
    Fast,
    /// Costs little.
    Cheap,
}

impl Priority {
    /// Every priority, in the order in which the form lists them.
    pub const ALL: [Self; 7] =
        [Self::Balanced, Self::StaysWhite, Self::Soft, Self::Opaque, Self::Durable, Self::Fast, Self::Cheap];
}

/// Heat that comes after the print was cured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeatEvent {
    /// What it is.
    pub what: String,
    /// Temperature at the print, °C.
    pub temp_c: f64,
    /// How long, s.
    pub seconds: f64,
}

/// The finish that is asked for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sheen {
    /// Any will do.
    #[default]
    Any,
    /// Dull.
    Matt,
    /// Shiny.
    Gloss,
}

impl Sheen {
    /// True if no finish is asked for. Serde passes the field by reference.
    #[allow(clippy::trivially_copy_pass_by_ref)]
    pub fn is_any(&self) -> bool {
        *self == Self::Any
    }
}
