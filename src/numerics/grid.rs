//! Smooth values between the points of a table.

/// Where `x` lies in rising `points`: the interval's index, held inside the table.
#[must_use]
pub fn interval(points: &[f64], x: f64) -> usize {
    points.partition_point(|&point| point <= x).saturating_sub(1).min(points.len().saturating_sub(2))
}

/// Local cubic (four-point Lagrange) value at `x` of `values` over rising `points`; linear with two points.
///
/// Local because a drying-out kink crosses every window: a polynomial through the whole row would ring.
/// `x` is held inside the table. Zero for an empty table.
#[must_use]
pub fn cubic(points: &[f64], value_at: impl Fn(usize) -> f64, x: f64) -> f64 {
    let count = points.len();
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else { return 0.0 };
    let x = x.clamp(first, last);
    let width = count.min(4);
    let start = interval(points, x).saturating_sub(1).min(count - width);
    let mut sum = 0.0;
    for i in start..start + width {
        let mut weight = 1.0;
        for j in start..start + width {
            if j != i {
                weight *= (x - points[j]) / (points[i] - points[j]);
            }
        }
        sum += weight * value_at(i);
    }
    sum
}
