//! Reasons, cautions, questions and readings.

use crate::plan::Code;
use crate::wording::Facts;

pub(in crate::wording) fn reason(code: Code, v: Facts<'_>) -> String {
    use Code as C;
    match code {
        C::ClothBleeds if v.flag("holds") == Some(false) => format!(
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
            v.percent("likely"), v.percent("low"), v.percent("limit")
        ),
        C::FusionShort => format!(
            "Puede no fundir. En el lado frío llega por debajo a {}; necesita {}. La probabilidad de que una pieza salga mal fundida y se agriete al lavar es del {}.",
            v.percent("low"), v.percent("limit"), v.percent("chance")
        ),
        C::DriftTooWide if v.flag("measured") == Some(true) => format!(
            "Ningún ajuste aguanta toda la deriva de {}. La capa va de {} a {}.",
            v.word("dryer"), v.heat("low"), v.heat("high")
        ),
        C::DriftTooWide => format!(
            "{} no se ha medido nunca. La capa puede ir de {} a {}. Pase antes una sonda: una curva.",
            v.word("dryer"), v.heat("low"), v.heat("high")
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
        C::FarFromKnown => "Las probabilidades se basan en otras estampas. Vuelva a mirar las primeras piezas al cabo de una semana.".into(),
        C::ComesDamp => "La tela llega húmeda. El agua puede estar mal repartida: revise las primeras piezas o séquela antes.".into(),
        C::DriedFirst => format!(
            "Seque antes la tela. Contiene un {} de agua; tal como está, {}.", v.percent("water_percent"),
            match v.code("verdict") {
                "trial" => "haría falta una prueba",
                "refuse" => "este blanco no sirve",
                _ => "habría que revisarla",
            }
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
        C::HandStiff => "El tacto es rígido. Ayuda una capa más fina o un blanco más suave.".into(),
        C::StretchHolds => format!(
            "Estira con la tela. La capa aguanta {}, el trabajo pide {}.", v.percent("stretch"), v.percent("needed")
        ),
        C::StretchShort => format!(
            "Puede agrietarse al estirar. La capa aguanta unos {}, el trabajo pide {}: sobra muy poco. Use un blanco elástico.",
            v.percent("stretch"), v.percent("needed")
        ),
        C::WashHard => format!(
            "El lavado industrial es caliente y brusco. Las estampas se agrietan o se levantan en {}. Haga lavar allí una pieza antes.",
            v.chance("frequency")
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
        C::FinishHolds => format!(
            "El acabado debe salir como se pide. A 60° mide unas {} unidades de brillo; el límite es {}.", v.count("gloss"), v.count("limit")
        ),
        C::GlossShort => format!(
            "No brillará lo que se pide. A 60° mide unas {} unidades de brillo; uno brillante tiene {}, y ninguna estampa sobre tela brilla como el vidrio, porque asoman las filas del hilo. Ayudan una tela más lisa, más capa y una pantalla alisadora; lo que más, una plancha con lámina lisa.",
            v.count("gloss"), v.count("limit")
        ),
        C::MattShort => format!(
            "Puede brillar. A 60° mide unas {} unidades de brillo; uno mate tiene {} como mucho. Ayuda una capa más fina, o una plancha con lámina de grano.",
            v.count("gloss"), v.count("limit")
        ),
        C::SmoothingShines => format!(
            "Una pantalla alisadora le da brillo. Sin ella el blanco mediría unas {} unidades.", v.count("gloss")
        ),
        C::HolesLoseFilm => format!(
            "La malla tiene huecos. {} de la cara está abierto y la tinta se cuela.", v.percent("open_percent")
        ),
        C::LowCureHelps => "Funde con menos calor. Menos calor suelta menos tinte.".into(),
        C::NoBlocking => format!(
            "{} no retiene tinte. Sobre poliéster teñido vira en pocos días.", v.word("white")
        ),
        C::RimBleeds => super::forecast::rim(v),
        C::WaysCompared | C::PaidFor | C::NothingPaid | C::OffFront | C::ForMore => crate::wording::trade_off::reason(code, v),
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
        C::LaterHeat => later_heat(v),
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
        C::BuyClass if v.flag("low_cure") == Some(true) => {
            format!("Con un {} de baja temperatura: no está en su estante", v.class("class"))
        }
        C::BuyClass => format!("Con un {}: no está en su estante", v.class("class")),
        C::UseBlocker if v.has_word("white") => format!(
            "Con una barrera bajo {}: no está en su estante, una pantalla y un presecado más", v.word("white")
        ),
        C::UseBlocker => "Con una barrera debajo: una pantalla y un presecado más".into(),
        C::IfDried => format!(
            "Si seca antes la tela y la estampa enseguida: contiene un {} de agua", v.percent("water_percent")
        ),
        C::IfUndyed => "Si el poliéster resulta sin teñir".into(),
        C::OtherProcess => "Con otro proceso que no sea plastisol".into(),
        C::CheckStretch => "Deje enfriar la primera pieza y estírela. Sin grietas: está fundida.".into(),
        C::CheckProbe => "Ponga una sonda en la capa húmeda y pásela por el horno. Compare el máximo.".into(),
        C::CheckCover => "Mire la primera pieza a la luz. La tela no debe verse.".into(),
        C::CheckScorch => "Ponga la primera pieza junto a una sin imprimir. No debe estar más amarilla.".into(),
        C::CheckSize => "Mida la primera pieza antes y después. No debe encoger.".into(),
        C::CheckAdhesion => "Frote la primera pieza en frío y despegue una cinta.".into(),
        C::CheckHand => "Toque la primera pieza. Demasiado rígida: capa más fina.".into(),
        C::CheckNap => "Mire la primera pieza de canto. El pelo debe quedar bajo el blanco.".into(),
        C::CheckGloss => "Incline la primera pieza a la luz, junto a una que el cliente acepte. Debe brillar igual.".into(),
        C::HotGarments => format!(
            "Las piezas salen a unos {}. La capa sigue blanda medio minuto. Guantes al final de la cinta; deje enfriar antes de apilar.",
            v.heat("exit")
        ),
        C::OverheatedPvc => format!(
            "La capa puede llegar a {} y pasa {} sobre el calor en que empieza a descomponerse. El plastisol recalentado suelta un gas ácido. Extracción siempre en marcha; si huele fuerte, salga. Mandan la ficha de seguridad del fabricante y las normas locales.",
            v.heat("peak"), v.seconds("seconds")
        ),
        C::PressIrons => format!(
            "Lo que se planche después, a {}, alisa el blanco: brilla con la forma de la plancha. La lámina pone el acabado: lisa para brillo, de grano para mate.",
            v.heat("temp")
        ),
        C::BeltStop => "Una cinta parada quema tela en segundos. Paneles apagados o levantados, cinta vacía, extintor a mano. Limpie la pelusa del horno y del conducto.".into(),
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
        C::AskFlat => "¿una sola capa? Entonces no hay nada bajo la estampa: dígalo en Más sobre la prenda".into(),
        C::AssumedColour => format!("suponemos {}", v.word("colour")),
        C::LabelNote => label_note(v),
        C::LeftOut => format!("sin contar: {}", v.word("words")),
    }
}

/// What the heat after the cure does to cloth or film, and from where on.
fn later_heat(v: Facts<'_>) -> String {
    let what = if v.has_word("what") { v.word("what") } else { "la plancha".into() };
    let (limit, fibre) = (v.heat("limit"), v.word("fibre"));
    let harm = match v.code("harm") {
        "melts" => format!("{fibre} se funde desde {limit}"),
        "softens" => format!("{fibre} se ablanda desde {limit}"),
        "coating" => format!("el recubrimiento aguanta {limit}"),
        "yellows" => format!("en ese tiempo la tela amarillea desde {limit}"),
        "shrinks" => format!("la tela encoge demasiado desde {limit}"),
        _ => format!("la propia capa se descompone desde {limit}"),
    };
    let holds = v.flag("holds") == Some(true);
    let lead = if holds {
        "El calor posterior llega cerca de un límite."
    } else {
        "El calor posterior es demasiado."
    };
    let way_out = match (holds, v.code("harm")) {
        (true, _) => "Compruebe la plancha con una tira o una sonda.",
        (false, "yellows") => "Planche más frío, o menos tiempo.",
        (false, _) => "Planche más frío.",
    };
    format!("{lead} Con {what}, {} durante {}: {harm}. {way_out}", v.heat("temp"), v.seconds("seconds"))
}

/// What the label reader assumed, asks or ignored.
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

/// Whether the window that this change opens also holds under the dryer's drift.
fn opened(v: Facts<'_>) -> String {
    if v.flag("robust") == Some(true) {
        "Así la ventana está abierta, con deriva y parada de cinta incluidas.".into()
    } else {
        "Así funciona según lo previsto, sin margen para la deriva.".into()
    }
}

fn opened_by_gear(v: Facts<'_>) -> String {
    format!("Esta no llega; pregunte cuánto cuesta otra transmisión. {}", opened(v))
}

/// The distance from the set point to each side of the window.
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

/// The staining grade of the likely tint, if it is known. Grades are lenient, so the tint is always given too.
fn staining(v: Facts<'_>) -> String {
    if v.has_word("grade") {
        format!(" En grado de manchado, {}; los grados perdonan un tinte.", v.code("grade"))
    } else {
        String::new()
    }
}
