//! The Library screen.

use crate::library::file::FileError;
use crate::wording::{LibraryLabel, LibraryPhrase};

pub(in crate::wording) fn label(label: LibraryLabel) -> &'static str {
    use LibraryLabel as L;
    match label {
        L::Library => "Biblioteca",
        L::Search => "Buscar telas, blancos, lotes",
        L::Fabrics => "Telas",
        L::Whites => "Blancos",
        L::Lots => "Lotes",
        L::Dryers => "Hornos, mallas",
        L::Orders => "Pedidos",
        L::Found => "Encontrado",
        L::NearestFirst => "lo más parecido primero",
        L::NewCloth => "Tela nueva desde su etiqueta",
        L::ImportFile => "Abrir un archivo",
        L::SaveFile => "Guardar la biblioteca como archivo",
        L::SaveTables => "Como tabla para una hoja de cálculo",
        L::Yours => "suyo",
        L::Ships => "incluido",
        L::Removed => "retirado",
        L::Differs => "dos tabletas difieren",
        L::WhatBelongs => "Lo que le pertenece",
        L::WhatHappened => "Qué ha pasado con este registro",
        L::NothingHappened => "Nada todavía. Está como vino con Whitehold.",
        L::BringBack => "Recuperar",
        L::TakeOut => "Retirar",
        L::PrintOnThis => "Imprimir en esta",
        L::OpenThis => "Imprimir otra vez",
        L::KeepCloth => "Guardar la tela de este pedido",
        L::KeepOrder => "Guardar este pedido",
        L::ShowMore => "Mostrar más",
        L::Choose => "Dos tabletas escribieron esto sin verse. ¿Cuál vale?",
        L::Made => "Escrito por primera vez.",
        L::Copied => "Copiado del que viene con Whitehold.",
        L::TakenOut => "Retirado.",
        L::Undone => "Deshecho después.",
        L::AsItIsNow => "como está ahora",
        L::OnAnotherTablet => "en otra tableta",
        L::Merge => "Unir",
        L::ThisTablet => "Esta tableta",
        L::TheFile => "El archivo",
        L::LeaveIt => "Dejarlo",
        L::NothingYet => "Aún no ha cambiado nada. Con un Deshacer se anula todo.",
        L::NothingToMerge => "Todo está ya aquí.",
        L::TableOf => "Tabla",
        L::FixRows => {
            "Nada entra mientras haya una fila mal. Corrija estas filas en la hoja de cálculo y abra el archivo de nuevo."
        }
        L::DraftFound => {
            "Un pedido guardado por un Whitehold anterior. Pasa al formulario; Deshacer lo anula."
        }
        L::OpenDraft => "Abrirlo en el formulario",
        L::ReadOnly => {
            "Un Whitehold más nuevo escribió algunos registros. Se pueden leer y guardar como archivo, no cambiar. Abra la página más nueva."
        }
        L::Understood => "Entendido",
        L::EmptySay => {
            "No pasa nada. Escriba lo que dice su etiqueta y Whitehold parte de las fibras. La primera impresión será una prueba, porque aquí nadie la ha probado."
        }
        L::EmptyLibrary => {
            "Todavía no hay nada suyo. Lo que guarde de un pedido queda aquí, con todo lo que le haya pasado."
        }
        L::DropHere => "Una biblioteca o una tabla de telas, blancos o pruebas: suéltela aquí o toque.",
        L::Stays => "se queda",
        L::Goes => "se va",
        L::Nothing => "nada",
        L::Yes => "sí",
        L::No => "no",
        L::NeverSaved => "nunca guardada como archivo",
        L::SaveNow => "Guardarla ahora",
        L::Edit => "Cambiar",
        L::New => "Nuevo",
        L::KeepIt => "Guardarlo",
        L::NewWhite => "Blanco nuevo desde su ficha",
        L::NewDryer => "Horno nuevo",
        L::NewMesh => "Malla nueva",
        L::NewTrial => "Anotar una prueba",
        L::NewLot => "Lote nuevo",
        L::NewBatch => "Cubo nuevo",
        L::NewReading => "Anotar una revisión",
        L::NewLook => "Volver a mirar un día",
        L::NewCheck => "Control de hoy",
        L::NewProbeRun => "Pasó una sonda",
        L::OrderIsKept => "Guardado en la biblioteca",
        L::Trials => "Pruebas",
        L::Files => "Llevárselo, traerlo de vuelta",
        L::TapOne => "Toque uno para ver lo que contiene y qué le ha pasado.",
        L::SaveItself => "Mantener un archivo al día",
        L::SavesItself => "Se mantiene un archivo al día",
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
    use LibraryPhrase as P;
    match phrase {
        P::Records { count } => format!("{} en esta tableta", plural(count, "registro", "registros")),
        P::SavedDaysAgo { days: ago } => format!("último archivo {}", days(*ago)),
        P::Reminder { changes, days: None } => format!(
            "{} en ningún archivo. Un navegador puede borrar lo que guarda una página; un archivo es suyo.",
            plural(changes, "cambio no está", "cambios no están")
        ),
        P::Reminder { changes, days: Some(ago) } => format!(
            "{} desde el último archivo, {}. Un navegador puede borrar lo que guarda una página; un archivo es suyo.",
            plural(changes, "cambio", "cambios"),
            days(*ago)
        ),
        P::OfTotal { found, total } => format!("{found} de {total}"),
        P::LookFor { word, count } => format!("Buscar «{word}» ({count})"),
        P::NoneCalled { asked } => format!("Nada se llama «{asked}»"),
        P::LotsHere { lots: 1 } => "1 lote".into(),
        P::LotsHere { lots } => format!("{lots} lotes"),
        P::Changed { what, before, after } => format!("{what}: {before} → {after}."),
        P::MoreChanges { count } => format!("Y {count} más."),
        P::FromFile { name } => format!("de {name}"),
        P::MergeFrom { name, saved } => format!("{name}, guardado {saved}"),
        P::Same { count } => format!("{count} iguales"),
        P::New { count } => format!("{count} nuevos: entran"),
        P::Newer { count } => format!("{count} cambiados allí"),
        P::ToChoose { count } => format!("{count} difieren: usted elige"),
        P::Lost { count } => format!("{count} perdidos"),
        P::MergeNow { count } => format!("Unir {}", plural(count, "cambio", "cambios")),
        P::TableRows { added, changed, unchanged, wrong } => {
            format!(
                "{added} nuevos, {changed} cambiados, {unchanged} iguales, {} mal",
                plural(wrong, "fila", "filas")
            )
        }
        P::InRow { line, column } => format!("Fila {line}, {column}"),
        P::NewerFile { name, records } => format!(
            "{name} lo escribió un Whitehold más nuevo. Aquí se pueden leer {}, no traer ninguno. Ábralo con la página más nueva.",
            plural(records, "registro", "registros")
        ),
        P::Refused { name } => format!("{name} no se ha traído"),
        P::Unreadable { count } => {
            format!("Esta versión no puede leer {count} líneas guardadas. Se quedan donde están.")
        }
        P::ApplyRows { count } => format!("Traer {}", plural(count, "registro", "registros")),
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
