//! A desk that answers every order with the same report.
//!
//! No browser and no physics: the answer is handed in, as the browser would hand it.

use super::driver::{self, Edge};
use whitehold::desk::{Answer, Draft, Effect, Field, Keeping, Msg, State};
use whitehold::ink::WhiteClass;
use whitehold::library::storage_layout::Trouble;
use whitehold::plan::{
    Clearance, Curve, DialSetting, Drift, Garment, Order, Pick, PrintStep, Recipe, Report, Setting, Verdict,
    WindowReport,
};
use whitehold::quantity::Band;
use whitehold::wording::Voice;

pub(super) fn order() -> Order {
    let garment = Garment {
        label: "100% polyester interlock, 150 g/m2, red".into(),
        lot: "HL-2031".into(),
        pieces: 144,
        areal_weight_gsm: Some(150.0),
        ..Garment::default()
    };
    Order { garments: vec![garment], ..Order::default() }
}

pub(super) fn pick(white: &str, verdict: Verdict) -> Pick {
    Pick {
        garment: 0,
        verdict,
        recipe: Recipe { white: white.into(), ..Recipe::default() },
        white: white.into(),
        name: white.to_uppercase(),
        class: WhiteClass::Polyester,
        low_cure: false,
        mix: Vec::new(),
        additive: false,
        steps: vec![
            PrintStep::White { strokes: 2, threads_per_cm: 43.0, film_um: 90.0 },
            PrintStep::Dryer { passes: 1 },
        ],
        advice: Vec::new(),
        look: None,
        setting: Some(Setting {
            set_c: 165.0,
            air_c: 165.0,
            panel_c: None,
            belt_m_per_min: 2.8,
            dwell_s: 39.0,
            hold_c: 3.0,
            hold_belt_m_per_min: 0.1,
        }),
        margins: Vec::new(),
        fail_later: Band::exact(0.1),
        cost_per_print: Band::exact(0.6),
        rate_per_hour: Band::exact(180.0),
        first_piece: Vec::new(),
        trial: None,
        reasons: Vec::new(),
    }
}

pub(super) fn report() -> Report {
    Report {
        verdict: Verdict::Trial,
        picks: vec![pick("gannet", Verdict::Trial), pick("tern", Verdict::Refuse)],
        rejected: Vec::new(),
        closed: None,
        garment: 0,
        whole: None,
        trade: None,
        to_make_it_possible: Vec::new(),
        cautions: Vec::new(),
        unknowns: Vec::new(),
        understood: Vec::new(),
        understood_each: Vec::new(),
    }
}

fn window(set_c: f64, belt: f64) -> WindowReport {
    WindowReport {
        set_c: vec![140.0, 165.0, 190.0],
        belt_m_per_min: vec![1.5, 3.0, 5.0],
        walls: Vec::new(),
        setting: Some(Setting {
            set_c,
            belt_m_per_min: belt,
            ..pick("gannet", Verdict::Trial).setting.expect("a setting")
        }),
        drift: Drift { set_k: 2.5, belt_m_per_min: 0.08 },
        room: Clearance { cooler: Some(4.0), hotter: Some(5.0), slower: None, faster: Some(0.3) },
        margins: Vec::new(),
        curve: Curve {
            seconds: Vec::new(),
            film_top_c: Vec::new(),
            film_bottom_c: Vec::new(),
            cloth_c: Vec::new(),
            fused: Vec::new(),
            water_percent: Vec::new(),
            leaves_s: 39.0,
        },
        fail_later: Band::exact(0.1),
        verdict: Verdict::Trial,
    }
}

/// An edge that answers every order with the same report, works out windows as a browser would, and keeps what it is told.
pub(super) struct Told {
    asked: Vec<Order>,
    pub(super) windows: Vec<Option<DialSetting>>,
    pub(super) store: Result<(), Trouble>,
}

impl Edge for Told {
    fn runs(&mut self, effect: Effect, state: &State) -> Option<Msg> {
        match effect {
            Effect::Answer(order) => {
                self.asked.push((*order).clone());
                let answer = Box::new(Answer { report: report().into(), cloth: None });
                Some(Msg::Answered(order, Ok(answer)))
            }
            Effect::Window { key, at, .. } => {
                self.windows.push(at);
                let at = at.unwrap_or(DialSetting { set_c: 165.0, belt_m_per_min: 2.8 });
                Some(Msg::Windowed(key, Ok(Box::new(window(at.set_c, at.belt_m_per_min)))))
            }
            Effect::AppendLog(_) | Effect::LibraryChanged => None,
            Effect::Forecast { .. } | Effect::Diagnose { .. } => {
                panic!("nobody looks at the forecast or for a cause here: other files do")
            }
            Effect::SaveDraft => {
                assert_eq!(state.keeping, Keeping::Saving, "kept before the store said so");
                Some(Msg::DraftSaved(self.store.clone()))
            }
        }
    }
}

pub(super) type Used = driver::Used<Told>;

impl Used {
    pub(super) fn new() -> Self {
        let draft = Draft::of(&order(), "Rowing club", Voice::default());
        Self::over(draft, Told { asked: Vec::new(), windows: Vec::new(), store: Ok(()) }, [])
    }

    pub(super) fn type_in(&mut self, field: Field, text: &str) -> &mut Self {
        self.send(Msg::Done).send(Msg::Type(field, text.into()))
    }

    pub(super) fn last(&self) -> &Order {
        self.asked.last().expect("an order was asked about")
    }

    pub(super) fn text(&self, field: Field) -> &str {
        self.state.draft.text(field)
    }
}
