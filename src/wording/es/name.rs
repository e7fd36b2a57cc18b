//! Names of things.

use crate::ink::WhiteClass;
use crate::plan::{
    Advice, DyeClass, Finish, Opacity, Priority, Role, Sheen, Topic, UnderPrint, UseKind, Verdict,
};
use crate::textile::colour::ColourRecord;
use crate::textile::{Construction, Fibre};

pub(in crate::wording) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Adelante",
        Verdict::GoWithCheck => "Sí, guarde dos",
        Verdict::Trial => "Primero, prueba",
        Verdict::Refuse => "No se puede",
    }
}

pub(in crate::wording) fn verdict_short(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Sí",
        Verdict::GoWithCheck => "Sí, guarde dos",
        Verdict::Trial => "Prueba",
        Verdict::Refuse => "No se puede",
    }
}

pub(in crate::wording) fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Fundido por debajo",
        Topic::Bleed => "Tinte en el blanco",
        Topic::Rim => "Borde del blanco",
        Topic::Ghosting => "Sombra",
        Topic::Opacity => "Tela a través del blanco",
        Topic::Matting => "Capa sobre el pelo",
        Topic::Hand => "Rigidez (1 = lo usual)",
        Topic::Gloss => "Brillo a 60°",
        Topic::Stretch => "Estira",
        Topic::Adhesion => "Agarre",
        Topic::Wash => "Lavado",
        Topic::Scorch => "Amarilleo",
        Topic::Shrink => "Encogimiento",
        Topic::Softening => "Fibra, máximo",
        Topic::FilmHeat => "Capa, máximo",
        Topic::LaterHeat => "Calor posterior",
    }
}

pub(in crate::wording) fn past_limit(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "No funde",
        Topic::Bleed => "Se ve el tinte",
        Topic::Rim => "Se ve el borde",
        Topic::Ghosting => "Deja sombra",
        Topic::Opacity => "Se ve la tela",
        Topic::Matting => "Asoma el pelo",
        Topic::Hand => "Muy rígido",
        Topic::Gloss => "Otro acabado",
        Topic::Stretch => "Se agrieta",
        Topic::Adhesion => "Se pela",
        Topic::Wash => "No aguanta el lavado",
        Topic::Scorch => "Tela amarilla",
        Topic::Shrink => "Encoge la tela",
        Topic::Softening => "Fibra blanda",
        Topic::FilmHeat => "Capa recalentada",
        Topic::LaterHeat => "Demasiado calor después",
    }
}

pub(in crate::wording) fn advice(advice: Advice) -> &'static str {
    match advice {
        Advice::BlockerBase => "Imprima primero la barrera, un poco por dentro del borde del blanco.",
        Advice::SmoothingScreen => {
            "Tras el primer presecado pase una pantalla alisadora vacía: hunde el pelo en la capa tibia."
        }
        Advice::AdhesionAdditive => "Mezcle el aditivo de agarre que indique el fabricante de tinta.",
        Advice::StretchAdditive => "Mezcle la base elástica que indique el fabricante de tinta.",
        Advice::NoReducer => "Sin reductor en este blanco. Mejor remuévalo y témplelo.",
        Advice::CoolBeforeStacking => "Deje enfriar las piezas antes de apilarlas.",
        Advice::TestPrint => "Imprima una prueba de este lote antes del pedido.",
        Advice::ClothPressTest => {
            "Planche antes tela blanca sobre la prenda. Si mancha, trátela como tela que suelta tinte."
        }
        Advice::FollowUp => "Guarde una pieza y mírela otra vez en un mes.",
        Advice::PreDry => "Seque la tela y estámpela enseguida. Vuelve a tomar agua en minutos.",
        Advice::ProbeFirst => "Pase antes una sonda por el horno: una curva.",
        Advice::SecondStroke => "Dé una segunda pasada tras un presecado.",
    }
}

pub(in crate::wording) fn class(class: WhiteClass) -> &'static str {
    match class {
        WhiteClass::Polyester => "blanco de poliéster",
        WhiteClass::LowBleed => "blanco de poca migración",
        WhiteClass::NonGhosting => "blanco sin sombra",
        WhiteClass::Cotton => "blanco de algodón",
        WhiteClass::Soft => "blanco suave",
        WhiteClass::Stretch => "blanco elástico",
        WhiteClass::Nylon => "blanco de nailon",
    }
}

pub(in crate::wording) fn fibre(fibre: Fibre) -> &'static str {
    match fibre {
        Fibre::Cotton => "algodón",
        Fibre::Linen => "lino",
        Fibre::Hemp => "cáñamo",
        Fibre::Viscose => "viscosa",
        Fibre::Modal => "modal",
        Fibre::Lyocell => "lyocell",
        Fibre::Polyester => "poliéster",
        Fibre::Nylon => "nailon",
        Fibre::Elastane => "elastano",
        Fibre::Acrylic => "acrílico",
        Fibre::Polypropylene => "polipropileno",
        Fibre::Wool => "lana",
        Fibre::Silk => "seda",
        Fibre::Acetate => "acetato",
    }
}

pub(in crate::wording) fn construction(construction: Construction) -> &'static str {
    match construction {
        Construction::Jersey => "punto jersey",
        Construction::Interlock => "interlock",
        Construction::Rib => "canalé",
        Construction::Pique => "piqué",
        Construction::Fleece => "felpa",
        Construction::Terry => "felpa de rizo",
        Construction::Mesh => "malla",
        Construction::Tricot => "tricot",
        Construction::Waffle => "gofrado",
        Construction::Woven => "tejido plano",
        Construction::Canvas => "lona",
        Construction::Twill => "sarga",
    }
}

pub(in crate::wording) fn dye_class(class: DyeClass) -> &'static str {
    match class {
        DyeClass::Unknown => "No se sabe",
        DyeClass::LowEnergy => "Se suelta fácil",
        DyeClass::MediumEnergy => "Intermedio",
        DyeClass::HighEnergy => "Se queda",
        DyeClass::Fluorescent => "Fluorescente",
        DyeClass::SublimationPrinted => "Sublimada",
        DyeClass::MassDyed => "Teñido en masa",
    }
}

pub(in crate::wording) fn priority(priority: Priority) -> &'static str {
    match priority {
        Priority::Balanced => "Equilibrio",
        Priority::StaysWhite => "Blanco firme",
        Priority::Soft => "Suave",
        Priority::Opaque => "Cubre",
        Priority::Durable => "Dura",
        Priority::Fast => "Rápido",
        Priority::Cheap => "Barato",
    }
}

pub(in crate::wording) fn role(role: Role) -> &'static str {
    match role {
        Role::TopWhite => "Lo que se ve",
        Role::Underbase => "Bajo colores",
        Role::Highlight => "Sobre colores",
    }
}

pub(in crate::wording) fn opacity(opacity: Opacity) -> &'static str {
    match opacity {
        Opacity::Soft => "Algo de tela",
        Opacity::Standard => "Lo normal",
        Opacity::Full => "Nada",
    }
}

pub(in crate::wording) fn sheen(sheen: Sheen) -> &'static str {
    match sheen {
        Sheen::Any => "Como salga",
        Sheen::Matt => "Mate",
        Sheen::Gloss => "Brillante",
    }
}

pub(in crate::wording) fn under_print(under: UnderPrint) -> &'static str {
    match under {
        UnderPrint::BackPanel => "Espalda de la prenda",
        UnderPrint::Nothing => "Nada, pieza plana",
        UnderPrint::Board => "Un cartón",
    }
}

pub(in crate::wording) fn use_kind(kind: UseKind) -> &'static str {
    match kind {
        UseKind::Everyday => "Diario",
        UseKind::Sport => "Deporte",
        UseKind::Workwear => "Trabajo",
        UseKind::Protective => "Protección",
        UseKind::Sleepwear => "Dormir",
    }
}

pub(in crate::wording) fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::Coated => "Recubierta",
        Finish::WaterRepellent => "Repele agua",
        Finish::FlameResistant => "Ignífuga",
        Finish::HighVisibility => "Alta visibilidad",
    }
}

pub(in crate::wording) fn shade(record: &'static ColourRecord) -> &'static str {
    &record.nombre
}
