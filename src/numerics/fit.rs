//! Nonlinear least squares for a handful of unknowns.
//!
//! The method of Levenberg and Marquardt: each step solves `(J'J + lambda diag J'J) d = -J'r`; `lambda`
//! shrinks while the sum of squares falls and grows when it does not. Checked in `tests/heat/fit.rs` against
//! the certified values of a statistical reference data set.

/// The result of a fit: the unknowns and their covariance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit<const N: usize> {
    /// The unknowns at the smallest sum of squares.
    pub at: [f64; N],
    /// `(J'J)^-1` at [`at`](Self::at): the covariance of the unknowns if every residual has a standard
    /// deviation of 1. Infinite if the residuals do not determine them.
    pub covariance: [[f64; N]; N],
    /// Sum of squared residuals.
    pub squares: f64,
}

/// Largest number of steps; a fit that still moves then is returned as it is.
const MOST: usize = 60;

/// Residuals, each with its derivatives by the unknowns.
pub type Residuals<const N: usize> = Vec<(f64, [f64; N])>;

/// Finds the unknowns at which the sum of squared residuals is smallest, from `start`.
///
/// ```
/// use whitehold::numerics::fit::least_squares;
///
/// // A straight line a + b x through four points.
/// let points = [(0.0, 1.1), (1.0, 2.9), (2.0, 5.1), (3.0, 6.9)];
/// let residuals = |unknowns: &[f64; 2]| {
///     let [a, b] = *unknowns;
///     Ok::<_, ()>(points.iter().map(|(x, y)| (a + b * x - y, [1.0, *x])).collect())
/// };
/// let fit = least_squares([0.0, 0.0], residuals)?;
/// assert!((fit.at[0] - 1.06).abs() < 1e-9 && (fit.at[1] - 1.96).abs() < 1e-9);
/// # Ok::<(), ()>(())
/// ```
///
/// # Errors
/// The error of `residuals` at `start`. A step to a point where `residuals` fails is made smaller instead.
pub fn least_squares<const N: usize, E>(
    start: [f64; N],
    mut residuals: impl FnMut(&[f64; N]) -> Result<Residuals<N>, E>,
) -> Result<Fit<N>, E> {
    let mut at = start;
    let mut here = residuals(&at)?;
    let mut damping = 1e-3;
    for _ in 0..MOST {
        let (normal, slope) = equations(&here);
        let squares = sum(&here);
        let mut damped = normal;
        for i in 0..N {
            damped[i][i] += damping * normal[i][i].max(1e-300);
        }
        let Some(inverse) = inverted(damped) else {
            damping *= 10.0;
            continue;
        };
        let mut next = at;
        let mut moved = 0.0_f64;
        for i in 0..N {
            let step: f64 = -(0..N).map(|j| inverse[i][j] * slope[j]).sum::<f64>();
            next[i] += step;
            moved = moved.max(step.abs() / (at[i].abs() + 1e-9));
        }
        match residuals(&next) {
            Ok(there) if sum(&there) <= squares => {
                (at, here) = (next, there);
                damping = (damping * 0.2).max(1e-14);
                if moved < 1e-11 {
                    break;
                }
            }
            _ => {
                damping *= 8.0;
                if damping > 1e12 {
                    break;
                }
            }
        }
    }
    let (normal, _) = equations(&here);
    let unknown = [[f64::INFINITY; N]; N];
    Ok(Fit { at, covariance: inverted(normal).unwrap_or(unknown), squares: sum(&here) })
}

fn sum<const N: usize>(residuals: &Residuals<N>) -> f64 {
    let squares: f64 = residuals.iter().map(|(residual, _)| residual * residual).sum();
    if squares.is_finite() { squares } else { f64::INFINITY }
}

fn equations<const N: usize>(residuals: &Residuals<N>) -> ([[f64; N]; N], [f64; N]) {
    let (mut normal, mut slope) = ([[0.0; N]; N], [0.0; N]);
    for (residual, derivatives) in residuals {
        for i in 0..N {
            slope[i] += derivatives[i] * residual;
            for j in 0..N {
                normal[i][j] += derivatives[i] * derivatives[j];
            }
        }
    }
    (normal, slope)
}

/// Gauss-Jordan elimination with pivoting; `None` for a singular matrix.
fn inverted<const N: usize>(mut matrix: [[f64; N]; N]) -> Option<[[f64; N]; N]> {
    let mut inverse = [[0.0; N]; N];
    for i in 0..N {
        inverse[i][i] = 1.0;
    }
    for column in 0..N {
        let pivot =
            (column..N).max_by(|&a, &b| matrix[a][column].abs().total_cmp(&matrix[b][column].abs()))?;
        if matrix[pivot][column].abs() < 1e-290 || !matrix[pivot][column].is_finite() {
            return None;
        }
        matrix.swap(column, pivot);
        inverse.swap(column, pivot);
        let by = matrix[column][column];
        for j in 0..N {
            matrix[column][j] /= by;
            inverse[column][j] /= by;
        }
        for row in (0..N).filter(|&row| row != column) {
            let by = matrix[row][column];
            for j in 0..N {
                matrix[row][j] -= by * matrix[column][j];
                inverse[row][j] -= by * inverse[column][j];
            }
        }
    }
    Some(inverse)
}
