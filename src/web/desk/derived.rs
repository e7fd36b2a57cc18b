//! The parts of the state that views read. Each is looked at once after a change, and wakes its readers where it differs.
//!
//! To have every reader subscribe to the state itself took most of the script of a click, 17 ms of 21 on a slow tablet, now
//! 3 of 9: a signal searches all of its readers for each that it loses and finds again, and there are hundreds.
//!
//! **Decision:** views read parts of the state; only the frame and a few words subscribe to the state itself.
//! **Because:** a signal searches all of its readers for each that it loses, and there were hundreds.
//! **Measured:** the milliseconds above, 2026-11-29; machine not recorded.
//! **Reconsider when:** Leptos removes a reader without a search.

use crate::desk::State;
use leptos::prelude::*;

/// Looks at a part of the state as it is now.
type Look = Box<dyn Fn(&State) + Send + Sync>;

/// The parts that are read, in the order in which they were asked for.
#[derive(Default)]
pub struct DerivedSignals {
    looks: Vec<(u64, Look)>,
    next: u64,
}

impl DerivedSignals {
    /// A signal that follows a part of the state, and the number under which it is left again.
    pub fn follow<T: PartialEq + Send + Sync + 'static>(
        &mut self,
        state: &State,
        read: impl Fn(&State) -> T + Send + Sync + 'static,
    ) -> (ReadSignal<T>, u64) {
        let (part, set) = signal(read(state));
        let look = move |state: &State| {
            let now = read(state);
            if part.try_with_untracked(|had| *had != now) == Some(true) {
                set.set(now);
            }
        };
        self.next += 1;
        self.looks.push((self.next, Box::new(look)));
        (part, self.next)
    }

    /// Looks at every part after a change.
    pub fn look(&self, state: &State) {
        self.looks.iter().for_each(|(_, look)| look(state));
    }

    /// Follows a part no longer: whoever read it is gone.
    pub fn leave(&mut self, id: u64) {
        if let Ok(place) = self.looks.binary_search_by_key(&id, |(id, _)| *id) {
            drop(self.looks.remove(place));
        }
    }
}
