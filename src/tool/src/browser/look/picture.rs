//! Pictures of the page, stored and compared.
//!
//! A picture is stored with a palette of at most 256 colours, so that it is small: the colours that fill most of it exactly, and
//! further ones so that none of its colours is far from the nearest. A new picture is compared with it pixel by pixel. Text and
//! slanted lines are smoothed a little differently from one computer to the next, so a pixel counts as changed only from
//! [`LEVEL`] on, and a picture as changed when more than [`SHARE`] of its pixels do.

use anyhow::{Context, Result, ensure};
use std::collections::HashMap;

/// A pixel counts as changed from this difference on, in any of its three channels, 0 to 255. Assumed: more than smoothing makes
/// at the edge of a letter, less than the difference of two colours with different meanings. More than [`FARTHEST`].
pub const LEVEL: u8 = 40;

/// The share of changed pixels that is accepted, 0 to 1. Assumed: one digit of the answer changes twice as much, and without a
/// change of the page no pixel changes.
pub const SHARE: f64 = 0.000_3;

/// How far a colour may be from the nearest of the palette, in levels. The first of these is used with which the palette is
/// small enough.
const FARTHEST: [u8; 6] = [2, 4, 8, 12, 18, 30];

/// The most colours of a palette: an index takes one byte.
const COLOURS: usize = 256;

/// A colour, red, green and blue.
type Rgb = [u8; 3];

/// A picture in memory, row by row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Pixels of a row.
    pub width: usize,
    /// Its pixels.
    pub pixels: Vec<Rgb>,
}

/// What two pictures differ by.
#[derive(Clone, Debug)]
pub struct Difference {
    /// The share of pixels that count as changed, of one.
    pub share: f64,
    /// The new picture, pale, with every changed pixel in red.
    pub seen: Picture,
}

impl Difference {
    /// Whether the new picture counts as changed.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.share > SHARE
    }
}

impl Picture {
    /// Reads a PNG.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is none, or of a kind that neither a browser nor [`png`](Self::png) writes.
    pub fn read(png: &[u8]) -> Result<Self> {
        let mut decoder = png::Decoder::new(std::io::Cursor::new(png));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info()?;
        let mut bytes = vec![0; reader.output_buffer_size().context("the picture is too large")?];
        let frame = reader.next_frame(&mut bytes)?;
        let samples = frame.color_type.samples();
        ensure!(samples >= 3, "the picture has no colours");
        let pixels = bytes[..frame.buffer_size()].chunks_exact(samples).map(|it| [it[0], it[1], it[2]]);
        Ok(Self { width: frame.width as usize, pixels: pixels.collect() })
    }

    /// The picture as a small PNG, in the colours of its own palette.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the picture is too large for one.
    pub fn png(&self) -> Result<Vec<u8>> {
        let mut palette = Palette::of(self);
        let indices: Vec<u8> = self.pixels.iter().map(|&pixel| palette.nearest(pixel)).collect();
        let height = self.pixels.len().checked_div(self.width).unwrap_or(0);
        let mut file = Vec::new();
        let mut encoder = png::Encoder::new(&mut file, u32::try_from(self.width)?, u32::try_from(height)?);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_depth(png::BitDepth::Eight);
        encoder.set_palette(palette.colours.concat());
        encoder.set_compression(png::Compression::High);
        encoder.set_filter(png::Filter::NoFilter);
        let mut writer = encoder.write_header()?;
        writer.write_image_data(&indices)?;
        writer.finish()?;
        Ok(file)
    }

    /// Compares a new picture with this stored one.
    ///
    /// # Errors
    /// [`anyhow::Error`] if they are not of one size.
    pub fn differs(&self, new: &Self) -> Result<Difference> {
        ensure!(
            self.width == new.width && self.pixels.len() == new.pixels.len(),
            "it was {} pixels wide and {} in all, and is {} wide and {} in all",
            self.width,
            self.pixels.len(),
            new.width,
            new.pixels.len()
        );
        let mut changed = 0_usize;
        let seen = self.pixels.iter().zip(&new.pixels).map(|(&kept, &new)| {
            if apart(new, kept) > LEVEL {
                changed += 1;
                [200, 0, 0]
            } else {
                new.map(|level| 192 + level / 4)
            }
        });
        let seen = Self { width: self.width, pixels: seen.collect() };
        let share = changed as f64 / seen.pixels.len().max(1) as f64;
        Ok(Difference { share, seen })
    }
}

/// How far two colours are apart: on the one of the three where it is most.
fn apart(one: Rgb, other: Rgb) -> u8 {
    one.iter().zip(other).map(|(a, b)| a.abs_diff(b)).max().unwrap_or(0)
}

/// The colours that fill most of a picture, and which of them is nearest to a colour.
struct Palette {
    colours: Vec<Rgb>,
    known: HashMap<Rgb, u8>,
}

impl Palette {
    fn of(picture: &Picture) -> Self {
        let mut counts: HashMap<Rgb, usize> = HashMap::new();
        for &pixel in &picture.pixels {
            *counts.entry(pixel).or_default() += 1;
        }
        let mut all: Vec<Rgb> = counts.keys().copied().collect();
        // Ties by the colour itself: the same picture has the same palette.
        all.sort_by_key(|colour| (std::cmp::Reverse(counts[colour]), *colour));
        let mut colours = Vec::new();
        for farthest in FARTHEST {
            colours = Vec::new();
            for &colour in &all {
                if colours.len() <= COLOURS && colours.iter().all(|&chosen| apart(chosen, colour) > farthest)
                {
                    colours.push(colour);
                }
            }
            if colours.len() <= COLOURS {
                break;
            }
        }
        colours.truncate(COLOURS);
        Self { colours, known: HashMap::new() }
    }

    fn nearest(&mut self, pixel: Rgb) -> u8 {
        *self.known.entry(pixel).or_insert_with(|| {
            let nearest = (0..=u8::MAX).zip(&self.colours).min_by_key(|&(_, &colour)| apart(colour, pixel));
            nearest.map_or(0, |(at, _)| at)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A page with more colours than a palette holds: a slow ramp on a white ground.
    fn page() -> Picture {
        let pixels = (0..200 * 100).map(|at: usize| {
            let (x, y) = (at % 200, at / 200);
            if y < 10 { [x as u8, y as u8 * 20, 128] } else { [250, 251, 250] }
        });
        Picture { width: 200, pixels: pixels.collect() }
    }

    /// Paints so many pixels of a row over.
    fn painted(count: usize, colour: Rgb) -> Picture {
        let mut picture = page();
        picture.pixels[50 * 200..50 * 200 + count].fill(colour);
        picture
    }

    #[test]
    fn a_picture_is_the_same_after_it_was_kept() -> Result<()> {
        let kept = Picture::read(&page().png()?)?;
        assert!(kept.differs(&page())?.share <= 0.0);
        // What fills much of it is kept as it is.
        assert_eq!(kept.pixels[50 * 200], [250, 251, 250]);
        let far = kept.pixels.iter().zip(page().pixels).map(|(&kept, page)| apart(kept, page)).max();
        assert!(far < Some(LEVEL / 2), "a colour is kept {far:?} levels off");
        Ok(())
    }

    #[test]
    fn a_changed_picture_is_another_one() -> Result<()> {
        let kept = Picture::read(&page().png()?)?;
        for (count, colour, counts) in [
            (5, [0, 0, 0], false),
            (7, [0, 0, 0], true),
            (200, [250, 251, 200], true),
            // Another smoothing of an edge.
            (200, [240, 240, 240], false),
        ] {
            let difference = kept.differs(&painted(count, colour))?;
            assert_eq!(difference.counts(), counts, "{count} pixels in {colour:?}: {}", difference.share);
            if counts {
                assert_eq!(difference.seen.pixels[50 * 200], [200, 0, 0], "the change is not marked");
            }
        }
        Ok(())
    }

    #[test]
    fn a_picture_of_another_size_is_refused() -> Result<()> {
        let turned = Picture { width: 100, ..page() };
        assert!(page().differs(&turned).is_err());
        assert!(Picture::read(b"no picture").is_err());
        Ok(())
    }
}
