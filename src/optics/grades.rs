//! Grey-scale grades: how a dyehouse or a customer states a stain or a change of colour, 5 (none) to 1
//! (severe).
//!
//! Staining, ISO 105-A04 (ln is the natural logarithm; with log10 the grade-1 chip of ISO 105-A03 would
//! score 3.9):
//!
//! ```text
//! ΔE_GS = ΔE*ab − 0.4 √(ΔE*ab² − ΔL*²)
//! grade = 6.1 − 1.45 ln ΔE_GS,  or 5 − 0.23 ΔE_GS where that is above 4
//! ```
//!
//! Change, ISO 105-A05 (D removes what the eye does not see in blues, around h = 280°):
//!
//! ```text
//! D = ΔC* · C_M · e^(−x)/100,  x = ((h_M − 280)/30)², the angle taken the short way
//! ΔC_F = (ΔC* − D)/(1 + (20 C_M/1000)²),  ΔH_F = (ΔH* − D)/(1 + (10 C_M/1000)²)
//! ΔE_F = √(ΔL*² + ΔC_F² + ΔH_F²)
//! grade = 5 − ΔE_F/1.7 up to 3.4, 5 − log2(ΔE_F/0.85) beyond
//! ```
//!
//! Source: public implementations that quote EN ISO 105-A04:1999 § 6.6 and EN ISO 105-A05:1997 § 7.2 and § 8;
//! the nominal chips of ISO 105-A02 and A03 fall on their own grades. The standards themselves were not read.
//!
//! A tinted white is graded mildly: a pink bleed of ΔE00 2.2 is still a staining grade 5. Judge a white by
//! [`ciede2000`](super::ciede2000) and show the grade beside it.
use super::{Lab, cie76};
use crate::quantity::{FieldError, Problem};
use serde::{Deserialize, Serialize};

/// A step of the grey scale, as reported.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum GreyStep {
    /// Grade 1, the strongest contrast.
    #[serde(rename = "1")]
    One,
    /// Between 1 and 2.
    #[serde(rename = "1-2")]
    OneToTwo,
    /// Grade 2.
    #[serde(rename = "2")]
    Two,
    /// Between 2 and 3.
    #[serde(rename = "2-3")]
    TwoToThree,
    /// Grade 3.
    #[serde(rename = "3")]
    Three,
    /// Between 3 and 4.
    #[serde(rename = "3-4")]
    ThreeToFour,
    /// Grade 4.
    #[serde(rename = "4")]
    Four,
    /// Between 4 and 5.
    #[serde(rename = "4-5")]
    FourToFive,
    /// Grade 5, no difference to be seen.
    #[serde(rename = "5")]
    Five,
}

impl GreyStep {
    /// The step as it is written: `4-5`.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::One => "1",
            Self::OneToTwo => "1-2",
            Self::Two => "2",
            Self::TwoToThree => "2-3",
            Self::Three => "3",
            Self::ThreeToFour => "3-4",
            Self::Four => "4",
            Self::FourToFive => "4-5",
            Self::Five => "5",
        }
    }
}

impl GreyStep {
    /// Every step, the worst first.
    pub const ALL: [Self; 9] = [
        Self::One,
        Self::OneToTwo,
        Self::Two,
        Self::TwoToThree,
        Self::Three,
        Self::ThreeToFour,
        Self::Four,
        Self::FourToFive,
        Self::Five,
    ];
}

impl std::str::FromStr for GreyStep {
    type Err = FieldError;

    /// A grade as people write it: `4`, `4.0`, and for half steps `4-5`, `4/5`, `4–5`, `4.5` or `4,5`.
    ///
    /// # Errors
    /// A [`FieldError`] on `grade`, with every accepted grade and the nearest one.
    fn from_str(text: &str) -> Result<Self, FieldError> {
        let plain: String = text
            .chars()
            .filter(|letter| !letter.is_whitespace())
            .map(|letter| match letter {
                '/' | '–' | '—' | '‑' => '-',
                ',' => '.',
                other => other,
            })
            .collect();
        let decimal = |value: f64| {
            let halves = 2.0 * value - 2.0;
            (halves.fract() == 0.0 && (0.0..=8.0).contains(&halves))
                .then(|| Self::ALL.get(halves as usize))?
        };
        let digits_only = plain.chars().all(|letter| letter.is_ascii_digit() || letter == '.');
        let written = Self::ALL.iter().find(|step| step.text() == plain);
        let found = written.or_else(|| plain.parse().ok().filter(|_| digits_only).and_then(decimal));
        found.copied().ok_or_else(|| {
            let parts = plain.replace('-', " ");
            let number =
                parts.split(' ').filter_map(|part| part.parse::<f64>().ok()).find(|value| value.is_finite());
            let near = number.map(|value| (2.0 * value - 2.0).clamp(0.0, 8.0).round() as usize);
            let nearest = near.and_then(|at| Self::ALL.get(at)).map(|step| step.text().into());
            let accepted = Self::ALL.iter().map(|step| step.text().into()).collect();
            FieldError::new(
                "grade",
                text,
                Problem::Unknown { nearest: nearest.into_iter().collect(), accepted },
            )
        })
    }
}

impl std::fmt::Display for GreyStep {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(self.text())
    }
}

/// A computed grade.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Grade {
    /// The grade as a number, 1 to 5.
    pub value: f64,
    /// The step to report.
    pub step: GreyStep,
    /// The weighted difference behind it (ΔE_GS or ΔE_F), 0 and up.
    pub difference: f64,
}

/// Lowest grade of each step, in hundredths. Source: ISO 105-A04 class table, as above.
const STAINING_STEPS: [(f64, GreyStep); 8] = [
    (475.0, GreyStep::Five),
    (425.0, GreyStep::FourToFive),
    (375.0, GreyStep::Four),
    (325.0, GreyStep::ThreeToFour),
    (275.0, GreyStep::Three),
    (225.0, GreyStep::TwoToThree),
    (175.0, GreyStep::Two),
    (125.0, GreyStep::OneToTwo),
];

/// ΔE_F at which each step ends. Source: ISO 105-A05 class table, as above; the limits are the mid-points
/// between the nominal chips of ISO 105-A02.
const CHANGE_STEPS: [(f64, GreyStep); 8] = [
    (0.40, GreyStep::Five),
    (1.25, GreyStep::FourToFive),
    (2.10, GreyStep::Four),
    (2.95, GreyStep::ThreeToFour),
    (4.10, GreyStep::Three),
    (5.80, GreyStep::TwoToThree),
    (8.20, GreyStep::Two),
    (11.60, GreyStep::OneToTwo),
];

/// Staining of a white by ISO 105-A04. `clean` is the unstained white, `stained` the same white after.
///
/// The step is read from the grade rounded to hundredths. The two branches of the formula differ by 0.02
/// at grade 4; that jump is the standard's.
#[must_use]
pub fn staining_grade(clean: Lab, stained: Lab) -> Grade {
    let chromatic = (stained.a - clean.a).hypot(stained.b - clean.b);
    let difference = cie76(clean, stained) - 0.4 * chromatic;
    let curved = 6.1 - 1.45 * difference.ln();
    let value = if curved > 4.0 { 5.0 - 0.23 * difference } else { curved }.clamp(1.0, 5.0);
    let hundredths = (100.0 * value).round();
    let step = STAINING_STEPS
        .iter()
        .find(|(least, _)| hundredths >= *least)
        .map_or(GreyStep::One, |(_, step)| *step);
    Grade { value, step, difference }
}

/// Change in colour by ISO 105-A05. `before` is the reference, `after` the treated specimen.
///
/// The step is read from the standard's table on ΔE_F. Table and formula disagree slightly at the edges
/// (ΔE_F 0.41: table 4-5, formula 4.76); the table decides.
#[must_use]
pub fn change_grade(before: Lab, after: Lab) -> Grade {
    let (chroma1, chroma2) = (before.chroma(), after.chroma());
    let (hue1, hue2) = (before.hue(), after.hue());
    let mean_chroma = 0.5 * (chroma1 + chroma2);
    let sum = hue1 + hue2;
    let mean_hue = match (hue2 - hue1).abs() <= 180.0 {
        true => 0.5 * sum,
        false if sum < 360.0 => 0.5 * sum + 180.0,
        false => 0.5 * sum - 180.0,
    };
    let off_blue = (mean_hue - 280.0).abs();
    let off_blue = if off_blue <= 180.0 { off_blue } else { 360.0 - off_blue };

    let chroma_step = chroma2 - chroma1;
    // 2 √(C1 C2) sin(Δh/2) with the sign of the short way round.
    let half = 0.5 * (hue2 - hue1);
    let half = if half.abs() <= 90.0 { half } else { half - 180.0 * half.signum() };
    let hue_step = 2.0 * (chroma1 * chroma2).sqrt() * half.to_radians().sin();

    let forgiven = chroma_step * mean_chroma * (-(off_blue / 30.0).powi(2)).exp() / 100.0;
    let chroma = (chroma_step - forgiven) / (1.0 + (0.02 * mean_chroma).powi(2));
    let hue = (hue_step - forgiven) / (1.0 + (0.01 * mean_chroma).powi(2));
    let difference = (after.lightness - before.lightness).hypot(chroma).hypot(hue);

    let value = if difference <= 3.4 { 5.0 - difference / 1.7 } else { 5.0 - (difference / 0.85).log2() };
    let step =
        CHANGE_STEPS.iter().find(|(below, _)| difference < *below).map_or(GreyStep::One, |(_, step)| *step);
    Grade { value: value.clamp(1.0, 5.0), step, difference }
}
