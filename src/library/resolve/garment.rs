//! A garment read: what its label says, what the order adds, what must be assumed.

use crate::library::Library;
use crate::migration::{Belief, Dye, DyedCloth};
use crate::optics::{Lab, Spectrum};
use crate::plan::{Cloth, Code, DyeClass, Finish, Garment, Reason};
use crate::quantity::units::kelvin;
use crate::quantity::{FieldError, Percent, Problem};
use crate::textile::label::{ClothLook, LabelNote, LabelReading, read};
use crate::textile::{ColourRecord, Construction, Depth, DyeEnergy, DyeRecord, Fabric, Fibre};

/// What a cloth is taken for whose label names no construction; common practice, no source.
pub(in crate::library) const UNSAID: Construction = Construction::Jersey;

/// Reads one garment: what its label says, what the order adds, what must be assumed.
pub(super) fn resolve_garment(garment: &Garment, library: &Library) -> Result<Cloth, Vec<FieldError>> {
    let one = |error: FieldError| vec![error];
    let reading = read(&garment.label)?;
    let mut understood = shares_read(&reading);
    let mut asks = Vec::new();
    let composition = reading.body.composition();

    let construction = match garment.construction.or(reading.construction) {
        Some(construction) => {
            understood.push(Reason::new(Code::ReadConstruction).word("construction", kebab(&construction)));
            construction
        }
        None => {
            understood.push(Reason::new(Code::AssumedConstruction).word("construction", kebab(&UNSAID)));
            asks.push(Reason::new(Code::AskConstruction));
            UNSAID
        }
    };
    let weight = match garment.areal_weight_gsm.or(reading.areal_weight_gsm) {
        Some(weight) => {
            understood.push(Reason::new(Code::ReadWeight).number("gsm", weight));
            weight
        }
        None => {
            let usual = library.construction(construction).map_err(one)?.usual_weight.value;
            understood.push(Reason::new(Code::AssumedWeight).number("gsm", usual));
            asks.push(Reason::new(Code::AskWeight));
            usual
        }
    };
    let fabric = library.fabric(&composition, construction, weight).map_err(one)?;

    let named = if garment.colour.name.trim().is_empty() {
        reading.colour.clone()
    } else {
        Some(garment.colour.name.clone())
    };
    let colour: Option<&ColourRecord> = match &named {
        Some(name) => match library.colour(name) {
            Ok(colour) => Some(colour),
            // A measured colour needs no name that is known.
            Err(_) if garment.colour.lab.is_some() => None,
            Err(error) => return Err(vec![FieldError { field: "colour.name".into(), ..error }]),
        },
        None => None,
    };
    let (lab, depth) = match (garment.colour.lab, colour) {
        (Some([lightness, a, b]), named) => {
            let lab = Lab { lightness, a, b };
            (lab, named.map_or_else(|| depth_of(lab), |colour| colour.depth))
        }
        (None, Some(colour)) => {
            let [lightness, a, b] = colour.lab;
            (Lab { lightness, a, b }, colour.depth)
        }
        // The worst that a garment can be for a white: dark and deep.
        (None, None) => {
            asks.push(Reason::new(Code::AskColour));
            (Lab { lightness: 25.0, a: 0.0, b: 0.0 }, Depth::Deep)
        }
    };
    let colour_name = colour.map(|colour| colour.name.clone()).or(named).unwrap_or_default();
    if garment.colour.lab.is_none() && colour.is_none() {
        understood.push(Reason::new(Code::AssumedColour).word("colour", "dark"));
    } else {
        understood.push(Reason::new(Code::ReadColour).word("colour", &colour_name));
    }

    let (dyed, dye_known) = dyed(garment, &reading, &fabric, depth, library)?;
    let belief = belief(garment, dyed.as_ref(), library)?;
    if dyed.is_some() && !dye_known {
        understood.push(Reason::new(Code::AssumedDyed));
    }
    let mut garment = garment.clone();
    if reading.looks.contains(&ClothLook::SublimationPrinted) {
        garment.dye_class = DyeClass::SublimationPrinted;
    }

    // A fibre of a few per cent (a sewing thread, a trim of elastane) does not hold the cloth together.
    let bears = |fibre: &Fibre| composition.get(fibre).copied().unwrap_or(0.0) >= 0.05;
    let mut softens: Option<(Fibre, f64)> = None;
    let mut melts: Option<(Fibre, f64)> = None;
    let mut shrinks_above: Option<f64> = None;
    let mut scorches = false;
    for fibre in composition.keys().filter(|fibre| bears(fibre)) {
        let record = library.fibre(*fibre).map_err(one)?;
        let lower = |had: &Option<(Fibre, f64)>, limit: f64| had.is_none_or(|(_, had)| limit < had);
        if let Some(limit) = &record.softens_c
            && lower(&softens, kelvin(limit.value))
        {
            softens = Some((*fibre, kelvin(limit.value)));
        }
        if let Some(limit) = &record.melts_c
            && lower(&melts, kelvin(limit.value))
        {
            melts = Some((*fibre, kelvin(limit.value)));
        }
        if let Some(limit) = &record.shrinks_above_c {
            let limit = kelvin(limit.value);
            shrinks_above = Some(shrinks_above.map_or(limit, |had: f64| had.min(limit)));
        }
        scorches |= record.scorches;
    }
    let mut coating: Option<f64> = None;
    for finish in &garment.finish {
        let limit = match finish {
            Finish::Coated => &library.limits.coating_heat,
            Finish::WaterRepellent => &library.limits.repellent_heat,
            _ => continue,
        };
        let limit = kelvin(limit.value);
        coating = Some(coating.map_or(limit, |had| had.min(limit)));
    }
    Ok(Cloth {
        garment,
        understood,
        asks,
        fabric,
        lab,
        spectrum: Spectrum::of_cloth(lab),
        colour: colour_name,
        dyed,
        belief,
        dye_known,
        shrinks_above,
        softens,
        melts,
        coating,
        scorches,
    })
}

/// What can travel out of the cloth, and whether that is known rather than assumed.
fn dyed(
    garment: &Garment,
    reading: &LabelReading,
    fabric: &Fabric,
    depth: Depth,
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
    if share < 0.005 || garment.dye_class == DyeClass::MassDyed || said == Some(false) || undyed_shade {
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
    // Fluorescent shades are cleared less hard, for a scoured fluorescent is a dull one.
    let fluorescent = garment.dye_class == DyeClass::Fluorescent;
    let surface = if fluorescent { surface * limits.fluorescent_surface_dye.value } else { surface };
    // Sportswear of polyester alone is dyed deeper and cleared less than the polyester of a blend.
    let sportswear = if share > 0.95 { limits.sportswear_dye.value } else { 1.0 };
    let cloth = DyedCloth {
        dye: dye_of(garment.dye_class, library)?,
        share,
        on_fibre: on_fibre * sportswear,
        areal_mass: fabric.areal_mass,
        surface: if sublimated { surface } else { surface * sportswear },
    };
    Ok((Some(cloth), said == Some(true) || sublimated))
}

/// What is believed of this lot's dye: the spread between lots, moved by what the cloth is made of and narrowed by
/// every test of it.
fn belief(garment: &Garment, dyed: Option<&DyedCloth>, library: &Library) -> Result<Belief, Vec<FieldError>> {
    let limits = &library.limits;
    let mut belief = Belief { shift: 0.0, spread: limits.lot_spread.value };
    if garment.recycled {
        belief.shift += limits.recycled_polyester_dye.value.ln();
    }
    if garment.over_dyed {
        belief.shift += limits.over_dyed_dye.value.ln();
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

/// The dye that stands for a class. Where the class is not known: the vapour pressure of the commonest red, in a fibre
/// that holds it loosely; the anchors are stated for this dye. Sublimation prints are made with dyes that leave easily.
fn dye_of(class: DyeClass, library: &Library) -> Result<Dye, Vec<FieldError>> {
    let one = |error: FieldError| vec![error];
    let energy = match class {
        DyeClass::HighEnergy => DyeEnergy::High,
        DyeClass::MediumEnergy => DyeEnergy::Medium,
        DyeClass::LowEnergy
        | DyeClass::Unknown
        | DyeClass::Fluorescent
        | DyeClass::SublimationPrinted
        | DyeClass::MassDyed => DyeEnergy::Low,
    };
    let in_fibre = library.dye_class(energy).map_err(one)?;
    let typical = match class {
        DyeClass::Unknown => &library.dye_class(DyeEnergy::Medium).map_err(one)?.typical_dye,
        _ => &in_fibre.typical_dye,
    };
    let record: &DyeRecord = library.dye(typical).map_err(one)?;
    Ok(Dye {
        vapour: [record.a, record.b, record.c],
        molar_mass: record.molar_mass.value,
        diffusivity_130c: in_fibre.fibre_diffusivity_130c.value,
        diffusion_energy: in_fibre.fibre_diffusion_energy.value * 1e3,
        gate: None,
    })
}

/// Depth of a measured shade, by its lightness and chroma. Common practice, no source.
fn depth_of(lab: Lab) -> Depth {
    match lab.lightness {
        l if l > 85.0 && lab.chroma() < 10.0 => Depth::Undyed,
        l if l > 75.0 => Depth::Pale,
        l if l > 55.0 => Depth::Medium,
        _ => Depth::Deep,
    }
}

fn kebab<T: serde::Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}

/// What the label said, share by share, and what the reader made of the rest.
fn shares_read(reading: &LabelReading) -> Vec<Reason> {
    let mut understood = Vec::new();
    for section in std::iter::once(&reading.body).chain(&reading.parts) {
        for (fibre, percent) in &section.shares {
            let reason = Reason::new(Code::ReadShare)
                .word("fibre", kebab(fibre))
                .percent("percent", Percent(*percent))
                .word("section", &section.name);
            understood.push(reason);
        }
    }
    understood.extend(reading.notes.iter().map(note));
    understood
}

fn note(note: &LabelNote) -> Reason {
    let said = |what: &str| Reason::new(Code::LabelNote).word("note", what);
    match note {
        LabelNote::AssumedWhole { fibre } => said("assumed-whole").word("fibre", kebab(fibre)),
        LabelNote::Assumed { word, fibre } => said("assumed").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::Ask { word, fibre, .. } => said("ask").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::ReadAs { word, fibre } => said("read-as").word("words", word).word("fibre", kebab(fibre)),
        LabelNote::AssumedShares { word, shares } => {
            let list: Vec<String> =
                shares.iter().map(|(fibre, share)| format!("{share} % {}", kebab(fibre))).collect();
            said("assumed-shares").word("words", word).word("shares", list.join(", "))
        }
        LabelNote::OtherFibres { percent, section } => {
            said("other-fibres").percent("percent", Percent(*percent)).word("section", section)
        }
        LabelNote::Rounded { sum, section } => {
            said("rounded").percent("percent", Percent(*sum)).word("section", section)
        }
        LabelNote::Dropped { word } => said("dropped").word("words", word),
        LabelNote::Excludes { text } => said("excludes").word("words", text),
        LabelNote::LeftOut { text } => Reason::new(Code::LeftOut).word("words", text),
    }
}
