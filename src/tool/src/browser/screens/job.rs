//! The order: its form and its answer.

use super::{DeskPage, TradeOffFigure, parts};
use anyhow::Result;
use serde_json::json;

/// The order and its answer.
#[derive(Clone, Copy, Debug)]
pub struct JobPage<'a>(pub(super) &'a DeskPage);

impl<'a> JobPage<'a> {
    elements! {
        /// All of the form.
        form => ORDER;
        /// The garment's label.
        label => LABEL;
        /// What is wrong with the label.
        label_error => LABEL_ERROR;
        /// What was read from the label.
        understood => UNDERSTOOD;
        /// The garment's dye lot.
        lot => LOT;
        /// The order's name.
        name => ORDER_NAME;
        /// What matters most: one button each.
        priorities => PRIORITY;
        /// Adds a garment to the order.
        add_garment => ADD_GARMENT;
        /// The colour meter: its file, or what is wrong with it.
        meter => METER;
        /// Where a meter's file is chosen.
        meter_file => METER_FILE;
        /// The samples of the meter's file.
        meter_samples => METER_SAMPLE;
        /// That label and colour field name two colours.
        colour_clash => COLOUR_CLASH;
        /// Takes the colour of the label.
        take_colour_of_label => TAKE_COLOUR;
        /// The fold of what is rarely needed of the garment.
        more_of_garment => MORE_OF_GARMENT;
        /// What lies under the print: one button each.
        under_print => UNDER_PRINT;
        /// A field for a number that is in a fold.
        folded_number => FOLDED_NUMBER;
        /// Keeps the order in the Library.
        keep => KEEP_ORDER;
        /// Whether the order is kept as it is.
        is_kept => ORDER_IS_KEPT;
        /// The demo's orders of the week.
        week_orders => WEEK_ORDER;
        /// The verdict in words.
        verdict => VERDICT;
        /// The sentence under the verdict.
        verdict_says => VERDICT_SAYS;
        /// The plate of a refused order.
        refusal => REFUSAL;
        /// Leads to the cure window.
        show_window => SHOW_WINDOW;
        /// The white and the dryer's figures.
        facts => FACTS;
        /// The white.
        white => WHITE;
        /// The temperature that the dryer is set to.
        set_temperature => SET_TEMPERATURE;
        /// The reasons.
        why => WHY;
        /// That the form cannot be read, and whose answer is shown.
        stale => STALE;
        /// Leads back to the order that is answered.
        back_to_answered => BACK_TO_READABLE;
        /// One plan for every garment of the order.
        garment_plans => GARMENT_PLANS;
        /// Their rows.
        garment_plan_rows => GARMENT_PLAN_ROWS;
    }

    /// What is given up for what.
    #[must_use]
    pub fn trade_off(self) -> TradeOffFigure<'a> {
        TradeOffFigure(self.0)
    }

    /// Opens the week's list and taps the order whose title begins so.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is none.
    pub async fn open_week_order(self, title: &str) -> Result<()> {
        self.open_week().await?;
        self.week_orders().named(title).tap().await
    }

    /// Opens the week's list.
    ///
    /// # Errors
    /// [`anyhow::Error`] if there is none.
    pub async fn open_week(self) -> Result<()> {
        self.0.element(parts::WEEK_FOLD).unfold().await
    }

    /// The order's name as it stands in the form.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the form is not there.
    pub async fn order_name(self) -> Result<String> {
        let name = self.0.run("await appears(PARTS.orderName); return orderName();", vec![]).await?;
        Ok(name.as_str().unwrap_or_default().to_owned())
    }

    /// Names the order, which is the shortest thing to write that is saved.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the form is not there.
    pub async fn name_order(self, name: &str) -> Result<()> {
        self.0
            .run("await appears(PARTS.orderName); nameOrder(arguments[0]);", vec![json!(name)])
            .await
            .map(drop)
    }

    /// Names the order and waits until the disk has acknowledged it.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the form is not there.
    pub async fn save_order_named(self, name: &str) -> Result<()> {
        self.name_order(name).await?;
        self.0.run("await saved()", vec![]).await.map(drop)
    }
}
