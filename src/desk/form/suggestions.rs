//! Suggested corrections of a field that cannot be read: each is one tap that replaces the text.

use super::draft::Draft;
use super::field::Field;
use crate::quantity::{Bound, FieldError, Problem};
use crate::wording::{Numeral, Phrase, number};

/// A suggested correction.
#[derive(Clone, Debug, PartialEq)]
pub struct Suggestion {
    /// The field whose text it replaces.
    pub field: Field,
    /// The new text.
    pub text: String,
    /// What the button says.
    pub say: String,
}

/// The suggestions for an error; `bound` is the accepted range, where it is not the field's own.
#[must_use]
pub fn suggestions(error: &FieldError, draft: &Draft, bound: Option<Bound>) -> Vec<Suggestion> {
    let Some(field) = Field::of_path(&error.field) else { return Vec::new() };
    match &error.problem {
        Problem::SumNot100 { section, .. } if section.is_empty() => shares(draft.text(field))
            .into_iter()
            .map(|text| Suggestion { field, say: text.clone(), text })
            .collect(),
        Problem::Unknown { nearest, .. } => nearest
            .iter()
            .take(3)
            .map(|word| {
                let text = draft.text(field);
                let text = if text.contains(&error.value) && !error.value.is_empty() {
                    text.replacen(&error.value, word, 1)
                } else {
                    word.clone()
                };
                Suggestion { field, say: text.clone(), text }
            })
            .collect(),
        Problem::OutOfRange { .. } => other_unit(field, error, draft, bound).into_iter().collect(),
        _ => Vec::new(),
    }
}

/// The same digits read in the other system of units, where that lies in range: 330 in a field of °C is likely °F.
fn other_unit(field: Field, error: &FieldError, draft: &Draft, bound: Option<Bound>) -> Option<Suggestion> {
    let quantity = field.quantity()?;
    let other = draft.units.other();
    let typed = number::read(&error.value, quantity, field.whole())?;
    if typed.units.is_some()
        || quantity.unit(other, draft.language) == quantity.unit(draft.units, draft.language)
    {
        return None;
    }
    let value = quantity.kept(typed.value, other);
    bound.or(field.bound())?.check(value).ok()?;
    let voice = draft.voice();
    let digits = Numeral(draft.language).short(typed.value, 2);
    let say = voice.say(&Phrase::DidYouMeanHeat {
        typed: format!("{digits}\u{a0}{}", quantity.unit(other, draft.language)),
        meant: voice.quantity(quantity, value),
    });
    let shown = quantity.shown(value, draft.units);
    Some(Suggestion {
        field,
        text: Numeral(draft.language).short(shown, quantity.decimals(draft.units)),
        say,
    })
}

/// Labels whose shares add up to 100: each share in turn is changed to fit, then all in proportion.
fn shares(label: &str) -> Vec<String> {
    let found = percentages(label);
    let sum: f64 = found.iter().map(|share| share.value).sum();
    if found.len() < 2 || found.len() > 4 || sum <= 0.0 {
        return Vec::new();
    }
    let with = |values: &[f64]| {
        let mut text = String::new();
        let mut at = 0;
        for (share, value) in found.iter().zip(values) {
            text.push_str(&label[at..share.start]);
            text.push_str(&Numeral(crate::wording::Language::En).short(*value, 1));
            at = share.end;
        }
        text + &label[at..]
    };
    let values: Vec<f64> = found.iter().map(|share| share.value).collect();
    let mut mended = Vec::new();
    for index in 0..values.len() {
        let rest = 100.0 - (sum - values[index]);
        if rest > 0.0 {
            let mut changed = values.clone();
            changed[index] = rest;
            mended.push(with(&changed));
        }
    }
    let mut parts: Vec<f64> = values.iter().map(|value| (value / sum * 100.0).round()).collect();
    let others: f64 = parts.iter().rev().skip(1).sum();
    if let Some(last) = parts.last_mut() {
        *last = 100.0 - others;
    }
    if parts.iter().all(|&part| part > 0.0) {
        mended.push(with(&parts));
    }
    mended.dedup();
    mended
}

struct Share {
    start: usize,
    end: usize,
    value: f64,
}

/// The numbers before a percent sign in a label, and where their digits are.
fn percentages(label: &str) -> Vec<Share> {
    let mut found = Vec::new();
    let mut start = None;
    for (at, letter) in label.char_indices() {
        if letter.is_ascii_digit() || (start.is_some() && matches!(letter, '.' | ',')) {
            start.get_or_insert(at);
            continue;
        }
        if letter == ' ' && start.is_some() && label[at..].trim_start().starts_with('%') {
            continue;
        }
        if let (Some(from), '%') = (start, letter) {
            let digits = label[from..at].trim_end();
            if let Ok(value) = digits.replace(',', ".").parse::<f64>() {
                found.push(Share { start: from, end: from + digits.len(), value });
            }
        }
        start = None;
    }
    found
}
