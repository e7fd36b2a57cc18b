//! Problems and decisions in reading a colour meter's file.

use crate::optics::meter::{MeterError, MeterNote, MeterProblem};
use crate::wording::{Quantity, Voice};

pub(in crate::wording) fn error(error: &MeterError, voice: Voice) -> String {
    let MeterError { line, column, .. } = error;
    format!("Línea {line}, columna {column}. {}", problem(error, voice))
}

fn problem(error: &MeterError, voice: Voice) -> String {
    use MeterProblem as P;
    let nm = |value: f64| voice.bare(Quantity::Plain, value);
    match &error.problem {
        P::NoColours => {
                "Aquí no hay colores. Las columnas deben llamarse L*, a*, b*, o longitudes de onda como 380 … 730.".into()
            }
        P::NoSamples => "Hay encabezados, pero ninguna muestra. Mida y guarde otra vez.".into(),
        P::Ragged { expected, found } => {
                format!("{found} campos, pero {expected} encabezados. Guarde otra vez el archivo del medidor.")
            }
        P::Missing { heading } => format!("{heading} está vacío. Mida otra vez esta muestra."),
        P::Value { heading, problem } => format!("{heading}: {}", super::problem::problem(problem, &error.value, voice)),
        P::Count { keyword, stated, found } => {
                format!("{keyword} dice {stated} y el archivo trae {found}: puede estar cortado. Guárdelo otra vez.")
            }
        P::Unfinished { keyword } => format!("Falta {keyword}: el archivo está cortado. Guárdelo otra vez."),
        P::OpenQuote => "En esta línea falta cerrar unas comillas. Ciérrelas.".into(),
        P::Twice { heading } => format!("{heading} está dos veces. Deje una."),
        P::UnevenWavelengths => "Las longitudes de onda no suben en pasos iguales de 20 nm o menos.".into(),
        P::ShortSpectrum { from, to } => {
                format!("El espectro va de {} a {} nm. Debe llegar de 400 a 700 nm.", nm(*from), nm(*to))
            }
        P::TooLong { max } => format!("Demasiado largo. Se leen {} MB.", max / 1_000_000),
    }
}

pub(in crate::wording) fn note(note: MeterNote) -> &'static str {
    match note {
        MeterNote::OtherViewing => "Estos Lab son de otra luz u observador. Compárelos solo entre sí.",
        MeterNote::ViewingNotStated => "No se indica luz ni observador. Tomados como D65 y 10°.",
        MeterNote::FromSpectra => "Lab calculados de los espectros, para D65 y 10°.",
        MeterNote::TakenAsPercent => "Reflectancias leídas como porcentaje.",
        MeterNote::TakenAsFraction => "Reflectancias leídas como fracciones de 1.",
    }
}
