//! Pictures that are drawn anew as a whole, written as the inside of their `svg` element: far less wasm than a view of
//! every line. Only words of the house and numbers may be written; nothing that somebody typed.

use std::fmt::Write;

/// The inside of a picture as it is written.
#[derive(Default)]
pub struct SvgWriter(String);

impl SvgWriter {
    /// What was written.
    pub fn done(self) -> String {
        self.0
    }

    /// A bare piece of markup.
    #[inline(never)]
    pub fn raw(&mut self, markup: &str) {
        self.0.push_str(markup);
    }

    /// A path of a class.
    #[inline(never)]
    pub fn path(&mut self, class: &str, d: &str) {
        for part in ["<path class=\"", class, "\" d=\"", d, "\"/>"] {
            self.0.push_str(part);
        }
    }

    /// A path of a class in a true colour, as its line or as its fill.
    #[inline(never)]
    pub fn painted(&mut self, class: &str, what: &str, colour: &str, d: &str) {
        for part in ["<path class=\"", class, "\" ", what, "=\"", colour, "\" d=\"", d, "\"/>"] {
            self.0.push_str(part);
        }
    }

    /// Words at a place.
    #[inline(never)]
    pub fn text(&mut self, class: &str, x: f64, y: f64, words: &str) {
        let _ = write!(self.0, "<text class=\"{class}\" x=\"{x:.1}\" y=\"{y:.1}\">{words}</text>");
    }

    /// An open dot.
    #[inline(never)]
    pub fn dot(&mut self, x: f64, y: f64) {
        let _ = write!(self.0, "<circle class=\"dot-w\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"8\"/>");
    }

    /// A straight line from a place to another.
    #[inline(never)]
    pub fn line(&mut self, class: &str, from: [f64; 2], to: [f64; 2]) {
        let _ = write!(
            self.0,
            "<path class=\"{class}\" d=\"M{:.1} {:.1}L{:.1} {:.1}\"/>",
            from[0], from[1], to[0], to[1]
        );
    }
}
