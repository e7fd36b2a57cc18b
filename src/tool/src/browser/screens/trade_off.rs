//! What is given up for what: the picture of the recipes, and the sentence and the table beside it.

use super::DeskPage;

/// The picture of the recipes between two scales.
#[derive(Clone, Copy, Debug)]
pub struct TradeOffFigure<'a>(pub(super) &'a DeskPage);

impl<'a> TradeOffFigure<'a> {
    elements! {
        /// Its title, with how many recipes there are.
        head => TRADE_HEAD;
        /// The sentences over the picture.
        says => TRADE_SAYS;
        /// The picture.
        figure => TRADE_FIGURE;
        /// The marks of the recipes in the picture.
        marks => TRADE_MARK;
        /// Opens the table.
        show_table => TRADE_FOLD;
        /// The table.
        table => TRADE_TABLE;
        /// Its rows.
        rows => TRADE_ROW;
        /// The recipe that was tapped.
        tapped => TAPPED_RECIPE;
        /// What is said of it.
        tapped_says => TAPPED_RECIPE_SAYS;
        /// Chooses it.
        use_tapped => USE_RECIPE;
    }
}
