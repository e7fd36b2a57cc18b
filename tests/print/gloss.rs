//! Gloss: a mirror on the meter's scale, the facets of a rough one, what roughens a print, and the finish of an order.

use super::common::{OrderBuilder, an_order, best, reason};
use proptest::prelude::*;
use whitehold::ink::{smoothed, surface_slope};
use whitehold::optics::{PVC_INDEX, REFERENCE_INDEX, facets_in_window, gloss_units, mirrored};
use whitehold::plan::{Code, HeatEvent, Order, Pick, PrintStep, Sheen, Topic};

/// Source: Fresnel's equations in mpmath 1.2.1, 25 digits: with c = cos 60° and k = sqrt(1 − (sin 60° / n)²),
/// `(((c-n*k)/(c+n*k))**2 + ((n*c-k)/(n*c+k))**2) / 2`. 100 GU at n = 1.567: ISO 2813:1997, extract read; 71.9 at
/// n = 1.400: its table 2, from memory.
#[test]
fn a_mirror_reads_by_its_index() {
    let rows = [
        (1.4, 0.071_976_701_18, 71.936_394),
        (1.5, 0.089_186_712_8, 89.136_768),
        (1.53, 0.094_113_895_7, 94.061_191),
        (1.567, 0.100_056_032_2, 100.0),
        (1.6, 0.105_238_192, 105.179_26),
    ];
    for (index, reflects, units) in rows {
        assert!((mirrored(index) - reflects).abs() < 1e-9, "n = {index}: {}", mirrored(index));
        let found = gloss_units(index, 0.0, 0.0);
        assert!((found - units).abs() < 1e-5, "n = {index}: {found} GU");
    }
    assert!((gloss_units(1.4, 0.0, 0.0) - 71.9).abs() < 0.05 && mirrored(1.0) < 1e-15);
    assert!((gloss_units(REFERENCE_INDEX, 0.0, 0.0) - 100.0).abs() < 1e-12);
}

/// Source: mpmath 1.2.1, 25 digits, `quad` of the normal density over twenty parts from −tan 1.1° to tan 1.1°, times the
/// same to tan 5.85°.
#[test]
fn facets_are_counted_as_by_quadrature() {
    let rows = [
        (0.005, 0.999_877_063_97),
        (0.01, 0.945_154_489_577),
        (0.02, 0.662_969_269_006),
        (0.05, 0.286_941_162_955),
        (0.1, 0.105_739_055_38),
        (0.2, 0.029_947_204_602_5),
        (0.5, 0.004_973_612_761_26),
    ];
    for (slope, share) in rows {
        let found = facets_in_window(slope);
        assert!((found - share).abs() < 1e-11, "slope {slope}: {found}, by quadrature {share}");
    }
}

/// Source: `tests/peer/gloss.py`, the law of reflection in full for each facet; the closed form takes angles as small.
#[test]
fn small_angles_are_small_enough() {
    for (slope, share) in PEER {
        let found = facets_in_window(slope);
        assert!((found / share - 1.0).abs() < 0.003, "slope {slope}: {found}, mirrored in full {share}");
    }
}

const PEER: [(f64, f64); 4] = [(0.02, 0.663_167), (0.05, 0.287_335), (0.1, 0.105_9), (0.2, 0.029_992)];

/// Source: Lambert's law by hand. A perfect white sends E/π into each steradian; the window holds 4.4° × 11.7° of them,
/// seen at 60°: 0.0768 · 0.2042 · 0.5 / π = 0.0025 of the light, where the glass mirrors 0.1001.
#[test]
fn a_white_that_only_scatters_still_reads_two_units() {
    let chalk = gloss_units(PVC_INDEX, 1e9, 1.0);
    assert!((chalk - 100.0 * 0.002_496 / 0.100_056).abs() < 0.002, "{chalk} GU");
    assert!(gloss_units(PVC_INDEX, f64::INFINITY, 0.0) < 1e-12);
}

/// Transcription check by hand: what the rows hold is the arithmetic; the constants are assumed (`ink::relief`). A wave of 60 µm on rows of 0.5 mm climbs by π · 60 / 500 / √2 = 0.2666 rms; 100 µm of film leave e⁻¹
/// of it, a print on a flashed film seven tenths; the film's own 0.03 is added as a square.
#[test]
fn relief_by_hand() {
    let rows = [
        (0.0, 100.0, 0, 0.03),
        (60.0, 0.0, 0, 0.268_25),
        (60.0, 100.0, 0, 0.102_55),
        (60.0, 100.0, 1, 0.074_92),
        (250.0, 100.0, 1, 0.287_60),
    ];
    for (nap, film, flashed, slope) in rows {
        let found = surface_slope(nap * 1e-6, film * 1e-6, flashed);
        assert!((found - slope).abs() < 2e-5, "nap {nap}, film {film}, {flashed} on flashed: {found}");
    }
}

proptest! {
    /// Rougher is never glossier; a lower nap, a smoothing screen, more film and a print more on a flashed film never
    /// duller; and no print on cloth reaches the smooth film.
    #[test]
    fn what_smooths_never_dulls(
        nap in 0.0..600e-6f64, film in 0.0..400e-6f64, flashed in 0u32..4, more in 0.0..300e-6f64, rough in 0.0..2.0f64,
        rougher in 0.0..2.0f64, scatters in 0.0..=1.0f64,
    ) {
        let units = |slope: f64| gloss_units(PVC_INDEX, slope, scatters);
        prop_assert!(units(rough + rougher) <= units(rough) + 1e-9);
        let print = |nap, film, flashed| units(surface_slope(nap, film, flashed));
        let had = print(nap, film, flashed);
        prop_assert!(print(nap + more, film, flashed) <= had + 1e-9);
        prop_assert!(print(smoothed(nap), film, flashed) >= had - 1e-9);
        prop_assert!(print(nap, film + more, flashed) >= had - 1e-9);
        prop_assert!(print(nap, film, flashed + 1) >= had - 1e-9);
        prop_assert!(had.is_finite() && had < units(0.0));
    }
}

fn order(label: &str, finish: Sheen) -> OrderBuilder {
    an_order().label(label).pieces(200).every_white().print(|print| print.finish = finish)
}

/// Why a pick has a smoothing screen, if it has one; two reasons for one screen would be one too many.
fn smoothed_because(pick: &Pick) -> Option<Code> {
    let said: Vec<Code> = [Code::SmoothingHelps, Code::SmoothingShines]
        .into_iter()
        .filter(|code| reason(pick, *code).is_some())
        .collect();
    let screen = pick.steps.iter().any(|step| matches!(step, PrintStep::Smooth));
    assert_eq!(said.len(), usize::from(screen), "{said:?} for {:?}", pick.steps);
    said.first().copied()
}

const TEE: &str = "100% cotton jersey 150 gsm red";

/// A smooth cloth can shine under a smoothing screen, and is never quite dull where it wants two strokes; a piqué is dull
/// and cannot shine; its nap wants the screen where the film is thin. Cloth, finish asked for, whether the pick meets it, why it is
/// smoothed.
#[test]
fn the_finish_asked_for_chooses_the_way() {
    let [interlock, pique] = ["100% cotton interlock 210 gsm red", "100% cotton pique 200 gsm white"];
    let rows = [
        (interlock, Sheen::Matt, false, None),
        (interlock, Sheen::Gloss, true, Some(Code::SmoothingShines)),
        (pique, Sheen::Matt, true, Some(Code::SmoothingHelps)),
        (pique, Sheen::Gloss, false, Some(Code::SmoothingShines)),
    ];
    for (label, finish, holds, smoothed) in rows {
        let [any, pick] = [Sheen::Any, finish].map(|finish| order(label, finish).picked());
        assert!(
            any.margin(Topic::Gloss).is_none() && !any.first_piece.contains(&Code::CheckGloss),
            "{label}"
        );
        let margin = pick.margin(Topic::Gloss).unwrap_or_else(|| panic!("{label}: the finish is not judged"));
        assert_eq!(margin.holds_likely(), holds, "{label}, {finish:?}: {margin:?}");
        assert_eq!(
            reason(&pick, Code::FinishHolds).is_some(),
            holds,
            "{label}, {finish:?}: {:?}",
            pick.reasons
        );
        assert_eq!(smoothed_because(&pick), smoothed, "{label}, {finish:?}: {:?}", pick.steps);
        assert!(pick.first_piece.contains(&Code::CheckGloss), "{label}, {finish:?}");
        assert_eq!(pick.verdict, any.verdict, "{label}, {finish:?}: the finish never makes the verdict");
    }
    for label in [interlock, pique] {
        let [matt, gloss] = [Sheen::Matt, Sheen::Gloss].map(|finish| order(label, finish).picked());
        let [matt, gloss] = [matt, gloss].map(|pick| pick.margin(Topic::Gloss).expect("judged").value.likely);
        assert!(matt < gloss, "{label}: {matt} GU where it shall be dull, {gloss} where it shall shine");
    }
}

/// A fleece stands through: nothing on the shelf shines on it. It is said, and the order is still printed.
#[test]
fn what_cannot_shine_says_so_and_is_no_refusal() {
    let label = "80% cotton 20% polyester fleece 280 gsm maroon";
    let [any, gloss] = [Sheen::Any, Sheen::Gloss].map(|finish| order(label, finish).answered());
    let pick = best(&gloss);
    let margin = pick.margin(Topic::Gloss).expect("judged");
    assert!(!margin.holds_likely() && reason(pick, Code::GlossShort).is_some(), "{margin:?}");
    assert_eq!(gloss.verdict, any.verdict);
}

#[test]
fn a_press_over_the_print_is_told_where_a_finish_is_asked_for() {
    let press = HeatEvent { what: "pressed names".into(), temp_c: 155.0, seconds: 12.0 };
    for (finish, cautioned) in [(Sheen::Matt, true), (Sheen::Gloss, true), (Sheen::Any, false)] {
        let order = order(TEE, finish).print(|print| print.heat_after = vec![press.clone()]);
        let said = order.answered().cautions.iter().any(|reason| reason.code == Code::PressIrons);
        assert_eq!(said, cautioned, "{finish:?}");
    }
}

#[test]
fn an_order_says_its_finish_in_a_word() {
    let read = |finish: &str| serde_json::from_str::<Order>(&format!(r#"{{"print":{{{finish}}}}}"#));
    assert_eq!(read("").expect("an older order").print.finish, Sheen::Any);
    let rows = [("any", Sheen::Any), ("matt", Sheen::Matt), ("gloss", Sheen::Gloss)];
    for (word, finish) in rows {
        let order = read(&format!(r#""finish":"{word}""#)).expect(word);
        assert_eq!(order.print.finish, finish);
        let written = serde_json::to_value(&order).expect("writes");
        let expected = (finish != Sheen::Any).then_some(word);
        assert_eq!(written["print"].get("finish").and_then(|word| word.as_str()), expected);
    }
    let error = read(r#""finish":"shiny""#).expect_err("no such finish").to_string();
    for word in ["shiny", "any", "matt", "gloss"] {
        assert!(error.contains(&format!("`{word}`")), "{error}");
    }
}
