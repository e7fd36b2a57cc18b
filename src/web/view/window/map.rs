//! The window map: failing regions hatched and named, the clear strip, the set point to drag.

use crate::desk::picture::Ink;
use crate::desk::picture::map::{HEIGHT, WIDTH, WindowMap, drift_fits, window_map, word_width};
use crate::desk::{Field, Msg, State};
use crate::plan::{Curve, DialSetting, Drift, Side, WindowReport};
use crate::web::desk::Desk;
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice};
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{KeyboardEvent, MouseEvent, PointerEvent};

/// The map with what its words need.
#[derive(Clone, PartialEq)]
struct Shown {
    map: WindowMap,
    grid: WindowReport,
    voice: Voice,
}

/// The grid without what changes as the set point moves, so that the map is drawn anew only with its walls.
fn grid(state: &State) -> Option<WindowReport> {
    let window = state.window.as_ref()?;
    let curve = Curve {
        seconds: Vec::new(),
        film_top_c: Vec::new(),
        film_bottom_c: Vec::new(),
        cloth_c: Vec::new(),
        fused: Vec::new(),
        water_percent: Vec::new(),
        leaves_s: 0.0,
    };
    let room = crate::plan::Clearance::NONE;
    let setting = state.way().and_then(|pick| pick.setting);
    Some(WindowReport {
        set_c: window.set_c.clone(),
        belt_m_per_min: window.belt_m_per_min.clone(),
        walls: window.walls.clone(),
        setting,
        drift: Drift { set_k: 0.0, belt_m_per_min: 0.0 },
        room,
        margins: Vec::new(),
        curve,
        fail_later: crate::quantity::Band::exact(0.0),
        verdict: crate::plan::Verdict::Go,
    })
}

/// Where the cross stands: what was asked for at once, or where the window says.
fn cross(state: &State) -> Option<DialSetting> {
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
        Some(Shown { map, grid, voice })
    });
    move || shown.get().map(|shown| drawn(desk, shown))
}

fn drawn(desk: Desk, shown: Shown) -> impl IntoView {
    let Shown { map, grid, voice } = shown;
    let point = desk.memo(cross);
    let (held, shape) = (StoredValue::new((map.clone(), voice.units)), map.clone());
    let picture: NodeRef<html::Div> = NodeRef::new();
    let dragging = StoredValue::new(false);
    // Where the map stands is asked once a drag: asking lays the whole page out.
    let frame = StoredValue::new((0.0, 0.0, WIDTH));
    let look = move || {
        if let Some(place) = picture.get_untracked() {
            let at = place.get_bounding_client_rect();
            frame.set_value((at.left(), at.top(), at.width()));
        }
    };
    let move_to = move |x: f64, y: f64| {
        let (left, top, width) = frame.get_value();
        let scale = WIDTH / width.max(1.0);
        let (set_c, belt_m_per_min) =
            held.with_value(|(map, units)| map.setting(((x - left) * scale, (y - top) * scale), *units));
        desk.send(Msg::Point(DialSetting { set_c, belt_m_per_min }));
    };
    let key = move |event: KeyboardEvent| {
        let (field, taps) = match event.key().as_str() {
            "ArrowUp" => (Field::SetTemperature, 1),
            "ArrowDown" => (Field::SetTemperature, -1),
            "ArrowRight" => (Field::Belt, 1),
            "ArrowLeft" => (Field::Belt, -1),
            "Escape" => return desk.send(Msg::BestPoint),
            _ => return,
        };
        event.prevent_default();
        desk.send(Msg::Step(field, taps));
    };
    let drift = desk.memo(|state| state.window.as_ref().map(|window| window.drift));
    let set = move || {
        let at = point.get()?;
        Some(shape.set_point(&drift.get()?, at.set_c, at.belt_m_per_min, voice.units))
    };
    let write = move |point: Option<DialSetting>| {
        point.map_or_else(String::new, |DialSetting { set_c, belt_m_per_min: belt }| {
            voice.say(&Phrase::SetTo {
                air: voice.quantity(Quantity::Temperature, set_c),
                belt: voice.quantity(Quantity::Belt, belt),
            })
        })
    };
    let strip = map.strip.map(|(cool, hot)| {
        let dialled = |(set_c, belt_m_per_min)| Some(DialSetting { set_c, belt_m_per_min });
        (write(dialled(cool)), write(dialled(hot)))
    });
    let title = move || voice.say(&Phrase::MapTitle { works: strip.clone(), set: write(point.get()) });
    let clear = (map.belt.start, map.heat.end, map.belt.end - map.belt.start, map.heat.start - map.heat.end);
    view! {
        <div
            class="map"
            node_ref=picture
            on:pointermove=move |event: PointerEvent| {
                if dragging.get_value() {
                    move_to(f64::from(event.client_x()), f64::from(event.client_y()));
                }
            }
            on:pointerup=move |_| {
                dragging.set_value(false);
                desk.send(Msg::Done);
            }
            on:pointercancel=move |_| {
                dragging.set_value(false);
                desk.send(Msg::Done);
            }
        >
            <svg
                class="fig"
                id="map"
                viewBox=format!("0 0 {WIDTH} {HEIGHT}")
                role="img"
                aria-labelledby="map-title"
                on:click=move |event: MouseEvent| {
                    look();
                    move_to(f64::from(event.client_x()), f64::from(event.client_y()));
                    desk.send(Msg::Done);
                }
            >
                <title id="map-title">{title}</title>
                <clipPath id="map-clip">
                    <rect x=clear.0 y=clear.1 width=clear.2 height=clear.3></rect>
                </clipPath>
                <rect class="f-sheet" x=clear.0 y=clear.1 width=clear.2 height=clear.3></rect>
                <g clip-path="url(#map-clip)">
                    <path class="f-grid" d=grid_lines(&map)></path>
                    {regions(&map)}
                </g>
                {words(&map, &grid, voice)}
                {axes(&map, voice)}
            </svg>
            // The cross has a picture of its own over the map: as it moves, the hatches under it are not painted again.
            <svg class="fig over" viewBox=format!("0 0 {WIDTH} {HEIGHT}")>
                {move || set().map(|set| {
                    let (w, h) = set.half;
                    let frame = format!("M{:.1} {:.1}h{:.1}v{:.1}h{:.1}z", -w, -h, 2.0 * w, 2.0 * h, -2.0 * w);
                    // The arms start outside the box, however large it is.
                    let (a, b) = (w.max(12.0) + 6.0, h.max(12.0) + 6.0);
                    let arms = format!(
                        "M0 {:.1}V{:.1}M0 {b:.1}V{:.1}M{:.1} 0H{:.1}M{a:.1} 0H{:.1}",
                        -b - 28.0, -b, b + 28.0, -a - 32.0, -a, a + 32.0,
                    );
                    view! {
                        <g transform=format!("translate({:.1} {:.1})", set.middle.0, set.middle.1)>
                            <path class="rect-back" d=frame.clone()></path>
                            <path class="rect-margin" d=frame></path>
                            <path class="point-halo" d=arms.clone()></path>
                            <path class="point" d=arms></path>
                            <circle class="point-core" r="6"></circle>
                        </g>
                    }
                })}
                <circle
                    class="hit"
                    id="set-point"
                    tabindex="0"
                    role="slider"
                    aria-label=move || format!("{}. {}", voice.label(Label::SetPoint), voice.label(Label::HowToMove))
                    aria-valuetext=move || write(point.get())
                    aria-valuenow=move || point.get().map(|at| at.set_c.round().to_string())
                    cx=move || held.with_value(|(map, units)| point.get().map_or(-99.0, |at| map.place(at.set_c, at.belt_m_per_min, *units).0))
                    cy=move || held.with_value(|(map, units)| point.get().map_or(-99.0, |at| map.place(at.set_c, at.belt_m_per_min, *units).1))
                    r="44"
                    on:keydown=key
                    on:pointerdown=move |event: PointerEvent| {
                        look();
                        dragging.set_value(true);
                        desk.send(Msg::Done);
                        let target = event.target().and_then(|it| it.dyn_into::<web_sys::Element>().ok());
                        if let Some(target) = target {
                            let _ = target.set_pointer_capture(event.pointer_id());
                        }
                    }
                    on:click=move |event: MouseEvent| event.stop_propagation()
                ></circle>
            </svg>
            {keys(&map, &grid, voice)}
        </div>
    }
}

fn grid_lines(map: &WindowMap) -> String {
    let along = map.belt_ticks.iter().map(|(x, _)| format!("M{x:.1} {}V{}", map.heat.end, map.heat.start));
    let up = map.heat_ticks.iter().map(|(y, _)| format!("M{} {y:.1}H{}", map.belt.start, map.belt.end));
    along.chain(up).collect()
}

fn regions(map: &WindowMap) -> impl IntoView + use<> {
    let washes = map
        .areas
        .iter()
        .filter(|area| area.ink != Ink::Cloth)
        .map(|area| view! { <path class=format!("w-{}", area.ink.name()) d=area.region.clone()></path> })
        .collect_view();
    let hatches = map
        .areas
        .iter()
        .map(|area| view! { <path fill=format!("url(#h-{})", area.ink.name()) d=area.region.clone()></path> })
        .collect_view();
    let walls = map
        .areas
        .iter()
        .map(|area| view! { <path class=format!("f-{}", area.ink.name()) d=area.wall.clone()></path> })
        .collect_view();
    view! { {washes}{hatches}{walls} }
}

/// What is past its limit, said small under its word.
fn limit_words(topic: crate::plan::Topic, grid: &WindowReport, voice: Voice) -> String {
    let Some(wall) = grid.walls.iter().find(|wall| wall.what == topic) else { return String::new() };
    let as_margin = crate::plan::Margin {
        what: wall.what,
        limit: wall.limit,
        value: crate::quantity::Band::exact(wall.limit),
        needed: wall.needed,
        unit: wall.unit.clone(),
    };
    let value = voice.margin(&as_margin, wall.limit);
    let what = match topic {
        crate::plan::Topic::Fusion => voice.label(Label::UndersideWord).to_owned(),
        _ if wall.unit == "°C" => String::new(),
        topic => voice.topic(topic).to_lowercase(),
    };
    let limit = match wall.needed {
        Side::AtLeast => voice.say(&Phrase::UnderLimit { value }),
        Side::AtMost => voice.say(&Phrase::OverLimit { value }),
    };
    format!("{what} {limit}").trim().to_owned()
}

fn words(map: &WindowMap, grid: &WindowReport, voice: Voice) -> impl IntoView + use<> {
    let failing = map
        .areas
        .iter()
        .filter_map(|area| {
            let (x, y) = area.word?;
            let word = voice.past_limit(area.topic);
            let (class, word) = if area.small {
                ("t-halo t-b", word.to_owned())
            } else {
                ("t-halo t-xl", word.to_uppercase())
            };
            let limit = (!area.small).then(|| limit_words(area.topic, grid, voice));
            Some(view! {
                <text class=class x=x y=y>{word}</text>
                <text class="t-halo" x=x y=y + 27.0>{limit}</text>
            })
        })
        .collect_view();
    let works = map.works.map(|((x, y), turn)| {
        let place = format!("translate({x:.1} {y:.1}) rotate({turn:.0})");
        view! { <text class="t-halo t-xl t-m" transform=place>{voice.label(Label::Works).to_uppercase()}</text> }
    });
    view! { {failing}{works} }
}

/// Regions whose words do not fit inside, or not with their limit, stand under the map.
fn keys(map: &WindowMap, grid: &WindowReport, voice: Voice) -> impl IntoView + use<> {
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
                    <span>{limit_words(area.topic, grid, voice)}</span>
                </li>
            }
        })
        .collect();
    (!rows.is_empty()).then(|| view! { <ul class="map-key">{rows}</ul> })
}

fn axes(map: &WindowMap, voice: Voice) -> impl IntoView + use<> {
    let (left, right, bottom, top) = (map.belt.start, map.belt.end, map.heat.start, map.heat.end);
    let numeral = Numeral(voice.language);
    let along = map
        .belt_ticks
        .iter()
        .map(|(x, value)| {
            view! {
                <path class="f-axis" d=format!("M{x:.1} {bottom}v8")></path>
                <text class="t-m" x=*x y=bottom + 26.0>{numeral.fixed(*value, map.belt_decimals)}</text>
            }
        })
        .collect_view();
    let up = map
        .heat_ticks
        .iter()
        .map(|(y, value)| {
            view! {
                <path class="f-axis" d=format!("M{left} {y:.1}h-8")></path>
                <text class="t-e" x=left - 13.0 y=y + 6.0>{numeral.fixed(*value, 0)}</text>
            }
        })
        .collect_view();
    let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
    let heat = format!("{}, {} ↑", voice.label(Label::AirAxis), unit(Quantity::Temperature));
    let belt = format!(
        "{}, {} → {}",
        voice.label(Label::Belt).to_lowercase(),
        unit(Quantity::Belt),
        voice.label(Label::BeltAxis),
    );
    view! {
        <path class="f-axis" d=format!("M{left} {top}V{bottom}H{right}")></path>
        {along}
        {up}
        <text class="t-b t-e" x=right y=HEIGHT - 12.0>{belt}</text>
        <text class="t-b" x="0" y=HEIGHT - 12.0>{heat}</text>
    }
}

/// The sentence under the map.
pub fn caption(desk: Desk) -> impl IntoView {
    let parts = desk.memo(|state| {
        let window = state.window.as_ref()?;
        let voice = state.voice();
        let DialSetting { set_c, belt_m_per_min: belt } = cross(state)?;
        Some(voice.say(&Phrase::MapCaption {
            heat: voice.quantity(Quantity::TemperatureDifference, window.drift.set_k),
            belt: voice.belt_difference(window.drift.belt_m_per_min),
            fits: drift_fits(window, set_c, belt),
        }))
    });
    view! {
        <p class="cap">
            {move || parts.get().unwrap_or_else(|| desk.label(Label::ClosedFigure).into())}
        </p>
    }
}
