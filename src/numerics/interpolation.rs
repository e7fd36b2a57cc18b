//! Smooth values between the points of a table.

/// Index of the interval of rising `points` in which `x` lies, held inside the table.
#[must_use]
pub fn interval(points: &[f64], x: f64) -> usize {
    points.partition_point(|&point| point <= x).saturating_sub(1).min(points.len().saturating_sub(2))
}

/// Index of the first point and weights of the local cubic at `x`, held inside the table: Lagrange's
/// polynomial through the four nearest points.
///
/// Local, because a table of a cure window has a kink where the cloth dries out, at which a polynomial
/// through all points oscillates. With fewer than four points it is the parabola, the line or the constant
/// through them; the weights always add up to 1.
///
/// ```
/// use whitehold::numerics::interpolation::cubic;
///
/// let points: [f64; 5] = [0.0, 1.0, 2.0, 3.0, 4.0];
/// let (first, weights) = cubic(&points, 2.5);
/// // A cubic is reproduced: 2.5³ = 15.625.
/// let value: f64 = points[first..].iter().zip(weights).map(|(x, weight)| weight * x.powi(3)).sum();
/// assert!((value - 15.625).abs() < 1e-12);
/// ```
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
