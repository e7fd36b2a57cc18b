//! Bytes as UTF-16 text, two bytes in each unit of 16 bits. Base64 would be a third longer.
//!
//! The page is written in UTF-16 behind a byte order mark, by which a browser reads it as UTF-16 whatever a server says
//! (Encoding standard, "BOM sniff"). Nearly every unit may then be part of a script block that never runs. The exceptions are
//! NUL, carriage return and `<`, which HTML changes or takes for markup (HTML standard, "script data state" and "normalize
//! newlines"), and surrogates, which must come in pairs: 3 % of packed units. So units are written in blocks of [`BLOCK`], each
//! masked by numbers that follow from a key, and the key, which stands before the block, is one that leaves no exception in it.
//! One key in three thousand does. The first character says whether the last byte is padding. `www/boot.js` reads the text
//! back.
//!
//! **Decision:** the one file is UTF-16 behind a byte order mark.
//! **Because:** two packed bytes take one letter, and the mark outranks whatever encoding a server declares.
//! **Measured:** a seventh shorter than the same page in UTF-8 (by 2026-11-25); 24 kB shorter with a key for each block than
//! with an escape before each exception (2026-12-01).
//! **Reconsider when:** browsers unpack binary parts of a local file by themselves.

use anyhow::{Context, Result};

/// Units that share a key. With twice as many, no key in 65,536 would leave most blocks without an exception.
const BLOCK: usize = 256;

/// Whether a unit may not be written.
fn excepted(unit: u16) -> bool {
    matches!(unit, 0 | 0x0d | 0x3c | 0xd800..=0xdfff)
}

/// What the unit at a place of its block is masked with: the upper half of a product, which spreads both over all 16 bits.
fn mask(key: u16, place: usize) -> u16 {
    let spread = (u32::from(key) + 0x1_0000 * place as u32 + 1).wrapping_mul(0x9e37_79b1);
    ((spread ^ (spread >> 15)).wrapping_mul(0x85eb_ca6b) >> 16) as u16
}

/// Writes bytes as text of the page.
///
/// # Errors
/// [`anyhow::Error`] if some block has no key: once in a thousand million.
pub fn encode(bytes: &[u8]) -> Result<String> {
    let mut text = String::with_capacity(bytes.len() * 2);
    text.push(if bytes.len() % 2 == 1 { '1' } else { '0' });
    let letter = |unit: u16| char::from_u32(u32::from(unit)).unwrap_or_default();
    for block in bytes.chunks(2 * BLOCK) {
        let units: Vec<u16> = block
            .chunks(2)
            .map(|pair| u16::from_le_bytes([pair[0], pair.get(1).copied().unwrap_or_default()]))
            .collect();
        let masked = |key: u16| units.iter().enumerate().map(move |(place, unit)| unit ^ mask(key, place));
        let key = (1..=u16::MAX)
            .find(|&key| !excepted(key) && !masked(key).any(excepted))
            .context("a block of the page has no key that masks it; next thing to try: a smaller BLOCK")?;
        text.push(letter(key));
        text.extend(masked(key).map(letter));
    }
    Ok(text)
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
        let units: Vec<u16> = text.encode_utf16().collect();
        let mut bytes = Vec::new();
        for block in units[1..].chunks(BLOCK + 1) {
            let unmasked = block[1..].iter().enumerate().map(|(place, unit)| unit ^ mask(block[0], place));
            bytes.extend(unmasked.flat_map(u16::to_le_bytes));
        }
        bytes.truncate(bytes.len() - usize::from(units[0] == u16::from(b'1')));
        bytes
    }

    /// Every pair of bytes, in their order and in one that mixes them, and runs of one pair.
    fn samples() -> Vec<Vec<u8>> {
        let mixed = |unit: u16| unit.wrapping_mul(40_503).to_le_bytes();
        vec![
            (0..=u16::MAX).flat_map(u16::to_le_bytes).collect(),
            (0..=u16::MAX).flat_map(mixed).collect(),
            vec![0; 5000],
            vec![0xd8; 5000],
        ]
    }

    #[test]
    fn every_pair_of_bytes_comes_back() -> Result<()> {
        for all in samples() {
            assert_eq!(decode(&encode(&all)?), all);
        }
        for length in 0..40_u8 {
            let bytes: Vec<u8> = (0..length).map(|place| place.wrapping_mul(37)).collect();
            assert_eq!(decode(&encode(&bytes)?), bytes, "{length} bytes");
        }
        Ok(())
    }

    #[test]
    fn no_letter_is_markup_half_a_pair_or_an_end_of_line() -> Result<()> {
        for all in samples() {
            let text = encode(&all)?;
            assert!(!text.chars().any(|letter| matches!(letter, '\0' | '\r' | '<')));
            assert!(text.encode_utf16().all(|unit| !(0xd800..=0xdfff).contains(&unit)));
            assert!(text.len() > all.len() / 2);
        }
        Ok(())
    }

    #[test]
    fn a_page_comes_back_from_its_file() -> Result<()> {
        let page = format!("<p>señal</p>{}", encode(&[0, 1, 2, 255, 216])?);
        assert_eq!(file(&page)[..2], [0xff, 0xfe]);
        assert_eq!(text(&file(&page)), Some(page));
        assert_eq!(text("<p>señal".as_bytes()).as_deref(), Some("<p>señal"));
        assert_eq!(text(&[0xff, 0xfe, 0, 0xd8]), None);
        Ok(())
    }
}
