//! Every margin as a table: the words behind the pictures.

use crate::plan::{Margin, Side};
use crate::web::view::widgets::icon;
use crate::web::view::widgets::markup::{self, text};
use crate::wording::{Label, Phrase, Voice};

/// Margins as a table.
pub fn margin_rows(margins: &[Margin], voice: Voice) -> String {
    let row = |margin: &Margin| {
        let write = |value| voice.margin(margin, value);
        let range = voice.say(&Phrase::To { low: write(margin.value.low), high: write(margin.value.high) });
        let side = match margin.needed {
            Side::AtLeast => Label::AtLeast,
            Side::AtMost => Label::AtMost,
        };
        let needs = format!("{} {}", voice.label(side), write(margin.limit));
        let (class, sign) = if margin.holds() {
            ("c-go", icon::TICK)
        } else if margin.holds_likely() {
            ("c-trial", icon::ASK)
        } else {
            ("c-no", icon::CROSS)
        };
        format!(
            "<tr><td class=\"mk\"><span class=\"{class}\">{}</span></td><td><b>{}</b></td><td class=\"r\">{}</td><td \
             class=\"r\">{}</td><td class=\"r\">{}</td></tr>",
            markup::sign(24, sign),
            text(voice.topic(margin.what)),
            text(&write(margin.value.likely)),
            text(&range),
            text(&needs)
        )
    };
    let rows: String = margins.iter().map(row).collect();
    let [what, value, range, needs] =
        [Label::What, Label::Value, Label::Range, Label::Needs].map(|label| text(voice.label(label)));
    let heads = format!(
        "<th class=\"mk\"></th><th>{what}</th><th class=\"r\">{value}</th><th class=\"r\">{range}</th><th class=\"r\">{needs}</th>"
    );
    markup::table(voice.label(Label::Margins), &heads, &rows)
}
