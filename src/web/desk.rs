//! The living desk: one signal with the state, one way to change it, and the effects run in the browser.

use super::{brain::Brain, host::Host, keep};
use crate::desk::{Effect, Field, Msg, Screen, State, update};
use crate::wording::{Label, Voice};
use leptos::prelude::*;
use std::time::Duration;

/// Rest after the last keystroke before an order is worked out, so that typing stays smooth.
const REST: Duration = Duration::from_millis(180);

/// A handle on the desk; cheap to copy into every view.
#[derive(Clone, Copy)]
pub struct Desk {
    state: RwSignal<State>,
    brain: StoredValue<Brain>,
    host: StoredValue<Host, LocalStorage>,
    waiting: StoredValue<Waiting>,
}

/// Work that waits for its turn; newer work takes the place of older.
#[derive(Default)]
struct Waiting {
    answer: Option<Effect>,
    window: Option<Effect>,
    turn: u64,
    window_due: bool,
}

impl Desk {
    /// A desk over a state.
    pub fn new(state: State, brain: Brain, host: Host) -> Self {
        Self {
            state: RwSignal::new(state),
            brain: StoredValue::new(brain),
            host: StoredValue::new_local(host),
            waiting: StoredValue::new(Waiting::default()),
        }
    }

    /// Changes the state and runs what follows.
    pub fn send(self, msg: Msg) {
        let mut effects = Vec::new();
        self.state.update(|state| {
            let (next, wanted) = update(std::mem::take(state), msg);
            *state = next;
            effects = wanted;
        });
        for effect in effects {
            self.run(effect);
        }
    }

    fn run(self, effect: Effect) {
        match effect {
            Effect::Keep => {
                let kept = self.state.with_untracked(keep::write);
                if self.state.with_untracked(|state| (state.keeping == crate::desk::Keeping::Kept) != kept) {
                    self.send(Msg::Kept(kept));
                }
            }
            Effect::Answer(_) => {
                let turn = self.waiting.try_update_value(|waiting| {
                    waiting.answer = Some(effect);
                    waiting.turn += 1;
                    waiting.turn
                });
                set_timeout(move || self.answer_in_turn(turn), REST);
            }
            Effect::Window { .. } | Effect::Forecast { .. } => {
                let due = self.waiting.try_update_value(|waiting| {
                    waiting.window = Some(effect);
                    std::mem::replace(&mut waiting.window_due, true)
                });
                if due == Some(false) {
                    // One frame is painted before the work, so that the cross never lags the finger.
                    request_animation_frame(move || set_timeout(move || self.window_now(), Duration::ZERO));
                }
            }
        }
    }

    fn answer_in_turn(self, turn: Option<u64>) {
        let work = self.waiting.try_update_value(|waiting| {
            if Some(waiting.turn) == turn { waiting.answer.take() } else { None }
        });
        if let Some(Some(Effect::Answer(order))) = work {
            let result = self.brain.with_value(|brain| brain.answer(&order));
            self.send(Msg::Answered(order, result.map(Box::new)));
        }
    }

    fn window_now(self) {
        let work = self.waiting.try_update_value(|waiting| {
            waiting.window_due = false;
            waiting.window.take()
        });
        match work {
            Some(Some(Effect::Window { order, pick, key, at })) => {
                let result = self.brain.with_value(|brain| brain.window(&order, &pick, at));
                self.send(Msg::Windowed(key, result.map(Box::new)));
            }
            Some(Some(Effect::Forecast { order, pick, key, at })) => {
                let result = self.brain.with_value(|brain| brain.forecast(&order, &pick, at));
                if let Some(result) = result.transpose() {
                    self.send(Msg::Forecast(key, result.map(Box::new)));
                }
            }
            _ => {}
        }
    }

    /// Reads the state, to be run again when it changes.
    pub fn with<T>(self, read: impl FnOnce(&State) -> T) -> T {
        self.state.with(read)
    }

    /// Reads the library.
    pub fn brain<T>(self, read: impl FnOnce(&Brain) -> T) -> T {
        self.brain.with_value(read)
    }

    /// A part of the state that wakes its readers only when it differs.
    pub fn memo<T: PartialEq + Send + Sync + 'static>(
        self,
        read: impl Fn(&State) -> T + Send + Sync + 'static,
    ) -> Memo<T> {
        Memo::new(move |_| self.state.with(|state| read(state)))
    }

    /// Language and units.
    pub fn voice(self) -> Voice {
        self.with(State::voice)
    }

    /// A word of the screens in the language of the moment.
    pub fn label(self, label: Label) -> &'static str {
        self.voice().label(label)
    }

    /// What stands in a field.
    pub fn text(self, field: Field) -> String {
        self.with(|state| state.draft.text(field).to_owned())
    }

    /// Brings the head of the desk into view.
    pub fn to_the_top(self) {
        self.host.with_value(Host::to_the_top);
    }

    /// Follows a link to a screen. A page of the desk's own does that by itself, through its address; inside
    /// somebody else's page the address is not ours to change.
    pub fn follow_link(self, event: &web_sys::MouseEvent, screen: Screen) {
        if !self.host.with_value(Host::standalone) {
            event.prevent_default();
            self.send(Msg::Show(screen));
        }
    }

    /// Puts the focus on the element of this id.
    pub fn focus(self, id: &str) {
        self.host.with_value(|host| host.focus(id));
    }
}
