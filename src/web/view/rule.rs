//! A rule: one margin with its limit as a wall.

use crate::desk::picture::rule::{HEIGHT, WIDTH, rule};
use crate::plan::{Margin, Side, Topic};
use crate::wording::{Label, Numeral, Phrase, Voice};
use leptos::prelude::*;

/// The rule of a margin with its heading; `days` is when the bleed is judged.
pub fn rule_view(margin: &Margin, voice: Voice, days: f64) -> impl IntoView + use<> {
    let drawn = rule(margin);
    let what = match margin.what {
        Topic::Bleed => voice.say(&Phrase::BleedAfter { days: Numeral(voice.language).fixed(days, 0) }),
        topic => voice.topic(topic).to_owned(),
    };
    let write = |value| voice.margin(margin, value);
    let (likely, low, high) = (write(margin.value.likely), write(margin.value.low), write(margin.value.high));
    let limit = voice.say(&Phrase::LimitAt { value: write(margin.limit) });
    let title = voice.say(&Phrase::RulerTitle {
        what: what.clone(),
        likely: likely.clone(),
        low: low.clone(),
        high: high.clone(),
        limit: write(margin.limit),
    });
    // In brackets, as on the sheet: "0 0 to 0.2" reads as one number.
    let range = (low != high).then(|| format!("({})", voice.say(&Phrase::To { low, high })));
    let past = match (margin.what, margin.needed) {
        (Topic::Fusion, Side::AtLeast) => voice.label(Label::NotFused).to_owned(),
        (topic, _) => voice.past_limit(topic).to_lowercase(),
    };
    // Words under the scale keep clear of the limit's own word in the middle of the wall.
    let half = limit.chars().count() as f64 * 4.8;
    let middle = drawn.limit.clamp(12.0 + half, WIDTH - 12.0 - half);
    let past_width = past.chars().count() as f64 * 8.8;
    let past_fits = if drawn.fails_left {
        middle - half > 18.0 + past_width
    } else {
        WIDTH - 18.0 - past_width > middle + half
    };
    let ink = drawn.ink.name();
    let ticks: String =
        drawn.ticks.iter().map(|(x, long)| format!("M{x:.1} 36v-{}", if *long { 9 } else { 5 })).collect();
    let (from, to) = drawn.bar;
    let width = (to - from).max(1.0);
    let mut ends = String::new();
    if !drawn.beyond.0 {
        ends.push_str(&format!("M{from:.1} 10v18"));
    }
    if !drawn.beyond.1 {
        ends.push_str(&format!("M{to:.1} 10v18"));
    }
    let (past_at, past_class) = if drawn.fails_left { (12.0, "t-b") } else { (WIDTH - 12.0, "t-b t-e") };
    view! {
        <div>
            <p class="rule-h">{what}" "<b>{likely}</b>" "<span>{range}</span></p>
            <svg class="fig" viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img">
                <title>{title}</title>
                <rect class=format!("w-{ink}") x=drawn.fails.0 y="5" width=drawn.fails.1 height="31"></rect>
                <rect fill=format!("url(#h-{ink})") x=drawn.fails.0 y="5" width=drawn.fails.1 height="31"></rect>
                <path class="f-tick" d=ticks></path>
                <path class="f-axis" d=format!("M12 36H{}", WIDTH - 12.0)></path>
                <path class="point-halo" d=format!("M{from:.1} 19H{to:.1}")></path>
                <rect class=format!("b-{ink}") x=from y="14" width=width height="10"></rect>
                <path class="f-limit" d=ends></path>
                <path class="f-limit" d=format!("M{:.1} 0V42", drawn.limit)></path>
                <path class="rule-likely" d=format!("M{:.1} 3l9 16-9 16-9-16z", drawn.likely)></path>
                <text class="t-b t-m" x=middle y="57">{limit}</text>
                {past_fits.then(|| view! { <text class=past_class x=past_at y="57">{past}</text> })}
            </svg>
        </div>
    }
}
