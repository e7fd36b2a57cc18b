//! Splits the text of a label into numbers, words and significant marks.

use crate::textile::spelling::fold;

/// A piece of a label.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct LabelToken {
    /// Its text on the label.
    pub text: String,
    /// What it is.
    pub kind: TokenKind,
}

/// What a piece of a label is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum TokenKind {
    /// A number, and whether a percent sign is beside it.
    Number { value: f64, percent: bool },
    /// A word, folded.
    Word(String),
    /// `/` or `^`, parts of a unit.
    Unit(char),
    /// `:`
    Colon,
    /// `,` `;` a line end and the like; `strong` if it separates parts of the garment.
    Break { strong: bool },
}

/// Splits the text. Accepts decimal commas and units and signs without a space (`97,5%algodón`,
/// `150g/m²`, `%50`).
pub(super) fn cut(text: &str) -> Vec<LabelToken> {
    let mut tokens: Vec<LabelToken> = Vec::new();
    let mut letters = text.chars().peekable();
    let mut before = ' ';
    let mut percent_ahead = false;
    while let Some(letter) = letters.next() {
        let next = letters.peek().copied();
        let negative = matches!(letter, '-' | '−')
            && before.is_whitespace()
            && next.is_some_and(|digit| digit.is_ascii_digit());
        if letter.is_ascii_digit() || negative {
            let mut number = String::from(if negative { '-' } else { letter });
            let mut pointed = false;
            while let Some(&digit) = letters.peek() {
                let point = matches!(digit, '.' | ',') && !pointed && {
                    let mut ahead = letters.clone();
                    ahead.next();
                    ahead.next().is_some_and(|after| after.is_ascii_digit())
                };
                if !digit.is_ascii_digit() && !point {
                    break;
                }
                pointed |= point;
                number.push(digit);
                letters.next();
            }
            let value = number.replace(',', ".").parse().unwrap_or(f64::NAN);
            let kind = TokenKind::Number { value, percent: std::mem::take(&mut percent_ahead) };
            before = number.chars().next_back().unwrap_or(letter);
            tokens.push(LabelToken { text: number, kind });
            continue;
        }
        if letter.is_alphanumeric() {
            let mut word = String::from(letter);
            while let Some(&more) = letters.peek() {
                // `m2` is one word, `cotton40` is a word and a number.
                let squares = matches!(more, '2' | '²') && {
                    let mut ahead = letters.clone();
                    ahead.next();
                    !ahead.next().is_some_and(char::is_alphanumeric)
                };
                if !squares && !more.is_alphabetic() && !matches!(more, '\u{300}'..='\u{36f}' | '\'' | '’')
                {
                    break;
                }
                word.push(more);
                letters.next();
            }
            before = 'a';
            let folded = fold(&word);
            match folded.as_str() {
                "percent" | "pct" | "porcentaje" => sign(&mut tokens, &mut percent_ahead),
                "ciento" if tokens.last().is_some_and(|last| last.kind == TokenKind::Word("por".into())) => {
                    tokens.pop();
                    sign(&mut tokens, &mut percent_ahead);
                }
                _ => tokens.push(LabelToken { text: word, kind: TokenKind::Word(folded) }),
            }
            continue;
        }
        let kind = match letter {
            '%' | '％' | '٪' => {
                sign(&mut tokens, &mut percent_ahead);
                None
            }
            '/' | '^' => Some(TokenKind::Unit(letter)),
            ':' => Some(TokenKind::Colon),
            ';' | '\n' | '\r' | '|' | '•' => Some(TokenKind::Break { strong: true }),
            ',' | '.' | '(' | ')' | '[' | ']' | '·' | '+' | '&' => Some(TokenKind::Break { strong: false }),
            _ => None,
        };
        if let Some(kind) = kind {
            tokens.push(LabelToken { text: letter.into(), kind });
        }
        before = letter;
    }
    tokens
}

/// Assigns a percent sign to the number before it, or else to the next one.
fn sign(tokens: &mut [LabelToken], ahead: &mut bool) {
    match tokens.last_mut() {
        Some(LabelToken { kind: TokenKind::Number { percent, .. }, .. }) if !*percent => *percent = true,
        _ => *ahead = true,
    }
}
