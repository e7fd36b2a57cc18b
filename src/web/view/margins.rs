//! Every margin as a table: the words behind the pictures.

use super::icon;
use crate::plan::{Margin, Pick};
use crate::wording::{Label, Phrase, Voice};
use leptos::prelude::*;

/// Every margin as a table: the words behind the pictures.
pub(super) fn every_margin(pick: &Pick, voice: Voice) -> impl IntoView + use<> {
    let rows = margin_rows(&pick.margins, voice);
    view! {
        <details class="more blk">
            <summary class="btn btn-wide">{voice.label(Label::Margins)}</summary>
            {rows}
        </details>
    }
}

/// Margins as a table.
pub fn margin_rows(margins: &[Margin], voice: Voice) -> impl IntoView + use<> {
    let rows = margins
        .iter()
        .map(|margin| {
            let write = |value| voice.margin(margin, value);
            let range =
                voice.say(&Phrase::To { low: write(margin.value.low), high: write(margin.value.high) });
            let side = match margin.needed {
                crate::plan::Side::AtLeast => Label::AtLeast,
                crate::plan::Side::AtMost => Label::AtMost,
            };
            let needs = format!("{} {}", voice.label(side), write(margin.limit));
            let sign = if margin.holds() {
                ("c-go", icon::TICK)
            } else if margin.holds_likely() {
                ("c-trial", icon::ASK)
            } else {
                ("c-no", icon::CROSS)
            };
            view! {
                <tr>
                    <td class="mk"><span class=sign.0>{icon::icon(24, sign.1)}</span></td>
                    <td><b>{voice.topic(margin.what)}</b></td>
                    <td class="r">{write(margin.value.likely)}</td>
                    <td class="r">{range}</td>
                    <td class="r">{needs}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="region" aria-label=voice.label(Label::Margins)>
            <table class="tbl">
                <thead>
                    <tr>
                        <th class="mk"></th>
                        <th>{voice.label(Label::What)}</th>
                        <th class="r">{voice.label(Label::Value)}</th>
                        <th class="r">{voice.label(Label::Range)}</th>
                        <th class="r">{voice.label(Label::Needs)}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}
