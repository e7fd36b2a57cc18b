//! The white on this cloth, in its true colours: fresh on the left, predicted on the right.

use crate::desk::picture::swatches::{Swatches, swatches};
use crate::optics::Lab;
use crate::plan::{Pick, PrintStep, Topic};
use crate::wording::{Label, Phrase, Voice};
use maud::{Markup, html};

/// Width and height of the strip of cloth that the split circles lie on.
pub const STRIP: [u32; 2] = [740, 132];

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

/// The knit of the cloth, in its own colour, as a pattern for every picture of the page.
pub fn knit(colours: &Swatches) -> Markup {
    let loops = "M0 1.5Q2 2 3.5 7Q5 2 7 1.5";
    let between = "M0 5.5Q1 6 1.75 8M7 5.5Q6 6 5.25 8";
    html! {
        svg class="defs" width="0" height="0" aria-hidden="true" {
            defs {
                pattern id="knit" width="7" height="8" patternUnits="userSpaceOnUse" {
                    rect width="7" height="8" fill=(colours.cloth) {}
                    path d=(loops) fill="none" stroke=(colours.shade) stroke-width="1.6" {}
                    path d=(between) fill="none" stroke=(colours.light) stroke-width="1" {}
                }
            }
        }
    }
}

/// The inside of a strip of cloth: the split circles on it.
pub fn strip(colours: &Swatches) -> Markup {
    let [width, height] = STRIP;
    let left = |index: usize| 59.3 + 246.7 * index as f64;
    html! {
        rect width=(width) height=(height) fill="url(#knit)" {}
        @for (index, turned) in colours.turned.iter().enumerate() {
            g transform=(format_args!("translate({:.1} 0)", left(index))) {
                circle cx="64" cy="66" r="53" fill=(colours.fresh) {}
                path d="M64 13a53 53 0 0 1 0 106z" fill=(turned) {}
                path d="M64 2v11M64 119v11" stroke="#fff" stroke-width="3" {}
            }
        }
    }
}

/// The strip with its figures; nothing where nothing bleeds.
pub fn on_this_cloth(pick: &Pick, colours: &Swatches, voice: Voice) -> Markup {
    let Some(margin) = pick.margins.iter().find(|margin| margin.what == Topic::Bleed) else {
        return Markup::default();
    };
    let write = |value| voice.margin(margin, value);
    let title = voice.say(&Phrase::ClothTitle {
        likely: write(margin.value.likely),
        high: write(margin.value.high),
        limit: write(margin.limit),
    });
    let named = [
        (Label::BestCase, margin.value.low, ""),
        (Label::Likely, margin.value.likely, ""),
        (Label::BadEnd, margin.value.high, voice.label(Label::WorseOneInTen)),
    ];
    let [width, height] = STRIP;
    html! {
        figure class="blk" {
            figcaption class="sec-head" {
                (voice.label(Label::OnThisCloth)) " "
                span class="aside" { (voice.label(Label::FreshAndForecast)) }
            }
            svg class="fig true-colour" viewBox={ "0 0 " (width) " " (height) } role="img" {
                title { (title) }
                (strip(colours))
            }
            dl class="three" {
                @for (name, value, note) in named {
                    div {
                        dt { (voice.label(name)) }
                        dd class=[(value > margin.limit).then_some("over")] {
                            (write(value)) " " small { (note) }
                        }
                    }
                }
            }
            p class="cap" {
                b { (voice.say(&Phrase::LimitAt { value: write(margin.limit) })) ". " }
                (voice.label(Label::ClothFigure))
            }
        }
    }
}
