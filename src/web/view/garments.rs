//! Several garments under one design: one plan for all, or a plan for each.

use super::icon;
use crate::plan::{Code, Part, Report, Whole};
use crate::wording::{Label, Numeral, Quantity, Voice, lead};
use leptos::prelude::*;

/// The plan to run, garment by garment; nothing where the order has one garment only. `labels` are what the garments'
/// labels say.
pub(super) fn every_garment(report: &Report, labels: &[String], voice: Voice) -> Option<AnyView> {
    let whole = report.whole.as_ref()?;
    let text = voice.reason(&whole.say);
    let (head, rest) = lead(&text);
    let rows = to_run(whole)
        .iter()
        .map(|part| {
            let label = labels.get(part.garment).cloned().unwrap_or_default();
            row(part, label, part.garment == report.garment, voice)
        })
        .collect_view();
    let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
    let table = view! {
        <div class="blk every-garment">
            <h2 class="sec-head">{voice.label(Label::EveryGarment)}</h2>
            <p><b>{head.to_owned()}</b>" "{rest.to_owned()}</p>
            <div class="scroll" tabindex="0" role="region" aria-label=voice.label(Label::EveryGarment)>
                <table class="tbl">
                    <thead>
                        <tr>
                            <th class="mk"><span class="sr">{voice.label(Label::Verdict)}</span></th>
                            <th>{voice.label(Label::TheGarment)}</th>
                            <th>{voice.label(Label::White)}</th>
                            <th class="r">{format!("{}, {}", voice.label(Label::DryerSet), unit(Quantity::Temperature))}</th>
                            <th class="r">{format!("{}, {}", voice.label(Label::Belt), unit(Quantity::Belt))}</th>
                            <th class="r">{voice.label(Label::PerPrint)}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        </div>
    };
    Some(table.into_any())
}

/// The parts of the plan that the sentence recommends.
fn to_run(whole: &Whole) -> &[Part] {
    match (&whole.together, whole.say.code) {
        (Some(one), Code::OnePlan) => &one.parts,
        _ => &whole.split.parts,
    }
}

fn row(part: &Part, label: String, above: bool, voice: Voice) -> impl IntoView + use<> {
    let (set, belt) = part.setting.map_or_else(
        || ("–".to_owned(), "–".to_owned()),
        |setting| {
            (
                voice.bare(Quantity::Temperature, setting.set_c),
                voice.bare(Quantity::Belt, setting.belt_m_per_min),
            )
        },
    );
    let printed = part.white.is_some();
    let cost = Numeral(voice.language).fixed(part.cost_per_print, 2);
    view! {
        <tr>
            <td class="mk">
                <span class=icon::verdict_class(part.verdict)>
                    {icon::icon(96, icon::mark(part.verdict))}
                    <span class="sr">{voice.verdict(part.verdict)}</span>
                </span>
            </td>
            <td>{label}{above.then(|| view! { <br/><small>{voice.label(Label::AnsweredAbove)}</small> })}</td>
            <td>
                <b>{if printed { part.name.clone() } else { "–".into() }}</b>
                {part.dried.then(|| view! { <br/>{voice.label(Label::DriedFirst)} })}
            </td>
            <td class="r">{set}</td>
            <td class="r">{belt}</td>
            <td class="r">{if printed { cost } else { "–".into() }}</td>
        </tr>
    }
}
