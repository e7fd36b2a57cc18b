//! Several garments under one design: one plan for all, or a plan for each.

use crate::plan::{Code, GarmentPart, Report, WholeOrder};
use crate::web::view::widgets::markup;
use crate::wording::{Label, Numeral, Quantity, Voice, lead};
use maud::{Markup, html};

/// The plan to run, garment by garment; nothing where the order has one garment only. `labels` are what the garments'
/// labels say.
pub fn every_garment(report: &Report, labels: &[String], voice: Voice) -> Markup {
    let Some(whole) = &report.whole else { return Markup::default() };
    let said = voice.reason(&whole.say);
    let (head, rest) = lead(&said);
    let in_unit = |name: Label, quantity: Quantity| {
        html! { th class="r" { (voice.label(name)) ", " (quantity.unit(voice.units, voice.language)) } }
    };
    let heads = html! {
        (markup::mark_column(voice.label(Label::Verdict)))
        th { (voice.label(Label::TheGarment)) }
        th { (voice.label(Label::White)) }
        (in_unit(Label::DryerSet, Quantity::Temperature))
        (in_unit(Label::Belt, Quantity::Belt))
        th class="r" { (voice.label(Label::PerPrint)) }
    };
    let rows = html! {
        @for part in to_run(whole) {
            @let label = labels.get(part.garment).map_or("", String::as_str);
            (row(part, label, part.garment == report.garment, voice))
        }
    };
    let name = voice.label(Label::EveryGarment);
    html! {
        div class="blk every-garment" {
            h2 class="sec-head" { (name) }
            p { b { (head) } " " (rest) }
            (markup::table(name, &heads, &rows))
        }
    }
}

/// The parts of the plan that the sentence recommends.
fn to_run(whole: &WholeOrder) -> &[GarmentPart] {
    match (&whole.together, whole.say.code) {
        (Some(one), Code::OnePlan) => &one.parts,
        _ => &whole.split.parts,
    }
}

/// One garment; `answered` is the one that the answer above is about.
fn row(part: &GarmentPart, label: &str, answered: bool, voice: Voice) -> Markup {
    let none = || "–".to_owned();
    let (set, belt) = part.setting.map_or_else(
        || (none(), none()),
        |setting| {
            let set = voice.bare(Quantity::Temperature, setting.set_c);
            (set, voice.bare(Quantity::Belt, setting.belt_m_per_min))
        },
    );
    let (name, cost) = match part.white {
        Some(_) => (part.name.clone(), Numeral(voice.language).fixed(part.cost_per_print, 2)),
        None => (none(), none()),
    };
    html! {
        tr {
            (markup::mark_cell(part.verdict, voice.verdict(part.verdict)))
            td {
                (label)
                @if answered { br; small { (voice.label(Label::AnsweredAbove)) } }
            }
            td {
                b { (name) }
                @if part.dried { br; (voice.label(Label::DriedFirst)) }
            }
            td class="r" { (set) }
            td class="r" { (belt) }
            td class="r" { (cost) }
        }
    }
}
