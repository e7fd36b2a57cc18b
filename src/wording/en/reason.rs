//! Reasons, cautions, questions and readings.

use crate::plan::Code;
use crate::wording::Facts;

pub(in crate::wording) fn reason(code: Code, v: Facts<'_>) -> String {
    use Code as C;
    match code {
        C::ClothBleeds if v.flag("holds") == Some(false) => format!(
            "The cloth bleeds. {} cannot hold this much dye: {} after {} days is likely, up to {}, limit {}.{}",
            v.word("white"), v.tenth("likely"), v.count("days"), v.tenth("high"), v.tenth("limit"), staining(v)
        ),
        C::ClothBleeds => format!(
            "The cloth bleeds. {} holds most of the dye back: {} after {} days is likely, {} at the bad end, limit {}.{}",
            v.word("white"), v.tenth("likely"), v.count("days"), v.tenth("high"), v.tenth("limit"), staining(v)
        ),
        C::NothingToBleed => format!(
            "Nothing bleeds. Dye stays in {} at this heat, so the softest and cheapest white will do.",
            if v.has_word("fibre") { v.words("fibre") } else { "this cloth".into() }
        ),
        C::DyeUnknown => "The dye is not known. That is why the range is wide. Ask the garment's maker, or test.".into(),
        C::LotNew if v.has_word("lot") => format!(
            "Lot {} is new here. Only a print of it can tell.", v.word("lot")
        ),
        C::LotNew => "This lot is new here. Only a print of it can tell.".into(),
        C::EvidenceCounted => format!(
            "Tested here. {} of {} pieces turned within {} days, and that is counted.",
            v.count("turned"), v.count("pieces"), v.count("days")
        ),
        C::FusionHolds => format!(
            "It fuses through. The underside reaches {}, {} at the cold end; it needs {}.",
            v.percent("likely"), v.percent("low"), v.percent("limit")
        ),
        C::FusionShort => format!(
            "It may not fuse. At the cold end the underside reaches {}; it needs {}. The chance that a print leaves under-fused and cracks in the wash is {}.",
            v.percent("low"), v.percent("limit"), v.percent("chance")
        ),
        C::DriftTooWide if v.flag("measured") == Some(true) => format!(
            "No setting holds over the whole drift of {}. The film runs from {} to {}.",
            v.word("dryer"), v.heat("low"), v.heat("high")
        ),
        C::DriftTooWide => format!(
            "{} was never measured. The film may run from {} to {}. Run a probe through it first: one curve.",
            v.word("dryer"), v.heat("low"), v.heat("high")
        ),
        C::WindowOpen => format!("The window is open. {}", room(v)),
        C::WindowNarrow => format!("The window is narrow. {} Do not turn the heat up to be safe.", room(v)),
        C::WindowClosed if v.code("side") == "at-least" => format!(
            "The window is closed. This dryer does not bring the underside to about {}, where the ink fuses. Hotter, slower, or a low-cure white.",
            v.heat("peak")
        ),
        C::WindowClosed => format!(
            "The window is closed. The ink fuses at about {}, and this cloth does not stand that in this dryer.",
            v.heat("peak")
        ),
        C::WaterSlows => format!(
            "The cloth holds water. {} of its weight, and drying it takes {} of the dryer.",
            v.percent("water_percent"), v.seconds("seconds")
        ),
        C::FarFromKnown => "The chances rest on other prints than this one. Look at the first pieces again after a week.".into(),
        C::ComesDamp => "The cloth comes damp. Its water may lie unevenly: check the first pieces, or dry it first.".into(),
        C::DriedFirst => format!(
            "Dry the cloth first. It holds {} water; as it lies, {}.", v.percent("water_percent"),
            match v.code("verdict") {
                "trial" => "it would take a trial",
                "refuse" => "this white cannot do it",
                _ => "it would need checking",
            }
        ),
        C::HeavyCloth => format!(
            "Heavy cloth warms slowly. At {} it needs {} in the heat.", v.weight("gsm"), v.seconds("seconds")
        ),
        C::Covers => format!(
            "It covers. Through a film of {} the cloth shows by {}; up to {} passes.",
            v.film("film"), v.tenth("shows"), v.tenth("limit")
        ),
        C::CoversShort => format!(
            "It does not cover. Through a film of {} the cloth shows by {}; up to {} passes. Add a stroke or open the mesh.",
            v.film("film"), v.tenth("shows"), v.tenth("limit")
        ),
        C::OneStrokeMore => format!(
            "One stroke more. Film {}, and the cloth shows by {}.", v.film("film"), v.tenth("shows")
        ),
        C::CoarserMesh => format!(
            "The next coarser mesh, {}. Film {}, and the cloth shows by {}.",
            v.threads("threads"), v.film("film"), v.tenth("shows")
        ),
        C::LooksBluish => format!(
            "A thin white looks bluish. At {} it is {} bluer than the full white. A thicker film warms it.",
            v.film("film"), v.tenth("bluer")
        ),
        C::LooksDull => format!(
            "The grey blocker dulls the white. It is {} darker than the full white. A thicker white lifts it.",
            v.tenth("darker")
        ),
        C::MayGhost => format!(
            "It may ghost on this shade. Whites of this class do so in about {}. Do not stack hot.",
            v.chance("frequency")
        ),
        C::HandStiff => "The hand is stiff. A thinner film or a softer white helps.".into(),
        C::StretchHolds => format!(
            "It stretches with the cloth. The film takes {}, the job needs {}.", v.percent("stretch"), v.percent("needed")
        ),
        C::StretchShort => format!(
            "It may crack when stretched. The film takes about {}, the job asks {}: too little to spare. Take a stretch white.",
            v.percent("stretch"), v.percent("needed")
        ),
        C::WashHard => format!(
            "An industrial wash is hot and rough. Prints crack or lift there in about {}. Have a piece washed there first.",
            v.chance("frequency")
        ),
        C::AdhesionUnknown => "It is not made to hold here. On nylon and coatings a film can peel in the wash. Tape-test it.".into(),
        C::AdhesionHolds => "It is made to hold on nylon.".into(),
        C::NapShows => format!(
            "The nap comes through. It stands {} high, the film is {}. Run a smoothing screen after the first flash.",
            v.film("nap"), v.film("film")
        ),
        C::SmoothingHelps => format!(
            "A smoothing screen lays the nap down. It stands {} high, more than this film would hold.",
            v.film("nap")
        ),
        C::FinishHolds => format!(
            "The finish should be as asked. At 60° it reads about {} gloss units; the limit is {}.", v.count("gloss"), v.count("limit")
        ),
        C::GlossShort => format!(
            "It will not shine as asked. At 60° it reads about {} gloss units; a glossy one has {}, and no print on cloth shines like glass, since the rows of yarn stand through. A smoother cloth, more film and a smoothing screen help; a press with a smooth release sheet helps most.",
            v.count("gloss"), v.count("limit")
        ),
        C::MattShort => format!(
            "It may shine. At 60° it reads about {} gloss units; a matt one has at most {}. A thinner film helps, or a press with a grained release sheet.",
            v.count("gloss"), v.count("limit")
        ),
        C::SmoothingShines => format!(
            "A smoothing screen makes it shine. Without it the white would read about {} gloss units.", v.count("gloss")
        ),
        C::HolesLoseFilm => format!(
            "The mesh has holes. {} of the face is open, and ink falls through.", v.percent("open_percent")
        ),
        C::LowCureHelps => "It fuses cooler. Less heat frees less dye.".into(),
        C::NoBlocking => format!(
            "{} holds no dye back. On dyed polyester it turns within days.", v.word("white")
        ),
        C::RimBleeds => super::forecast::rim(v),
        C::WaysCompared | C::PaidFor | C::NothingPaid | C::OffFront | C::ForMore => crate::wording::trade_off::reason(code, v),
        C::BlockerHelps => "The blocker takes up the dye. It costs one screen and one flash.".into(),
        C::ScorchNear => "The cloth may yellow. Less time in the heat, or cooler air.".into(),
        C::ShrinkNear => format!(
            "The cloth may shrink. It reaches {}, and shrinks over {}.", v.heat("peak"), v.heat("limit")
        ),
        C::SoftensNear => format!(
            "{} goes soft. It reaches {}, and softens from {}.", capital(&v.word("fibre")), v.heat("peak"), v.heat("limit")
        ),
        C::CoatingNear => format!(
            "The coating may suffer. The cloth reaches {}, and a coating stands about {}.", v.heat("peak"), v.heat("limit")
        ),
        C::LaterHeat => later_heat(v),
        C::OpensCooler => format!("Let the dryer cool to {}. {}", v.heat("set"), opened(v)),
        C::OpensHotter => format!("Turn the dryer up to {}. {}", v.heat("set"), opened(v)),
        C::OpensSlower => format!(
            "A slower belt would do, {} at {}. {}", v.belt("belt"), v.heat("set"), opened_by_gear(v)
        ),
        C::OpensFaster => format!(
            "A faster belt would do, {} at {}. {}", v.belt("belt"), v.heat("set"), opened_by_gear(v)
        ),
        C::OpensPreDry => format!(
            "Dry the cloth first. It holds {} of water; dried, {} at {} works. {}",
            v.percent("water_percent"), v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensThinner => format!(
            "Print a thinner film. At {}, {} at {} works. {}", v.film("film"), v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensTwoPasses => format!(
            "Run it through twice, {} at {}. {} Dye counts both passes.", v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::OpensLowCure => format!(
            "A low-cure white would do, {} at {}. {}", v.belt("belt"), v.heat("set"), opened(v)
        ),
        C::MeltsInCure => format!(
            "{} melts in the dryer. It melts at {}, below any plastisol cure. Use another process.",
            capital(&v.word("fibre")), v.heat("limit")
        ),
        C::ColoursSetHeat => "The colours set the heat. They are ordinary inks, so a low-cure white gains nothing here.".into(),
        C::MakerWordNeeded => "Ask the maker first. A print can void what protects the wearer.".into(),
        C::CustomerBans => format!(
            "The customer bans {}. Every plastisol here contains it. Offer another process.", v.word("ban")
        ),
        C::ReducerSpoils => format!(
            "Reducer spoils the white. {} of it spends the power to hold dye back. Leave it out.", v.percent("percent")
        ),
        C::ShelfEmpty => "The shelf is empty. Pick the whites you have under The shop.".into(),
        C::MoneyAddsCare => format!(
            "Much rides on it. {} pieces worth {} together ask for one look more.", v.count("pieces"), v.count("value")
        ),
        C::OnePlan if v.number("value").is_some_and(|value| value >= 1.0) => format!(
            "One plan for all. {} serves each of the {} garments and saves {} against a plan for each.",
            v.word("white"), v.count("garments"), v.count("value")
        ),
        C::OnePlan => format!(
            "One plan for all. {} serves each of the {} garments.", v.word("white"), v.count("garments")
        ),
        C::SplitCheaper => format!(
            "Split it, a plan for each of the {} garments. {} would serve all of them, and costs {} more.",
            v.count("garments"), v.word("white"), v.count("value")
        ),
        C::SplitSafer => format!(
            "Split it, a plan for each of the {} garments. {} would serve all of them with a harder verdict.",
            v.count("garments"), v.word("white")
        ),
        C::SplitOnly => format!(
            "Split it, a plan for each of the {} garments. No white on the shelf serves all of them.",
            v.count("garments")
        ),
        C::SomeRefused => format!(
            "{} of {} garments cannot be printed. The others can go ahead by themselves.",
            v.count("refused"), v.count("garments")
        ),
        C::BuyClass if v.flag("low_cure") == Some(true) => {
            format!("With a low-cure {}: not on your shelf", v.class("class"))
        }
        C::BuyClass => format!("With a {}: not on your shelf", v.class("class")),
        C::UseBlocker if v.has_word("white") => format!(
            "With a blocker under {}: not on your shelf, one screen and one flash more", v.word("white")
        ),
        C::UseBlocker => "With a blocker under it: one screen and one flash more".into(),
        C::IfDried => format!(
            "If you dry the cloth first and print it at once: it holds {} water", v.percent("water_percent")
        ),
        C::IfUndyed => "If the polyester turns out undyed".into(),
        C::OtherProcess => "With another process than plastisol".into(),
        C::CheckStretch => "Let the first piece cool, then stretch it. No cracks: it is fused.".into(),
        C::CheckProbe => "Lay a probe in the wet film and send it through. Compare the peak.".into(),
        C::CheckCover => "Hold the first piece to the light. The cloth must not show.".into(),
        C::CheckScorch => "Lay the first piece beside an unprinted one. It must not be yellower.".into(),
        C::CheckSize => "Measure the first piece before and after. It must not shrink.".into(),
        C::CheckAdhesion => "Rub the first piece when cold, then pull tape off it.".into(),
        C::CheckHand => "Feel the first piece. Too stiff: thinner film.".into(),
        C::CheckNap => "Look along the first piece. Hairs must lie under the white.".into(),
        C::CheckGloss => "Tilt the first piece in the light, beside one that the customer accepts. It must shine alike.".into(),
        C::HotGarments => format!(
            "Pieces leave at about {}. The film stays soft for half a minute. Gloves at the belt end; let them cool before you stack.",
            v.heat("exit")
        ),
        C::OverheatedPvc => format!(
            "The film can reach {} and stays {} over the heat where it begins to break down. Overheated plastisol gives off an acid gas. Keep the extraction on; if it smells sharp, leave the room. The maker's safety data sheet and your local code come first.",
            v.heat("peak"), v.seconds("seconds")
        ),
        C::PressIrons => format!(
            "What is pressed on later, at {}, irons the white: it shines in the shape of the press. The release sheet sets the finish, smooth for gloss, grained for matt.",
            v.heat("temp")
        ),
        C::BeltStop => "A stopped belt burns cloth in seconds. Panels off or lifted, empty the belt, extinguisher within reach. Clear lint from the dryer and its duct.".into(),
        C::FlammableVapour => "Screen wash and spray adhesive burn. Keep them away from the flash and the dryer's mouth.".into(),
        C::Isocyanate => format!(
            "Bonding additives with isocyanate can make a person allergic for life. Trained people only ({}, since {}, from {} on), gloves, no spraying, no heating of the open pot; whoever is allergic stays away. Not for infants' wear or bare skin without the maker's word. The safety data sheet comes first.",
            v.word("law"), v.word("since"), v.by_law()
        ),
        C::ChildCare => format!(
            "Worn by a child of {}. For child-care articles {} (since {}) allows at most {} of each of eight phthalates; {} adds three more where a child can mouth it. Small parts count too. Get the ink maker's statement and check the law where it is sold.",
            v.count("age"), v.word("law"), v.word("since"), v.by_law(), v.word("mouth")
        ),
        C::ChildProduct => format!(
            "A product for a child of {}. Lead: at most {} ppm in ink that becomes part of the cloth, {} ppm in a film that scrapes off ({}, since {}). Testing, a certificate and a tracking label may be due. Check the law where it is sold.",
            v.count("age"), v.count("limit"), v.count("coating"), v.word("law"), v.word("since")
        ),
        C::PhthalatesInArticle => format!(
            "{} (since {}): under {} of four phthalates together in any printed article. Ask the ink maker, and check the law where it is sold.",
            v.word("law"), v.word("since"), v.by_law()
        ),
        C::SleepwearFlammability => "Sleepwear must pass a flame test, print and all. Ask the garment's maker.".into(),
        C::MeltBurns => "This fibre melts and sticks to skin. Nothing may hang over a panel; keep hands out of the tunnel.".into(),
        C::DyeFume => "Dye and plasticiser leave with the exhaust. Duct it outdoors and clean the condensate.".into(),
        C::HotHold => "Hold hot pieces in an oven with a thermostat, never one for food, never unattended.".into(),
        C::AskDyed => "Is the polyester dyed?".into(),
        C::AskDyeClass => "Which dye is on the polyester? The garment's maker knows.".into(),
        C::AskWeight => "What does the cloth weigh?".into(),
        C::AskConstruction => "How is the cloth made?".into(),
        C::AskMeasureDryer => "Send a probe through the dryer. A measured dryer needs less margin.".into(),
        C::AskLotTest => "Print this lot and look at it later.".into(),
        C::AskColour => "Which colour is the garment?".into(),
        C::ReadShare if v.has_word("section") => {
            format!("{} {}, {}", v.percent("percent"), v.word("fibre").to_lowercase(), v.word("section"))
        }
        C::ReadShare => format!("{} {}", v.percent("percent"), v.word("fibre").to_lowercase()),
        C::ReadConstruction => v.word("construction").to_lowercase(),
        C::ReadWeight => v.weight("gsm"),
        C::ReadColour => v.word("colour"),
        C::AssumedConstruction => format!("taken as {}", v.word("construction").to_lowercase()),
        C::AssumedWeight => format!("taken as {}", v.weight("gsm")),
        C::AssumedDyed => "polyester taken as dyed".into(),
        C::AskFlat => "one layer? Then nothing lies under the print: say so under More about the garment".into(),
        C::AssumedColour => format!("taken as {}", v.word("colour")),
        C::LabelNote => label_note(v),
        C::LeftOut => format!("left out: {}", v.word("words")),
    }
}

/// What the heat after the cure does to cloth or film, and from where on.
fn later_heat(v: Facts<'_>) -> String {
    let what = if v.has_word("what") { capital(&v.word("what")) } else { "The press".into() };
    let (limit, fibre) = (v.heat("limit"), v.word("fibre"));
    let harm = match v.code("harm") {
        "melts" => format!("{fibre} melts from {limit}"),
        "softens" => format!("{fibre} goes soft from {limit}"),
        "coating" => format!("the coating stands {limit}"),
        "yellows" => format!("in that time the cloth yellows from {limit}"),
        "shrinks" => format!("the cloth shrinks too far from {limit}"),
        _ => format!("the film itself breaks down from {limit}"),
    };
    let holds = v.flag("holds") == Some(true);
    let lead = if holds { "Later heat comes near a limit." } else { "Later heat is too much." };
    let way_out = match (holds, v.code("harm")) {
        (true, _) => "Check the press with a strip or a probe.",
        (false, "yellows") => "Press cooler, or for less time.",
        (false, _) => "Press cooler than that.",
    };
    format!("{lead} {what}, {} for {}: {harm}. {way_out}", v.heat("temp"), v.seconds("seconds"))
}

/// What the label reader assumed, asks or ignored.
fn label_note(v: Facts<'_>) -> String {
    let (words, fibre) = (v.word("words"), v.word("fibre"));
    match v.code("note") {
        "assumed-whole" => format!("taken as all {fibre}"),
        "assumed" => format!("“{words}” taken as {fibre}"),
        "ask" => format!("“{words}”: is it {fibre}?"),
        "read-as" => format!("“{words}” read as {fibre}"),
        "assumed-shares" => format!("“{words}” taken as {}", v.word("shares")),
        "other-fibres" => format!("{} other fibres", v.percent("percent")),
        "rounded" => format!("shares make {}, taken as rounded", v.percent("percent")),
        "excludes" => format!("label leaves out: {words}"),
        _ => format!("“{words}” changes nothing here"),
    }
}

/// Whether the window that this change opens also holds under the dryer's drift.
fn opened(v: Facts<'_>) -> String {
    if v.flag("robust") == Some(true) {
        "Then the window is open, drift and a belt stop included.".into()
    } else {
        "Then it works as planned, with no room for drift.".into()
    }
}

fn opened_by_gear(v: Facts<'_>) -> String {
    format!("This one does not run so; ask what another gear costs. {}", opened(v))
}

/// The distance from the set point to each side of the window.
fn room(v: Facts<'_>) -> String {
    let mut sides = Vec::new();
    for (name, side) in [("cooler", "cooler"), ("hotter", "hotter")] {
        if v.number(name).is_some() {
            sides.push(format!("{} {side}", v.kelvin(name)));
        }
    }
    for (name, side) in [("slower", "slower"), ("faster", "faster")] {
        if v.number(name).is_some() {
            sides.push(format!("{} {side}", v.belt(name)));
        }
    }
    match sides.pop() {
        None => "It reaches past the ends of this dryer.".into(),
        Some(last) if sides.is_empty() => format!("Room left: {last}."),
        Some(last) => format!("Room left: {} or {last}.", sides.join(", ")),
    }
}

/// The staining grade of the likely tint, if it is known. Grades are lenient, so the tint is always given too.
fn staining(v: Facts<'_>) -> String {
    if v.has_word("grade") {
        format!(" As a staining grade {}; grades forgive a tint.", v.code("grade"))
    } else {
        String::new()
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
