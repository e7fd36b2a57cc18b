/// How far a dryer wanders during a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftRange {
    /// Air, ± K.
    pub air: f64,
    /// Panel, ± K.
    pub panel: f64,
    /// Heat transfer, ± fraction.
    pub h: f64,
    /// Exchange factor, ± fraction.
    pub exchange: f64,
    /// Film thickness, ± fraction.
    pub film: f64,
    /// Longest belt stop, s.
    pub stop: f64,
}

/// How one run differs from the nominal one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftCase {
    /// Added to the air, K.
    pub air: f64,
    /// Added to the panel, K.
    pub panel: f64,
    /// Times the heat transfer.
    pub h: f64,
    /// Times the exchange factor.
    pub exchange: f64,
    /// Times the film thickness.
    pub film: f64,
    /// Times the water in the cloth.
    pub water: f64,
    /// The belt stands still this long in the last zone, s.
    pub stop: f64,
}

impl DriftCase {
    /// The run as planned.
    pub const NOMINAL: Self =
        Self { air: 0.0, panel: 0.0, h: 1.0, exchange: 1.0, film: 1.0, water: 1.0, stop: 0.0 };

    /// Everything at its cold end: the corner that must still fuse.
    #[must_use]
    pub fn cold(drift: &DriftRange) -> Self {
        Self::corner(drift, -1.0)
    }

    /// Everything at its hot end: the corner that must still be white and unscorched.
    #[must_use]
    pub fn hot(drift: &DriftRange) -> Self {
        Self::corner(drift, 1.0)
    }

    /// The longest belt stop, nothing else wrong.
    #[must_use]
    pub fn stopped(drift: &DriftRange) -> Self {
        Self { stop: drift.stop, ..Self::NOMINAL }
    }

    fn corner(drift: &DriftRange, sign: f64) -> Self {
        Self {
            air: sign * drift.air,
            panel: sign * drift.panel,
            h: 1.0 + sign * drift.h,
            exchange: 1.0 + sign * drift.exchange,
            film: 1.0 - sign * drift.film,
            water: 1.0,
            stop: 0.0,
        }
    }
}
