//! A tablet at the Library screen, without a browser: messages go in, and the lines that come out are stored.

use std::sync::Arc;
use whitehold::desk::records::{Clock, RecordsMsg};
use whitehold::desk::{Draft, Effect, Msg, State, update};
use whitehold::library::log::Kind;
use whitehold::library::storage_layout::{self, Contents, Line};
use whitehold::library::{self, Library, file};
use whitehold::plan::{Colour, Garment, Order, Shop};
use whitehold::wording::Voice;

/// A tablet: its state and what it has stored.
pub(super) struct Tablet {
    pub(super) state: State,
    pub(super) stored: Vec<Line>,
    pub(super) now: i64,
}

impl Tablet {
    pub(super) fn new(name: &str) -> Self {
        let order = Order {
            garments: vec![Garment {
                label: "100% polyester interlock 150 g/m2".into(),
                colour: Colour { name: "red".into(), lab: None },
                lot: "HL-2031".into(),
                ..Garment::default()
            }],
            shop: Shop { shelf: vec!["gannet-cool".into()], dryer: "long-kiln".into(), ..Shop::default() },
            ..Order::default()
        };
        let draft = Draft::of(&order, "1187", Voice::default());
        let mut tablet = Self { state: State::new(draft), stored: Vec::new(), now: 1_795_000_000_000 };
        tablet.open(name, "1");
        tablet
    }

    pub(super) fn open(&mut self, tablet: &str, session: &str) {
        self.open_with(Arc::new(library::starter().unwrap()), tablet, session);
    }

    pub(super) fn open_with(&mut self, ships: Arc<Library>, tablet: &str, session: &str) {
        let contents = contents(&self.stored);
        self.send(RecordsMsg::Opened { ships, tablet: tablet.into(), session: session.into(), contents });
    }

    pub(super) fn send(&mut self, msg: RecordsMsg) -> Vec<Effect> {
        let clock = Clock { now: self.now, ahead: 60 };
        let (state, effects) = update(std::mem::take(&mut self.state), Msg::Records(clock, msg));
        self.state = state;
        for effect in &effects {
            if let Effect::AppendLog(lines) = effect {
                self.stored.extend(lines.clone());
            }
        }
        effects
    }

    pub(super) fn file(&self) -> Vec<u8> {
        file::write(self.state.records.log(), self.now).into_bytes()
    }

    pub(super) fn count(&self, kind: Kind) -> usize {
        self.state.records.log().count(kind)
    }
}

/// Lines as a store hands them back.
pub(super) fn contents(lines: &[Line]) -> Contents {
    Contents { segments: vec![storage_layout::segment(lines)], ..Contents::default() }
}
