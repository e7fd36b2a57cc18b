use super::{MeterError, MeterProblem};

/// A field of a line and the column of its first letter, from 1.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct MeterField {
    pub text: String,
    pub column: usize,
}

/// What parts the fields of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Separator {
    /// Any run of blanks and tabs; `#` begins a comment, as in CGATS.17.
    Blanks,
    /// One such letter each; two in a row leave an empty field.
    By(char),
}

/// The fields of a line. A text in double quotes is one field, with a doubled quote for a quote.
///
/// # Errors
/// [`MeterProblem::OpenQuote`].
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
        // A parting letter at the very end leaves one more, empty field.
        if let (Separator::By(_), Some((_, at))) = (parted, letters.next())
            && letters.peek().is_none()
        {
            fields.push(MeterField { text: String::new(), column: at + 1 });
        }
    }
    Ok(fields)
}
