//! Dye in the top layer as a function of the dye that arrived, and the inverse.

use super::ageing::AGEING_CASES;
use crate::migration::Binding;
use crate::numerics::Lanes;

/// Most dye that is ever said to be needed, as a multiple of that of the last aged case. One lot in two hundred has more
/// dye than that case (`LOTS`), and fewer than one in a million more than ten times as much.
const BEYOND: f64 = 10.0;

/// Dye in the top layer for the dye that arrived, interpolated between the cases that were aged, and the inverse.
///
/// What is stored is not the concentration but the dye that would fill the film evenly to it: nearly
/// proportional to what arrives, however sharply the white's capacity bends the concentration itself.
#[derive(Clone, Copy, Debug)]
pub struct Reach {
    binding: Binding,
    /// Dye that arrived in each case, kg/m², rising.
    arrives: [f64; AGEING_CASES],
    /// Dye that would fill the film evenly to what is in the top layer, kg/m², never falling.
    fills: [f64; AGEING_CASES],
}

impl Reach {
    /// From cases in rising order of what arrives (kg/m²), with the dye in the top layer of each (kg/m³). A case that
    /// shows less than one with less dye counts as that one.
    #[must_use]
    pub fn new(
        binding: Binding,
        Lanes(arrives): Lanes<AGEING_CASES>,
        Lanes(top): Lanes<AGEING_CASES>,
    ) -> Self {
        let mut fills = top.map(|top| binding.balance(top.max(0.0)));
        let mut most = 0.0;
        for fill in &mut fills {
            most = f64::max(most, *fill);
            *fill = most;
        }
        Self { binding, arrives, fills }
    }

    /// Dye in the top layer for `arrived` kg/m², kg/m³; outside the cases, that of the nearest.
    #[must_use]
    pub fn top(&self, arrived: f64) -> f64 {
        let fill = match place(&self.arrives, arrived) {
            Place::Before => self.fills[0],
            Place::Between(upper, share) => between(&self.fills, upper, share),
            Place::After => self.fills[AGEING_CASES - 1],
        };
        self.binding.free(fill)
    }

    /// What must arrive for `top` kg/m³ in the top layer, kg/m². Before the first case it is a share of the first, because
    /// no dye shows nothing. After the last case nothing was computed but that it is more: the line between the last two
    /// cases goes on, to [`BEYOND`] at most, and decides only among chances under one in two hundred.
    #[must_use]
    pub fn arrives_for(&self, top: f64) -> f64 {
        let fill = self.binding.balance(top);
        match place(&self.fills, fill) {
            Place::Before => self.arrives[0] * (fill / self.fills[0].max(f64::MIN_POSITIVE)).clamp(0.0, 1.0),
            Place::Between(upper, share) => between(&self.arrives, upper, share),
            Place::After => {
                let [.., had, filled] = self.fills;
                let [.., before, last] = self.arrives;
                let (risen, most) = (filled - had, last * BEYOND);
                if risen > 0.0 { (last + (fill - filled) / risen * (last - before)).min(most) } else { most }
            }
        }
    }
}

/// Where a value lies among points that never fall.
enum Place {
    /// At the first point or under it.
    Before,
    /// Under this point, at this share of the way from the one before.
    Between(usize, f64),
    /// Over the last point.
    After,
}

fn place(points: &[f64; AGEING_CASES], at: f64) -> Place {
    match points.partition_point(|point| *point < at) {
        0 => Place::Before,
        AGEING_CASES => Place::After,
        // The point before is under `at`, this one is not: they differ.
        upper => Place::Between(upper, (at - points[upper - 1]) / (points[upper] - points[upper - 1])),
    }
}

fn between(values: &[f64; AGEING_CASES], upper: usize, share: f64) -> f64 {
    values[upper - 1] + share * (values[upper] - values[upper - 1])
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILM: Binding = Binding { capacity: 0.0, film: 1e-4 };

    /// Without binding a top layer of `c` kg/m³ fills the film with `c` film kg/m²: here 1 kg/m³ a case.
    fn reach(tops: [f64; AGEING_CASES]) -> Reach {
        Reach::new(FILM, Lanes([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0]), Lanes(tops))
    }

    #[test]
    fn between_the_cases_it_is_a_line_and_outside_it_is_bounded() {
        let rising = reach([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0]);
        let falling = reach([6.6, 5.1, 2.7, 1.1, 0.3, 0.2, 0.1, 0.0]);
        let flat_end = reach([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 7.0]);
        // Points, top in kg/m³, and what must arrive for it.
        let rows = [
            ("between", &rising, 2.5, 2.5),
            ("before the first", &rising, 0.5, 0.5),
            ("after the last", &rising, 9.0, 9.0),
            ("far after the last", &rising, 1e6, 80.0),
            ("falling, under its top", &falling, 3.3, 0.5),
            ("falling, over its top", &falling, 6.7, 80.0),
            ("flat at the end", &flat_end, 7.5, 80.0),
        ];
        for (what, reach, top, expected) in rows {
            let found = reach.arrives_for(top);
            assert!((found - expected).abs() < 1e-9, "{what}: {found} for {expected}");
        }
        for (reach, arrived, expected) in [
            (&rising, 2.5, 2.5),
            (&rising, 0.1, 1.0),
            (&rising, 1e9, 8.0),
            (&falling, 5.0, 6.6),
            (&flat_end, 9.0, 7.0),
        ] {
            let found = reach.top(arrived);
            assert!((found - expected).abs() < 1e-9, "{arrived}: {found} for {expected}");
        }
        let clean = Reach::new(FILM, Lanes::ZERO, Lanes::ZERO);
        assert!(clean.arrives_for(1.0).is_finite() && clean.top(1.0).abs() < 1e-12);
    }
}
