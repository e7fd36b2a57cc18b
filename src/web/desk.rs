//! The page at work: one signal with the state, one way to change it, and the effects run in the browser.
//!
//! In: messages of the views. Out: the next state, parts of it as signals, effects. Must not know: any single view.
//!
//! **Decision:** a tap is painted before its answer, whether that is known or not. What lies in folds and
//! below the fold is built after the first answer is painted, and a draft is stored after the tap is painted.
//! **Because:** a known answer that was drawn together with the tap kept the tap unseen for longer.
//! **Measured:** on 2026-11-29, figures and machine not recorded; `cargo xtask latency` measures it.
//! **Reconsider when:** a whole answer is drawn within one frame on a slow tablet.

mod derived;
mod files;

use super::{cached_queries::CachedQueries, draft_saver::DraftSaver, file, host::Host, log_saver::LogSaver};
use crate::desk::records::{Clock, RecordsMsg};
use crate::desk::{Action, Effect, Field, Msg, Screen, State, Touch, draft_file, update};
use crate::library::{self, Library};
use crate::wording::{Label, Voice};
use derived::DerivedSignals;
use leptos::prelude::*;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

/// Pause after the last keystroke before an order is answered, so that typing stays smooth.
const REST: Duration = Duration::from_millis(180);

/// A handle on the page's state and effects; cheap to copy into every view.
#[derive(Clone, Copy)]
pub struct Desk {
    state: RwSignal<State>,
    parts: StoredValue<DerivedSignals>,
    voice: ReadSignal<Voice>,
    /// Whether all of the page is built, or only what is seen at first: no insides of disclosures, nothing further
    /// down.
    whole: RwSignal<bool>,
    queries: StoredValue<CachedQueries>,
    host: StoredValue<Host, LocalStorage>,
    draft_saver: StoredValue<Option<DraftSaver>, LocalStorage>,
    log_saver: StoredValue<Option<LogSaver>, LocalStorage>,
    waiting: StoredValue<Waiting>,
    /// Called after each answer, when the page has nothing more urgent to do.
    after_answer: fn(Desk),
    handle: StoredValue<Option<Rc<file::Handle>>, LocalStorage>,
    autosaving: RwSignal<bool>,
}

/// Work that waits for its turn; newer work replaces older.
#[derive(Default)]
struct Waiting {
    answer: Option<Effect>,
    window: Option<Effect>,
    turn: u64,
    window_due: bool,
    /// Counts messages.
    stirred: u64,
    /// Whether the other orders of the demo are being prefetched with this library, or were.
    prefetching: bool,
    /// Whether the chosen file is being written, and must be written once more.
    file: bool,
    file_again: bool,
}

impl Desk {
    /// The page of a state; `after_answer` is called after each answer.
    pub fn new(state: State, queries: CachedQueries, host: Host, after_answer: fn(Desk)) -> Self {
        let mut parts = DerivedSignals::default();
        let (voice, _) = parts.follow(&state, State::voice);
        Self {
            state: RwSignal::new(state),
            parts: StoredValue::new(parts),
            voice,
            whole: RwSignal::new(false),
            queries: StoredValue::new(queries),
            host: StoredValue::new_local(host),
            draft_saver: StoredValue::new_local(None),
            log_saver: StoredValue::new_local(None),
            waiting: StoredValue::new(Waiting::default()),
            after_answer,
            handle: StoredValue::new_local(None),
            autosaving: RwSignal::new(false),
        }
    }

    /// Saves drafts and records through these from now on.
    pub fn keep_with(self, draft_saver: DraftSaver, log_saver: LogSaver) {
        self.draft_saver.set_value(Some(draft_saver));
        self.log_saver.set_value(Some(log_saver));
    }

    /// Sends a message to the records, with the time.
    pub fn change_records(self, msg: RecordsMsg) {
        let now = js_sys::Date::new_0();
        // Whole ms and minutes, well within their types.
        let clock = Clock { now: now.get_time() as i64, ahead: -now.get_timezone_offset() as i32 };
        self.send(Msg::Records(clock, msg));
    }

    /// True if nothing was changed yet.
    pub fn is_untouched(self) -> bool {
        self.state.with_untracked(|state| state.undo.is_empty() && state.redo.is_empty())
    }

    /// Builds the rest of the page once what is seen at first is painted, so that the first answer is seen sooner.
    pub fn completes(self) {
        request_animation_frame(move || set_timeout(move || self.whole.set(true), Duration::ZERO));
    }

    /// Whether all of the page is built, or only what is seen at first.
    pub fn is_whole(self) -> bool {
        self.whole.get()
    }

    /// A view that is built once the first is painted.
    pub fn later<V: IntoView + 'static>(self, inside: impl Fn() -> V + Send + 'static) -> impl IntoView {
        move || self.whole.get().then(&inside)
    }

    /// Scrolls an element into view, once it is drawn.
    pub fn show(self, id: &'static str) {
        set_timeout(move || self.host.with_value(|host| host.show(id)), Duration::ZERO);
    }

    /// Puts the focus back on what was tapped, when it was drawn anew.
    pub fn focus_again(self, action: &Action) {
        let action = action.to_string();
        set_timeout(move || self.host.with_value(|host| host.focus_action(&action)), Duration::ZERO);
    }

    /// Updates the state with a message and runs the effects.
    pub fn send(self, msg: Msg) {
        let saved = matches!(msg, Msg::Records(_, RecordsMsg::FileSaved));
        let answered = matches!(msg, Msg::Answered(..));
        self.waiting.update_value(|waiting| waiting.stirred += 1);
        let mut effects = Vec::new();
        let mut moved = None;
        self.state.update(|state| {
            let before = state.screen;
            let (next, wanted) = update(std::mem::take(state), msg);
            *state = next;
            effects = wanted;
            moved = Some(state.screen).filter(|screen| *screen != before);
        });
        self.parts.with_value(|parts| self.state.with_untracked(|state| parts.refresh(state)));
        // Where a message turns to another screen the address follows, so that Back leads to the one before.
        if let Some(screen) = moved {
            self.host.with_value(|host| host.turn_to(screen));
        }
        // The entry about the saved file is no reason to write that file again.
        if !saved && effects.iter().any(|effect| matches!(effect, Effect::AppendLog(_))) {
            self.write_file();
        }
        for effect in effects {
            self.run(effect);
        }
        if answered {
            (self.after_answer)(self);
        }
    }

    fn run(self, effect: Effect) {
        match effect {
            Effect::AppendLog(lines) => self.log_saver.with_value(|saver| {
                if let Some(saver) = saver {
                    saver.append(lines);
                }
            }),
            Effect::LibraryChanged => {
                self.queries.with_value(CachedQueries::forget);
                self.set_prefetching(false);
            }
            Effect::SaveDraft => {
                let text = self.state.with_untracked(|state| draft_file::write(&state.draft));
                self.draft_saver.with_value(|saver| {
                    if let Some(saver) = saver {
                        saver.keep(text);
                    }
                });
            }
            Effect::Answer(ref order) => {
                let known = self.queries.with_value(|queries| queries.has_answered(order, &self.library()));
                let turn = self.waiting.try_update_value(|waiting| {
                    waiting.answer = Some(effect);
                    waiting.turn += 1;
                    waiting.turn
                });
                let typed = |state: &State| matches!(state.touch, Some(Touch::Field(..)));
                let now = move || self.answer_in_turn(turn);
                if known && self.state.with_untracked(|state| state.report.is_none()) {
                    // A known first answer is there before anything is painted.
                    now();
                } else if !known && self.state.with_untracked(typed) {
                    set_timeout(now, REST);
                } else {
                    // After a tap there is no pause; only the tap itself is painted first.
                    request_animation_frame(move || set_timeout(now, Duration::ZERO));
                }
            }
            Effect::Window { .. } | Effect::Forecast { .. } | Effect::Diagnose { .. } => {
                let due = self.waiting.try_update_value(|waiting| {
                    waiting.window = Some(effect);
                    std::mem::replace(&mut waiting.window_due, true)
                });
                if due == Some(false) {
                    // One frame is painted before the work, so that the cross never lags behind the finger.
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
            let result = self.queries.with_value(|queries| queries.answer(&order, &self.library()));
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
                let result =
                    self.queries.with_value(|queries| queries.window(&self.library(), &order, &pick, at));
                self.send(Msg::Windowed(key, result.map(Box::new)));
            }
            Some(Some(Effect::Diagnose { order, pick, key, run, seen })) => {
                let result = library::diagnose(&order, &self.library(), &pick, &run, seen);
                self.send(Msg::Diagnosed(key, result.map(|found| found.map(Box::new))));
            }
            Some(Some(Effect::Forecast { order, pick, key, at })) => {
                let result =
                    self.queries.with_value(|queries| queries.forecast(&self.library(), &order, &pick, at));
                if let Some(result) = result.transpose() {
                    self.send(Msg::Forecast(key, result.map(Box::new)));
                }
            }
            _ => {}
        }
    }

    /// Reads the state, and again whenever it changes.
    pub fn with<T>(self, read: impl FnOnce(&State) -> T) -> T {
        self.state.with(read)
    }

    /// Reads the state once.
    pub fn with_untracked<T>(self, read: impl FnOnce(&State) -> T) -> T {
        self.state.with_untracked(read)
    }

    /// How many messages were sent: while it stays the same, the page is idle.
    pub fn stirred(self) -> u64 {
        self.waiting.with_value(|waiting| waiting.stirred)
    }

    /// Sets whether prefetching is under way or done; returns what it was before.
    pub fn set_prefetching(self, prefetching: bool) -> bool {
        self.waiting
            .try_update_value(|waiting| std::mem::replace(&mut waiting.prefetching, prefetching))
            .unwrap_or(true)
    }

    /// The library that orders are answered with.
    pub fn library(self) -> Arc<Library> {
        self.state.with_untracked(|state| Arc::clone(state.records.library()))
    }

    /// Uses the queries.
    pub fn queries<T>(self, read: impl FnOnce(&CachedQueries) -> T) -> T {
        self.queries.with_value(read)
    }

    /// A derived signal: notifies on change only, dropped with the view.
    pub fn memo<T: PartialEq + Send + Sync + 'static>(
        self,
        read: impl Fn(&State) -> T + Send + Sync + 'static,
    ) -> ReadSignal<T> {
        self.state.with_untracked(|state| {
            let mut parts = self.parts.write_value();
            let (part, id) = parts.follow(state, read);
            on_cleanup(move || self.parts.update_value(|parts| parts.drop_signal(id)));
            part
        })
    }

    /// Language and units.
    pub fn voice(self) -> Voice {
        self.voice.get()
    }

    /// A label in the language of the page.
    pub fn label(self, label: Label) -> &'static str {
        self.voice().label(label)
    }

    /// The text of a field.
    pub fn text(self, field: Field) -> String {
        self.with(|state| state.draft.text(field).to_owned())
    }

    /// Scrolls to the top, once what was tapped is drawn: scrolling forces a layout.
    pub fn to_the_top(self) {
        set_timeout(move || self.host.with_value(Host::to_the_top), Duration::ZERO);
    }

    /// Follows a link to a screen. On its own page the address does that; embedded in another page, whose address
    /// is not ours to change, a message does.
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
