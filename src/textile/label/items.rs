//! Recognises shares, fibres, constructions, weights and colours among the tokens.

use super::meaning::{LONGEST_PHRASE, Meaning, meaning};
use super::tokens::{LabelToken, TokenKind};
use crate::quantity::units::{GSM_PER_MOMME, GSM_PER_OUNCE_YARD};
use crate::textile::{ColourRecord, colour, spelling::fold};

/// What a piece of a label is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum ItemKind {
    /// A number that may be a share.
    Number {
        value: f64,
        percent: bool,
    },
    /// A weight, g/m².
    Weight(f64),
    /// A known word or phrase.
    Known(Meaning),
    /// A colour.
    Colour(&'static ColourRecord),
    /// An unknown word.
    Unknown,
    Colon,
    Break {
        strong: bool,
    },
}

/// A recognised piece of a label.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LabelItem {
    /// Its text on the label.
    pub text: String,
    /// What it is.
    pub what: ItemKind,
}

/// Recognises the tokens, the longest phrases first.
pub(super) fn understand(tokens: &[LabelToken]) -> Vec<LabelItem> {
    let mut items = Vec::new();
    let mut rest = tokens;
    while let Some((first, after)) = rest.split_first() {
        let (what, used) = match &first.kind {
            TokenKind::Number { value, percent } => match weight(rest) {
                Some((weight, used)) if !percent => (Some(ItemKind::Weight(weight)), used),
                _ => (Some(ItemKind::Number { value: *value, percent: *percent }), 1),
            },
            TokenKind::Word(_) => {
                let (what, used) = phrase(rest);
                (Some(what), used)
            }
            TokenKind::Colon => (Some(ItemKind::Colon), 1),
            TokenKind::Break { strong } => (Some(ItemKind::Break { strong: *strong }), 1),
            TokenKind::Unit(_) => (None, 1),
        };
        if let Some(what) = what {
            let words: Vec<&str> = rest.iter().take(used).map(|token| token.text.as_str()).collect();
            items.push(LabelItem { text: words.join(" "), what });
        }
        rest = rest.get(used..).unwrap_or(after);
    }
    settle(items)
}

/// The longest known phrase that starts here, and how many tokens it takes.
fn phrase(tokens: &[LabelToken]) -> (ItemKind, usize) {
    let words: Vec<&str> = tokens
        .iter()
        .take(LONGEST_PHRASE)
        .map_while(|token| match &token.kind {
            TokenKind::Word(word) => Some(word.as_str()),
            _ => None,
        })
        .collect();
    for count in (1..=words.len()).rev() {
        let phrase = words.get(..count).unwrap_or_default().join(" ");
        let capitals = tokens.first().is_some_and(|token| token.text.chars().all(char::is_uppercase));
        if let Some(meaning) = meaning(&phrase, capitals) {
            return (ItemKind::Known(meaning), count);
        }
        if let Some(colour) = colour::known(&phrase) {
            return (ItemKind::Colour(colour), count);
        }
    }
    (ItemKind::Unknown, 1)
}

/// A weight that starts here, g/m², and how many tokens it takes: `150 g/m²`, `5.3 oz`, `180gsm`,
/// `6 oz/sq yd`, `16 momme`.
fn weight(tokens: &[LabelToken]) -> Option<(f64, usize)> {
    let [
        LabelToken { kind: TokenKind::Number { value, .. }, .. },
        LabelToken { kind: TokenKind::Word(unit), .. },
        tail @ ..,
    ] = tokens
    else {
        return None;
    };
    let factor = match unit.as_str() {
        "momme" | "mommes" => return Some((*value * GSM_PER_MOMME, 2)),
        "gsm" | "gms" | "gm2" | "grm2" | "grsm2" => return Some((*value, 2)),
        "g" | "gr" | "grs" | "gram" | "grams" | "gramo" | "gramos" => 1.0,
        "oz" | "ozs" | "ounce" | "ounces" | "onza" | "onzas" => GSM_PER_OUNCE_YARD,
        _ => return None,
    };
    let area = |word: &str| {
        matches!(
            word,
            "per"
                | "por"
                | "sq"
                | "square"
                | "m"
                | "m2"
                | "mt2"
                | "mts2"
                | "sqm"
                | "metro"
                | "metre"
                | "meter"
                | "yd"
                | "yd2"
                | "yds"
                | "sy"
                | "yard"
                | "yarda"
                | "cuadrado"
                | "cuadrada"
        )
    };
    let mut raised = false;
    let more = tail
        .iter()
        .take_while(|token| match &token.kind {
            TokenKind::Unit(mark) => {
                raised = *mark == '^';
                true
            }
            TokenKind::Number { .. } => std::mem::take(&mut raised),
            TokenKind::Word(word) => area(word),
            _ => false,
        })
        .count();
    Some((value * factor, 2 + more))
}

/// Resolves what depends on the neighbours: a fibre code counts only beside a number or another fibre,
/// and `all` only before a fibre, where it means 100 %.
fn settle(items: Vec<LabelItem>) -> Vec<LabelItem> {
    let is = |at: Option<usize>, wanted: fn(&ItemKind) -> bool| {
        at.and_then(|at| items.get(at)).is_some_and(|item| wanted(&item.what))
    };
    let fibre = |what: &ItemKind| matches!(what, ItemKind::Known(Meaning::Fibre(_) | Meaning::Code(_)));
    let share = |what: &ItemKind| {
        matches!(what, ItemKind::Number { .. } | ItemKind::Known(Meaning::Fibre(_) | Meaning::Code(_)))
    };
    let settled: Vec<ItemKind> = items
        .iter()
        .enumerate()
        .map(|(at, item)| match item.what {
            ItemKind::Known(Meaning::Code(code)) => {
                if is(at.checked_sub(1), share) || is(Some(at + 1), share) {
                    ItemKind::Known(Meaning::Fibre(code))
                } else {
                    meaning(&fold(&item.text), false).map_or(ItemKind::Unknown, ItemKind::Known)
                }
            }
            ItemKind::Known(Meaning::All) if is(Some(at + 1), fibre) => {
                ItemKind::Number { value: 100.0, percent: true }
            }
            ItemKind::Known(Meaning::All) => ItemKind::Known(Meaning::Noise),
            ref other => other.clone(),
        })
        .collect();
    items.into_iter().zip(settled).map(|(item, what)| LabelItem { what, ..item }).collect()
}
