//! The browser's side, compiled for wasm only: the JS API and the views of the desk.
//!
//! Hands out `mount` and the functions of [`api`]. Everything that decides lies in the native core: here are only
//! the shadow root, the effects that `desk::update` asks for, and views that show the state.

pub mod api;
mod cached_queries;
mod desk;
mod draft_saver;
pub mod file;
mod host;
mod log_saver;
mod prefetch;
mod sheet_scanner;
pub mod store;
mod types;
mod view;

use crate::desk::records::RecordsMsg;
use crate::desk::{Draft, Msg, State, Theme, language_of};
use crate::library::storage_layout::{Contents, Trouble};
use crate::plan::Order;
use crate::wording::{Language, Units, Voice};
use cached_queries::CachedQueries;
use desk::Desk;
use draft_saver::DraftSaver;
use host::Host;
use leptos::prelude::*;
use log_saver::LogSaver;
use serde::Deserialize;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;
use store::{OpenedStore, Store, web_storage};
use wasm_bindgen::prelude::*;
use web_sys::{CustomEvent, CustomEventInit, HtmlElement};

/// The order of the demo print room that a desk without a kept draft opens with.
const FIRST_ORDER: &str = "1187";

/// Memory that is asked for at once, bytes. Library and first answer take 2.4 MB (order 1187, measured in Node); the desk
/// takes some more. 3 to 8 MB, chosen.
const FIRST_MEMORY: usize = 6 << 20;

/// The longest that the desk waits for its store before it is drawn: assumed. An opening takes some milliseconds; one
/// that another tab holds up goes on behind the drawn desk.
const PATIENCE: Duration = Duration::from_millis(1500);

/// The version of this build, as in `Cargo.toml`.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}

/// How a desk is mounted.
#[derive(Default, Deserialize)]
#[serde(default)]
struct MountOptions {
    styles: Vec<String>,
    standalone: bool,
    language: Option<Language>,
    units: Option<Units>,
    theme: Option<Theme>,
    order: Option<Order>,
}

/// Draws the desk into an open shadow root of the element.
///
/// # Errors
/// If the options cannot be read, the element already has a shadow root, or the library cannot be read.
#[wasm_bindgen]
pub fn mount(element: HtmlElement, options: Option<types::JsMountOptions>) -> Result<(), JsValue> {
    // The first answer takes this much: one large piece of memory comes faster than thirty small ones.
    drop(Vec::<u8>::with_capacity(FIRST_MEMORY));
    let options: MountOptions = api::read(&options.into(), "options", Voice::default())?;
    report_panics();
    let queries = CachedQueries::new().map_err(|error| JsValue::from_str(&error.to_string()))?;
    let (host, place) = Host::open(element, &options.styles, options.standalone)?;
    let start = Rc::new(Start {
        handed_over: options.order.is_some(),
        parts: RefCell::new(Some((options, queries, host, place))),
        desk: RefCell::new(None),
        early: RefCell::new(None),
    });
    let (opening, waiting) = (Rc::clone(&start), start);
    wasm_bindgen_futures::spawn_local(async move {
        let told = Rc::clone(&opening);
        match draft_saver::open(move |trouble| told.hear(trouble)).await {
            Ok(OpenedStore { store, contents, wiped }) => {
                let trouble = if wiped { Some(Trouble::Wiped) } else { store.trouble() };
                opening.opened(contents, Ok(store), trouble);
            }
            Err(trouble) => opening.opened(Contents::default(), Err(trouble.clone()), Some(trouble)),
        }
    });
    // The browser takes a while to open its store: meanwhile the first order is answered, as it will be asked about unless
    // the store holds another. What was marched for it serves then, too.
    let idle = Rc::clone(&waiting);
    set_timeout(move || idle.answer_ahead(), Duration::ZERO);
    set_timeout(move || waiting.draw(Contents::default(), None), PATIENCE);
    Ok(())
}

/// A desk that is drawn as soon as its store is open, or without it when that takes too long.
struct Start {
    /// Whether the page that holds the desk handed an order over: then that is what the desk shows.
    handed_over: bool,
    parts: RefCell<Option<(MountOptions, CachedQueries, Host, HtmlElement)>>,
    desk: RefCell<Option<(Desk, DraftSaver, LogSaver)>>,
    /// What the store told before there was a desk.
    early: RefCell<Option<Trouble>>,
}

impl Start {
    /// The store is open, or there is none.
    fn opened(&self, contents: Contents, store: Result<Store, Trouble>, trouble: Option<Trouble>) {
        let late = self.parts.borrow().is_none();
        self.early.take();
        let found = draft_saver::draft(&contents);
        // What this tab kept and what now stands on the page are two drafts: neither takes the other's place.
        let mut two = draft_saver::is_of_a_later_version(&contents);
        if !late {
            self.draw(contents, found);
        } else if let Some((desk, ..)) = self.desk.borrow().as_ref() {
            let found = found.filter(|_| !self.handed_over);
            two |= found.is_some() && !desk.is_untouched();
            desk.change_records(RecordsMsg::Synced(contents));
            if let Some(draft) = found {
                desk.send(Msg::DraftFound(Box::new(draft)));
            }
        }
        let Some((desk, draft_saver, log_saver)) = self.desk.borrow().clone() else { return };
        if let Some(trouble) = trouble {
            desk.send(Msg::Trouble(trouble));
        }
        if let Ok(store) = &store {
            follow_tabs(store, desk);
        }
        if two {
            draft_saver.take_a_new_name();
        }
        log_saver.use_store(store.clone());
        draft_saver.use_store(store);
    }

    /// Answers the order that a new desk begins with, if the desk is not drawn yet.
    fn answer_ahead(&self) {
        if let Some((options, queries, ..)) = self.parts.borrow().as_ref()
            && let Ok(order) = first_draft(options, queries, None).read()
        {
            drop(queries.answer(&order, &queries.library));
        }
    }

    /// Something happened to the store.
    fn hear(&self, trouble: Trouble) {
        match self.desk.borrow().as_ref() {
            Some((desk, ..)) => desk.send(Msg::Trouble(trouble)),
            None => *self.early.borrow_mut() = Some(trouble),
        }
    }

    /// Draws the desk, if that has not been done.
    fn draw(&self, contents: Contents, found: Option<Draft>) {
        let Some((options, queries, host, place)) = self.parts.take() else { return };
        let mut state = State::new(first_draft(&options, &queries, found));
        if let Some(screen) = host.address() {
            state.screen = screen;
        }
        state.trouble = self.early.take();
        let drawn = Rc::new(RefCell::new(None));
        let drawing = Rc::clone(&drawn);
        // The desk lives as long as the page; its owner is never disposed of.
        let handle = mount_to(place, move || {
            let standalone = host.standalone();
            let desk = Desk::new(state, queries, host.clone(), prefetch::prefetch);
            let draft_saver = DraftSaver::new(move |kept| desk.send(Msg::DraftSaved(kept)));
            let log_saver =
                LogSaver::new(move |changes, stored| desk.send(Msg::LogAppended(changes, stored)));
            desk.keep_with(draft_saver.clone(), log_saver.clone());
            follow(desk, host);
            let ships = desk.queries(|queries| Arc::clone(&queries.library));
            let (tablet, session) = (web_storage::tablet(store::NAME), web_storage::random());
            desk.change_records(RecordsMsg::Opened { ships, tablet, session, contents });
            desk.send(Msg::Start);
            drawing.replace(Some((desk, draft_saver, log_saver)));
            view::frame(desk, standalone)
        });
        handle.forget();
        if let Some((desk, ..)) = &*drawn.borrow() {
            desk.completes();
        }
        self.desk.replace(drawn.take());
    }
}

/// Reads on when another tab has stored something.
fn follow_tabs(store: &Store, desk: Desk) {
    let from = store.clone();
    store.on_news(move || {
        let from = from.clone();
        wasm_bindgen_futures::spawn_local(async move {
            // What cannot be read now is read with the next news.
            if let Ok(contents) = from.read_on().await
                && contents.lines().next().is_some()
            {
                desk.change_records(RecordsMsg::Synced(contents));
            }
        });
    });
}

/// The draft to start with: the order handed over, the kept one, or the first of the demo. It is shown as whoever works
/// here last read it, unless the page that holds the desk says otherwise.
fn first_draft(options: &MountOptions, queries: &CachedQueries, found: Option<Draft>) -> Draft {
    let device = web_sys::window().and_then(|window| window.navigator().language());
    let kept = found.as_ref().map(|draft| (draft.voice(), draft.theme));
    let language = options.language.or(kept.map(|(voice, _)| voice.language));
    let language = language.unwrap_or_else(|| language_of(&device.unwrap_or_default()));
    let units = options.units.or(kept.map(|(voice, _)| voice.units)).unwrap_or_default();
    let voice = Voice { language, units };
    let theme = options.theme.or(kept.map(|(_, theme)| theme));
    let mut draft = match &options.order {
        Some(order) => Draft::of(order, "", voice),
        None => found.unwrap_or_else(|| {
            let orders = &queries.room.orders;
            let first = orders.iter().find(|order| order.id == FIRST_ORDER).or(orders.first());
            first.map_or_else(
                || Draft::of(&Order::default(), "", voice),
                |order| Draft::of(&order.order, &cached_queries::title(order), voice),
            )
        }),
    };
    draft.theme = theme.unwrap_or(draft.theme);
    draft
}

/// Keeps the host in step with the state, and the state with the page's address.
fn follow(desk: Desk, host: Host) {
    let dress = desk.memo(|state| (state.draft.theme, state.draft.language));
    let dressed = host.clone();
    Effect::new(move |_| {
        let (theme, language) = dress.get();
        dressed.dress(theme, language);
    });
    if host.standalone() {
        window_event_listener(leptos::ev::hashchange, move |_| {
            let here = desk.with_untracked(|state| state.screen);
            if let Some(screen) = host.address().filter(|screen| *screen != here) {
                desk.send(Msg::Show(screen));
            }
        })
        .forget_on_page();
    }
}

/// Listeners on the window live as long as the page.
trait ForgetOnPage {
    fn forget_on_page(self);
}

impl ForgetOnPage for WindowListenerHandle {
    fn forget_on_page(self) {
        std::mem::forget(self);
    }
}

/// On a panic the page hears what happened; the draft was kept before it, so nothing is lost.
fn report_panics() {
    std::panic::set_hook(Box::new(|panic| {
        let init = CustomEventInit::new();
        init.set_detail(&JsValue::from_str(&panic.to_string()));
        let event = CustomEvent::new_with_event_init_dict("whitehold-failed", &init);
        if let (Some(window), Ok(event)) = (web_sys::window(), event) {
            let _ = window.dispatch_event(&event);
        }
    }));
}
