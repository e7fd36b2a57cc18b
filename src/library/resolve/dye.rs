//! The dye in a cloth: what can leave it, and how sure that is.

use crate::library::Library;
use crate::library::Limit;
use crate::migration::{Belief, Dye, DyedCloth, MOST_SEEN, SourceBelief};
use crate::plan::{DyeClass, Garment};
use crate::quantity::{FieldError, Problem};
use crate::textile::label::{ClothLook, LabelReading};
use crate::textile::{Depth, DyeEnergy, DyeRecord, Fabric, Fibre, Shade};

/// Polyester below this share of a cloth gives no dye worth a number, 0 to 1. Assumed.
const LEAST_POLYESTER: f64 = 0.005;
/// Elastane from which its own loose dye counts, 0 to 1. Common practice, no source.
const LEAST_ELASTANE: f64 = 0.04;
/// Share of polyester and elastane above which a cloth is sportswear of polyester alone, 0 to 1. Assumed.
const SPORTSWEAR_POLYESTER: f64 = 0.95;

/// The dye that can leave the cloth, if any, and whether that is known rather than assumed.
pub(super) fn dyed(
    garment: &Garment,
    reading: &LabelReading,
    fabric: &Fabric,
    (depth, shade): (Depth, Shade),
    library: &Library,
) -> Result<(Option<DyedCloth>, bool), Vec<FieldError>> {
    let share = fabric.composition.get(&Fibre::Polyester).copied().unwrap_or(0.0);
    let sublimated = garment.dye_class == DyeClass::SublimationPrinted
        || reading.looks.contains(&ClothLook::SublimationPrinted);
    let said = garment.dyed_fibres.as_ref().map(|fibres| fibres.contains(&Fibre::Polyester));
    if said == Some(false) && sublimated {
        let with = "dye_class".into();
        return Err(vec![FieldError::new(
            "dyed_fibres",
            "sublimation-printed",
            Problem::Contradiction { with },
        )]);
    }
    // A cloth is as white as its undyed fibre; white and raw shades hold no disperse dye worth a number.
    let undyed_shade = depth == Depth::Undyed && !sublimated;
    if share < LEAST_POLYESTER
        || garment.dye_class == DyeClass::MassDyed
        || said == Some(false)
        || undyed_shade
    {
        return Ok((None, true));
    }
    let limits = &library.limits;
    let on_fibre = match depth {
        _ if sublimated => limits.dye_on_fibre.value,
        Depth::Undyed | Depth::Pale => limits.dye_on_fibre_pale.value,
        Depth::Medium => limits.dye_on_fibre_medium.value,
        Depth::Deep => limits.dye_on_fibre.value,
    } / 100.0;
    let full = limits.dye_on_fibre.value / 100.0;
    let surface = if sublimated {
        limits.surface_dye_sublimation.value
    } else {
        limits.surface_dye.value * on_fibre / full
    } * 1e-6
        * share;
    let fluorescent = garment.dye_class == DyeClass::Fluorescent || shade == Shade::Fluorescent;
    let surface = if fluorescent { surface * limits.fluorescent_surface_dye.value } else { surface };
    // Sportswear of polyester alone is dyed deeper and cleared less than the polyester of a blend.
    let elastane = fabric.composition.get(&Fibre::Elastane).copied().unwrap_or(0.0);
    let [deeper, looser] = if share + elastane > SPORTSWEAR_POLYESTER {
        [limits.sportswear_dye.value, limits.sportswear_loose_dye.value]
    } else {
        [1.0, 1.0]
    };
    // Disperse dye stains elastane, which holds it loosely.
    let stained = if elastane >= LEAST_ELASTANE { limits.elastane_loose_dye.value } else { 1.0 };
    let cloth = DyedCloth {
        dye: dye_of(garment.dye_class, library)?,
        share,
        on_fibre: on_fibre * deeper,
        areal_mass: fabric.areal_mass,
        surface: if sublimated { surface } else { surface * looser * stained },
    };
    Ok((Some(cloth), said == Some(true) || sublimated))
}

/// How far the dye of this lot may differ from that of a usual lot: the spread between lots, shifted by
/// how the cloth was made and narrowed by every test of it.
pub(super) fn belief(
    garment: &Garment,
    dyed: Option<&DyedCloth>,
    shade: Shade,
    library: &Library,
) -> Result<Belief, Vec<FieldError>> {
    let limits = &library.limits;
    let of = |spread: &Limit| SourceBelief { shift: 0.0, spread: spread.value };
    let mut belief = Belief {
        heat: of(&limits.heat_dye_spread),
        loose: of(&limits.loose_dye_spread),
        seen: [None; MOST_SEEN],
    };
    for (applies, times) in [
        (garment.recycled, &limits.recycled_polyester_dye),
        (garment.over_dyed, &limits.over_dyed_dye),
        (shade == Shade::Red, &limits.red_dye),
        (shade == Shade::Heather, &limits.heather_dye),
    ] {
        if applies {
            belief = belief.shifted(times.value.ln());
        }
    }
    let Some(dyed) = dyed else { return Ok(belief) };
    // The cloth that a test's usual grade is of: polyester alone in an ordinary deep shade.
    let usual = DyedCloth {
        dye: dye_of(DyeClass::Unknown, library)?,
        share: 1.0,
        on_fibre: limits.dye_on_fibre.value / 100.0,
        areal_mass: dyed.areal_mass,
        surface: limits.surface_dye.value * 1e-6,
    };
    Ok(garment.fastness.iter().fold(belief, |belief, seen| belief.after_test(seen, dyed, &usual)))
}

/// The typical dye of a class; the anchors are stated for an unknown one. Sublimation prints are made with dyes that
/// leave easily.
fn dye_of(class: DyeClass, library: &Library) -> Result<Dye, Vec<FieldError>> {
    let one = |error: FieldError| vec![error];
    let energy = match class {
        DyeClass::HighEnergy => DyeEnergy::High,
        DyeClass::MediumEnergy => DyeEnergy::Medium,
        DyeClass::LowEnergy | DyeClass::SublimationPrinted => DyeEnergy::Low,
        DyeClass::Unknown | DyeClass::Fluorescent | DyeClass::MassDyed => DyeEnergy::Unknown,
    };
    let in_fibre = library.dye_class(energy).map_err(one)?;
    let record: &DyeRecord = library.dye(&in_fibre.typical_dye).map_err(one)?;
    Ok(Dye {
        vapour: [record.a, record.b, record.c],
        molar_mass: record.molar_mass.value,
        diffusivity_130c: in_fibre.fibre_diffusivity_130c.value,
        diffusion_energy: in_fibre.fibre_diffusion_energy.value * 1e3,
        gate: None,
    })
}
