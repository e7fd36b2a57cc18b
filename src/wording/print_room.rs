//! Words and sentences of the Shop and the Settings screen, which describe the print room.

use super::Voice;
use super::language::in_language;
use crate::dryer::Emitter;

/// A sentence or word of the two screens. Numbers and names come ready written.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum PrintRoomPhrase {
    Shop,
    Settings,
    Demo,
    DemoSay,
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
    /// How a dryer heats.
    #[must_use]
    pub fn emitter(self, emitter: Emitter) -> &'static str {
        in_language!(self.language, print_room::emitter(emitter))
    }
}
