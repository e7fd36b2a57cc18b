//! Faults that were mended: each test is named after its fault.
//!
//! Nothing outside the project can be asked here; other mended faults are held where their subject is tested.

use super::common::{an_order, answered, best, forecast, library, reason};
use whitehold::library::{answer_with, pick_window};
use whitehold::plan::{Code, DialSetting, SimulationCache};
use whitehold::quantity::{FieldError, Problem};

const COTTON: &str = "100% cotton jersey 150 gsm black";

/// An ink that differs from a remembered one in one number of its fusion was answered with the other's simulations.
#[test]
fn an_ink_was_taken_for_another_whose_fusion_differs_in_one_number() {
    let order = an_order().label(COTTON).pieces(72).shelf(&["chalk"]).build();
    let mut memory = SimulationCache::default();
    let usual = answer_with(&order, library(), &mut memory).expect("a sound order");
    for number in ["half_fused_c", "width", "fusion_time", "fusion_reference_c", "fusion_energy"] {
        let mut other = library().clone();
        let ink = other.kinetics.iter_mut().find(|ink| ink.id == "ordinary").expect("an ordinary ink");
        match number {
            "half_fused_c" => ink.half_fused_c.value += 5.0,
            "width" => ink.width.value *= 1.5,
            "fusion_time" => ink.fusion_time.value *= 1.5,
            "fusion_reference_c" => ink.fusion_reference_c.value += 10.0,
            _ => ink.fusion_energy.value *= 1.5,
        }
        let remembered = answer_with(&order, &other, &mut memory).expect("a sound order");
        let afresh = answer_with(&order, &other, &mut SimulationCache::default()).expect("a sound order");
        assert_eq!(remembered, afresh, "{number}");
        assert_ne!(afresh, usual, "{number} moves nothing, so that this row proves nothing");
    }
}

/// Money added care to a verdict, and the answer did not say so.
#[test]
fn care_that_money_added_was_not_told() {
    let told = |pieces: u32| {
        let order = an_order().label("50% cotton 50% polyester jersey 185 gsm red").pieces(pieces).worth(9.0);
        let report = order.shelf(&["tern"]).answered();
        reason(best(&report), Code::MoneyAddsCare).is_some()
    };
    assert_eq!([12, 6000].map(told), [false, true]);
}

/// A window was computed on another grid for each set point that was dragged through it.
#[test]
fn a_dragged_set_point_moved_the_grid_of_its_window() {
    let order = an_order().label(COTTON).shelf(&["chalk"]).build();
    let pick = best(&answered(&order)).clone();
    let window = pick_window(&order, library(), &pick).expect("a sound order");
    let report =
        |at: Option<DialSetting>| window.report(at).expect("it integrates").expect("the pick's cloth");
    let still = report(None);
    let set = pick.setting.expect("an open window");
    assert!(!still.set_c.is_empty() && !still.belt_m_per_min.is_empty());
    for (hotter, slower) in [(3.0, 1.0), (0.0, 0.9), (-7.0, 1.1)] {
        let at = DialSetting { set_c: set.set_c + hotter, belt_m_per_min: set.belt_m_per_min * slower };
        let dragged = report(Some(at));
        assert_eq!(
            (&dragged.set_c, &dragged.belt_m_per_min),
            (&still.set_c, &still.belt_m_per_min),
            "{at:?}"
        );
        assert_eq!(dragged.walls, still.walls, "{at:?}");
    }
}

/// Prints that are stacked hot cool slowly, and their dye goes on moving; they were cooled as single pieces are.
#[test]
fn a_hot_stack_cooled_as_single_pieces_do() {
    let order = an_order().label("100% polyester interlock 150 g/m2").colour("red").shelf(&["tern"]).build();
    let mut stacked = order.clone();
    stacked.use_.stacked_hot = true;
    let pick = best(&answered(&order)).clone();
    let [single, stacked] = [order, stacked].map(|order| forecast(&order, &pick).ledger.heat_mg_per_m2);
    assert!(stacked > 1.0005 * single, "{stacked} mg/m² by heat in a stack, {single} alone");
}

/// An error that stands in a kept state could be written and not read back.
#[test]
fn a_kept_error_could_not_be_read_back() {
    let problems = [
        Problem::NotANumber,
        Problem::OutOfRange { min: 1.0, max: 2.0, unit: "K".into() },
        Problem::Empty,
        Problem::Unknown { nearest: vec!["cotton".into()], accepted: Vec::new() },
        Problem::SumNot100 { sum: 90.0, section: "lining".into() },
        Problem::TooLong { max: 80 },
        Problem::Contradiction { with: "label".into() },
        Problem::NotUnderstood,
        Problem::NotSolved,
    ];
    for problem in problems {
        let error = FieldError::new("garments[0].label", "97% cottn", problem);
        let text = serde_json::to_string(&error).expect("plain data");
        assert_eq!(serde_json::from_str::<FieldError>(&text).expect(&text), error);
    }
}
