//! The Shop and the Settings screen.

use crate::dryer::Emitter;
use crate::wording::PrintRoomPhrase;

pub(in crate::wording) fn phrase(phrase: &PrintRoomPhrase) -> String {
    use PrintRoomPhrase as P;
    let text = match phrase {
        P::Shop => "Taller",
        P::Settings => "Ajustes",
        P::Demo => "Este es el taller de muestra",
        P::DemoSay => {
            "Harbour Lane, su estante, su horno y sus pedidos son inventados, para que haya algo que mirar. Responda cinco preguntas y la página trabaja para su propio taller. Nada de la muestra pasa a él."
        }
        P::WhichWhites => "1. ¿Qué blancos hay en su estante?",
        P::WhichDryer => "2. ¿Qué horno se parece más al suyo?",
        P::DryerSay => {
            "Tome el más cercano. Sus números se pueden cambiar después, y una pasada con sonda los corrige."
        }
        P::WhichMeshes => "3. ¿Con qué mallas imprime el blanco?",
        P::HowToSay => "4. Idioma y unidades",
        P::WhichMoney => "5. ¿En qué cuenta el dinero?",
        P::OpenOurs => "Abrir nuestro taller",
        P::StillWrong => "Un número del horno no se entiende. Corríjalo arriba o déjelo vacío.",
        P::StillMissing => "Falta: al menos un blanco y una malla.",
        P::BackToDemo => "Volver a mirar el taller de muestra",
        P::OnTheShelf => "En el estante",
        P::Tubs { count } if count == "1" => "1 bote",
        P::Tubs { count } => return format!("{count} botes"),
        P::Left { kg } => return format!("quedan {kg} kg"),
        P::NotWeighed => "sin pesar",
        P::Enough { pieces } => return format!("alcanza para {pieces} piezas de este pedido"),
        P::KeptOrders => "Pedidos guardados, por día de entrega",
        P::NoOrders => "Todavía ninguno. Guarde uno en la Biblioteca y aparecerá aquí.",
        P::ChangeQuestions => "Cambiar las respuestas",
        P::OurDryer => "Nuestro horno",
        P::Language => "Idioma",
        P::Units => "Unidades",
        P::Theme => "Colores",
        P::Light => "Claros",
        P::Dark => "Oscuros",
        P::AsDevice => "Como la tableta",
        P::Humidity => "Humedad de la sala",
        P::HumiditySay => {
            "Léala en un medidor donde están las camisetas. Los pedidos nuevos empiezan con ella."
        }
        P::Transfer => "Blanco que queda en la tela",
        P::TransferPrior { percent } => {
            return format!(
                "{percent} de la malla abierta: práctica común. Mejor una impresión pesada por usted."
            );
        }
        P::TransferOwn { percent } => {
            return format!("{percent} de la malla abierta, según su impresión pesada.");
        }
        P::ForgetTransfer => "Volver a la práctica común",
        P::Drift { air, film, stop } => {
            return format!(
                "Varía ± {air} en el aire y ± {film} en la capa; la cinta se para como mucho {stop}."
            );
        }
        P::ChangeIt => "Cambiarlo en la Biblioteca",
        P::Money => "Dinero",
        P::NoMoney => "sin signo",
        P::Backup => "Guardado como archivo",
        P::BackupDue { changes } => {
            return format!(
                "{changes} cambios que aún no están en un archivo. Ya toca: un navegador puede borrar lo que guarda."
            );
        }
        P::BackupFine { changes } if changes == "0" => "No hay nada suyo por guardar.",
        P::BackupFine { changes } if changes == "1" => "1 cambio que aún no está en un archivo.",
        P::BackupFine { changes } => return format!("{changes} cambios que aún no están en un archivo."),
        P::About => "Acerca de",
        P::AboutSay => {
            "Whitehold dice qué blanco, qué ajuste del horno, si imprimir o probar, y por qué. Calcula calor, fusión y tinte; cuántas veces falla una impresión es práctica común, y así lo dice. No sustituye ninguna ficha técnica, ficha de seguridad ni norma local."
        }
        P::Licences => "Licencias",
        P::LicencesSay => {
            "Whitehold: MIT o Apache-2.0, a elección. Hecho con bibliotecas de Rust bajo MIT, Apache-2.0, Unicode y Zlib, entre ellas leptos, wasm-bindgen, serde, palette, csv, sha2, qrcodegen y quircs. Sus términos están en el código fuente."
        }
        P::Less => "menos",
        P::More => "más",
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
