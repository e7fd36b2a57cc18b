//! Where the words of the window map stand: inside their region, clear of the set point and of each other.
//!
//! The map is sampled on a grid of points; a word goes where the points around it fail, and only for its own limit.

use super::contour::Point;
use super::map::{HEIGHT, WIDTH};
use super::scale::AxisScale;

/// Width of one letter of the large and of the small words, in the widest face that the page may fall back to.
const LETTER: [f64; 2] = [19.0, 9.6];
/// Height of a large word with the line under it, and of a small word.
const WORD_HEIGHT: [f64; 2] = [62.0, 26.0];
/// How far under the top of its place the base line of a large and of a small word lies.
const BASE_LINE: [f64; 2] = [28.0, 19.0];
/// Spacing of the sample points.
const STEP: f64 = 9.0;
/// Fewest points that work for which the strip is named.
const FEWEST_CLEAR: usize = 12;

/// Width of a large word with a small line under it, and of the word alone in small letters.
#[must_use]
pub fn word_width(word: &str, line: &str) -> [f64; 2] {
    let width = |text: &str, letter: f64| text.chars().count() as f64 * letter;
    [width(word, LETTER[0]).max(width(line, LETTER[1])), width(word, LETTER[1])]
}

/// A point of the map and what fails there.
pub(super) struct Sample {
    /// Where it is.
    pub at: Point,
    /// Whether each limit fails, in the order of the areas.
    pub fails: Vec<bool>,
}

impl Sample {
    /// True if nothing fails.
    pub fn works(&self) -> bool {
        !self.fails.contains(&true)
    }

    /// True if some limit but this one fails.
    fn fails_other(&self, index: usize) -> bool {
        self.fails.iter().enumerate().any(|(other, fails)| other != index && *fails)
    }
}

/// Points all over the map.
pub(super) fn sample_points(belt: &AxisScale, heat: &AxisScale) -> Vec<Point> {
    let columns = ((belt.end - belt.start) / STEP) as usize;
    let rows = ((heat.start - heat.end) / STEP) as usize;
    let mut points = Vec::with_capacity((columns + 1) * (rows + 1));
    for row in 0..=rows {
        for column in 0..=columns {
            points.push((belt.start + column as f64 * STEP, heat.end + row as f64 * STEP));
        }
    }
    points
}

/// A place that is taken: left, top, right, bottom.
#[derive(Clone, Copy)]
struct Taken {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

impl Taken {
    fn around((x, y): Point, wide: f64, high: f64) -> Self {
        Self { left: x - wide, top: y - high, right: x + wide, bottom: y + high }
    }

    fn meets(&self, other: &Self) -> bool {
        other.left < self.right
            && other.right > self.left
            && other.top < self.bottom
            && other.bottom > self.top
    }

    fn holds(&self, (x, y): Point) -> bool {
        (self.left..self.right).contains(&x) && (self.top..self.bottom).contains(&y)
    }

    /// Distance of a point outside.
    fn distance(&self, (x, y): Point) -> f64 {
        let dx = (self.left - x).max(x - self.right).max(0.0);
        let dy = (self.top - y).max(y - self.bottom).max(0.0);
        dx.hypot(dy)
    }
}

/// The words of a map as they are placed, one after another.
pub(super) struct Labels<'a> {
    samples: &'a [Sample],
    set: Option<Point>,
    taken: Vec<Taken>,
}

impl<'a> Labels<'a> {
    /// No word placed yet; all of them keep clear of the set point.
    pub fn new(samples: &'a [Sample], set: Option<Point>) -> Self {
        let taken = set.map(|set| Taken::around(set, 62.0, 66.0)).into_iter().collect();
        Self { samples, set, taken }
    }

    /// Places the word of a limit: left end and base line, and whether there is room for small letters only.
    pub fn place_word(&mut self, index: usize, width: [f64; 2]) -> Option<(Point, bool)> {
        // If the label does not fit at full size, try the small size, so that two regions of one colour stay
        // distinguishable.
        for (size, width) in width.into_iter().enumerate() {
            let height = WORD_HEIGHT[size];
            if let Some((left, top)) = self.room_for(index, width, height) {
                let (right, bottom) = (left + width, top + height - 2.0);
                self.taken.push(Taken { left: left - 8.0, top: top - 6.0, right, bottom });
                return Some(((left, top + BASE_LINE[size]), size == 1));
            }
        }
        None
    }

    /// The roomiest place for a word of this width and height inside a region: its left top corner.
    fn room_for(&self, index: usize, width: f64, height: f64) -> Option<Point> {
        let fails = |sample: &&Sample| sample.fails.get(index) == Some(&true);
        let outside: Vec<Point> =
            self.samples.iter().filter(|sample| !fails(sample)).map(|sample| sample.at).collect();
        let mut best: Option<(f64, Point)> = None;
        for Sample { at: (x, y), .. } in self.samples.iter().filter(fails).step_by(2) {
            let word =
                Taken { left: x + 8.0, right: x + 8.0 + width, top: y + 4.0, bottom: y + 4.0 + height };
            let inside = word.right <= WIDTH - 16.0 && word.bottom <= HEIGHT - 68.0;
            if !inside || self.taken.iter().any(|taken| taken.meets(&word)) {
                continue;
            }
            let clearance = outside.iter().fold(90.0_f64, |least, &point| least.min(word.distance(point)));
            // Other regions under the same place make it crowded: a clean patch is better.
            let crowd = self
                .samples
                .iter()
                .filter(|sample| word.holds(sample.at) && sample.fails_other(index))
                .count() as f64;
            let score = clearance - 0.8 * crowd;
            if clearance > 0.0 && best.is_none_or(|(most, _)| score > most) {
                best = Some((score, (word.left, word.top)));
            }
        }
        best.map(|(_, point)| point)
    }

    /// Places the word for what works: the middle of the roomiest part clear of the set point, and the turn of the
    /// strip there, degrees.
    pub fn place_works(&mut self) -> Option<(Point, f64)> {
        let clear: Vec<Point> =
            self.samples.iter().filter(|sample| sample.works()).map(|sample| sample.at).collect();
        if clear.len() < FEWEST_CLEAR {
            return None;
        }
        let near = |middle: Point, reach: f64| {
            let within = move |p: &&Point| (p.0 - middle.0).hypot(p.1 - middle.1) < reach;
            clear.iter().filter(within).copied().collect::<Vec<_>>()
        };
        let mut best: Option<(usize, Point)> = None;
        for &point in clear.iter().step_by(2) {
            let inside =
                point.0 > 120.0 && point.0 < WIDTH - 70.0 && point.1 > 60.0 && point.1 < HEIGHT - 120.0;
            let free = self.set.is_none_or(|set| (set.0 - point.0).hypot(set.1 - point.1) > 115.0);
            if !inside || !free {
                continue;
            }
            let count = near(point, 60.0).len();
            if best.is_none_or(|(most, _)| count > most) {
                best = Some((count, point));
            }
        }
        let (_, middle) = best?;
        let (place, turn) = lie_of(&near(middle, 80.0));
        self.taken.push(Taken::around(place, 44.0, 44.0));
        Some((place, turn))
    }
}

/// Middle of a strip of points, lowered to a base line, and the turn of its longer axis, degrees; level where it is
/// about as wide as long.
fn lie_of(points: &[Point]) -> (Point, f64) {
    let count = points.len() as f64;
    let (mx, my) = points.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / count, y + p.1 / count));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for p in points {
        xx += (p.0 - mx).powi(2);
        xy += (p.0 - mx) * (p.1 - my);
        yy += (p.1 - my).powi(2);
    }
    let spread = ((xx - yy).powi(2) + 4.0 * xy * xy).sqrt();
    let turn = if spread < 0.35 * (xx + yy) { 0.0 } else { 0.5 * (2.0 * xy).atan2(xx - yy).to_degrees() };
    ((mx, my + 9.0), turn.clamp(-62.0, 62.0))
}
