//! What is wrong in a colour meter's file, and what its reader had to decide.

use super::{Language, Quantity, Voice};
use crate::optics::meter::{MeterError, MeterProblem, Note};

impl Voice {
    /// Where a file cannot be read, why, and the way out.
    #[must_use]
    pub fn meter_problem(self, error: &MeterError) -> String {
        let MeterError { line, column, .. } = error;
        let what = self.what_is_wrong(error);
        match self.language {
            Language::En => format!("Line {line}, column {column}. {what}"),
            Language::Es => format!("Línea {line}, columna {column}. {what}"),
        }
    }

    fn what_is_wrong(self, error: &MeterError) -> String {
        use MeterProblem as P;
        let en = self.language == Language::En;
        let nm = |value: f64| self.bare(Quantity::Plain, value);
        match &error.problem {
            P::NoColours if en => {
                "No colours here. A column must be headed L*, a*, b*, or wavelengths like 380 … 730.".into()
            }
            P::NoColours => {
                "Aquí no hay colores. Las columnas deben llamarse L*, a*, b*, o longitudes de onda como 380 … 730.".into()
            }
            P::NoSamples if en => "Headings, but no sample under them. Measure, then save again.".into(),
            P::NoSamples => "Hay encabezados, pero ninguna muestra. Mida y guarde otra vez.".into(),
            P::Ragged { expected, found } if en => {
                format!("{found} fields, but {expected} headings. Save the file again from the meter.")
            }
            P::Ragged { expected, found } => {
                format!("{found} campos, pero {expected} encabezados. Guarde otra vez el archivo del medidor.")
            }
            P::Missing { heading } if en => format!("{heading} is empty. Measure this sample again."),
            P::Missing { heading } => format!("{heading} está vacío. Mida otra vez esta muestra."),
            P::Value { heading, problem } => {
                let value = &error.value;
                let said = match self.language {
                    Language::En => super::en::problem(problem, value, self),
                    Language::Es => super::es::problem(problem, value, self),
                };
                format!("{heading}: {said}")
            }
            P::Count { keyword, stated, found } if en => {
                format!("{keyword} says {stated}, the file holds {found}: it may be cut short. Save it again.")
            }
            P::Count { keyword, stated, found } => {
                format!("{keyword} dice {stated} y el archivo trae {found}: puede estar cortado. Guárdelo otra vez.")
            }
            P::Unfinished { keyword } if en => format!("{keyword} is missing: the file is cut short. Save it again."),
            P::Unfinished { keyword } => format!("Falta {keyword}: el archivo está cortado. Guárdelo otra vez."),
            P::OpenQuote if en => "A quotation mark is not closed on this line. Close it.".into(),
            P::OpenQuote => "En esta línea falta cerrar unas comillas. Ciérrelas.".into(),
            P::Twice { heading } if en => format!("{heading} stands twice. Keep one."),
            P::Twice { heading } => format!("{heading} está dos veces. Deje una."),
            P::UnevenWavelengths if en => "The wavelengths do not rise in equal steps of 20 nm or less.".into(),
            P::UnevenWavelengths => "Las longitudes de onda no suben en pasos iguales de 20 nm o menos.".into(),
            P::ShortSpectrum { from, to } if en => {
                format!("The spectrum runs from {} to {} nm. It must reach from 400 to 700 nm.", nm(*from), nm(*to))
            }
            P::ShortSpectrum { from, to } => {
                format!("El espectro va de {} a {} nm. Debe llegar de 400 a 700 nm.", nm(*from), nm(*to))
            }
            P::TooLong { max } if en => format!("Too long. {} MB are read.", max / 1_000_000),
            P::TooLong { max } => format!("Demasiado largo. Se leen {} MB.", max / 1_000_000),
        }
    }

    /// What the reader of a meter's file had to decide.
    #[must_use]
    pub fn meter_note(self, note: Note) -> &'static str {
        match (self.language, note) {
            (Language::En, Note::OtherViewing) => {
                "These Lab are for another light or observer. Compare them only with each other."
            }
            (Language::Es, Note::OtherViewing) => {
                "Estos Lab son de otra luz u observador. Compárelos solo entre sí."
            }
            (Language::En, Note::ViewingNotStated) => {
                "Light and observer are not stated. Taken as D65 and 10°."
            }
            (Language::Es, Note::ViewingNotStated) => {
                "No se indica luz ni observador. Tomados como D65 y 10°."
            }
            (Language::En, Note::FromSpectra) => "Lab computed from the spectra, for D65 and 10°.",
            (Language::Es, Note::FromSpectra) => "Lab calculados de los espectros, para D65 y 10°.",
            (Language::En, Note::TakenAsPercent) => "Reflectances read as percent.",
            (Language::Es, Note::TakenAsPercent) => "Reflectancias leídas como porcentaje.",
            (Language::En, Note::TakenAsFraction) => "Reflectances read as fractions of 1.",
            (Language::Es, Note::TakenAsFraction) => "Reflectancias leídas como fracciones de 1.",
        }
    }
}
