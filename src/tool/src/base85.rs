//! Bytes as letters, five for four bytes: a sixteenth shorter than base64.
//!
//! The four bytes are read as one number, most significant first, and written to the base 85. At the end `n` bytes
//! become `n + 1` letters. `www/boot.js` reads them back.

/// The letters that mean something to HTML or to a script, and so never stand for a digit.
const LEFT_OUT: &[u8] = b"\"&'-/<>\\`";

/// The 85 digits: the printable letters of ASCII in their order, without those left out and without the space.
#[must_use]
pub fn digits() -> Vec<u8> {
    (b'!'..=b'~').filter(|letter| !LEFT_OUT.contains(letter)).collect()
}

/// Writes bytes with the page's digits.
#[must_use]
pub fn encode(bytes: &[u8]) -> String {
    encode_with(&digits(), bytes)
}

fn encode_with(digits: &[u8], bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(4) * 5);
    for group in bytes.chunks(4) {
        let mut number =
            (0..4).fold(0_u32, |sum, place| sum << 8 | u32::from(*group.get(place).unwrap_or(&0)));
        let mut letters = [0_u8; 5];
        for letter in letters.iter_mut().rev() {
            *letter = digits.get((number % 85) as usize).copied().unwrap_or_default();
            number /= 85;
        }
        text.extend(letters.iter().take(group.len() + 1).map(|letter| char::from(*letter)));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: ZeroMQ RFC 32, "Z85", its test case and its digits; ours are other letters for the same numbers.
    #[test]
    fn numbers_are_written_as_the_published_code_writes_them() {
        let z85 = b"0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.-:+=^!/*?&<>()[]{}@%$#";
        let bytes = [0x86, 0x4f, 0xd2, 0x6f, 0xb5, 0x59, 0xf7, 0x5b];
        assert_eq!(encode_with(z85, &bytes), "HelloWorld");
    }

    #[test]
    fn there_are_85_digits_and_none_can_end_a_script() {
        assert_eq!(digits().len(), 85);
        assert!(!digits().contains(&b'<'));
    }

    #[test]
    fn a_rest_takes_one_letter_more_than_it_has_bytes() {
        for (bytes, letters) in [(0, 0), (1, 2), (2, 3), (3, 4), (4, 5), (5, 7)] {
            assert_eq!(encode(&vec![255; bytes]).len(), letters, "{bytes} bytes");
        }
    }
}
