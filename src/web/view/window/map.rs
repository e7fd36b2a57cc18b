//! The window map on the screen: the picture, and over it the set point to drag.

use crate::desk::picture::map::{HEIGHT, MapGrid, WIDTH, WindowMap, drift_fits, window_map, word_width};
use crate::desk::{Field, Msg, State};
use crate::plan::DialSetting;
use crate::web::desk::Desk;
use crate::web::view::widgets::map_picture::{SCREEN, limit_words, map_picture, set_point_picture};
use crate::wording::{Label, Phrase, Quantity, Voice};
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, MouseEvent, PointerEvent};

/// The map with what its words need.
#[derive(Clone, PartialEq)]
struct ShownMap {
    map: WindowMap,
    grid: MapGrid,
    voice: Voice,
}

/// What the map is drawn from. It stays the same while the set point moves, so that the map is not drawn anew.
fn grid(state: &State) -> Option<MapGrid> {
    let setting = state.pick_or_closed().and_then(|pick| pick.setting);
    Some(MapGrid { setting, ..MapGrid::of(state.window.as_ref()?) })
}

/// Where the cross stands: what was asked for, or else what the window says.
fn set_point(state: &State) -> Option<DialSetting> {
    let stands = state.window.as_ref()?.setting.map(|setting| setting.dialled());
    state.point().ok().flatten().or(stands)
}

/// The figure.
pub fn map_view(desk: Desk) -> impl IntoView {
    let parts = desk.memo(|state| (grid(state), state.voice()));
    let shown = Memo::new(move |_| {
        let (grid, voice) = parts.get();
        let grid = grid?;
        let map = window_map(&grid, voice.units, &|topic| {
            word_width(voice.past_limit(topic), &limit_words(topic, &grid, voice))
        })?;
        Some(ShownMap { map, grid, voice })
    });
    move || shown.get().map(|shown| figure(desk, shown))
}

fn figure(desk: Desk, shown: ShownMap) -> impl IntoView {
    let inside = map_picture(&shown.map, &shown.grid, shown.voice, &SCREEN).into_string();
    let keys = keys(&shown);
    let title = title(desk, &shown);
    let picture: NodeRef<html::Div> = NodeRef::new();
    let drag = Drag::new(desk, picture, shown);
    view! {
        <div
            class="map"
            node_ref=picture
            on:pointermove=move |event| drag.follow(&event)
            on:pointerup=move |_| drag.end()
            on:pointercancel=move |_| drag.end()
        >
            <svg
                class="fig"
                id="map"
                viewBox=format!("0 0 {WIDTH} {HEIGHT}")
                role="img"
                aria-labelledby="map-title"
                on:click=move |event| drag.jump(&event)
            >
                <title id="map-title">{title}</title>
                <g inner_html=inside></g>
            </svg>
            // The cross has a picture of its own over the map: as it moves, the hatches under it are not painted
            // again.
            <svg class="fig over" viewBox=format!("0 0 {WIDTH} {HEIGHT}")>{cross(desk, drag)}</svg>
            {keys}
        </div>
    }
}

fn write(voice: Voice, at: DialSetting) -> String {
    voice.say(&Phrase::SetTo {
        air: voice.quantity(Quantity::Temperature, at.set_c),
        belt: voice.quantity(Quantity::Belt, at.belt_m_per_min),
    })
}

/// The map in words: where it works, and the set point.
fn title(desk: Desk, shown: &ShownMap) -> impl Fn() -> String + Send + 'static {
    let (voice, point) = (shown.voice, desk.memo(set_point));
    let works = shown.map.strip.map(|(cool, hot)| (write(voice, cool), write(voice, hot)));
    move || {
        let set = point.get().map(|point| write(voice, point)).unwrap_or_default();
        voice.say(&Phrase::MapTitle { works: works.clone(), set })
    }
}

/// The cross and the handle to drag it by.
fn cross(desk: Desk, drag: Drag) -> impl IntoView {
    let point = desk.memo(set_point);
    let drift = desk.memo(|state| state.window.as_ref().map(|window| window.drift));
    let drawn = move || {
        let (at, drift) = point.get().zip(drift.get())?;
        let set = drag.shown.with_value(|it| it.map.set_point(&drift, at, it.voice.units));
        Some(set_point_picture(&set, &SCREEN).into_string())
    };
    let voice = move || drag.shown.with_value(|it| it.voice);
    // Off the map where there is no set point.
    let place = move || {
        point.get().map_or((-99.0, -99.0), |at| drag.shown.with_value(|it| it.map.place(at, it.voice.units)))
    };
    view! {
        <g inner_html=move || drawn().unwrap_or_default()></g>
        <circle
            class="hit"
            id="set-point"
            tabindex="0"
            role="slider"
            aria-label=move || {
                let voice = voice();
                format!("{}. {}", voice.label(Label::SetPoint), voice.label(Label::HowToMove))
            }
            aria-valuetext=move || point.get().map(|point| write(voice(), point)).unwrap_or_default()
            aria-valuenow=move || point.get().map(|at| at.set_c.round().to_string())
            cx=move || place().0
            cy=move || place().1
            r="44"
            on:keydown=move |event| drag.key(&event)
            on:pointerdown=move |event| drag.begin(&event)
            on:click=move |event: MouseEvent| event.stop_propagation()
        ></circle>
    }
}

/// Moves the set point by pointer and keys.
#[derive(Clone, Copy)]
struct Drag {
    desk: Desk,
    picture: NodeRef<html::Div>,
    shown: StoredValue<ShownMap>,
    /// Whether the handle is held.
    held: StoredValue<bool>,
    /// Left, top and width of the map on the page. Asked once a drag, because asking lays the whole page out.
    frame: StoredValue<(f64, f64, f64)>,
}

impl Drag {
    fn new(desk: Desk, picture: NodeRef<html::Div>, shown: ShownMap) -> Self {
        let (held, frame) = (StoredValue::new(false), StoredValue::new((0.0, 0.0, WIDTH)));
        Self { desk, picture, shown: StoredValue::new(shown), held, frame }
    }

    fn measure(self) {
        if let Some(place) = self.picture.get_untracked() {
            let at = place.get_bounding_client_rect();
            self.frame.set_value((at.left(), at.top(), at.width()));
        }
    }

    fn move_to(self, event: &MouseEvent) {
        let (left, top, width) = self.frame.get_value();
        let scale = WIDTH / width.max(1.0);
        let x = (f64::from(event.client_x()) - left) * scale;
        let y = (f64::from(event.client_y()) - top) * scale;
        let at = self.shown.with_value(|it| it.map.setting((x, y), it.voice.units));
        self.desk.send(Msg::Point(at));
    }

    fn begin(self, event: &PointerEvent) {
        self.measure();
        self.held.set_value(true);
        self.desk.send(Msg::Done);
        if let Some(target) = event.target().and_then(|it| it.dyn_into::<Element>().ok()) {
            let _ = target.set_pointer_capture(event.pointer_id());
        }
    }

    fn follow(self, event: &PointerEvent) {
        if self.held.get_value() {
            self.move_to(event);
        }
    }

    fn end(self) {
        self.held.set_value(false);
        self.desk.send(Msg::Done);
    }

    /// A tap beside the handle: the set point goes there.
    fn jump(self, event: &MouseEvent) {
        self.measure();
        self.move_to(event);
        self.desk.send(Msg::Done);
    }

    fn key(self, event: &KeyboardEvent) {
        let (field, taps) = match event.key().as_str() {
            "ArrowUp" => (Field::SetTemperature, 1),
            "ArrowDown" => (Field::SetTemperature, -1),
            "ArrowRight" => (Field::Belt, 1),
            "ArrowLeft" => (Field::Belt, -1),
            "Escape" => return self.desk.send(Msg::BestPoint),
            _ => return,
        };
        event.prevent_default();
        self.desk.send(Msg::Step(field, taps));
    }
}

/// Regions whose words do not fit inside, or not with their limit, are named under the map.
fn keys(shown: &ShownMap) -> impl IntoView + use<> {
    let ShownMap { map, grid, voice } = shown;
    let rows: Vec<_> = map
        .areas
        .iter()
        .filter(|area| (area.word.is_none() || area.small) && !area.region.is_empty())
        .map(|area| {
            let ink = area.ink.name();
            view! {
                <li>
                    <svg viewBox="0 0 24 24" aria-hidden="true">
                        <rect class=format!("w-{ink}") width="24" height="24"></rect>
                        <rect fill=format!("url(#h-{ink})") width="24" height="24"></rect>
                    </svg>
                    <b>{voice.past_limit(area.topic)}</b>
                    <span>{limit_words(area.topic, grid, *voice)}</span>
                </li>
            }
        })
        .collect();
    (!rows.is_empty()).then(|| view! { <ul class="map-key">{rows}</ul> })
}

/// The sentence under the map.
pub fn caption(desk: Desk) -> impl IntoView {
    let parts = desk.memo(|state| {
        let window = state.window.as_ref()?;
        let voice = state.voice();
        let at = set_point(state)?;
        Some(voice.say(&Phrase::MapCaption {
            heat: voice.quantity(Quantity::TemperatureDifference, window.drift.set_k),
            belt: voice.belt_difference(window.drift.belt_m_per_min),
            fits: drift_fits(window, at),
        }))
    });
    view! {
        <p class="cap">
            {move || parts.get().unwrap_or_else(|| desk.label(Label::ClosedFigure).into())}
        </p>
    }
}
