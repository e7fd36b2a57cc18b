//! How long one history and one forecast take: the same code natively (`whitehold-bench pace`) and in the release wasm in a
//! browser (`cargo xtask bench --only wasm` runs both).

use whitehold::dryer::{Case, DriftCase, Dryer, Film, Stack, TOLERANCE, history};
use whitehold::library::{self, Library};
use whitehold::plan::{DialSetting, DyeClass, Garment, Order, Shop};
use whitehold::quantity::Share;
use whitehold::textile::{Construction, Fibre};

/// Histories that are marched for one figure.
const TURNS: usize = 400;
/// Figures that are taken; the fastest counts, because whatever else runs can only slow it down.
const FIGURES: usize = 15;

/// One history marched alone, and one of eight that march side by side, in µs. `now` reads a clock in ms.
pub fn pace(library: &Library, dryer: &Dryer, now: impl Fn() -> f64) -> [f64; 2] {
    let cotton = [(Fibre::Cotton, 1.0)].into();
    let cloth = library.fabric(&cotton, Construction::Jersey, 150.0).unwrap();
    let stack = Stack::garment(Film { thickness: 100e-6, density: 1300.0 }, &cloth, Share(0.65));
    let case =
        |lane: usize| Case { set: 448.15, belt: 1.8 / (34.4 + lane as f64), drift: DriftCase::NOMINAL };
    let (alone, beside) = ([case(3)], std::array::from_fn::<_, 8, _>(case));
    let fastest = |march: &dyn Fn() -> usize, worlds: f64| {
        let mut fastest = f64::INFINITY;
        for _ in 0..FIGURES {
            let start = now();
            let steps: usize = (0..TURNS).map(|_| march()).sum();
            assert!(steps > TURNS, "nothing was marched");
            fastest = fastest.min((now() - start) * 1e3 / (TURNS as f64 * worlds));
        }
        fastest
    };
    [
        fastest(&|| history(&stack, dryer, &alone, 1, TOLERANCE).unwrap().effort.accepted, 1.0),
        fastest(&|| history(&stack, dryer, &beside, 1, TOLERANCE).unwrap().effort.accepted, 8.0),
    ]
}

/// A forecast of 90 days over all worlds at a set point that was not asked for before, ms: a plain white, and one over a
/// blocker, whose rim is aged too.
pub fn forecasts(library: &Library, now: impl Fn() -> f64) -> [(&'static str, f64); 2] {
    [("gannet", DyeClass::Unknown, false), ("gannet-cool", DyeClass::SublimationPrinted, true)].map(
        |(white, dye_class, blocked)| {
            let label = "100% polyester interlock 150 gsm red".into();
            let garment = Garment { label, dye_class, ..Garment::default() };
            let mut shelf = vec![white.to_owned()];
            shelf.extend(blocked.then(|| "slate".to_owned()));
            let shop = Shop { shelf, dryer: "long-kiln".into(), ..Shop::default() };
            let order = Order { garments: vec![garment], shop, ..Order::default() };
            let report = library::answer(&order, library).unwrap();
            let pick = &report.picks[0];
            let set = pick.setting.unwrap();
            let forecast = library::pick_forecast(&order, library, pick).unwrap().unwrap();
            let mut fastest = f64::INFINITY;
            for turn in 0..FIGURES {
                let at = Some(DialSetting { set_c: set.set_c + turn as f64 * 0.1, ..set.dialled() });
                let start = now();
                for _ in 0..10 {
                    let aged = library::forecast_at(&forecast, at).unwrap().unwrap();
                    assert!(aged.rim.is_some() == blocked && aged.days.len() > 10);
                }
                fastest = fastest.min((now() - start) / 10.0);
            }
            (white, fastest)
        },
    )
}
