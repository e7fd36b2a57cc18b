//! What the answer says about the look of the white: its colour, what another stroke or mesh changes, the nap.

use super::common::{an_order, answered, best, library, number, reason, word};
use whitehold::ink::USUAL_TRANSFER;
use whitehold::library::{Library, answer};
use whitehold::optics::{GreyStep, Lab, Spectrum, Validity, ciede2000};
use whitehold::plan::{Advice, Code, Opacity, Order, PrintStep, Priority, Topic};

fn order(label: &str, colour: &str, whites: &[&str]) -> Order {
    an_order().label(label).colour(colour).pieces(100).shelf(whites).build()
}

/// The colour that is promised is that of the film that is printed, over this cloth: between a bare cloth and an endless
/// film, and as far from the latter as the margin says.
#[test]
fn the_look_of_a_pick_is_that_of_its_film() {
    let report = answered(&order("100% cotton jersey 160 g/m2", "black", &["chalk"]));
    let pick = best(&report);
    let look = pick.look.expect("a look");
    let chalk = library().white(library().white_record("chalk").expect("Chalk")).expect("resolves");
    let white = chalk.optics().expect("a white");
    assert!((ciede2000(white.endless(), look.lab) - look.garment_shows).abs() < 1e-9);
    let margin = pick.margin(Topic::Opacity).expect("opacity");
    assert!((margin.value.likely - look.garment_shows).abs() < 1e-12);
    assert!(margin.value.low < margin.value.likely && margin.value.likely < margin.value.high);
    assert!(look.contrast_ratio > 0.97 && look.contrast_ratio < 1.0, "{look:?}");
    assert!(look.lab.lightness > 93.0 && look.lab.lightness < white.endless().lightness, "{look:?}");
    assert_eq!(look.whiteness.validity, Validity::Holds);
}

#[test]
fn a_film_that_hardly_covers_says_what_another_stroke_or_mesh_brings() {
    let mut order = order("100% cotton jersey 160 g/m2", "black", &["eider"]);
    order.print.opacity = Opacity::Full;
    // A shop whose press lays little, as its weighed print told.
    order.shop.transfer = Some(0.4);
    let report = answered(&order);
    let pick = best(&report);
    let short = reason(pick, Code::CoversShort).expect("it does not cover");
    let more = reason(pick, Code::OneStrokeMore).expect("another stroke");
    assert!(number(more, "strokes") > 2.0);
    assert!(number(more, "shows") < number(short, "shows") && number(more, "film") > number(short, "film"));
    // It is already the coarsest mesh: no coarser one is named.
    assert!(reason(pick, Code::CoarserMesh).is_none());

    // The same white where it covers with room has nothing to add.
    order.print.opacity = Opacity::Soft;
    order.shop.transfer = None;
    let report = answered(&order);
    assert!(reason(best(&report), Code::Covers).is_some());
    assert!(reason(best(&report), Code::OneStrokeMore).is_none());
}

/// A shop's own transfer moves every film: twice the share lays twice the film through the same mesh.
#[test]
fn a_weighed_print_stands_in_for_the_prior() {
    let film = |transfer: Option<f64>| {
        let mut order = order("100% polyester interlock 150 g/m2", "red", &["gannet"]);
        order.shop.transfer = transfer;
        let report = answered(&order);
        let white = |step: &PrintStep| match step {
            PrintStep::White { film_um, threads_per_cm, .. } => Some((*film_um, *threads_per_cm)),
            _ => None,
        };
        report.picks.first().and_then(|pick| pick.steps.iter().rev().find_map(white)).expect("a pick")
    };
    let (prior, own) = (film(None), film(Some(0.7)));
    // Red polyester takes the heaviest film that pays: through the same mesh it grows as the transfer does.
    assert!((own.1 - prior.1).abs() < 0.5, "{prior:?} {own:?}");
    assert!((own.0 / prior.0 - 0.7 / USUAL_TRANSFER).abs() < 1e-6, "{prior:?} {own:?}");
    let mut order = order("100% cotton jersey", "black", &["chalk"]);
    order.shop.transfer = Some(6.5);
    let errors = answer(&order, library()).expect_err("no such share");
    assert_eq!(errors.first().map(|error| error.field.as_str()), Some("shop.transfer"));
}

/// A thin white over black is bluish, and the answer says so where it is to be seen; a thick one is not.
#[test]
fn a_bluish_white_is_called_so() {
    let mut order = order("100% cotton jersey 120 g/m2", "black", &["chalk"]);
    order.print.opacity = Opacity::Soft;
    // Whoever saves ink lays the thinnest film that covers.
    order.print.priority = Priority::Cheap;
    let pick = best(&answered(&order)).clone();
    let bluish = reason(&pick, Code::LooksBluish).expect("a thin film");
    let look = pick.look.expect("a look");
    assert!(number(bluish, "bluer") > 1.0 && look.lab.b < 1.0, "{look:?}");
    order.print.opacity = Opacity::Full;
    assert!(reason(best(&answered(&order)), Code::LooksBluish).is_none());
}

/// A thin white over the grey blocker is duller than the full white, and the answer says so; a heavy one is not.
#[test]
fn a_dull_white_over_a_blocker_is_called_so() {
    let mut order = order("100% polyester interlock 150 g/m2", "red", &["gannet-cool", "slate"]);
    order.garments[0].dye_class = whitehold::plan::DyeClass::SublimationPrinted;
    let blocked = |order: &Order| {
        let pick = best(&answered(order)).clone();
        assert!(pick.steps.iter().any(|step| matches!(step, PrintStep::Blocker { .. })), "{:?}", pick.steps);
        pick
    };
    assert!(reason(&blocked(&order), Code::LooksDull).is_none(), "two heavy strokes hide the grey");
    order.shop.transfer = Some(0.15);
    // So thin a white would turn along its rim.
    order.print.overhang_mm = 0.0;
    let thin = blocked(&order);
    let dull = reason(&thin, Code::LooksDull).expect("a thin film");
    assert!(number(dull, "darker") > 1.0, "{dull:?}");
}

/// A white is judged by ΔE00; the grade that a customer may ask for stands beside it, and forgives.
#[test]
fn the_staining_grade_stands_beside_the_difference() {
    let order = order("50% cotton 50% polyester jersey 185 g/m2", "red", &["tern"]);
    let report = answered(&order);
    let pick = best(&report);
    let bleeds = reason(pick, Code::ClothBleeds).expect("it bleeds");
    let step: GreyStep = word(bleeds, "grade").parse().expect("a grade");
    // A likely tint under the limit of ΔE00 2 is a grade 5 still; a cotton white turns to no such thing.
    assert!(number(bleeds, "likely") < 2.0 && step >= GreyStep::FourToFive, "{bleeds:?}");
    let report = answered(&self::order("100% polyester interlock 150 g/m2", "red", &["chalk"]));
    let turned = report.rejected.first().and_then(|rejected| rejected.reasons.first()).expect("a reason");
    assert!(word(turned, "grade").parse::<GreyStep>().expect("a grade") < step, "{turned:?}");
}

/// Fleece stands through a film that a tee would be covered by: the smoothing screen is weighed, and taken where the
/// nap would not lie.
#[test]
fn a_smoothing_screen_lays_a_fleece_down() {
    let report = answered(&order("80% cotton 20% polyester fleece 280 g/m2", "maroon", &["tern"]));
    let pick = best(&report);
    let at = |wanted: fn(&PrintStep) -> bool| pick.steps.iter().position(wanted);
    let smooth = at(|step| matches!(step, PrintStep::Smooth)).expect("a smoothing screen");
    let flash = at(|step| matches!(step, PrintStep::Flash { .. })).expect("a flash");
    let last = pick.steps.iter().rposition(|step| matches!(step, PrintStep::White { .. })).expect("white");
    assert!(flash < smooth && smooth < last, "{:?}", pick.steps);
    assert!(pick.advice.contains(&Advice::SmoothingScreen));
    assert!(reason(pick, Code::SmoothingHelps).is_some() && reason(pick, Code::NapShows).is_none());
    let matting = pick.margin(Topic::Matting).expect("matting");
    assert!(matting.holds_likely(), "{matting:?}");
    // Every cloth has the margin; a tee's nap lies under two strokes without help.
    let tee = answered(&order("100% cotton jersey 160 g/m2", "black", &["chalk"]));
    let matting = best(&tee).margin(Topic::Matting).expect("matting");
    assert!(matting.holds() && !best(&tee).steps.iter().any(|step| matches!(step, PrintStep::Smooth)));
}

/// Reducer takes body, so the same film holds less nap down.
#[test]
fn reducer_spoils_matting() {
    let held = |reducer: f64| {
        let mut order = order("100% cotton pique 200 g/m2", "black", &["chalk"]);
        order.print.reducer_percent = reducer;
        let report = answered(&order);
        let pick = best(&report);
        let film = pick.steps.iter().rev().find_map(|step| match step {
            PrintStep::White { film_um, .. } => Some(*film_um),
            _ => None,
        });
        pick.margin(Topic::Matting).expect("matting").value.likely / film.expect("white")
    };
    assert!((held(0.0) - 1.0).abs() < 1e-9 && (held(10.0) - (-0.3_f64).exp()).abs() < 1e-9);
}

/// A draw-down measured by the shop stands in for the class: a weaker white needs more film for the same cover.
#[test]
fn a_measured_draw_down_stands_in_for_the_class() {
    let mut library = library().clone();
    let chalk = library.whites.iter_mut().find(|white| white.id == "chalk").expect("Chalk");
    let weak = whitehold::optics::WhiteFilm::new(0.08e6, 0.88).expect("a weak white");
    let over = |card: f64| weak.over(60e-6, &Spectrum::flat(card)).xyz().y / 100.0;
    chalk.draw_down = Some(whitehold::ink::DrawDownRecord {
        over_black: over(0.01),
        over_white: over(0.80),
        black_card: 0.01,
        white_card: 0.80,
        film_um: 60.0,
        source: "computed for the test".into(),
    });
    let record = library.white_record("chalk").expect("Chalk").clone();
    let white = library.white(&record).expect("resolves");
    assert!((white.scattering / 0.08e6 - 1.0).abs() < 0.04, "{}", white.scattering);
    let order = order("100% cotton jersey 160 g/m2", "black", &["chalk"]);
    let shows = |library: &Library| {
        answer(&order, library).expect("answers").picks.first().and_then(|pick| pick.look).expect("a look")
    };
    let (measured, by_class) = (shows(&library), shows(super::common::library()));
    assert!(measured.garment_shows > by_class.garment_shows, "{measured:?} {by_class:?}");
    // A card with its halves mixed up is refused by name.
    let mut wrong = record;
    if let Some(read) = &mut wrong.draw_down {
        std::mem::swap(&mut read.over_black, &mut read.over_white);
    }
    assert_eq!(library.white(&wrong).expect_err("mixed up").field, "over_white");
}

#[test]
fn a_measured_colour_of_the_garment_is_what_the_print_is_computed_over() {
    let mut order = order("100% cotton jersey 160 g/m2", "black", &["chalk"]);
    let black = best(&answered(&order)).look.expect("a look");
    order.garments[0].colour.lab = Some(Lab::new(85.0, 0.0, 5.0).into());
    let pale = best(&answered(&order)).look.expect("a look");
    assert!(ciede2000(black.lab, pale.lab) > 0.3, "{black:?} {pale:?}");
}
