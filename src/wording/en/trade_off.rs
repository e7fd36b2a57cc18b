//! The trade-off.

use crate::plan::Scale;
use crate::wording::{ScaleChange, ScaleDifference, TradeOffPhrase};

/// Joins a white to the blocker under it.
pub(in crate::wording) const OVER: &str = "over";
/// Joins the last item of a list to the one before.
pub(in crate::wording) const AND: &str = "and";

pub(in crate::wording) fn scale(scale: Scale) -> &'static str {
    match scale {
        Scale::Cost => "Cost of a print",
        Scale::Pace => "Prints an hour",
        Scale::Hand => "Stiffness (1 = usual)",
        Scale::Cover => "Cloth that shows, ΔE00",
        Scale::Nap => "Nap that stands",
        Scale::Finish => "Finish missed by",
        Scale::Late => "Late fault",
    }
}

/// The superlative before "that holds as well".
fn least(pays: Scale) -> &'static str {
    match pays {
        Scale::Pace => "fastest",
        Scale::Hand => "softest",
        Scale::Cover => "most opaque",
        Scale::Nap => "smoothest",
        Scale::Finish => "truest",
        Scale::Late => "safest",
        Scale::Cost => "cheapest",
    }
}

/// The comparative after "nothing".
fn than_this(pays: Scale) -> &'static str {
    match pays {
        Scale::Pace => "faster",
        Scale::Hand => "softer",
        Scale::Cover => "more opaque",
        Scale::Nap => "smoother",
        Scale::Finish => "truer",
        Scale::Late => "safer",
        Scale::Cost => "cheaper",
    }
}

pub(in crate::wording) fn differs(what: ScaleDifference<'_>) -> String {
    let ScaleDifference { scale, better, little, by, chances: [one, other] } = what;
    let pick = |yes: &'static str, no: &'static str| if better { yes } else { no };
    match scale {
        Scale::Late => format!("{} ({one}, not {other})", pick("safer", "riskier")),
        Scale::Cost => format!("{by} a print {}", pick("cheaper", "dearer")),
        Scale::Pace => format!("{by} prints an hour {}", pick("faster", "slower")),
        Scale::Hand => format!("{}{}", if little { "a little " } else { "" }, pick("softer", "stiffer")),
        Scale::Cover => format!("{} opaque", pick("more", "less")),
        Scale::Nap => pick("smoother", "hairier").into(),
        Scale::Finish => pick("nearer the finish asked for", "further from the finish asked for").into(),
    }
}

fn price_of(step: &ScaleChange) -> String {
    let ScaleChange { scale, more, by, from, to } = step;
    let more_or_less = if *more { "more" } else { "less" };
    match scale {
        Scale::Cost => format!("For {by} {more_or_less} a print"),
        Scale::Pace => format!("For {by} prints {more_or_less} an hour"),
        Scale::Hand => format!("For a {} print ({to}, not {from})", if *more { "stiffer" } else { "softer" }),
        Scale::Cover | Scale::Nap | Scale::Finish | Scale::Late => gain_of(step),
    }
}

fn gain_of(step: &ScaleChange) -> String {
    let ScaleChange { scale, more, from, to, .. } = step;
    match scale {
        Scale::Late => {
            format!(
                "the chance of a late fault {} from {from} to {to}",
                if *more { "rises" } else { "falls" }
            )
        }
        Scale::Cover => {
            format!("the cloth shows {} (ΔE00 {to}, not {from})", if *more { "more" } else { "less" })
        }
        Scale::Nap => format!("{to} of the nap stands, not {from}"),
        Scale::Finish => format!("the finish is missed by {to}, not {from}"),
        Scale::Cost | Scale::Pace | Scale::Hand => price_of(step),
    }
}

pub(in crate::wording) fn phrase(phrase: &TradeOffPhrase) -> String {
    use TradeOffPhrase as P;
    match phrase {
        P::Title => "What is given up for what".into(),
        P::Figure => "Each mark is a way that was worked through: full, run it; half, trial first; barred, no. Left and low is better; the line joins the ways that nothing beats on both scales. Tap a mark, or open the figures.".into(),
        P::Picture { pays, gets, recipes } => format!("{recipes} ways between two scales. Along: {pays}. Up: {gets}."),
        P::Compared { compared, judged } => format!("{compared} ways compared, {judged} worked through."),
        P::PaidFor { worse, better, other, pays } => {
            let gained = if better.is_empty() { String::new() } else { format!(" For that it is {better}.") };
            format!("What this costs. It is {worse} than {other}, the {} that holds as well.{gained}", least(*pays))
        }
        P::NothingPaid { pays } => format!("Nothing {} holds as well.", than_this(*pays)),
        P::OffFront { recipe, better, worse, trial } => {
            let trial = if *trial { " It needs a trial first." } else { "" };
            let worse = if worse.is_empty() { String::new() } else { format!(", but {worse}") };
            format!("Not on the line. {recipe} is {better}{worse}.{trial}")
        }
        P::ForMore { recipe, price, gain, trial } => {
            let trial = if *trial { ", after a trial" } else { "" };
            format!("{}, {}: {recipe}{trial}.", price_of(price), gain_of(gain))
        }
        P::Looked { recipe, cost, late, pace } => format!("{recipe}. {cost} a print, {pace} an hour, late fault {late}."),
        P::NotBest { white } => format!("Another way of {white} serves this order better."),
        P::OnTheLine => "on the line".into(),
    }
}
