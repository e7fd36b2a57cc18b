//! The job sheet.

use crate::library::sheet_code::SheetCodeError;
use crate::wording::JobSheetPhrase;

pub(in crate::wording) fn phrase(phrase: &JobSheetPhrase) -> String {
    use JobSheetPhrase as P;
    match phrase {
        P::Sheet => "Hoja de trabajo".into(),
        P::Print => "Imprimir".into(),
        P::OnePage => "Una página, A4 o Carta, solo negro, en ambas unidades.".into(),
        P::NothingYet => "Aún no hay respuesta. La hoja imprime lo que responde la pantalla Pedido.".into(),
        P::Refused => "Este pedido se rechaza: no hay nada que hacer en la prensa. La pantalla Pedido dice qué lo cambiaría.".into(),
        P::Photograph => "Fotografiar una hoja".into(),
        P::OpenPicture => "Abrir una foto de ella".into(),
        P::ReadBack { title } => {
            format!("Leído de la hoja: {title}. Está en el formulario; Deshacer lo quita.")
        }
        P::Unread(why) => unread(*why).into(),
        P::TooLong => "Este pedido es demasiado largo para un código. Lléveselo como archivo desde la Biblioteca.".into(),
        P::Pieces { pieces, label } => format!("{pieces} piezas, {label}"),
        P::Lot { lot } => format!("lote {lot}"),
        P::Due { day } => format!("entrega {day}"),
        P::Under { what } => format!("bajo la estampa: {what}"),
        P::Hold { other, hold } => format!("{other}, mantener ± {hold}"),
        P::Between { other, low, high } => format!("{other}, {low} a {high}"),
        P::ByHand { air, belt } => format!("Ajuste puesto a mano. El mejor punto es {air} y {belt}."),
        P::Heated { passes, length } => format!("{passes}, {length} con calor"),
        P::FilmPeak => "Máximo de la capa".into(),
        P::Underside { other } => format!("{other}, cara inferior, con sonda"),
        P::Colours { count: 1, low_cure } => format!("1 color{}", cure(*low_cure)),
        P::Colours { count, low_cure } => format!("{count} colores{}", cure(*low_cure)),
        P::Limits => "Límites".into(),
        P::LookAgain => "Volver a mirar".into(),
        P::TrialDo { pieces, rest, hours, oven, other, mark, days } => format!(
            "{pieces} piezas con el ajuste de arriba. Guarde 1 en lugar fresco y oscuro; las otras {rest} cara con cara bajo un peso, {hours} h a {oven} ({other}), nunca más. Compare cada una con la guardada a la luz del día. Pasa: ΔE00 {mark} o menos, o ningún tinte que vean dos personas. Vale por {days} días en el estante."
        ),
        P::TrialLook { pieces, mark } => format!(
            "{pieces} piezas con el ajuste de arriba. Mírelas frías a la luz del día. Pasa: ΔE00 {mark} o menos, o ningún tinte que vean dos personas."
        ),
        P::Piece => "Pieza".into(),
        P::Kept => "guardada".into(),
        P::Fresh => "recién hecha, ΔE00 o a la vista".into(),
        P::AfterOven => "después del horno de prueba".into(),
        P::Pass => "pasa".into(),
        P::AllPass { pieces } => format!("Pasan todas: imprima {pieces}."),
        P::OneTurns => "Una se tiñe: pare, anótelo en la Biblioteca y pregunte de nuevo.".into(),
        P::LookAfterOven => "leer la prueba".into(),
        P::LookBeforeShipping => "mirar las dos piezas guardadas antes de enviar".into(),
        P::LookAfter { days } if days == "1" => "la pieza guardada, al día siguiente".into(),
        P::LookAfter { days } => format!("la pieza guardada, a los {days} días"),
        P::SetBy => "ajustado por".into(),
        P::CheckedBy => "revisado por".into(),
        P::DateTime => "fecha, hora".into(),
        P::Measured { dryer, day } => format!("{dryer}, medido el {day}"),
        P::NotMeasured { dryer } => format!("{dryer}, nunca medido"),
        P::Printed { day } => format!("impreso el {day}"),
        P::CodeTitle => "Este pedido y su ajuste como código".into(),
        P::Garment { number, white, dried, setting, verdict } => {
            let dried = if *dried { ", secada antes" } else { "" };
            format!("Prenda {number}: {white}{dried}, {setting}. {verdict}.")
        }
        P::LimitOf { likely, low, high, limit } => format!("{likely} (de {low} a {high}), límite {limit}"),
    }
}

fn cure(low: bool) -> &'static str {
    if low { ", de baja temperatura" } else { "" }
}

fn unread(why: SheetCodeError) -> &'static str {
    match why {
        SheetCodeError::NoPicture => {
            "El navegador no puede abrir esta foto. Tómela en JPEG o PNG, o fotografíe la hoja aquí."
        }
        SheetCodeError::NoCode => {
            "En esta foto no se ve ningún código. Sostenga la tableta recta sobre el cuadro, tan cerca que llene un tercio de la foto."
        }
        SheetCodeError::Damaged => {
            "Hay un código, pero falta demasiado: doblado, manchado, en sombra o cortado. Ponga la hoja plana con luz pareja y fotografíela otra vez."
        }
        SheetCodeError::NotOurs => {
            "Este código no es de una hoja de trabajo. Fotografíe el cuadro al pie de la hoja."
        }
        SheetCodeError::Newer => {
            "Esta hoja la imprimió un Whitehold más nuevo. Abra la página más nueva y léala allí."
        }
    }
}
