//! Sentences that the screens share.

use crate::wording::Phrase;

pub(in crate::wording) fn phrase(phrase: &Phrase) -> String {
    use Phrase as P;
    match phrase {
        P::OutOf { count, of } => format!("{count} in {of}"),
        P::FewerThanOne => "fewer than 1 in 100".into(),
        P::MoreThanNinetyNine => "more than 99 in 100".into(),
        P::ColourClash { label, chosen } if chosen.is_empty() => {
            format!("The label says {label}, but a colour was measured: this answer is for the measured one.")
        }
        P::ColourClash { label, chosen } => {
            format!("The label says {label}, the colour field {chosen}: this answer is for {chosen}.")
        }
        P::TakeColour { colour } => format!("Take {colour}, as the label says"),
        P::To { low, high } => format!("{low} to {high}"),
        P::HoldWithin { value } => format!("hold ± {value}"),
        P::PassCount { count: 1 } => "one pass".into(),
        P::DriedIn { passes: 1, before, after } => {
            format!("one pass, water {before} to {after}, print at once")
        }
        P::DriedIn { passes, before, after } => {
            format!("{passes} passes, water {before} to {after}, print at once")
        }
        P::PassCount { count } => format!("{count} passes"),
        P::StrokeCount { count: 1 } => "1 stroke".into(),
        P::StrokeCount { count } => format!("{count} strokes"),
        P::FlashFor { time } => format!("Flash {time}"),
        P::FilmNear { film } => format!("film near {film}"),
        P::TrialSay { pieces, hours, oven, mark, days } => format!(
            "Print {pieces}, oven {hours} h at {oven}, then look: {mark} or less is a go. It stands for {days} days on a shelf."
        ),
        P::TrialLook { pieces } => format!("Print {pieces} and look at them before the order."),
        P::HowSure { chance } => format!("about {chance} that it stays good"),
        P::BleedAfter { days } => format!("Tint in the white, {days} days"),
        P::LimitAt { value } => format!("limit {value}"),
        P::RulerTitle { what, likely, low, high, limit } => {
            format!("{what}: likely {likely}, from {low} to {high}; limit {limit}.")
        }
        P::WhiteOf { class, low_cure: true } => format!("{class}, low-cure"),
        P::WhiteOf { class, low_cure: false } => class.clone(),
        P::MixOf { class, parts } => {
            let parts: Vec<String> = parts.iter().map(|(name, share)| format!("{share} {name}")).collect();
            format!("{class}, with {}", parts.join(", "))
        }
        P::Needs { blocker } => format!("over {blocker}"),
        P::OrderLine { pieces, lot, due } => {
            let lot = if lot.is_empty() { String::new() } else { format!(", lot {lot}") };
            let due = if due.is_empty() { String::new() } else { format!(", due {due}") };
            format!("{pieces} pieces{lot}{due}")
        }
        P::RoomLeft { cooler, hotter, slower, faster } => {
            let sides: Vec<String> =
                [(cooler, "cooler"), (hotter, "hotter"), (slower, "slower"), (faster, "faster")]
                    .into_iter()
                    .filter_map(|(room, side)| room.as_ref().map(|room| format!("{room} {side}")))
                    .collect();
            if sides.is_empty() {
                "It reaches past the ends of this dryer.".into()
            } else {
                format!("Room left: {}.", sides.join(", "))
            }
        }
        P::Fails { what, value, limit } => format!("{what}: {value}, limit {limit}."),
        P::WhereItWorks { white } => format!("Where {white} works on this cloth"),
        P::MapTitle { works: Some((cool, hot)), set } => format!(
            "Map of belt speed and set temperature. A strip works, from {cool} to {hot}. The set point is {set}."
        ),
        P::MapTitle { works: None, set } if set.is_empty() => {
            "Map of belt speed and set temperature. No part of it works.".into()
        }
        P::MapTitle { works: None, set } => {
            format!("Map of belt speed and set temperature. No part of it works. The set point is {set}.")
        }
        P::MapCaption { heat, belt, fits } => format!(
            "The clear strip works. The dashed box is how far this dryer wanders, ± {heat} and ± {belt}: {}.",
            if *fits { "it fits" } else { "it does not fit inside" }
        ),
        P::Peak { value } => format!("film peaks at {value}"),
        P::InHeat { time } => format!("in the heat, {time}"),
        P::NeedsFused { value } => format!("needs {value}"),
        P::FusedAt { time } => format!("fused at {time}"),
        P::NotFusedYet { value } => format!("not fused: {value}"),
        P::CurveTitle { peak, time, lag } => format!(
            "Temperatures over time. The film peaks at {peak}; the piece leaves the heat after {time}. The underside lags the top by {lag} at most."
        ),
        P::FusedTitle { end, when: Some(when) } => {
            format!(
                "Fused share of the underside over time. It passes its limit at {when} and ends at {end}."
            )
        }
        P::FusedTitle { end, when: None } => {
            format!("Fused share of the underside over time. It ends at {end} and does not reach its limit.")
        }
        P::ClothTitle { likely, high, limit } => format!(
            "Split circles of white on the cloth, fresh at the left and predicted at the right. Most likely {likely}, at the bad end {high}, limit {limit}."
        ),
        P::OverLimit { value } => format!("over {value}"),
        P::UnderLimit { value } => format!("under {value}"),
        P::Garment { number } => format!("Garment {number}"),
        P::DidYouMeanHeat { typed, meant } => format!("{typed}, that is {meant}"),
        P::Heard { verdict, white, air, belt } => format!("{verdict}. {white}, {air}, {belt}."),
        P::HeardNo => "No. Not with what is on the shelf.".into(),
        P::DryerLine { name, measured } if measured.is_empty() => format!("{name}, not measured yet"),
        P::DryerLine { name, measured } => format!("{name}, measured {measured}"),
        P::SetTo { air, belt } => format!("{air}, {belt}"),
        P::WindowTitle { white } if white.is_empty() => "Cure window".into(),
        P::WindowTitle { white } => format!("Cure window · {white}"),
        P::Worth { chance } => format!("moves the risk by {chance}"),
        P::ForecastTitle { white } if white.is_empty() => "Bleed forecast".into(),
        P::ForecastTitle { white } => format!("Bleed forecast · {white}"),
        P::DayNumber { day } => format!("day {day}"),
        P::OnDay { day, value } => format!("day {day}: {value}"),
        P::StaysWhite { chance } => format!("{chance} that it stays white"),
        P::GradeFrom { grade } => format!("from here, staining grade {grade}"),
        P::DaysAt { heat } => format!("days at {heat}; early ones drawn wider"),
        P::EyeSees { depth } => format!("the eye sees the top {depth}"),
        P::AgeingSays { fresh, day, likely, low, high, limit } if low == high => format!(
            "Fresh {fresh}, on day {day} most likely {likely}. Eight in ten stay at {low}; the limit is {limit}."
        ),
        P::AgeingSays { fresh, day, likely, low, high, limit } => format!(
            "Fresh {fresh}, on day {day} most likely {likely}. Eight in ten lie between {low} and {high}; the limit is {limit}."
        ),
        P::FirstShows { early: None, last, .. } => {
            format!("Even its bad end stays under the limit for {last} days.")
        }
        P::FirstShows { early: Some(early), likely: None, .. } if early == "0" => {
            "The bad end shows at once, the likely case not at all.".into()
        }
        P::FirstShows { early: Some(early), likely: None, .. } => {
            format!("The bad end shows from day {early}, the likely case not at all.")
        }
        P::FirstShows { likely: Some(likely), .. } if likely == "0" => "It shows at once.".into(),
        P::FirstShows { early: Some(early), likely: Some(likely), .. } => {
            format!("It shows from about day {likely}; the bad end from day {early}.")
        }
        P::GhostsOften { chance } => format!(
            "Ghosting is apart from this: {chance} with such a white on such a shade. That is how often its class does it, not a calculation."
        ),
        P::CutTitle { days } => format!(
            "Cut through the print: {}. Dye enters the film from the cloth side and spreads upward.",
            days.join(", ")
        ),
    }
}
