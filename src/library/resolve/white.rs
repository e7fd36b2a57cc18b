//! A white in SI.

use crate::ink::{CureKinetics, KineticsRecord, White, WhiteRecord};
use crate::library::Library;
use crate::quantity::{Bound, FieldError, Sourced, units::kelvin};

impl Library {
    /// A white in SI: from its own record, from its class where the record says nothing, with the
    /// kinetics of its kind of cure.
    ///
    /// # Errors
    /// [`Problem::Unknown`](crate::quantity::Problem::Unknown) if the library lacks its class or kinetics; a
    /// [`FieldError`] on a number outside its bound.
    pub fn white(&self, record: &WhiteRecord) -> Result<White, FieldError> {
        let class = self.white_class(record.class)?;
        let kinetics = self.kinetics_record(if record.low_cure { "low-cure" } else { "ordinary" })?;
        let mut kinetics = cure_kinetics(kinetics);
        let own = |bound: &Bound, given: &Option<Sourced>| {
            given.as_ref().map(|given| bound.check(given.value)).transpose()
        };
        if let Some(half) = own(&WhiteRecord::HALF_FUSED, &record.half_fused_c)? {
            kinetics.half_fused = kelvin(half);
        }
        if let Some(time) = own(&WhiteRecord::FUSION_TIME, &record.fusion_time)? {
            kinetics.fusion_time = time;
        }
        let capacity = &class.dye_capacity;
        let [low, high] = capacity.range;
        let measured = record.draw_down.as_ref().map(crate::ink::DrawDownRecord::read).transpose()?;
        Ok(White {
            id: record.id.clone(),
            name: record.name.clone(),
            class: record.class,
            low_cure: record.low_cure,
            kinetics,
            density: class.density.value,
            dye_capacity: capacity.value / 1000.0,
            // A white that binds nothing has no spread.
            dye_capacity_spread: if low > 0.0 { (high / low).sqrt() } else { 1.0 },
            scattering: measured.map_or(class.scattering.value * 1e6, |read| read.scattering),
            reflectance: measured.map_or(class.reflectance.value, |read| read.endless_reflectance),
            body: class.body.value,
            stretch: class.stretch.value / 100.0,
            stiffness: class.stiffness.value,
            ghosting: class.ghosting.value,
            price_per_kg: record.price_per_kg.as_ref().unwrap_or(&class.price_per_kg).value,
            pace: class.pace.value,
            holds_on_nylon: class.holds_on_nylon,
        })
    }
}

/// Gelation and fusion in SI.
#[must_use]
pub fn cure_kinetics(record: &KineticsRecord) -> CureKinetics {
    CureKinetics {
        half_fused: kelvin(record.half_fused_c.value),
        width: record.width.value,
        fusion_time: record.fusion_time.value,
        fusion_reference: kelvin(record.fusion_reference_c.value),
        fusion_energy: record.fusion_energy.value * 1000.0,
        gel_time: record.gel_time.value,
        gel_reference: kelvin(record.gel_reference_c.value),
        gel_energy: record.gel_energy.value * 1000.0,
    }
}
