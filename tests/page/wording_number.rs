//! Numbers are read and written as a shop does, and units convert without loss.
//!
//! Conversions are checked against NIST Special Publication 811 (2008), appendix B, from memory:
//! 1 oz/yd² = 33.905 75 g/m², 1 ft/min = 0.005 08 m/s, t/°C = (t/°F − 32)/1.8, 1 in = 2.54 cm.

use whitehold::wording::number::{Typed, read};
use whitehold::wording::{Language, Numeral, Quantity, Units, Voice};

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-5 * other.abs().max(1.0)
}

#[test]
fn units_convert_as_printed_in_the_tables() {
    let table = [
        (Quantity::Weight, 33.905_75, 1.0),
        (Quantity::Belt, 0.005_08 * 60.0, 1.0),
        (Quantity::Temperature, 100.0, 212.0),
        (Quantity::Temperature, -40.0, -40.0),
        (Quantity::TemperatureDifference, 5.0, 9.0),
        (Quantity::Threads, 43.0, 109.22),
        (Quantity::Area, 6.4516, 1.0),
        (Quantity::Seconds, 39.0, 39.0),
    ];
    for (quantity, metric, us) in table {
        assert!(close(quantity.shown(metric, Units::Us), us), "{quantity:?}");
        assert!(close(quantity.kept(us, Units::Us), metric), "{quantity:?}");
        assert!(close(quantity.shown(metric, Units::Metric), metric));
    }
}

#[test]
fn typed_numbers_are_read() {
    let plain = |value| Some(Typed { value, units: None });
    let in_units = |value, units| Some(Typed { value, units: Some(units) });
    let table = [
        ("1.5", Quantity::Belt, false, plain(1.5)),
        ("1,5", Quantity::Belt, false, plain(1.5)),
        (" 150 ", Quantity::Weight, false, plain(150.0)),
        ("1 200", Quantity::Plain, true, plain(1200.0)),
        ("1,200", Quantity::Plain, true, plain(1200.0)),
        ("1.200", Quantity::Plain, true, plain(1200.0)),
        ("1,200", Quantity::Belt, false, plain(1.2)),
        ("1.234,5", Quantity::Area, false, plain(1234.5)),
        ("1,234.5", Quantity::Area, false, plain(1234.5)),
        ("\u{2212}5", Quantity::Temperature, false, plain(-5.0)),
        ("330 F", Quantity::Temperature, false, in_units(330.0, Units::Us)),
        ("165 °C", Quantity::Temperature, false, in_units(165.0, Units::Metric)),
        ("5,3 oz", Quantity::Weight, false, in_units(5.3, Units::Us)),
        ("150 g/m²", Quantity::Weight, false, in_units(150.0, Units::Metric)),
        ("60 %", Quantity::Percent, false, plain(60.0)),
        ("", Quantity::Weight, false, None),
        ("hot", Quantity::Temperature, false, None),
        ("1.2.3", Quantity::Temperature, false, None),
        ("12 bananas", Quantity::Plain, true, None),
        ("nan", Quantity::Plain, false, None),
        ("1e5", Quantity::Plain, false, None),
    ];
    for (text, quantity, whole, expected) in table {
        assert_eq!(read(text, quantity, whole), expected, "{text:?}");
    }
}

#[test]
fn numbers_are_written_with_the_digits_of_a_shop() {
    let en = Voice { language: Language::En, units: Units::Metric };
    let es = Voice { language: Language::Es, units: Units::Metric };
    let us = Voice { language: Language::En, units: Units::Us };
    let table = [
        (en.quantity(Quantity::Temperature, 165.2), "165 °C"),
        (us.quantity(Quantity::Temperature, 165.0), "329 °F"),
        (es.quantity(Quantity::Belt, 2.8), "2,8 m/min"),
        (us.quantity(Quantity::Belt, 2.8), "9.2 ft/min"),
        (en.quantity(Quantity::Threads, 43.0), "43/cm"),
        (us.quantity(Quantity::Threads, 43.0), "109/in"),
        (us.quantity(Quantity::Weight, 150.0), "4.4 oz/yd²"),
        (es.quantity(Quantity::ColourDifference, 1.44), "1,4"),
        (en.belt_difference(0.3), "0.3 m/min"),
        (en.belt_difference(0.05), "0.05 m/min"),
        (Numeral(Language::En).fixed(-0.04, 1), "0.0"),
        (Numeral(Language::Es).fixed(-2.25, 1), "\u{2212}2,2"),
        (Numeral(Language::En).fixed(f64::NAN, 1), "–"),
        (Numeral(Language::En).short(2.80, 2), "2.8"),
        (Numeral(Language::Es).short(12.0, 2), "12"),
    ];
    for (written, expected) in table {
        assert_eq!(written.replace('\u{a0}', " "), expected);
    }
}
