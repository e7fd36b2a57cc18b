//! Names of things.

use crate::ink::WhiteClass;
use crate::plan::{
    Advice, DyeClass, Finish, Opacity, Priority, Role, Sheen, Topic, UnderPrint, UseKind, Verdict,
};
use crate::textile::colour::ColourRecord;
use crate::textile::{Construction, Fibre};

pub(in crate::wording) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::GoWithCheck => "Go, hold two",
        Verdict::Trial => "Trial first",
        Verdict::Refuse => "No",
    }
}

pub(in crate::wording) fn verdict_short(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::GoWithCheck => "Go, hold two",
        Verdict::Trial => "Trial",
        Verdict::Refuse => "No",
    }
}

pub(in crate::wording) fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Fused, underside",
        Topic::Bleed => "Tint in the white",
        Topic::Rim => "Rim of the white",
        Topic::Ghosting => "Ghosting",
        Topic::Opacity => "Cloth through the white",
        Topic::Matting => "Film over nap",
        Topic::Hand => "Stiffness (1 = usual)",
        Topic::Gloss => "Gloss at 60°",
        Topic::Stretch => "Stretch",
        Topic::Adhesion => "Hold",
        Topic::Wash => "Wash",
        Topic::Scorch => "Yellowing",
        Topic::Shrink => "Shrinkage",
        Topic::Softening => "Fibre, hottest",
        Topic::FilmHeat => "Film, hottest",
        Topic::LaterHeat => "Later heat",
    }
}

pub(in crate::wording) fn past_limit(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Not fused",
        Topic::Bleed => "Dye shows",
        Topic::Rim => "Rim shows",
        Topic::Ghosting => "Ghosts",
        Topic::Opacity => "Cloth shows",
        Topic::Matting => "Nap shows",
        Topic::Hand => "Too stiff",
        Topic::Gloss => "Wrong finish",
        Topic::Stretch => "Cracks",
        Topic::Adhesion => "Peels",
        Topic::Wash => "Washes off",
        Topic::Scorch => "Cloth yellows",
        Topic::Shrink => "Cloth shrinks",
        Topic::Softening => "Fibre softens",
        Topic::FilmHeat => "Film overheats",
        Topic::LaterHeat => "Later heat too much",
    }
}

pub(in crate::wording) fn advice(advice: Advice) -> &'static str {
    match advice {
        Advice::BlockerBase => "Print the blocker first, a little under the edge of the white.",
        Advice::SmoothingScreen => {
            "After the first flash run a blank smoothing screen: it presses the nap into the warm film."
        }
        Advice::AdhesionAdditive => "Mix in the bonding additive the ink maker names.",
        Advice::StretchAdditive => "Mix in the stretch base the ink maker names.",
        Advice::NoReducer => "No reducer in this white. Stir it and warm it instead.",
        Advice::CoolBeforeStacking => "Let pieces cool before you stack them.",
        Advice::TestPrint => "Print a test of this lot before the order.",
        Advice::ClothPressTest => {
            "Press white cloth on the garment first. If it stains, treat it as bleeding."
        }
        Advice::FollowUp => "Keep one piece and look at it again in a month.",
        Advice::PreDry => "Dry the cloth, then print it at once. It takes water up again within minutes.",
        Advice::ProbeFirst => "Run a probe through the dryer first: one curve.",
        Advice::SecondStroke => "Print a second stroke after a flash.",
    }
}

pub(in crate::wording) fn class(class: WhiteClass) -> &'static str {
    match class {
        WhiteClass::Polyester => "polyester white",
        WhiteClass::LowBleed => "low-bleed white",
        WhiteClass::NonGhosting => "non-ghosting white",
        WhiteClass::Cotton => "cotton white",
        WhiteClass::Soft => "soft white",
        WhiteClass::Stretch => "stretch white",
        WhiteClass::Nylon => "nylon white",
    }
}

pub(in crate::wording) fn fibre(fibre: Fibre) -> &'static str {
    match fibre {
        Fibre::Cotton => "cotton",
        Fibre::Linen => "linen",
        Fibre::Hemp => "hemp",
        Fibre::Viscose => "viscose",
        Fibre::Modal => "modal",
        Fibre::Lyocell => "lyocell",
        Fibre::Polyester => "polyester",
        Fibre::Nylon => "nylon",
        Fibre::Elastane => "elastane",
        Fibre::Acrylic => "acrylic",
        Fibre::Polypropylene => "polypropylene",
        Fibre::Wool => "wool",
        Fibre::Silk => "silk",
        Fibre::Acetate => "acetate",
    }
}

pub(in crate::wording) fn construction(construction: Construction) -> &'static str {
    match construction {
        Construction::Jersey => "jersey",
        Construction::Interlock => "interlock",
        Construction::Rib => "rib",
        Construction::Pique => "piqué",
        Construction::Fleece => "fleece",
        Construction::Terry => "French terry",
        Construction::Mesh => "mesh",
        Construction::Tricot => "tricot",
        Construction::Waffle => "waffle",
        Construction::Woven => "woven",
        Construction::Canvas => "canvas",
        Construction::Twill => "twill",
    }
}

pub(in crate::wording) fn dye_class(class: DyeClass) -> &'static str {
    match class {
        DyeClass::Unknown => "Not known",
        DyeClass::LowEnergy => "Leaves easily",
        DyeClass::MediumEnergy => "In between",
        DyeClass::HighEnergy => "Holds on",
        DyeClass::Fluorescent => "Fluorescent",
        DyeClass::SublimationPrinted => "Sublimation print",
        DyeClass::MassDyed => "Dyed in the melt",
    }
}

pub(in crate::wording) fn priority(priority: Priority) -> &'static str {
    match priority {
        Priority::Balanced => "Balanced",
        Priority::StaysWhite => "Stays white",
        Priority::Soft => "Soft",
        Priority::Opaque => "Covers",
        Priority::Durable => "Lasts",
        Priority::Fast => "Fast",
        Priority::Cheap => "Cheap",
    }
}

pub(in crate::wording) fn role(role: Role) -> &'static str {
    match role {
        Role::TopWhite => "To be seen",
        Role::Underbase => "Under colours",
        Role::Highlight => "Over colours",
    }
}

pub(in crate::wording) fn opacity(opacity: Opacity) -> &'static str {
    match opacity {
        Opacity::Soft => "A little cloth",
        Opacity::Standard => "As usual",
        Opacity::Full => "Nothing shows",
    }
}

pub(in crate::wording) fn sheen(sheen: Sheen) -> &'static str {
    match sheen {
        Sheen::Any => "As it comes",
        Sheen::Matt => "Matt",
        Sheen::Gloss => "Glossy",
    }
}

pub(in crate::wording) fn under_print(under: UnderPrint) -> &'static str {
    match under {
        UnderPrint::BackPanel => "Back of the garment",
        UnderPrint::Nothing => "Nothing, a flat piece",
        UnderPrint::Board => "A board",
    }
}

pub(in crate::wording) fn use_kind(kind: UseKind) -> &'static str {
    match kind {
        UseKind::Everyday => "Everyday",
        UseKind::Sport => "Sport",
        UseKind::Workwear => "Work",
        UseKind::Protective => "Protective",
        UseKind::Sleepwear => "Sleep",
    }
}

pub(in crate::wording) fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::Coated => "Coated",
        Finish::WaterRepellent => "Water repellent",
        Finish::FlameResistant => "Flame resistant",
        Finish::HighVisibility => "High visibility",
    }
}

pub(in crate::wording) fn shade(record: &'static ColourRecord) -> &'static str {
    &record.name
}
