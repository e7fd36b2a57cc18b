//! Words as people type them: one form for all spellings, and the nearest known word.
//!
//! The distance between two words is the optimal string alignment of the crate `strsim`: the smallest number of
//! single-letter changes, where swapping two neighbouring letters counts as one.
//!
//! **Decision:** the letters of English and Spanish are folded here and not by a crate such as `deunicode`.
//! **Because:** labels are written in these two languages, and its table of all scripts would be the largest part
//! of the page.
//! **Measured:** 450 kB in memory, 160 kB packed by its own account (2026-11-30); these lines are under 1 kB.
//! **Reconsider when:** labels of a third language are read.

use crate::numerics::sorting::sorted;
use strsim::osa_distance;

/// One form for all spellings of a word: lower case, no accents, hyphens and runs of space as one space,
/// `²` as 2.
///
/// Covers the letters of English and Spanish; other scripts keep their letters.
#[must_use]
pub fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        match letter {
            'á' | 'à' | 'â' | 'ä' | 'ã' => folded.push('a'),
            'é' | 'è' | 'ê' | 'ë' => folded.push('e'),
            'í' | 'ì' | 'î' | 'ï' => folded.push('i'),
            'ó' | 'ò' | 'ô' | 'ö' | 'õ' => folded.push('o'),
            'ú' | 'ù' | 'û' | 'ü' => folded.push('u'),
            'ñ' => folded.push('n'),
            'ç' => folded.push('c'),
            '²' => folded.push('2'),
            '\u{300}'..='\u{36f}' => {}
            '-' | '_' | '\u{2010}' | '\u{2011}' => folded.push(' '),
            _ if letter.is_whitespace() => folded.push(' '),
            _ => folded.push(letter),
        }
    }
    folded.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The known words whose distance is at most a third of the letters (or two), the nearest first, at most
/// three.
#[must_use]
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let word = fold(word);
    let reach = (word.chars().count() / 3).max(2);
    let found: Vec<(usize, &str)> = known
        .into_iter()
        .map(|name| (osa_distance(&word, &fold(name)), name))
        .filter(|&(changes, name)| changes <= reach && changes < name.chars().count())
        .collect();
    let mut found = sorted(found, &|a, b| a.0.cmp(&b.0));
    found.dedup_by_key(|&mut (_, name)| name);
    found.into_iter().take(3).map(|(_, name)| name).collect()
}
