//! A white mixed with another.
//!
//! Properties per kilogram (dye capacity, price) add by mass, properties per volume by volume, and the
//! two constants of Kubelka and Munk each by volume (Duncan 1940, from memory):
//!
//! ```text
//! 1/ρ = Σ w/ρ        φ = w ρ_mix/ρ        S = Σ φ S        K = Σ φ K        K/S = (1 − R)²/(2 R)
//! ```
//!
//! Stretch and stiffness of a polymer blend are interpolated on the logarithm, by volume: assumed.

use super::White;

impl White {
    /// This white with a share (0 to 1, by mass) of another in it; id and name stay. Both must fuse
    /// alike: the mixture is taken to gel and fuse as this one does.
    #[must_use]
    pub fn with(&self, other: &Self, share: f64) -> Self {
        let share = share.clamp(0.0, 1.0);
        let by_mass = |a: f64, b: f64| (1.0 - share) * a + share * b;
        let density = 1.0 / by_mass(1.0 / self.density, 1.0 / other.density);
        let volume = share * density / other.density;
        let by_volume = |a: f64, b: f64| (1.0 - volume) * a + volume * b;
        let on_logarithm = |a: f64, b: f64| by_volume(a.max(1e-6).ln(), b.max(1e-6).ln()).exp();
        let absorption = |white: &Self| {
            white.scattering * (1.0 - white.reflectance).powi(2) / (2.0 * white.reflectance.max(1e-3))
        };
        let scattering = by_volume(self.scattering, other.scattering);
        let ratio = by_volume(absorption(self), absorption(other)) / scattering.max(1e-9);
        Self {
            density,
            dye_capacity: by_mass(self.dye_capacity, other.dye_capacity),
            dye_capacity_spread: self.dye_capacity_spread.max(other.dye_capacity_spread),
            scattering,
            reflectance: 1.0 + ratio - (ratio * ratio + 2.0 * ratio).sqrt(),
            body: by_volume(self.body, other.body),
            stretch: on_logarithm(self.stretch, other.stretch),
            stiffness: on_logarithm(self.stiffness, other.stiffness),
            ghosting: by_mass(self.ghosting, other.ghosting),
            price_per_kg: by_mass(self.price_per_kg, other.price_per_kg),
            pace: by_mass(self.pace, other.pace),
            holds_on_nylon: self.holds_on_nylon && other.holds_on_nylon,
            ..self.clone()
        }
    }
}
