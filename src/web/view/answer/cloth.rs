//! The white on this cloth, in its true colours: fresh on the left, predicted on the right.

use crate::desk::picture::swatches::{Swatches, swatches};
use crate::optics::Lab;
use crate::plan::{Pick, PrintStep, Topic};
use crate::web::view::widgets::markup::text;
use crate::wording::{Label, Phrase, Voice};

/// Colours of the white on the cloth at the good end, most likely, and at the bad end.
pub fn colours(cloth: Option<Lab>, pick: &Pick) -> Option<Swatches> {
    let film = pick.steps.iter().rev().find_map(|step| match step {
        PrintStep::White { film_um, .. } => Some(*film_um),
        _ => None,
    })?;
    let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed).map(|margin| margin.value);
    let differences = bleed.map_or([0.0; 3], |band| [band.low, band.likely, band.high]);
    swatches(cloth?, film, &differences)
}

/// The knit of the cloth, in its own colour, for every picture of this answer.
pub fn knit(colours: &Swatches) -> String {
    let Swatches { cloth, shade, light, .. } = colours;
    format!(
        "<svg class=\"defs\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs><pattern id=\"knit\" width=\"7\" height=\"8\" \
         patternUnits=\"userSpaceOnUse\"><rect width=\"7\" height=\"8\" fill=\"{cloth}\"/><path d=\"M0 1.5Q2 2 3.5 7Q5 2 7 1.5\" \
         fill=\"none\" stroke=\"{shade}\" stroke-width=\"1.6\"/><path d=\"M0 5.5Q1 6 1.75 8M7 5.5Q6 6 5.25 8\" fill=\"none\" \
         stroke=\"{light}\" stroke-width=\"1\"/></pattern></defs></svg>"
    )
}

/// The inside of a strip of cloth 740 wide and 132 high: the split circles on it.
pub fn strip(colours: &Swatches) -> String {
    let fresh = &colours.fresh;
    let circle = |(index, turned): (usize, &String)| {
        let left = 59.3 + 246.7 * index as f64;
        format!(
            "<g transform=\"translate({left:.1} 0)\"><circle cx=\"64\" cy=\"66\" r=\"53\" fill=\"{fresh}\"/><path \
             d=\"M64 13a53 53 0 0 1 0 106z\" fill=\"{turned}\"/><path d=\"M64 2v11M64 119v11\" stroke=\"#fff\" stroke-width=\"3\"/></g>"
        )
    };
    let circles: String = colours.turned.iter().enumerate().map(circle).collect();
    format!("<rect width=\"740\" height=\"132\" fill=\"url(#knit)\"/>{circles}")
}

pub fn on_this_cloth(pick: &Pick, colours: &Swatches, voice: Voice) -> String {
    let Some(margin) = pick.margins.iter().find(|margin| margin.what == Topic::Bleed) else {
        return String::new();
    };
    let write = |value| voice.margin(margin, value);
    let title = voice.say(&Phrase::ClothTitle {
        likely: write(margin.value.likely),
        high: write(margin.value.high),
        limit: write(margin.limit),
    });
    let named = [
        (Label::BestCase, margin.value.low, None),
        (Label::Likely, margin.value.likely, None),
        (Label::BadEnd, margin.value.high, Some(Label::WorseOneInTen)),
    ]
    .map(|(name, value, note)| {
        let class = if value > margin.limit { " class=\"over\"" } else { "" };
        let note = note.map_or("", |note| voice.label(note));
        let (name, value, note) = (text(voice.label(name)), text(&write(value)), text(note));
        format!("<div><dt>{name}</dt><dd{class}>{value} <small>{note}</small></dd></div>")
    })
    .concat();
    format!(
        "<figure class=\"blk\"><figcaption class=\"sec-head\">{} <span class=\"aside\">{}</span></figcaption><svg class=\"fig \
         true-colour\" viewBox=\"0 0 740 132\" role=\"img\"><title>{}</title>{}</svg><dl class=\"three\">{named}</dl><p \
         class=\"cap\"><b>{}. </b>{}</p></figure>",
        text(voice.label(Label::OnThisCloth)),
        text(voice.label(Label::FreshAndForecast)),
        text(&title),
        strip(colours),
        text(&voice.say(&Phrase::LimitAt { value: write(margin.limit) })),
        text(voice.label(Label::ClothFigure))
    )
}
