//! Every pair of colours that the page shows text, marks or lines in keeps its contrast, in both themes.
//!
//! Source of the formula: WCAG 2.2, "relative luminance" and "contrast ratio". Source of the examples: the
//! specification's own ends (black on white 21:1), and the pairs that W3C's techniques G17 and G18 and the understanding
//! documents name as just passing on white: #767676 4.54:1 and #949494 3.03:1, #595959 7.0:1.

use std::collections::BTreeMap;

/// Relative luminance of `#rrggbb`, 0 to 1.
fn luminance(colour: &str) -> f64 {
    let part = |at: usize| {
        let share = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap()) / 255.0;
        if share <= 0.040_45 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
}

/// Contrast of two colours, 1 to 21.
fn contrast(one: &str, other: &str) -> f64 {
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn the_formula_meets_its_published_examples() {
    for (one, other, ratio) in [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#767676", "#ffffff", 4.54),
        ("#949494", "#ffffff", 3.03),
        ("#595959", "#ffffff", 7.00),
    ] {
        assert!((contrast(one, other) - ratio).abs() < 0.01, "{one} on {other}: {}", contrast(one, other));
    }
}

/// The colours of a theme: those of the block that a selector opens, three-digit ones written out.
fn theme(selector: &str) -> BTreeMap<String, String> {
    let sheet = std::fs::read_to_string("www/tokens.css").unwrap();
    let block = sheet.split(&format!("{selector} {{")).nth(1).unwrap_or_else(|| panic!("no {selector}"));
    let block = block.split('}').next().unwrap();
    let mut colours = BTreeMap::new();
    for line in block.split(';') {
        let Some((name, value)) = line.split_once(':') else { continue };
        let (name, value) = (name.trim().trim_start_matches("--"), value.trim());
        if value.starts_with('#') {
            assert_eq!(value.len(), 7, "{name}: {value} is not #rrggbb");
            colours.insert(name.to_owned(), value.to_owned());
        }
    }
    colours
}

/// What stands on what, and the least contrast of it.
const PAIRS: [(&str, &str, f64); 40] = [
    // The answer: its text and its marks at 7:1.
    ("on-go", "go-plate", 7.0),
    ("on-trial", "trial-plate", 7.0),
    ("on-no", "no-plate", 7.0),
    ("ink", "sheet", 7.0),
    ("ink", "well", 7.0),
    ("ink", "press", 7.0),
    ("ink", "ground", 7.0),
    ("go", "sheet", 7.0),
    ("trial", "sheet", 7.0),
    ("no", "sheet", 7.0),
    ("on-solid", "solid", 7.0),
    // Other text at 4.5:1.
    ("ink-2", "sheet", 4.5),
    ("ink-2", "ground", 4.5),
    ("ink-2", "well", 4.5),
    ("ink-2", "press", 4.5),
    ("no", "press", 4.5),
    ("no", "well", 4.5),
    ("heat", "sheet", 4.5),
    ("fuse", "sheet", 4.5),
    ("dye", "sheet", 4.5),
    ("cloth", "sheet", 4.5),
    ("ink", "fuse-wash", 4.5),
    ("ink", "dye-wash", 4.5),
    ("ink", "heat-wash", 4.5),
    // Lines that carry meaning, edges of controls and the focus at 3:1.
    ("line", "sheet", 3.0),
    ("line", "press", 3.0),
    ("line", "ground", 3.0),
    ("line", "well", 3.0),
    ("focus", "sheet", 3.0),
    ("focus", "ground", 3.0),
    ("focus", "press", 3.0),
    ("focus", "well", 3.0),
    ("heat", "heat-wash", 3.0),
    ("fuse", "fuse-wash", 3.0),
    ("dye", "dye-wash", 3.0),
    ("cloth", "well", 3.0),
    ("no", "no-plate", 3.0),
    ("go", "well", 3.0),
    ("trial", "well", 3.0),
    ("solid", "sheet", 3.0),
];

#[test]
fn every_pair_keeps_its_contrast_in_both_themes() {
    for selector in [":host, :host([data-theme=\"light\"])", ":host([data-theme=\"dark\"])"] {
        let colours = theme(selector);
        for (on, under, least) in PAIRS {
            let ratio = contrast(&colours[on], &colours[under]);
            assert!(ratio >= least, "{selector}: {on} on {under} is {ratio:.2}, needed {least}");
        }
    }
}

#[test]
fn a_dark_tablet_shows_the_dark_theme() {
    assert_eq!(theme(":host(:not([data-theme=\"light\"]))"), theme(":host([data-theme=\"dark\"])"));
}
