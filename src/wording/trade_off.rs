//! Sentences of the trade-off: one recipe compared with another, and the picture of all of them.

use super::language::in_language;
use super::{Facts, Label, Numeral, Phrase, Quantity, Voice};
use crate::plan::{Code, RecipeScores, Scale};

/// Up to this ratio of stiffness a print is called only a little stiffer or softer. Chosen.
const LITTLE: f64 = 1.25;

/// A sentence of the trade-off. Recipes, numbers and lists come ready written.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub enum TradeOffPhrase {
    Title,
    /// Caption of the picture.
    Figure,
    /// What a screen reader reads in place of the picture.
    Picture {
        pays: String,
        gets: String,
        recipes: usize,
    },
    Compared {
        compared: String,
        judged: String,
    },
    PaidFor {
        worse: String,
        better: String,
        other: String,
        pays: Scale,
    },
    NothingPaid {
        pays: Scale,
    },
    OffFront {
        recipe: String,
        better: String,
        worse: String,
        trial: bool,
    },
    ForMore {
        recipe: String,
        price: ScaleChange,
        gain: ScaleChange,
        trial: bool,
    },
    /// A recipe that was tapped, with its scores.
    Looked {
        recipe: String,
        cost: String,
        late: String,
        pace: String,
    },
    /// Another recipe with the same white is better.
    NotBest {
        white: String,
    },
    /// No recipe is better on both scales.
    OnTheLine,
}

/// The change on one scale from one recipe to another, ready written.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name is its English text")]
pub struct ScaleChange {
    pub scale: Scale,
    pub more: bool,
    pub by: String,
    pub from: String,
    pub to: String,
}

/// How one recipe differs from another on a scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct ScaleDifference<'a> {
    pub scale: Scale,
    pub better: bool,
    pub little: bool,
    /// The difference, ready written.
    pub by: &'a str,
    /// The value of each, ready written.
    pub chances: [&'a str; 2],
}

impl Voice {
    /// A scale by its name.
    #[must_use]
    pub fn scale(self, scale: Scale) -> &'static str {
        in_language!(self.language, trade_off::scale(scale))
    }

    /// A value of a scale, written as that scale is read.
    #[must_use]
    pub fn on_scale(self, scale: Scale, value: f64) -> String {
        let digits = match scale {
            Scale::Cost => 2,
            Scale::Pace => 0,
            Scale::Hand | Scale::Cover => 1,
            Scale::Nap | Scale::Finish => return self.quantity(Quantity::Percent, value * 100.0),
            Scale::Late => return self.case_in_hundred(value),
        };
        Numeral(self.language).fixed(value, digits)
    }

    /// A chance as "7 in 100" or "0.4 in 100": always out of 100, so that two can be compared at a glance.
    fn case_in_hundred(self, chance: f64) -> String {
        let percent = chance * 100.0;
        let count = Numeral(self.language).short(percent, usize::from(percent < 9.95));
        if (0.05..=99.5).contains(&percent) {
            self.say(&Phrase::OutOf { count, of: "100".into() })
        } else {
            self.chance(chance)
        }
    }

    /// A recipe: its white, the blocker under it, strokes and mesh, and whether the cloth is dried first.
    #[must_use]
    pub fn recipe(self, recipe: &RecipeScores) -> String {
        let mesh = self.quantity(Quantity::Threads, recipe.threads_per_cm);
        let blocker = recipe.blocker.as_deref().unwrap_or_default();
        self.recipe_text(&recipe.name, blocker, f64::from(recipe.strokes), &mesh, recipe.dried)
    }

    fn recipe_text(self, white: &str, blocker: &str, strokes: f64, mesh: &str, dried: bool) -> String {
        let over = in_language!(self.language, trade_off::OVER);
        let base = if blocker.is_empty() { String::new() } else { format!(" {over} {blocker}") };
        let dried = if dried { format!(", {}", self.label(Label::DriedFirst)) } else { String::new() };
        format!("{white}{base}, {strokes:.0}\u{a0}×\u{a0}{mesh}{dried}")
    }

    fn differs(self, what: ScaleDifference<'_>) -> String {
        in_language!(self.language, trade_off::differs(what))
    }

    /// A list in words: "a, b and c".
    fn all_of(self, things: &[String]) -> String {
        let and = in_language!(self.language, trade_off::AND);
        match things {
            [] => String::new(),
            [only] => only.clone(),
            [firsts @ .., last] => format!("{} {and} {last}", firsts.join(", ")),
        }
    }
}

/// The sentence of a reason that compares recipes.
pub(super) fn reason(code: Code, v: Facts<'_>) -> String {
    let voice = v.voice;
    let scale = |name: &str| Scale::ALL.into_iter().find(|scale| scale.word() == v.code(name));
    let pays = scale("pays").unwrap_or(Scale::Cost);
    let said = match code {
        Code::WaysCompared => {
            let count = |name: &str| voice.count(v.number(name).unwrap_or_default() as usize);
            TradeOffPhrase::Compared { compared: count("compared"), judged: count("judged") }
        }
        Code::NothingPaid => TradeOffPhrase::NothingPaid { pays },
        Code::PaidFor => {
            let [better, worse] = differences(v, None);
            TradeOffPhrase::PaidFor { worse, better, other: recipe(v, "other-"), pays }
        }
        Code::OffFront => {
            let [better, worse] = differences(v, None);
            TradeOffPhrase::OffFront { recipe: recipe(v, ""), better, worse, trial: needs_more(v) }
        }
        _ => {
            let gets = scale("gets").unwrap_or(Scale::Late);
            let step = |scale: Scale| {
                let name = scale.word();
                let (one, other) = (v.number(name), v.number(&format!("other-{name}")));
                let (one, other) = (one.unwrap_or_default(), other.unwrap_or_default());
                let write = |value: f64| voice.on_scale(scale, value);
                ScaleChange {
                    scale,
                    more: one > other,
                    by: write((one - other).abs()),
                    from: write(other),
                    to: write(one),
                }
            };
            TradeOffPhrase::ForMore {
                recipe: recipe(v, ""),
                price: step(pays),
                gain: step(gets),
                trial: needs_more(v),
            }
        }
    };
    voice.say(&said)
}

/// True if the recipe needs a trial and the other does not.
fn needs_more(v: Facts<'_>) -> bool {
    v.code("verdict") == "trial" && v.code("other-verdict") != "trial"
}

fn recipe(v: Facts<'_>, of: &str) -> String {
    let name = |what: &str| format!("{of}{what}");
    let strokes = v.number(&name("strokes")).unwrap_or(1.0);
    let dried = v.flag(&name("dried")) == Some(true);
    v.voice.recipe_text(
        &v.word(&name("white")),
        v.code(&name("blocker")),
        strokes,
        &v.threads(&name("threads")),
        dried,
    )
}

/// What is better and what is worse about the recipe, as two lists; on one scale only, if one is asked for.
fn differences(v: Facts<'_>, only: Option<Scale>) -> [String; 2] {
    let mut lists: [Vec<String>; 2] = [Vec::new(), Vec::new()];
    for scale in Scale::ALL.into_iter().filter(|scale| only.is_none_or(|only| only == *scale)) {
        let name = scale.word();
        let (Some(one), Some(other)) = (v.number(name), v.number(&format!("other-{name}"))) else { continue };
        let better = (one < other) != (scale == Scale::Pace);
        let by = v.voice.on_scale(scale, (one - other).abs());
        let chances = [one, other].map(|value| v.voice.on_scale(scale, value));
        let differs = ScaleDifference {
            scale,
            better,
            little: one.max(other) <= LITTLE * one.min(other),
            by: &by,
            chances: [&chances[0], &chances[1]],
        };
        lists[usize::from(!better)].push(v.voice.differs(differs));
    }
    lists.map(|list| v.voice.all_of(&list))
}
