//! Spanish words of the Library screen.

use crate::library::file::FileError;
use crate::wording::{LibraryLabel, LibraryPhrase};

pub(in crate::wording) fn label(label: LibraryLabel) -> &'static str {
    use LibraryLabel as W;
    match label {
        W::Library => "Biblioteca",
        W::Search => "Buscar telas, blancos, lotes",
        W::LookIn => "Buscar en",
        W::Fabrics => "Telas",
        W::Whites => "Blancos",
        W::Lots => "Lotes",
        W::Dryers => "Hornos, mallas",
        W::Orders => "Pedidos",
        W::Found => "Encontrado",
        W::NearestFirst => "lo más parecido primero",
        W::NewCloth => "Tela nueva desde su etiqueta",
        W::ImportFile => "Abrir un archivo",
        W::SaveFile => "Guardar la biblioteca como archivo",
        W::SaveTables => "Como tabla para una hoja de cálculo",
        W::Yours => "suyo",
        W::Ships => "incluido",
        W::Removed => "retirado",
        W::Differs => "dos tabletas difieren",
        W::WhatItHolds => "Lo que contiene",
        W::WhatBelongs => "Lo que le pertenece",
        W::WhatHappened => "Qué ha pasado con este registro",
        W::NothingHappened => "Nada todavía. Está como vino con Whitehold.",
        W::BringBack => "Recuperar",
        W::TakeOut => "Retirar",
        W::PrintOnThis => "Imprimir en esta",
        W::OpenThis => "Imprimir otra vez",
        W::KeepCloth => "Guardar la tela de este pedido",
        W::KeepOrder => "Guardar este pedido",
        W::ShowMore => "Mostrar más",
        W::Close => "Cerrar",
        W::Choose => "Dos tabletas escribieron esto sin verse. ¿Cuál vale?",
        W::Made => "Escrito por primera vez.",
        W::Copied => "Copiado del que viene con Whitehold.",
        W::TakenOut => "Retirado.",
        W::Undone => "Deshecho después.",
        W::AsItIsNow => "como está ahora",
        W::OnAnotherTablet => "en otra tableta",
        W::Merge => "Unir",
        W::What => "Qué",
        W::ThisTablet => "Esta tableta",
        W::TheFile => "El archivo",
        W::Keep => "Vale",
        W::LeaveIt => "Dejarlo",
        W::NothingYet => "Aún no ha cambiado nada. Con un Deshacer se anula todo.",
        W::NothingToMerge => "Todo está ya aquí.",
        W::TableOf => "Tabla",
        W::Row => "Fila",
        W::FixRows => {
            "Nada entra mientras haya una fila mal. Corrija estas filas en la hoja de cálculo y abra el archivo de nuevo."
        }
        W::ApplyTable => "Traer estos",
        W::DraftFound => {
            "Un pedido guardado por un Whitehold anterior. Pasa al formulario; Deshacer lo anula."
        }
        W::OpenDraft => "Abrirlo en el formulario",
        W::ReadOnly => {
            "Un Whitehold más nuevo escribió algunos registros. Se pueden leer y guardar como archivo, no cambiar. Abra la página más nueva."
        }
        W::Understood => "Entendido",
        W::EmptySay => {
            "No pasa nada. Escriba lo que dice su etiqueta y Whitehold parte de las fibras. La primera impresión será una prueba, porque aquí nadie la ha probado."
        }
        W::EmptyLibrary => {
            "Todavía no hay nada suyo. Lo que guarde de un pedido queda aquí, con todo lo que le haya pasado."
        }
        W::DropHere => "Una biblioteca o una tabla de telas, blancos o pruebas: suéltela aquí o toque.",
        W::Stays => "se queda",
        W::Goes => "se va",
        W::Nothing => "nada",
        W::Yes => "sí",
        W::No => "no",
        W::NeverSaved => "nunca guardada como archivo",
        W::SaveNow => "Guardarla ahora",
        W::Edit => "Cambiar",
        W::New => "Nuevo",
        W::KeepIt => "Guardarlo",
        W::NewWhite => "Blanco nuevo desde su ficha",
        W::NewDryer => "Horno nuevo",
        W::NewMesh => "Malla nueva",
        W::NewTrial => "Anotar una prueba",
        W::NewLot => "Lote nuevo",
        W::NewBatch => "Cubo nuevo",
        W::NewReading => "Anotar una revisión",
        W::NewLook => "Volver a mirar un día",
        W::NewCheck => "Control de hoy",
        W::NewProbeRun => "Pasó una sonda",
        W::OrderIsKept => "Guardado en la biblioteca",
        W::Trials => "Pruebas",
        W::Files => "Llevárselo, traerlo de vuelta",
        W::TapOne => "Toque uno para ver lo que contiene y qué le ha pasado.",
        W::SaveItself => "Mantener un archivo al día",
        W::SavesItself => "Se mantiene un archivo al día",
    }
}

fn plural(count: &str, one: &str, many: &str) -> String {
    format!("{count} {}", if count == "1" { one } else { many })
}

fn days(days: i64) -> String {
    match days {
        0 => "hoy".into(),
        1 => "ayer".into(),
        days => format!("hace {days} días"),
    }
}

pub(in crate::wording) fn phrase(phrase: &LibraryPhrase) -> String {
    use LibraryPhrase as T;
    match phrase {
        T::Records { count } => format!("{} en esta tableta", plural(count, "registro", "registros")),
        T::SavedDaysAgo { days: ago } => format!("último archivo {}", days(*ago)),
        T::Unsaved { changes } => format!("{} desde entonces", plural(changes, "cambio", "cambios")),
        T::Reminder { changes, days: None } => format!(
            "{} en ningún archivo. Un navegador puede borrar lo que guarda una página; un archivo es suyo.",
            plural(changes, "cambio no está", "cambios no están")
        ),
        T::Reminder { changes, days: Some(ago) } => format!(
            "{} desde el último archivo, {}. Un navegador puede borrar lo que guarda una página; un archivo es suyo.",
            plural(changes, "cambio", "cambios"),
            days(*ago)
        ),
        T::OfTotal { found, total } => format!("{found} de {total}"),
        T::LookFor { word, count } => format!("Buscar «{word}» ({count})"),
        T::NoneCalled { asked } => format!("Nada se llama «{asked}»"),
        T::LotsHere { lots: 1 } => "1 lote".into(),
        T::LotsHere { lots } => format!("{lots} lotes"),
        T::Weight { gsm } => gsm.clone(),
        T::Changed { what, before, after } => format!("{what}: {before} → {after}."),
        T::MoreChanges { count } => format!("Y {count} más."),
        T::FromFile { name } => format!("de {name}"),
        T::MergeFrom { name, saved } => format!("{name}, guardado {saved}"),
        T::Same { count } => format!("{count} iguales"),
        T::New { count } => format!("{count} nuevos: entran"),
        T::Newer { count } => format!("{count} cambiados allí"),
        T::ToChoose { count } => format!("{count} difieren: usted elige"),
        T::Lost { count } => format!("{count} perdidos"),
        T::MergeNow { count } => format!("Unir {}", plural(count, "cambio", "cambios")),
        T::TableRows { added, changed, unchanged, wrong } => {
            format!(
                "{added} nuevos, {changed} cambiados, {unchanged} iguales, {} mal",
                plural(wrong, "fila", "filas")
            )
        }
        T::InRow { line, column } => format!("Fila {line}, {column}"),
        T::NewerFile { name, records } => format!(
            "{name} lo escribió un Whitehold más nuevo. Aquí se pueden leer {}, no traer ninguno. Ábralo con la página más nueva.",
            plural(records, "registro", "registros")
        ),
        T::Refused { name } => format!("{name} no se ha traído"),
        T::Unreadable { count } => {
            format!("Esta versión no puede leer {count} líneas guardadas. Se quedan donde están.")
        }
        T::ApplyRows { count } => format!("Traer {}", plural(count, "registro", "registros")),
    }
}

pub(in crate::wording) fn file_error(error: &FileError) -> String {
    match error {
        FileError::NotOurs => "No es una biblioteca ni una tabla de telas, blancos o pruebas. No ha cambiado nada.".into(),
        FileError::Cut { lines } => format!("Está cortado después de la línea {lines}. No ha cambiado nada. Guárdelo de nuevo en su origen."),
        FileError::Damaged { line: None } => "Algo en él se cambió o se dañó: su suma de control no coincide. No ha cambiado nada. Guárdelo de nuevo en su origen.".into(),
        FileError::Damaged { line: Some(line) } => format!("Está dañado desde la línea {line}. No ha cambiado nada. Guárdelo de nuevo en su origen."),
        FileError::Count { said, found } => format!("Debería tener {said} entradas y tiene {found}. No ha cambiado nada. Guárdelo de nuevo en su origen."),
        FileError::Line { line, .. } => format!("La línea {line} no es una entrada nuestra. No ha cambiado nada."),
        FileError::Twice { id } => format!("La entrada {id} está dos veces. No ha cambiado nada."),
        FileError::Differs { id } => format!("La entrada {id} dice allí otra cosa que aquí: una de las dos se alteró a mano. No ha cambiado nada."),
    }
}
