//! Derived signals: parts of the state, each worked out once after a change and set only where it differs.
//!
//! **Decision:** views read parts of the state; only the frame and a few words subscribe to the state itself.
//! **Because:** a signal searches all of its readers for each that it loses, and there were hundreds.
//! **Measured:** the script of a click on a slowed tablet took 21 ms, 17 of them for that; now 9, of which 3
//! (2026-11-29, machine not recorded).
//! **Reconsider when:** Leptos removes a reader without a search.

use crate::desk::State;
use leptos::prelude::*;

/// Works one signal out from the state.
type Refresh = Box<dyn Fn(&State) + Send + Sync>;

/// The signals, in the order in which they were made.
#[derive(Default)]
pub struct DerivedSignals {
    signals: Vec<(u64, Refresh)>,
    next: u64,
}

impl DerivedSignals {
    /// A signal that follows a part of the state, and the number by which it is dropped.
    pub fn follow<T: PartialEq + Send + Sync + 'static>(
        &mut self,
        state: &State,
        read: impl Fn(&State) -> T + Send + Sync + 'static,
    ) -> (ReadSignal<T>, u64) {
        let (part, set) = signal(read(state));
        let refresh = move |state: &State| {
            let now = read(state);
            if part.try_with_untracked(|had| *had != now) == Some(true) {
                set.set(now);
            }
        };
        self.next += 1;
        self.signals.push((self.next, Box::new(refresh)));
        (part, self.next)
    }

    /// Updates every signal after a change.
    pub fn refresh(&self, state: &State) {
        self.signals.iter().for_each(|(_, refresh)| refresh(state));
    }

    /// Drops a signal that is read no longer.
    pub fn drop_signal(&mut self, id: u64) {
        if let Ok(place) = self.signals.binary_search_by_key(&id, |(id, _)| *id) {
            drop(self.signals.remove(place));
        }
    }
}
