//! A text as a square code (QR, ISO/IEC 18004), and the text in a picture of one.
//!
//! Written by the crate `qrcodegen` and read by the crate `quircs`, which have different authors, so that
//! one checks the other. Pictures are grey pixels, row by row.
//!
//! **Decision:** the two crates `qrcodegen` and `quircs`; `rqrr` only in the tests, where it checks ours.
//! **Because:** the tables of a finite field in `rqrr` do not pack.
//! **Measured:** 12 kB together in the packed page, `rqrr` would be 90 kB (by 2026-11-25).
//! **Reconsider when:** one of them is no longer maintained, or `rqrr` computes its tables.

use super::SheetCodeError;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write;

/// Largest version that is printed: 25 has 117 modules along a side. At 40 mm each is 0.34 mm wide, which
/// a tablet's camera can resolve from some 10 cm: assumed.
const MOST: u8 = 25;

/// A QR symbol as light and dark modules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QrSymbol {
    side: usize,
    dark: Vec<bool>,
}

impl QrSymbol {
    /// The symbol of a text; `None` if the text is too long to be printed legibly. A seventh of the
    /// symbol may be lost (level M), or less (level L) if the text would not fit otherwise.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        let segments = [QrSegment::make_bytes(text.as_bytes())];
        let code = [QrCodeEcc::Medium, QrCodeEcc::Low].into_iter().find_map(|care| {
            QrCode::encode_segments_advanced(&segments, care, Version::MIN, Version::new(MOST), None, true)
                .ok()
        })?;
        let side = code.size();
        let dark = (0..side).flat_map(|y| (0..side).map(move |x| (x, y)));
        Some(Self {
            side: usize::try_from(side).unwrap_or_default(),
            dark: dark.map(|(x, y)| code.get_module(x, y)).collect(),
        })
    }

    /// Modules along a side.
    #[must_use]
    pub fn side(&self) -> usize {
        self.side
    }

    /// Whether a module is dark; false outside.
    #[must_use]
    pub fn dark(&self, x: usize, y: usize) -> bool {
        x < self.side && y < self.side && self.dark.get(y * self.side + x).copied().unwrap_or(false)
    }

    /// The dark modules as one SVG path of horizontal runs, one unit per module.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.side {
            let mut x = 0;
            while x < self.side {
                let run = (x..self.side).take_while(|&at| self.dark(at, y)).count();
                if run > 0 {
                    let _ = write!(path, "M{x} {y}h{run}v1h-{run}z");
                }
                x += run + 1;
            }
        }
        path
    }
}

/// The text of the first code that can be read in a picture of grey pixels, 0 black.
///
/// # Errors
/// [`SheetCodeError::NoCode`] if no symbol is found, [`SheetCodeError::Damaged`] if one is found but
/// cannot be decoded, [`SheetCodeError::NotOurs`] if it does not hold text.
pub fn text_in(width: usize, height: usize, grey: &[u8]) -> Result<String, SheetCodeError> {
    // A code has 21 modules at least.
    if width < 21 || height < 21 || grey.len() < width * height {
        return Err(SheetCodeError::NoCode);
    }
    let mut unread = SheetCodeError::NoCode;
    let mut reader = quircs::Quirc::new();
    for code in reader.identify(width, height, grey.get(..width * height).unwrap_or_default()) {
        match code.map_err(|_| ()).and_then(|code| code.decode().map_err(|_| ())) {
            Ok(data) => return String::from_utf8(data.payload).map_err(|_| SheetCodeError::NotOurs),
            Err(()) => unread = SheetCodeError::Damaged,
        }
    }
    Err(unread)
}
