//! The cure window: its map, and the set point on it.

use super::{DeskPage, parts};
use anyhow::Result;
use serde_json::json;

/// The cure window.
#[derive(Clone, Copy, Debug)]
pub struct WindowPage<'a>(pub(super) &'a DeskPage);

impl<'a> WindowPage<'a> {
    elements! {
        /// All of the screen.
        all => WINDOW;
        /// What is said of the set point.
        says => SET_POINT_SAYS;
        /// The head of the screen where no window is open.
        head => WINDOW_HEAD;
        /// What would open a closed window.
        openings => OPENINGS;
        /// The regions of the map.
        regions => MAP_REGION;
    }

    /// Drags the set point to a place of the map: shares of its width and height from the upper left corner.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no map.
    pub async fn drag_set_point(self, across: f64, down: f64) -> Result<()> {
        let map = self.0.element(parts::MAP);
        map.scroll_to().await?;
        let [left, top, width, height] = self.0.element(parts::SET_POINT).bounds().await?;
        let (x, y) = (left + width / 2.0, top + height / 2.0);
        let [left, top, width, height] = map.bounds().await?;
        let (to_x, to_y) = (left + width * across, top + height * down);
        self.mouse("mousePressed", (x, y), 1).await?;
        for step in 1..=10 {
            let share = f64::from(step) / 10.0;
            self.mouse("mouseMoved", (x + (to_x - x) * share, y + (to_y - y) * share), 1).await?;
        }
        self.mouse("mouseReleased", (to_x, to_y), 0).await
    }

    async fn mouse(self, kind: &str, (x, y): (f64, f64), buttons: u32) -> Result<()> {
        let event =
            json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": buttons, "clickCount": 1 });
        self.0.session.devtools("Input.dispatchMouseEvent", event).await.map(drop)
    }
}
