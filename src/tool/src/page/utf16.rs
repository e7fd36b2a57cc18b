//! Bytes as letters of UTF-16, two bytes a letter: base64 would need a third more, and a shop's stick and wireless carry
//! the difference.
//!
//! The page is written in UTF-16 behind a byte order mark, which tells a browser so whatever a server says (Encoding
//! standard, "BOM sniff"). Nearly every unit of 16 bits may then stand in a block that never runs. Not so NUL, a carriage
//! return and `<`, which HTML changes or sees markup in (HTML standard, "script data state" and "normalize newlines"),
//! and surrogates, which must come in pairs: each of these is written as [`ESCAPE`] and itself with the highest bit
//! flipped, which makes 3 % of what is packed a letter longer. The first letter says whether the last byte is a filler.
//! `www/boot.js` reads them back.

/// Says that the next letter stands for one that must not stand here.
pub const ESCAPE: u16 = 0xe000;

/// The bit that makes such a letter harmless.
const FLIP: u16 = 0x8000;

/// Whether a unit must not stand as it is.
fn escapes(unit: u16) -> bool {
    matches!(unit, 0 | 0x0d | 0x3c | 0xd800..=0xdfff | ESCAPE)
}

/// Writes bytes as letters of the page.
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

/// A page as the bytes of its file: UTF-16, the lower byte first, behind its mark.
#[must_use]
pub fn file(page: &str) -> Vec<u8> {
    std::iter::once(0xfeff).chain(page.encode_utf16()).flat_map(u16::to_le_bytes).collect()
}

/// The text of a file that [`file`] wrote, or of one in UTF-8; nothing for another.
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

    /// Reads letters as `www/boot.js` does.
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
