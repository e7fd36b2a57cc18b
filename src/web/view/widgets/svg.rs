//! Pictures that are drawn anew as a whole, written as the inside of their `svg` element: far less wasm than a Leptos
//! view of every line.

use maud::{Markup, PreEscaped, html};
use std::fmt::Display;

/// The inside of a picture as it is written.
#[derive(Default)]
pub struct SvgWriter(String);

impl SvgWriter {
    /// What was written.
    pub fn done(self) -> Markup {
        PreEscaped(self.0)
    }

    /// A piece of markup.
    #[inline(never)]
    pub fn add(&mut self, markup: &Markup) {
        self.0.push_str(&markup.0);
    }

    /// A path of a class.
    #[inline(never)]
    pub fn path(&mut self, class: &str, d: &str) {
        self.add(&html! { path class=(class) d=(d) {} });
    }

    /// A path of a class whose line has a true colour.
    #[inline(never)]
    pub fn stroked(&mut self, class: &str, colour: &str, d: &str) {
        self.add(&html! { path class=(class) stroke=(colour) d=(d) {} });
    }

    /// A path filled with a true colour or a hatch.
    #[inline(never)]
    pub fn filled(&mut self, fill: &str, d: &str) {
        self.add(&html! { path fill=(fill) d=(d) {} });
    }

    /// Words at a place.
    #[inline(never)]
    pub fn text(&mut self, class: &str, x: f64, y: f64, words: &str) {
        self.add(&html! { text class=(class) x=(tenths(x)) y=(tenths(y)) { (words) } });
    }

    /// An open dot.
    #[inline(never)]
    pub fn dot(&mut self, x: f64, y: f64) {
        self.add(&html! { circle class="dot-w" cx=(tenths(x)) cy=(tenths(y)) r="8" {} });
    }

    /// A straight line from a place to another.
    #[inline(never)]
    pub fn line(&mut self, class: &str, from: [f64; 2], to: [f64; 2]) {
        let [[x, y], [to_x, to_y]] = [from, to];
        self.path(class, &format!("M{x:.1} {y:.1}L{to_x:.1} {to_y:.1}"));
    }
}

/// A length in tenths of the view box's unit: finer is not seen.
pub fn tenths(length: f64) -> impl Display {
    std::fmt::from_fn(move |f| write!(f, "{length:.1}"))
}
