//! Spanish words of the screen that says what went wrong.

use crate::diagnosis::{Seen, Test, What};
use crate::wording::DiagnosisPhrase;

pub(in crate::wording) fn phrase(phrase: &DiagnosisPhrase) -> String {
    use DiagnosisPhrase as P;
    match phrase {
        P::Title => "Qué salió mal".into(),
        P::WhatIsSeen => "¿Qué se ve en la impresión?".into(),
        P::HowItWasRun => "¿Cómo se hizo?".into(),
        P::LeaveEmpty => "Escriba lo que se ajustó de verdad. Deje vacío lo que fue como se planeó.".into(),
        P::Causes => "Causas que encajan".into(),
        P::TapFirst => "Toque lo que se ve. Las causas se calculan con este pedido y con cómo se hizo.".into(),
        P::MendFirst => "Un número de cómo se hizo no se entiende. Corríjalo o déjelo vacío.".into(),
        P::NoPlan => "Este pedido no tiene un ajuste con que comparar. Abra un pedido que se haya impreso.".into(),
        P::Compare { planned, ran } => {
            format!("Como se planeó se ve en {planned}. Como se hizo se ve en {ran}.")
        }
        P::Same { planned } => format!("Como se planeó se ve en {planned}, y se hizo como se planeó."),
        P::Share { chance } => format!("encaja en {chance}"),
        P::DoNext => "Ahora".into(),
        P::TellApart => "Para saberlo".into(),
        P::Prior => "Cuántas veces pasan las causas ocultas es práctica común, sin fuente. Lo que hace el calor está calculado.".into(),
    }
}

pub(in crate::wording) fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::Turned => "El blanco quedó rosado o gris",
        Seen::Ghost => "Imagen fantasma en la tela",
        Seen::Cracks => "Se agrieta al estirar",
        Seen::WashesOff => "Se va en el lavado",
        Seen::Peels => "Se despega entero",
        Seen::Board => "Se siente como cartón",
        Seen::Scorched => "La tela está amarilla",
        Seen::Shrunk => "Encogida o deformada",
        Seen::NapShows => "Pelos a través del blanco",
        Seen::ClothShows => "Se ve la tela debajo",
    }
}

pub(in crate::wording) fn cause(what: What, planned: &str, ran: &str) -> String {
    match what {
        What::Heat { planned: p, ran: r } if r > p => {
            format!("El horno se puso demasiado caliente: {ran} en vez de {planned}.")
        }
        What::Heat { .. } => format!("El horno se puso demasiado frío: {ran} en vez de {planned}."),
        What::Belt { planned: p, ran: r } if r < p => {
            format!("La cinta fue demasiado lenta: {ran} en vez de {planned}.")
        }
        What::Belt { .. } => format!("La cinta fue demasiado rápida: {ran} en vez de {planned}."),
        What::Film { planned: p, ran: r } if r > p => {
            format!("La capa es demasiado gruesa: {ran} en vez de {planned}.")
        }
        What::Film { .. } => format!("La capa es demasiado fina: {ran} en vez de {planned}."),
        What::Itself => {
            "Es la tela, el lote o el blanco: con ese ajuste pasa aunque no haya otro fallo.".into()
        }
        What::DryerHot => "El horno está más caliente de lo que marca.".into(),
        What::DryerCold => "El horno está más frío de lo que marca.".into(),
        What::BeltStopped => "La cinta estuvo parada un rato con la pieza en el calor.".into(),
        What::OnceMore => "Pasó una vez más por el horno.".into(),
        What::FilmThin => {
            "La capa es más fina de lo planeado: rasqueta gastada, pantalla floja u otra malla.".into()
        }
        What::FilmThick => {
            "La capa es más gruesa de lo planeado: rasqueta blanda, pasada lenta u otra malla.".into()
        }
        What::Reducer => "Había reductor en el blanco. Gasta la fuerza que retiene el tinte.".into(),
        What::StackedHot => "Las piezas se apilaron calientes.".into(),
        What::Damp => "La tela estaba húmeda. Secarla le quitó calor a la capa.".into(),
        What::Unseen => {
            "Algo que ninguna cuenta ve: otro bote, un panel apagado, otra tela que la de la etiqueta.".into()
        }
    }
}

pub(in crate::wording) fn remedy(what: What, seen: Seen, planned: &str) -> String {
    match what {
        What::Heat { .. } => format!("Ponga {planned}, espere a que el horno se asiente e imprima una pieza."),
        What::Belt { .. } => format!("Ponga la cinta a {planned} e imprima una pieza."),
        What::Film { .. } | What::FilmThin | What::FilmThick if seen == Seen::Board => {
            "Revuelva y entibie el blanco, abra la malla, suba la tensión, vaya más lento. El reductor es lo último, y nunca en un blanco que retiene.".into()
        }
        What::Film { .. } => format!("Vuelva la capa a {planned}: malla, rasqueta y pasadas como en la hoja."),
        What::FilmThin | What::FilmThick => "Compare malla, rasqueta y tensión con la hoja.".into(),
        What::Itself => "Anote lo visto como prueba de este lote en la Biblioteca y pregunte de nuevo: desde entonces cuenta.".into(),
        What::DryerHot | What::DryerCold => "Mida el horno y escriba en su registro lo que salió. Nunca suba el calor por si acaso.".into(),
        What::BeltStopped => "Aparte lo que estaba en el túnel. Tras una parada pase primero la cinta vacía.".into(),
        What::OnceMore => "Cuente cada paso: ponga dos pasos en el pedido y pregunte de nuevo.".into(),
        What::Reducer => "Tome un bote nuevo sin reductor. Revuélvalo y entíbielo.".into(),
        What::StackedHot => "Deje enfriar las piezas planas antes de apilarlas.".into(),
        What::Damp => "Seque antes las camisetas, o páselas una vez por el horno sin imprimir.".into(),
        What::Unseen => "Mire el bote, los paneles y la etiqueta antes de cambiar nada.".into(),
    }
}

pub(in crate::wording) fn test(test: Test) -> &'static str {
    match test {
        Test::Probe => {
            "Ponga una sonda en la capa húmeda. Su máximo frente a la hoja dice cuánto se desvía el horno."
        }
        Test::TimeBelt => {
            "Cronometre dos veces una marca de tiza por el túnel. Los segundos frente a la hoja dicen qué hace la cinta."
        }
        Test::WeighPrint => {
            "Pese una camiseta antes y después de las pasadas. Los gramos frente a la hoja dicen cómo es la capa."
        }
        Test::TwinPrints => {
            "Imprima una pieza como se planeó y otra como se hizo. Si solo se ve en la segunda, es esto."
        }
        Test::ClothPress => {
            "Planche tela blanca sobre la prenda sin imprimir dos minutos. Si se mancha, es la tela."
        }
        Test::CottonTwin => {
            "Imprima el mismo bote en algodón sin teñir y en esta tela. Si solo cambia en esta tela, no es el bote."
        }
        Test::StackTwins => {
            "Deje enfriar dos piezas separadas y dos apiladas. Si solo se ve en las apiladas, es esto."
        }
        Test::DryShirt => {
            "Pese una camiseta, séquela y pésela otra vez. Si pierde más de un décimo, estaba húmeda."
        }
        Test::AskAndLook => "Pregunte quién estaba en la prensa, y mire.",
    }
}
