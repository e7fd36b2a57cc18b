//! What is given up for what: sentences, the picture of the ways between two scales, and its table.

use crate::desk::key;
use crate::desk::picture::trade_off::{HEIGHT, TradeOffChart, WIDTH, trade_off_chart};
use crate::plan::{Code, RecipeScores, Report, Scale, TradeOff};
use crate::web::view::widgets::svg::SvgWriter;
use crate::web::view::widgets::{icon, markup};
use crate::wording::{Label, Numeral, TradeOffPhrase, Voice, lead};

/// Sentences and the picture; the count alone where nothing can be chosen. `tapped` is the way that was tapped.
pub(super) fn drawn(
    report: &Report,
    chosen: usize,
    tapped: Option<usize>,
    money: &str,
    voice: Voice,
) -> String {
    let Some(trade) = &report.trade else { return String::new() };
    let place = trade.ways.iter().position(|way| way.pick == Some(chosen));
    let mut said = trade.said_of(chosen).into_iter();
    let count = said.find(|reason| reason.code == Code::WaysCompared).map(|reason| voice.reason(&reason));
    let count = count.unwrap_or_default();
    let Some(chosen) = place else { return format!("<p class=\"cap\">{}</p>", markup::text(&count)) };
    let head = markup::head("trade-head", &voice.say(&TradeOffPhrase::Title), &count);
    let sentences: Vec<String> = said.map(|reason| voice.reason(&reason)).collect();
    let rows: String = sentences
        .iter()
        .map(|sentence| {
            let (head, rest) = lead(sentence);
            format!("<li><b>{}</b> {}</li>", markup::text(head), markup::text(rest))
        })
        .collect();
    let named = names(trade, chosen, tapped);
    let figure = trade_off_chart(trade, &named).map(|drawn| {
        let inside = marks(trade, &drawn, &named, [Some(chosen), tapped], money, voice);
        let title = voice.say(&TradeOffPhrase::Picture {
            pays: voice.scale(trade.pays).into(),
            gets: voice.scale(trade.gets).into(),
            ways: trade.ways.len(),
        });
        let title = markup::text(&format!("{title} {}", sentences.join(" ")));
        let caption = markup::text(&voice.say(&TradeOffPhrase::Figure));
        format!(
            "<svg class=\"fig\" id=\"trade-figure\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" aria-label=\"{title}\">{inside}\
             </svg><p class=\"cap\">{caption}</p>"
        )
    });
    let tapped = tapped.and_then(|at| Some((at, trade.ways.get(at)?)));
    let tapped = tapped.map(|(at, way)| looked(report, way, at == chosen, voice)).unwrap_or_default();
    let figure = figure.unwrap_or_default();
    format!(
        "{head}<ul class=\"trade-say\" id=\"trade-says\">{rows}</ul>{figure}<div id=\"trade-way\" role=\"status\">{tapped}</div>"
    )
}

/// The ways that are named, the chosen one first, then the tapped one, the front, and the other picks.
fn names(trade: &TradeOff, chosen: usize, tapped: Option<usize>) -> Vec<(usize, String)> {
    let mut order = vec![chosen];
    let all = || trade.ways.iter().enumerate();
    let front = all().filter(|(_, way)| way.front);
    let picks = all().filter(|(_, way)| way.pick.is_some());
    for at in tapped.into_iter().chain(front.map(|(at, _)| at)).chain(picks.map(|(at, _)| at)) {
        if !order.contains(&at) {
            order.push(at);
        }
    }
    let name = |at: usize| Some((at, trade.ways.get(at)?.name.clone()));
    order.into_iter().filter_map(name).collect()
}

fn marks(
    trade: &TradeOff,
    drawn: &TradeOffChart,
    named: &[(usize, String)],
    rung: [Option<usize>; 2],
    money: &str,
    voice: Voice,
) -> String {
    let (mut pen, [chosen, _]) = (SvgWriter::default(), rung);
    axes(&mut pen, trade, drawn, money, voice);
    pen.path("f-cloth f-dash", &drawn.front);
    let is_named = |at: usize| named.iter().any(|(other, _)| *other == at);
    for at in (0..trade.ways.len()).filter(|at| !is_named(*at)) {
        mark(&mut pen, trade, drawn, at, 7.0);
    }
    // The first names are the most telling: they lie on top.
    for (at, name) in named.iter().rev() {
        let Some(place) = drawn.marks.get(*at) else { continue };
        mark(&mut pen, trade, drawn, *at, 12.0);
        if rung.contains(&Some(*at)) {
            let [x, y] = place.at;
            let class = if Some(*at) == chosen { "f-limit" } else { "f-limit f-dash" };
            pen.raw(&format!("<circle class=\"{class}\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"17\"/>"));
        }
        if let Some([x, y]) = place.name {
            let class = if Some(*at) == chosen { "t-b t-halo" } else { "t-halo" };
            pen.text(class, x, y, &markup::text(name));
        }
    }
    pen.done()
}

/// The mark of a way's verdict, and the place to tap it.
fn mark(pen: &mut SvgWriter, trade: &TradeOff, drawn: &TradeOffChart, at: usize, half: f64) {
    let (Some(way), Some(place)) = (trade.ways.get(at), drawn.marks.get(at)) else { return };
    let ([x, y], side) = (place.at, 2.0 * half);
    let (class, inside) = (icon::verdict_class(way.verdict), icon::mark(way.verdict));
    pen.raw(&format!(
        "<svg class=\"{class}\" x=\"{:.1}\" y=\"{:.1}\" width=\"{side}\" height=\"{side}\" viewBox=\"0 0 96 96\">{inside}</svg>\
         <circle class=\"tap\" data-do=\"{at}\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"24\"/>",
        x - half,
        y - half
    ));
}

fn axes(pen: &mut SvgWriter, trade: &TradeOff, drawn: &TradeOffChart, money: &str, voice: Voice) {
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

/// A scale by its name as markup; what is money, with its sign.
fn scale_name(scale: Scale, money: &str, voice: Voice) -> String {
    let sign = if scale == Scale::Cost { money } else { "" };
    markup::text(&format!("{}{sign}", voice.scale(scale)))
}

/// The tapped way in words, and the button that chooses it.
fn looked(report: &Report, way: &RecipeScores, chosen: bool, voice: Voice) -> String {
    let said = voice.say(&TradeOffPhrase::Looked {
        way: voice.tried(way),
        cost: voice.on_scale(Scale::Cost, way.cost),
        late: voice.on_scale(Scale::Late, way.late),
        pace: voice.on_scale(Scale::Pace, way.pace),
    });
    let pick = way.pick.and_then(|at| report.picks.get(at));
    let then = match pick {
        _ if chosen => format!("<p><b>{}</b></p>", voice.label(Label::Chosen)),
        Some(pick) => {
            let words = format!("{} {}", voice.label(Label::Use), pick.name);
            markup::button("", &format!("use:{}", key(pick)), &words)
        }
        None => {
            let words = voice.say(&TradeOffPhrase::NotBest { white: way.name.clone() });
            format!("<p class=\"cap\">{}</p>", markup::text(&words))
        }
    };
    format!(
        "<div class=\"say\">{}<div><p><b>{}.</b> {}</p>{then}</div></div>",
        markup::mark(way.verdict),
        voice.verdict_short(way.verdict),
        markup::text(&said)
    )
}

/// Whether there is something to choose, with figures to show.
pub(super) fn has_figures(report: &Report) -> bool {
    let ways = report.trade.as_ref().map_or(&[][..], |trade| &trade.ways);
    ways.len() > 1 && ways.iter().any(|way| way.pick.is_some())
}

/// Every way as a row.
pub(super) fn figures(report: &Report, money: &str, voice: Voice) -> String {
    let Some(trade) = &report.trade else { return String::new() };
    let scales = [Scale::Late, Scale::Cost, Scale::Pace, Scale::Hand, Scale::Cover];
    let heads: String = scales
        .iter()
        .map(|scale| format!("<th scope=\"col\" class=\"r\">{}</th>", scale_name(*scale, money, voice)))
        .collect();
    let row = |way: &RecipeScores| {
        let cells: String = scales
            .iter()
            .map(|scale| format!("<td class=\"r\">{}</td>", voice.on_scale(*scale, way.value(*scale))))
            .collect();
        let line = if way.front { voice.say(&TradeOffPhrase::OnTheLine) } else { String::new() };
        format!(
            "<tr>{}<td><b>{}</b> {line}</td>{cells}</tr>",
            markup::mark_cell(way.verdict, voice.verdict_short(way.verdict)),
            markup::text(&voice.tried(way)),
        )
    };
    let rows: String = trade.ways.iter().map(row).collect();
    let heads = format!(
        "<th class=\"mk\"><span class=\"sr\">{}</span></th><th scope=\"col\">{}</th>{heads}",
        voice.label(Label::Verdict),
        voice.label(Label::White),
    );
    markup::table(&voice.say(&TradeOffPhrase::Title), &heads, &rows)
}
