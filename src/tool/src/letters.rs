//! Bytes as letters, seven for six bytes: base64 would need eight, and a shop's stick and wireless carry the difference.
//!
//! Six bytes are read as one number, most significant first, and written to the base 116. At the end `n` bytes become
//! `n + 1` letters. `www/boot.js` reads them back.
//!
//! Most control characters are digits too. A block that never runs may hold them: HTML keeps every character of it but
//! NUL and the two ends of line (HTML standard, "script data state" and "normalize newlines"), and each takes one byte.

/// The letters that never stand for a digit: HTML changes the first four or sees markup in them, and old systems take
/// the others of the control characters for an end of file, an escape or white space.
const LEFT_OUT: &[u8] = b"\0\r\n<&>\t\x0b\x0c\x1a\x1b\x7f";

/// The 116 digits: the letters of ASCII in their order, without those left out.
#[must_use]
pub fn digits() -> Vec<u8> {
    (0..=0x7f).filter(|letter| !LEFT_OUT.contains(letter)).collect()
}

/// Writes bytes with the page's digits.
#[must_use]
pub fn encode(bytes: &[u8]) -> String {
    let digits = digits();
    let mut text = String::with_capacity(bytes.len().div_ceil(6) * 7);
    for group in bytes.chunks(6) {
        // 256^6 < 116^7 < 2^53: the page reads it back in the numbers that JavaScript has.
        let mut number =
            (0..6).fold(0_u64, |sum, place| sum << 8 | u64::from(*group.get(place).unwrap_or(&0)));
        let mut letters = [0_u8; 7];
        for letter in letters.iter_mut().rev() {
            *letter = digits.get((number % 116) as usize).copied().unwrap_or_default();
            number /= 116;
        }
        text.extend(letters.iter().take(group.len() + 1).map(|letter| char::from(*letter)));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reads letters as `www/boot.js` does: what was cut off the end stands for the highest digit.
    fn decode(text: &str) -> Vec<u8> {
        let digits = digits();
        let value = |letter: Option<&u8>| match letter {
            Some(letter) => digits.iter().position(|digit| digit == letter).unwrap_or(0) as u64,
            None => 115,
        };
        let mut bytes = Vec::new();
        for group in text.as_bytes().chunks(7) {
            let number = (0..7).fold(0_u64, |sum, place| sum * 116 + value(group.get(place)));
            bytes.extend(number.to_be_bytes().iter().skip(2).take(group.len() - 1));
        }
        bytes
    }

    #[test]
    fn bytes_come_back() {
        for length in 0..40 {
            for step in [0_usize, 1, 37, 101, 255] {
                let bytes: Vec<u8> = (0..length).map(|place| (255 - place * step % 256) as u8).collect();
                assert_eq!(decode(&encode(&bytes)), bytes, "{length} bytes, step {step}");
            }
        }
    }

    #[test]
    fn there_are_116_digits_and_none_is_markup_or_an_end_of_line() {
        assert_eq!(digits().len(), 116);
        for letter in b"\0\r\n<&" {
            assert!(!digits().contains(letter), "{letter}");
        }
    }

    #[test]
    fn a_rest_takes_one_letter_more_than_it_has_bytes() {
        for (bytes, letters) in [(0, 0), (1, 2), (2, 3), (5, 6), (6, 7), (7, 9)] {
            assert_eq!(encode(&vec![255; bytes]).len(), letters, "{bytes} bytes");
        }
    }
}
