//! A garment resolved into a cloth: what its label says, what the order adds, and what has to be assumed.

use super::dye::{belief, dyed};
use super::label_reasons::{kebab, shares_read};
use crate::library::Library;
use crate::optics::{Lab, Spectrum};
use crate::plan::{Cloth, Code, DyeClass, Finish, Garment, Reason};
use crate::quantity::FieldError;
use crate::quantity::units::kelvin;
use crate::textile::label::{ClothLook, LabelReading, read};
use crate::textile::{ColourRecord, Composition, Construction, Depth, Fabric, Fibre, Shade};

/// Construction that is assumed if neither label nor order names one; common practice, no source.
pub(in crate::library) const UNSAID: Construction = Construction::Jersey;

/// Colour that is assumed if neither label nor order names one: the worst case for a white, dark and
/// deeply dyed.
const UNSAID_COLOUR: (Lab, Depth, Shade) = (Lab { lightness: 25.0, a: 0.0, b: 0.0 }, Depth::Deep, Shade::Red);

/// Least mass share of a fibre that holds the cloth together, 0 to 1. A sewing thread or a trim of
/// elastane below it may melt. Assumed.
const BEARING_SHARE: f64 = 0.05;

/// Finishes that a label may name.
const FINISHES: [(ClothLook, Finish); 4] = [
    (ClothLook::Coated, Finish::Coated),
    (ClothLook::WaterRepellent, Finish::WaterRepellent),
    (ClothLook::FlameResistant, Finish::FlameResistant),
    (ClothLook::HighVisibility, Finish::HighVisibility),
];

/// What was read or assumed on the way, and the questions that it leaves open.
struct Understanding {
    understood: Vec<Reason>,
    asks: Vec<Reason>,
}

/// Resolves one garment.
///
/// # Errors
/// A [`FieldError`] for each part of the label that cannot be read, or for the first field of the garment
/// that cannot be used.
pub(super) fn resolve_garment(garment: &Garment, library: &Library) -> Result<Cloth, Vec<FieldError>> {
    let one = |error: FieldError| vec![error];
    let reading = read(&garment.label)?;
    let mut notes = Understanding { understood: shares_read(&reading), asks: Vec::new() };
    let fabric = fabric(garment, &reading, library, &mut notes).map_err(one)?;
    let colour = colour(garment, &reading, library, &mut notes).map_err(one)?;
    let (dyed, dye_known) = dyed(garment, &reading, &fabric, (colour.depth, colour.shade), library)?;
    let belief = belief(garment, dyed.as_ref(), colour.shade, library)?;
    if dyed.is_some() && !dye_known {
        notes.understood.push(Reason::new(Code::AssumedDyed));
    }
    if reading.looks.contains(&ClothLook::Flat) && garment.under_print.is_back_panel() {
        notes.understood.push(Reason::new(Code::AskFlat));
    }
    let mut garment = garment.clone();
    for (look, finish) in FINISHES {
        if reading.looks.contains(&look) && !garment.finish.contains(&finish) {
            garment.finish.push(finish);
        }
    }
    let heat = heat_limits(&fabric.composition, &garment.finish, library).map_err(one)?;
    if reading.looks.contains(&ClothLook::SublimationPrinted) {
        garment.dye_class = DyeClass::SublimationPrinted;
    }
    Ok(Cloth {
        garment,
        understood: notes.understood,
        asks: notes.asks,
        fabric,
        lab: colour.lab,
        spectrum: Spectrum::of_cloth(colour.lab),
        colour: colour.name,
        dyed,
        belief,
        dye_known,
        shrinks_above: heat.shrinks_above,
        softens: heat.softens,
        melts: heat.melts,
        coating: heat.coating,
        scorches: heat.scorches,
    })
}

/// The fabric: construction and weight as the order says them, else as the label does, else the usual ones.
fn fabric(
    garment: &Garment,
    reading: &LabelReading,
    library: &Library,
    notes: &mut Understanding,
) -> Result<Fabric, FieldError> {
    let construction = match garment.construction.or(reading.construction) {
        Some(construction) => {
            let read = Reason::new(Code::ReadConstruction).word("construction", kebab(&construction));
            notes.understood.push(read);
            construction
        }
        None => {
            let assumed = Reason::new(Code::AssumedConstruction).word("construction", kebab(&UNSAID));
            notes.understood.push(assumed);
            notes.asks.push(Reason::new(Code::AskConstruction));
            UNSAID
        }
    };
    let weight = match garment.areal_weight_gsm.or(reading.areal_weight_gsm) {
        Some(weight) => {
            notes.understood.push(Reason::new(Code::ReadWeight).number("gsm", weight));
            weight
        }
        None => {
            let usual = library.construction(construction)?.usual_weight.value;
            notes.understood.push(Reason::new(Code::AssumedWeight).number("gsm", usual));
            notes.asks.push(Reason::new(Code::AskWeight));
            usual
        }
    };
    library.fabric(&reading.body.composition(), construction, weight)
}

/// The colour of a cloth.
struct ClothColour {
    name: String,
    lab: Lab,
    depth: Depth,
    shade: Shade,
}

/// The colour: measured if the order has a measurement, else that of its name, else the worst.
fn colour(
    garment: &Garment,
    reading: &LabelReading,
    library: &Library,
    notes: &mut Understanding,
) -> Result<ClothColour, FieldError> {
    let typed = garment.colour.name.as_str();
    let name = if typed.trim().is_empty() { reading.colour.clone() } else { Some(typed.to_owned()) };
    let known: Option<&ColourRecord> = match &name {
        None => None,
        Some(name) => match library.colour(name).or_else(|error| part(name, library).ok_or(error)) {
            Ok(known) => Some(known),
            // A measured colour may have any name.
            Err(_) if garment.colour.lab.is_some() => None,
            Err(error) => return Err(FieldError { field: "colour.name".into(), ..error }),
        },
    };
    let (lab, depth, shade) = match (garment.colour.lab.map(Lab::from), known) {
        (Some(lab), Some(known)) => (lab, known.depth, known.shade),
        (Some(lab), None) => (lab, depth_of(lab), shade_of(lab)),
        (None, Some(known)) => (known.lab.into(), known.depth, known.shade),
        (None, None) => {
            notes.asks.push(Reason::new(Code::AskColour));
            UNSAID_COLOUR
        }
    };
    let (depth, shade) = match name.as_deref() {
        Some(name) if glows(name) => (Depth::Deep, Shade::Fluorescent),
        Some(name) if is_heather(name) => (depth, Shade::Heather),
        _ => (depth, shade),
    };
    let name = known.map(|known| known.name.clone()).or(name).unwrap_or_default();
    notes.understood.push(if garment.colour.lab.is_none() && known.is_none() {
        Reason::new(Code::AssumedColour).word("colour", "dark")
    } else {
        Reason::new(Code::ReadColour).word("colour", &name)
    });
    Ok(ClothColour { name, lab, depth, shade })
}

/// What heat does to a cloth, and from which temperature on, K.
#[derive(Default)]
struct HeatLimits {
    shrinks_above: Option<f64>,
    softens: Option<(Fibre, f64)>,
    melts: Option<(Fibre, f64)>,
    coating: Option<f64>,
    scorches: bool,
}

/// The lowest limits among the fibres that hold the cloth together and the finishes on it.
fn heat_limits(
    composition: &Composition,
    finishes: &[Finish],
    library: &Library,
) -> Result<HeatLimits, FieldError> {
    let lower = |had: Option<f64>, limit: f64| Some(had.map_or(limit, |had| had.min(limit)));
    let first = |had: Option<(Fibre, f64)>, fibre: Fibre, limit: f64| match had {
        Some((_, had_limit)) if had_limit <= limit => had,
        _ => Some((fibre, limit)),
    };
    let mut limits = HeatLimits::default();
    for (&fibre, _) in composition.iter().filter(|(_, share)| **share >= BEARING_SHARE) {
        let record = library.fibre(fibre)?;
        if let Some(softens) = &record.softens_c {
            limits.softens = first(limits.softens, fibre, kelvin(softens.value));
        }
        if let Some(melts) = &record.melts_c {
            limits.melts = first(limits.melts, fibre, kelvin(melts.value));
        }
        if let Some(shrinks) = &record.shrinks_above_c {
            limits.shrinks_above = lower(limits.shrinks_above, kelvin(shrinks.value));
        }
        limits.scorches |= record.scorches;
    }
    for finish in finishes {
        let limit = match finish {
            Finish::Coated => &library.limits.coating_heat,
            Finish::WaterRepellent => &library.limits.repellent_heat,
            _ => continue,
        };
        limits.coating = lower(limits.coating, kelvin(limit.value));
    }
    Ok(limits)
}

/// The colour that the longest run of words of a name names: navy in "heather navy", light blue in "light blue pattern".
fn part<'a>(name: &str, library: &'a Library) -> Option<&'a ColourRecord> {
    let words: Vec<&str> = name.split_whitespace().collect();
    (1..words.len())
        .rev()
        .flat_map(|length| words.windows(length))
        .find_map(|run| library.colour(&run.join(" ")).ok())
}

/// Whether a name says that dyed and undyed fibre are mixed.
fn is_heather(name: &str) -> bool {
    let name = name.to_lowercase();
    ["heather", "marl", "melange", "mélange", "jaspead", "vigor"].iter().any(|word| name.contains(word))
}

/// Whether a name says that the dye is fluorescent: "safety pink", "fluo orange".
fn glows(name: &str) -> bool {
    let name = name.to_lowercase();
    ["neon", "fluo", "flúo", "safety", "high vis", "hi-vis", "hi vis"].iter().any(|word| name.contains(word))
}

/// Shade of a measured colour: red where its hue lies within 45° of red. Common practice, no source.
fn shade_of(lab: Lab) -> Shade {
    if lab.a > 15.0 && lab.a > lab.b.abs() { Shade::Red } else { Shade::Usual }
}

/// Depth of a measured shade, by its lightness and chroma. Common practice, no source.
fn depth_of(lab: Lab) -> Depth {
    match lab.lightness {
        l if l > 85.0 && lab.chroma() < 10.0 => Depth::Undyed,
        // A light shade as full as this takes as much dye as a darker one.
        l if l > 75.0 && lab.chroma() < 50.0 => Depth::Pale,
        l if l > 55.0 => Depth::Medium,
        _ => Depth::Deep,
    }
}
