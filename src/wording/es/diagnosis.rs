//! The Diagnosis screen.

use crate::diagnosis::{CauseKind, Defect, DiagnosticTest};
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

pub(in crate::wording) fn seen(seen: Defect) -> &'static str {
    match seen {
        Defect::Turned => "El blanco quedó rosado o gris",
        Defect::Ghost => "Imagen fantasma en la tela",
        Defect::Cracks => "Se agrieta al estirar",
        Defect::WashesOff => "Se va en el lavado",
        Defect::Peels => "Se despega entero",
        Defect::Board => "Se siente como cartón",
        Defect::Scorched => "La tela está amarilla",
        Defect::Shrunk => "Encogida o deformada",
        Defect::NapShows => "Pelos a través del blanco",
        Defect::ClothShows => "Se ve la tela debajo",
    }
}

pub(in crate::wording) fn cause(what: CauseKind, planned: &str, ran: &str) -> String {
    match what {
        CauseKind::Heat { planned: p, ran: r } if r > p => {
            format!("El horno se puso demasiado caliente: {ran} en vez de {planned}.")
        }
        CauseKind::Heat { .. } => format!("El horno se puso demasiado frío: {ran} en vez de {planned}."),
        CauseKind::Belt { planned: p, ran: r } if r < p => {
            format!("La cinta fue demasiado lenta: {ran} en vez de {planned}.")
        }
        CauseKind::Belt { .. } => format!("La cinta fue demasiado rápida: {ran} en vez de {planned}."),
        CauseKind::Film { planned: p, ran: r } if r > p => {
            format!("La capa es demasiado gruesa: {ran} en vez de {planned}.")
        }
        CauseKind::Film { .. } => format!("La capa es demasiado fina: {ran} en vez de {planned}."),
        CauseKind::Itself => {
            "Es la tela, el lote o el blanco: con ese ajuste pasa aunque no haya otro fallo.".into()
        }
        CauseKind::DryerHot => "El horno está más caliente de lo que marca.".into(),
        CauseKind::DryerCold => "El horno está más frío de lo que marca.".into(),
        CauseKind::BeltStopped => "La cinta estuvo parada un rato con la pieza en el calor.".into(),
        CauseKind::OnceMore => "Pasó una vez más por el horno.".into(),
        CauseKind::FilmThin => {
            "La capa es más fina de lo planeado: rasqueta gastada, pantalla floja u otra malla.".into()
        }
        CauseKind::FilmThick => {
            "La capa es más gruesa de lo planeado: rasqueta blanda, pasada lenta u otra malla.".into()
        }
        CauseKind::Reducer => "Había reductor en el blanco. Gasta la fuerza que retiene el tinte.".into(),
        CauseKind::StackedHot => "Las piezas se apilaron calientes.".into(),
        CauseKind::Damp => "La tela estaba húmeda. Secarla le quitó calor a la capa.".into(),
        CauseKind::Unseen => {
            "Algo que ninguna cuenta ve: otro bote, un panel apagado, otra tela que la de la etiqueta.".into()
        }
    }
}

pub(in crate::wording) fn remedy(what: CauseKind, seen: Defect, planned: &str) -> String {
    match what {
        CauseKind::Heat { .. } => format!("Ponga {planned}, espere a que el horno se asiente e imprima una pieza."),
        CauseKind::Belt { .. } => format!("Ponga la cinta a {planned} e imprima una pieza."),
        CauseKind::Film { .. } | CauseKind::FilmThin | CauseKind::FilmThick if seen == Defect::Board => {
            "Revuelva y entibie el blanco, abra la malla, suba la tensión, vaya más lento. El reductor es lo último, y nunca en un blanco que retiene.".into()
        }
        CauseKind::Film { .. } => format!("Vuelva la capa a {planned}: malla, rasqueta y pasadas como en la hoja."),
        CauseKind::FilmThin | CauseKind::FilmThick => "Compare malla, rasqueta y tensión con la hoja.".into(),
        CauseKind::Itself => "Anote lo visto como prueba de este lote en la Biblioteca y pregunte de nuevo: desde entonces cuenta.".into(),
        CauseKind::DryerHot | CauseKind::DryerCold => "Mida el horno y escriba en su registro lo que salió. Nunca suba el calor por si acaso.".into(),
        CauseKind::BeltStopped => "Aparte lo que estaba en el túnel. Tras una parada pase primero la cinta vacía.".into(),
        CauseKind::OnceMore => "Cuente cada paso: ponga dos pasos en el pedido y pregunte de nuevo.".into(),
        CauseKind::Reducer => "Tome un bote nuevo sin reductor. Revuélvalo y entíbielo.".into(),
        CauseKind::StackedHot => "Deje enfriar las piezas planas antes de apilarlas.".into(),
        CauseKind::Damp => "Seque antes las camisetas, o páselas una vez por el horno sin imprimir.".into(),
        CauseKind::Unseen => "Mire el bote, los paneles y la etiqueta antes de cambiar nada.".into(),
    }
}

pub(in crate::wording) fn test(test: DiagnosticTest) -> &'static str {
    match test {
        DiagnosticTest::Probe => {
            "Ponga una sonda en la capa húmeda. Su máximo frente a la hoja dice cuánto se desvía el horno."
        }
        DiagnosticTest::TimeBelt => {
            "Cronometre dos veces una marca de tiza por el túnel. Los segundos frente a la hoja dicen qué hace la cinta."
        }
        DiagnosticTest::WeighPrint => {
            "Pese una camiseta antes y después de las pasadas. Los gramos frente a la hoja dicen cómo es la capa."
        }
        DiagnosticTest::TwinPrints => {
            "Imprima una pieza como se planeó y otra como se hizo. Si solo se ve en la segunda, es esto."
        }
        DiagnosticTest::ClothPress => {
            "Planche tela blanca sobre la prenda sin imprimir dos minutos. Si se mancha, es la tela."
        }
        DiagnosticTest::CottonTwin => {
            "Imprima el mismo bote en algodón sin teñir y en esta tela. Si solo cambia en esta tela, no es el bote."
        }
        DiagnosticTest::StackTwins => {
            "Deje enfriar dos piezas separadas y dos apiladas. Si solo se ve en las apiladas, es esto."
        }
        DiagnosticTest::DryShirt => {
            "Pese una camiseta, séquela y pésela otra vez. Si pierde más de un décimo, estaba húmeda."
        }
        DiagnosticTest::AskAndLook => "Pregunte quién estaba en la prensa, y mire.",
    }
}
