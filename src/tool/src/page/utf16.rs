//! Bytes as UTF-16 text, two bytes in each unit of 16 bits. Base64 would be a third longer.
//!
//! The page is written in UTF-16 behind a byte order mark, by which a browser reads it as UTF-16 whatever a server says
//! (Encoding standard, "BOM sniff"). Nearly every unit may then be part of a script block that never runs. The exceptions are
//! NUL, carriage return and `<`, which HTML changes or takes for markup (HTML standard, "script data state" and "normalize
//! newlines"), and surrogates, which must come in pairs. Each of these is written as [`ESCAPE`] followed by the unit with its
//! highest bit flipped: 3 % of packed units become two. The first character says whether the last byte is padding.
//! `www/boot.js` reads the text back.
//!
//! **Decision:** the one file is UTF-16 behind a byte order mark.
//! **Because:** two packed bytes take one letter, and the mark outranks whatever encoding a server declares.
//! **Measured:** a seventh shorter than the same page in UTF-8 (by 2026-11-25; sizes, not times).
//! **Reconsider when:** browsers unpack binary parts of a local file by themselves.

/// Marks that the next unit has its highest bit flipped.
pub const ESCAPE: u16 = 0xe000;

/// That bit: flipped, no excepted unit is excepted.
const FLIP: u16 = 0x8000;

/// Whether a unit must be escaped.
fn escapes(unit: u16) -> bool {
    matches!(unit, 0 | 0x0d | 0x3c | 0xd800..=0xdfff | ESCAPE)
}

/// Writes bytes as text of the page.
#[must_use]
pub fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 2);
    text.push(if bytes.len() % 2 == 1 { '1' } else { '0' });
    let letter = |unit: u16| char::from_u32(u32::from(unit)).unwrap_or_default();
    for pair in bytes.chunks(2) {
        let unit = u16::from_le_bytes([pair[0], pair.get(1).copied().unwrap_or_default()]);
        if escapes(unit) {
            text.push(letter(ESCAPE));
            text.push(letter(unit ^ FLIP));
        } else {
            text.push(letter(unit));
        }
    }
    text
}

/// A page as the bytes of its file: UTF-16, little-endian, behind its byte order mark.
#[must_use]
pub fn file(page: &str) -> Vec<u8> {
    std::iter::once(0xfeff).chain(page.encode_utf16()).flat_map(u16::to_le_bytes).collect()
}

/// The text of a file that [`file`] wrote, or of a file in UTF-8; nothing for any other.
#[must_use]
pub fn text(file: &[u8]) -> Option<String> {
    match file {
        [0xff, 0xfe, rest @ ..] => {
            let units: Vec<u16> =
                rest.chunks_exact(2).map(|pair| u16::from_le_bytes([pair[0], pair[1]])).collect();
            String::from_utf16(&units).ok()
        }
        _ => String::from_utf8(file.to_vec()).ok(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reads the text back as `www/boot.js` does.
    fn decode(text: &str) -> Vec<u8> {
        let mut units = text.encode_utf16();
        let odd = units.next() == Some(u16::from(b'1'));
        let mut bytes = Vec::new();
        while let Some(unit) = units.next() {
            let unit = if unit == ESCAPE { units.next().unwrap_or_default() ^ FLIP } else { unit };
            bytes.extend(unit.to_le_bytes());
        }
        bytes.truncate(bytes.len() - usize::from(odd));
        bytes
    }

    #[test]
    fn every_pair_of_bytes_comes_back() {
        let all: Vec<u8> = (0..=u16::MAX).flat_map(u16::to_le_bytes).collect();
        assert_eq!(decode(&encode(&all)), all);
        for length in 0..40_u8 {
            let bytes: Vec<u8> = (0..length).map(|place| place.wrapping_mul(37)).collect();
            assert_eq!(decode(&encode(&bytes)), bytes, "{length} bytes");
        }
    }

    #[test]
    fn no_letter_is_markup_half_a_pair_or_an_end_of_line() {
        let all: Vec<u8> = (0..=u16::MAX).flat_map(u16::to_le_bytes).collect();
        assert!(!encode(&all).chars().any(|letter| matches!(letter, '\0' | '\r' | '<')));
        assert!(encode(&all).encode_utf16().all(|unit| !(0xd800..=0xdfff).contains(&unit)));
    }

    #[test]
    fn a_page_comes_back_from_its_file() {
        let page = format!("<p>señal</p>{}", encode(&[0, 1, 2, 255, 216]));
        assert_eq!(file(&page)[..2], [0xff, 0xfe]);
        assert_eq!(text(&file(&page)), Some(page));
        assert_eq!(text("<p>señal".as_bytes()).as_deref(), Some("<p>señal"));
        assert_eq!(text(&[0xff, 0xfe, 0, 0xd8]), None);
    }
}
