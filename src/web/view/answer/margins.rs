//! Every margin as a table: the words behind the pictures.

use crate::plan::{Margin, Side};
use crate::web::view::widgets::icon;
use crate::web::view::widgets::markup;
use crate::wording::{Label, Phrase, Voice};
use maud::{Markup, html};

/// Margins as a table.
pub fn margin_table(margins: &[Margin], voice: Voice) -> Markup {
    let heads = html! {
        th class="mk" {}
        th { (voice.label(Label::What)) }
        @for label in [Label::Value, Label::Range, Label::Needs] { th class="r" { (voice.label(label)) } }
    };
    let rows = html! { @for margin in margins { (row(margin, voice)) } };
    markup::table(voice.label(Label::Margins), &heads, &rows)
}

fn row(margin: &Margin, voice: Voice) -> Markup {
    let write = |value| voice.margin(margin, value);
    let side = match margin.needed {
        Side::AtLeast => Label::AtLeast,
        Side::AtMost => Label::AtMost,
    };
    let (class, sign) = if margin.holds() {
        ("c-go", icon::TICK)
    } else if margin.holds_likely() {
        ("c-trial", icon::ASK)
    } else {
        ("c-no", icon::CROSS)
    };
    html! {
        tr {
            td class="mk" { span class=(class) { (markup::sign(24, sign)) } }
            td { b { (voice.topic(margin.what)) } }
            td class="r" { (write(margin.value.likely)) }
            td class="r" {
                (voice.say(&Phrase::To { low: write(margin.value.low), high: write(margin.value.high) }))
            }
            td class="r" { (voice.label(side)) " " (write(margin.limit)) }
        }
    }
}
