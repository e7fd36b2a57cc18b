//! English words of the Shop and the Settings screen.

use crate::dryer::Emitter;
use crate::wording::PrintRoomPhrase;

pub(in crate::wording) fn phrase(phrase: &PrintRoomPhrase) -> String {
    use PrintRoomPhrase as R;
    let text = match phrase {
        R::Shop => "Shop",
        R::Settings => "Settings",
        R::Demo => "This is the demo print room",
        R::DemoSay => {
            "Harbour Lane, its shelf, its dryer and its orders are invented, so that there is something to look at. Answer five questions and the desk works for your own shop. Nothing of the demo is written into it."
        }
        R::FiveQuestions => "Five questions",
        R::WhichWhites => "1. Which whites stand on your shelf?",
        R::WhichDryer => "2. Which dryer is most like yours?",
        R::DryerSay => "Take the nearest. Its numbers are yours to change later, and a probe run mends them.",
        R::WhichMeshes => "3. Which meshes do you print white through?",
        R::HowToSay => "4. Language and units",
        R::WhichMoney => "5. What do you count money in?",
        R::OpenOurs => "Open our own shop",
        R::StillWrong => "A number of the dryer cannot be read. Mend it above, or leave it empty.",
        R::StillMissing => "Still missing: at least one white and one mesh.",
        R::BackToDemo => "Look at the demo print room again",
        R::OnTheShelf => "On the shelf",
        R::Tubs { count } if count == "1" => "1 tub",
        R::Tubs { count } => return format!("{count} tubs"),
        R::Left { kg } => return format!("{kg} kg left"),
        R::NotWeighed => "not weighed",
        R::Enough { pieces } => return format!("enough for {pieces} pieces of this order"),
        R::KeptOrders => "Orders that are kept, by the day they are due",
        R::NoOrders => "None yet. Keep one in the Library, and it stands here.",
        R::ChangeQuestions => "Change the answers",
        R::OurDryer => "Our dryer",
        R::Language => "Language",
        R::Units => "Units",
        R::Theme => "Colours",
        R::Light => "Light",
        R::Dark => "Dark",
        R::AsDevice => "As the tablet",
        R::Humidity => "Humidity of the room",
        R::HumiditySay => "Read it off a gauge where the shirts lie. New orders begin with it.",
        R::Transfer => "White that lies on the cloth",
        R::TransferPrior { percent } => {
            return format!(
                "{percent} of the open mesh: common practice. A weighed print of your own is better."
            );
        }
        R::TransferOwn { percent } => {
            return format!("{percent} of the open mesh, by your own weighed print.");
        }
        R::ForgetTransfer => "Back to common practice",
        R::Drift { air, film, stop } => {
            return format!(
                "Wanders by ± {air} in the air and ± {film} in the film; the belt stands for {stop} at worst."
            );
        }
        R::ChangeIt => "Change it in the Library",
        R::Money => "Money",
        R::NoMoney => "no sign",
        R::Backup => "Taken away as a file",
        R::BackupDue { changes } => {
            return format!(
                "{changes} changes that are in no file yet. It is time: a browser may clear what it holds."
            );
        }
        R::BackupFine { changes } if changes == "0" => "Nothing of yours waits to be saved.",
        R::BackupFine { changes } if changes == "1" => "1 change that is in no file yet.",
        R::BackupFine { changes } => return format!("{changes} changes that are in no file yet."),
        R::About => "About",
        R::AboutSay => {
            "Whitehold says which white, which dryer setting, go or trial, and why. It computes heat, fusion and dye; how often the trade sees a print fail is common practice, and is said to be so. It replaces no data sheet, no safety data sheet and no local code."
        }
        R::Licences => "Licences",
        R::LicencesSay => {
            "Whitehold: MIT or Apache-2.0, at your choice. Built with Rust libraries under MIT, Apache-2.0, Unicode and Zlib terms, among them leptos, wasm-bindgen, serde, palette, csv, sha2, qrcodegen and quircs. Their terms stand in the source."
        }
        R::Less => "less",
        R::More => "more",
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
