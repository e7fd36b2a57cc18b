//! Pairs the shares and the fibres of one part of a label.

use super::items::{ItemKind, LabelItem};
use super::meaning::{Meaning, fibre_words, meaning};
use super::{LabelNote, LabelSection};
use crate::numerics::sorting::map;
use crate::quantity::{Bound, FieldError, Problem};
use crate::textile::{Fibre, spelling};
use std::collections::BTreeMap;

/// One share of a label.
const SHARE: Bound = Bound { field: "label", min: 0.0, max: 100.0, unit: "%" };

/// Accepted difference of a sum of rounded shares from 100, percentage points. Common practice, no
/// source.
const ROUNDING: f64 = 1.0;

/// One part of a label, before its shares are read.
#[derive(Clone, Debug, Default)]
pub(super) struct LabelPart {
    /// Its name in English, empty for the body; absent if the label gives none.
    pub name: Option<String>,
    /// Its pieces.
    pub items: Vec<LabelItem>,
}

impl LabelPart {
    /// Whether nothing names it as another part than the body.
    pub(super) fn may_be_body(&self) -> bool {
        self.name.as_deref().is_none_or(str::is_empty)
    }

    /// Whether shares can be read from it.
    pub(super) fn has_shares(&self) -> bool {
        self.has_fibres()
            || self.items.iter().any(|item| {
                matches!(
                    item.what,
                    ItemKind::Number { .. } | ItemKind::Unknown | ItemKind::Known(Meaning::Shares(_))
                )
            })
    }

    /// Whether its shares add up to 100 already.
    pub(super) fn is_full(&self) -> bool {
        (ShareRow::of(self).stated() - 100.0).abs() <= ROUNDING
    }

    pub(super) fn has_fibres(&self) -> bool {
        self.items.iter().any(|item| named(item).is_some())
    }

    fn text(&self) -> String {
        self.items.iter().map(|item| item.text.as_str()).collect::<Vec<_>>().join(" ")
    }
}

/// What a share belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Name {
    Fibre(Fibre),
    Other,
}

/// A share as stated.
#[derive(Clone, Copy, Debug, PartialEq)]
enum StatedShare {
    Percent(f64),
    Rest,
}

/// The fibres that an item names, if any.
fn named(item: &LabelItem) -> Option<Vec<Name>> {
    match item.what {
        ItemKind::Known(Meaning::Fibre(fibre)) => Some(vec![Name::Fibre(fibre)]),
        ItemKind::Known(Meaning::Loose(fibres)) => {
            Some(fibres.iter().take(1).map(|&f| Name::Fibre(f)).collect())
        }
        ItemKind::Known(Meaning::Blend(fibres)) => {
            Some(fibres.iter().map(|&fibre| Name::Fibre(fibre)).collect())
        }
        ItemKind::Known(Meaning::Other) => Some(vec![Name::Other]),
        _ => None,
    }
}

/// The shares and the fibres of a part, each in their order, and the text that belongs to neither.
#[derive(Default)]
struct ShareRow<'a> {
    shares: Vec<(StatedShare, &'a LabelItem)>,
    names: Vec<(Name, &'a LabelItem)>,
    left_out: Vec<String>,
}

impl<'a> ShareRow<'a> {
    /// Takes as shares the first `most` numbers for which `counts` holds, given whether a percent sign is
    /// beside them.
    fn new(part: &'a LabelPart, most: usize, counts: impl Fn(bool) -> bool) -> Self {
        let mut row = Self::default();
        let mut apart = true;
        for item in &part.items {
            let leave_out = match item.what {
                ItemKind::Number { value, percent } if counts(percent) && row.shares.len() < most => {
                    row.shares.push((StatedShare::Percent(value), item));
                    false
                }
                ItemKind::Known(Meaning::Rest) => {
                    row.shares.push((StatedShare::Rest, item));
                    false
                }
                ItemKind::Number { .. } | ItemKind::Unknown => true,
                _ => {
                    row.names.extend(named(item).into_iter().flatten().map(|name| (name, item)));
                    false
                }
            };
            match row.left_out.last_mut() {
                Some(text) if leave_out && !apart => *text = format!("{text} {}", item.text),
                _ if leave_out => row.left_out.push(item.text.clone()),
                _ => {}
            }
            apart = !leave_out;
        }
        row
    }

    /// The first reading in which shares and fibres match: every number is a share; only those with a
    /// percent sign are; only the first that add up to 100 are (a size or a yarn count follows); or a
    /// single fibre has no share. If none matches, every number is a share.
    fn of(part: &'a LabelPart) -> Self {
        let mut every = Self::new(part, usize::MAX, |_| true);
        // `CVC 52/48 cotton/polyester`: the word for the blend says again what its fibres say.
        let blends = |item: &LabelItem| matches!(item.what, ItemKind::Known(Meaning::Blend(_)));
        if every.names.iter().filter(|(_, item)| !blends(item)).count() >= 2 {
            every.names.retain(|(_, item)| !blends(item));
        }
        if every.matches() {
            return every;
        }
        let signed = Self::new(part, usize::MAX, |percent| percent);
        if signed.matches() && !signed.shares.is_empty() {
            return signed;
        }
        let first = Self::new(part, every.names.len(), |_| true);
        if first.matches() && (first.stated() - 100.0).abs() <= ROUNDING {
            return first;
        }
        let sole = signed.shares.is_empty() && signed.names.len() == 1 && every.shares.len() > 1;
        if sole { signed } else { every }
    }

    fn matches(&self) -> bool {
        self.shares.len() == self.names.len()
    }

    fn stated(&self) -> f64 {
        self.shares
            .iter()
            .map(|(share, _)| if let StatedShare::Percent(value) = share { *value } else { 0.0 })
            .sum()
    }
}

/// Reads the shares of a part; `None` if it names neither fibre nor share.
pub(super) fn read(part: &LabelPart, notes: &mut Vec<LabelNote>) -> Result<Option<LabelSection>, FieldError> {
    let error = |value: &str, problem| FieldError::new("label", value, problem);
    let mut part = part.clone();
    let row = ShareRow::of(&part);
    if row.shares.len() > row.names.len() || row.names.is_empty() {
        notes.append(&mut correct(&mut part));
    }
    let mut row = ShareRow::of(&part);
    notes.extend(row.left_out.drain(..).map(|text| LabelNote::LeftOut { text }));
    notes
        .extend(part.items.iter().filter(|item| item.what == ItemKind::Known(Meaning::Dropped)).map(dropped));

    if row.names.is_empty()
        && let Some(section) = shorthand(&part, &row, notes)
    {
        return Ok(Some(section));
    }
    if row.names.is_empty() && row.shares.is_empty() {
        return Ok(None);
    }
    if let ([(Name::Fibre(fibre), item)], []) = (row.names.as_slice(), row.shares.as_slice()) {
        notes.push(LabelNote::AssumedWhole { fibre: *fibre });
        row.shares.push((StatedShare::Percent(100.0), item));
    }
    for (share, item) in &row.shares {
        if let StatedShare::Percent(value) = share {
            SHARE.check(*value).map_err(|wrong| error(&item.text, wrong.problem))?;
        }
    }
    if let Some((_, item)) = row.names.get(row.shares.len()) {
        return Err(error(&item.text, Problem::NotUnderstood));
    }
    if !row.matches() {
        return Err(without_fibre(&part));
    }

    let mut section = LabelSection { name: part.name.clone().unwrap_or_default(), ..LabelSection::default() };
    let missing = (100.0 - row.stated()).max(0.0);
    for ((share, _), (name, _)) in row.shares.iter().zip(&row.names) {
        let percent = if let StatedShare::Percent(value) = share { *value } else { missing };
        match name {
            Name::Fibre(fibre) => *section.shares.entry(*fibre).or_default() += percent,
            Name::Other => section.other_percent += percent,
        }
    }
    section.shares.retain(|_, percent| *percent > 0.0);
    let sum = section.sum();
    if (sum - 100.0).abs() > ROUNDING || section.shares.is_empty() {
        return Err(error(&part.text(), Problem::SumNot100 { sum, section: section.name }));
    }
    if (sum - 100.0).abs() > 1e-9 {
        notes.push(LabelNote::Rounded { sum, section: section.name.clone() });
    }
    if section.other_percent > 0.0 {
        notes.push(LabelNote::OtherFibres { percent: section.other_percent, section: section.name.clone() });
    }
    notes.extend(part.items.iter().filter_map(|item| loose(item, &section)));
    Ok(Some(section))
}

fn dropped(item: &LabelItem) -> LabelNote {
    LabelNote::Dropped { word: item.text.clone() }
}

/// The remark about a loose word: beside another fibre `poly` is polyester, alone it is asked.
fn loose(item: &LabelItem, section: &LabelSection) -> Option<LabelNote> {
    let ItemKind::Known(Meaning::Loose(fibres)) = item.what else { return None };
    let (&fibre, or) = fibres.split_first()?;
    let word = item.text.clone();
    if fibre == Fibre::Polyester && section.shares.len() > 1 {
        return Some(LabelNote::Assumed { word, fibre });
    }
    Some(LabelNote::Ask { word, fibre, or: or.to_vec() })
}

/// A part whose shares are given only by a word of the trade (`tri-blend`).
fn shorthand(part: &LabelPart, row: &ShareRow, notes: &mut Vec<LabelNote>) -> Option<LabelSection> {
    let (item, usual) = part.items.iter().find_map(|item| match item.what {
        ItemKind::Known(Meaning::Shares(shares)) => Some((item, shares)),
        _ => None,
    })?;
    let stated = row.shares.iter().map(|&(share, _)| share);
    if !row.shares.is_empty() && !stated.eq(usual.iter().map(|&(_, percent)| StatedShare::Percent(percent))) {
        return None;
    }
    let shares: BTreeMap<Fibre, f64> = map(usual.iter().copied());
    notes.push(LabelNote::AssumedShares { word: item.text.clone(), shares: shares.clone() });
    Some(LabelSection { name: part.name.clone().unwrap_or_default(), shares, other_percent: 0.0 })
}

/// Reads misspelt fibres: one changed letter in a word of five or more, two in a word of eight or more.
fn correct(part: &mut LabelPart) -> Vec<LabelNote> {
    let mut notes = Vec::new();
    for item in &mut part.items {
        if item.what != ItemKind::Unknown {
            continue;
        }
        let word = spelling::fold(&item.text);
        let reach = match word.chars().count() {
            0..=4 => continue,
            5..=7 => 1,
            _ => 2,
        };
        let near = fibre_words().map(|known| (strsim::osa_distance(&word, known), known));
        let Some((_, known)) = near.filter(|&(changes, _)| changes <= reach).min() else { continue };
        if let Some(Meaning::Fibre(fibre)) = meaning(known, false) {
            item.what = ItemKind::Known(Meaning::Fibre(fibre));
            notes.push(LabelNote::ReadAs { word: item.text.clone(), fibre });
        }
    }
    notes
}

/// The error of a share without a fibre: it quotes the word beside it, with the nearest fibres, or else
/// the number.
fn without_fibre(part: &LabelPart) -> FieldError {
    let matters = |item: &&LabelItem| {
        matches!(item.what, ItemKind::Number { .. } | ItemKind::Unknown) || named(item).is_some()
    };
    let items: Vec<&LabelItem> = part.items.iter().filter(matters).collect();
    let is_number = |item: &LabelItem| matches!(item.what, ItemKind::Number { .. });
    let beside = |first: bool| {
        items.windows(2).find_map(|pair| match pair {
            [a, b] if first && is_number(a) && b.what == ItemKind::Unknown => Some(*b),
            [a, b] if !first && a.what == ItemKind::Unknown && is_number(b) => Some(*a),
            _ => None,
        })
    };
    let Some(word) = beside(true).or_else(|| beside(false)) else {
        let number = items.iter().rev().find(|item| is_number(item));
        return FieldError::new("label", number.map_or("", |item| &item.text), Problem::NotUnderstood);
    };
    let nearest = spelling::nearest(&word.text, fibre_words()).into_iter().map(str::to_owned).collect();
    let accepted = Fibre::ALL.iter().map(|fibre| fibre.name().to_owned()).collect();
    FieldError::new("label", &word.text, Problem::Unknown { nearest, accepted })
}
