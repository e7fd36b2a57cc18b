//! A garment label is read as a printer writes it, in English or Spanish; what cannot be read is said by name.

use proptest::prelude::*;
use std::collections::BTreeMap;
use whitehold::quantity::{FieldError, Problem};
use whitehold::textile::label::{ClothLook, LONGEST, LabelNote, LabelReading, read};
use whitehold::textile::{Construction, Fibre};

/// The body of a label in short: `cotton 50, polyester 50`.
fn body(reading: &LabelReading) -> String {
    in_short(&reading.body.shares, reading.body.other_percent)
}

fn in_short(shares: &BTreeMap<Fibre, f64>, other: f64) -> String {
    let mut parts: Vec<String> =
        shares.iter().map(|(fibre, percent)| format!("{} {percent}", fibre.name())).collect();
    if other > 0.0 {
        parts.push(format!("other {other}"));
    }
    parts.join(", ")
}

fn must(label: &str) -> LabelReading {
    read(label).unwrap_or_else(|errors| panic!("{label:?}: {errors:?}"))
}

fn refused(label: &str) -> FieldError {
    match read(label) {
        Ok(reading) => panic!("{label:?} was read as {}", body(&reading)),
        Err(errors) => errors.into_iter().next().unwrap(),
    }
}

#[test]
fn the_body_is_read_however_it_is_written() {
    // (label, body); sources from memory: [FTC] 16 CFR 303 and the FTC's booklet on labels, [ISO] ISO 2076 names and
    // codes, [EU] Regulation (EU) 1007/2011 annex I and article 9, [trade] common practice, no source.
    let table = [
        // [FTC] percent before the fibre, in order of weight
        ("100% Cotton", "cotton 100"),
        ("55% Polyester 45% Cotton", "cotton 45, polyester 55"),
        ("55% POLYESTER 45% COTTON", "cotton 45, polyester 55"),
        ("100% COTTON EXCLUSIVE OF DECORATION", "cotton 100"),
        ("All Cotton except 1% Nylon added to neckband", "cotton 100"),
        ("55% Cotton 45% Rayon Except 5% Nylon added to toe and heel", "cotton 55, viscose 45"),
        ("96% Cotton 4% Spandex", "cotton 96, elastane 4"),
        ("95% Nylon, 5% Other Fibers", "nylon 95, other 5"),
        ("60% Cotton, 40% Rayon", "cotton 60, viscose 40"),
        ("100% Rayon from Bamboo", "viscose 100"),
        ("50% Olefin 50% Acetate", "polypropylene 50, acetate 50"),
        ("50% Recycled Cotton 50% Cotton", "cotton 100"),
        // [EU] the same names in English and Spanish
        ("100 % algodón", "cotton 100"),
        ("100% poliéster", "polyester 100"),
        ("100% poliamida", "nylon 100"),
        ("80% lana 20% poliamida", "nylon 20, wool 80"),
        ("55% lino 45% algodón", "cotton 45, linen 55"),
        ("55% cáñamo 45% algodón orgánico", "cotton 45, hemp 55"),
        ("95% viscosa 5% elastano", "viscose 95, elastane 5"),
        ("50% modal, 50% algodón", "cotton 50, modal 50"),
        ("100% seda", "silk 100"),
        ("100% acrílico", "acrylic 100"),
        ("100% polipropileno", "polypropylene 100"),
        ("85% acetato 15% nailon", "nylon 15, acetate 85"),
        ("85 % algodón, 15 % otras fibras", "cotton 85, other 15"),
        ("97,5 % algodón 2,5 % elastano", "cotton 97.5, elastane 2.5"),
        ("pura lana", "wool 100"),
        ("TODO ALGODÓN", "cotton 100"),
        // [ISO] generic names and, in capitals beside a number, codes
        ("100% lyocell", "lyocell 100"),
        ("92% polyester 8% elastane", "polyester 92, elastane 8"),
        ("70% modacrylic 30% viscose", "viscose 30, acrylic 70"),
        ("65% PES 35% CO", "cotton 35, polyester 65"),
        ("CO 95% EL 5%", "cotton 95, elastane 5"),
        ("50/50 CO/PES", "cotton 50, polyester 50"),
        ("PA 82 EL 18", "nylon 82, elastane 18"),
        ("CV 95% EL 5%", "viscose 95, elastane 5"),
        ("WO 50% PAN 50%", "acrylic 50, wool 50"),
        ("LI 55% CO 45%", "cotton 45, linen 55"),
        ("100% PP", "polypropylene 100"),
        // [trade] both orders, slashes, no percent sign, loose words
        ("50% cotton 50% polyester", "cotton 50, polyester 50"),
        ("cotton 50% polyester 50%", "cotton 50, polyester 50"),
        ("algodón 60 poliéster 40 %", "cotton 60, polyester 40"),
        ("cotton 50/polyester 50", "cotton 50, polyester 50"),
        ("50/50 cotton/polyester", "cotton 50, polyester 50"),
        ("cotton/polyester 60/40", "cotton 60, polyester 40"),
        ("50/50 poly-cotton", "cotton 50, polyester 50"),
        ("65/35 poly cotton", "cotton 35, polyester 65"),
        ("65/35 polycotton", "cotton 35, polyester 65"),
        ("60/40 CVC", "cotton 60, polyester 40"),
        ("50/25/25 polyester/cotton/rayon", "cotton 25, viscose 25, polyester 50"),
        ("50-25-25 poly, cotton, rayon", "cotton 25, viscose 25, polyester 50"),
        ("tri-blend jersey", "cotton 25, viscose 25, polyester 50"),
        ("tri-blend 50/25/25", "cotton 25, viscose 25, polyester 50"),
        ("cotton jersey", "cotton 100"),
        ("Camiseta de algodón", "cotton 100"),
        ("cotton: 90 %; polyester: 10 %", "cotton 90, polyester 10"),
        ("%50 cotton %50 polyester", "cotton 50, polyester 50"),
        ("60%cotton40%polyester", "cotton 60, polyester 40"),
        ("90 percent cotton, 10 percent polyester", "cotton 90, polyester 10"),
        ("60 por ciento algodón y 40 por ciento poliéster", "cotton 60, polyester 40"),
        ("95% cotton, rest elastane", "cotton 95, elastane 5"),
        ("80% recycled polyester, 20% organic cotton", "cotton 20, polyester 80"),
        ("33% cotton 33% polyester 33% viscose", "cotton 33, viscose 33, polyester 33"),
        ("52% Combed Ringspun Cotton / 48% Poly", "cotton 52, polyester 48"),
        ("100% cotton 30/1", "cotton 100"),
        ("100 cotton, 24/1 yarn, size 12", "cotton 100"),
        ("100% polyester\n150 g/m2\ninterlock", "polyester 100"),
        ("Composición: 100% algodón peinado", "cotton 100"),
        ("<b>100% cotton</b>", "cotton 100"),
        ("99,5% ALGODO\u{301}N 0.5% elastano", "cotton 99.5, elastane 0.5"),
    ];
    assert!(table.len() >= 60);
    for (label, expected) in table {
        assert_eq!(body(&must(label)), expected, "{label:?}");
    }
}

#[test]
fn the_body_is_kept_apart_from_lining_rib_and_trim() {
    // (label, body, other parts); [FTC] sectional disclosure, 16 CFR 303.25, from memory, and the same in Spanish.
    for (label, expected, parts) in [
        ("shell: 100% nylon; lining: 100% polyester", "nylon 100", "lining: polyester 100"),
        ("lining: 100% polyester; shell: 100% nylon", "nylon 100", "lining: polyester 100"),
        ("shell 100% nylon lining 100% polyester", "nylon 100", "lining: polyester 100"),
        ("100% nylon shell, 100% polyester lining", "nylon 100", "lining: polyester 100"),
        ("100% nylon shell 100% polyester lining", "nylon 100", "lining: polyester 100"),
        ("100% cotton. Lining 100% polyester", "cotton 100", "lining: polyester 100"),
        ("cuerpo: 100% nailon, forro: 100% poliéster", "nylon 100", "lining: polyester 100"),
        (
            "80% cotton 20% polyester fleece; rib: 95% cotton 5% spandex",
            "cotton 80, polyester 20",
            "rib: cotton 95, elastane 5",
        ),
        ("body 100% cotton rib 95% cotton 5% elastane", "cotton 100", "rib: cotton 95, elastane 5"),
        (
            "Tela principal: 60% algodón, 40% poliéster. Forro: 100% algodón",
            "cotton 60, polyester 40",
            "lining: cotton 100",
        ),
        ("100% algodón, puños: 97% algodón 3% elastano", "cotton 100", "cuffs: cotton 97, elastane 3"),
        ("50/50 cotton polyester\nHood lining: 100% cotton", "cotton 50, polyester 50", "hood: cotton 100"),
    ] {
        let reading = must(label);
        assert_eq!(body(&reading), expected, "{label:?}");
        let read: Vec<String> = reading
            .parts
            .iter()
            .map(|part| format!("{}: {}", part.name, in_short(&part.shares, part.other_percent)))
            .collect();
        assert_eq!(read.join("; "), parts, "{label:?}");
    }
}

#[test]
fn construction_weight_colour_and_look_are_read_on_the_way() {
    use Construction::{
        Canvas, Fleece, Interlock, Jersey, Mesh, Pique, Rib, Terry, Tricot, Twill, Waffle, Woven,
    };
    // (label, construction, g/m², colour); ounces: 28.349523125 g over 0.83612736 m², exact by definition.
    let ounce = 33.905_747;
    for (label, construction, weight, colour) in [
        ("100% polyester interlock, 150 g/m2, red", Some(Interlock), Some(150.0), Some("red")),
        ("100% cotton jersey 5.3 oz navy", Some(Jersey), Some(5.3 * ounce), Some("navy")),
        ("100% cotton jersey, 6 oz/yd², royal blue", Some(Jersey), Some(6.0 * ounce), Some("royal")),
        ("100% cotton canvas 10oz/sq yd natural", Some(Canvas), Some(10.0 * ounce), Some("natural")),
        ("80/20 cotton/polyester fleece 280gsm maroon", Some(Fleece), Some(280.0), Some("maroon")),
        ("felpa rizada 60% algodón 40% poliéster 240 g/m²", Some(Terry), Some(240.0), None),
        (
            "malla de poliéster, 140 gramos por metro cuadrado, verde botella",
            Some(Mesh),
            Some(140.0),
            Some("forest green"),
        ),
        ("piqué 50% algodón 50% poliéster 190 g, azul marino", Some(Pique), Some(190.0), Some("navy")),
        ("80% nylon 20% spandex tricot, black", Some(Tricot), None, Some("black")),
        ("canalé de algodón 220 gr/m2", Some(Rib), Some(220.0), None),
        ("cotton waffle", Some(Waffle), None, None),
        ("65% polyester 35% cotton poplin 130 g/m^2 white", Some(Woven), Some(130.0), Some("white")),
        ("sarga 100% algodón 8,5 oz caqui", Some(Twill), Some(8.5 * ounce), Some("khaki")),
        ("100% algodón", None, None, None),
    ] {
        let reading = must(label);
        assert_eq!(reading.construction, construction, "{label:?}");
        assert_eq!(reading.colour.as_deref(), colour, "{label:?}");
        match (reading.areal_weight_gsm, weight) {
            (Some(read), Some(weight)) => assert!((read - weight).abs() < 1e-3, "{label:?}: {read}"),
            (read, weight) => assert_eq!(read, weight, "{label:?}"),
        }
        assert_eq!(
            reading.notes.iter().filter(|note| matches!(note, LabelNote::LeftOut { .. })).count(),
            0,
            "{label:?}"
        );
    }
    for (label, looks) in [
        ("50/50 cotton polyester heather grey", vec![ClothLook::Heather]),
        ("100% polyester sublimated mesh", vec![ClothLook::SublimationPrinted]),
        ("poliéster 100% sublimación jaspeado", vec![ClothLook::SublimationPrinted, ClothLook::Heather]),
        ("100% polyester all-over print", vec![ClothLook::SublimationPrinted]),
        ("100% nylon ripstop, PU coated, DWR", vec![ClothLook::Coated, ClothLook::WaterRepellent]),
        ("88% cotton 12% nylon 7 oz, flame-resistant treated", vec![ClothLook::FlameResistant]),
        ("hi-vis tee, 100% polyester birdseye", vec![ClothLook::HighVisibility]),
        ("100% nylon woven 70 gsm, uncoated", vec![]),
        ("100% poliéster impermeable", vec![ClothLook::Coated]),
        ("100% cotton", vec![]),
    ] {
        assert_eq!(must(label).looks, looks, "{label:?}");
    }
    assert_eq!(must("100% polyester camouflage").colour.as_deref(), Some("camouflage"));
}

#[test]
fn what_was_assumed_asked_or_left_out_is_said() {
    let whole = |fibre| LabelNote::AssumedWhole { fibre };
    for (label, notes) in [
        ("100% cotton", vec![]),
        ("cotton jersey", vec![whole(Fibre::Cotton)]),
        ("50/50 poly-cotton", vec![LabelNote::Assumed { word: "poly".into(), fibre: Fibre::Polyester }]),
        (
            "100% poly",
            vec![LabelNote::Ask {
                word: "poly".into(),
                fibre: Fibre::Polyester,
                or: vec![Fibre::Nylon, Fibre::Polypropylene],
            }],
        ),
        ("100% polyster", vec![LabelNote::ReadAs { word: "polyster".into(), fibre: Fibre::Polyester }]),
        ("100% octton", vec![LabelNote::ReadAs { word: "octton".into(), fibre: Fibre::Cotton }]),
        (
            "coton",
            vec![LabelNote::ReadAs { word: "coton".into(), fibre: Fibre::Cotton }, whole(Fibre::Cotton)],
        ),
        ("100% organic cotton", vec![LabelNote::Dropped { word: "organic".into() }]),
        ("100% cotton kt 210", vec![LabelNote::LeftOut { text: "kt 210".into() }]),
        ("95% nylon 5% other fibres", vec![LabelNote::OtherFibres { percent: 5.0, section: String::new() }]),
        ("33% cotton 33% linen 33% hemp", vec![LabelNote::Rounded { sum: 99.0, section: String::new() }]),
        (
            "100% cotton exclusive of decoration",
            vec![LabelNote::Excludes { text: "exclusive of decoration".into() }],
        ),
        (
            "100% algodón sin incluir adornos",
            vec![LabelNote::Excludes { text: "sin incluir adornos".into() }],
        ),
    ] {
        assert_eq!(must(label).notes, notes, "{label:?}");
    }
}

#[test]
fn what_cannot_be_read_is_an_error_by_name() {
    let sum = |label: &str| match refused(label).problem {
        Problem::SumNot100 { sum, section } => (sum, section),
        other => panic!("{label:?}: {other:?}"),
    };
    assert_eq!(sum("80% polyster 40% cotton interlock kt 210 red"), (120.0, String::new()));
    assert_eq!(sum("50% cotton 40% polyester"), (90.0, String::new()));
    assert_eq!(sum("cotton 50"), (50.0, String::new()));
    assert_eq!(sum("shell: 100% nylon; lining: 60% polyester"), (60.0, "lining".into()));
    // A body without one named fibre cannot be computed, whatever its sum.
    assert_eq!(sum("100% other fibres"), (100.0, String::new()));

    let unknown: [(&str, &str, &[&str]); 6] = [
        ("100% Baumwolle", "Baumwolle", &[]),
        ("100% kapok", "kapok", &[]),
        ("50% cotton 50% vizcoza", "vizcoza", &["viscosa"]),
        ("95% cotton 5% elstn", "elstn", &["elastan"]),
        ("60% viscous 40% cotton", "viscous", &["viscose", "viscosa"]),
        ("100% قطن", "قطن", &[]),
    ];
    for (label, word, near) in unknown {
        let error = refused(label);
        match error.problem {
            Problem::Unknown { nearest, accepted } => {
                assert_eq!(error.value, word, "{label:?}");
                assert_eq!(nearest, near, "{label:?}");
                assert_eq!(accepted.len(), Fibre::ALL.len());
            }
            other => panic!("{label:?}: {other:?}"),
        }
    }
    for (label, problem) in [
        ("", Problem::Empty),
        (" \n\t ", Problem::Empty),
        ("red jersey", Problem::NotUnderstood),
        ("!!! 🎽 ???", Problem::NotUnderstood),
        ("cotton polyester jersey", Problem::NotUnderstood),
        ("60% cotton polyester", Problem::NotUnderstood),
        ("lining: 100% polyester", Problem::NotUnderstood),
        ("50% 50%", Problem::NotUnderstood),
        ("150% cotton", Problem::OutOfRange { min: 0.0, max: 100.0, unit: "%".into() }),
        ("-50% cotton 150% polyester", Problem::OutOfRange { min: 0.0, max: 100.0, unit: "%".into() }),
        ("100% cotton 5 gsm", Problem::OutOfRange { min: 20.0, max: 600.0, unit: "g/m²".into() }),
    ] {
        assert_eq!(refused(label).problem, problem, "{label:?}");
    }
    assert_eq!(refused("150% cotton").value, "150");
    assert_eq!(refused(&"cotton ".repeat(100)).problem, Problem::TooLong { max: LONGEST });
    assert!(read(&format!("100% cotton{}", " ".repeat(LONGEST - 11))).is_ok());
}

/// Words that labels are made of, to reach deeper than random letters do.
fn label_like() -> impl Strategy<Value = String> {
    let word = prop_oneof![
        prop::sample::select(vec![
            "cotton",
            "poliéster",
            "poly",
            "nylon",
            "CO",
            "EL",
            "other fibres",
            "rest",
            "all",
            "50",
            "100%",
            "-3",
            "99999999999999999999",
            "33,3",
            "%",
            "/",
            ":",
            ";",
            ",",
            "\n",
            "shell",
            "lining",
            "rib",
            "jersey",
            "red",
            "tri-blend",
            "exclusive of",
            "150 g/m²",
            "5.3 oz",
            "^",
            "²",
            "<b>",
            "</script>",
            "🎽",
            "قطن",
            "\u{202e}",
            "recycled",
            "sublimated",
            "CVC",
            "e\u{301}",
            "-",
            "−5",
            ".",
            "0",
            "per",
            "ciento",
            "por",
        ])
        .prop_map(str::to_owned),
        any::<String>(),
    ];
    prop::collection::vec(word, 0..24)
        .prop_flat_map(|words| prop_oneof![Just(words.join(" ")), Just(words.concat())])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4000, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_the_reader_panic_and_no_reading_breaks_its_promise(text in label_like()) {
        match read(&text) {
            Ok(reading) => {
                for section in std::iter::once(&reading.body).chain(&reading.parts) {
                    prop_assert!((section.sum() - 100.0).abs() <= 1.0 + 1e-9);
                    prop_assert!(section.shares.values().all(|share| *share > 0.0 && *share <= 101.0));
                    let whole: f64 = section.composition().values().sum();
                    prop_assert!((whole - 1.0).abs() < 1e-9);
                }
            }
            Err(errors) => {
                prop_assert!(!errors.is_empty());
                for error in errors {
                    prop_assert!(error.value.chars().count() <= 80);
                }
            }
        }
    }

    #[test]
    fn any_two_fibres_are_read_the_same_in_every_order(
        first in 0usize..14, further in 1usize..14, share in 1u32..100, order in 0usize..5
    ) {
        let (a, b) = (Fibre::ALL[first], Fibre::ALL[(first + further) % 14]);
        let (x, y) = (share, 100 - share);
        let label = match order {
            0 => format!("{x}% {} {y}% {}", a.name(), b.name()),
            1 => format!("{} {x} % {} {y} %", a.name(), b.name()),
            2 => format!("{x}/{y} {}/{}", a.name(), b.name()),
            3 => format!("{}/{} {x}/{y}", a.name(), b.name()),
            _ => format!("{},0% {}, {} {}", x, a.name().to_uppercase(), y, b.name()),
        };
        let shares = BTreeMap::from([(a, f64::from(x)), (b, f64::from(y))]);
        prop_assert_eq!(&must(&label).body.shares, &shares, "{}", label);
    }
}
