//! Cautions name the law, its figure and its day, and never say that a job complies.
//!
//! Sources of the figures: 16 CFR 1307.3; CPSIA section 101 and 16 CFR 1303; Regulation (EC) 1907/2006 annex XVII entries
//! 51 (as amended by Regulation (EU) 2018/2005), 52 and 74.

use super::common::{an_order, number, word};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use whitehold::plan::{Code, Reason};
use whitehold::wording::{Language, Units, Voice};

const TEE: &str = "100% cotton jersey 150 gsm white";
const NYLON: &str = "100% nylon mesh 110 gsm kelly green";
const LAWS: [Code; 4] = [Code::ChildCare, Code::ChildProduct, Code::PhthalatesInArticle, Code::Isocyanate];

/// A word that begins so says that a law is kept: "complies", "compliant", "conforms", "cumple", "conforme", "legal".
const PROMISES: [&str; 6] = ["compli", "comply", "conform", "cumpl", "legal", "lawful"];

fn cautions(age: f64, label: &str) -> Vec<Reason> {
    let order = an_order().label(label).pieces(24).shelf(&["chalk"]);
    order.used(|used| used.wearer_age_years = Some(age)).answered().cautions
}

fn in_both_languages(caution: &Reason) -> [String; 2] {
    [Language::En, Language::Es].map(|language| Voice { language, units: Units::Metric }.reason(caution))
}

/// The first word that promises compliance.
fn promise(sentence: &str) -> Option<String> {
    let lower = sentence.to_lowercase();
    let mut words = lower.split(|letter: char| !letter.is_alphabetic());
    words.find(|word| PROMISES.iter().any(|stem| word.starts_with(stem))).map(Into::into)
}

#[test]
fn each_names_its_figure_and_its_day() {
    let rows = [
        (2.0, TEE, Code::ChildCare, "16 CFR 1307.3", 0.1, "2018-04-25"),
        (2.0, TEE, Code::ChildProduct, "CPSIA section 101", 100.0, "2011-08-14"),
        (9.0, TEE, Code::ChildProduct, "CPSIA section 101", 100.0, "2011-08-14"),
        (9.0, TEE, Code::PhthalatesInArticle, "entry 51", 0.1, "2020-07-07"),
        (30.0, NYLON, Code::Isocyanate, "entry 74", 0.1, "2023-08-24"),
    ];
    for (age, label, code, law, limit, since) in rows {
        let cautions = cautions(age, label);
        let caution = cautions.iter().find(|caution| caution.code == code);
        let caution = caution.unwrap_or_else(|| panic!("no {code:?}"));
        assert!(word(caution, "law").contains(law), "{code:?}: {}", word(caution, "law"));
        assert_eq!(word(caution, "since"), since, "{code:?}");
        assert!((number(caution, "limit") - limit).abs() < 1e-12, "{code:?}: {}", number(caution, "limit"));
        for said in in_both_languages(caution) {
            assert!(said.contains(since) && said.contains(law), "{said}");
        }
    }
}

/// Whatever the caution: none of them promises that a law is kept.
#[test]
fn none_says_that_a_job_complies() {
    let mut read = BTreeSet::new();
    for (age, label) in [(1.0, TEE), (2.0, TEE), (9.0, TEE), (30.0, TEE), (1.0, NYLON), (30.0, NYLON)] {
        for caution in cautions(age, label) {
            for said in in_both_languages(&caution) {
                assert_eq!(promise(&said), None, "{:?}: {said}", caution.code);
            }
            read.insert(format!("{:?}", caution.code));
        }
    }
    for law in LAWS {
        assert!(read.contains(&format!("{law:?}")), "{law:?} was not read: {read:?}");
    }
}

/// No other word of the page does so either: every line of both languages, of the views and of the data is read. A setting
/// may meet every limit, which in Spanish is `cumplir`.
#[test]
fn no_word_of_the_page_says_that_a_job_complies() {
    let mut read = 0;
    for (path, text) in texts(&["src/wording", "src/web/view", "data"]) {
        for line in text.lines().filter(|line| !line.trim_start().starts_with("//")) {
            read += 1;
            let of_a_setting = CUMPLE.iter().any(|words| line.contains(words));
            assert!(of_a_setting || promise(line).is_none(), "{path}: {line}");
        }
    }
    assert!(read > 5000, "only {read} lines");
}

/// The three sentences in which a setting or another white meets every limit.
const CUMPLE: [&str; 3] = ["que también cumple.", "cumple igual de bien.", "horno cumple todos los límites"];

/// Path and text of every file below these folders of the project.
fn texts(folders: &[&str]) -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut folders: Vec<PathBuf> = folders.iter().map(|folder| root.join(folder)).collect();
    let mut texts = Vec::new();
    while let Some(folder) = folders.pop() {
        for path in std::fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("an entry").path())
        {
            if path.is_dir() {
                folders.push(path);
            } else {
                texts.push((path.display().to_string(), std::fs::read_to_string(&path).expect("a text")));
            }
        }
    }
    texts
}

/// The reader of promises finds those that a sentence might make.
#[test]
fn a_promise_is_found() {
    let promised = [
        "This job complies with every law.",
        "It is fully compliant.",
        "The ink conforms to the directive.",
        "Cumple con todas las leyes.",
        "Es conforme al reglamento.",
    ];
    for sentence in promised {
        assert!(promise(sentence).is_some(), "{sentence}");
    }
}

#[test]
fn none_is_named_where_it_does_not_matter() {
    let named = |age: f64, label: &str| -> Vec<Code> {
        let codes = cautions(age, label).into_iter().map(|caution| caution.code);
        codes.filter(|code| LAWS.contains(code)).collect()
    };
    assert_eq!(named(30.0, TEE), []);
    assert!(!named(9.0, TEE).contains(&Code::ChildCare));
    // The additive is not for infants: nylon for them goes without it, and so does its caution.
    assert!(!named(1.0, NYLON).contains(&Code::Isocyanate));
}
