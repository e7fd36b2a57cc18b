//! English.

use super::{Facts, Label, Phrase, Quantity, Voice};
use crate::ink::WhiteClass;
use crate::library::shelf::Trouble;
use crate::plan::{Advice, Code, DyeClass, Finish, Opacity, Priority, Role, Topic, UseKind, Verdict};
use crate::quantity::Problem;
use crate::textile::{Construction, Fibre};

/// Days of the week from Sunday, short.
pub(super) const DAYS: [&str; 7] = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
/// Months, short.
pub(super) const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

pub(super) fn reason(code: Code, v: Facts<'_>) -> String {
    use Code as C;
    match code {
        C::ClothBleeds if v.number("holds") == Some(0.0) => format!(
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
            v.share("likely"), v.share("low"), v.share("limit")
        ),
        C::FusionShort => format!(
            "It may not fuse. At the cold end the underside reaches only {}; it needs {}. It would crack in the wash.",
            v.share("low"), v.share("limit")
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
        C::HandSoft => "The hand is soft. Thin film, flexible white.".into(),
        C::HandStiff => "The hand is stiff. A thinner film or a softer white helps.".into(),
        C::StretchHolds => format!(
            "It stretches with the cloth. The film takes {}, the job needs {}.", v.percent("stretch"), v.percent("needed")
        ),
        C::StretchShort => format!(
            "It may crack when stretched. The film takes about {}, the job asks {}: too little to spare. Take a stretch white.",
            v.percent("stretch"), v.percent("needed")
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
        C::HolesLoseFilm => format!(
            "The mesh has holes. {} of the face is open, and ink falls through.", v.share("open_percent")
        ),
        C::LowCureHelps => "It fuses cooler. Less heat frees less dye.".into(),
        C::NoBlocking => format!(
            "{} holds no dye back. On dyed polyester it turns within days.", v.word("white")
        ),
        C::RimBleeds => super::aged::rim(v),
        C::WaysCompared | C::PaidFor | C::NothingPaid | C::OffFront | C::ForMore => super::trade::reason(code, v),
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
        C::Lapse => format!(
            "Some things no sum sees. A wrong bucket or a dead panel spoils about {} of jobs.", v.percent("percent")
        ),
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
        C::BuyClass if v.number("low_cure") == Some(1.0) => {
            format!("With a low-cure {}: not on your shelf", v.class("class"))
        }
        C::BuyClass => format!("With a {}: not on your shelf", v.class("class")),
        C::UseBlocker if v.has_word("white") => format!(
            "With a blocker under {}: not on your shelf, one screen and one flash more", v.word("white")
        ),
        C::UseBlocker => "With a blocker under it: one screen and one flash more".into(),
        C::IfUndyed => "If the polyester turns out undyed".into(),
        C::IfHotter => format!("If the dryer runs {} hot", v.kelvin("kelvin")),
        C::OtherHeat => "With another dryer, or a setting this one cannot reach".into(),
        C::OtherProcess => "With another process than plastisol".into(),
        C::CheckStretch => "Let the first piece cool, then stretch it. No cracks: it is fused.".into(),
        C::CheckProbe => "Lay a probe in the wet film and send it through. Compare the peak.".into(),
        C::CheckCover => "Hold the first piece to the light. The cloth must not show.".into(),
        C::CheckScorch => "Lay the first piece beside an unprinted one. It must not be yellower.".into(),
        C::CheckSize => "Measure the first piece before and after. It must not shrink.".into(),
        C::CheckAdhesion => "Rub the first piece when cold, then pull tape off it.".into(),
        C::CheckHand => "Feel the first piece. Too stiff: thinner film.".into(),
        C::CheckNap => "Look along the first piece. Hairs must lie under the white.".into(),
        C::HotGarments => format!(
            "Pieces leave at about {}. The film stays soft for half a minute. Gloves at the belt end; let them cool before you stack.",
            v.heat("exit")
        ),
        C::OverheatedPvc => format!(
            "The film can reach {} and stays {} over the heat where it begins to break down. Overheated plastisol gives off an acid gas. Keep the extraction on; if it smells sharp, leave the room. The maker's safety data sheet and your local code come first.",
            v.heat("peak"), v.seconds("seconds")
        ),
        C::BeltStop => "A stopped belt burns cloth in seconds. Panels off or lifted, empty the belt, extinguisher within reach. Clear lint from the dryer and its duct.".into(),
        C::CoatedBelt => "Non-stick belts and sheets give off toxic fume when they overheat. Never leave the belt standing under hot panels.".into(),
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
        C::AssumedColour => format!("taken as {}", v.word("colour")),
        C::LabelNote => label_note(v),
        C::LeftOut => format!("left out: {}", v.word("words")),
    }
}

/// What the label's reader assumed, asks or left aside.
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

/// How far an opened window can be trusted.
fn opened(v: Facts<'_>) -> String {
    if v.number("robust") == Some(1.0) {
        "Then the window is open, drift and a belt stop included.".into()
    } else {
        "Then it works as planned, with no room for drift.".into()
    }
}

fn opened_by_gear(v: Facts<'_>) -> String {
    format!("This one does not run so; ask what another gear costs. {}", opened(v))
}

/// What is left on each side of the window.
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

/// The staining grade of the likely tint, where there is one. It forgives a tint, so it never stands alone.
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

pub(super) fn problem(problem: &Problem, value: &str, voice: Voice) -> String {
    match problem {
        Problem::NotANumber => format!("“{value}” is not a number. Write digits, with a comma or a point."),
        Problem::OutOfRange { min, max, unit } => format!(
            "{value} is out of range. From {} to {} {unit} can be used.",
            voice.bare(Quantity::Plain, *min),
            voice.bare(Quantity::Plain, *max)
        ),
        Problem::Empty => "Nothing here yet. Write it as it stands on the garment.".into(),
        Problem::Unknown { nearest, accepted } => {
            let way_out = if !nearest.is_empty() {
                format!("Did you mean {}?", nearest.join(", "))
            } else if !accepted.is_empty() {
                format!("Known: {}.", accepted.join(", "))
            } else {
                "Write it another way.".into()
            };
            format!("“{value}” is not known. {way_out}")
        }
        Problem::SumNot100 { sum, section } if section.is_empty() => {
            format!("The shares make {}. A label makes 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::SumNot100 { sum, section } => {
            format!("The shares of {section} make {}. A label makes 100.", voice.bare(Quantity::Plain, *sum))
        }
        Problem::TooLong { max } => format!("Too long. {max} letters fit."),
        Problem::Contradiction { with } => format!("“{value}” and {with} cannot both be true. Change one."),
        Problem::NotUnderstood => {
            format!("“{value}” could not be read. Write a share and a fibre, like 60% cotton 40% polyester.")
        }
    }
}

/// What is wrong with the store, and the way out.
pub(super) fn trouble(trouble: &Trouble) -> String {
    use Trouble as T;
    match trouble {
        T::Full => "The disk is full, or the browser gives this page no more of it. What you change now is not kept: free some space, or save it as a file.".into(),
        T::Refused => "This browser keeps nothing for this page. A private window does that, or a rule of the shop: save your work as a file before you close it.".into(),
        T::Wiped => "The browser has deleted what was kept here. Open the file you saved last; from now on it keeps again.".into(),
        T::Blocked => "Another tab holds the store with an older version of this page. Close that tab, and this one goes on.".into(),
        T::Newer => "A newer version of this page was used here. This one reads what is kept and changes nothing: open the newer one, or save your work as a file.".into(),
        T::Closed => "The store was closed under this page. Save your work as a file, then load the page again.".into(),
        T::NotOurs => "That file holds no order. Nothing was changed: open a file that was saved here.".into(),
        T::Failed(said) => format!("The browser could not save. It says “{said}”: save your work as a file."),
    }
}

pub(super) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::GoWithCheck => "Go, hold two",
        Verdict::Trial => "Trial first",
        Verdict::Refuse => "No",
    }
}

pub(super) fn verdict_short(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::GoWithCheck => "Go, hold two",
        Verdict::Trial => "Trial",
        Verdict::Refuse => "No",
    }
}

pub(super) fn topic(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Fused, underside",
        Topic::Bleed => "Tint in the white",
        Topic::Rim => "Rim of the white",
        Topic::Ghosting => "Ghosting",
        Topic::Opacity => "Cloth through the white",
        Topic::Matting => "Film over nap",
        Topic::Hand => "Stiffness",
        Topic::Stretch => "Stretch",
        Topic::Adhesion => "Hold",
        Topic::Scorch => "Yellowing",
        Topic::Shrink => "Shrinkage",
        Topic::Softening => "Fibre, hottest",
        Topic::FilmHeat => "Film, hottest",
    }
}

pub(super) fn past_limit(topic: Topic) -> &'static str {
    match topic {
        Topic::Fusion => "Not fused",
        Topic::Bleed => "Dye shows",
        Topic::Rim => "Rim shows",
        Topic::Ghosting => "Ghosts",
        Topic::Opacity => "Cloth shows",
        Topic::Matting => "Nap shows",
        Topic::Hand => "Too stiff",
        Topic::Stretch => "Cracks",
        Topic::Adhesion => "Peels",
        Topic::Scorch => "Cloth yellows",
        Topic::Shrink => "Cloth shrinks",
        Topic::Softening => "Fibre softens",
        Topic::FilmHeat => "Film overheats",
    }
}

pub(super) fn advice(advice: Advice) -> &'static str {
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
        Advice::SlowerBelt => "Run the belt slower.",
        Advice::FasterBelt => "Run the belt faster.",
        Advice::CoolerDryer => "Turn the dryer down.",
        Advice::HotterDryer => "Turn the dryer up.",
        Advice::PreDry => "Dry the cloth before you print.",
        Advice::SecondStroke => "Print a second stroke after a flash.",
        Advice::LowCureWhite => "Take a low-cure white.",
        Advice::SplitOrder => "Split the order: these garments need different ways.",
        Advice::OutsideHeatLimit => "This cloth cannot take the heat of a cure. Do not force it.",
        Advice::MakerWordNeeded => "Get the garment maker's word in writing first.",
    }
}

pub(super) fn class(class: WhiteClass) -> &'static str {
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

pub(super) fn fibre(fibre: Fibre) -> &'static str {
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

pub(super) fn construction(construction: Construction) -> &'static str {
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

pub(super) fn dye_class(class: DyeClass) -> &'static str {
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

pub(super) fn priority(priority: Priority) -> &'static str {
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

pub(super) fn role(role: Role) -> &'static str {
    match role {
        Role::TopWhite => "To be seen",
        Role::Underbase => "Under colours",
        Role::Highlight => "Over colours",
    }
}

pub(super) fn opacity(opacity: Opacity) -> &'static str {
    match opacity {
        Opacity::Soft => "A little cloth",
        Opacity::Standard => "As usual",
        Opacity::Full => "Nothing shows",
    }
}

pub(super) fn use_kind(kind: UseKind) -> &'static str {
    match kind {
        UseKind::Everyday => "Everyday",
        UseKind::Sport => "Sport",
        UseKind::Workwear => "Work",
        UseKind::Protective => "Protective",
        UseKind::Sleepwear => "Sleep",
    }
}

pub(super) fn finish(finish: Finish) -> &'static str {
    match finish {
        Finish::Coated => "Coated",
        Finish::WaterRepellent => "Water repellent",
        Finish::FlameResistant => "Flame resistant",
        Finish::HighVisibility => "High visibility",
    }
}

pub(super) fn label(label: Label) -> &'static str {
    use Label as L;
    match label {
        L::Sections => "Sections",
        L::Job => "Job",
        L::Window => "Window",
        L::Library => "Library",
        L::Forecast => "Forecast",
        L::Sheet => "Sheet",
        L::Wrong => "Faults",
        L::FilmRan => "Film of white",
        L::Shop => "Shop",
        L::Settings => "Settings",
        L::HeatedLength => "Heated length, m",
        L::HottestSet => "Hottest it can be set",
        L::Undo => "Undo",
        L::Redo => "Redo",
        L::UnitsAre => "Change units",
        L::ChangeLanguage => "Change to English",
        L::Theme => "Light or dark",
        L::KeptHere => "kept in this browser",
        L::NotKeptHere => "not kept: this browser does not store it",
        L::Saving => "saving",
        L::SaveAsFile => "Save as a file",
        L::OpenFile => "Open a file",
        L::Noticed => "Understood",
        L::Offline => "Works without internet. Nothing leaves this page.",
        L::Order => "The order",
        L::ThisWeek => "This week at Harbour Lane",
        L::OpenOrder => "Open an order",
        L::NewOrder => "New order",
        L::DemoNote => "Invented orders, to try it with.",
        L::SkipToAnswer => "Skip to the answer",
        L::NoAnswerYet => "No answer yet",
        L::NoAnswerSay => "Something in the order cannot be read. It is marked beside its field.",
        L::Reckoning => "Working it out …",
        L::White => "White",
        L::DryerAir => "Dryer air",
        L::Belt => "Belt",
        L::InTheHeat => "In the heat",
        L::OnePass => "one pass",
        L::LowCure => "low-cure",
        L::Limit => "limit",
        L::Stale => "Your last answer stays",
        L::StaleSay => "It belongs to the last order that could be read. Nothing was lost.",
        L::BackToThat => "Back to that",
        L::GoSay => "Print the order. Check the first piece.",
        L::GoWithCheckSay => "Print the order, hold two pieces overnight and look at them before it ships.",
        L::RefuseSay => "Not with what is on the shelf. Why, and what would do it, stands below.",
        L::ShowWindow => "Show the window",
        L::WindowClosedHere => "no setting works",
        L::PrintRun => "The print run",
        L::NoBlocker => "No blocker",
        L::WithThisWhite => "not with this white",
        L::Blocker => "blocker",
        L::Flash => "Flash",
        L::DryTacky => "dry, still tacky",
        L::SmoothingScreen => "Smoothing screen",
        L::NapPressedDown => "nap pressed down",
        L::Dryer => "Dryer",
        L::CoolThenStack => "cool, then stack",
        L::Why => "Why",
        L::Careful => "Careful",
        L::FirstPiece => "On the first piece",
        L::WouldChange => "What would change the answer",
        L::MeterFile => "Colour from a meter's file",
        L::EveryGarment => "Every garment of the order",
        L::AnsweredAbove => "the answer above is for this one",
        L::WorthKnowing => "Worth finding out",
        L::OtherWays => "Other ways",
        L::ShelfFirst => "from this shop’s shelf",
        L::CannotDoIt => "Cannot do it",
        L::Margins => "Every margin",
        L::ToDo => "Do and leave",
        L::OnThisCloth => "Your white on this cloth",
        L::FreshAndForecast => "left half fresh, right half predicted",
        L::ClothFigure => {
            "Colour difference ΔE00 from a fresh print. 1 is what a trained eye finds. Screens differ; a print decides."
        }
        L::BestCase => "good end",
        L::Likely => "most likely",
        L::BadEnd => "bad end",
        L::WorseOneInTen => "1 in 10 is worse",
        L::Verdict => "Verdict",
        L::PerHour => "Per hour",
        L::PerPrint => "Per print",
        L::LateFault => "Late fault",
        L::Use => "Use",
        L::Chosen => "chosen",
        L::Needs => "Needs",
        L::Value => "Likely",
        L::Range => "8 in 10",
        L::What => "What",
        L::AtLeast => "at least",
        L::AtMost => "at most",
        L::MostIt => "most",
        L::TheGarment => "The garment",
        L::LabelSays => "What the label says",
        L::Understood => "Understood",
        L::IsItDyed => "Is the polyester dyed?",
        L::Yes => "Yes",
        L::No => "No",
        L::NotKnown => "Not known",
        L::DyeKind => "How well its dye holds",
        L::Lot => "Lot",
        L::Humidity => "Room humidity",
        L::Weight => "Weight",
        L::Colour => "Colour",
        L::AddedWater => "Water on it",
        L::Finishes => "Finish",
        L::None => "None",
        L::AnotherGarment => "Another garment",
        L::RemoveGarment => "Remove this garment",
        L::TheOrder => "The order",
        L::Name => "Name",
        L::Pieces => "Pieces",
        L::Spares => "Spares",
        L::PieceWorth => "Worth of one piece",
        L::PrintArea => "Print",
        L::Covered => "Covered",
        L::MattersMost => "What matters most",
        L::WhiteIsFor => "The white is",
        L::MustCover => "What may show through",
        L::MustStretch => "Must stretch",
        L::Reducer => "Reducer",
        L::Overhang => "White beyond its blocker",
        L::LookedAt => "Looked at after",
        L::Kind => "Worn for",
        L::StackedHot => "Stacked hot",
        L::Due => "Due",
        L::Age => "Age of the wearer, if a child",
        L::TheShop => "The shop",
        L::DryerUsed => "Dryer",
        L::FixedHeat => "Dryer cannot be changed from",
        L::Passes => "Times through the dryer",
        L::Shelf => "On the shelf",
        L::Fewer => "less",
        L::More => "more",
        L::DidYouMean => "Did you mean",
        L::Change => "Change",
        L::Optional => "if not on the label",
        L::ColoursOnTop => "Colours over it",
        L::ColourCure => "Those colours cure",
        L::Ordinary => "ordinary",
        L::MoreAboutGarment => "More about the garment",
        L::MoreAboutOrder => "More about the order",
        L::DragOrTap => "drag the cross, or tap the steps",
        L::Works => "Works",
        L::AirAxis => "set",
        L::BeltAxis => "faster, less time in the heat",
        L::Cooler => "cooler",
        L::Hotter => "hotter",
        L::Slower => "slower",
        L::Faster => "faster",
        L::Inside => "Inside the window.",
        L::Outside => "Outside the window.",
        L::BestPoint => "Back to the best point",
        L::Closed => "Window closed",
        L::ClosedSay => "No setting of this dryer keeps every limit on this cloth.",
        L::WhatOpensIt => "What opens it",
        L::WhatDoesNot => "What does not",
        L::SlowerBeltNo => "A slower belt: more heat, more dye.",
        L::LongerFlashNo => "A longer flash: it drives dye early and spoils the bond of the next stroke.",
        L::ReducerNo => "Reducer in the white: it undoes the blocking.",
        L::FilmAndCloth => "Film and cloth on the belt",
        L::Cooling => "cooling",
        L::FilmTop => "film top",
        L::ClothDashed => "cloth, dashed",
        L::Underside => "underside, thin",
        L::SecondsAxis => "seconds",
        L::FusedAxis => "fused, %",
        L::NotFused => "not fused",
        L::ClosedFigure => "Each hatched side has its word in it. Nothing between them is left clear.",
        L::CurveFigure => {
            "More heat fuses sooner and frees more dye, so the strip slants. A cooler-fusing white makes it wider."
        }
        L::MarginsHere => "Margins at this setting",
        L::DryerSet => "Set",
        L::UndersideWord => "underside",
        L::SetPoint => "Set point",
        L::BackToJob => "Back to the job",
        L::ClothBelow => "cloth",
        L::HowToMove => "Arrow keys move it: up and down the heat, left and right the belt.",
        L::NoWindowYet => "The window needs an answered order with a white that can be tried.",
        L::HowItAges => "How the white ages",
        L::AgeingFigure => {
            "Wide band: 8 in 10. Dark band: half. Staining grades forgive a tinted white, so the limit is a ΔE00. Believe the ratio between two settings before the level of one."
        }
        L::BesideFresh => "beside a fresh print",
        L::InsideFilm => "Inside the film",
        L::CutFigure => {
            "Dots: dye that shows. Grey squares: dye that is held. The line is how much shows at each depth. Dye leaves the fibres in the heat, then evens out. A thicker film or a blocker keeps it under the dashed line."
        }
        L::Fresh => "fresh",
        L::DyedFibres => "dyed fibres",
        L::TheTrial => "The trial",
        L::PiecesToPrint => "pieces, printed as set here",
        L::InTheOven => "in the oven, face to face",
        L::OnTheShelf => "on the shelf is what it stands for",
        L::PassMark => "or less beside a fresh one passes",
        L::OvenCeiling => {
            "60 °C, not 80: above about 70 °C polyester opens up and lets go of dye that a shelf never would. A hotter oven proves the wrong thing. Never use a kitchen oven."
        }
        L::FiguresBehind => "The figures behind it",
        L::Day => "Day",
        L::NothingBleeds => "Nothing to forecast. This cloth has no dye that travels.",
        L::NoForecastYet => "The forecast needs an answered order with a white that can be tried.",
    }
}

pub(super) fn phrase(phrase: &Phrase) -> String {
    use Phrase as P;
    match phrase {
        P::OutOf { count, of } => format!("{count} in {of}"),
        P::FewerThanOne => "fewer than 1 in 100".into(),
        P::MoreThanNinetyNine => "more than 99 in 100".into(),
        P::To { low, high } => format!("{low} to {high}"),
        P::HoldWithin { value } => format!("hold ± {value}"),
        P::PassCount { count: 1 } => "one pass".into(),
        P::PassCount { count } => format!("{count} passes"),
        P::StrokeCount { count: 1 } => "1 stroke".into(),
        P::StrokeCount { count } => format!("{count} strokes"),
        P::FlashFor { time } => format!("Flash {time}"),
        P::FilmNear { film } => format!("film near {film}"),
        P::TrialSay { pieces, hours, oven, mark, days } => format!(
            "Print {pieces}, oven {hours} h at {oven}, then look: {mark} or less is a go. It stands for {days} days on a shelf."
        ),
        P::TrialLook { pieces } => format!("Print {pieces} and look at them before the order."),
        P::HowSure { chance } => format!("about {chance} that it stays good"),
        P::BleedAfter { days } => format!("Tint in the white, {days} days"),
        P::LimitAt { value } => format!("limit {value}"),
        P::RulerTitle { what, likely, low, high, limit } => {
            format!("{what}: likely {likely}, from {low} to {high}; limit {limit}.")
        }
        P::WhiteOf { class, low_cure: true } => format!("{class}, low-cure"),
        P::WhiteOf { class, low_cure: false } => class.clone(),
        P::MixOf { class, parts } => {
            let parts: Vec<String> = parts.iter().map(|(name, share)| format!("{share} {name}")).collect();
            format!("{class}, with {}", parts.join(", "))
        }
        P::Needs { blocker } => format!("over {blocker}"),
        P::OrderLine { pieces, lot, due } => {
            let lot = if lot.is_empty() { String::new() } else { format!(", lot {lot}") };
            let due = if due.is_empty() { String::new() } else { format!(", due {due}") };
            format!("{pieces} pieces{lot}{due}")
        }
        P::RoomLeft { cooler, hotter, slower, faster } => {
            let sides: Vec<String> =
                [(cooler, "cooler"), (hotter, "hotter"), (slower, "slower"), (faster, "faster")]
                    .into_iter()
                    .filter_map(|(room, side)| room.as_ref().map(|room| format!("{room} {side}")))
                    .collect();
            if sides.is_empty() {
                "It reaches past the ends of this dryer.".into()
            } else {
                format!("Room left: {}.", sides.join(", "))
            }
        }
        P::Fails { what, value, limit } => format!("{what}: {value}, limit {limit}."),
        P::WhereItWorks { white } => format!("Where {white} works on this cloth"),
        P::MapTitle { works: Some((cool, hot)), set } => format!(
            "Map of belt speed and set temperature. A strip works, from {cool} to {hot}. The set point is {set}."
        ),
        P::MapTitle { works: None, set } if set.is_empty() => {
            "Map of belt speed and set temperature. No part of it works.".into()
        }
        P::MapTitle { works: None, set } => {
            format!("Map of belt speed and set temperature. No part of it works. The set point is {set}.")
        }
        P::MapCaption { heat, belt, fits } => format!(
            "The clear strip works. The dashed box is how far this dryer wanders, ± {heat} and ± {belt}: {}.",
            if *fits { "it fits" } else { "it does not fit inside" }
        ),
        P::Peak { value } => format!("film peaks at {value}"),
        P::InHeat { time } => format!("in the heat, {time}"),
        P::NeedsFused { value } => format!("needs {value}"),
        P::FusedAt { time } => format!("fused at {time}"),
        P::NotFusedYet { value } => format!("not fused: {value}"),
        P::CurveTitle { peak, time, lag } => format!(
            "Temperatures over time. The film peaks at {peak}; the piece leaves the heat after {time}. The underside lags the top by {lag} at most."
        ),
        P::FusedTitle { end, when: Some(when) } => {
            format!(
                "Fused share of the underside over time. It passes its limit at {when} and ends at {end}."
            )
        }
        P::FusedTitle { end, when: None } => {
            format!("Fused share of the underside over time. It ends at {end} and does not reach its limit.")
        }
        P::ClothTitle { likely, high, limit } => format!(
            "Split circles of white on the cloth, fresh at the left and predicted at the right. Most likely {likely}, at the bad end {high}, limit {limit}."
        ),
        P::OverLimit { value } => format!("over {value}"),
        P::UnderLimit { value } => format!("under {value}"),
        P::Garment { number } => format!("Garment {number}"),
        P::DidYouMeanHeat { typed, meant } => format!("{typed}, that is {meant}"),
        P::Heard { verdict, white, air, belt } => format!("{verdict}. {white}, {air}, {belt}."),
        P::HeardNo => "No. Not with what is on the shelf.".into(),
        P::DryerLine { name, measured } if measured.is_empty() => format!("{name}, not measured yet"),
        P::DryerLine { name, measured } => format!("{name}, measured {measured}"),
        P::SetTo { air, belt } => format!("{air}, {belt}"),
        P::WindowTitle { white } => format!("Cure window · {white}"),
        P::Worth { chance } => format!("moves the risk by {chance}"),
        P::ForecastTitle { white } => format!("Bleed forecast · {white}"),
        P::DayNumber { day } => format!("day {day}"),
        P::OnDay { day, value } => format!("day {day}: {value}"),
        P::StaysWhite { chance } => format!("{chance} that it stays white"),
        P::GradeFrom { grade } => format!("from here, staining grade {grade}"),
        P::DaysAt { heat } => format!("days at {heat}; early ones drawn wider"),
        P::EyeSees { depth } => format!("the eye sees the top {depth}"),
        P::AgeingSays { fresh, day, likely, low, high, limit } => format!(
            "Fresh {fresh}, on day {day} most likely {likely}. Eight in ten lie between {low} and {high}; the limit is {limit}."
        ),
        P::FirstShows { early: None, last, .. } => {
            format!("Even its bad end stays under the limit for {last} days.")
        }
        P::FirstShows { early: Some(early), likely: None, .. } if early == "0" => {
            "The bad end shows at once, the likely case not at all.".into()
        }
        P::FirstShows { early: Some(early), likely: None, .. } => {
            format!("The bad end shows from day {early}, the likely case not at all.")
        }
        P::FirstShows { likely: Some(likely), .. } if likely == "0" => "It shows at once.".into(),
        P::FirstShows { early: Some(early), likely: Some(likely), .. } => {
            format!("It shows from about day {likely}; the bad end from day {early}.")
        }
        P::GhostsOften { chance } => format!(
            "Ghosting is apart from this: {chance} with such a white on such a shade. That is how often its class does it, not a calculation."
        ),
        P::CutTitle { days } => format!(
            "Cut through the print: {}. Dye enters the film from the cloth side and spreads upward.",
            days.join(", ")
        ),
    }
}
