//! Runs as a shop writes them: each says what it did or which field is wrong, and what was learnt changes the answer.

use super::common::{OrderBuilder, an_order, answered, library};
use whitehold::cure::PrintTestOutcome;
use whitehold::library::{
    DryerRun, Library, ProbeAt, ProbeReading, ProbeRun, TestedPrint, TestedWhite, answer,
};
use whitehold::plan::{Code, Garment, Topic, Value, Verdict};
use whitehold::quantity::Sourced;

const BLACK_COTTON: &str = "100% cotton jersey 160 gsm black";

fn run(label: &str, set_c: f64, belt: f64) -> DryerRun {
    DryerRun {
        dryer: "long-kiln".into(),
        garment: Garment { label: label.into(), ..Garment::default() },
        film_um: 80.0,
        set_c,
        belt_m_per_min: belt,
        ..DryerRun::default()
    }
}

fn cotton(set_c: f64, belt: f64) -> DryerRun {
    run(BLACK_COTTON, set_c, belt)
}

/// Each row spoils one field, and the error names it.
#[test]
fn a_run_is_refused_by_its_field() {
    let library = library();
    let good = || cotton(165.0, 2.4);
    let rows = [
        ("dryer", DryerRun { dryer: "none such".into(), ..good() }),
        ("film_um", DryerRun { film_um: -1.0, ..good() }),
        ("film_um", DryerRun { film_um: 5000.0, ..good() }),
        ("blocker_um", DryerRun { blocker_um: f64::NAN, ..good() }),
        ("set_c", DryerRun { set_c: 330.0, ..good() }),
        ("belt_m_per_min", DryerRun { belt_m_per_min: 0.0, ..good() }),
        ("humidity_percent", DryerRun { humidity_percent: Some(120.0), ..good() }),
        ("passes", DryerRun { passes: Some(0), ..good() }),
        ("white", DryerRun { white: Some("none such".into()), ..good() }),
    ];
    for (field, run) in rows {
        let errors = run.curve(library).unwrap_err();
        assert!(errors.iter().any(|error| error.field.starts_with(field)), "{field}: {errors:?}");
    }
    let curve = good().curve(library).unwrap();
    assert!(curve.fused.last().unwrap() > &0.9 && (curve.leaves_s - 45.0).abs() < 1e-9);
}

/// A probe's own curve, read back: the record was right, and the fit says so.
#[test]
fn a_ride_that_agrees() {
    let library = library();
    let run = cotton(165.0, 2.4);
    let curve = run.curve(library).unwrap();
    let readings: Vec<ProbeReading> = curve
        .seconds
        .iter()
        .zip(&curve.film_top_c)
        .filter(|(seconds, _)| **seconds > 1.0 && **seconds < 50.0)
        .map(|(&seconds, &temp_c)| ProbeReading { seconds, temp_c })
        .fold(Vec::new(), |mut kept: Vec<ProbeReading>, reading| {
            if kept.last().is_none_or(|last| reading.seconds > last.seconds + 0.5) {
                kept.push(reading);
            }
            kept
        });
    let learnt = ProbeRun { run, at: ProbeAt::FilmTop, readings }.learn(library).unwrap();
    assert!(learnt.believable && learnt.misfit_k < 0.5, "{learnt:?}");
    assert!(learnt.air_k.likely.abs() < 1.0 && (learnt.h.likely - 1.0).abs() < 0.05, "{learnt:?}");
}

/// An order whose shelf holds one ordinary white.
fn order(label: &str) -> OrderBuilder {
    an_order().label(label).pieces(72).shelf(&["chalk"])
}

/// A white whose prints failed where its class holds is set hotter or slower from then on.
#[test]
fn a_tested_white_moves_the_set_point() {
    let mut library = library().clone();
    let tested = TestedWhite {
        white: "chalk".into(),
        prints: vec![
            TestedPrint { run: cotton(160.0, 2.2), seen: PrintTestOutcome::Fails },
            TestedPrint { run: cotton(172.0, 2.0), seen: PrintTestOutcome::Edge },
        ],
    };
    let learnt = tested.learn(&library).unwrap();
    let dose = |library: &Library| {
        let report = answer(&order(BLACK_COTTON).build(), library).unwrap();
        let setting = report.picks[0].setting.unwrap();
        (report.verdict, setting.set_c, setting.dwell_s)
    };
    let before = dose(&library);
    let sourced = |value: f64, unit: &str| Sourced {
        value,
        unit: unit.into(),
        range: [value, value],
        source: "test print".into(),
    };
    let white = library.whites.iter_mut().find(|white| white.id == "chalk").unwrap();
    white.half_fused_c = Some(sourced(learnt.half_fused_c.likely, "°C"));
    white.fusion_time = Some(sourced(learnt.fusion_time_s.likely, "s"));
    let after = dose(&library);
    assert!(learnt.half_fused_c.likely > 145.0 && learnt.fusion_time_s.likely > 4.0, "{learnt:?}");
    assert!(after.1 > before.1 || after.2 > before.2 + 2.0, "{after:?} after {before:?}");
}

/// A closed window says what would open it, computed one by one.
#[test]
fn what_opens_a_closed_window() {
    // The dryer is set for the next job: too cool for an ordinary white.
    let cool = order(BLACK_COTTON).shop(|shop| shop.dryer_fixed = Some(125.0)).build();
    let report = answered(&cool);
    assert_eq!(report.verdict, Verdict::Refuse);
    let codes: Vec<Code> = report.to_make_it_possible.iter().map(|reason| reason.code).collect();
    // The side that closes it is read at the dial's own setting, not at the hotter ones beside it.
    let closed = &report.rejected[0].reasons[0];
    assert_eq!(closed.code, Code::WindowClosed);
    assert_eq!(closed.values.get("side"), Some(&Value::Word("at-least".into())), "{closed:?}");
    assert!(codes.contains(&Code::OpensHotter), "{codes:?}");
    assert!(!codes.contains(&Code::OpensCooler), "{codes:?}");
    // Its map can be looked at: no setting, and every wall beside it.
    let way = report.closed.unwrap();
    assert_eq!((way.verdict, way.setting), (Verdict::Refuse, None));
    let window = whitehold::library::window(&cool, library(), &way, None).unwrap();
    assert_eq!(window.setting, None);
    let fusion = window.walls.iter().find(|wall| wall.what == Topic::Fusion).unwrap();
    let columns = window.belt_m_per_min.len();
    let dial = window.set_c.iter().position(|set| *set >= 125.0).unwrap();
    let at_the_dial = fusion.values.chunks(columns).nth(dial).unwrap();
    assert!(at_the_dial.iter().all(|fused| *fused < fusion.limit), "{at_the_dial:?}");
    // Acrylic distorts at the heat of an ordinary white; a low-cure one stays under it.
    let acrylic = order("100% acrylic jersey 160 gsm black").answered();
    let codes: Vec<Code> = acrylic.to_make_it_possible.iter().map(|reason| reason.code).collect();
    assert!(acrylic.verdict >= Verdict::Trial, "{codes:?}");
    assert!(codes.iter().any(|code| matches!(code, Code::OpensLowCure | Code::BuyClass)), "{codes:?}");
}
