//! A colour of several words, or measured, bleeds as its words and its fullness say.
//!
//! Source of what is expected: common practice, no source.

use super::common::{an_order, library};
use whitehold::library::job;
use whitehold::plan::{Colour, assess_white};

/// Chance of a late fault of a polyester white on a polyester of this colour.
fn chance(name: &str, lab: Option<[f64; 3]>) -> f64 {
    let mut order = an_order().label("100% polyester interlock 150 g/m2").shelf(&["gannet"]).build();
    order.garments[0].colour = Colour { name: name.into(), lab };
    let job = job(&order, library()).unwrap_or_else(|errors| panic!("{name}: {errors:?}"));
    assess_white(&job, "gannet", false).expect("it integrates").expect("a window").fail_later.likely
}

#[test]
fn words_beside_a_colour_count() {
    let neon = chance("neon pink", None);
    for name in ["safety pink", "fluo orange", "neon purple", "verde flúor"] {
        let found = chance(name, None);
        assert!(found > 0.6 * neon, "{name}: {found:.3}, neon pink {neon:.3}");
    }
    let [plain, bright] = ["purple", "neon purple"].map(|name| chance(name, None));
    assert!(bright > 1.5 * plain, "{bright:.3}, plain {plain:.3}");
    let [navy, heather, pattern] = ["navy", "heather navy", "navy pattern"].map(|name| chance(name, None));
    assert!(heather < navy && (pattern - navy).abs() < 1e-12, "{heather:.3} {navy:.3} {pattern:.3}");
}

/// A pale grey takes little dye; a yellow as light takes much.
#[test]
fn a_full_light_colour_is_no_pale_one() {
    let [pale, full] = [[80.0, 0.0, -6.0], [88.0, -12.0, 85.0]].map(|lab| chance("", Some(lab)));
    assert!(full > 1.15 * pale, "full {full:.3}, pale {pale:.3}");
}
