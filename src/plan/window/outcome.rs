//! What one setting of the dryer does to a stack.

/// What one setting does to the stack.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Fused share at the film's bottom, for each of the window's kinetics.
    pub fused: [f64; 2],
    /// Film peak, K.
    pub film_peak: f64,
    /// Peak of the film's bottom, K.
    pub bottom_peak: f64,
    /// Cloth peak, K: under the print or beside it, whichever is hotter.
    pub cloth_peak: f64,
    /// Scorch index of the hotter of the two.
    pub scorch: f64,
    /// Dye that arrives at the film, kg/m²; 0 where the cloth has none.
    pub dye: f64,
}
