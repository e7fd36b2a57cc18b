//! Every code has a sentence in both languages, built from its values.
//!
//! That no code is missing is proved by the compiler (one `match` each); what is checked here is that no sentence
//! is empty, that the two languages differ, that each value a sentence needs is really put in, and that the voice
//! of the house is kept.

use std::collections::BTreeMap;
use whitehold::library::storage_layout::Trouble;
use whitehold::plan::{Advice, Code, Reason, Topic, Value, Verdict};
use whitehold::quantity::{FieldError, Problem};
use whitehold::wording::{Language, Units, Voice, lead};

/// Every code, by its name in the contract.
const CODES: &str = "cloth-bleeds nothing-to-bleed dye-unknown lot-new evidence-counted fusion-holds fusion-short \
    window-open window-narrow window-closed water-slows comes-damp far-from-known dried-first heavy-cloth covers covers-short one-stroke-more coarser-mesh looks-bluish looks-dull may-ghost \
    hand-stiff stretch-holds stretch-short wash-hard adhesion-unknown adhesion-holds nap-shows smoothing-helps holes-lose-film \
    low-cure-helps no-blocking blocker-helps rim-bleeds scorch-near shrink-near softens-near coating-near melts-in-cure opens-cooler \
    opens-hotter opens-slower opens-faster opens-pre-dry opens-thinner opens-two-passes opens-low-cure colours-set-heat \
    maker-word-needed customer-bans reducer-spoils shelf-empty money-adds-care buy-class use-blocker \
    if-undyed if-dried other-process check-stretch check-probe check-cover check-scorch check-size \
    check-adhesion check-hand check-nap check-gloss finish-holds gloss-short matt-short smoothing-shines press-irons hot-garments overheated-pvc belt-stop flammable-vapour \
    isocyanate child-care child-product phthalates-in-article sleepwear-flammability melt-burns dye-fume hot-hold ask-dyed \
    ask-dye-class ask-weight ask-construction ask-measure-dryer ask-lot-test ask-colour read-share \
    read-construction read-weight read-colour assumed-construction assumed-weight assumed-dyed assumed-colour \
    ways-compared paid-for nothing-paid off-front for-more \
    drift-too-wide later-heat ask-flat left-out label-note one-plan split-cheaper split-safer split-only some-refused";

fn named<T: serde::de::DeserializeOwned>(name: &str) -> T {
    serde_json::from_value(serde_json::json!(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// A value for every name a sentence may ask for.
fn sample() -> BTreeMap<String, Value> {
    let numbers = "overhang 0.3 likely 1.4 low 0.91 high 3.2 limit 2 days 90 pieces 12 turned 2 cooler 4 hotter 5 slower 0.3 \
        faster 0.25 set 165 belt 2.4 robust 1 peak 178 water_percent 8 seconds 11 gsm 185 contrast 0.96 film 98 frequency 0.2 garments 3 refused 1 hand 0.6 \
        stretch 80 needed 120 nap 300 open_percent 30 index 0.4 percent 60 value 9.5 exit 160 age 2 low_cure 1 shows 1.2 coating 90 strokes 3 threads 43 bluer 1.4 darker 2.1 \
        compared 1189 judged 23 cost 0.44 other-cost 0.38 gloss 18 temp 155 chance 4 measured 1 late 0.02 other-late 0.2 other-strokes 1 other-threads 55";
    let words = "dryer Kiln white Gannet lot HL-2031 fibre polyester construction jersey side fusion,bleed ban pvc \
        class low-bleed verdict go colour red section body words kt-210 note ask grade 4-5 law REACH-74 since 2023-08-24 mouth REACH-52 \
        what names harm melts pays cost gets late other-white Tern other-verdict trial";
    let pairs = |text: &'static str| {
        let parts: Vec<&str> = text.split_whitespace().collect();
        parts.chunks(2).map(|pair| (pair[0].to_owned(), pair[1])).collect::<Vec<_>>()
    };
    let numbers = pairs(numbers).into_iter().map(|(name, it)| (name, Value::Number(it.parse().unwrap())));
    numbers.chain(pairs(words).into_iter().map(|(name, it)| (name, Value::Word(it.into())))).collect()
}

fn voices() -> [Voice; 2] {
    [Language::En.into(), Language::Es.into()]
}

#[test]
fn every_code_speaks_in_both_languages() {
    for name in CODES.split_whitespace() {
        let reason = Reason { code: named(name), values: sample(), text: String::new() };
        let [english, spanish] = voices().map(|voice| voice.reason(&reason));
        for text in [&english, &spanish] {
            assert!(!text.trim().is_empty(), "{name}: nothing said");
            assert!(!text.contains('!'), "{name}: an exclamation mark: {text}");
            assert!(!text.contains('–'), "{name}: a value it needs was not found: {text}");
        }
        assert_ne!(english, spanish, "{name}: the same in both languages");
    }
}

/// serde refuses a name that is not a code and lists all that are: the list above must be as long.
#[test]
fn no_code_is_forgotten() {
    let error = serde_json::from_value::<Code>(serde_json::json!("?")).unwrap_err().to_string();
    let known = error.matches('`').count() / 2 - 1;
    assert_eq!(CODES.split_whitespace().count(), known, "{error}");
}

#[test]
fn every_problem_says_what_is_wrong_in_both_languages() {
    let problems = [
        Problem::NotANumber,
        Problem::OutOfRange { min: 20.0, max: 600.0, unit: "g/m²".into() },
        Problem::OutOfRange { min: 1.0, max: 12.0, unit: String::new() },
        Problem::Empty,
        Problem::Unknown { nearest: vec!["cotton".into()], accepted: Vec::new() },
        Problem::Unknown { nearest: Vec::new(), accepted: vec!["cotton".into(), "linen".into()] },
        Problem::Unknown { nearest: Vec::new(), accepted: Vec::new() },
        Problem::SumNot100 { sum: 120.0, section: String::new() },
        Problem::SumNot100 { sum: 90.0, section: "lining".into() },
        Problem::TooLong { max: 400 },
        Problem::Contradiction { with: "label".into() },
        Problem::NotUnderstood,
        Problem::NotSolved,
    ];
    for problem in problems {
        let error = FieldError::new("garments[0].label", "cotten", problem);
        let [english, spanish] = voices().map(|voice| voice.problem(&error));
        assert!(english.len() > 10 && spanish.len() > 10, "{error:?}");
        for text in [&english, &spanish] {
            assert!(!text.contains("  ") && !text.contains(" ."), "a gap where nothing stands: {text}");
        }
        assert_ne!(english, spanish);
    }
}

#[test]
fn every_trouble_of_the_store_says_the_way_out_in_both_languages() {
    let troubles = [
        Trouble::Full,
        Trouble::Refused,
        Trouble::Wiped,
        Trouble::Blocked,
        Trouble::Newer,
        Trouble::Closed,
        Trouble::NotOurs,
        Trouble::Failed("UnknownError: disk".into()),
    ];
    for trouble in troubles {
        let [english, spanish] = voices().map(|voice| voice.trouble(&trouble));
        assert_ne!(english, spanish);
        for text in [english, spanish] {
            assert!(text.contains(": ") || text.matches('.').count() > 1, "no way out: {text}");
        }
    }
}

#[test]
fn sentences_say_the_thing_then_the_number() {
    let say = |voice: Voice, name: &str| {
        voice
            .reason(&Reason { code: named(name), values: sample(), text: String::new() })
            .replace('\u{a0}', " ")
    };
    let us = Voice { language: Language::En, units: Units::Us };
    let table: [(Voice, &str, &str); 8] = [
        (Language::En.into(), "lot-new", "Lot HL-2031 is new here. Only a print of it can tell."),
        (Language::Es.into(), "lot-new", "El lote HL-2031 es nuevo aquí. Solo una prueba lo dirá."),
        (
            Language::En.into(),
            "window-narrow",
            "The window is narrow. Room left: 4 °C cooler, 5 °C hotter, 0.3 m/min slower or 0.2 m/min faster. \
             Do not turn the heat up to be safe.",
        ),
        (Language::Es.into(), "shrink-near", "La tela puede encoger. Llega a 178 °C y encoge desde 2 °C."),
        (us, "shrink-near", "The cloth may shrink. It reaches 352 °F, and shrinks over 36 °F."),
        (
            us,
            "window-narrow",
            "The window is narrow. Room left: 7 °F cooler, 9 °F hotter, 1.0 ft/min slower or 0.8 ft/min faster. \
             Do not turn the heat up to be safe.",
        ),
        // An order's worth in whole money.
        (
            Language::En.into(),
            "money-adds-care",
            "Much rides on it. 12 pieces worth 10 together ask for one look more.",
        ),
        (us, "heavy-cloth", "Heavy cloth warms slowly. At 5.5 oz/yd² it needs 11 s in the heat."),
    ];
    for (voice, name, expected) in table {
        assert_eq!(say(voice, name), expected, "{name}");
    }
}

/// Reasons carry every share in percent, and a percentage is written as it is, however small: 1.0 % is not 100 %.
#[test]
fn a_small_percentage_is_not_taken_for_a_share() {
    let table = [
        (Code::FusionShort, "low", 1.0, "reaches 1 %;"),
        (Code::FusionShort, "low", 100.0, "reaches 100 %;"),
        (Code::FusionShort, "limit", 90.0, "needs 90 %."),
        (Code::FusionHolds, "likely", 0.4, "reaches 0 %,"),
        (Code::HolesLoseFilm, "open_percent", 1.0, "holes. 1 % of"),
        (Code::HolesLoseFilm, "open_percent", 30.0, "holes. 30 % of"),
        (Code::WaterSlows, "water_percent", 1.5, "water. 2 % of"),
        (Code::StretchHolds, "needed", 1.0, "needs 1 %."),
    ];
    for (code, name, value, expected) in table {
        let said = Voice::from(Language::En).reason(&Reason::new(code).number(name, value));
        let said = said.replace('\u{a0}', " ");
        assert!(said.contains(expected), "{name} {value}: {said}");
    }
}

#[test]
fn a_missing_value_is_a_dash_not_a_crash() {
    for name in CODES.split_whitespace() {
        for voice in voices() {
            assert!(!voice.reason(&Reason::new(named(name))).is_empty(), "{name}");
        }
    }
}

#[test]
fn chance_is_told_as_a_count() {
    let table = [
        (0.7, "7 in 10", "7 de cada 10"),
        (0.5, "5 in 10", "5 de cada 10"),
        (0.02, "2 in 100", "2 de cada 100"),
        (0.985, "98 in 100", "98 de cada 100"),
        (0.001, "fewer than 1 in 100", "menos de 1 de cada 100"),
        (0.9999, "more than 99 in 100", "más de 99 de cada 100"),
    ];
    for (chance, english, spanish) in table {
        let [en, es] = voices().map(|voice| voice.chance(chance));
        assert_eq!((en.as_str(), es.as_str()), (english, spanish), "{chance}");
    }
}

#[test]
fn the_lead_is_the_first_sentence() {
    let table = [
        ("The cloth bleeds. Gannet holds 1.4.", ("The cloth bleeds.", "Gannet holds 1.4.")),
        ("Is the polyester dyed?", ("", "Is the polyester dyed?")),
        ("1.4 is likely. So test.", ("1.4 is likely.", "So test.")),
    ];
    for (text, expected) in table {
        assert_eq!(lead(text), expected);
    }
}

#[test]
fn names_differ_between_languages() {
    let [en, es] = voices();
    for verdict in [Verdict::Go, Verdict::GoWithCheck, Verdict::Trial, Verdict::Refuse] {
        assert_ne!(en.verdict(verdict), es.verdict(verdict));
    }
    for topic in [
        "fusion", "bleed", "rim", "ghosting", "opacity", "matting", "hand", "gloss", "stretch", "adhesion",
        "scorch",
    ] {
        let topic: Topic = named(topic);
        assert_ne!(en.topic(topic), es.topic(topic));
        assert_ne!(en.past_limit(topic), es.past_limit(topic));
    }
    for advice in [Advice::BlockerBase, Advice::NoReducer, Advice::CoolBeforeStacking, Advice::SecondStroke] {
        assert_ne!(en.advice(advice), es.advice(advice));
    }
}

/// Every colour that a label can be read for has its name in the reader's language, by whichever name it was typed.
#[test]
fn every_known_colour_is_named_in_both_languages() {
    let colours: Vec<whitehold::textile::ColourRecord> =
        serde_json::from_str(whitehold::textile::colour::COLOURS_JSON).expect("the starter colours");
    let [en, es] = voices();
    for colour in &colours {
        for name in colour.names() {
            assert_eq!(en.colour(name), Some(colour.name.as_str()), "{name}");
            assert_eq!(es.colour(name), Some(colour.nombre.as_str()), "{name}");
        }
        let read = Reason::new(Code::ReadColour).word("colour", &colour.name);
        assert!(es.reason(&read).contains(&colour.nombre), "{}: {}", colour.name, es.reason(&read));
    }
}
