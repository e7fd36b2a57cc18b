//! The sheet that is printed for the press.

use super::{DeskPage, parts};
use anyhow::{Context, Result};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;
use std::path::Path;

/// Draws the sheet's code on a canvas as a camera would see it, six pixels a module, and hands back a PNG in base64.
/// `arguments[1]` blots out the middle of it.
const PHOTOGRAPH: &str = "const code = find(arguments[0]);
    const [x, y, side] = code.getAttribute('viewBox').split(' ').map(Number);
    const scale = 6;
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = (side + 10) * scale;
    const brush = canvas.getContext('2d');
    brush.fillStyle = '#e8e6e0';
    brush.fillRect(0, 0, canvas.width, canvas.height);
    brush.translate(5 * scale, 5 * scale);
    brush.scale(scale, scale);
    brush.translate(-x, -y);
    brush.fillStyle = '#222';
    brush.fill(new Path2D(code.querySelector('path').getAttribute('d')));
    if (arguments[1]) { brush.fillStyle = '#777'; brush.fillRect(side / 5, side / 5, side / 2, side / 2); }
    return canvas.toDataURL('image/png').split(',')[1];";

/// The job sheet.
#[derive(Clone, Copy, Debug)]
pub struct JobSheetPage<'a>(pub(super) &'a DeskPage);

impl<'a> JobSheetPage<'a> {
    elements! {
        /// The paper.
        paper => PAPER;
        /// The order's name on it.
        title => PAPER_TITLE;
        /// Pieces, cloth, lot, due day.
        about => PAPER_ABOUT;
        /// The verdict on it.
        verdict => PAPER_VERDICT;
        /// The dryer's setting on it.
        setting => PAPER_SETTING;
        /// The days to look again.
        looks => PAPER_LOOKS;
        /// What is said where there is nothing to print.
        no_paper => NO_PAPER;
        /// What was read from a picture of a sheet.
        read_back => READ_BACK;
        /// Takes that away.
        read_back_seen => READ_BACK_SEEN;
    }

    /// A picture of the sheet's code as a camera would see it; `ruined` with its middle blotted out.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no code.
    pub async fn photograph(self, ruined: bool) -> Result<Vec<u8>> {
        let picture = self.0.element(parts::PAPER_CODE).run(PHOTOGRAPH, vec![json!(ruined)]).await?;
        Ok(STANDARD.decode(picture.as_str().context("no picture")?)?)
    }

    /// Opens a picture of a sheet.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the screen is another.
    pub async fn open_picture(self, file: &Path) -> Result<()> {
        self.0.element(parts::SHEET_PICTURE).choose_file(file).await
    }

    /// How many pages it is printed on, on paper of this size in inches.
    ///
    /// # Errors
    /// [`anyhow::Error`] if nothing is printed.
    pub async fn pages(self, (width, height): (f64, f64)) -> Result<usize> {
        let wish = json!({ "paperWidth": width, "paperHeight": height, "preferCSSPageSize": false,
            "marginTop": 0.433, "marginBottom": 0.433, "marginLeft": 0.472, "marginRight": 0.472 });
        let printed = self.0.session.devtools("Page.printToPDF", wish).await?;
        let pdf = STANDARD.decode(printed["data"].as_str().context("nothing was printed")?)?;
        let text = String::from_utf8_lossy(&pdf);
        Ok(text.matches("/Type /Page\n").count() + text.matches("/Type /Page ").count())
    }

    /// Its class and its height on the screen, for a message.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is no paper.
    pub async fn size(self) -> Result<String> {
        let size = "const paper = find(arguments[0]);
            return `${paper.className}, ${paper.offsetHeight} px high on the screen`;";
        let size = self.paper().run(size, vec![]).await?;
        Ok(size.as_str().unwrap_or_default().to_owned())
    }
}
