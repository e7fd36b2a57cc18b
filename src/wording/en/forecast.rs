//! English.

use crate::wording::Facts;
use crate::wording::{DyePath, ForecastPhrase};

pub(in crate::wording) fn rim(v: Facts<'_>) -> String {
    let seen = format!(
        "Where the white stands {} mm over the blocker an eye sees {}, at the bad end {}; limit {}.",
        v.tenth("overhang"),
        v.tenth("likely"),
        v.tenth("high"),
        v.tenth("limit")
    );
    if v.number("holds") == Some(0.0) {
        format!("The rim bleeds. {seen} Print the blocker nearly as wide as the white and hold register.")
    } else {
        format!("The rim holds. {seen}")
    }
}

pub(in crate::wording) fn phrase(phrase: &ForecastPhrase) -> String {
    use ForecastPhrase as A;
    match phrase {
        A::ShowsBefore { chance, day } => format!("{chance} that it shows before day {day}, which matters."),
        A::ShowsBeforeDue { chance, date } => format!("{chance} that it shows before {date}, when it is due."),
        A::TurnsAt { times } => format!(
            "It takes {times} times the likely dye to turn it. A white that blocks stays clean until it is full and then turns fast, so go by the chance: a likely 0 is not a promise."
        ),
        A::PastFull { times } => {
            format!("The likely dye is {times} times what turns it: this white is past full.")
        }
        A::Rim { overhang, likely, high, limit } => format!(
            "The rim, where the white stands {overhang} mm over the blocker: an eye sees {likely}, at the bad end {high}; limit {limit}."
        ),
        A::RimMetered { likely, share } => format!(
            "A meter would read {likely} there. In so narrow a line an eye sees {share} of it."
        ),
        A::Due { date } => format!("due {date}"),
        A::WhereDyeWent => "Where the dye went".into(),
        A::MostCame { way, share } => {
            let way = match way {
                DyePath::Vapour => "as vapour across the gap between yarn and film",
                DyePath::Contact => "through fibres that touch the film",
                DyePath::Loose => "loose, from the surface of the yarns",
            };
            format!("Most came {way}: {share} of what the heat drove in.")
        }
        A::HeldShare { share } => format!("{share} of what lies in the film is held and does not show."),
        A::DyeWay => "Dye".into(),
        A::DyeAmount => "mg/m² of print".into(),
        A::ByVapour => "in the heat, as vapour".into(),
        A::ByContact => "in the heat, where fibre touches film".into(),
        A::Loose => "in the heat, loose on the yarns".into(),
        A::SinceOwn => "since then, from its own cloth".into(),
        A::SinceFacing => "from the cloth on it, less what the air took".into(),
        A::FreeNow => "in the film, showing".into(),
        A::HeldNow => "in the film, held".into(),
        A::IfOtherwise => "If something is otherwise".into(),
        A::IfOtherwiseSays { least, most, world } => format!(
            "What nobody knows moves the likely case between {least} and {most}. It is worst with: {world}."
        ),
        A::AsForecast => "as forecast".into(),
        A::SlowFilm => "dye spreads slowly in the film".into(),
        A::FastFilm => "dye spreads fast in the film".into(),
        A::ColdCorner => "the dryer runs cold".into(),
        A::HotCorner => "the dryer runs hot".into(),
        A::GatedFibre => "the fibre stays shut below the heat it was set at".into(),
        A::OpenAir => "nothing lies on the print".into(),
        A::WarmerStore => "the store is 10 °C warmer".into(),
        A::GateNote => {
            "At the best set point the shut fibre gives the same, because both are held to what the trade sees there. Away from it they part.".into()
        }
        A::WhenToLook => "When to look".into(),
        A::WhenToLookSays => {
            "Keep one piece cool and dark, and one as the order will lie. Lay them side by side in daylight on these days.".into()
        }
        A::LookOn => "Look on".into(),
        A::Expect => "Expect".into(),
        A::BadEndWord => "bad end".into(),
        A::OverLimitBy => "chance that it shows by then".into(),
        A::OnCloth { low, likely, high, day } => {
            format!("Fresh beside day {day}: {low} at the good end, {likely} most likely, {high} at the bad end.")
        }
        A::CutSays { first, last, day } => format!(
            "In the top that the eye sees: {first} g of free dye in a cubic metre when fresh, {last} on day {day}."
        ),
    }
}
