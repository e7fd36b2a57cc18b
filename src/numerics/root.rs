//! Where a function is zero.

/// The argument between `low` and `high` at which a rising or falling function is within `near` of zero, by regula falsi
/// in the Illinois variant (Dowell and Jarratt 1971, BIT 11, 168; from memory); the nearer end if both have one sign.
pub fn root(low: f64, high: f64, near: f64, function: impl Fn(f64) -> f64) -> f64 {
    let [mut low, mut high] = [low, high].map(|at| (at, function(at)));
    if low.1 * high.1 > 0.0 {
        return if low.1.abs() < high.1.abs() { low.0 } else { high.0 };
    }
    let mut kept_high = None;
    let mut at = low.0;
    for _ in 0..60 {
        at = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        let found = function(at);
        if found.abs() < near || high.0 - low.0 < 1e-9 {
            break;
        }
        let keeps_high = found * high.1 < 0.0;
        // An end that is kept twice counts half.
        let weight = if kept_high == Some(keeps_high) { 0.5 } else { 1.0 };
        if keeps_high {
            (low, high.1) = ((at, found), weight * high.1);
        } else {
            (high, low.1) = ((at, found), weight * low.1);
        }
        kept_high = Some(keeps_high);
    }
    at
}

#[cfg(test)]
mod tests {
    use super::root;

    #[test]
    fn roots_that_are_known() {
        assert!((root(0.0, 2.0, 1e-12, |x| x * x - 2.0) - std::f64::consts::SQRT_2).abs() < 1e-9);
        assert!((root(0.0, 2.0, 1e-12, |x| 1.0 - x.exp() / 3.0) - 3.0_f64.ln()).abs() < 1e-9);
        assert!(root(1.0, 2.0, 1e-12, |x| x - 0.5) <= 1.0 && root(1.0, 2.0, 1e-12, |x| x - 3.0) >= 2.0);
    }
}
