//! The browser's side, compiled for wasm only: the JS API and the views of the page.
//!
//! In: calls of the page's script, events, stored data. Out: `mount`, the functions of [`api`], and the effects
//! that `desk::update` asks for. Must not know: how an answer is reached. Everything that decides is in the native
//! core; here are only the shadow root, the store, the effects, and views that show the state.

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

/// The order of the demo print room that the page opens with when no draft is saved.
const FIRST_ORDER: &str = "1187";

/// Memory that is asked for at once, bytes. Library and first answer take 2.4 MB (order 1187, measured in Node);
/// the page takes some more. Chosen from 3 to 8 MB.
const FIRST_MEMORY: usize = 6 << 20;

/// How long the page waits for its store before it is drawn without it: assumed. The store opens within milliseconds,
/// unless another tab holds it up; it is then taken into use later.
const PATIENCE: Duration = Duration::from_millis(1500);

/// The version of this build, as in `Cargo.toml`.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").into()
}

/// Options of [`mount`].
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

/// Draws the page into an open shadow root of the element.
///
/// # Errors
/// Throws an array of field errors if the options cannot be read, the browser's exception if the element already has a
/// shadow root or a style sheet is refused, and text if the library that ships cannot be read.
#[wasm_bindgen]
pub fn mount(element: HtmlElement, options: Option<types::JsMountOptions>) -> Result<(), JsValue> {
    // The first answer needs this much, and memory grows faster in one large step than in thirty small ones.
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
    // While the browser opens its store, the order that the page will most likely show is answered. If the store
    // holds another draft, the simulations of this one still serve.
    let idle = Rc::clone(&waiting);
    set_timeout(move || idle.answer_ahead(), Duration::ZERO);
    set_timeout(move || waiting.draw(Contents::default(), None), PATIENCE);
    Ok(())
}

/// A page that is drawn as soon as its store is open, or without it when that takes too long.
struct Start {
    /// Whether the embedding page handed an order over: then that one is shown.
    handed_over: bool,
    parts: RefCell<Option<(MountOptions, CachedQueries, Host, HtmlElement)>>,
    desk: RefCell<Option<(Desk, DraftSaver, LogSaver)>>,
    /// A problem of the store from before the page was drawn.
    early: RefCell<Option<Trouble>>,
}

impl Start {
    /// The store is open, or cannot be opened.
    fn opened(&self, contents: Contents, store: Result<Store, Trouble>, trouble: Option<Trouble>) {
        let late = self.parts.borrow().is_none();
        self.early.take();
        let found = draft_saver::draft(&contents);
        // The draft that this tab saved and the one on the page are two drafts: neither may overwrite the other.
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

    /// Answers the order that the page begins with, if it is not drawn yet.
    fn answer_ahead(&self) {
        if let Some((options, queries, ..)) = self.parts.borrow().as_ref()
            && let Ok(order) = first_draft(options, queries, None).read()
        {
            drop(queries.answer(&order, &queries.library));
        }
    }

    /// The store reports a problem.
    fn hear(&self, trouble: Trouble) {
        match self.desk.borrow().as_ref() {
            Some((desk, ..)) => desk.send(Msg::Trouble(trouble)),
            None => *self.early.borrow_mut() = Some(trouble),
        }
    }

    /// Draws the page, if that has not been done.
    fn draw(&self, contents: Contents, found: Option<Draft>) {
        let Some((options, queries, host, place)) = self.parts.take() else { return };
        let mut state = State::new(first_draft(&options, &queries, found));
        if let Some(screen) = host.address() {
            state.screen = screen;
        }
        state.trouble = self.early.take();
        let drawn = Rc::new(RefCell::new(None));
        let drawing = Rc::clone(&drawn);
        // The view lives as long as the document, so its owner is never disposed of.
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

/// Reads new lines when another tab has stored some.
fn follow_tabs(store: &Store, desk: Desk) {
    let from = store.clone();
    store.on_news(move || {
        let from = from.clone();
        wasm_bindgen_futures::spawn_local(async move {
            // What cannot be read now is read with the next notice.
            if let Ok(contents) = from.read_on().await
                && contents.lines().next().is_some()
            {
                desk.change_records(RecordsMsg::Synced(contents));
            }
        });
    });
}

/// The draft to start with: the order handed over, the saved one, or the first of the demo. Language, units and
/// theme are those of the saved draft, unless the options say otherwise.
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

/// Makes the host follow the state, and the state the page's address.
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

/// Keeps a listener on the window as long as the page.
trait ForgetOnPage {
    fn forget_on_page(self);
}

impl ForgetOnPage for WindowListenerHandle {
    fn forget_on_page(self) {
        std::mem::forget(self);
    }
}

/// Tells the page's script about a panic. The draft was saved before it, so nothing is lost.
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
