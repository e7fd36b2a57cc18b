//! What is given up for what: sentences, the chart of the recipes between two scales, and its table.

use crate::desk::picture::trade_off::{HEIGHT, TradeOffChart, WIDTH, trade_off_chart};
use crate::desk::{Action, key};
use crate::plan::{Code, RecipeScores, Report, Scale, TradeOff};
use crate::web::view::widgets::svg::{SvgWriter, tenths};
use crate::web::view::widgets::{icon, markup};
use crate::wording::{Label, Numeral, TradeOffPhrase, Voice, lead};
use maud::{Markup, PreEscaped, html};

/// Half the side of the mark of a recipe that is named, and of any other.
const HALF: [f64; 2] = [12.0, 7.0];

/// The chart and whatever its words need.
struct Chart<'a> {
    trade: &'a TradeOff,
    drawn: &'a TradeOffChart,
    /// Recipes that are named, by their places; the first are the most telling.
    named: &'a [(usize, String)],
    /// The place of the recipe that is chosen.
    chosen: usize,
    /// The place of the recipe that was tapped.
    tapped: Option<usize>,
    money: &'a str,
    voice: Voice,
}

/// Sentences and chart; the count of recipes alone where nothing can be chosen. `chosen` is the place of the chosen
/// pick, `tapped` that of the recipe that was tapped.
pub(super) fn trade_off(
    report: &Report,
    chosen: usize,
    tapped: Option<usize>,
    money: &str,
    voice: Voice,
) -> Markup {
    let Some(trade) = &report.trade else { return Markup::default() };
    let mut said = trade.said_of(chosen).into_iter();
    let count = said.find(|reason| reason.code == Code::WaysCompared).map(|reason| voice.reason(&reason));
    let count = count.unwrap_or_default();
    let Some(chosen) = trade.ways.iter().position(|recipe| recipe.pick == Some(chosen)) else {
        return html! { p class="cap" { (count) } };
    };
    let sentences: Vec<String> = said.map(|reason| voice.reason(&reason)).collect();
    let named = names(trade, chosen, tapped);
    let drawn = trade_off_chart(trade, &named);
    let looked_at = tapped.and_then(|place| Some((place == chosen, trade.ways.get(place)?)));
    html! {
        (markup::head("trade-head", &voice.say(&TradeOffPhrase::Title), &count))
        ul class="trade-say" id="trade-says" {
            @for sentence in &sentences {
                @let (head, rest) = lead(sentence);
                li { b { (head) } " " (rest) }
            }
        }
        @if let Some(drawn) = &drawn {
            (figure(&Chart { trade, drawn, named: &named, chosen, tapped, money, voice }, &sentences))
        }
        div id="trade-way" role="status" {
            @if let Some((is_chosen, recipe)) = looked_at { (tapped_recipe(report, recipe, is_chosen, voice)) }
        }
    }
}

/// The recipes that are named: the chosen one first, then the tapped one, the front, and the other picks.
fn names(trade: &TradeOff, chosen: usize, tapped: Option<usize>) -> Vec<(usize, String)> {
    let mut order = vec![chosen];
    let all = || trade.ways.iter().enumerate();
    let front = all().filter(|(_, recipe)| recipe.front);
    let picks = all().filter(|(_, recipe)| recipe.pick.is_some());
    for place in tapped.into_iter().chain(front.map(|(place, _)| place)).chain(picks.map(|(place, _)| place))
    {
        if !order.contains(&place) {
            order.push(place);
        }
    }
    let name = |place: usize| Some((place, trade.ways.get(place)?.name.clone()));
    order.into_iter().filter_map(name).collect()
}

fn figure(chart: &Chart<'_>, sentences: &[String]) -> Markup {
    let Chart { trade, voice, .. } = chart;
    let title = voice.say(&TradeOffPhrase::Picture {
        pays: voice.scale(trade.pays).into(),
        gets: voice.scale(trade.gets).into(),
        recipes: trade.ways.len(),
    });
    html! {
        svg class="fig" id="trade-figure" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img"
            aria-label={ (title) " " (sentences.join(" ")) } { (picture(chart)) }
        p class="cap" { (voice.say(&TradeOffPhrase::Figure)) }
    }
}

fn picture(chart: &Chart<'_>) -> Markup {
    let Chart { trade, drawn, named, chosen, tapped, .. } = *chart;
    let mut pen = SvgWriter::default();
    axes(&mut pen, chart);
    pen.path("f-cloth f-dash", &drawn.front);
    let is_named = |place: usize| named.iter().any(|(other, _)| *other == place);
    for place in (0..trade.ways.len()).filter(|place| !is_named(*place)) {
        mark(&mut pen, chart, place, HALF[1]);
    }
    // The first names are the most telling: they lie on top.
    for (place, name) in named.iter().rev() {
        let Some(at) = drawn.marks.get(*place) else { continue };
        mark(&mut pen, chart, *place, HALF[0]);
        let is_chosen = *place == chosen;
        if is_chosen || tapped == Some(*place) {
            let [x, y] = at.at.map(tenths);
            let class = if is_chosen { "f-limit" } else { "f-limit f-dash" };
            pen.add(&html! { circle class=(class) cx=(x) cy=(y) r="17" {} });
        }
        if let Some([x, y]) = at.name {
            pen.text(if is_chosen { "t-b t-halo" } else { "t-halo" }, x, y, name);
        }
    }
    pen.done()
}

/// The mark of a recipe's verdict, and the place to tap it.
fn mark(pen: &mut SvgWriter, chart: &Chart<'_>, place: usize, half: f64) {
    let (Some(recipe), Some(mark)) = (chart.trade.ways.get(place), chart.drawn.marks.get(place)) else {
        return;
    };
    let ([x, y], side) = (mark.at, 2.0 * half);
    let (class, inside) = (icon::verdict_class(recipe.verdict), icon::mark(recipe.verdict));
    pen.add(&html! {
        svg class=(class) x=(tenths(x - half)) y=(tenths(y - half)) width=(side) height=(side)
            viewBox="0 0 96 96" { (PreEscaped(inside)) }
        circle class="tap" data-do=(Action::TapTradeOff(place)) cx=(tenths(x)) cy=(tenths(y)) r="24" {}
    });
}

fn axes(pen: &mut SvgWriter, chart: &Chart<'_>) {
    let Chart { trade, drawn, money, voice, .. } = *chart;
    let (left, right, top, foot) = (drawn.pays.start, drawn.pays.end, drawn.gets.end, drawn.gets.start);
    let numeral = Numeral(voice.language);
    for (y, value, digits) in &drawn.gets_ticks {
        pen.line("f-grid", [left, *y], [right, *y]);
        let words = match trade.gets {
            Scale::Late => voice.on_scale(Scale::Late, *value),
            _ => numeral.fixed(*value, *digits),
        };
        pen.text("t-e", left - 10.0, y + 6.0, &words);
    }
    for (x, value, digits) in &drawn.pays_ticks {
        pen.line("f-axis", [*x, foot], [*x, foot + 8.0]);
        pen.text("t-m", *x, foot + 27.0, &numeral.fixed(*value, *digits));
    }
    let along = if trade.pays == Scale::Pace { "←" } else { "→" };
    pen.text("t-b t-e", right, HEIGHT - 10.0, &format!("{} {along}", scale_name(trade.pays, money, voice)));
    pen.text("t-b", 0.0, 17.0, &format!("{} ↑", voice.scale(trade.gets)));
    pen.path("f-axis", &format!("M{left} {top}V{foot}H{right}"));
}

/// A scale by its name; what is money, with its sign.
fn scale_name(scale: Scale, money: &str, voice: Voice) -> String {
    let sign = if scale == Scale::Cost { money } else { "" };
    format!("{}{sign}", voice.scale(scale))
}

/// The tapped recipe in words, and the button that chooses it.
fn tapped_recipe(report: &Report, recipe: &RecipeScores, chosen: bool, voice: Voice) -> Markup {
    let said = voice.say(&TradeOffPhrase::Looked {
        recipe: voice.recipe(recipe),
        cost: voice.on_scale(Scale::Cost, recipe.cost),
        late: voice.on_scale(Scale::Late, recipe.late),
        pace: voice.on_scale(Scale::Pace, recipe.pace),
    });
    html! {
        div class="say" {
            (markup::mark(recipe.verdict))
            div {
                p { b { (voice.verdict_short(recipe.verdict)) "." } " " (said) }
                @if chosen {
                    p { b { (voice.label(Label::Chosen)) } }
                } @else if let Some(pick) = recipe.pick.and_then(|place| report.picks.get(place)) {
                    @let words = format!("{} {}", voice.label(Label::Use), pick.name);
                    (markup::button("", &Action::ChoosePick(key(pick)), &words))
                } @else {
                    p class="cap" { (voice.say(&TradeOffPhrase::NotBest { white: recipe.name.clone() })) }
                }
            }
        }
    }
}

/// Whether there is something to choose, with figures to show.
pub(super) fn has_figures(report: &Report) -> bool {
    let recipes = report.trade.as_ref().map_or(&[][..], |trade| &trade.ways);
    recipes.len() > 1 && recipes.iter().any(|recipe| recipe.pick.is_some())
}

/// Every recipe as a row.
pub(super) fn figures(report: &Report, money: &str, voice: Voice) -> Markup {
    let Some(trade) = &report.trade else { return Markup::default() };
    let scales = [Scale::Late, Scale::Cost, Scale::Pace, Scale::Hand, Scale::Cover];
    let heads = html! {
        (markup::mark_column(voice.label(Label::Verdict)))
        th scope="col" { (voice.label(Label::White)) }
        @for scale in scales { th scope="col" class="r" { (scale_name(scale, money, voice)) } }
    };
    let rows = html! {
        @for recipe in &trade.ways {
            tr {
                (markup::mark_cell(recipe.verdict, voice.verdict_short(recipe.verdict)))
                td {
                    b { (voice.recipe(recipe)) } " "
                    @if recipe.front { (voice.say(&TradeOffPhrase::OnTheLine)) }
                }
                @for scale in scales { td class="r" { (voice.on_scale(scale, recipe.value(scale))) } }
            }
        }
    };
    markup::table(&voice.say(&TradeOffPhrase::Title), &heads, &rows)
}
