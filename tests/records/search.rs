//! Records are found by words as people type them.

use serde_json::json;
use whitehold::library::log::{Change, Kind, Log};
use whitehold::library::search::SearchIndex;
use whitehold::library::{self, Library};

const ALL: [Kind; 5] = [Kind::Fabric, Kind::White, Kind::Dryer, Kind::Lot, Kind::Trial];

fn shop() -> (Library, Log) {
    let starter = library::starter().unwrap();
    let mut log = Log::new("a", "1");
    let mut cloth = starter.fabric_record("cotton-jersey").unwrap().clone();
    for (id, name) in [
        ("red-interlock", "Red interlock"),
        ("red-interlock-recycled", "Red interlock, recycled"),
        ("maroon-interlock", "Maroon interlock"),
    ] {
        (cloth.id, cloth.name, cloth.nombre) = (id.into(), name.into(), "Punto de algodón teñido".into());
        let edits = vec![log.keep(id, &cloth).unwrap()];
        log.append(0, Change::Edit { edits, from: None });
    }
    for (kind, id, fields) in [
        (Kind::Lot, "red-interlock/HL-2031", json!({ "name": "HL-2031" })),
        (Kind::Trial, "t1", json!({ "fabric": "Red interlock", "lot": "HL-2031", "white": "gannet" })),
    ] {
        let edits = vec![log.write(kind, id, fields.as_object().unwrap())];
        log.append(0, Change::Edit { edits, from: None });
    }
    (starter.with(&log).0, log)
}

#[test]
fn words_are_found_in_any_order_begun_accented_or_misspelt() {
    let (library, log) = shop();
    let index = SearchIndex::of(&library, &log);
    // (asked, kinds, the first that is found)
    let table: [(&str, &[Kind], &str); 13] = [
        ("red interlock", &ALL, "red-interlock"),
        ("interlock RED", &ALL, "red-interlock"),
        ("red inter recyc", &ALL, "red-interlock-recycled"),
        ("maroom interlok", &ALL, "maroon-interlock"),
        ("algodon tenido", &ALL, "red-interlock"),
        ("canalé", &ALL, "cotton-rib"),
        ("pique", &ALL, "cotton-pique"),
        ("hl-2031", &[Kind::Lot], "red-interlock/HL-2031"),
        ("2031", &[Kind::Lot], "red-interlock/HL-2031"),
        ("gannet", &[Kind::Trial], "t1"),
        ("ganet", &[Kind::White], "gannet"),
        ("gannet cool", &[Kind::White], "gannet-cool"),
        ("kiln", &[Kind::Dryer], "long-kiln"),
    ];
    for (asked, kinds, expected) in table {
        let found = index.find(asked, kinds);
        let first = found.items.first().and_then(|&place| index.item(place));
        assert_eq!(first.map(|item| &*item.key.id), Some(expected), "{asked}");
    }
}

#[test]
fn nothing_asked_is_everything_and_the_shops_own_come_first() {
    let (library, log) = shop();
    let index = SearchIndex::of(&library, &log);
    let found = index.find("  ", &[Kind::Fabric]);
    assert_eq!(found.items.len(), library.fabrics.len());
    let own: Vec<bool> = found.items.iter().map(|&place| index.item(place).unwrap().own).collect();
    assert_eq!(own.iter().position(|own| !own), Some(3), "{own:?}");
    assert_eq!(index.count(Kind::Lot), 1);
}

#[test]
fn where_nothing_has_all_words_it_says_how_many_have_each() {
    let (library, log) = shop();
    let index = SearchIndex::of(&library, &log);
    let found = index.find("maroon fleece zzzz", &[Kind::Fabric]);
    assert!(found.items.is_empty());
    let fleece = index.find("fleece", &[Kind::Fabric]).count;
    assert_eq!(found.instead, [("maroon".to_owned(), 1), ("fleece".to_owned(), fleece)]);
    assert!(fleece > 0);
}

#[test]
fn what_was_removed_is_not_found() {
    let (_, mut log) = shop();
    let edits = vec![log.remove(Kind::Fabric, "maroon-interlock").unwrap()];
    log.append(0, Change::Edit { edits, from: None });
    let library = library::starter().unwrap().with(&log).0;
    assert!(SearchIndex::of(&library, &log).find("maroon", &ALL).items.is_empty());
}

/// A list that nobody asked of is in the order of its names, the shop's own before what ships.
#[test]
fn unasked_the_list_is_in_the_order_of_its_names() {
    let (library, log) = shop();
    let index = SearchIndex::of(&library, &log);
    let found = index.find("", &[Kind::Fabric]);
    let names: Vec<_> = found.items.iter().filter_map(|&place| index.item(place)).collect();
    assert!(names.iter().take(3).all(|item| item.own) && names.iter().skip(3).all(|item| !item.own));
    for part in [&names[..3], &names[3..]] {
        assert!(part.windows(2).all(|pair| pair[0].name <= pair[1].name));
    }
}
