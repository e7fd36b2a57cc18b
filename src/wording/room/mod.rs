//! Words of the Shop and the Settings screen.

mod en;
mod es;

use super::{Language, Voice};
use crate::dryer::Emitter;

/// A word or sentence of the two screens; numbers and names come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum Room {
    Shop,
    Settings,
    Demo,
    DemoSay,
    FiveQuestions,
    WhichWhites,
    WhichDryer,
    DryerSay,
    WhichMeshes,
    HowToSay,
    WhichMoney,
    OpenOurs,
    StillMissing,
    StillWrong,
    BackToDemo,
    OnTheShelf,
    Tubs { count: String },
    Left { kg: String },
    NotWeighed,
    Enough { pieces: String },
    KeptOrders,
    NoOrders,
    ChangeQuestions,
    OurDryer,
    Language,
    Units,
    Theme,
    Light,
    Dark,
    AsDevice,
    Humidity,
    HumiditySay,
    Transfer,
    TransferPrior { percent: String },
    TransferOwn { percent: String },
    ForgetTransfer,
    Drift { air: String, film: String, stop: String },
    ChangeIt,
    Money,
    NoMoney,
    Backup,
    BackupDue { changes: String },
    BackupFine { changes: String },
    About,
    AboutSay,
    Licences,
    LicencesSay,
    Less,
    More,
}

impl Voice {
    /// Words of the Shop and the Settings screen.
    #[must_use]
    pub fn room(self, room: &Room) -> String {
        match self.language {
            Language::En => en::room(room),
            Language::Es => es::room(room),
        }
    }

    /// How a dryer heats.
    #[must_use]
    pub fn emitter(self, emitter: Emitter) -> &'static str {
        match self.language {
            Language::En => en::emitter(emitter),
            Language::Es => es::emitter(emitter),
        }
    }
}
