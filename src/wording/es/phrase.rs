//! Sentences that the screens share.

use crate::wording::Phrase;

pub(in crate::wording) fn phrase(phrase: &Phrase) -> String {
    use Phrase as P;
    match phrase {
        P::OutOf { count, of } => format!("{count} de cada {of}"),
        P::FewerThanOne => "menos de 1 de cada 100".into(),
        P::MoreThanNinetyNine => "más de 99 de cada 100".into(),
        P::ColourClash { label, chosen } if chosen.is_empty() => {
            format!("La etiqueta dice {label}, pero se midió un color: la respuesta es para el medido.")
        }
        P::ColourClash { label, chosen } => {
            format!("La etiqueta dice {label} y el campo Color, {chosen}: la respuesta es para {chosen}.")
        }
        P::TakeColour { colour } => format!("Tomar {colour}, como dice la etiqueta"),
        P::To { low, high } => format!("de {low} a {high}"),
        P::HoldWithin { value } => format!("sin pasar de ± {value}"),
        P::PassCount { count: 1 } => "un paso".into(),
        P::DriedIn { passes: 1, before, after } => {
            format!("un paso, agua de {before} a {after}, estampar enseguida")
        }
        P::DriedIn { passes, before, after } => {
            format!("{passes} pasos, agua de {before} a {after}, estampar enseguida")
        }
        P::PassCount { count } => format!("{count} pasos"),
        P::StrokeCount { count: 1 } => "1 pasada".into(),
        P::StrokeCount { count } => format!("{count} pasadas"),
        P::FlashFor { time } => format!("Presecar {time}"),
        P::FilmNear { film } => format!("capa de {film}"),
        P::TrialSay { pieces, hours, oven, mark, days } => format!(
            "Imprima {pieces}, horno {hours} h a {oven} y mírelas: {mark} o menos es un sí. Equivale a {days} días en el estante."
        ),
        P::TrialLook { pieces } => format!("Imprima {pieces} y mírelas antes del pedido."),
        P::HowSure { chance } => format!("unas {chance} quedan bien"),
        P::BleedAfter { days } => format!("Tinte en el blanco, {days} días"),
        P::LimitAt { value } => format!("límite {value}"),
        P::RulerTitle { what, likely, low, high, limit } => {
            format!("{what}: lo probable {likely}, de {low} a {high}; límite {limit}.")
        }
        P::WhiteOf { class, low_cure: true } => format!("{class}, baja temperatura"),
        P::WhiteOf { class, low_cure: false } => class.clone(),
        P::MixOf { class, parts } => {
            let parts: Vec<String> = parts.iter().map(|(name, share)| format!("{share} de {name}")).collect();
            format!("{class}, con {}", parts.join(", "))
        }
        P::Needs { blocker } => format!("sobre {blocker}"),
        P::OrderLine { pieces, lot, due } => {
            let lot = if lot.is_empty() { String::new() } else { format!(", lote {lot}") };
            let due = if due.is_empty() { String::new() } else { format!(", entrega {due}") };
            format!("{pieces} piezas{lot}{due}")
        }
        P::RoomLeft { cooler, hotter, slower, faster } => {
            let sides: Vec<String> =
                [(cooler, "menos"), (hotter, "más"), (slower, "más lento"), (faster, "más rápido")]
                    .into_iter()
                    .filter_map(|(room, side)| room.as_ref().map(|room| format!("{room} {side}")))
                    .collect();
            if sides.is_empty() {
                "Llega más allá de lo que puede este horno.".into()
            } else {
                format!("Queda: {}.", sides.join(", "))
            }
        }
        P::Fails { what, value, limit } => format!("{what}: {value}, límite {limit}."),
        P::WhereItWorks { white } => format!("Dónde sirve {white} en esta tela"),
        P::MapTitle { works: Some((cool, hot)), set } => format!(
            "Mapa de velocidad de cinta y temperatura de ajuste. Sirve una franja, de {cool} a {hot}. El ajuste es {set}."
        ),
        P::MapTitle { works: None, set } if set.is_empty() => {
            "Mapa de velocidad de cinta y temperatura de ajuste. Ninguna parte sirve.".into()
        }
        P::MapTitle { works: None, set } => {
            format!(
                "Mapa de velocidad de cinta y temperatura de ajuste. Ninguna parte sirve. El ajuste es {set}."
            )
        }
        P::MapCaption { heat, belt, fits } => format!(
            "La franja clara sirve. El cuadro a trazos es lo que se desvía este horno, ± {heat} y ± {belt}: {}.",
            if *fits { "cabe" } else { "no cabe dentro" }
        ),
        P::Peak { value } => format!("la capa llega a {value}"),
        P::InHeat { time } => format!("en el calor, {time}"),
        P::NeedsFused { value } => format!("necesita {value}"),
        P::FusedAt { time } => format!("fundido a los {time}"),
        P::NotFusedYet { value } => format!("no funde: {value}"),
        P::CurveTitle { peak, time, lag } => format!(
            "Temperaturas en el tiempo. La capa llega a {peak}; la pieza sale del calor a los {time}. Por debajo va como mucho {lag} por detrás."
        ),
        P::FusedTitle { end, when: Some(when) } => {
            format!("Parte fundida por debajo en el tiempo. Pasa su límite a los {when} y acaba en {end}.")
        }
        P::FusedTitle { end, when: None } => {
            format!("Parte fundida por debajo en el tiempo. Acaba en {end} y no llega a su límite.")
        }
        P::ClothTitle { likely, high, limit } => format!(
            "Círculos partidos de blanco sobre la tela, recién impreso a la izquierda y previsto a la derecha. Lo probable {likely}, en el peor caso {high}, límite {limit}."
        ),
        P::OverLimit { value } => format!("más de {value}"),
        P::UnderLimit { value } => format!("menos de {value}"),
        P::Garment { number } => format!("Prenda {number}"),
        P::DidYouMeanHeat { typed, meant } => format!("{typed}, que son {meant}"),
        P::Heard { verdict, white, air, belt } => format!("{verdict}. {white}, {air}, {belt}."),
        P::HeardNo => "No se puede con lo que hay en el estante.".into(),
        P::DryerLine { name, measured } if measured.is_empty() => format!("{name}, aún sin medir"),
        P::DryerLine { name, measured } => format!("{name}, medido {measured}"),
        P::SetTo { air, belt } => format!("{air}, {belt}"),
        P::WindowTitle { white } if white.is_empty() => "Ventana de curado".into(),
        P::WindowTitle { white } => format!("Ventana de curado · {white}"),
        P::Worth { chance } => format!("mueve el riesgo {chance}"),
        P::ForecastTitle { white } if white.is_empty() => "Previsión de tinte".into(),
        P::ForecastTitle { white } => format!("Previsión de tinte · {white}"),
        P::DayNumber { day } => format!("día {day}"),
        P::OnDay { day, value } => format!("día {day}: {value}"),
        P::StaysWhite { chance } => format!("{chance} de que siga blanco"),
        P::GradeFrom { grade } => format!("desde aquí, grado de manchado {grade}"),
        P::DaysAt { heat } => format!("días a {heat}; los primeros, más anchos"),
        P::EyeSees { depth } => format!("el ojo ve los {depth} de arriba"),
        P::AgeingSays { fresh, day, likely, low, high, limit } if low == high => format!(
            "Reciente {fresh}; el día {day} lo probable es {likely}. Ocho de cada diez siguen en {low}; el límite es {limit}."
        ),
        P::AgeingSays { fresh, day, likely, low, high, limit } => format!(
            "Reciente {fresh}; el día {day} lo probable es {likely}. Ocho de cada diez quedan entre {low} y {high}; el límite es {limit}."
        ),
        P::FirstShows { early: None, last, .. } => {
            format!("Ni en el peor caso pasa el límite en {last} días.")
        }
        P::FirstShows { early: Some(early), likely: None, .. } if early == "0" => {
            "En el peor caso se nota enseguida; lo probable es que no se note.".into()
        }
        P::FirstShows { early: Some(early), likely: None, .. } => {
            format!("En el peor caso se nota desde el día {early}; lo probable es que no se note.")
        }
        P::FirstShows { likely: Some(likely), .. } if likely == "0" => "Se nota enseguida.".into(),
        P::FirstShows { early: Some(early), likely: Some(likely), .. } => {
            format!("Se nota hacia el día {likely}; en el peor caso, desde el día {early}.")
        }
        P::GhostsOften { chance } => format!(
            "La sombra va aparte: {chance} con un blanco así en este tono. Es la frecuencia de su clase, no un cálculo."
        ),
        P::CutTitle { days } => format!(
            "Corte de la estampa: {}. El tinte entra en la capa por el lado de la tela y sube.",
            days.join(", ")
        ),
    }
}
