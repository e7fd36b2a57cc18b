//! Reads a label: divides it into parts, reads the shares of each, and finds the body.

use super::items::{ItemKind, LabelItem, understand};
use super::meaning::{Meaning, meaning};
use super::shares::{self, LabelPart};
use super::tokens::cut;
use super::{ClothLook, LONGEST, LabelNote, LabelReading, LabelSection};
use crate::quantity::{FieldError, Problem};
use crate::textile::{AREAL_WEIGHT, spelling::fold};

/// Reads a garment label.
///
/// # Errors
/// A [`FieldError`] for each part that cannot be used: on `areal_weight_gsm` for a weight out of range,
/// else on `label` for no text or too much of it ([`Problem::Empty`], [`Problem::TooLong`]), shares that
/// do not add up to 100 ([`Problem::SumNot100`]) or lie outside 0 to 100 ([`Problem::OutOfRange`]), an
/// unknown fibre, with the nearest known names ([`Problem::Unknown`]), and a share without a fibre or a
/// fibre without a share ([`Problem::NotUnderstood`]).
///
/// # Examples
/// ```
/// use whitehold::textile::{Construction, Fibre, label};
///
/// let reading = label::read("50% algodón 50% poliéster, jersey, 180 g/m², rojo").unwrap();
/// assert_eq!(reading.body.shares[&Fibre::Polyester], 50.0);
/// assert_eq!(reading.construction, Some(Construction::Jersey));
/// assert_eq!((reading.areal_weight_gsm, reading.colour.as_deref()), (Some(180.0), Some("red")));
///
/// let errors = label::read("60% cotton 30% polyester").unwrap_err();
/// assert!(errors[0].to_string().contains("the shares make 90 %"));
/// ```
pub fn read(text: &str) -> Result<LabelReading, Vec<FieldError>> {
    if text.trim().is_empty() {
        return Err(vec![FieldError::new("label", text, Problem::Empty)]);
    }
    if text.chars().count() > LONGEST {
        return Err(vec![FieldError::new("label", text, Problem::TooLong { max: LONGEST })]);
    }
    let mut reading = LabelReading {
        body: LabelSection::default(),
        parts: Vec::new(),
        construction: None,
        areal_weight_gsm: None,
        colour: None,
        looks: Vec::new(),
        notes: Vec::new(),
    };
    let mut errors = Vec::new();
    let parts = divide(understand(&cut(text)), &mut reading.notes);
    // The body is the part that is named so, else the first that may be it.
    let named = parts.iter().position(|part| part.name.as_deref() == Some("") && part.has_shares());
    let body = named.or_else(|| parts.iter().position(|part| part.may_be_body() && part.has_shares()));
    for (at, part) in parts.iter().enumerate() {
        look_at(part, &mut reading, &mut errors);
        match shares::read(part, &mut reading.notes) {
            Ok(Some(section)) if Some(at) == body => reading.body = section,
            Ok(section) => reading.parts.extend(section),
            Err(error) => errors.push(error),
        }
    }
    if reading.body.shares.is_empty() && errors.is_empty() {
        errors.push(FieldError::new("label", text, Problem::NotUnderstood));
    }
    if errors.is_empty() { Ok(reading) } else { Err(errors) }
}

/// Divides a label into its parts: `shell: 100% nylon; lining: 100% polyester`,
/// `100% nylon shell, 100% polyester lining`, `body 100% cotton rib 95% cotton 5% elastane`.
fn divide(items: Vec<LabelItem>, notes: &mut Vec<LabelNote>) -> Vec<LabelPart> {
    let mut parts = vec![LabelPart::default()];
    let mut excluded: Option<Vec<String>> = None;
    let mut items = items.into_iter().peekable();
    let mut after_fibre = false;
    while let Some(item) = items.next() {
        let next = items.peek().map(|next| &next.what);
        if let Some(words) = &mut excluded {
            match item.what {
                ItemKind::Break { strong: true } => {
                    notes.push(LabelNote::Excludes { text: words.join(" ") });
                    excluded = None;
                }
                ItemKind::Break { .. } | ItemKind::Colon => {}
                _ => words.push(item.text),
            }
            continue;
        }
        let colon = next == Some(&ItemKind::Colon);
        let has_fibres = parts.last().is_some_and(LabelPart::has_fibres);
        let share_follows =
            matches!(next, Some(ItemKind::Number { .. } | ItemKind::Known(Meaning::Fibre(_) | Meaning::All)));
        let signed = matches!(next, Some(ItemKind::Number { percent: true, .. }));
        let ends = matches!(next, None | Some(ItemKind::Break { .. }));
        let name = match item.what {
            ItemKind::Known(Meaning::Except) => {
                excluded = Some(vec![item.text]);
                continue;
            }
            ItemKind::Known(Meaning::Section(name)) if after_fibre && ends => {
                // `100% nylon shell, …`: the word names the part before it.
                if let Some(part) = parts.last_mut() {
                    part.name = Some(name.into());
                }
                parts.push(LabelPart::default());
                after_fibre = false;
                continue;
            }
            ItemKind::Known(Meaning::Section(name)) if colon || share_follows => Some(name.to_owned()),
            ItemKind::Known(Meaning::Before(name)) if colon => Some(name.to_owned()),
            ItemKind::Known(Meaning::Construction(_)) if colon && has_fibres => {
                Some(item.text.to_lowercase())
            }
            ItemKind::Known(Meaning::Construction(_))
                if after_fibre && signed && parts.last().is_some_and(LabelPart::is_full) =>
            {
                Some(item.text.to_lowercase())
            }
            _ => None,
        };
        if let Some(name) = name {
            parts.push(LabelPart { name: Some(name), items: Vec::new() });
            after_fibre = false;
            continue;
        }
        after_fibre = matches!(item.what, ItemKind::Known(Meaning::Fibre(_) | Meaning::Loose(_)));
        if let Some(part) = parts.last_mut() {
            part.items.push(item);
        }
    }
    notes.extend(excluded.map(|words| LabelNote::Excludes { text: words.join(" ") }));
    parts
}

/// Takes weight, colour and look from a part, and the construction if the part may be the body; the first
/// of each counts.
fn look_at(part: &LabelPart, reading: &mut LabelReading, errors: &mut Vec<FieldError>) {
    for item in &part.items {
        match item.what {
            ItemKind::Weight(weight) if reading.areal_weight_gsm.is_none() => {
                match AREAL_WEIGHT.check(weight) {
                    Ok(weight) => reading.areal_weight_gsm = Some(weight),
                    Err(error) => errors.push(error),
                }
            }
            ItemKind::Known(Meaning::Construction(construction)) if part.may_be_body() => {
                reading.construction.get_or_insert(construction);
            }
            ItemKind::Colour(colour) => {
                reading.colour.get_or_insert_with(|| colour.name.clone());
                // `heather grey` is a colour and a look.
                if item.text.split(' ').any(|word| meaning(&fold(word), false) == Some(Meaning::Heather)) {
                    add(&mut reading.looks, ClothLook::Heather);
                }
            }
            ItemKind::Known(Meaning::Heather) => add(&mut reading.looks, ClothLook::Heather),
            ItemKind::Known(Meaning::Flat) => add(&mut reading.looks, ClothLook::Flat),
            ItemKind::Known(Meaning::Finish(finish)) => add(&mut reading.looks, finish),
            ItemKind::Known(Meaning::Sublimation) => add(&mut reading.looks, ClothLook::SublimationPrinted),
            _ => {}
        }
    }
}

fn add(looks: &mut Vec<ClothLook>, look: ClothLook) {
    if !looks.contains(&look) {
        looks.push(look);
    }
}
