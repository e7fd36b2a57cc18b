//! The scale of an axis, its ticks, and paths.

/// A linear map from values to positions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxisScale {
    /// Value at `start`.
    pub from: f64,
    /// Value at `end`.
    pub to: f64,
    /// Position of `from`.
    pub start: f64,
    /// Position of `to`.
    pub end: f64,
}

impl AxisScale {
    /// Position of a value; not held inside the ends.
    #[must_use]
    pub fn at(&self, value: f64) -> f64 {
        let span = self.to - self.from;
        if span == 0.0 {
            return self.start;
        }
        self.start + (value - self.from) / span * (self.end - self.start)
    }

    /// Position of a value, held between the ends; the start for NaN.
    #[must_use]
    pub fn held(&self, value: f64) -> f64 {
        let (low, high) = if self.start < self.end { (self.start, self.end) } else { (self.end, self.start) };
        let at = self.at(value);
        if at.is_nan() { self.start } else { at.clamp(low, high) }
    }

    /// Value at a position.
    #[must_use]
    pub fn value(&self, position: f64) -> f64 {
        let span = self.end - self.start;
        if span == 0.0 {
            return self.from;
        }
        self.from + (position - self.start) / span * (self.to - self.from)
    }

    /// Round values between the ends, about `count` of them, and the digits they need.
    #[must_use]
    pub fn ticks(&self, count: usize) -> (Vec<f64>, usize) {
        let (low, high) = if self.from < self.to { (self.from, self.to) } else { (self.to, self.from) };
        let step = round_step((high - low) / count.max(1) as f64);
        if !step.is_finite() || step <= 0.0 {
            return (vec![low], 0);
        }
        let first = (low / step - 1e-9).ceil() as i64;
        let last = (high / step + 1e-9).floor() as i64;
        let decimals = (-step.log10().floor()).clamp(0.0, 6.0) as usize;
        ((first..=last).map(|k| k as f64 * step).collect(), decimals)
    }
}

/// The least of 1, 2, 5 × 10ⁿ that is not below `step`.
fn round_step(step: f64) -> f64 {
    let size = 10_f64.powf(step.log10().floor());
    let times = step / size;
    size * if times <= 1.0 + 1e-9 {
        1.0
    } else if times <= 2.0 + 1e-9 {
        2.0
    } else if times <= 5.0 + 1e-9 {
        5.0
    } else {
        10.0
    }
}

/// A path through the points, with one decimal; empty for none.
#[must_use]
pub fn path(points: impl IntoIterator<Item = (f64, f64)>, closed: bool) -> String {
    use std::fmt::Write;
    let mut text = String::new();
    for (x, y) in points {
        let pen = if text.is_empty() { 'M' } else { 'L' };
        let _ = write!(text, "{pen}{x:.1} {y:.1}");
    }
    if closed && !text.is_empty() {
        text.push('Z');
    }
    text
}
