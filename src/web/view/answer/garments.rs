//! Several garments under one design: one plan for all, or a plan for each.

use crate::plan::{Code, GarmentPart, Report, WholeOrder};
use crate::web::view::widgets::markup::{self, text};
use crate::wording::{Label, Numeral, Quantity, Voice, lead};

/// The plan to run, garment by garment; nothing where the order has one garment only. `labels` are what the garments'
/// labels say.
pub(super) fn every_garment(report: &Report, labels: &[String], voice: Voice) -> String {
    let Some(whole) = &report.whole else { return String::new() };
    let said = voice.reason(&whole.say);
    let (head, rest) = lead(&said);
    let row = |part: &GarmentPart| {
        let label = labels.get(part.garment).map_or("", String::as_str);
        row(part, label, part.garment == report.garment, voice)
    };
    let rows: String = to_run(whole).iter().map(row).collect();
    let label = |label: Label| text(voice.label(label));
    let in_unit = |name: Label, quantity: Quantity| {
        text(&format!("{}, {}", voice.label(name), quantity.unit(voice.units, voice.language)))
    };
    let heads = format!(
        "<th class=\"mk\"><span class=\"sr\">{}</span></th><th>{}</th><th>{}</th><th class=\"r\">{}</th><th class=\"r\">{}</th><th \
         class=\"r\">{}</th>",
        label(Label::Verdict),
        label(Label::TheGarment),
        label(Label::White),
        in_unit(Label::DryerSet, Quantity::Temperature),
        in_unit(Label::Belt, Quantity::Belt),
        label(Label::PerPrint)
    );
    let name = voice.label(Label::EveryGarment);
    format!(
        "<div class=\"blk every-garment\"><h2 class=\"sec-head\">{}</h2><p><b>{}</b> {}</p>{}</div>",
        text(name),
        text(head),
        text(rest),
        markup::table(name, &heads, &rows)
    )
}

/// The parts of the plan that the sentence recommends.
fn to_run(whole: &WholeOrder) -> &[GarmentPart] {
    match (&whole.together, whole.say.code) {
        (Some(one), Code::OnePlan) => &one.parts,
        _ => &whole.split.parts,
    }
}

fn row(part: &GarmentPart, label: &str, above: bool, voice: Voice) -> String {
    let (set, belt) = part.setting.map_or_else(
        || ("–".to_owned(), "–".to_owned()),
        |setting| {
            (
                voice.bare(Quantity::Temperature, setting.set_c),
                voice.bare(Quantity::Belt, setting.belt_m_per_min),
            )
        },
    );
    let (name, cost) = match part.white {
        Some(_) => (part.name.clone(), Numeral(voice.language).fixed(part.cost_per_print, 2)),
        None => ("–".into(), "–".into()),
    };
    let above = if above {
        format!("<br><small>{}</small>", text(voice.label(Label::AnsweredAbove)))
    } else {
        String::new()
    };
    let dried =
        if part.dried { format!("<br>{}", text(voice.label(Label::DriedFirst))) } else { String::new() };
    format!(
        "<tr>{}<td>{}{above}</td><td><b>{}</b>{dried}</td><td \
         class=\"r\">{}</td><td class=\"r\">{}</td><td class=\"r\">{}</td></tr>",
        markup::mark_cell(part.verdict, voice.verdict(part.verdict)),
        text(label),
        text(&name),
        text(&set),
        text(&belt),
        text(&cost)
    )
}
