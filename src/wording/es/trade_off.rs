//! The trade-off.

use crate::plan::Scale;
use crate::wording::{ScaleChange, ScaleDifference, TradeOffPhrase};

/// Joins a white to the blocker under it.
pub(in crate::wording) const OVER: &str = "sobre";
/// Joins the last item of a list to the one before.
pub(in crate::wording) const AND: &str = "y";

pub(in crate::wording) fn scale(scale: Scale) -> &'static str {
    match scale {
        Scale::Cost => "Coste por estampado",
        Scale::Pace => "Estampados por hora",
        Scale::Hand => "Rigidez (1 = lo usual)",
        Scale::Cover => "Tela que se ve, ΔE00",
        Scale::Nap => "Pelo sin asentar",
        Scale::Finish => "Acabado, falta",
        Scale::Late => "Fallo tardío",
    }
}

/// The superlative before «que también cumple».
fn least(pays: Scale) -> &'static str {
    match pays {
        Scale::Pace => "más rápido",
        Scale::Hand => "más suave",
        Scale::Cover => "más opaco",
        Scale::Nap => "más liso",
        Scale::Finish => "más fiel",
        Scale::Late => "más seguro",
        Scale::Cost => "más barato",
    }
}

pub(in crate::wording) fn differs(what: ScaleDifference<'_>) -> String {
    let ScaleDifference { scale, better, little, by, chances: [one, other] } = what;
    let pick = |yes: &'static str, no: &'static str| if better { yes } else { no };
    match scale {
        Scale::Late => format!("más {} ({one}, no {other})", pick("seguro", "arriesgado")),
        Scale::Cost => format!("{by} más {} por estampado", pick("barato", "caro")),
        Scale::Pace => format!("más {} ({by} estampados por hora)", pick("rápido", "lento")),
        Scale::Hand => format!("{} {}", if little { "algo más" } else { "más" }, pick("suave", "rígido")),
        Scale::Cover => format!("{} opaco", pick("más", "menos")),
        Scale::Nap => format!("más {}", pick("liso", "velloso")),
        Scale::Finish => format!("{} fiel al acabado pedido", pick("más", "menos")),
    }
}

fn price_of(step: &ScaleChange) -> String {
    let ScaleChange { scale, more, by, from, to } = step;
    let more_or_less = if *more { "más" } else { "menos" };
    match scale {
        Scale::Cost => format!("Por {by} {more_or_less} por estampado"),
        Scale::Pace => format!("Por {by} estampados {more_or_less} por hora"),
        Scale::Hand => {
            format!("Por un estampado más {} ({to}, no {from})", if *more { "rígido" } else { "suave" })
        }
        Scale::Cover | Scale::Nap | Scale::Finish | Scale::Late => gain_of(step),
    }
}

fn gain_of(step: &ScaleChange) -> String {
    let ScaleChange { scale, more, from, to, .. } = step;
    match scale {
        Scale::Late => {
            format!("el riesgo de un fallo tardío {} de {from} a {to}", if *more { "sube" } else { "baja" })
        }
        Scale::Cover => {
            format!("la tela se ve {} (ΔE00 {to}, no {from})", if *more { "más" } else { "menos" })
        }
        Scale::Finish => format!("el acabado se queda a un {to}, no a un {from}"),
        Scale::Nap => format!("queda sin asentar un {to} del pelo, no un {from}"),
        Scale::Cost | Scale::Pace | Scale::Hand => price_of(step),
    }
}

pub(in crate::wording) fn phrase(phrase: &TradeOffPhrase) -> String {
    use TradeOffPhrase as P;
    match phrase {
        P::Title => "Qué se da a cambio de qué".into(),
        P::Figure => "Cada marca es una forma calculada a fondo: llena, adelante; media, primero una prueba; tachada, no. A la izquierda y abajo es mejor; la línea une las formas que ninguna supera en ambas escalas. Toque una marca o abra las cifras.".into(),
        P::Picture { pays, gets, recipes } => format!("{recipes} formas entre dos escalas. A lo largo: {pays}. Hacia arriba: {gets}."),
        P::Compared { compared, judged } => format!("{compared} formas comparadas, {judged} calculadas a fondo."),
        P::PaidFor { worse, better, other, pays } => {
            let gained = if better.is_empty() { String::new() } else { format!(" A cambio es {better}.") };
            format!("Lo que cuesta. Es {worse} que {other}, el {} que también cumple.{gained}", least(*pays))
        }
        P::NothingPaid { pays } => format!("Nada {} cumple igual de bien.", least(*pays)),
        P::OffFront { recipe, better, worse, trial } => {
            let trial = if *trial { " Necesita antes una prueba." } else { "" };
            let worse = if worse.is_empty() { String::new() } else { format!(", pero {worse}") };
            format!("Fuera de la línea. {recipe} es {better}{worse}.{trial}")
        }
        P::ForMore { recipe, price, gain, trial } => {
            let trial = if *trial { ", tras una prueba" } else { "" };
            format!("{}, {}: {recipe}{trial}.", price_of(price), gain_of(gain))
        }
        P::Looked { recipe, cost, late, pace } => {
            format!("{recipe}. {cost} por estampado, {pace} por hora, fallo tardío {late}.")
        }
        P::NotBest { white } => format!("Otra forma de {white} le va mejor a este pedido."),
        P::OnTheLine => "en la línea".into(),
    }
}
