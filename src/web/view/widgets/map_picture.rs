//! The window map as a picture: drawn the same on the screen and on paper, apart from what [`MapStyle`] says.

use super::svg::{SvgWriter, tenths};
use crate::desk::picture::Ink;
use crate::desk::picture::map::{HEIGHT, MapGrid, SetPointMark, WindowMap};
use crate::plan::{Margin, Side, Topic, Unit};
use crate::quantity::Band;
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice};
use maud::{Markup, html};

/// How a map on the screen differs from one on paper.
pub struct MapStyle {
    /// How the ids of its hatches begin.
    hatches: &'static str,
    /// Id of the shape that cuts its regions off.
    clip: &'static str,
    /// Whether it is for the screen: with grid lines, the limit under each word, arrows on the axes.
    full: bool,
    /// Every how many ticks one is written.
    every: usize,
    /// How far under its axis a tick is written, and how far left of and under the tick of the other one.
    under: f64,
    beside: [f64; 2],
    /// How far above the foot the axes are named.
    foot: f64,
    /// Decimals of the places of words.
    decimals: usize,
    /// Radius of the set point.
    core: u32,
}

/// On the screen; its hatches are those of the page.
pub const SCREEN: MapStyle = MapStyle {
    hatches: "h",
    clip: "map-clip",
    full: true,
    every: 1,
    under: 26.0,
    beside: [13.0, 6.0],
    foot: 12.0,
    decimals: 1,
    core: 6,
};

/// On paper: larger letters, fewer ticks, and hatches of its own, because those of the screen have the screen's
/// colours.
pub const PAPER: MapStyle = MapStyle {
    hatches: "paper",
    clip: "paper-clip",
    full: false,
    every: 2,
    under: 32.0,
    beside: [12.0, 9.0],
    foot: 6.0,
    decimals: 0,
    core: 7,
};

impl MapStyle {
    fn hatch(&self, ink: Ink) -> String {
        format!("url(#{}-{})", self.hatches, ink.name())
    }
}

/// The map without its set point, as the inside of an `svg` element.
pub fn map_picture(map: &WindowMap, grid: &MapGrid, voice: Voice, style: &MapStyle) -> Markup {
    let mut pen = SvgWriter::default();
    frame(&mut pen, map, style);
    words(&mut pen, map, grid, voice, style);
    axes(&mut pen, map, voice, style);
    pen.done()
}

/// The sheet with its regions, cut off at its edges.
fn frame(pen: &mut SvgWriter, map: &WindowMap, style: &MapStyle) {
    let (left, top) = (map.belt.start, map.heat.end);
    let (wide, high) = (map.belt.end - left, map.heat.start - top);
    let mut inside = SvgWriter::default();
    if style.full {
        inside.path("f-grid", &grid_lines(map));
    }
    regions(&mut inside, map, style);
    pen.add(&html! {
        clipPath id=(style.clip) { rect x=(left) y=(top) width=(wide) height=(high) {} }
        rect class="f-sheet" x=(left) y=(top) width=(wide) height=(high) {}
        g clip-path={ "url(#" (style.clip) ")" } { (inside.done()) }
    });
}

fn grid_lines(map: &WindowMap) -> String {
    let along = map.belt_ticks.iter().map(|(x, _)| format!("M{x:.1} {}V{}", map.heat.end, map.heat.start));
    let up = map.heat_ticks.iter().map(|(y, _)| format!("M{} {y:.1}H{}", map.belt.start, map.belt.end));
    along.chain(up).collect()
}

/// Washes under hatches under walls: on the screen of all regions together, on paper of one region after another.
fn regions(pen: &mut SvgWriter, map: &WindowMap, style: &MapStyle) {
    let together = if style.full { map.areas.len() } else { 1 };
    for areas in map.areas.chunks(together.max(1)) {
        for area in areas.iter().filter(|area| area.ink != Ink::Cloth) {
            pen.path(&format!("w-{}", area.ink.name()), &area.region);
        }
        for area in areas {
            pen.filled(&style.hatch(area.ink), &area.region);
        }
        for area in areas {
            pen.path(&format!("f-{}", area.ink.name()), &area.wall);
        }
    }
}

/// What is past its limit, said small under its word.
pub fn limit_words(topic: Topic, grid: &MapGrid, voice: Voice) -> String {
    let Some(wall) = grid.walls.iter().find(|wall| wall.what == topic) else { return String::new() };
    let as_margin = Margin {
        what: wall.what,
        limit: wall.limit,
        value: Band::exact(wall.limit),
        needed: wall.needed,
        unit: wall.unit,
    };
    let value = voice.margin(&as_margin, wall.limit);
    let what = match topic {
        Topic::Fusion => voice.label(Label::UndersideWord).to_owned(),
        _ if wall.unit == Unit::Celsius => String::new(),
        topic => voice.topic(topic).to_lowercase(),
    };
    let limit = match wall.needed {
        Side::AtLeast => voice.say(&Phrase::UnderLimit { value }),
        Side::AtMost => voice.say(&Phrase::OverLimit { value }),
    };
    format!("{what} {limit}").trim().to_owned()
}

fn words(pen: &mut SvgWriter, map: &WindowMap, grid: &MapGrid, voice: Voice, style: &MapStyle) {
    let round = |length: f64| format!("{length:.0$}", style.decimals);
    for area in &map.areas {
        let Some((x, y)) = area.word else { continue };
        let word = voice.past_limit(area.topic);
        let (class, word) =
            if area.small { ("t-halo t-b", word.to_owned()) } else { ("t-halo t-xl", word.to_uppercase()) };
        pen.add(&html! { text class=(class) x=(round(x)) y=(round(y)) { (word) } });
        if style.full && !area.small {
            pen.text("t-halo", x, y + 27.0, &limit_words(area.topic, grid, voice));
        }
    }
    if let Some(((x, y), turn)) = map.works {
        let place = format!("translate({} {}) rotate({turn:.0})", round(x), round(y));
        let word = voice.label(Label::Works).to_uppercase();
        pen.add(&html! { text class="t-halo t-xl t-m" transform=(place) { (word) } });
    }
}

fn axes(pen: &mut SvgWriter, map: &WindowMap, voice: Voice, style: &MapStyle) {
    let (left, right, bottom, top) = (map.belt.start, map.belt.end, map.heat.start, map.heat.end);
    let numeral = Numeral(voice.language);
    pen.path("f-axis", &format!("M{left} {top}V{bottom}H{right}"));
    for (x, value) in map.belt_ticks.iter().step_by(style.every) {
        pen.path("f-axis", &format!("M{x:.1} {bottom}v8"));
        pen.text("t-m", *x, bottom + style.under, &numeral.fixed(*value, map.belt_decimals));
    }
    let [beside, down] = style.beside;
    for (y, value) in map.heat_ticks.iter().step_by(style.every) {
        pen.path("f-axis", &format!("M{left} {y:.1}h-8"));
        pen.text("t-e", left - beside, y + down, &numeral.fixed(*value, 0));
    }
    let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
    let mut belt = format!("{}, {}", voice.label(Label::Belt).to_lowercase(), unit(Quantity::Belt));
    let mut heat = format!("{}, {}", voice.label(Label::SetTemperatureAxis), unit(Quantity::Temperature));
    if style.full {
        belt = format!("{belt} → {}", voice.label(Label::BeltAxis));
        heat += " ↑";
    }
    pen.text("t-b t-e", right, HEIGHT - style.foot, &belt);
    pen.text("t-b", 0.0, HEIGHT - style.foot, &heat);
}

/// The set point: a cross in the box of how far the dryer wanders.
pub fn set_point_picture(set: &SetPointMark, style: &MapStyle) -> Markup {
    let ((x, y), (w, h)) = (set.middle, set.half);
    let frame = format!("M{:.1} {:.1}h{:.1}v{:.1}h{:.1}z", -w, -h, 2.0 * w, 2.0 * h, -2.0 * w);
    // The arms start outside the box, however large it is.
    let (a, b) = (w.max(12.0) + 6.0, h.max(12.0) + 6.0);
    let arms = format!(
        "M0 {:.1}V{:.1}M0 {b:.1}V{:.1}M{:.1} 0H{:.1}M{a:.1} 0H{:.1}",
        -b - 28.0,
        -b,
        b + 28.0,
        -a - 32.0,
        -a,
        a + 32.0,
    );
    html! {
        g transform={ "translate(" (tenths(x)) " " (tenths(y)) ")" } {
            @if style.full { path class="rect-back" d=(frame) {} }
            path class="rect-margin" d=(frame) {}
            @if style.full { path class="point-halo" d=(arms) {} }
            path class="point" d=(arms) {}
            circle class="point-core" r=(style.core) {}
        }
    }
}
