//! The band over days, with its limit, its grades and the day that matters.

use crate::desk::picture::ageing::{AgeingChart, HEIGHT, WIDTH, ageing_chart};
use crate::plan::{BleedForecast, Topic};
use crate::web::view::widgets::svg::SvgWriter;
use crate::wording::{ForecastPhrase, Label, Numeral, Phrase, Quantity, Voice};
use leptos::prelude::*;
use maud::Markup;

/// A colour difference in words.
pub(super) fn write(voice: Voice, value: f64) -> String {
    voice.quantity(Quantity::ColourDifference, value)
}

/// A number of days in words.
pub(super) fn day(voice: Voice, value: f64) -> String {
    voice.bare(Quantity::Days, value)
}

/// The forecast in one sentence, as the picture's own title too.
pub(super) fn sentence(forecast: &BleedForecast, drawn: Option<&AgeingChart>, voice: Voice) -> String {
    let Some((fresh, end)) = forecast.de00.first().zip(forecast.de00.last()) else { return String::new() };
    let says = voice.say(&Phrase::AgeingSays {
        fresh: write(voice, fresh.likely),
        day: day(voice, forecast.looked_at_days),
        likely: write(voice, drawn.map_or(end.likely, |drawn| drawn.looked_at[2])),
        low: write(voice, end.low),
        high: write(voice, end.high),
        limit: write(voice, forecast.limit),
    });
    let shows = forecast.first_shows;
    let first = voice.say(&Phrase::FirstShows {
        early: shows.early_days.map(|it| day(voice, it)),
        likely: shows.likely_days.map(|it| day(voice, it)),
        last: day(voice, forecast.days.last().copied().unwrap_or_default()),
    });
    format!("{says} {first}")
}

/// The figure.
pub fn ageing_view(forecast: &BleedForecast, voice: Voice) -> Option<impl IntoView + use<>> {
    let drawn = ageing_chart(forecast)?;
    let inside = picture(forecast, &drawn, voice).into_string();
    let title = sentence(forecast, Some(&drawn), voice);
    Some(view! {
        <figure>
            <figcaption class="sec-head">{voice.label(Label::HowItAges)}</figcaption>
            <svg
                class="fig"
                id="ageing"
                viewBox=format!("0 0 {WIDTH} {HEIGHT}")
                role="img"
                aria-label=title
                inner_html=inside
            ></svg>
            <p class="cap">{voice.label(Label::AgeingFigure)}</p>
        </figure>
    })
}

fn picture(forecast: &BleedForecast, drawn: &AgeingChart, voice: Voice) -> Markup {
    let (left, right, top, foot) = (drawn.time.start, drawn.time.end, drawn.shift.end, drawn.shift.start);
    let [low, likely, high] = &drawn.lines;
    let mut pen = SvgWriter::default();
    pen.path("w-dye", &drawn.wide);
    pen.path("band-core", &drawn.core);
    let fails = format!("M{left} {top}H{right}V{:.1}H{left}z", drawn.limit);
    pen.filled("url(#h-dye)", &fails);
    pen.path("f-dye f-thin", high);
    pen.path("f-dye f-thin", low);
    pen.path("point-halo", likely);
    pen.path("f-dye", likely);
    day_it_leaves(&mut pen, forecast, drawn, voice);
    for (height, step) in &drawn.grades {
        let grade = step.text().replace('-', "–");
        pen.line("f-axis f-dash", [left, *height], [right, *height]);
        pen.text("t-halo", left + 8.0, height - 7.0, &voice.say(&Phrase::GradeFrom { grade }));
    }
    pen.line("f-limit", [left, drawn.limit], [right + 8.0, drawn.limit]);
    pen.text("t-b t-halo", left + 8.0, top + 21.0, voice.past_limit(Topic::Bleed));
    pen.text("t-halo", left + 8.0, top + 42.0, voice.label(Label::BesideFresh));
    day_that_matters(&mut pen, forecast, drawn, voice);
    ends(&mut pen, forecast, drawn, voice);
    axes(&mut pen, drawn, voice);
    let heat = voice.quantity(Quantity::Temperature, forecast.storage_c);
    pen.text("t-b t-e", right, HEIGHT - 10.0, &voice.say(&Phrase::DaysAt { heat }));
    pen.text("t-b", 0.0, HEIGHT - 10.0, voice.label(Label::TintAxis));
    pen.path("f-axis", &format!("M{left} {top}V{foot}H{right}"));
    pen.done()
}

fn day_that_matters(pen: &mut SvgWriter, forecast: &BleedForecast, drawn: &AgeingChart, voice: Voice) {
    let [x, y, value] = drawn.looked_at;
    let (top, foot) = (drawn.shift.end, drawn.shift.start);
    // The words are on the side of their line with more room.
    let (words, class) = if x > 0.5 * (drawn.time.start + drawn.time.end) {
        (x - 12.0, "t-b t-halo t-e")
    } else {
        (x + 10.0, "t-b t-halo")
    };
    let says =
        voice.say(&Phrase::OnDay { day: day(voice, forecast.looked_at_days), value: write(voice, value) });
    let chance = voice.say(&Phrase::StaysWhite { chance: voice.chance(forecast.stays_white) });
    pen.line("f-limit f-thin", [x, top], [x, foot]);
    pen.text(class, words, top + 72.0, &says);
    pen.text(class, words, top + 94.0, &chance);
    pen.dot(x, y);
}

/// The day on which the order is due: a line with its date at the foot.
fn day_it_leaves(pen: &mut SvgWriter, forecast: &BleedForecast, drawn: &AgeingChart, voice: Voice) {
    let (Some((x, left)), Some(leaves)) = (drawn.leaves, &forecast.leaves) else { return };
    let (top, foot) = (drawn.shift.end, drawn.shift.start);
    let (words, class) = if left { (x - 10.0, "t-halo t-e") } else { (x + 8.0, "t-halo") };
    pen.line("f-limit f-dash", [x, top], [x, foot]);
    pen.text(class, words, foot - 10.0, &voice.say(&ForecastPhrase::Due { date: voice.day(&leaves.date) }));
}

/// The labels at the end of the band.
fn ends(pen: &mut SvgWriter, forecast: &BleedForecast, drawn: &AgeingChart, voice: Voice) {
    let x = drawn.time.end + 16.0;
    let Some(end) = forecast.de00.last() else { return };
    let named = [(Label::BestCase, end.low), (Label::Likely, end.likely), (Label::BadEnd, end.high)];
    for ((label, value), y) in named.into_iter().zip(drawn.labels) {
        pen.text("t-b", x, y + 6.0, &format!("{} {}", write(voice, value), voice.label(label)));
    }
    let limit = voice.say(&Phrase::LimitAt { value: write(voice, forecast.limit) });
    pen.text("t-b", x, drawn.labels[3] + 6.0, &limit);
    pen.dot(drawn.end[0], drawn.end[1]);
}

fn axes(pen: &mut SvgWriter, drawn: &AgeingChart, voice: Voice) {
    let (left, foot) = (drawn.time.start, drawn.shift.start);
    let numeral = Numeral(voice.language);
    for (y, value, digits) in &drawn.shift_ticks {
        pen.line("f-axis", [left, *y], [left - 7.0, *y]);
        pen.text("t-e", left - 12.0, y + 6.0, &numeral.fixed(*value, *digits));
    }
    for (x, value) in &drawn.day_ticks {
        pen.line("f-axis", [*x, foot], [*x, foot + 8.0]);
        pen.text("t-m", *x, foot + 27.0, &numeral.fixed(*value, 0));
    }
}
