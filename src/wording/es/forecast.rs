//! Spanish.

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
    if v.number("holds") == Some(0.0) {
        format!(
            "El borde se tiñe. {seen} Imprima la barrera casi tan ancha como el blanco y cuide el registro."
        )
    } else {
        format!("El borde aguanta. {seen}")
    }
}

pub(in crate::wording) fn phrase(phrase: &ForecastPhrase) -> String {
    use ForecastPhrase as A;
    match phrase {
        A::ShowsBefore { chance, day } => format!("{chance} de que se note antes del día {day}, el que cuenta."),
        A::ShowsBeforeDue { chance, date } => {
            format!("{chance} de que se note antes del {date}, la fecha de entrega.")
        }
        A::TurnsAt { times } => format!(
            "Hace falta {times} veces el tinte probable para que vire. Un blanco que retiene sigue limpio hasta llenarse y luego vira pronto; guíese por la probabilidad: un 0 probable no es una promesa."
        ),
        A::PastFull { times } => {
            format!("El tinte probable es {times} veces el que lo hace virar: este blanco ya está lleno.")
        }
        A::Rim { overhang, likely, high, limit } => format!(
            "El borde, donde el blanco sobresale {overhang} mm de la barrera: el ojo ve {likely}, en el peor caso {high}; límite {limit}."
        ),
        A::RimMetered { likely, share } => {
            format!("Un medidor leería allí {likely}. En una línea tan fina el ojo ve {share}.")
        }
        A::Due { date } => format!("entrega {date}"),
        A::WhereDyeWent => "Adónde fue el tinte".into(),
        A::MostCame { way, share } => {
            let way = match way {
                DyePath::Vapour => "como vapor, entre el hilo y la capa",
                DyePath::Contact => "por las fibras que tocan la capa",
                DyePath::Loose => "suelto, de la superficie de los hilos",
            };
            format!("La mayor parte llegó {way}: {share} de lo que metió el calor.")
        }
        A::HeldShare { share } => format!("{share} de lo que hay en la capa está retenido y no se ve."),
        A::DyeWay => "Tinte".into(),
        A::DyeAmount => "mg/m² de impresión".into(),
        A::ByVapour => "con el calor, como vapor".into(),
        A::ByContact => "con el calor, donde la fibra toca la capa".into(),
        A::Loose => "con el calor, suelto en los hilos".into(),
        A::SinceOwn => "después, de su propia tela".into(),
        A::SinceFacing => "de la tela encima, menos lo que se llevó el aire".into(),
        A::FreeNow => "en la capa, a la vista".into(),
        A::HeldNow => "en la capa, retenido".into(),
        A::IfOtherwise => "Si algo es distinto".into(),
        A::IfOtherwiseSays { least, most, world } => format!(
            "Lo que nadie sabe mueve el caso probable entre {least} y {most}. Lo peor: {world}."
        ),
        A::AsForecast => "según la previsión".into(),
        A::SlowFilm => "el tinte avanza despacio en la capa".into(),
        A::FastFilm => "el tinte avanza deprisa en la capa".into(),
        A::ColdCorner => "el horno va frío".into(),
        A::HotCorner => "el horno va caliente".into(),
        A::GatedFibre => "la fibra sigue cerrada bajo su calor de fijado".into(),
        A::OpenAir => "nada encima de la impresión".into(),
        A::WarmerStore => "el almacén está 10 °C más caliente".into(),
        A::GateNote => {
            "En el mejor ajuste la fibra cerrada da lo mismo, porque las dos se atienen a lo que el oficio ve allí. Lejos de él se separan.".into()
        }
        A::WhenToLook => "Cuándo mirar".into(),
        A::WhenToLookSays => {
            "Guarde una pieza fresca y a oscuras, y otra como estará el pedido. Póngalas juntas con luz de día en estas fechas.".into()
        }
        A::LookOn => "Mire el".into(),
        A::Expect => "Espere".into(),
        A::BadEndWord => "peor caso".into(),
        A::OverLimitBy => "probabilidad de que ya se note".into(),
        A::OnCloth { low, likely, high, day } => {
            format!("Recién impreso y al día {day}: {low} en el mejor caso, {likely} lo probable, {high} en el peor.")
        }
        A::CutSays { first, last, day } => format!(
            "Arriba, donde llega el ojo: {first} g de tinte libre por metro cúbico recién impreso, {last} el día {day}."
        ),
    }
}
