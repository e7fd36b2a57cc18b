//! From records to plain values in SI.
//!
//! A cloth of areal mass m (dry) whose fibres fill the share v of its volume is
//!
//! ```text
//! thick     d = m / (v ρ)                  1/ρ = Σ share / ρ_fibre
//! conducts  k = ½ [v k_f + (1-v) k_a] + ½ / [v/k_f + (1-v)/k_a]
//! ```
//!
//! the mean of fibre and air side by side and one behind the other (a modelling choice; knits come to 0.042 to
//! 0.048 W/(m K), inside what thermal testers read on jersey and fleece).

use super::{Library, LimitRecord};
use crate::dryer::DryerRecord;
use crate::ink::{
    Blocker, CureKinetics, KineticsRecord, MeshRecord, White, WhiteClass, WhiteClassRecord, WhiteRecord,
};
use crate::quantity::{Bound, FieldError, Problem, Sourced, units::kelvin};
use crate::textile::{
    AREAL_WEIGHT, ColourRecord, Composition, Construction, ConstructionRecord, DyeClassRecord, DyeEnergy,
    DyeRecord, Fabric, FabricRecord, Fibre, FibreRecord, colour, spelling,
};

/// The record whose key is `wanted`, or an error that names the nearest ones.
fn find<'a, T>(
    field: &str,
    records: &'a [T],
    key: impl Fn(&T) -> &str,
    wanted: &str,
) -> Result<&'a T, FieldError> {
    records.iter().find(|record| key(record) == wanted).ok_or_else(|| {
        let accepted: Vec<String> = records.iter().map(|record| key(record).to_owned()).collect();
        let nearest = spelling::nearest(wanted, accepted.iter().map(String::as_str));
        let nearest = nearest.into_iter().map(str::to_owned).collect();
        FieldError::new(field, wanted, Problem::Unknown { nearest, accepted })
    })
}

/// The record of a kind that the code knows by name; a library without it is incomplete.
fn kind<'a, T, K: serde::Serialize + PartialEq + Copy>(
    field: &str,
    records: &'a [T],
    key: impl Fn(&T) -> K,
    wanted: K,
) -> Result<&'a T, FieldError> {
    records.iter().find(|record| key(record) == wanted).ok_or_else(|| {
        let name = serde_json::to_string(&wanted).unwrap_or_default();
        let problem = Problem::Unknown { nearest: Vec::new(), accepted: Vec::new() };
        FieldError::new(field, name.trim_matches('"'), problem)
    })
}

/// Look-ups. Each fails with [`Problem::Unknown`] where the library holds no such record.
impl Library {
    /// The record of a fibre.
    pub fn fibre(&self, fibre: Fibre) -> Result<&FibreRecord, FieldError> {
        kind("fibre", &self.fibres, |record| record.fibre, fibre)
    }

    /// The record of a construction.
    pub fn construction(&self, construction: Construction) -> Result<&ConstructionRecord, FieldError> {
        kind("construction", &self.constructions, |record| record.construction, construction)
    }

    /// The record of a class of whites.
    pub fn white_class(&self, class: WhiteClass) -> Result<&WhiteClassRecord, FieldError> {
        kind("white_class", &self.white_classes, |record| record.class, class)
    }

    /// The record of an energy class of dyes.
    pub fn dye_class(&self, energy: DyeEnergy) -> Result<&DyeClassRecord, FieldError> {
        kind("dye_class", &self.dye_classes, |record| record.energy, energy)
    }

    /// A cloth of the table by id.
    pub fn fabric_record(&self, id: &str) -> Result<&FabricRecord, FieldError> {
        find("fabric", &self.fabrics, |record| &record.id, id)
    }

    /// A dye by id.
    pub fn dye(&self, id: &str) -> Result<&DyeRecord, FieldError> {
        find("dye", &self.dyes, |record| &record.id, id)
    }

    /// A white by id.
    pub fn white_record(&self, id: &str) -> Result<&WhiteRecord, FieldError> {
        find("white", &self.whites, |record| &record.id, id)
    }

    /// A blocker by id.
    pub fn blocker(&self, id: &str) -> Result<&Blocker, FieldError> {
        find("blocker", &self.blockers, |record| &record.id, id)
    }

    /// A dryer by id.
    pub fn dryer(&self, id: &str) -> Result<&DryerRecord, FieldError> {
        find("dryer", &self.dryers, |record| &record.id, id)
    }

    /// A mesh of the table by id.
    pub fn mesh_record(&self, id: &str) -> Result<&MeshRecord, FieldError> {
        find("mesh", &self.meshes, |record| &record.id, id)
    }

    /// Gelation and fusion by id, `ordinary` or `low-cure`.
    pub fn kinetics_record(&self, id: &str) -> Result<&KineticsRecord, FieldError> {
        find("kinetics", &self.kinetics, |record| &record.id, id)
    }

    /// A limit by id.
    pub fn limit(&self, id: &str) -> Result<&LimitRecord, FieldError> {
        find("limit", &self.limits, |record| &record.id, id)
    }

    /// A colour by any of its names, in English or Spanish.
    pub fn colour(&self, name: &str) -> Result<&ColourRecord, FieldError> {
        colour::find(&self.colours, name).ok_or_else(|| {
            let names = self.colours.iter().flat_map(|record| [record.name.as_str(), record.nombre.as_str()]);
            let nearest = spelling::nearest(name, names).into_iter().map(str::to_owned).collect();
            FieldError::new("colour", name, Problem::Unknown { nearest, accepted: Vec::new() })
        })
    }

    /// A cloth in SI from its mass shares (together 1), its construction and its weight as a label states it
    /// (g/m², at 65 % RH): the regain is taken off to get the dry mass that the march asks for.
    ///
    /// # Errors
    /// A weight outside [`AREAL_WEIGHT`]; shares that do not make 1 to within a thousandth.
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
        fabric.conductivity = conductivity(
            fill,
            self.limit("fibre-conductivity")?.value.value,
            self.limit("air-conductivity")?.value.value,
        );
        let elastane = composition.get(&Fibre::Elastane).copied().unwrap_or_default();
        fabric.stretch += elastane * self.limit("stretch-per-elastane")?.value.value;
        Ok(fabric)
    }

    /// A cloth of the table in SI.
    ///
    /// # Errors
    /// As [`Library::fabric`].
    pub fn fabric_of(&self, record: &FabricRecord) -> Result<Fabric, FieldError> {
        let shares = record.composition_percent.iter().map(|(&fibre, &share)| (fibre, share / 100.0));
        self.fabric(&shares.collect(), record.construction, record.areal_weight.value)
    }

    /// A white in SI: its own record, its class for the rest, the kinetics of its kind of cure.
    pub fn white(&self, record: &WhiteRecord) -> Result<White, FieldError> {
        let class = self.white_class(record.class)?;
        let kinetics = self.kinetics_record(if record.low_cure { "low-cure" } else { "ordinary" })?;
        let mut kinetics = cure_kinetics(kinetics);
        let own = |field: &str, given: &Option<Sourced>, [min, max]: [f64; 2], unit: &'static str| {
            let Some(given) = given else { return Ok(None) };
            let bound = Bound { field: "white", min, max, unit };
            bound.check(given.value).map(Some).map_err(|error| FieldError { field: field.into(), ..error })
        };
        if let Some(half) = own("half_fused_c", &record.half_fused_c, [90.0, 200.0], "°C")? {
            kinetics.half_fused = kelvin(half);
        }
        if let Some(time) = own("fusion_time", &record.fusion_time, [0.5, 60.0], "s")? {
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
            // Nothing to spread where nothing is held.
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

/// Conductivity, W/(m K), of a cloth whose fibres fill the share `fill`: mean of side by side and in a row.
fn conductivity(fill: f64, fibre: f64, air: f64) -> f64 {
    let parallel = fill * fibre + (1.0 - fill) * air;
    let series = 1.0 / (fill / fibre + (1.0 - fill) / air);
    0.5 * (parallel + series)
}
