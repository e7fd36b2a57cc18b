//! Splits a line into its fields.

use super::{MeterError, MeterProblem};

/// A field of a line and the column of its first letter, from 1.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct MeterField {
    pub text: String,
    pub column: usize,
}

/// What separates the fields of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Separator {
    /// Any run of blanks and tabs; `#` begins a comment, as in CGATS.17.
    Blanks,
    /// Single characters; two in a row enclose an empty field.
    By(char),
}

/// Splits a line into fields. A text in double quotes is one field, in which a doubled quote means a
/// quote.
///
/// # Errors
/// [`MeterProblem::OpenQuote`] if a quoted text does not end on its line.
pub(super) fn split(line: &str, number: usize, parted: Separator) -> Result<Vec<MeterField>, MeterError> {
    let mut fields = Vec::new();
    let mut letters = line.chars().zip(1..).peekable();
    while let Some(&(letter, column)) = letters.peek() {
        match parted {
            Separator::Blanks if letter.is_whitespace() => {
                letters.next();
                continue;
            }
            Separator::Blanks if letter == '#' => break,
            _ => {}
        }
        let ends = |letter: char| match parted {
            Separator::Blanks => letter.is_whitespace(),
            Separator::By(by) => letter == by,
        };
        let mut text = String::new();
        let mut quoted = false;
        while let Some(&(letter, _)) = letters.peek() {
            if ends(letter) && !quoted {
                break;
            }
            letters.next();
            match letter {
                '"' if quoted && letters.peek().is_some_and(|(next, _)| *next == '"') => {
                    letters.next();
                    text.push('"');
                }
                '"' if quoted || text.trim().is_empty() => quoted = !quoted,
                other => text.push(other),
            }
        }
        if quoted {
            return Err(MeterError::at(number, column, line, MeterProblem::OpenQuote));
        }
        let blank = text.chars().take_while(|letter| letter.is_whitespace()).count();
        fields.push(MeterField { text: text.trim().into(), column: column + blank });
        // A separator at the very end is followed by one more, empty field.
        if let (Separator::By(_), Some((_, at))) = (parted, letters.next())
            && letters.peek().is_none()
        {
            fields.push(MeterField { text: String::new(), column: at + 1 });
        }
    }
    Ok(fields)
}
