//! Kinds and keys of records.

use serde::{Deserialize, Serialize};

/// Kind of a record. The id of a record that belongs to another begins with its owner's id and a slash,
/// so that all readings of a trial sort side by side: `trial-12/r3`, `gannet/batch-77`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A cloth.
    Fabric,
    /// A dye lot of a cloth.
    Lot,
    /// A white.
    White,
    /// A batch of a white or blocker, with what is left of it.
    Batch,
    /// A blocker.
    Blocker,
    /// A dryer.
    Dryer,
    /// A probe run of a dryer.
    Calibration,
    /// The check of a dryer in the morning.
    DailyCheck,
    /// A mesh.
    Mesh,
    /// An order.
    Order,
    /// A trial print.
    Trial,
    /// What was seen on a trial on one day.
    Reading,
    /// An inspection that is due later.
    FollowUp,
    /// A setting of the shop or of its page.
    Setting,
}

impl Kind {
    /// Every kind, in the order of the enum.
    pub const ALL: [Self; 14] = [
        Self::Fabric,
        Self::Lot,
        Self::White,
        Self::Batch,
        Self::Blocker,
        Self::Dryer,
        Self::Calibration,
        Self::DailyCheck,
        Self::Mesh,
        Self::Order,
        Self::Trial,
        Self::Reading,
        Self::FollowUp,
        Self::Setting,
    ];
}

/// Which record: its kind and its id.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Key {
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: Box<str>,
}

impl Key {
    /// The key of a record.
    #[must_use]
    pub fn new(kind: Kind, id: impl Into<Box<str>>) -> Self {
        Self { kind, id: id.into() }
    }
}
