//! The code on a job sheet: what it holds comes back from a picture, and a picture that cannot be read says why.
//!
//! Source of the pictures: `tests/codes/make.py`. They are written by segno, a QR writer of its own, and bent and dimmed
//! by Pillow. Our own codes are read by the page's reader and by the crate `rqrr`, which shares no line with either.

use proptest::prelude::*;
use whitehold::library::harbour_lane;
use whitehold::library::sheet_code::{QrSymbol, SheetCode, SheetCodeError, text_in};
use whitehold::plan::{DialSetting, Garment, Order};

/// What segno wrote.
const WRITTEN: &str = "WHITEHOLD1 {\"o\":{\"garments\":[{\"label\":\"100% algodón, negro\",\"pieces\":12}]},\"t\":\"Señal\",\"w\":\"chalk/2x43\",\"s\":[165.0,2.8]}";

/// Width, height and pixels of a grey picture (PGM, binary).
fn picture(name: &str) -> (usize, usize, Vec<u8>) {
    let bytes = std::fs::read(format!("tests/codes/{name}.pgm")).unwrap();
    let head: Vec<&[u8]> = bytes.splitn(4, |byte| *byte == b'\n').collect();
    let size: Vec<usize> =
        String::from_utf8_lossy(head[1]).split_whitespace().map(|it| it.parse().unwrap()).collect();
    (size[0], size[1], head[3].to_vec())
}

#[test]
fn codes_of_another_writer_are_read_as_photographed() {
    // picture, what comes of it
    let table = [
        ("straight", Ok(WRITTEN)),
        ("turned", Ok(WRITTEN)),
        ("askew", Ok(WRITTEN)),
        ("dim", Ok(WRITTEN)),
        ("smudged", Ok(WRITTEN)),
        ("ruined", Err(SheetCodeError::Damaged)),
    ];
    for (name, expected) in table {
        let (width, height, grey) = picture(name);
        assert_eq!(text_in(width, height, &grey).as_deref(), expected.as_ref().map(|it| *it), "{name}");
    }
    let sheet_code = SheetCode::read(WRITTEN).unwrap();
    assert_eq!(sheet_code.order.garments[0].label, "100% algodón, negro");
    assert_eq!(
        (sheet_code.order.garments[0].pieces, sheet_code.at),
        (12, Some(DialSetting { set_c: 165.0, belt_m_per_min: 2.8 }))
    );
}

/// A code as a picture: so many pixels a module, on a wall of grey.
fn shot(code: &QrSymbol, scale: usize) -> (usize, usize, Vec<u8>) {
    let side = (code.side() + 12) * scale;
    let at = |place: usize| (place / scale).checked_sub(6).unwrap_or(usize::MAX);
    let pixel = |place: usize| if code.dark(at(place % side), at(place / side)) { 30 } else { 225 };
    (side, side, (0..side * side).map(pixel).collect())
}

#[test]
fn every_order_of_the_week_comes_back_from_its_code() {
    for order in harbour_lane().unwrap().orders {
        let sheet_code = SheetCode {
            order: order.order,
            title: format!("{} · {}", order.id, order.title),
            way: "gannet/1x32/1x32".into(),
            at: Some(DialSetting { set_c: 165.0, belt_m_per_min: 2.8 }),
        };
        let text = sheet_code.write();
        let code = QrSymbol::of(&text).unwrap_or_else(|| panic!("{}: {} bytes", order.id, text.len()));
        // At 40 mm with its margin a module is then 0.41 mm wide at least.
        assert!(code.side() <= 89, "{}: {} modules for {} bytes", order.id, code.side(), text.len());
        let (width, height, grey) = shot(&code, 4);
        let read = text_in(width, height, &grey).unwrap();
        assert_eq!(SheetCode::read(&read).unwrap(), sheet_code, "{}", order.id);
        let mut other =
            rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| grey[y * width + x]);
        let (_, elsewhere) = other.detect_grids()[0].decode().unwrap();
        assert_eq!(elsewhere, text, "{}", order.id);
    }
}

#[test]
fn a_picture_that_holds_no_sheet_says_why() {
    let of = |text: &str| {
        let (width, height, grey) = shot(&QrSymbol::of(text).unwrap(), 4);
        text_in(width, height, &grey).and_then(|text| SheetCode::read(&text))
    };
    let newer = SheetCode::default().write().replacen('1', "2", 1);
    // case, what comes of it
    let table = [
        ("nothing", text_in(0, 0, &[]).map(|_| ()), SheetCodeError::NoCode),
        ("white paper", text_in(200, 200, &[250; 40_000]).map(|_| ()), SheetCodeError::NoCode),
        ("fewer pixels than said", text_in(200, 200, &[0; 10]).map(|_| ()), SheetCodeError::NoCode),
        ("a code of something else", of("https://example.org").map(|_| ()), SheetCodeError::NotOurs),
        ("our mark, not our text", of("WHITEHOLD1 {\"o\":7}").map(|_| ()), SheetCodeError::NotOurs),
        ("a newer sheet", of(&newer).map(|_| ()), SheetCodeError::Newer),
    ];
    for (case, came, expected) in table {
        assert_eq!(came, Err(expected), "{case}");
    }
}

#[test]
fn an_order_too_long_for_a_code_has_none() {
    let garment = Garment { label: "cotton ".repeat(400), ..Garment::default() };
    let order = Order { garments: vec![garment], ..Order::default() };
    assert_eq!(QrSymbol::of(&SheetCode { order, ..SheetCode::default() }.write()), None);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn whatever_stands_in_an_order_comes_back(
        label in "\\PC{0,80}", lot in "\\PC{0,20}", pieces in 1..9999u32, humidity in 20.0..80.0f64, dark in any::<bool>()
    ) {
        let garment = Garment { label, lot, pieces, over_dyed: dark, ..Garment::default() };
        let mut order = Order { garments: vec![garment], ..Order::default() };
        order.shop.humidity_percent = humidity;
        let sheet_code = SheetCode { order, title: "\u{202e}<b>".into(), way: String::new(), at: None };
        prop_assert_eq!(SheetCode::read(&sheet_code.write()).unwrap(), sheet_code);
    }

    #[test]
    fn no_picture_makes_the_reader_stumble(
        width in 0..90usize, height in 0..90usize, noise in proptest::collection::vec(any::<u8>(), 0..8100)
    ) {
        let _ = text_in(width, height, &noise);
    }
}
