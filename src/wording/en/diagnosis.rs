//! The Diagnosis screen.

use crate::diagnosis::{CauseKind, Defect, DiagnosticTest};
use crate::wording::DiagnosisPhrase;

pub(in crate::wording) fn phrase(phrase: &DiagnosisPhrase) -> String {
    use DiagnosisPhrase as P;
    match phrase {
        P::Title => "What went wrong".into(),
        P::WhatIsSeen => "What is seen on the print?".into(),
        P::HowItWasRun => "How was it run?".into(),
        P::LeaveEmpty => "Write what was really dialled. Leave empty what was as planned.".into(),
        P::Causes => "Causes that fit".into(),
        P::TapFirst => "Tap what is seen. The causes are worked out from this order and from how it was run.".into(),
        P::MendFirst => "A number of how it was run cannot be read. Mend it, or leave it empty.".into(),
        P::NoPlan => "This order has no setting to compare with. Open an order that was printed.".into(),
        P::Compare { planned, ran } => {
            format!("As planned it shows in {planned}. As it was run it shows in {ran}.")
        }
        P::Same { planned } => format!("As planned it shows in {planned}, and it was run as planned."),
        P::Share { chance } => format!("fits in {chance}"),
        P::DoNext => "Next".into(),
        P::TellApart => "To tell".into(),
        P::Prior => "How often hidden causes happen is common practice, without a source. What the heat does is computed.".into(),
    }
}

pub(in crate::wording) fn seen(seen: Defect) -> &'static str {
    match seen {
        Defect::Turned => "White has turned pink or grey",
        Defect::Ghost => "Ghost image on the cloth",
        Defect::Cracks => "Cracks when stretched",
        Defect::WashesOff => "Washes off",
        Defect::Peels => "Peels off whole",
        Defect::Board => "Feels like a board",
        Defect::Scorched => "Cloth is yellow",
        Defect::Shrunk => "Shrunk or out of shape",
        Defect::NapShows => "Hairs through the white",
        Defect::ClothShows => "Cloth shows through",
    }
}

pub(in crate::wording) fn cause(what: CauseKind, planned: &str, ran: &str) -> String {
    match what {
        CauseKind::Heat { planned: p, ran: r } if r > p => format!("The dryer was dialled too hot: {ran} instead of {planned}."),
        CauseKind::Heat { .. } => format!("The dryer was dialled too cool: {ran} instead of {planned}."),
        CauseKind::Belt { planned: p, ran: r } if r < p => format!("The belt ran too slow: {ran} instead of {planned}."),
        CauseKind::Belt { .. } => format!("The belt ran too fast: {ran} instead of {planned}."),
        CauseKind::Film { planned: p, ran: r } if r > p => format!("The film is too thick: {ran} instead of {planned}."),
        CauseKind::Film { .. } => format!("The film is too thin: {ran} instead of {planned}."),
        CauseKind::Itself => "It is the cloth, the lot or the white: this happens at that setting though nothing else is wrong.".into(),
        CauseKind::DryerHot => "The dryer is hotter than its dial says.".into(),
        CauseKind::DryerCold => "The dryer is cooler than its dial says.".into(),
        CauseKind::BeltStopped => "The belt stood for a while with the piece in the heat.".into(),
        CauseKind::OnceMore => "It went through the dryer once more.".into(),
        CauseKind::FilmThin => "The film is thinner than planned: worn blade, slack screen or another mesh.".into(),
        CauseKind::FilmThick => "The film is thicker than planned: soft blade, slow stroke or another mesh.".into(),
        CauseKind::Reducer => "There was reducer in the white. It spends the power to hold dye back.".into(),
        CauseKind::StackedHot => "The pieces were stacked hot.".into(),
        CauseKind::Damp => "The cloth was damp. Drying it took heat from the film.".into(),
        CauseKind::Unseen => "Something no sum sees: another tub, a dead panel, another cloth than the label says.".into(),
    }
}

pub(in crate::wording) fn remedy(what: CauseKind, seen: Defect, planned: &str) -> String {
    match what {
        CauseKind::Heat { .. } => format!("Dial {planned}, wait until the dryer has settled, and print one piece."),
        CauseKind::Belt { .. } => format!("Set the belt to {planned} and print one piece."),
        CauseKind::Film { .. } | CauseKind::FilmThin | CauseKind::FilmThick if seen == Defect::Board => {
            "Stir and warm the white, open the mesh, raise the tension, slow the stroke. Reducer comes last, and never in a white that blocks.".into()
        }
        CauseKind::Film { .. } => format!("Bring the film back to {planned}: mesh, blade and strokes as on the sheet."),
        CauseKind::FilmThin | CauseKind::FilmThick => "Check mesh, blade and tension against the sheet.".into(),
        CauseKind::Itself => "Note what was seen as a trial of this lot in the Library, and ask for the order again: it counts from then on.".into(),
        CauseKind::DryerHot | CauseKind::DryerCold => "Measure the dryer and write what it showed into its record. Never add heat to be safe.".into(),
        CauseKind::BeltStopped => "Set aside what was in the tunnel. After a stop run an empty belt first.".into(),
        CauseKind::OnceMore => "Count every pass: write two passes into the order, and ask again.".into(),
        CauseKind::Reducer => "Take a fresh tub without reducer. Stir it and warm it instead.".into(),
        CauseKind::StackedHot => "Let pieces cool flat before they are stacked.".into(),
        CauseKind::Damp => "Dry the shirts first, or run them once through the dryer unprinted.".into(),
        CauseKind::Unseen => "Look at the tub, the panels and the label before anything is changed.".into(),
    }
}

pub(in crate::wording) fn test(test: DiagnosticTest) -> &'static str {
    match test {
        DiagnosticTest::Probe => {
            "Lay a probe in the wet film. Its peak against the sheet says how far the dryer is off."
        }
        DiagnosticTest::TimeBelt => {
            "Time a chalk mark through the tunnel, twice. Seconds against the sheet say what the belt does."
        }
        DiagnosticTest::WeighPrint => {
            "Weigh a shirt before and after the strokes. Grams against the sheet say what the film is."
        }
        DiagnosticTest::TwinPrints => {
            "Print one piece as planned and one as it was run. If only the second shows it, this is it."
        }
        DiagnosticTest::ClothPress => {
            "Press white cloth on the bare garment for two minutes. If it stains, it is the cloth."
        }
        DiagnosticTest::CottonTwin => {
            "Print the same tub on undyed cotton and on this cloth. If only this cloth turns it, it is not the tub."
        }
        DiagnosticTest::StackTwins => {
            "Let two pieces cool apart and two in a stack. If only the stack shows it, this is it."
        }
        DiagnosticTest::DryShirt => {
            "Weigh a shirt, dry it, weigh it again. More than a tenth lighter is damp."
        }
        DiagnosticTest::AskAndLook => "Ask who was at the press, and look.",
    }
}
