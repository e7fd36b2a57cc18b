//! Words as people type them: one form for all spellings, and the nearest known word.

use crate::numerics::sorting::sorted;

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

/// Smallest number of single-letter changes between two words; swapping two neighbouring letters counts
/// as one.
///
/// Source: optimal string alignment distance (Boytsov, ACM J. Exp. Algorithmics 16, 2011, section 2).
#[must_use]
pub fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let at = |row: &[usize], column: usize| row.get(column).copied().unwrap_or(usize::MAX / 2);
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=b.len()).collect();
    let mut last = None;
    for (row, letter) in a.chars().enumerate() {
        let mut here = vec![row + 1];
        let mut left = None;
        for (column, &other) in b.iter().enumerate() {
            let mut least = (at(&above, column) + usize::from(letter != other))
                .min(at(&above, column + 1) + 1)
                .min(at(&here, column) + 1);
            if last == Some(other) && left == Some(letter) && column > 0 {
                least = least.min(at(&before, column - 1) + 1);
            }
            here.push(least);
            left = Some(other);
        }
        last = Some(letter);
        before = std::mem::replace(&mut above, here);
    }
    at(&above, b.len())
}

/// The known words whose distance is at most a third of the letters (or two), the nearest first, at most
/// three.
#[must_use]
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let word = fold(word);
    let reach = (word.chars().count() / 3).max(2);
    let found: Vec<(usize, &str)> = known
        .into_iter()
        .map(|name| (distance(&word, &fold(name)), name))
        .filter(|&(changes, name)| changes <= reach && changes < name.chars().count())
        .collect();
    let mut found = sorted(found, &|a, b| a.0.cmp(&b.0));
    found.dedup_by_key(|&mut (_, name)| name);
    found.into_iter().take(3).map(|(_, name)| name).collect()
}
