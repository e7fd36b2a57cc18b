//! A colour meter's file is read as it is meant, or refused at the line and column that cannot be read.

use proptest::prelude::*;
use whitehold::optics::meter::{MeterError, MeterFile, MeterNote, MeterProblem};
use whitehold::optics::{Lab, cie76};
use whitehold::quantity::Problem;
use whitehold::wording::{Language, Voice};

fn read(text: &str) -> MeterFile {
    MeterFile::read(text).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn refused(text: &str) -> MeterError {
    match MeterFile::read(text) {
        Err(error) => error,
        Ok(file) => panic!("read as {file:?}:\n{text}"),
    }
}

/// Measured spectra of the 24 patches of a public colour chart, 380 to 730 nm by 10 nm.
/// Source: colour-science 0.4.7, data set `BabelColor Average`.
const CHART: &str = include_str!("../meter/chart.txt");

/// Lab of those patches for D65/10°. Source: colour-science 0.4.7: Sprague interpolation to 1 nm, ends held, summed with
/// the CIE tables at 1 nm, white (94.811, 100, 107.304).
#[rustfmt::skip]
const PATCHES: [(&str, [f64; 3]); 24] = [
    ("dark skin", [37.5093, 12.3609, 12.9681]),
    ("light skin", [65.0957, 13.2349, 17.7386]),
    ("blue sky", [51.4051, -4.3272, -20.3983]),
    ("foliage", [42.5296, -10.5736, 21.4452]),
    ("blue flower", [56.5015, 6.4844, -23.1292]),
    ("bluish green", [71.6188, -30.8750, 3.3297]),
    ("orange", [59.9244, 34.3010, 53.8857]),
    ("purplish blue", [42.9208, 7.5970, -40.5092]),
    ("moderate red", [49.8763, 41.8817, 13.5085]),
    ("purple", [30.8557, 19.2331, -21.2251]),
    ("yellow green", [71.0065, -19.5742, 58.2589]),
    ("orange yellow", [69.1529, 20.8184, 64.6582]),
    ("blue", [32.2594, 10.8726, -44.6881]),
    ("green", [54.9101, -34.3020, 34.4356]),
    ("red", [40.0370, 46.6011, 24.8337]),
    ("yellow", [79.6791, 5.4934, 79.4525]),
    ("magenta", [51.3951, 42.7861, -16.5663]),
    ("cyan", [53.4707, -29.3428, -21.8091]),
    ("white 9.5 (.05 D)", [96.4516, -0.9048, 2.8633]),
    ("neutral 8 (.23 D)", [81.2103, -0.6649, 0.4901]),
    ("neutral 6.5 (.44 D)", [66.4837, -0.4291, 0.1094]),
    ("neutral 5 (.70 D)", [50.8390, -0.4985, -0.0504]),
    ("neutral 3.5 (1.05 D)", [35.8940, -0.4324, -0.3767]),
    ("black 2 (1.5 D)", [20.8353, 0.1738, -0.3564]),
];

#[test]
fn measured_spectra_have_the_colours_that_a_library_gives_them() {
    let file = read(CHART);
    assert_eq!(file.samples.len(), 24);
    assert_eq!(file.notes, [MeterNote::TakenAsFraction, MeterNote::FromSpectra]);
    for (sample, (name, expected)) in file.samples.iter().zip(PATCHES) {
        assert_eq!(sample.name, name);
        let away = cie76(sample.lab, expected.into());
        assert!(away < 0.02, "{name}: {:?} for {expected:?}", sample.lab);
        // The sixteen wavelengths that the white film is computed with: coarser, but the same colour.
        let spectrum = sample.spectrum.expect("the file holds spectra");
        let coarse = cie76(spectrum.lab(), expected.into());
        assert!(coarse < 1.0, "{name}: {coarse} on sixteen wavelengths");
    }
}

/// The chart again: in percent, with semicolons and decimal commas, every second band only, and wrapped lines.
#[test]
fn the_same_spectra_in_other_dress_have_the_same_colours() {
    let body: Vec<&str> = CHART.lines().skip_while(|line| !line.starts_with("BEGIN_DATA_FORMAT")).collect();
    let headings: Vec<&str> = body[1].split('\t').collect();
    let rows: Vec<Vec<&str>> = body
        .iter()
        .skip_while(|line| **line != "BEGIN_DATA")
        .skip(1)
        .take(24)
        .map(|row| row.split('\t').collect())
        .collect();
    let percent = |text: &str| {
        text.parse().map_or_else(|_| text.to_owned(), |value: f64| format!("{:.3}", 100.0 * value))
    };

    let mut table = format!(
        "Instrument;x\n\n{}\n",
        headings.join(";").replace("SPECTRAL_NM", "").replace("SAMPLE_ID", "No.")
    );
    let mut twenty = headings.iter().step_by(2).copied().collect::<Vec<_>>().join("\t") + "\n";
    let mut wrapped = String::from("CGATS.17\nBEGIN_DATA_FORMAT\n")
        + &headings.join("\n")
        + "\nEND_DATA_FORMAT\nBEGIN_DATA\n";
    wrapped = wrapped.replace("SPECTRAL_NM", "SPEC_");
    for row in &rows {
        let values: Vec<String> = row[2..].iter().map(|value| percent(value)).collect();
        table += &format!("{};{};{};;\n", row[0], row[1], values.join(";").replace('.', ","));
        twenty += &(row.iter().step_by(2).copied().collect::<Vec<_>>().join("\t") + "\n");
        wrapped += &format!("{} {}\n{}\n", row[0], row[1], values.join("\n"));
    }
    wrapped += "END_DATA\n";
    for (text, note, tolerance) in [
        (&table, MeterNote::TakenAsPercent, 0.02),
        (&wrapped, MeterNote::TakenAsPercent, 0.02),
        (&twenty, MeterNote::TakenAsFraction, 0.6),
    ] {
        let file = read(text);
        assert!(file.notes.contains(&note), "{:?}", file.notes);
        assert_eq!(file.samples.len(), 24);
        for (sample, (name, expected)) in file.samples.iter().zip(PATCHES) {
            let away = cie76(sample.lab, expected.into());
            assert!(away < tolerance, "{name}: {:?} for {expected:?}", sample.lab);
        }
    }
}

/// A file, and the names and Lab that it holds.
type Layout<'a> = (&'a str, &'a [(&'a str, [f64; 3])]);

/// Layouts that public programs write: with and without the first line, tabs or blanks, quotes, comments, counts left
/// out, Windows line ends, other tables in the same file, decimal commas.
#[test]
fn every_usual_layout_is_read() {
    let rows: [Layout<'_>; 9] = [
        (
            "CGATS.17\nORIGINATOR \"a meter\"\nILLUMINATION_NAME \"D65\"\nOBSERVER_ANGLE \"10\"\n\
             NUMBER_OF_FIELDS 5\nBEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n\
             NUMBER_OF_SETS 2\nBEGIN_DATA\n1 \"fresh white\" 95.12 -0.80 1.90 # first\n2 \"after \"\"30\"\" days\" 94.1 0.9 0.8\nEND_DATA\n",
            &[("fresh white", [95.12, -0.8, 1.9]), ("after \"30\" days", [94.1, 0.9, 0.8])],
        ),
        (
            "CGATS.17\r\nBEGIN_DATA_FORMAT\r\nSampleID\tLAB_L\tLAB_A\tLAB_B\r\nEND_DATA_FORMAT\r\nBEGIN_DATA\r\n\r\nA1\t34,237\t18,41\t-5,74\r\nEND_DATA\r\n",
            &[("A1", [34.237, 18.41, -5.74])],
        ),
        (
            "\u{feff}LGOROWLENGTH\t12\nNUMBER_OF_SETS\t1\nBEGIN_DATA_FORMAT\nSAMPLE_NAME\tNOTE\tLAB_L\tLAB_A\tLAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\nred\t\t38\t58\t35\nEND_DATA\n",
            &[("red", [38.0, 58.0, 35.0])],
        ),
        (
            "CTI1\nBEGIN_DATA_FORMAT\nINDEX RGB_R RGB_G RGB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n0 100 100 100\nEND_DATA\n\
             CTI3\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n7 50 1 2\nEND_DATA\n",
            &[("7", [50.0, 1.0, 2.0])],
        ),
        (
            "Name,L*,a*,b*\nRed,41.2,58.1,30.0\nWhite,95.1,0.2,-0.5\n",
            &[("Red", [41.2, 58.1, 30.0]), ("White", [95.1, 0.2, -0.5])],
        ),
        (
            "Report of 3 May\n\nNombre;L*(10°/D65);a*(10°/D65);b*(10°/D65);dE\n\"Blanco; nuevo\";95,1;−0,2;1,5;\n;90;0;0;1,2\n",
            &[("Blanco; nuevo", [95.1, -0.2, 1.5]), ("2", [90.0, 0.0, 0.0])],
        ),
        (
            "\"Sample\",\"CIE L\",\"CIE a\",\"CIE b\"\n\"one\",\"38\",\"58\",\"35\"\n",
            &[("one", [38.0, 58.0, 35.0])],
        ),
        ("L a b\n38 58 35\n", &[("1", [38.0, 58.0, 35.0])]),
        ("b*\ta*\tL*\tID\n35\t58\t38\tx\n", &[("x", [38.0, 58.0, 35.0])]),
    ];
    for (text, expected) in rows {
        let file = read(text);
        let found: Vec<(&str, Lab)> =
            file.samples.iter().map(|sample| (sample.name.as_str(), sample.lab)).collect();
        let expected: Vec<(&str, Lab)> =
            expected.iter().map(|(name, lab)| (*name, Lab::from(*lab))).collect();
        assert_eq!(found, expected, "{text}");
    }
}

/// A Lab for another light cannot become ours, so it is handed on with a note; a spectrum can, so it wins.
#[test]
fn light_and_observer_are_never_guessed_silently() {
    let lab = "BEGIN_DATA_FORMAT\nLAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n95 0 2\nEND_DATA\n";
    let rows = [
        ("CGATS.17\n", MeterNote::ViewingNotStated, None, None),
        (
            "CGATS.17\nILLUMINATION_NAME \"D50\"\nOBSERVER_ANGLE \"2\"\n",
            MeterNote::OtherViewing,
            Some("D50"),
            Some(2),
        ),
        (
            "CGATS.17\nMEASUREMENT_SOURCE \"Illumination=D50 ObserverAngle=2 WhiteBase=Abs Filter=no\"\n",
            MeterNote::OtherViewing,
            Some("D50"),
            Some(2),
        ),
        (
            "CGATS.17\nWEIGHTING_FUNCTION \"ILLUMINANT, D65\"\nWEIGHTING_FUNCTION \"OBSERVER, 2 degree\"\n",
            MeterNote::OtherViewing,
            Some("D65"),
            Some(2),
        ),
        ("CGATS.17\nILLUMINATION_NAME \"D65\"\n", MeterNote::ViewingNotStated, Some("D65"), None),
    ];
    for (header, note, illuminant, observer) in rows {
        let file = read(&format!("{header}{lab}"));
        assert_eq!(file.notes, [note], "{header}");
        assert_eq!((file.seen.illuminant.as_deref(), file.seen.observer), (illuminant, observer), "{header}");
    }
    let ours = read(&format!("CGATS.17\nILLUMINATION_NAME \"D65\"\nOBSERVER_ANGLE \"10\"\n{lab}"));
    assert!(ours.notes.is_empty() && ours.seen.is_ours(), "{ours:?}");

    // Both Lab and a spectrum: a flat one of 0.8 is a grey of L* 91.68 under any light.
    let bands: Vec<String> = (0..16).map(|band| format!("nm{}", 400 + 20 * band)).collect();
    let both = |header: &str| {
        let flat = vec!["0.8"; 16].join(" ");
        format!(
            "{header}BEGIN_DATA_FORMAT\nLAB_L LAB_A LAB_B {}\nEND_DATA_FORMAT\nBEGIN_DATA\n91 1 2 {flat}\nEND_DATA\n",
            bands.join(" ")
        )
    };
    let found = read(&both("CGATS.17\nILLUMINATION_NAME \"D50\"\n")).samples[0].lab;
    assert!(cie76(found, Lab::new(91.6848, 0.0, 0.0)) < 0.01, "{found:?}");
    let found = read(&both("CGATS.17\nILLUMINATION_NAME \"D65\"\nOBSERVER_ANGLE \"10\"\n")).samples[0].lab;
    assert_eq!(found, Lab::new(91.0, 1.0, 2.0));
}

fn cgats(format: &str, data: &str) -> String {
    format!("CGATS.17\nBEGIN_DATA_FORMAT\n{format}\nEND_DATA_FORMAT\nBEGIN_DATA\n{data}\nEND_DATA\n")
}

#[test]
fn what_cannot_be_read_is_named_by_line_and_column() {
    let lab = "SAMPLE_ID LAB_L LAB_A LAB_B";
    let heading = |text: &str| text.to_owned();
    let odd = format!("{lab} nm400 nm420 nm450 nm700");
    let rows = [
        (
            cgats(lab, "1 95 0 2\n2 94 O.5 2"),
            7,
            6,
            "O.5",
            MeterProblem::Value { heading: heading("LAB_A"), problem: Problem::NotANumber },
        ),
        (cgats(lab, "1 95 0 -"), 6, 8, "-", MeterProblem::Missing { heading: heading("LAB_B") }),
        (cgats(lab, "1 95 0 2\n2 94 0 2 7"), 7, 1, "2", MeterProblem::Ragged { expected: 4, found: 5 }),
        (cgats(lab, "1 95 0 2\n2 94 0"), 7, 1, "2", MeterProblem::Ragged { expected: 4, found: 3 }),
        (
            cgats(lab, "1 195 0 2"),
            6,
            3,
            "195",
            MeterProblem::Value {
                heading: heading("LAB_L"),
                problem: Problem::OutOfRange { min: 0.0, max: 100.0, unit: "L*".into() },
            },
        ),
        (cgats(lab, ""), 3, 1, "", MeterProblem::NoSamples),
        (cgats("SAMPLE_ID RGB_R", "1 2"), 3, 1, "SAMPLE_ID", MeterProblem::NoColours),
        (
            cgats("LAB_L LAB_A LAB_B  LAB_A", "1 2 3 4"),
            3,
            20,
            "LAB_A",
            MeterProblem::Twice { heading: heading("LAB_A") },
        ),
        (
            cgats("nm400 nm420 nm400 nm440", ".1 .2 .3 .4"),
            3,
            13,
            "nm400",
            MeterProblem::Twice { heading: heading("nm400") },
        ),
        (cgats(&odd, "1 95 0 2 .1 .2 .3 .4"), 3, 29, "nm400", MeterProblem::UnevenWavelengths),
        (
            cgats("nm400 nm410 nm420", ".1 .2 .3"),
            3,
            1,
            "nm400",
            MeterProblem::ShortSpectrum { from: 400.0, to: 420.0 },
        ),
        (cgats(lab, "1 \"95 0 2"), 6, 3, "1 \"95 0 2", MeterProblem::OpenQuote),
        (
            cgats(lab, "1 95 0 2").replace("BEGIN_DATA\n", "NUMBER_OF_SETS 12\nBEGIN_DATA\n"),
            5,
            16,
            "12",
            MeterProblem::Count { keyword: heading("NUMBER_OF_SETS"), stated: 12, found: 1 },
        ),
        (
            cgats(lab, "1 95 0 2")
                .replace("BEGIN_DATA_FORMAT", "NUMBER_OF_FIELDS\t9\nBEGIN_DATA_FORMAT")
                .replacen("CGATS.17\n", "", 1),
            1,
            18,
            "9",
            MeterProblem::Count { keyword: heading("NUMBER_OF_FIELDS"), stated: 9, found: 4 },
        ),
        (
            cgats(lab, "1 95 0 2").replace("END_DATA\n", ""),
            6,
            1,
            "",
            MeterProblem::Unfinished { keyword: heading("END_DATA") },
        ),
        (
            heading("CGATS.17\nBEGIN_DATA_FORMAT\nLAB_L\n"),
            3,
            1,
            "",
            MeterProblem::Unfinished { keyword: heading("END_DATA_FORMAT") },
        ),
        (heading("Name;L*;a*;b*\nred;38;58\n"), 2, 10, "", MeterProblem::Missing { heading: heading("b*") }),
        (heading("Name;L*;a*;b*\nred;38;58;\n"), 2, 11, "", MeterProblem::Missing { heading: heading("b*") }),
        (heading("Name;L*;a*;b*\nred;38;;35\n"), 2, 8, "", MeterProblem::Missing { heading: heading("a*") }),
        (
            heading("Name,L*,a*,b*\nred,38,58,35,9\n"),
            2,
            1,
            "red,38,58,35,9",
            MeterProblem::Ragged { expected: 4, found: 5 },
        ),
        (heading("a poem\nof two lines\n"), 1, 1, "a poem", MeterProblem::NoColours),
        (heading(""), 1, 1, "", MeterProblem::NoColours),
        (heading("Name;L*;a*;b*\n"), 1, 1, "", MeterProblem::NoSamples),
    ];
    for (text, line, column, value, problem) in rows {
        let error = refused(&text);
        assert_eq!(
            (error.line, error.column, error.value.as_str()),
            (line, column, value),
            "{error}\n{text}"
        );
        assert_eq!(error.problem, problem, "{text}");
    }
}

#[test]
fn a_reflectance_beyond_any_cloth_is_refused() {
    let bands: Vec<String> = (0..16).map(|band| format!("SPEC_{}", 400 + 20 * band)).collect();
    let mut values = vec!["80"; 16];
    values[3] = "800";
    let error = refused(&cgats(&bands.join(" "), &values.join(" ")));
    assert_eq!((error.line, error.column), (6, 10));
    assert!(
        matches!(error.problem, MeterProblem::Value { ref heading, problem: Problem::OutOfRange { .. } } if heading == "SPEC_460"),
        "{error}"
    );
}

/// Every problem and every note has its sentence in both languages, with the place and the heading in it.
#[test]
fn what_is_wrong_is_said_in_both_languages() {
    let problems = [
        MeterProblem::NoColours,
        MeterProblem::NoSamples,
        MeterProblem::Ragged { expected: 4, found: 3 },
        MeterProblem::Missing { heading: "LAB_B".into() },
        MeterProblem::Value { heading: "LAB_A".into(), problem: Problem::NotANumber },
        MeterProblem::Count { keyword: "NUMBER_OF_SETS".into(), stated: 12, found: 1 },
        MeterProblem::Unfinished { keyword: "END_DATA".into() },
        MeterProblem::OpenQuote,
        MeterProblem::Twice { heading: "LAB_A".into() },
        MeterProblem::UnevenWavelengths,
        MeterProblem::ShortSpectrum { from: 420.0, to: 680.0 },
        MeterProblem::TooLong { max: 8_000_000 },
    ];
    let voices = [Language::En, Language::Es].map(Voice::from);
    for problem in problems {
        let error = MeterError { line: 7, column: 12, value: "x".into(), problem };
        let [english, spanish] = voices.map(|voice| voice.meter_problem(&error));
        assert!(english.starts_with("Line 7, column 12. ") && english.ends_with('.'), "{english}");
        assert!(spanish.starts_with("Línea 7, columna 12. ") && spanish.ends_with('.'), "{spanish}");
        if let MeterProblem::Missing { heading }
        | MeterProblem::Value { heading, .. }
        | MeterProblem::Twice { heading } = &error.problem
        {
            assert!(english.contains(heading) && spanish.contains(heading), "{english} {spanish}");
        }
    }
    for note in [
        MeterNote::OtherViewing,
        MeterNote::ViewingNotStated,
        MeterNote::FromSpectra,
        MeterNote::TakenAsPercent,
        MeterNote::TakenAsFraction,
    ] {
        let [english, spanish] = voices.map(|voice| voice.meter_note(note));
        assert!(english.len() > 10 && spanish.len() > 10 && english != spanish, "{note:?}");
    }
}

proptest! {
    /// Cut, doubled or garbled files give an answer, never a panic; an error always names a place.
    #[test]
    fn no_file_panics(cut in 0_usize..6000, letter in any::<char>(), at in 0_usize..6000, text in "(?s).{0,200}") {
        let cut: String = CHART.chars().take(cut).collect();
        let garbled: String =
            CHART.chars().enumerate().map(|(i, had)| if i == at { letter } else { had }).collect();
        for text in [cut, garbled, text.clone(), format!("CGATS.17\nBEGIN_DATA_FORMAT\n{text}")] {
            if let Err(error) = MeterFile::read(&text) {
                prop_assert!(error.line >= 1 && error.column >= 1);
            }
        }
    }

    /// Numbers written into a table come back as they were.
    #[test]
    fn a_table_returns_what_was_written(l in 20.0..90.0_f64, a in -30.0..30.0_f64, b in -30.0..30.0_f64) {
        for text in [format!("L*,a*,b*\n{l},{a},{b}\n"), cgats("LAB_L LAB_A LAB_B", &format!("{l} {a} {b}"))] {
            prop_assert_eq!(read(&text).samples[0].lab, Lab::new(l, a, b));
        }
    }
}
