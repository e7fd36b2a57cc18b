//! The cut through the film: fibres, film, dots for dye, a line for how much of it shows at each depth.

use super::scale::path;
use crate::plan::{BleedForecast, Cut};
use std::fmt::Write;

/// Width of the view box of one cut.
pub const WIDTH: f64 = 132.0;
/// Height of that view box: film and the fibres under it.
pub const HEIGHT: f64 = 280.0;
/// Height of the film in it.
pub const FILM: f64 = 208.0;
/// Depth that the eye judges a white by, µm.
const VISIBLE_UM: f64 = crate::migration::VISIBLE_DEPTH * 1e6;
/// Dots for a film that is filled to what can just be seen, 0.03 kg/m³. Chosen for the picture.
const DOTS_AT_VISIBLE: f64 = 100.0;
/// Most dots of a film: where one would have more, the dots of all films are scaled down alike.
const MOST_DOTS: f64 = 300.0;
/// Dye at which a white just shows it, kg/m³.
const VISIBLE_DYE: f64 = 0.03;

/// One cut, in its view box.
#[derive(Clone, Debug, PartialEq)]
pub struct FilmSection {
    /// Days after printing.
    pub day: f64,
    /// Dots of dye that shows, as strokes of zero length.
    pub free: String,
    /// Dots of dye that white or blocker holds.
    pub bound: String,
    /// How much shows at each depth.
    pub line: String,
}

/// Every cut of a forecast on one scale.
#[derive(Clone, Debug, PartialEq)]
pub struct FilmSections {
    /// Fresh first; three at most.
    pub cuts: Vec<FilmSection>,
    /// Depth that the eye judges by, from the top.
    pub eye: f64,
    /// Top of the blocker, from the top; `None` without one.
    pub blocker: Option<f64>,
}

/// The cuts of a forecast; `None` for a film without thickness.
#[must_use]
pub fn film_sections(forecast: &BleedForecast) -> Option<FilmSections> {
    let film = forecast.film_um;
    if film.is_nan() || film <= 0.0 {
        return None;
    }
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len().max(1) as f64;
    let fullest = forecast
        .cuts
        .iter()
        .map(|cut| mean(&cut.free_kg_per_m3) + mean(&cut.bound_kg_per_m3))
        .fold(VISIBLE_DYE, f64::max);
    let dots = (DOTS_AT_VISIBLE / VISIBLE_DYE).min(MOST_DOTS / fullest);
    let most = forecast.cuts.iter().flat_map(|cut| &cut.free_kg_per_m3).fold(VISIBLE_DYE, |a, &b| a.max(b));
    // There is room for three: the first two, which differ most, and the last.
    let last = forecast.cuts.len().saturating_sub(1);
    let shown = forecast.cuts.iter().enumerate().filter(|(index, _)| *index < 2 || *index == last);
    Some(FilmSections {
        cuts: shown.map(|(_, cut)| section(cut, film, dots, most)).collect(),
        eye: (VISIBLE_UM / film).min(1.0) * FILM,
        blocker: (forecast.blocker_um > 0.0)
            .then(|| (1.0 - (forecast.blocker_um / film).clamp(0.0, 1.0)) * FILM),
    })
}

fn section(cut: &Cut, film: f64, dots: f64, most: f64) -> FilmSection {
    let up = |height: f64| FILM * (1.0 - height / film);
    let line = cut
        .height_um
        .iter()
        .zip(&cut.free_kg_per_m3)
        .map(|(&height, &free)| (8.0 + (WIDTH - 20.0) * (free / most).clamp(0.0, 1.0), up(height)));
    FilmSection {
        day: cut.day,
        free: dotted(&cut.height_um, &cut.free_kg_per_m3, film, dots, 0.5),
        bound: dotted(&cut.height_um, &cut.bound_kg_per_m3, film, dots, 0.25),
        line: path(line, false),
    }
}

/// Dots in proportion to the dye of each layer; the fraction of a dot is carried to the next layer. They are
/// scattered the same way every time.
fn dotted(heights: &[f64], dye: &[f64], film: f64, dots: f64, start: f64) -> String {
    let mut text = String::new();
    let (mut owed, mut count) = (start, 0.0_f64);
    for (index, (&height, &dye)) in heights.iter().zip(dye).enumerate() {
        let under = index.checked_sub(1).and_then(|it| heights.get(it)).copied();
        let over = heights.get(index + 1).copied();
        let low = under.map_or(0.0, |under| 0.5 * (under + height));
        let high = over.map_or(film, |over| 0.5 * (over + height));
        owed += (dye * dots * (high - low) / film).clamp(0.0, MOST_DOTS);
        while owed >= 1.0 {
            owed -= 1.0;
            count += 1.0;
            let up = low + (high - low) * scattered(2.0 * count + start);
            dot(
                &mut text,
                3.0 + scattered(2.0 * count + 1.0 + start) * (WIDTH - 6.0),
                FILM * (1.0 - up / film),
            );
        }
    }
    text
}

/// Middles of the fibres of three yarns under the film, as strokes of zero length.
#[must_use]
pub fn fibres() -> String {
    let mut text = String::new();
    for (x, y) in [(8.0, 230.0), (110.0, 226.0), (58.0, 268.0)] {
        for row in -4_i32..=4 {
            let in_row = 9 - row.abs();
            for place in 0..in_row {
                let along = 8.6 * (f64::from(place) - 0.5 * f64::from(in_row - 1));
                dot(&mut text, x + along, y + 7.4 * f64::from(row));
            }
        }
    }
    text
}

/// A number from 0 to 1 that looks random and is the same every time.
fn scattered(seed: f64) -> f64 {
    ((seed * 12.9898).sin() * 43_758.545_3).rem_euclid(1.0)
}

#[inline(never)]
fn dot(text: &mut String, x: f64, y: f64) {
    let _ = write!(text, "M{x:.1} {y:.1}h0");
}
