//! A cloth in SI.
//!
//! A cloth of areal mass m (dry) whose fibres fill the share v of its volume is
//!
//! ```text
//! thick     d = m / (v ρ)                  1/ρ = Σ share / ρ_fibre
//! conducts  k = ½ [v k_f + (1-v) k_a] + ½ / [v/k_f + (1-v)/k_a]
//! ```
//!
//! The conductivity is the mean of fibre and air in parallel and in series (a modelling choice; it gives
//! 0.042 to 0.048 W/(m K) for knits, within what thermal testers read on jersey and fleece).

use crate::library::Library;
use crate::quantity::{FieldError, Problem};
use crate::textile::{AREAL_WEIGHT, Composition, Construction, Fabric, FabricRecord, Fibre};

impl Library {
    /// A cloth in SI from its mass shares (together 1), its construction and its weight as a label states
    /// it (g/m², at 65 % RH). The regain is subtracted to get the dry mass.
    ///
    /// # Errors
    /// A [`FieldError`] on `areal_weight_gsm` outside [`AREAL_WEIGHT`], or on `composition` if the shares
    /// do not add up to 1 within a thousandth.
    pub fn fabric(
        &self,
        composition: &Composition,
        construction: Construction,
        areal_weight_gsm: f64,
    ) -> Result<Fabric, FieldError> {
        let weight = AREAL_WEIGHT.check(areal_weight_gsm)?;
        let sum: f64 = composition.values().sum();
        let shares = composition.values().all(|share| (0.0..=1.0).contains(share));
        if !shares || (sum - 1.0).abs() > 1e-3 {
            let problem = Problem::SumNot100 { sum: sum * 100.0, section: String::new() };
            return Err(FieldError::new("composition", format!("{composition:?}"), problem));
        }
        let made = self.construction(construction)?;
        let fill = made.fibre_volume_fraction.value;
        let mut fabric = Fabric {
            composition: composition.clone(),
            construction,
            areal_mass: 0.0,
            thickness: 0.0,
            conductivity: 0.0,
            heat_capacity: 0.0,
            heat_capacity_slope: 0.0,
            regain_65: 0.0,
            open_area: made.open_area.value,
            nap: made.nap.value * 1e-6,
            stretch: made.stretch.value / 100.0,
        };
        let mut specific_volume = 0.0;
        for (&fibre, &share) in composition {
            let record = self.fibre(fibre)?;
            specific_volume += share / record.density.value;
            fabric.heat_capacity += share * record.heat_capacity_25c.value;
            fabric.heat_capacity_slope += share * record.heat_capacity_slope.value;
            fabric.regain_65 += share * record.regain_65.value;
        }
        fabric.areal_mass = weight / 1000.0 / (1.0 + fabric.regain_65);
        fabric.thickness = fabric.areal_mass * specific_volume / fill;
        fabric.conductivity =
            conductivity(fill, self.limits.fibre_conductivity.value, self.limits.air_conductivity.value);
        let elastane = composition.get(&Fibre::Elastane).copied().unwrap_or_default();
        fabric.stretch += elastane * self.limits.stretch_per_elastane.value;
        Ok(fabric)
    }

    /// A cloth of the table in SI.
    ///
    /// # Errors
    /// A [`FieldError`] on `areal_weight_gsm` outside [`AREAL_WEIGHT`], or on `composition` if the shares
    /// do not add up to 1.
    pub fn fabric_of(&self, record: &FabricRecord) -> Result<Fabric, FieldError> {
        let shares = record.composition_percent.iter().map(|(&fibre, &share)| (fibre, share / 100.0));
        self.fabric(&shares.collect(), record.construction, record.areal_weight.value)
    }
}

/// Conductivity, W/(m K), of a cloth whose fibres fill the share `fill` of its volume.
fn conductivity(fill: f64, fibre: f64, air: f64) -> f64 {
    let parallel = fill * fibre + (1.0 - fill) * air;
    let series = 1.0 / (fill / fibre + (1.0 - fill) / air);
    0.5 * (parallel + series)
}
