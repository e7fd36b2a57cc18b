//! Smooth values between the points of a table.

/// Where `x` lies in rising `points`: the interval's index, held inside the table.
#[must_use]
pub fn interval(points: &[f64], x: f64) -> usize {
    points.partition_point(|&point| point <= x).saturating_sub(1).min(points.len().saturating_sub(2))
}

/// First point and weights of the local cubic (Lagrange through the four nearest points) at `x`, held inside the table.
///
/// Local because a drying-out kink crosses every window: a polynomial through the whole row would ring. Fewer points
/// than four give the parabola, the line or the constant through what there is; the weights always add up to one.
#[must_use]
pub fn cubic(points: &[f64], x: f64) -> (usize, [f64; 4]) {
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else { return (0, [0.0; 4]) };
    let x = x.clamp(first, last);
    let width = points.len().min(4);
    let start = interval(points, x).saturating_sub(1).min(points.len() - width);
    let near = &points[start..start + width];
    let mut weights = [0.0; 4];
    for (i, (&at, weight)) in near.iter().zip(&mut weights).enumerate() {
        *weight = 1.0;
        for (j, &other) in near.iter().enumerate() {
            if j != i {
                *weight *= (x - other) / (at - other);
            }
        }
    }
    (start, weights)
}
