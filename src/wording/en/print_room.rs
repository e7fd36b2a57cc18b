//! The Shop and the Settings screen.

use crate::dryer::Emitter;
use crate::wording::PrintRoomPhrase;

pub(in crate::wording) fn phrase(phrase: &PrintRoomPhrase) -> String {
    use PrintRoomPhrase as P;
    let text = match phrase {
        P::Shop => "Shop",
        P::Settings => "Settings",
        P::Demo => "This is the demo print room",
        P::DemoSay => {
            "Harbour Lane, its shelf, its dryer and its orders are invented, so that there is something to look at. Answer five questions and the desk works for your own shop. Nothing of the demo is written into it."
        }
        P::WhichWhites => "1. Which whites stand on your shelf?",
        P::WhichDryer => "2. Which dryer is most like yours?",
        P::DryerSay => "Take the nearest. Its numbers are yours to change later, and a probe run mends them.",
        P::WhichMeshes => "3. Which meshes do you print white through?",
        P::HowToSay => "4. Language and units",
        P::WhichMoney => "5. What do you count money in?",
        P::OpenOurs => "Open our own shop",
        P::StillWrong => "A number of the dryer cannot be read. Mend it above, or leave it empty.",
        P::StillMissing => "Still missing: at least one white and one mesh.",
        P::BackToDemo => "Look at the demo print room again",
        P::OnTheShelf => "On the shelf",
        P::Tubs { count } if count == "1" => "1 tub",
        P::Tubs { count } => return format!("{count} tubs"),
        P::Left { kg } => return format!("{kg} kg left"),
        P::NotWeighed => "not weighed",
        P::Enough { pieces } => return format!("enough for {pieces} pieces of this order"),
        P::KeptOrders => "Orders that are kept, by the day they are due",
        P::NoOrders => "None yet. Keep one in the Library, and it stands here.",
        P::ChangeQuestions => "Change the answers",
        P::OurDryer => "Our dryer",
        P::Language => "Language",
        P::Units => "Units",
        P::Theme => "Colours",
        P::Light => "Light",
        P::Dark => "Dark",
        P::AsDevice => "As the tablet",
        P::Humidity => "Humidity of the room",
        P::HumiditySay => "Read it off a gauge where the shirts lie. New orders begin with it.",
        P::Transfer => "White that lies on the cloth",
        P::TransferPrior { percent } => {
            return format!(
                "{percent} of the open mesh: common practice. A weighed print of your own is better."
            );
        }
        P::TransferOwn { percent } => {
            return format!("{percent} of the open mesh, by your own weighed print.");
        }
        P::ForgetTransfer => "Back to common practice",
        P::Drift { air, film, stop } => {
            return format!(
                "Wanders by ± {air} in the air and ± {film} in the film; the belt stands for {stop} at worst."
            );
        }
        P::ChangeIt => "Change it in the Library",
        P::Money => "Money",
        P::NoMoney => "no sign",
        P::Backup => "Taken away as a file",
        P::BackupDue { changes } => {
            return format!(
                "{changes} changes that are in no file yet. It is time: a browser may clear what it holds."
            );
        }
        P::BackupFine { changes } if changes == "0" => "Nothing of yours waits to be saved.",
        P::BackupFine { changes } if changes == "1" => "1 change that is in no file yet.",
        P::BackupFine { changes } => return format!("{changes} changes that are in no file yet."),
        P::About => "About",
        P::AboutSay => {
            "Whitehold says which white, which dryer setting, go or trial, and why. It computes heat, fusion and dye; how often the trade sees a print fail is common practice, and is said to be so. It replaces no data sheet, no safety data sheet and no local code."
        }
        P::Licences => "Licences",
        P::LicencesSay => {
            "Whitehold: MIT or Apache-2.0, at your choice. Built with Rust libraries under MIT, Apache-2.0, Unicode and Zlib terms, among them leptos, wasm-bindgen, serde, palette, csv, sha2, qrcodegen and quircs. Their terms stand in the source."
        }
        P::Less => "less",
        P::More => "more",
    };
    text.into()
}

pub(in crate::wording) fn emitter(emitter: Emitter) -> &'static str {
    match emitter {
        Emitter::None => "hot air",
        Emitter::MidInfrared => "panels and air",
        Emitter::NearInfrared => "lamps",
    }
}
