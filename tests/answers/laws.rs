//! Cautions name the law, its figure and its day, and never say that a job complies.
//!
//! Sources of the figures: 16 CFR 1307.3; CPSIA section 101 and 16 CFR 1303; Regulation (EC) 1907/2006 annex XVII entries
//! 51 (as amended by Regulation (EU) 2018/2005), 52 and 74.

use whitehold::library::{answer, starter};
use whitehold::plan::{Code, Garment, Order, Reason, Value};
use whitehold::wording::{Language, Units, Voice};

fn cautions(age: f64, label: &str) -> Vec<Reason> {
    let library = starter().expect("the starter library parses");
    let mut order = Order {
        garments: vec![Garment { label: label.into(), pieces: 24, ..Garment::default() }],
        ..Order::default()
    };
    order.shop.shelf = vec!["chalk".into()];
    order.shop.dryer = "long-kiln".into();
    order.use_.wearer_age_years = Some(age);
    answer(&order, &library).expect("an answer").cautions
}

#[test]
fn each_names_its_figure_and_its_day() {
    let tee = "100% cotton jersey 150 gsm white";
    let nylon = "100% nylon mesh 110 gsm kelly green";
    let rows = [
        (2.0, tee, Code::ChildCare, "16 CFR 1307.3", 0.1, "2018-04-25"),
        (2.0, tee, Code::ChildProduct, "CPSIA section 101", 100.0, "2011-08-14"),
        (9.0, tee, Code::ChildProduct, "CPSIA section 101", 100.0, "2011-08-14"),
        (9.0, tee, Code::PhthalatesInArticle, "entry 51", 0.1, "2020-07-07"),
        (30.0, nylon, Code::Isocyanate, "entry 74", 0.1, "2023-08-24"),
    ];
    for (age, label, code, law, limit, since) in rows {
        let cautions = cautions(age, label);
        let caution =
            cautions.iter().find(|caution| caution.code == code).unwrap_or_else(|| panic!("no {code:?}"));
        let word = |name: &str| match caution.values.get(name) {
            Some(Value::Word(word)) => word.clone(),
            other => panic!("{code:?}: {name} is {other:?}"),
        };
        assert!(word("law").contains(law), "{code:?}: {}", word("law"));
        assert_eq!(word("since"), since, "{code:?}");
        assert_eq!(caution.values.get("limit"), Some(&Value::Number(limit)), "{code:?}");
        for language in [Language::En, Language::Es] {
            let said = Voice { language, units: Units::Metric }.reason(caution);
            assert!(said.contains(since) && said.contains(law), "{said}");
            assert!(!said.to_lowercase().contains("compliant") && !said.contains("–"), "{said}");
        }
    }
}

#[test]
fn none_is_named_where_it_does_not_matter() {
    let grown = cautions(30.0, "100% cotton jersey 150 gsm white");
    let laws = [Code::ChildCare, Code::ChildProduct, Code::PhthalatesInArticle, Code::Isocyanate];
    assert!(grown.iter().all(|caution| !laws.contains(&caution.code)), "{grown:?}");
    let school = cautions(9.0, "100% cotton jersey 150 gsm white");
    assert!(school.iter().all(|caution| caution.code != Code::ChildCare));
    // Additive is not for infants: nylon for them goes without, and so does its caution.
    let infant = cautions(1.0, "100% nylon mesh 110 gsm kelly green");
    assert!(infant.iter().all(|caution| caution.code != Code::Isocyanate));
}
