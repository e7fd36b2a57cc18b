//! Spanish words of the Shop and the Settings screen.

use crate::dryer::Emitter;
use crate::wording::PrintRoomPhrase;

pub(in crate::wording) fn phrase(phrase: &PrintRoomPhrase) -> String {
    use PrintRoomPhrase as R;
    let text = match phrase {
        R::Shop => "Taller",
        R::Settings => "Ajustes",
        R::Demo => "Este es el taller de muestra",
        R::DemoSay => {
            "Harbour Lane, su estante, su horno y sus pedidos son inventados, para que haya algo que mirar. Responda cinco preguntas y la página trabaja para su propio taller. Nada de la muestra pasa a él."
        }
        R::FiveQuestions => "Cinco preguntas",
        R::WhichWhites => "1. ¿Qué blancos hay en su estante?",
        R::WhichDryer => "2. ¿Qué horno se parece más al suyo?",
        R::DryerSay => {
            "Tome el más cercano. Sus números se pueden cambiar después, y una pasada con sonda los corrige."
        }
        R::WhichMeshes => "3. ¿Con qué mallas imprime el blanco?",
        R::HowToSay => "4. Idioma y unidades",
        R::WhichMoney => "5. ¿En qué cuenta el dinero?",
        R::OpenOurs => "Abrir nuestro taller",
        R::StillWrong => "Un número del horno no se entiende. Corríjalo arriba o déjelo vacío.",
        R::StillMissing => "Falta: al menos un blanco y una malla.",
        R::BackToDemo => "Volver a mirar el taller de muestra",
        R::OnTheShelf => "En el estante",
        R::Tubs { count } if count == "1" => "1 bote",
        R::Tubs { count } => return format!("{count} botes"),
        R::Left { kg } => return format!("quedan {kg} kg"),
        R::NotWeighed => "sin pesar",
        R::Enough { pieces } => return format!("alcanza para {pieces} piezas de este pedido"),
        R::KeptOrders => "Pedidos guardados, por día de entrega",
        R::NoOrders => "Todavía ninguno. Guarde uno en la Biblioteca y aparecerá aquí.",
        R::ChangeQuestions => "Cambiar las respuestas",
        R::OurDryer => "Nuestro horno",
        R::Language => "Idioma",
        R::Units => "Unidades",
        R::Theme => "Colores",
        R::Light => "Claros",
        R::Dark => "Oscuros",
        R::AsDevice => "Como la tableta",
        R::Humidity => "Humedad de la sala",
        R::HumiditySay => {
            "Léala en un medidor donde están las camisetas. Los pedidos nuevos empiezan con ella."
        }
        R::Transfer => "Blanco que queda en la tela",
        R::TransferPrior { percent } => {
            return format!(
                "{percent} de la malla abierta: práctica común. Mejor una impresión pesada por usted."
            );
        }
        R::TransferOwn { percent } => {
            return format!("{percent} de la malla abierta, según su impresión pesada.");
        }
        R::ForgetTransfer => "Volver a la práctica común",
        R::Drift { air, film, stop } => {
            return format!(
                "Varía ± {air} en el aire y ± {film} en la capa; la cinta se para como mucho {stop}."
            );
        }
        R::ChangeIt => "Cambiarlo en la Biblioteca",
        R::Money => "Dinero",
        R::NoMoney => "sin signo",
        R::Backup => "Guardado como archivo",
        R::BackupDue { changes } => {
            return format!(
                "{changes} cambios que aún no están en un archivo. Ya toca: un navegador puede borrar lo que guarda."
            );
        }
        R::BackupFine { changes } if changes == "0" => "No hay nada suyo por guardar.",
        R::BackupFine { changes } if changes == "1" => "1 cambio que aún no está en un archivo.",
        R::BackupFine { changes } => return format!("{changes} cambios que aún no están en un archivo."),
        R::About => "Acerca de",
        R::AboutSay => {
            "Whitehold dice qué blanco, qué ajuste del horno, si imprimir o probar, y por qué. Calcula calor, fusión y tinte; cuántas veces falla una impresión es práctica común, y así lo dice. No sustituye ninguna ficha técnica, ficha de seguridad ni norma local."
        }
        R::Licences => "Licencias",
        R::LicencesSay => {
            "Whitehold: MIT o Apache-2.0, a elección. Hecho con bibliotecas de Rust bajo MIT, Apache-2.0, Unicode y Zlib, entre ellas leptos, wasm-bindgen, serde, palette, csv, sha2, qrcodegen y quircs. Sus términos están en el código fuente."
        }
        R::Less => "menos",
        R::More => "más",
    };
    text.into()
}

pub(in crate::wording) fn emitter(emitter: Emitter) -> &'static str {
    match emitter {
        Emitter::None => "aire caliente",
        Emitter::MidInfrared => "paneles y aire",
        Emitter::NearInfrared => "lámparas",
    }
}
