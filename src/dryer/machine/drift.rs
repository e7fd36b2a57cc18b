/// How far a dryer drifts during a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftRange {
    /// Air temperature, ± K.
    pub air: f64,
    /// Emitter temperature, ± K.
    pub panel: f64,
    /// Heat transfer, ± share.
    pub h: f64,
    /// Exchange factor, ± share.
    pub exchange: f64,
    /// Film thickness, ± share.
    pub film: f64,
    /// Longest belt stop, s.
    pub stop: f64,
}

/// How one run differs from the nominal run: offsets and factors within the [`DriftRange`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftCase {
    /// Added to the air temperature, K.
    pub air: f64,
    /// Added to the emitter temperature, K.
    pub panel: f64,
    /// Factor on the heat transfer.
    pub h: f64,
    /// Factor on the exchange factor.
    pub exchange: f64,
    /// Factor on the film thickness.
    pub film: f64,
    /// Factor on the water in the cloth.
    pub water: f64,
    /// Time that the belt stops with the piece in the last zone, s.
    pub stop: f64,
}

impl DriftCase {
    /// The run without drift.
    pub const NOMINAL: Self =
        Self { air: 0.0, panel: 0.0, h: 1.0, exchange: 1.0, film: 1.0, water: 1.0, stop: 0.0 };

    /// Everything at its cold end: the corner in which the film must still fuse.
    #[must_use]
    pub fn cold(drift: &DriftRange) -> Self {
        Self::corner(drift, -1.0)
    }

    /// Everything at its hot end: the corner in which the print must stay white and the cloth unscorched.
    #[must_use]
    pub fn hot(drift: &DriftRange) -> Self {
        Self::corner(drift, 1.0)
    }

    /// The longest belt stop, everything else nominal.
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
