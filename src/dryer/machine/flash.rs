/// A flash unit over a pallet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlashUnit {
    /// Temperature of the emitter, K. 450 to 550 °C: common practice, no source.
    pub panel: f64,
    /// View factor, coverage and emissivities in one. 0.3 to 0.6: assumed, no source; with 0.37 a flash takes
    /// the 3 to 8 s of common practice.
    pub exchange: f64,
    /// Kind of emitter.
    pub emitter: super::Emitter,
    /// Air temperature under the unit, K.
    pub air: f64,
    /// Heat transfer from that air, W/(m² K). Still air, 5 to 15: from memory.
    pub h: f64,
    /// Temperature of the pallet, K. A running press warms its pallets to 50 to 60 °C: common practice, no
    /// source.
    pub pallet: f64,
    /// Heat capacity of the layer of the pallet that warms within seconds, J/(m² K): assumed, 1 to 3 mm of
    /// wood board.
    pub pallet_heat_capacity: f64,
}

impl FlashUnit {
    /// A common unit on a warm press, with the values that the fields name.
    pub const USUAL: Self = Self {
        panel: 773.15,
        exchange: 0.37,
        emitter: super::Emitter::MidInfrared,
        air: 313.15,
        h: 10.0,
        pallet: 328.15,
        pallet_heat_capacity: 2_000.0,
    };
}
