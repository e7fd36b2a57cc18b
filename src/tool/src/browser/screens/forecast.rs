//! How the white ages.

use super::{DeskPage, parts};
use anyhow::Result;
use serde_json::json;

/// The forecast.
#[derive(Clone, Copy, Debug)]
pub struct ForecastPage<'a>(pub(super) &'a DeskPage);

impl<'a> ForecastPage<'a> {
    elements! {
        /// The pictures and what is said beside them.
        all => FORECAST;
        /// What is said of the set point.
        says => SET_POINT_SAYS;
        /// What the band leaves out.
        aged => AGED;
        /// When to look at the prints again.
        looks => LOOKS;
        /// Opens the figures behind the pictures.
        show_figures => FIGURES_FOLD;
        /// The figures behind the pictures.
        figures => FIGURES;
        /// What is said where there is no forecast.
        nothing => NO_FORECAST;
    }

    /// Moves the slider of the set temperature up, a degree at a time, and lets it go.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no slider.
    pub async fn slide_up(self, degrees: u32) -> Result<()> {
        let slide = "const slide = find(arguments[0]);
            for (let step = 0; step < arguments[1]; step += 1) write(slide, Number(slide.value) + 1);
            slide.dispatchEvent(new Event('change', { bubbles: true }));";
        self.0.element(parts::HEAT_SLIDER).run(slide, vec![json!(degrees)]).await.map(drop)
    }
}
