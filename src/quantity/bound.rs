use serde::{Deserialize, Serialize};

/// The accepted range of one field, written once: checks, messages and input hints all read it.
///
/// ```
/// use whitehold::quantity::Bound;
///
/// const WEIGHT: Bound = Bound { field: "areal_weight_gsm", min: 20.0, max: 600.0, unit: "g/m²" };
/// assert_eq!(WEIGHT.check(180.0), Ok(180.0));
/// let error = WEIGHT.check(900.0).unwrap_err();
/// assert_eq!(error.to_string(), "areal_weight_gsm: 900 is outside 20 to 600 g/m²");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bound {
    /// Name of the field in JSON (`areal_weight_gsm`).
    pub field: &'static str,
    /// Smallest accepted value, in `unit`.
    pub min: f64,
    /// Largest accepted value, in `unit`.
    pub max: f64,
    /// Unit of both, as printed (`g/m²`).
    pub unit: &'static str,
}

impl Bound {
    /// Returns `value` if it is a number inside the range.
    ///
    /// # Errors
    /// [`Problem::NotANumber`] for NaN and infinities, [`Problem::OutOfRange`] outside the range.
    pub fn check(&self, value: f64) -> Result<f64, FieldError> {
        let problem = if !value.is_finite() {
            Problem::NotANumber
        } else if value < self.min || value > self.max {
            Problem::OutOfRange { min: self.min, max: self.max, unit: self.unit.into() }
        } else {
            return Ok(value);
        };
        Err(FieldError { field: self.field.into(), value: value.to_string(), problem })
    }
}

/// A value that cannot be used: the field, the value given, and what is accepted instead.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FieldError {
    /// Path of the field in JSON, e.g. `garments[0].areal_weight_gsm`.
    pub field: String,
    /// The value given, as text, cut to 80 characters.
    pub value: String,
    /// What is wrong with it.
    #[serde(flatten)]
    pub problem: Problem,
}

/// What is wrong with a field. `wording` turns it into a sentence that says what to do next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "problem", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Problem {
    /// Not a number, or infinite.
    NotANumber,
    /// A number outside the accepted range.
    OutOfRange {
        /// Smallest accepted value.
        min: f64,
        /// Largest accepted value.
        max: f64,
        /// Unit of both.
        unit: String,
    },
    /// A required value is missing.
    Empty,
    /// An unknown word.
    Unknown {
        /// Nearest known words, best first.
        nearest: Vec<String>,
        /// Every accepted word; empty if the list would be too long to help.
        accepted: Vec<String>,
    },
    /// Percentages that should add up to 100 and do not.
    SumNot100 {
        /// Their sum, %.
        sum: f64,
        /// The section of the label, empty for the body.
        section: String,
    },
    /// A text longer than the field takes.
    TooLong {
        /// Largest accepted number of characters.
        max: usize,
    },
    /// Two fields that cannot both be true.
    Contradiction {
        /// The other field.
        with: String,
    },
    /// A text that could not be read: on a label, a share without a fibre or a fibre without a share.
    NotUnderstood,
    /// The heat could not be computed: a value lies outside what the equations hold for, or the solver gave up. The value
    /// of the error says which.
    NotSolved,
}

impl FieldError {
    /// An error of this field. Keeps the first 80 characters of the value.
    #[must_use]
    pub fn new(field: impl Into<String>, value: impl AsRef<str>, problem: Problem) -> Self {
        Self { field: field.into(), value: value.as_ref().chars().take(80).collect(), problem }
    }

    /// Prefixes the field with its parent: within `garments[0]`, `areal_weight_gsm` becomes
    /// `garments[0].areal_weight_gsm`.
    #[must_use]
    pub fn within(mut self, parent: &str) -> Self {
        self.field = format!("{parent}.{}", self.field);
        self
    }
}

impl std::fmt::Display for FieldError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { field, value, problem } = self;
        match problem {
            Problem::NotANumber => write!(out, "{field}: {value:?} is not a number"),
            Problem::OutOfRange { min, max, unit } => {
                write!(out, "{field}: {value} is outside {min} to {max} {unit}")
            }
            Problem::Empty => write!(out, "{field}: nothing given"),
            Problem::Unknown { nearest, accepted } => {
                write!(out, "{field}: {value:?} is not known")?;
                if !nearest.is_empty() {
                    write!(out, "; nearest: {}", nearest.join(", "))?;
                }
                if !accepted.is_empty() {
                    write!(out, "; accepted: {}", accepted.join(", "))?;
                }
                Ok(())
            }
            Problem::SumNot100 { sum, section } if section.is_empty() => {
                write!(out, "{field}: the shares make {sum} %, a label makes 100 %")
            }
            Problem::SumNot100 { sum, section } => {
                write!(out, "{field}: the shares of {section:?} make {sum} %, a label makes 100 %")
            }
            Problem::TooLong { max } => write!(out, "{field}: longer than {max} characters"),
            Problem::Contradiction { with } => write!(out, "{field}: {value:?} contradicts {with}"),
            Problem::NotUnderstood => write!(out, "{field}: {value:?} could not be read"),
            Problem::NotSolved => write!(out, "{field}: the heat could not be computed: {value}"),
        }
    }
}

impl std::error::Error for FieldError {}
