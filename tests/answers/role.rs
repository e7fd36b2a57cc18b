//! White under or over colours is flashed once more than white alone, and pays for it in dye.
//!
//! A law, held without a source: every flash is heat, and heat drives dye. That an underbase is flashed before its colours,
//! and that a highlight goes onto flashed ink: common practice, no source.

use super::common::an_order;
use whitehold::plan::{Pick, PrintStep, Role};

/// The best pick of one white on red polyester.
fn best(role: Role) -> Pick {
    let order = an_order().label("100% polyester interlock 150 gsm red").pieces(72).worth(14.0);
    order.shelf(&["gannet"]).print(|print| print.role = role).picked()
}

fn whites_and_flashes(pick: &Pick) -> Vec<char> {
    let letter = |step: &PrintStep| match step {
        PrintStep::White { .. } => Some('W'),
        PrintStep::Flash { .. } => Some('F'),
        PrintStep::PreDry { .. }
        | PrintStep::Blocker { .. }
        | PrintStep::Smooth
        | PrintStep::Dryer { .. } => None,
    };
    pick.steps.iter().filter_map(letter).collect()
}

#[test]
fn each_role_has_its_flashes() {
    let cases = [(Role::TopWhite, 'W', 'W'), (Role::Underbase, 'W', 'F'), (Role::Highlight, 'F', 'W')];
    for (role, first, last) in cases {
        let steps = whites_and_flashes(&best(role));
        assert_eq!((steps.first(), steps.last()), (Some(&first), Some(&last)), "{role:?}: {steps:?}");
        // Between two films always one.
        let films = steps.iter().filter(|step| **step == 'W').count();
        let between = films - 1 + usize::from(role != Role::TopWhite);
        assert_eq!(steps.len() - films, between, "{role:?}: {steps:?}");
    }
}

#[test]
fn a_flash_more_drives_more_dye() {
    let alone = best(Role::TopWhite).fail_later.likely;
    for role in [Role::Underbase, Role::Highlight] {
        let chance = best(role).fail_later.likely;
        assert!(chance > alone, "{role:?}: {chance}, alone {alone}");
    }
}
