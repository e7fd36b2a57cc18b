//! A desk in use, without a browser: messages go in, and what the desk wants done is done by whoever stands at the edge.

use std::ops::{Deref, DerefMut};
use whitehold::desk::{Draft, Effect, Msg, State, update};

/// Who stands at the edge: does what the desk wants done and says what came of it.
pub trait Edge {
    /// What is sent back to the desk; `state` is what stands on the page.
    fn runs(&mut self, effect: Effect, state: &State) -> Option<Msg>;
}

/// The desk and its edge.
pub struct Used<E> {
    /// What stands on the page.
    pub state: State,
    edge: E,
}

impl<E: Edge> Used<E> {
    /// A desk that opened with this draft, once it had heard what comes `first`.
    pub fn over(draft: Draft, edge: E, first: impl IntoIterator<Item = Msg>) -> Self {
        let mut used = Self { state: State::new(draft), edge };
        for msg in first {
            used.send(msg);
        }
        used.send(Msg::Start);
        used
    }

    /// Something happens; all that follows from it does too.
    pub fn send(&mut self, msg: Msg) -> &mut Self {
        let (state, effects) = update(std::mem::take(&mut self.state), msg);
        self.state = state;
        for effect in effects {
            if let Some(msg) = self.edge.runs(effect, &self.state) {
                self.send(msg);
            }
        }
        self
    }
}

/// What the edge remembers is read as the desk's own.
impl<E> Deref for Used<E> {
    type Target = E;
    fn deref(&self) -> &E {
        &self.edge
    }
}

impl<E> DerefMut for Used<E> {
    fn deref_mut(&mut self) -> &mut E {
        &mut self.edge
    }
}
