//! The geometry of the pictures: regions have the areas of the shapes they are cut from, scales hold their ticks.

use whitehold::desk::picture::contour::region;
use whitehold::desk::picture::map::{MapGrid, window_map, word_width};
use whitehold::desk::picture::margin_bar::margin_bar;
use whitehold::desk::picture::scale::AxisScale;
use whitehold::desk::picture::{history, swatches};
use whitehold::optics::Lab;
use whitehold::plan::{Clearance, Curve, Drift, Margin, Side, Topic, Unit, Verdict, Wall, WindowReport};
use whitehold::quantity::Band;
use whitehold::wording::Units;

/// A grid over [−2, 2] × [−1, 3] and the values of a function on it.
fn grid(count: usize, value: impl Fn(f64, f64) -> f64) -> (Vec<f64>, Vec<f64>, Vec<f64>) {
    let at = |from: f64, k: usize| from + 4.0 * k as f64 / (count - 1) as f64;
    let x: Vec<f64> = (0..count).map(|k| at(-2.0, k)).collect();
    let y: Vec<f64> = (0..count).map(|k| at(-1.0, k)).collect();
    let values = y.iter().flat_map(|&y| x.iter().map(|&x| value(x, y)).collect::<Vec<_>>()).collect();
    (x, y, values)
}

/// Source: plane and circle geometry. Linear functions are cut exactly; a circle to the error of its chords.
#[test]
fn regions_have_the_area_of_their_shapes() {
    type Shape = fn(f64, f64) -> f64;
    let circle = std::f64::consts::PI * 1.44;
    let table: [(&str, Shape, f64, f64); 7] = [
        ("nothing", |_, _| -1.0, 0.0, 1e-12),
        ("everything", |_, _| 1.0, 16.0, 1e-9),
        ("half plane", |x, _| x - 0.5, 6.0, 1e-9),
        ("corner", |x, y| x + y - 4.0, 0.5, 1e-9),
        ("outside of a slanting strip", |x, y| (x - y + 1.0).abs() - 1.0, 16.0 - 7.0, 1e-6),
        ("circle", |x, y| 1.2_f64.powi(2) - x * x - (y - 1.0).powi(2), circle, 0.02),
        ("all but a circle", |x, y| x * x + (y - 1.0).powi(2) - 1.2_f64.powi(2), 16.0 - circle, 0.02),
    ];
    for (name, value, area, tolerance) in table {
        let (x, y, values) = grid(81, value);
        let found = region(&x, &y, &values).area();
        assert!((found - area).abs() <= tolerance, "{name}: {found}, expected {area}");
    }
}

#[test]
fn walls_leave_out_the_frame() {
    let (x, y, values) = grid(9, |x, _| x - 0.5);
    let walls = region(&x, &y, &values).walls;
    assert_eq!(walls.len(), 1);
    assert!(walls[0].iter().all(|&(x, _)| (x - 0.5).abs() < 1e-9), "{walls:?}");
    let (x, y, values) = grid(9, |_, _| 1.0);
    assert!(region(&x, &y, &values).walls.is_empty());
}

/// Source: triangles at the corners of a unit square, legs 1/3.
#[test]
fn a_saddle_is_decided_by_its_middle() {
    let axis = [0.0, 1.0];
    let joined = region(&axis, &axis, &[1.0, -0.5, -0.5, 1.0]);
    let parted = region(&axis, &axis, &[0.5, -1.0, -1.0, 0.5]);
    assert_eq!((joined.outlines.len(), parted.outlines.len()), (1, 2));
    assert!((joined.area() - (1.0 - 1.0 / 9.0)).abs() < 1e-9, "{}", joined.area());
    assert!((parted.area() - 1.0 / 9.0).abs() < 1e-9, "{}", parted.area());
}

#[test]
fn a_grid_of_another_size_or_without_numbers_does_no_harm() {
    assert!(region(&[0.0], &[0.0, 1.0], &[0.0, 1.0]).outlines.is_empty());
    assert!(region(&[0.0, 1.0], &[0.0, 1.0], &[0.0]).outlines.is_empty());
    let all = region(&[0.0, 1.0], &[0.0, 1.0], &[f64::NAN; 4]);
    assert!((all.area() - 1.0).abs() < 1e-9, "what is not known is not clear");
}

#[test]
fn ticks_are_round_and_inside() {
    let table = [
        (140.0, 190.0, 6, vec![140.0, 150.0, 160.0, 170.0, 180.0, 190.0], 0),
        (1.5, 5.0, 5, vec![2.0, 3.0, 4.0, 5.0], 0),
        (0.3, 0.9, 3, vec![0.4, 0.6, 0.8], 1),
    ];
    for (from, to, count, expected, digits) in table {
        let (ticks, decimals) = AxisScale { from, to, start: 0.0, end: 100.0 }.ticks(count);
        assert_eq!(decimals, digits, "{from} to {to}");
        assert_eq!(ticks.len(), expected.len(), "{ticks:?}");
        assert!(ticks.iter().zip(&expected).all(|(a, b)| (a - b).abs() < 1e-9), "{ticks:?}");
    }
}

#[test]
fn a_rule_hatches_the_failing_side() {
    let margin = |what, unit, needed, limit: f64, low, likely, high| Margin {
        what,
        limit,
        value: Band { low, likely, high },
        needed,
        unit,
    };
    let fused = margin_bar(&margin(Topic::Fusion, Unit::Percent, Side::AtLeast, 90.0, 91.0, 96.0, 99.0));
    assert!(fused.fails_left && (fused.scale.to - 100.0).abs() < 1e-9);
    assert!(fused.limit < fused.bar.0 && fused.bar.0 < fused.likely && fused.likely < fused.bar.1);
    let tint = margin_bar(&margin(Topic::Bleed, Unit::ColourDifference, Side::AtMost, 2.0, 0.6, 1.4, 3.2));
    assert!(!tint.fails_left && tint.likely < tint.limit && tint.limit < tint.bar.1);
    assert!((tint.fails.0 + tint.fails.1 - 358.0).abs() < 1e-9);
    let far = margin_bar(&margin(Topic::Bleed, Unit::ColourDifference, Side::AtMost, 2.0, 5.0, 40.0, 90.0));
    assert!(far.beyond.1 && far.bar.1 <= 358.0, "a bar stays on its scale");
}

#[test]
fn the_history_names_its_peak_and_when_it_fused() {
    let seconds: Vec<f64> = (0..=60).map(f64::from).collect();
    let rise = |t: f64| 25.0 + 3.5 * t.min(40.0) - 2.0 * (t - 40.0).max(0.0);
    let lag = |t: f64| if t <= 40.0 { 2.0 } else { 0.0 };
    let curve = Curve {
        film_top_c: seconds.iter().map(|&t| rise(t)).collect(),
        film_bottom_c: seconds.iter().map(|&t| rise(t) - lag(t)).collect(),
        cloth_c: seconds.iter().map(|&t| rise(t) - 4.0).collect(),
        fused: seconds.iter().map(|&t| (t / 50.0).min(0.97)).collect(),
        water_percent: vec![0.0; seconds.len()],
        leaves_s: 40.0,
        seconds,
    };
    let history = history::history_charts(&curve, 0.9, Units::Metric).expect("a whole curve");
    assert!((history.peak_c - 165.0).abs() < 1e-9);
    assert!((history.lag - 2.0).abs() < 1e-9);
    assert!(history.fused_at.is_some_and(|second| (second - 45.0).abs() < 1e-6));
    assert!(history::history_charts(&Curve { seconds: Vec::new(), ..curve }, 0.9, Units::Metric).is_none());
}

/// The picture must not exaggerate: nothing turned is drawn as fresh, more is drawn as more.
#[test]
fn split_circles_show_the_difference_they_name() {
    let red = Lab::new(38.0, 58.0, 35.0);
    let drawn = swatches::swatches(red, 100.0, &[0.0, 1.4, 6.0]).expect("a film");
    assert_eq!(drawn.turned[0], drawn.fresh);
    let green = |swatch: &str| i32::from_str_radix(&swatch[3..5], 16).expect("hex");
    let lost = |swatch: &str| green(&drawn.fresh) - green(swatch);
    assert!(lost(&drawn.turned[1]) > 0, "a red dye takes green light");
    assert!(lost(&drawn.turned[2]) > lost(&drawn.turned[1]));
    assert!(swatches::swatches(red, f64::NAN, &[]).is_none());
}

/// A region that is too narrow for its large word and limit is named in small letters, so that two of one colour are
/// told apart; one that is too narrow for those is left to the words under the map.
#[test]
fn a_narrow_region_of_the_map_keeps_its_name() {
    let steps =
        |from: f64, to: f64| (0..=20).map(|k| from + (to - from) * f64::from(k) / 20.0).collect::<Vec<_>>();
    let (set_c, belt_m_per_min) = (steps(110.0, 220.0), steps(1.0, 6.0));
    // Fails where the belt is slower than this.
    let wall = |what, slower: f64| Wall {
        what,
        values: set_c.iter().flat_map(|_| belt_m_per_min.iter().map(|belt| slower - belt)).collect(),
        limit: 0.0,
        needed: Side::AtMost,
        unit: Unit::Celsius,
    };
    let named = |slower: f64| {
        let report = WindowReport {
            walls: vec![wall(Topic::FilmHeat, slower)],
            set_c: set_c.clone(),
            belt_m_per_min: belt_m_per_min.clone(),
            setting: None,
            drift: Drift { set_k: 0.0, belt_m_per_min: 0.0 },
            room: Clearance::NONE,
            margins: Vec::new(),
            fail_later: Band::exact(0.0),
            verdict: Verdict::Go,
            curve: Curve {
                seconds: Vec::new(),
                film_top_c: Vec::new(),
                film_bottom_c: Vec::new(),
                cloth_c: Vec::new(),
                fused: Vec::new(),
                water_percent: Vec::new(),
                leaves_s: 0.0,
            },
        };
        let drawn = window_map(&MapGrid::of(&report), Units::Metric, &|_| {
            word_width("Film overheats", "over 220 °C")
        })
        .expect("a map");
        let area = &drawn.areas[0];
        (area.word.is_some(), area.small)
    };
    // Of 542 points along 5 m/min: 325 hold a word of 266, 163 one of 134, 54 none.
    assert_eq!(named(4.0), (true, false));
    assert_eq!(named(2.5), (true, true));
    assert_eq!(named(1.5), (false, false));
}
