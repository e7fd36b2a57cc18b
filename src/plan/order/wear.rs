//! How a print is worn, stored and looked at.

use serde::{Deserialize, Serialize};

/// How the print is worn, stored and looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Use {
    /// What the garment is for.
    pub kind: UseKind,
    /// Age of the wearer, if a child.
    pub wearer_age_years: Option<f64>,
    /// Day on which it must leave the shop (`2026-12-04`), empty if open.
    pub due: String,
    /// The day that matters: days after printing by which the white must not have turned.
    pub looked_at_after_days: f64,
    /// Storage temperature, °C.
    pub storage_c: f64,
    /// Stacked while still hot.
    pub stacked_hot: bool,
    /// Whether cloth of the same kind lies on the print: folded or stacked, as garments usually are.
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

// Serde passes the field by reference.
#[allow(clippy::trivially_copy_pass_by_ref)]
pub fn is_true(value: &bool) -> bool {
    *value
}

#[allow(clippy::trivially_copy_pass_by_ref)]
pub fn is_false(value: &bool) -> bool {
    !*value
}

#[allow(clippy::trivially_copy_pass_by_ref)]
pub fn is_zero(value: &f64) -> bool {
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
