//! Spanish, with usted.

use super::{Facts, Label, Phrase, Quantity, Voice};
use crate::ink::WhiteClass;
use crate::library::shelf::Trouble;
use crate::plan::{Advice, Code, DyeClass, Finish, Opacity, Priority, Role, Topic, UseKind, Verdict};
use crate::quantity::Problem;
use crate::textile::{Construction, Fibre};

/// Days of the week from Sunday, short.
pub(super) const DAYS: [&str; 7] = ["dom", "lun", "mar", "mié", "jue", "vie", "sáb"];
/// Months, short.
pub(super) const MONTHS: [&str; 12] =
    ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];

pub(super) fn reason(code: Code, v: Facts<'_>) -> String {
    use Code as C;
    match code {
        C::ClothBleeds if v.number("holds") == Some(0.0) => format!(
            "La tela suelta tinte. {} no puede retener tanto: lo probable tras {} días es {}, hasta {}, límite {}.{}",
            v.word("white"), v.count("days"), v.tenth("likely"), v.tenth("high"), v.tenth("limit"), staining(v)
        ),
        C::ClothBleeds => format!(
            "La tela suelta tinte. {} retiene casi todo: lo probable tras {} días es {}, en el peor caso {}, límite {}.{}",
            v.word("white"), v.count("days"), v.tenth("likely"), v.tenth("high"), v.tenth("limit"), staining(v)
        ),
        C::NothingToBleed => format!(
            "Nada suelta tinte. A este calor el tinte se queda en {}, así que basta el blanco más suave y barato.",
            if v.has_word("fibre") { v.words("fibre") } else { "esta tela".into() }
        ),
        C::DyeUnknown => "No conocemos el tinte. Por eso el margen es amplio. Pregunte al fabricante de la prenda o haga una prueba.".into(),
        C::LotNew if v.has_word("lot") => format!(
            "El lote {} es nuevo aquí. Solo una prueba lo dirá.", v.word("lot")
        ),
        C::LotNew => "Este lote es nuevo aquí. Solo una prueba lo dirá.".into(),
        C::EvidenceCounted => format!(
            "Probado aquí. {} de {} piezas viraron en {} días, y eso cuenta.",
            v.count("turned"), v.count("pieces"), v.count("days")
        ),
        C::FusionHolds => format!(
            "Funde del todo. Por debajo llega a {}, a {} en el lado frío; necesita {}.",
            v.share("likely"), v.share("low"), v.share("limit")
        ),
        C::FusionShort => format!(
            "Puede no fundir. En el lado frío llega por debajo solo a {}; necesita {}. Se agrietaría al lavar.",
            v.share("low"), v.share("limit")
        ),
        C::WindowOpen => format!("La ventana está abierta. {}", room(v)),
        C::WindowNarrow => format!("La ventana es estrecha. {} No suba el calor por si acaso.", room(v)),
        C::WindowClosed if v.code("side") == "at-least" => format!(
            "La ventana está cerrada. Este horno no lleva la capa por debajo a unos {}, donde funde la tinta. Más calor, más lento, o un blanco de baja temperatura.",
            v.heat("peak")
        ),
        C::WindowClosed => format!(
            "La ventana está cerrada. La tinta funde a unos {}, y esta tela no lo aguanta en este horno.",
            v.heat("peak")
        ),
        C::WaterSlows => format!(
            "La tela lleva agua. Es el {} de su peso y secarla ocupa {} del horno.",
            v.percent("water_percent"), v.seconds("seconds")
        ),
        C::HeavyCloth => format!(
            "La tela pesada tarda en calentarse. Con {} necesita {} de calor.", v.weight("gsm"), v.seconds("seconds")
        ),
        C::Covers => format!(
            "Cubre. Bajo una capa de {} la tela se nota {}; hasta {} vale.",
            v.film("film"), v.tenth("shows"), v.tenth("limit")
        ),
        C::CoversShort => format!(
            "No cubre. Bajo una capa de {} la tela se nota {}; hasta {} vale. Dé otra pasada o abra la malla.",
            v.film("film"), v.tenth("shows"), v.tenth("limit")
        ),
        C::OneStrokeMore => format!(
            "Una pasada más. Capa {}, y la tela se nota {}.", v.film("film"), v.tenth("shows")
        ),
        C::CoarserMesh => format!(
            "La malla siguiente más abierta, {}. Capa {}, y la tela se nota {}.",
            v.threads("threads"), v.film("film"), v.tenth("shows")
        ),
        C::LooksBluish => format!(
            "Un blanco fino se ve azulado. Con {} queda {} más azul que el blanco pleno. Una capa más gruesa lo templa.",
            v.film("film"), v.tenth("bluer")
        ),
        C::LooksDull => format!(
            "La barrera gris apaga el blanco. Queda {} más oscuro que el blanco pleno. Más blanco encima lo levanta.",
            v.tenth("darker")
        ),
        C::MayGhost => format!(
            "Puede dejar sombra en este tono. A los blancos de esta clase les pasa en {}. No apile en caliente.",
            v.chance("frequency")
        ),
        C::HandSoft => "El tacto es suave. Capa fina, blanco flexible.".into(),
        C::HandStiff => "El tacto es rígido. Ayuda una capa más fina o un blanco más suave.".into(),
        C::StretchHolds => format!(
            "Estira con la tela. La capa aguanta {}, el trabajo pide {}.", v.percent("stretch"), v.percent("needed")
        ),
        C::StretchShort => format!(
            "Puede agrietarse al estirar. La capa aguanta unos {}, el trabajo pide {}: sobra muy poco. Use un blanco elástico.",
            v.percent("stretch"), v.percent("needed")
        ),
        C::AdhesionUnknown => "No está hecho para agarrar aquí. En nailon y recubrimientos la capa puede pelarse al lavar. Pruebe con cinta.".into(),
        C::AdhesionHolds => "Está hecho para agarrar en nailon.".into(),
        C::NapShows => format!(
            "El pelo asoma. Mide {}, la capa {}. Pase una pantalla alisadora tras el primer presecado.",
            v.film("nap"), v.film("film")
        ),
        C::SmoothingHelps => format!(
            "Una pantalla alisadora tumba el pelo. Mide {}, más de lo que sujeta esta capa.", v.film("nap")
        ),
        C::HolesLoseFilm => format!(
            "La malla tiene huecos. {} de la cara está abierto y la tinta se cuela.", v.share("open_percent")
        ),
        C::LowCureHelps => "Funde con menos calor. Menos calor suelta menos tinte.".into(),
        C::NoBlocking => format!(
            "{} no retiene tinte. Sobre poliéster teñido vira en pocos días.", v.word("white")
        ),
        C::RimBleeds => super::aged::rim(v),
        C::WaysCompared | C::PaidFor | C::NothingPaid | C::OffFront | C::ForMore => super::trade::reason(code, v),
        C::BlockerHelps => "La barrera recoge el tinte. Cuesta una pantalla y un presecado.".into(),
        C::ScorchNear => "La tela puede amarillear. Menos tiempo de calor, o aire más frío.".into(),
        C::ShrinkNear => format!(
            "La tela puede encoger. Llega a {} y encoge desde {}.", v.heat("peak"), v.heat("limit")
        ),
        C::SoftensNear => format!(
            "La fibra se ablanda: {}. Llega a {} y se ablanda desde {}.", v.word("fibre"), v.heat("peak"), v.heat("limit")
        ),
        C::CoatingNear => format!(
            "El recubrimiento puede sufrir. La tela llega a {}, y un recubrimiento aguanta unos {}.", v.heat("peak"), v.heat("limit")
        ),
        C::OpensCooler => format!("Deje bajar el horno a {}. {}", v.heat("set"), opened(v)),
        C::OpensHotter => format!("Suba el horno a {}. {}", v.heat("set"), opened(v)),
        C::OpensSlower => format!(
            "Serviría una cinta más lenta, {} a {}. {}", v.belt("belt"), v.heat("set"), opened_by_gear(v)
        ),
        C::OpensFaster => format!(
            "Serviría una cinta más rápida, {} a {}. {}", v.belt("belt"), v.heat("set"), opened_by_gear(v)
        ),
        C::OpensPreDry => format!(
            "Seque antes la tela. Lleva {} de agua; seca, {} a {} sirve. {}",
            v.percent("water_percent"), v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensThinner => format!(
            "Estampe una capa más fina. Con {}, {} a {} sirve. {}", v.film("film"), v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensTwoPasses => format!(
            "Páselo dos veces, {} a {}. {} El tinte cuenta las dos pasadas.", v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensLowCure => format!(
            "Serviría un blanco de baja temperatura, {} a {}. {}", v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::MeltsInCure => format!(
            "La fibra se derrite en el horno: {}. Se derrite a {}, por debajo de cualquier curado de plastisol. Use otro proceso.",
            v.word("fibre"), v.heat("limit")
        ),
        C::ColoursSetHeat => "Los colores mandan el calor. Son tintas corrientes, así que un blanco de baja temperatura no gana nada aquí.".into(),
        C::MakerWordNeeded => "Pregunte antes al fabricante. Una estampa puede anular lo que protege a quien la lleva.".into(),
        C::CustomerBans => format!(
            "El cliente prohíbe {}. Todo plastisol de aquí lo contiene. Ofrezca otro proceso.", v.word("ban")
        ),
        C::ReducerSpoils => format!(
            "El reductor estropea el blanco. Con {} pierde fuerza para retener tinte. No lo use.", v.percent("percent")
        ),
        C::ShelfEmpty => "El estante está vacío. Marque en El taller los blancos que tiene.".into(),
        C::Lapse => format!(
            "Hay fallos que ninguna cuenta ve. Un cubo cambiado o un panel apagado estropean cerca de {} de los trabajos.", v.percent("percent")
        ),
        C::MoneyAddsCare => format!(
            "Hay mucho en juego. {} piezas que valen {} juntas piden mirar una vez más.", v.count("pieces"), v.count("value")
        ),
        C::OnePlan if v.number("value").is_some_and(|value| value >= 1.0) => format!(
            "Un solo plan para todas. {} sirve para las {} prendas y ahorra {} frente a un plan para cada una.",
            v.word("white"), v.count("garments"), v.count("value")
        ),
        C::OnePlan => format!(
            "Un solo plan para todas. {} sirve para las {} prendas.", v.word("white"), v.count("garments")
        ),
        C::SplitCheaper => format!(
            "Divídalo, un plan para cada una de las {} prendas. {} serviría para todas y cuesta {} más.",
            v.count("garments"), v.word("white"), v.count("value")
        ),
        C::SplitSafer => format!(
            "Divídalo, un plan para cada una de las {} prendas. {} serviría para todas con un veredicto más duro.",
            v.count("garments"), v.word("white")
        ),
        C::SplitOnly => format!(
            "Divídalo, un plan para cada una de las {} prendas. Ningún blanco del estante sirve para todas.",
            v.count("garments")
        ),
        C::SomeRefused => format!(
            "{} de {} prendas no se pueden imprimir. Las demás pueden seguir solas.",
            v.count("refused"), v.count("garments")
        ),
        C::BuyClass if v.number("low_cure") == Some(1.0) => {
            format!("Con un {} de baja temperatura: no está en su estante", v.class("class"))
        }
        C::BuyClass => format!("Con un {}: no está en su estante", v.class("class")),
        C::UseBlocker if v.has_word("white") => format!(
            "Con una barrera bajo {}: no está en su estante, una pantalla y un presecado más", v.word("white")
        ),
        C::UseBlocker => "Con una barrera debajo: una pantalla y un presecado más".into(),
        C::IfUndyed => "Si el poliéster resulta sin teñir".into(),
        C::IfHotter => format!("Si el horno va {} de más", v.kelvin("kelvin")),
        C::OtherHeat => "Con otro horno, o con un ajuste que este no alcanza".into(),
        C::OtherProcess => "Con otro proceso que no sea plastisol".into(),
        C::CheckStretch => "Deje enfriar la primera pieza y estírela. Sin grietas: está fundida.".into(),
        C::CheckProbe => "Ponga una sonda en la capa húmeda y pásela por el horno. Compare el máximo.".into(),
        C::CheckCover => "Mire la primera pieza a la luz. La tela no debe verse.".into(),
        C::CheckScorch => "Ponga la primera pieza junto a una sin imprimir. No debe estar más amarilla.".into(),
        C::CheckSize => "Mida la primera pieza antes y después. No debe encoger.".into(),
        C::CheckAdhesion => "Frote la primera pieza en frío y despegue una cinta.".into(),
        C::CheckHand => "Toque la primera pieza. Demasiado rígida: capa más fina.".into(),
        C::CheckNap => "Mire la primera pieza de canto. El pelo debe quedar bajo el blanco.".into(),
        C::HotGarments => format!(
            "Las piezas salen a unos {}. La capa sigue blanda medio minuto. Guantes al final de la cinta; deje enfriar antes de apilar.",
            v.heat("exit")
        ),
        C::OverheatedPvc => format!(
            "La capa puede llegar a {} y pasa {} sobre el calor en que empieza a descomponerse. El plastisol recalentado suelta un gas ácido. Extracción siempre en marcha; si huele fuerte, salga. Mandan la ficha de seguridad del fabricante y las normas locales.",
            v.heat("peak"), v.seconds("seconds")
        ),
        C::BeltStop => "Una cinta parada quema tela en segundos. Paneles apagados o levantados, cinta vacía, extintor a mano. Limpie la pelusa del horno y del conducto.".into(),
        C::CoatedBelt => "Las cintas y láminas antiadherentes sueltan humo tóxico si se recalientan. No deje la cinta parada bajo paneles calientes.".into(),
        C::FlammableVapour => "El limpiapantallas y el adhesivo en aerosol arden. Lejos del presecado y de la boca del horno.".into(),
        C::Isocyanate => format!(
            "Los aditivos de agarre con isocianato pueden causar alergia de por vida. Solo personal formado ({}, desde {}, a partir de {}), guantes, sin pulverizar ni calentar el bote abierto; quien tenga alergia, lejos. No en ropa de bebé ni sobre la piel sin la palabra del fabricante. Manda la ficha de seguridad.",
            v.word("law"), v.word("since"), v.by_law()
        ),
        C::ChildCare => format!(
            "Lo lleva un niño de {} años. En artículos de puericultura {} (desde {}) permite como mucho {} de cada uno de ocho ftalatos; {} añade tres más si el niño puede llevárselo a la boca. Cuentan también las piezas pequeñas. Pida la declaración del fabricante de tinta y mire la ley donde se vende.",
            v.count("age"), v.word("law"), v.word("since"), v.by_law(), v.word("mouth")
        ),
        C::ChildProduct => format!(
            "Producto para un niño de {} años. Plomo: como mucho {} ppm en la tinta que forma parte de la tela, {} ppm en una capa que se raspa ({}, desde {}). Puede tocar ensayo, certificado y etiqueta de rastreo. Mire la ley donde se vende.",
            v.count("age"), v.count("limit"), v.count("coating"), v.word("law"), v.word("since")
        ),
        C::PhthalatesInArticle => format!(
            "{} (desde {}): menos de {} de cuatro ftalatos juntos en cualquier artículo estampado. Pregunte al fabricante de tinta y mire la ley donde se vende.",
            v.word("law"), v.word("since"), v.by_law()
        ),
        C::SleepwearFlammability => "La ropa de dormir debe pasar un ensayo de llama, con la estampa. Pregunte al fabricante de la prenda.".into(),
        C::MeltBurns => "Esta fibra se derrite y se pega a la piel. Nada debe colgar sobre un panel; no meta las manos en el túnel.".into(),
        C::DyeFume => "El tinte y el plastificante salen con la extracción. Llévela al exterior y limpie el condensado.".into(),
        C::HotHold => "Mantenga piezas calientes en un horno con termostato, nunca uno de comida, nunca sin vigilar.".into(),
        C::AskDyed => "¿Está teñido el poliéster?".into(),
        C::AskDyeClass => "¿Qué tinte lleva el poliéster? Lo sabe el fabricante de la prenda.".into(),
        C::AskWeight => "¿Cuánto pesa la tela?".into(),
        C::AskConstruction => "¿Cómo está hecha la tela?".into(),
        C::AskMeasureDryer => "Pase una sonda por el horno. Un horno medido pide menos margen.".into(),
        C::AskLotTest => "Imprima este lote y mírelo más tarde.".into(),
        C::AskColour => "¿De qué color es la prenda?".into(),
        C::ReadShare if v.has_word("section") => {
            format!("{} {}, {}", v.percent("percent"), v.word("fibre").to_lowercase(), v.word("section"))
        }
        C::ReadShare => format!("{} de {}", v.percent("percent"), v.word("fibre").to_lowercase()),
        C::ReadConstruction => format!("tejido {}", v.word("construction").to_lowercase()),
        C::ReadWeight => format!("pesa {}", v.weight("gsm")),
        C::ReadColour => format!("color {}", v.word("colour")),
        C::AssumedConstruction => format!("suponemos {}", v.word("construction").to_lowercase()),
        C::AssumedWeight => format!("suponemos {}", v.weight("gsm")),
        C::AssumedDyed => "suponemos poliéster teñido".into(),
        C::AssumedColour => format!("suponemos {}", v.word("colour")),
        C::LabelNote => label_note(v),
        C::LeftOut => format!("sin contar: {}", v.word("words")),
    }
}

/// What the label's reader assumed, asks or left aside.
fn label_note(v: Facts<'_>) -> String {
    let (words, fibre) = (v.word("words"), v.word("fibre"));
    match v.code("note") {
        "assumed-whole" => format!("suponemos todo {fibre}"),
        "assumed" => format!("«{words}»: suponemos {fibre}"),
        "ask" => format!("«{words}»: ¿es {fibre}?"),
        "read-as" => format!("«{words}» leído como {fibre}"),
        "assumed-shares" => format!("«{words}»: suponemos {}", v.word("shares")),
        "other-fibres" => format!("{} de otras fibras", v.percent("percent")),
        "rounded" => format!("las partes suman {}, por redondeo", v.percent("percent")),
        "excludes" => format!("la etiqueta excluye: {words}"),
        _ => format!("«{words}» aquí no cambia nada"),
    }
}

/// How far an opened window can be trusted.
fn opened(v: Facts<'_>) -> String {
    if v.number("robust") == Some(1.0) {
        "Así la ventana está abierta, con deriva y parada de cinta incluidas.".into()
    } else {
        "Así funciona según lo previsto, sin margen para la deriva.".into()
    }
}

fn opened_by_gear(v: Facts<'_>) -> String {
    format!("Esta no llega; pregunte cuánto cuesta otra transmisión. {}", opened(v))
}

/// What is left on each side of the window.
fn room(v: Facts<'_>) -> String {
    let mut sides = Vec::new();
    for (name, side) in [("cooler", "menos"), ("hotter", "más")] {
        if v.number(name).is_some() {
            sides.push(format!("{} {side}", v.kelvin(name)));
        }
    }
    for (name, side) in [("slower", "más lento"), ("faster", "más rápido")] {
        if v.number(name).is_some() {
            sides.push(format!("{} {side}", v.belt(name)));
        }
    }
    match sides.pop() {
        None => "Llega más allá de lo que puede este horno.".into(),
        Some(last) if sides.is_empty() => format!("Queda: {last}."),
        Some(last) => format!("Queda: {} o {last}.", sides.join(", ")),
    }
}

/// The staining grade of the likely tint, where there is one. It forgives a tint, so it never stands alone.
fn staining(v: Facts<'_>) -> String {
    if v.has_word("grade") {
        format!(" En grado de manchado, {}; los grados perdonan un tinte.", v.code("grade"))
    } else {
        String::new()
    }
}

pub(super) fn problem(problem: &Problem, value: &str, voice: Voice) -> String {
    match problem {
        Problem::NotANumber => format!("«{value}» no es un número. Escriba cifras, con coma o punto."),
        Problem::OutOfRange { min, max, unit } => format!(
            "{value} está fuera de rango. Sirve de {} a {} {unit}.",
            voice.bare(Quantity::Plain, *min),
            voice.bare(Quantity::Plain, *max)
        ),
        Problem::Empty => "Aquí falta algo. Escríbalo como está en la prenda.".into(),
        Problem::Unknown { nearest, accepted } => {
            let way_out = if !nearest.is_empty() {
                format!("¿Quiso decir {}?", nearest.join(", "))
            } else if !accepted.is_empty() {
                format!("Se conocen: {}.", accepted.join(", "))
            } else {
                "Escríbalo de otra manera.".into()
            };
            format!("«{value}» no se conoce. {way_out}")
        }
        Problem::SumNot100 { sum, section } if section.is_empty() => {
            format!("Las partes suman {}. Una etiqueta suma 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::SumNot100 { sum, section } => {
            format!(
                "Las partes de {section} suman {}. Una etiqueta suma 100.",
                voice.bare(Quantity::Plain, *sum)
            )
        }
        Problem::TooLong { max } => format!("Demasiado largo. Caben {max} letras."),
        Problem::Contradiction { with } => {
            format!("«{value}» y {with} no pueden ser ciertos a la vez. Cambie uno.")
        }
        Problem::NotUnderstood => format!(
            "«{value}» no se pudo leer. Escriba una parte y una fibra, como 60% algodón 40% poliéster."
        ),
    }
}

/// What is wrong with the store, and the way out.
pub(super) fn trouble(trouble: &Trouble) -> String {
    use Trouble as T;
    match trouble {
        T::Full => "El disco está lleno, o el navegador no le da más a esta página. Lo que cambie ahora no se guarda: libere espacio, o guárdelo como archivo.".into(),
        T::Refused => "Este navegador no guarda nada de esta página. Ocurre en ventanas privadas o por una norma del taller: guarde su trabajo como archivo antes de cerrarla.".into(),
        T::Wiped => "El navegador ha borrado lo que estaba guardado aquí. Abra el último archivo que guardó; desde ahora vuelve a guardar.".into(),
        T::Blocked => "Otra pestaña tiene ocupado el almacén con una versión anterior de esta página. Ciérrela y esta seguirá.".into(),
        T::Newer => "Aquí se usó una versión más nueva de esta página. Esta lee lo guardado y no cambia nada: abra la nueva, o guarde su trabajo como archivo.".into(),
        T::Closed => "El almacén se cerró mientras la página estaba abierta. Guarde su trabajo como archivo y cargue la página otra vez.".into(),
        T::NotOurs => "Ese archivo no contiene ningún pedido. No se cambió nada: abra un archivo guardado aquí.".into(),
        T::Failed(said) => format!("El navegador no pudo guardar. Dice «{said}»: guarde su trabajo como archivo."),
    }
}

pub(super) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Adelante",
        Verdict::GoWithCheck => "Sí, guarde dos",
        Verdict::Trial => "Primero, prueba",
        Verdict::Refuse => "No se puede",
    }
}

pub(super) fn verdict_short(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Sí",
        Verdict::GoWithCheck => "Sí, guarde dos",
        Verdict::Trial => "Prueba",
        Verdict::Refuse => "No se puede",
    }
}

pub(super) fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Fundido por debajo",
        Topic::Bleed => "Tinte en el blanco",
        Topic::Rim => "Borde del blanco",
        Topic::Ghosting => "Sombra",
        Topic::Opacity => "Tela a través del blanco",
        Topic::Matting => "Capa sobre el pelo",
        Topic::Hand => "Rigidez",
        Topic::Stretch => "Estira",
        Topic::Adhesion => "Agarre",
        Topic::Scorch => "Amarilleo",
        Topic::Shrink => "Encogimiento",
        Topic::Softening => "Fibra, máximo",
        Topic::FilmHeat => "Capa, máximo",
    }
}

pub(super) fn past_limit(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "No funde",
        Topic::Bleed => "Se ve el tinte",
        Topic::Rim => "Se ve el borde",
        Topic::Ghosting => "Deja sombra",
        Topic::Opacity => "Se ve la tela",
        Topic::Matting => "Asoma el pelo",
        Topic::Hand => "Muy rígido",
        Topic::Stretch => "Se agrieta",
        Topic::Adhesion => "Se pela",
        Topic::Scorch => "Tela amarilla",
        Topic::Shrink => "Encoge la tela",
        Topic::Softening => "Fibra blanda",
        Topic::FilmHeat => "Capa recalentada",
    }
}

pub(super) fn advice(advice: Advice) -> &'static str {
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
        Advice::SlowerBelt => "Lleve la cinta más lenta.",
        Advice::FasterBelt => "Lleve la cinta más rápida.",
        Advice::CoolerDryer => "Baje el horno.",
        Advice::HotterDryer => "Suba el horno.",
        Advice::PreDry => "Seque la tela antes de imprimir.",
        Advice::SecondStroke => "Dé una segunda pasada tras un presecado.",
        Advice::LowCureWhite => "Use un blanco de baja temperatura.",
        Advice::SplitOrder => "Parta el pedido: estas prendas piden maneras distintas.",
        Advice::OutsideHeatLimit => "Esta tela no aguanta el calor de un curado. No la fuerce.",
        Advice::MakerWordNeeded => "Consiga antes por escrito la palabra del fabricante.",
    }
}

pub(super) fn class(class: WhiteClass) -> &'static str {
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

pub(super) fn fibre(fibre: Fibre) -> &'static str {
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

pub(super) fn construction(construction: Construction) -> &'static str {
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

pub(super) fn dye_class(class: DyeClass) -> &'static str {
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

pub(super) fn priority(priority: Priority) -> &'static str {
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

pub(super) fn role(role: Role) -> &'static str {
    match role {
        Role::TopWhite => "Lo que se ve",
        Role::Underbase => "Bajo colores",
        Role::Highlight => "Sobre colores",
    }
}

pub(super) fn opacity(opacity: Opacity) -> &'static str {
    match opacity {
        Opacity::Soft => "Algo de tela",
        Opacity::Standard => "Lo normal",
        Opacity::Full => "Nada",
    }
}

pub(super) fn use_kind(kind: UseKind) -> &'static str {
    match kind {
        UseKind::Everyday => "Diario",
        UseKind::Sport => "Deporte",
        UseKind::Workwear => "Trabajo",
        UseKind::Protective => "Protección",
        UseKind::Sleepwear => "Dormir",
    }
}

pub(super) fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::Coated => "Recubierta",
        Finish::WaterRepellent => "Repele agua",
        Finish::FlameResistant => "Ignífuga",
        Finish::HighVisibility => "Alta visibilidad",
    }
}

pub(super) fn label(label: Label) -> &'static str {
    use Label as L;
    match label {
        L::Sections => "Secciones",
        L::Job => "Pedido",
        L::Window => "Ventana",
        L::Library => "Biblioteca",
        L::Forecast => "Previsión",
        L::Sheet => "Hoja",
        L::Wrong => "Fallos",
        L::FilmRan => "Capa de blanco",
        L::Shop => "Taller",
        L::Settings => "Ajustes",
        L::HeatedLength => "Largo con calor, m",
        L::HottestSet => "Lo más caliente que se puede poner",
        L::Undo => "Deshacer",
        L::Redo => "Rehacer",
        L::UnitsAre => "Cambiar unidades",
        L::ChangeLanguage => "Cambiar a español",
        L::Theme => "Claro u oscuro",
        L::KeptHere => "guardado en este navegador",
        L::NotKeptHere => "sin guardar: este navegador no lo conserva",
        L::Saving => "guardando",
        L::SaveAsFile => "Guardar como archivo",
        L::OpenFile => "Abrir un archivo",
        L::Noticed => "Entendido",
        L::Offline => "Funciona sin internet. Nada sale de esta página.",
        L::Order => "El pedido",
        L::ThisWeek => "Esta semana en Harbour Lane",
        L::OpenOrder => "Abrir un pedido",
        L::NewOrder => "Pedido nuevo",
        L::DemoNote => "Pedidos inventados, para probar.",
        L::SkipToAnswer => "Ir a la respuesta",
        L::NoAnswerYet => "Aún sin respuesta",
        L::NoAnswerSay => "Algo del pedido no se puede leer. Está señalado junto a su campo.",
        L::Reckoning => "Calculando …",
        L::White => "Blanco",
        L::DryerAir => "Aire del horno",
        L::Belt => "Cinta",
        L::InTheHeat => "En el calor",
        L::OnePass => "un paso",
        L::LowCure => "baja temperatura",
        L::Limit => "límite",
        L::Stale => "Su última respuesta sigue aquí",
        L::StaleSay => "Es la del último pedido que se pudo leer. No se ha perdido nada.",
        L::BackToThat => "Volver a ese",
        L::GoSay => "Imprima el pedido. Revise la primera pieza.",
        L::GoWithCheckSay => "Imprima el pedido, guarde dos piezas hasta mañana y mírelas antes de enviar.",
        L::RefuseSay => "Con lo que hay en el estante, no. Abajo está por qué y qué lo haría posible.",
        L::ShowWindow => "Ver la ventana",
        L::WindowClosedHere => "ningún ajuste sirve",
        L::PrintRun => "La tirada",
        L::NoBlocker => "Sin barrera",
        L::WithThisWhite => "con este blanco no",
        L::Blocker => "barrera",
        L::Flash => "Presecar",
        L::DryTacky => "seco, aún pegajoso",
        L::SmoothingScreen => "Pantalla alisadora",
        L::NapPressedDown => "pelo tumbado",
        L::Dryer => "Horno",
        L::CoolThenStack => "enfriar y apilar",
        L::Why => "Por qué",
        L::Careful => "Cuidado",
        L::FirstPiece => "En la primera pieza",
        L::WouldChange => "Qué cambiaría la respuesta",
        L::MeterFile => "Color de un archivo del medidor",
        L::EveryGarment => "Todas las prendas del pedido",
        L::AnsweredAbove => "la respuesta de arriba es para esta",
        L::WorthKnowing => "Vale la pena averiguar",
        L::OtherWays => "Otras maneras",
        L::ShelfFirst => "con lo que hay en el estante",
        L::CannotDoIt => "No sirven",
        L::Margins => "Todos los márgenes",
        L::ToDo => "Hacer y evitar",
        L::OnThisCloth => "Su blanco sobre esta tela",
        L::FreshAndForecast => "izquierda recién impreso, derecha previsto",
        L::ClothFigure => {
            "Diferencia de color ΔE00 con una impresión reciente. 1 es lo que ve un ojo experto. Las pantallas varían; decide la prueba."
        }
        L::BestCase => "mejor caso",
        L::Likely => "lo probable",
        L::BadEnd => "peor caso",
        L::WorseOneInTen => "1 de 10 es peor",
        L::Verdict => "Veredicto",
        L::PerHour => "Por hora",
        L::PerPrint => "Por pieza",
        L::LateFault => "Fallo tardío",
        L::Use => "Usar",
        L::Chosen => "elegido",
        L::Needs => "Necesita",
        L::Value => "Probable",
        L::Range => "8 de 10",
        L::What => "Qué",
        L::AtLeast => "al menos",
        L::AtMost => "como mucho",
        L::MostIt => "lo más",
        L::TheGarment => "La prenda",
        L::LabelSays => "Lo que dice la etiqueta",
        L::Understood => "Entendido",
        L::IsItDyed => "¿Está teñido el poliéster?",
        L::Yes => "Sí",
        L::No => "No",
        L::NotKnown => "No se sabe",
        L::DyeKind => "Cómo se sujeta su tinte",
        L::Lot => "Lote",
        L::Humidity => "Humedad del taller",
        L::Weight => "Peso",
        L::Colour => "Color",
        L::AddedWater => "Agua encima",
        L::Finishes => "Acabado",
        L::None => "Ninguno",
        L::AnotherGarment => "Otra prenda",
        L::RemoveGarment => "Quitar esta prenda",
        L::TheOrder => "El pedido",
        L::Name => "Nombre",
        L::Pieces => "Piezas",
        L::Spares => "De reserva",
        L::PieceWorth => "Valor de una pieza",
        L::PrintArea => "Estampa",
        L::Covered => "Cubierto",
        L::MattersMost => "Lo más importante",
        L::WhiteIsFor => "El blanco es",
        L::MustCover => "Qué puede verse debajo",
        L::MustStretch => "Debe estirar",
        L::Reducer => "Reductor",
        L::Overhang => "Blanco más allá de su barrera",
        L::LookedAt => "Se mira a los",
        L::Kind => "Uso",
        L::StackedHot => "Se apila en caliente",
        L::Due => "Entrega",
        L::Age => "Edad de quien la lleva, si es niño",
        L::TheShop => "El taller",
        L::DryerUsed => "Horno",
        L::FixedHeat => "El horno no se mueve de",
        L::Passes => "Veces por el horno",
        L::Shelf => "En el estante",
        L::Fewer => "menos",
        L::More => "más",
        L::DidYouMean => "¿Quiso decir?",
        L::Change => "Cambiar",
        L::Optional => "si no está en la etiqueta",
        L::ColoursOnTop => "Colores encima",
        L::ColourCure => "Esos colores curan",
        L::Ordinary => "normal",
        L::MoreAboutGarment => "Más sobre la prenda",
        L::MoreAboutOrder => "Más sobre el pedido",
        L::DragOrTap => "arrastre la cruz o toque los pasos",
        L::Works => "Sirve",
        L::AirAxis => "ajuste",
        L::BeltAxis => "más rápido, menos tiempo de calor",
        L::Cooler => "más frío",
        L::Hotter => "más caliente",
        L::Slower => "más lento",
        L::Faster => "más rápido",
        L::Inside => "Dentro de la ventana.",
        L::Outside => "Fuera de la ventana.",
        L::BestPoint => "Volver al mejor punto",
        L::Closed => "Ventana cerrada",
        L::ClosedSay => "Ningún ajuste de este horno cumple todos los límites en esta tela.",
        L::WhatOpensIt => "Qué la abre",
        L::WhatDoesNot => "Qué no la abre",
        L::SlowerBeltNo => "Una cinta más lenta: más calor, más tinte.",
        L::LongerFlashNo => {
            "Un presecado más largo: suelta tinte antes y estropea el agarre de la pasada siguiente."
        }
        L::ReducerNo => "Reductor en el blanco: deshace la retención.",
        L::FilmAndCloth => "Capa y tela en la cinta",
        L::Cooling => "enfriando",
        L::FilmTop => "capa, arriba",
        L::ClothDashed => "tela, a trazos",
        L::Underside => "capa por debajo, fina",
        L::SecondsAxis => "segundos",
        L::FusedAxis => "fundido, %",
        L::NotFused => "no funde",
        L::ClosedFigure => "Cada lado rayado lleva su palabra. Entre ellos no queda nada libre.",
        L::CurveFigure => {
            "Con más calor funde antes y suelta más tinte; por eso la franja se inclina. Un blanco que funde más frío la ensancha."
        }
        L::MarginsHere => "Márgenes con este ajuste",
        L::DryerSet => "Ajuste",
        L::UndersideWord => "por debajo",
        L::SetPoint => "Punto de ajuste",
        L::BackToJob => "Volver al pedido",
        L::ClothBelow => "tela",
        L::HowToMove => "Las flechas lo mueven: arriba y abajo el calor, a los lados la cinta.",
        L::NoWindowYet => "La ventana necesita un pedido con respuesta y un blanco que se pueda probar.",
        L::HowItAges => "Cómo envejece el blanco",
        L::AgeingFigure => {
            "Banda ancha: 8 de 10. Banda oscura: la mitad. Los grados de manchado perdonan un tinte, por eso el límite es un ΔE00. Crea antes la proporción entre dos ajustes que el nivel de uno."
        }
        L::BesideFresh => "junto a uno reciente",
        L::InsideFilm => "Dentro de la capa",
        L::CutFigure => {
            "Puntos: tinte que se ve. Cuadros grises: tinte retenido. La línea es cuánto se ve a cada altura. El tinte sale de las fibras con el calor y luego se reparte. Una capa más gruesa o una barrera lo dejan bajo la línea de trazos."
        }
        L::Fresh => "reciente",
        L::DyedFibres => "fibras teñidas",
        L::TheTrial => "La prueba",
        L::PiecesToPrint => "piezas, impresas con este ajuste",
        L::InTheOven => "en el horno, cara con cara",
        L::OnTheShelf => "en el estante es a lo que equivale",
        L::PassMark => "o menos junto a uno reciente es un sí",
        L::OvenCeiling => {
            "60 °C, no 80: por encima de unos 70 °C el poliéster se abre y suelta tinte que en un estante nunca soltaría. Un horno más caliente prueba otra cosa. Nunca use un horno de cocina."
        }
        L::FiguresBehind => "Las cifras",
        L::Day => "Día",
        L::NothingBleeds => "Nada que prever. Esta tela no tiene tinte que viaje.",
        L::NoForecastYet => "La previsión necesita un pedido con respuesta y un blanco que se pueda probar.",
    }
}

pub(super) fn phrase(phrase: &Phrase) -> String {
    use Phrase as P;
    match phrase {
        P::OutOf { count, of } => format!("{count} de cada {of}"),
        P::FewerThanOne => "menos de 1 de cada 100".into(),
        P::MoreThanNinetyNine => "más de 99 de cada 100".into(),
        P::To { low, high } => format!("de {low} a {high}"),
        P::HoldWithin { value } => format!("sin pasar de ± {value}"),
        P::PassCount { count: 1 } => "un paso".into(),
        P::PassCount { count } => format!("{count} pasos"),
        P::StrokeCount { count: 1 } => "1 pasada".into(),
        P::StrokeCount { count } => format!("{count} pasadas"),
        P::FlashFor { time } => format!("Presecar {time}"),
        P::FilmNear { film } => format!("capa de {film}"),
        P::TrialSay { pieces, hours, oven, mark, days } => format!(
            "Imprima {pieces}, horno {hours} h a {oven} y mírelas: {mark} o menos es un sí. Equivale a {days} días en el estante."
        ),
        P::TrialLook { pieces } => format!("Imprima {pieces} y mírelas antes del pedido."),
        P::HowSure { chance } => format!("unas {chance} quedan bien"),
        P::BleedAfter { days } => format!("Tinte en el blanco, {days} días"),
        P::LimitAt { value } => format!("límite {value}"),
        P::RulerTitle { what, likely, low, high, limit } => {
            format!("{what}: lo probable {likely}, de {low} a {high}; límite {limit}.")
        }
        P::WhiteOf { class, low_cure: true } => format!("{class}, baja temperatura"),
        P::WhiteOf { class, low_cure: false } => class.clone(),
        P::MixOf { class, parts } => {
            let parts: Vec<String> = parts.iter().map(|(name, share)| format!("{share} de {name}")).collect();
            format!("{class}, con {}", parts.join(", "))
        }
        P::Needs { blocker } => format!("sobre {blocker}"),
        P::OrderLine { pieces, lot, due } => {
            let lot = if lot.is_empty() { String::new() } else { format!(", lote {lot}") };
            let due = if due.is_empty() { String::new() } else { format!(", entrega {due}") };
            format!("{pieces} piezas{lot}{due}")
        }
        P::RoomLeft { cooler, hotter, slower, faster } => {
            let sides: Vec<String> =
                [(cooler, "menos"), (hotter, "más"), (slower, "más lento"), (faster, "más rápido")]
                    .into_iter()
                    .filter_map(|(room, side)| room.as_ref().map(|room| format!("{room} {side}")))
                    .collect();
            if sides.is_empty() {
                "Llega más allá de lo que puede este horno.".into()
            } else {
                format!("Queda: {}.", sides.join(", "))
            }
        }
        P::Fails { what, value, limit } => format!("{what}: {value}, límite {limit}."),
        P::WhereItWorks { white } => format!("Dónde sirve {white} en esta tela"),
        P::MapTitle { works: Some((cool, hot)), set } => format!(
            "Mapa de velocidad de cinta y temperatura de ajuste. Sirve una franja, de {cool} a {hot}. El ajuste es {set}."
        ),
        P::MapTitle { works: None, set } if set.is_empty() => {
            "Mapa de velocidad de cinta y temperatura de ajuste. Ninguna parte sirve.".into()
        }
        P::MapTitle { works: None, set } => {
            format!(
                "Mapa de velocidad de cinta y temperatura de ajuste. Ninguna parte sirve. El ajuste es {set}."
            )
        }
        P::MapCaption { heat, belt, fits } => format!(
            "La franja clara sirve. El cuadro a trazos es lo que se desvía este horno, ± {heat} y ± {belt}: {}.",
            if *fits { "cabe" } else { "no cabe dentro" }
        ),
        P::Peak { value } => format!("la capa llega a {value}"),
        P::InHeat { time } => format!("en el calor, {time}"),
        P::NeedsFused { value } => format!("necesita {value}"),
        P::FusedAt { time } => format!("fundido a los {time}"),
        P::NotFusedYet { value } => format!("no funde: {value}"),
        P::CurveTitle { peak, time, lag } => format!(
            "Temperaturas en el tiempo. La capa llega a {peak}; la pieza sale del calor a los {time}. Por debajo va como mucho {lag} por detrás."
        ),
        P::FusedTitle { end, when: Some(when) } => {
            format!("Parte fundida por debajo en el tiempo. Pasa su límite a los {when} y acaba en {end}.")
        }
        P::FusedTitle { end, when: None } => {
            format!("Parte fundida por debajo en el tiempo. Acaba en {end} y no llega a su límite.")
        }
        P::ClothTitle { likely, high, limit } => format!(
            "Círculos partidos de blanco sobre la tela, recién impreso a la izquierda y previsto a la derecha. Lo probable {likely}, en el peor caso {high}, límite {limit}."
        ),
        P::OverLimit { value } => format!("más de {value}"),
        P::UnderLimit { value } => format!("menos de {value}"),
        P::Garment { number } => format!("Prenda {number}"),
        P::DidYouMeanHeat { typed, meant } => format!("{typed}, que son {meant}"),
        P::Heard { verdict, white, air, belt } => format!("{verdict}. {white}, {air}, {belt}."),
        P::HeardNo => "No se puede con lo que hay en el estante.".into(),
        P::DryerLine { name, measured } if measured.is_empty() => format!("{name}, aún sin medir"),
        P::DryerLine { name, measured } => format!("{name}, medido {measured}"),
        P::SetTo { air, belt } => format!("{air}, {belt}"),
        P::WindowTitle { white } => format!("Ventana de curado · {white}"),
        P::Worth { chance } => format!("mueve el riesgo {chance}"),
        P::ForecastTitle { white } => format!("Previsión de tinte · {white}"),
        P::DayNumber { day } => format!("día {day}"),
        P::OnDay { day, value } => format!("día {day}: {value}"),
        P::StaysWhite { chance } => format!("{chance} de que siga blanco"),
        P::GradeFrom { grade } => format!("desde aquí, grado de manchado {grade}"),
        P::DaysAt { heat } => format!("días a {heat}; los primeros, más anchos"),
        P::EyeSees { depth } => format!("el ojo ve los {depth} de arriba"),
        P::AgeingSays { fresh, day, likely, low, high, limit } => format!(
            "Reciente {fresh}; el día {day} lo probable es {likely}. Ocho de cada diez quedan entre {low} y {high}; el límite es {limit}."
        ),
        P::FirstShows { early: None, last, .. } => {
            format!("Ni en el peor caso pasa el límite en {last} días.")
        }
        P::FirstShows { early: Some(early), likely: None, .. } if early == "0" => {
            "En el peor caso se nota enseguida; lo probable es que no se note.".into()
        }
        P::FirstShows { early: Some(early), likely: None, .. } => {
            format!("En el peor caso se nota desde el día {early}; lo probable es que no se note.")
        }
        P::FirstShows { likely: Some(likely), .. } if likely == "0" => "Se nota enseguida.".into(),
        P::FirstShows { early: Some(early), likely: Some(likely), .. } => {
            format!("Se nota hacia el día {likely}; en el peor caso, desde el día {early}.")
        }
        P::GhostsOften { chance } => format!(
            "La sombra va aparte: {chance} con un blanco así en este tono. Es la frecuencia de su clase, no un cálculo."
        ),
        P::CutTitle { days } => format!(
            "Corte de la estampa: {}. El tinte entra en la capa por el lado de la tela y sube.",
            days.join(", ")
        ),
    }
}
