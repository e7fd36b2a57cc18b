//! English words of the screen that says what went wrong.

use crate::diagnosis::{Seen, Test, What};
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

pub(in crate::wording) fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::Turned => "White has turned pink or grey",
        Seen::Ghost => "Ghost image on the cloth",
        Seen::Cracks => "Cracks when stretched",
        Seen::WashesOff => "Washes off",
        Seen::Peels => "Peels off whole",
        Seen::Board => "Feels like a board",
        Seen::Scorched => "Cloth is yellow",
        Seen::Shrunk => "Shrunk or out of shape",
        Seen::NapShows => "Hairs through the white",
        Seen::ClothShows => "Cloth shows through",
    }
}

pub(in crate::wording) fn cause(what: What, planned: &str, ran: &str) -> String {
    match what {
        What::Heat { planned: p, ran: r } if r > p => format!("The dryer was dialled too hot: {ran} instead of {planned}."),
        What::Heat { .. } => format!("The dryer was dialled too cool: {ran} instead of {planned}."),
        What::Belt { planned: p, ran: r } if r < p => format!("The belt ran too slow: {ran} instead of {planned}."),
        What::Belt { .. } => format!("The belt ran too fast: {ran} instead of {planned}."),
        What::Film { planned: p, ran: r } if r > p => format!("The film is too thick: {ran} instead of {planned}."),
        What::Film { .. } => format!("The film is too thin: {ran} instead of {planned}."),
        What::Itself => "It is the cloth, the lot or the white: this happens at that setting though nothing else is wrong.".into(),
        What::DryerHot => "The dryer is hotter than its dial says.".into(),
        What::DryerCold => "The dryer is cooler than its dial says.".into(),
        What::BeltStopped => "The belt stood for a while with the piece in the heat.".into(),
        What::OnceMore => "It went through the dryer once more.".into(),
        What::FilmThin => "The film is thinner than planned: worn blade, slack screen or another mesh.".into(),
        What::FilmThick => "The film is thicker than planned: soft blade, slow stroke or another mesh.".into(),
        What::Reducer => "There was reducer in the white. It spends the power to hold dye back.".into(),
        What::StackedHot => "The pieces were stacked hot.".into(),
        What::Damp => "The cloth was damp. Drying it took heat from the film.".into(),
        What::Unseen => "Something no sum sees: another tub, a dead panel, another cloth than the label says.".into(),
    }
}

pub(in crate::wording) fn remedy(what: What, seen: Seen, planned: &str) -> String {
    match what {
        What::Heat { .. } => format!("Dial {planned}, wait until the dryer has settled, and print one piece."),
        What::Belt { .. } => format!("Set the belt to {planned} and print one piece."),
        What::Film { .. } | What::FilmThin | What::FilmThick if seen == Seen::Board => {
            "Stir and warm the white, open the mesh, raise the tension, slow the stroke. Reducer comes last, and never in a white that blocks.".into()
        }
        What::Film { .. } => format!("Bring the film back to {planned}: mesh, blade and strokes as on the sheet."),
        What::FilmThin | What::FilmThick => "Check mesh, blade and tension against the sheet.".into(),
        What::Itself => "Note what was seen as a trial of this lot in the Library, and ask for the order again: it counts from then on.".into(),
        What::DryerHot | What::DryerCold => "Measure the dryer and write what it showed into its record. Never add heat to be safe.".into(),
        What::BeltStopped => "Set aside what was in the tunnel. After a stop run an empty belt first.".into(),
        What::OnceMore => "Count every pass: write two passes into the order, and ask again.".into(),
        What::Reducer => "Take a fresh tub without reducer. Stir it and warm it instead.".into(),
        What::StackedHot => "Let pieces cool flat before they are stacked.".into(),
        What::Damp => "Dry the shirts first, or run them once through the dryer unprinted.".into(),
        What::Unseen => "Look at the tub, the panels and the label before anything is changed.".into(),
    }
}

pub(in crate::wording) fn test(test: Test) -> &'static str {
    match test {
        Test::Probe => {
            "Lay a probe in the wet film. Its peak against the sheet says how far the dryer is off."
        }
        Test::TimeBelt => {
            "Time a chalk mark through the tunnel, twice. Seconds against the sheet say what the belt does."
        }
        Test::WeighPrint => {
            "Weigh a shirt before and after the strokes. Grams against the sheet say what the film is."
        }
        Test::TwinPrints => {
            "Print one piece as planned and one as it was run. If only the second shows it, this is it."
        }
        Test::ClothPress => {
            "Press white cloth on the bare garment for two minutes. If it stains, it is the cloth."
        }
        Test::CottonTwin => {
            "Print the same tub on undyed cotton and on this cloth. If only this cloth turns it, it is not the tub."
        }
        Test::StackTwins => {
            "Let two pieces cool apart and two in a stack. If only the stack shows it, this is it."
        }
        Test::DryShirt => "Weigh a shirt, dry it, weigh it again. More than a tenth lighter is damp.",
        Test::AskAndLook => "Ask who was at the press, and look.",
    }
}
