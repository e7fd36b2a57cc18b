//! The Forecast screen, and the reason about the rim.

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
    if v.flag("holds") == Some(false) {
        format!("The rim bleeds. {seen} Print the blocker nearly as wide as the white and hold register.")
    } else {
        format!("The rim holds. {seen}")
    }
}

pub(in crate::wording) fn phrase(phrase: &ForecastPhrase) -> String {
    use ForecastPhrase as P;
    match phrase {
        P::ShowsBefore { chance, day } => format!("{chance} that it shows before day {day}, which matters."),
        P::ShowsBeforeDue { chance, date } => format!("{chance} that it shows before {date}, when it is due."),
        P::TurnsAt { times } => format!(
            "It takes {times} times the likely dye to turn it. A white that blocks stays clean until it is full and then turns fast, so go by the chance: a likely 0 is not a promise."
        ),
        P::TurnsBeyond { times } => format!(
            "It takes more than {times} times the likely dye to turn it. A white that blocks stays clean until it is full and then turns fast, so go by the chance: a likely 0 is not a promise."
        ),
        P::PastFull { times } => {
            format!("The likely dye is {times} times what turns it: this white is past full.")
        }
        P::Rim { overhang, likely, high, limit } => format!(
            "The rim, where the white stands {overhang} mm over the blocker: an eye sees {likely}, at the bad end {high}; limit {limit}."
        ),
        P::RimMetered { likely, share } => format!(
            "A meter would read {likely} there. In so narrow a line an eye sees {share} of it."
        ),
        P::Due { date } => format!("due {date}"),
        P::WhereDyeWent => "Where the dye went".into(),
        P::MostCame { path, share } => {
            let path = match path {
                DyePath::Vapour => "as vapour across the gap between yarn and film",
                DyePath::Contact => "through fibres that touch the film",
                DyePath::Loose => "loose, from the surface of the yarns",
            };
            format!("Most came {path}: {share} of what the heat drove in.")
        }
        P::HeldShare { share } => format!("{share} of what lies in the film is held and does not show."),
        P::DyeWay => "Dye".into(),
        P::DyeAmount => "mg/m² of print".into(),
        P::ByVapour => "in the heat, as vapour".into(),
        P::ByContact => "in the heat, where fibre touches film".into(),
        P::Loose => "in the heat, loose on the yarns".into(),
        P::SinceOwn => "since then, from its own cloth".into(),
        P::SinceFacing => "from the cloth on it, less what the air took".into(),
        P::FreeNow => "in the film, showing".into(),
        P::HeldNow => "in the film, held".into(),
        P::IfOtherwise => "If something is otherwise".into(),
        P::IfOtherwiseSays { least, most, world } => format!(
            "What nobody knows moves the likely case between {least} and {most}. It is worst with: {world}."
        ),
        P::AsForecast => "as forecast".into(),
        P::SlowFilm => "dye spreads slowly in the film".into(),
        P::FastFilm => "dye spreads fast in the film".into(),
        P::ColdCorner => "the dryer runs cold".into(),
        P::HotCorner => "the dryer runs hot".into(),
        P::GatedFibre => "the fibre stays shut below the heat it was set at".into(),
        P::OpenAir => "nothing lies on the print".into(),
        P::WarmerStore => "the store is 10 °C warmer".into(),
        P::GateNote => {
            "At the best set point the shut fibre gives the same, because both are held to what the trade sees there. Away from it they part.".into()
        }
        P::WhenToLook => "When to look".into(),
        P::WhenToLookSays => {
            "Keep one piece cool and dark, and one as the order will lie. Lay them side by side in daylight on these days.".into()
        }
        P::LookOn => "Look on".into(),
        P::Expect => "Expect".into(),
        P::BadEndWord => "bad end".into(),
        P::OverLimitBy => "chance that it shows by then".into(),
        P::OnCloth { low, likely, high, day } => {
            format!("Fresh beside day {day}: {low} at the good end, {likely} most likely, {high} at the bad end.")
        }
        P::CutSays { first, last, day } => format!(
            "In the top that the eye sees: {first} g of free dye in a cubic metre when fresh, {last} on day {day}."
        ),
    }
}
