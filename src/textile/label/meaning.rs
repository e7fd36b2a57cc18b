//! The meanings of words on a label.

use super::ClothLook;
use super::words::WORDS;
use crate::textile::{Construction, Fibre};

/// What a word or phrase of a label means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Meaning {
    /// A fibre by its generic name or a true synonym.
    Fibre(Fibre),
    /// A fibre code, which counts only in capitals and beside a number.
    Code(Fibre),
    /// A word for one of several fibres, the likeliest first.
    Loose(&'static [Fibre]),
    /// Several fibres in one word, in this order.
    Blend(&'static [Fibre]),
    /// A word that means certain shares.
    Shares(&'static [(Fibre, f64)]),
    /// `other fibres`
    Other,
    /// `the rest`: what is missing from 100.
    Rest,
    /// `all`, `pure`: 100 % if a fibre follows.
    All,
    /// How the cloth is made.
    Construction(Construction),
    /// A part of the garment, with its name in English; the body's name is empty.
    Section(&'static str),
    /// A word that names a part only before a colon.
    Before(&'static str),
    /// `exclusive of`, `except`
    Except,
    /// Heather.
    Heather,
    /// Printed by sublimation.
    Sublimation,
    /// A piece of one layer.
    Flat,
    /// A finish.
    Finish(ClothLook),
    /// Understood and without effect, but reported.
    Dropped,
    /// Without meaning.
    Noise,
}

/// Largest number of words in a phrase of [`WORDS`] or in a colour's name.
pub(super) const LONGEST_PHRASE: usize = 3;

/// The meaning of a folded word or phrase; fibre codes are recognised only in capitals.
pub(super) fn meaning(phrase: &str, capitals: bool) -> Option<Meaning> {
    WORDS
        .iter()
        .filter(|(meaning, _)| capitals || !matches!(meaning, Meaning::Code(_)))
        .find(|(_, words)| words.contains(&phrase))
        .map(|&(meaning, _)| meaning)
}

/// The fibre names that a misspelt word may have meant.
pub(super) fn fibre_words() -> impl Iterator<Item = &'static str> {
    WORDS
        .iter()
        .filter(|(meaning, _)| matches!(meaning, Meaning::Fibre(_)))
        .flat_map(|(_, words)| words.iter().copied())
        .filter(|word| !word.contains(' ') && word.len() > 3)
}
