//! The Forecast screen, and the reason about the rim.

use crate::wording::Facts;
use crate::wording::{DyePath, ForecastPhrase};

pub(in crate::wording) fn rim(v: Facts<'_>) -> String {
    let seen = format!(
        "Donde el blanco sobresale {} mm de la barrera, el ojo ve {}, en el peor caso {}; límite {}.",
        v.tenth("overhang"),
        v.tenth("likely"),
        v.tenth("high"),
        v.tenth("limit")
    );
    if v.flag("holds") == Some(false) {
        format!(
            "El borde se tiñe. {seen} Imprima la barrera casi tan ancha como el blanco y cuide el registro."
        )
    } else {
        format!("El borde aguanta. {seen}")
    }
}

pub(in crate::wording) fn phrase(phrase: &ForecastPhrase) -> String {
    use ForecastPhrase as P;
    match phrase {
        P::ShowsBefore { chance, day } => format!("{chance} de que se note antes del día {day}, el que cuenta."),
        P::ShowsBeforeDue { chance, date } => {
            format!("{chance} de que se note antes del {date}, la fecha de entrega.")
        }
        P::TurnsAt { times } => format!(
            "Hace falta {times} veces el tinte probable para que vire. Un blanco que retiene sigue limpio hasta llenarse y luego vira pronto; guíese por la probabilidad: un 0 probable no es una promesa."
        ),
        P::TurnsBeyond { times } => format!(
            "Hacen falta más de {times} veces el tinte probable para que vire. Un blanco que retiene sigue limpio hasta llenarse y luego vira pronto; guíese por la probabilidad: un 0 probable no es una promesa."
        ),
        P::PastFull { times } => {
            format!("El tinte probable es {times} veces el que lo hace virar: este blanco ya está lleno.")
        }
        P::Rim { overhang, likely, high, limit } => format!(
            "El borde, donde el blanco sobresale {overhang} mm de la barrera: el ojo ve {likely}, en el peor caso {high}; límite {limit}."
        ),
        P::RimMetered { likely, share } => {
            format!("Un medidor leería allí {likely}. En una línea tan fina el ojo ve {share}.")
        }
        P::Due { date } => format!("entrega {date}"),
        P::WhereDyeWent => "Adónde fue el tinte".into(),
        P::MostCame { path, share } => {
            let path = match path {
                DyePath::Vapour => "como vapor, entre el hilo y la capa",
                DyePath::Contact => "por las fibras que tocan la capa",
                DyePath::Loose => "suelto, de la superficie de los hilos",
            };
            format!("La mayor parte llegó {path}: {share} de lo que metió el calor.")
        }
        P::HeldShare { share } => format!("{share} de lo que hay en la capa está retenido y no se ve."),
        P::DyeWay => "Tinte".into(),
        P::DyeAmount => "mg/m² de impresión".into(),
        P::ByVapour => "con el calor, como vapor".into(),
        P::ByContact => "con el calor, donde la fibra toca la capa".into(),
        P::Loose => "con el calor, suelto en los hilos".into(),
        P::SinceOwn => "después, de su propia tela".into(),
        P::SinceFacing => "de la tela encima, menos lo que se llevó el aire".into(),
        P::FreeNow => "en la capa, a la vista".into(),
        P::HeldNow => "en la capa, retenido".into(),
        P::IfOtherwise => "Si algo es distinto".into(),
        P::IfOtherwiseSays { least, most, world } => format!(
            "Lo que nadie sabe mueve el caso probable entre {least} y {most}. Lo peor: {world}."
        ),
        P::AsForecast => "según la previsión".into(),
        P::SlowFilm => "el tinte avanza despacio en la capa".into(),
        P::FastFilm => "el tinte avanza deprisa en la capa".into(),
        P::ColdCorner => "el horno va frío".into(),
        P::HotCorner => "el horno va caliente".into(),
        P::GatedFibre => "la fibra sigue cerrada bajo su calor de fijado".into(),
        P::OpenAir => "nada encima de la impresión".into(),
        P::WarmerStore => "el almacén está 10 °C más caliente".into(),
        P::GateNote => {
            "En el mejor ajuste la fibra cerrada da lo mismo, porque las dos se atienen a lo que el oficio ve allí. Lejos de él se separan.".into()
        }
        P::WhenToLook => "Cuándo mirar".into(),
        P::WhenToLookSays => {
            "Guarde una pieza fresca y a oscuras, y otra como estará el pedido. Póngalas juntas con luz de día en estas fechas.".into()
        }
        P::LookOn => "Mire el".into(),
        P::Expect => "Espere".into(),
        P::BadEndWord => "peor caso".into(),
        P::OverLimitBy => "probabilidad de que ya se note".into(),
        P::OnCloth { low, likely, high, day } => {
            format!("Recién impreso y al día {day}: {low} en el mejor caso, {likely} lo probable, {high} en el peor.")
        }
        P::CutSays { first, last, day } => format!(
            "Arriba, donde llega el ojo: {first} g de tinte libre por metro cúbico recién impreso, {last} el día {day}."
        ),
    }
}
