//! What a column holds, according to its heading.

/// What a column holds, according to its heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum MeterColumn {
    /// L*, a*, b*: which of the three, 0 to 2.
    Lab(usize),
    /// Reflectance at a wavelength, nm.
    Reflectance { wavelength: f64, scale: ReflectanceScale },
    /// A name for people.
    Name,
    /// An id or number.
    Id,
    /// Nothing that bears on colour.
    Other,
}

/// How reflectances are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ReflectanceScale {
    /// The heading says percent.
    Percent,
    /// The heading does not say.
    Unsaid,
}

/// Headings of L*, a* and b*, in small letters and figures only.
const LAB: [&[&str]; 3] = [
    &["labl", "l", "ciel", "cielabl", "lstar", "lvalue"],
    &["laba", "a", "ciea", "cielaba", "astar", "avalue"],
    &["labb", "b", "cieb", "cielabb", "bstar", "bvalue"],
];
const NAME: [&str; 7] = ["samplename", "name", "sample", "patch", "title", "nombre", "muestra"];
const ID: [&str; 7] = ["sampleid", "patchid", "id", "no", "nr", "number", "sampleno"];
/// Prefixes of a wavelength. Programs that write `SPEC_380` write percent.
const BEFORE_WAVELENGTH: [(&str, ReflectanceScale); 9] = [
    ("spectralpct", ReflectanceScale::Percent),
    ("spectralnm", ReflectanceScale::Unsaid),
    ("spectral", ReflectanceScale::Unsaid),
    ("spec", ReflectanceScale::Percent),
    ("reflectance", ReflectanceScale::Unsaid),
    ("refl", ReflectanceScale::Unsaid),
    ("nm", ReflectanceScale::Unsaid),
    ("r", ReflectanceScale::Unsaid),
    ("", ReflectanceScale::Unsaid),
];

impl MeterColumn {
    pub(super) fn of(heading: &str) -> Self {
        // Brackets hold the light, the observer or the unit: `L*(10°/D65)`, `380 nm [%]`.
        let bare = heading.split(['(', '[']).next().unwrap_or_default();
        let plain: String =
            bare.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect();
        if let Some(which) = LAB.iter().position(|names| names.contains(&plain.as_str())) {
            return Self::Lab(which);
        }
        if NAME.contains(&plain.as_str()) {
            return Self::Name;
        }
        if ID.contains(&plain.as_str()) {
            return Self::Id;
        }
        let stem = plain.strip_suffix("nm").unwrap_or(&plain);
        for (before, scale) in BEFORE_WAVELENGTH {
            let Some(digits) = stem.strip_prefix(before) else { continue };
            let three = digits.len() == 3 && digits.chars().all(|letter| letter.is_ascii_digit());
            if let (true, Ok(wavelength)) = (three, digits.parse::<f64>())
                && (300.0..=830.0).contains(&wavelength)
            {
                let scale = if heading.contains('%') { ReflectanceScale::Percent } else { scale };
                return Self::Reflectance { wavelength, scale };
            }
        }
        Self::Other
    }
}
