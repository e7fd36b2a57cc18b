//! The answer: verdict, white, dryer figures, two rules, the print run, why, what would change it, other ways.

use super::advice::{cannot, careful, changes, is_change, other_ways, to_do, worth_knowing};
use super::cloth::{colours, knit, on_this_cloth};
use super::garments::every_garment;
use super::margins::every_margin;
use super::{icon, rule, run, trade};
use crate::desk::picture::cloth::Swatches;
use crate::desk::{Field, Msg, Screen, State, key};
use crate::optics::Lab;
use crate::plan::{Code, Margin, Pick, Reason, Report, Step, Topic, Verdict};
use crate::web::desk::Desk;
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice, lead};
use leptos::either::Either;
use leptos::prelude::*;

/// What the answer is drawn from: it is drawn anew only when one of these differs.
#[derive(Clone, PartialEq)]
pub(super) struct Shown {
    /// Of which order.
    pub(super) title: String,
    pub(super) report: Option<Report>,
    pub(super) chosen: Option<String>,
    pub(super) voice: Voice,
    pub(super) cloth: Option<Lab>,
    pub(super) days: f64,
    pub(super) stale: bool,
    pub(super) broken: bool,
    /// What the labels of the order's garments say.
    pub(super) labels: Vec<String>,
}

impl Shown {
    fn of(state: &State) -> Self {
        Self {
            title: state.title.clone(),
            report: state.report.clone(),
            chosen: state.pick().map(key),
            voice: state.voice(),
            cloth: state.cloth,
            days: state.order.as_ref().map_or(90.0, |order| order.use_.looked_at_after_days),
            stale: state.stale(),
            broken: !state.errors.is_empty(),
            labels: state.order.as_ref().map_or_else(Vec::new, |order| {
                order.garments.iter().map(|garment| garment.label.clone()).collect()
            }),
        }
    }
}

/// The answer column.
pub fn answer(desk: Desk) -> impl IntoView {
    let shown = desk.memo(Shown::of);
    let busy = desk.memo(|state| state.asked.is_some());
    let turns = StoredValue::new((String::new(), false));
    view! {
        <section
            class="answer"
            aria-labelledby="verdict"
            aria-busy=move || if busy.get() { "true" } else { "false" }
        >
            {move || {
                let shown = shown.get();
                let drawn = match &shown.report {
                    None => nothing_yet(shown.voice, shown.broken).into_any(),
                    Some(report) => answered(desk, &shown, report).into_any(),
                };
                // Another order is built beside the page and put in its place: to change every word of the one before
                // where it stands takes longer. What is changed in an order keeps the folds that were opened.
                let turned = turns.try_update_value(|(title, turned)| {
                    *turned ^= *title != shown.title;
                    title.clone_from(&shown.title);
                    *turned
                });
                if turned == Some(true) { Either::Left(drawn) } else { Either::Right(drawn) }
            }}
        </section>
    }
}

fn nothing_yet(voice: Voice, broken: bool) -> impl IntoView {
    let say = voice.label(if broken { Label::NoAnswerSay } else { Label::Reckoning });
    view! {
        <div class="plate plate-ask">
            <svg class="plate-mark" viewBox="0 0 96 96" aria-hidden="true" inner_html=icon::OPEN></svg>
            <div>
                <p class="plate-word" id="verdict">{voice.label(Label::NoAnswerYet)}</p>
                <p class="plate-say">{say}</p>
            </div>
        </div>
    }
}

fn answered(desk: Desk, shown: &Shown, report: &Report) -> impl IntoView + use<> {
    let voice = shown.voice;
    let pick = report.picks.iter().find(|pick| Some(key(pick)) == shown.chosen).or(report.picks.first());
    let body = match pick {
        Some(pick) => picked(desk, shown, report, pick).into_any(),
        None => refused(desk, shown, report).into_any(),
    };
    view! {
        {shown.stale.then(|| stale(desk, voice))}
        {body}
        {cannot(report, voice)}
        {careful(report, voice)}
    }
}

/// Says whose answer this is while the form cannot be read.
fn stale(desk: Desk, voice: Voice) -> impl IntoView {
    view! {
        <div class="stale" role="note">
            <p><b>{voice.label(Label::Stale)}". "</b>{voice.label(Label::StaleSay)}</p>
            <button class="btn" type="button" on:click=move |_| desk.send(Msg::BackToReadable)>
                {icon::icon(24, icon::UNDO)}
                {voice.label(Label::BackToThat)}
            </button>
        </div>
    }
}

fn plate(verdict: Verdict, voice: Voice, say: String, action: Option<AnyView>) -> impl IntoView {
    let class = match verdict {
        Verdict::Go | Verdict::GoWithCheck => "plate plate-go",
        Verdict::Trial => "plate plate-trial",
        Verdict::Refuse => "plate plate-no",
    };
    let mark = if verdict == Verdict::Refuse { "plate-mark c-no" } else { "plate-mark" };
    view! {
        <div class=class>
            <svg class=mark viewBox="0 0 96 96" aria-hidden="true" inner_html=icon::mark(verdict)></svg>
            <div>
                <p class="plate-word" id="verdict">{voice.verdict(verdict)}</p>
                <p class="plate-say">{say}</p>
            </div>
            {action}
        </div>
    }
}

fn show_window(desk: Desk, voice: Voice) -> AnyView {
    view! {
        <a class="btn btn-main" href="#window" on:click=move |event| desk.follow_link(&event, Screen::Window)>
            {voice.label(Label::ShowWindow)}
        </a>
    }
    .into_any()
}

fn refused(desk: Desk, shown: &Shown, report: &Report) -> impl IntoView + use<> {
    let voice = shown.voice;
    let first =
        why_not(report).map_or_else(|| voice.label(Label::RefuseSay).to_owned(), |it| voice.reason(it));
    view! {
        {plate(Verdict::Refuse, voice, first, report.closed.is_some().then(|| show_window(desk, voice)))}
        {sum_line(desk)}
        {every_garment(report, &shown.labels, voice)}
        {changes(desk, report, voice)}
        {trade::trade(desk, report.trade.as_ref(), voice)}
    }
}

/// The one reason that rules out everything, if there is one: said of the order, or the same for every white.
fn why_not(report: &Report) -> Option<&Reason> {
    let of_order = report.to_make_it_possible.iter().find(|reason| !is_change(reason.code));
    let mut firsts = report.rejected.iter().filter_map(|rejected| rejected.reasons.first());
    let first = firsts.next();
    let shared =
        first.filter(|first| first.code != Code::ClothBleeds && firsts.all(|other| other.code == first.code));
    of_order.or(shared)
}

fn picked(desk: Desk, shown: &Shown, report: &Report, pick: &Pick) -> impl IntoView + use<> {
    let voice = shown.voice;
    let colours = colours(shown, pick);
    let rules =
        leading(pick).into_iter().map(|margin| rule::rule_view(margin, voice, shown.days)).collect_view();
    view! {
        {knit(colours.as_ref())}
        {plate(pick.verdict, voice, what_to_do(pick, voice), Some(show_window(desk, voice)))}
        {facts(pick, voice, colours.as_ref())}
        <div class="rules">{rules}</div>
        {sum_line(desk)}
        {every_garment(report, &shown.labels, voice)}
        {run::run(pick, voice)}
        {why(pick, voice)}
        {on_this_cloth(shown, pick, colours.as_ref())}
        {changes(desk, report, voice)}
        {to_do(pick, voice)}
        {trade::trade(desk, report.trade.as_ref(), voice)}
        {other_ways(desk, report, pick, voice)}
        {worth_knowing(report, voice)}
        {every_margin(pick, voice)}
    }
}

/// The sentence on the plate.
fn what_to_do(pick: &Pick, voice: Voice) -> String {
    match (pick.verdict, &pick.trial) {
        (Verdict::Go, _) => voice.label(Label::GoSay).into(),
        (Verdict::GoWithCheck, _) => voice.label(Label::GoWithCheckSay).into(),
        (Verdict::Trial, Some(trial)) if trial.hours > 0.0 => {
            let numeral = Numeral(voice.language);
            voice.say(&Phrase::TrialSay {
                pieces: trial.pieces,
                hours: numeral.short(trial.hours, 0),
                oven: voice.quantity(Quantity::Temperature, trial.oven_c),
                mark: numeral.fixed(trial.pass_mark, 1),
                days: numeral.short(trial.stands_for_days, 0),
            })
        }
        (Verdict::Trial, trial) => {
            voice.say(&Phrase::TrialLook { pieces: trial.as_ref().map_or(2, |trial| trial.pieces) })
        }
        (Verdict::Refuse, _) => voice.label(Label::RefuseSay).into(),
    }
}

fn facts(pick: &Pick, voice: Voice, colours: Option<&Swatches>) -> impl IntoView + use<> {
    let class =
        voice.say(&Phrase::WhiteOf { class: voice.class(pick.class).into(), low_cure: pick.low_cure });
    let mix = pick
        .mix
        .iter()
        .map(|(name, share)| (name.clone(), voice.quantity(Quantity::Percent, *share)))
        .collect::<Vec<_>>();
    let under = if mix.is_empty() { class } else { voice.say(&Phrase::MixOf { class, parts: mix }) };
    let passes = pick.steps.iter().find_map(|step| match step {
        Step::Dryer { passes } => Some(*passes),
        _ => None,
    });
    let figures = pick.setting.map(|setting| {
        let unit = |quantity: Quantity| quantity.unit(voice.units, voice.language);
        let low = voice.bare(Quantity::Belt, setting.belt_m_per_min - setting.hold_belt_m_per_min);
        let high = voice.bare(Quantity::Belt, setting.belt_m_per_min + setting.hold_belt_m_per_min);
        let hold = voice.quantity(Quantity::TemperatureDifference, setting.hold_c);
        view! {
            <div>
                <dt>{voice.label(Label::DryerAir)}</dt>
                <dd data-fact="air">
                    {voice.bare(Quantity::Temperature, setting.air_c)}<small>{unit(Quantity::Temperature)}</small>
                </dd>
                <dd class="under">{voice.say(&Phrase::HoldWithin { value: hold })}</dd>
            </div>
            <div>
                <dt>{voice.label(Label::Belt)}</dt>
                <dd data-fact="belt">
                    {voice.bare(Quantity::Belt, setting.belt_m_per_min)}<small>{unit(Quantity::Belt)}</small>
                </dd>
                <dd class="under">{voice.say(&Phrase::To { low, high })}</dd>
            </div>
            <div>
                <dt>{voice.label(Label::InTheHeat)}</dt>
                <dd data-fact="dwell">
                    {voice.bare(Quantity::Seconds, setting.dwell_s.round())}<small>"s"</small>
                </dd>
                <dd class="under">{voice.say(&Phrase::PassCount { count: passes.unwrap_or(1) })}</dd>
            </div>
        }
    });
    let chip = colours.map(|colours| {
        let fresh = colours.fresh.clone();
        let turned = colours.turned.get(1).cloned().unwrap_or_default();
        view! {
            <dd class="chip-cell">
                <svg class="chip true-colour" viewBox="0 0 132 92" aria-hidden="true">
                    <rect width="132" height="92" fill="url(#knit)"></rect>
                    <circle cx="66" cy="46" r="36" fill=fresh></circle>
                    <path d="M66 10a36 36 0 0 1 0 72z" fill=turned></path>
                </svg>
            </dd>
        }
    });
    view! {
        <dl class="facts">
            <div class="facts-name">
                <dt>{voice.label(Label::White)}</dt>
                <dd data-fact="white">{pick.name.clone()}</dd>
                <dd class="under">{under}</dd>
                {chip}
            </div>
            {figures}
        </dl>
    }
}

/// The two margins to lead with: bleed and fusion, completed by the tightest others.
fn leading(pick: &Pick) -> Vec<&Margin> {
    let of = |topic| pick.margins.iter().find(move |margin| margin.what == topic);
    let mut leading: Vec<&Margin> = [of(Topic::Bleed), of(Topic::Fusion)].into_iter().flatten().collect();
    for margin in &pick.margins {
        if leading.len() < 2 && !leading.iter().any(|other| other.what == margin.what) {
            leading.push(margin);
        }
    }
    leading
}

/// In portrait the order lies below: one line of it, and the way there.
fn sum_line(desk: Desk) -> impl IntoView {
    view! {
        <button class="btn btn-wide sum" type="button" on:click=move |_| desk.focus("order")>
            <span>{move || desk.text(Field::Label)}</span>
            <b>{move || desk.label(Label::Change)}</b>
        </button>
    }
}

fn why(pick: &Pick, voice: Voice) -> impl IntoView + use<> {
    let sure = voice.say(&Phrase::HowSure { chance: voice.chance(1.0 - pick.fail_later.likely) });
    let reasons = pick
        .reasons
        .iter()
        .map(|reason| {
            let text = voice.reason(reason);
            let (head, rest) = lead(&text);
            let (sign, class) = icon::reason(reason.code);
            view! {
                <li>
                    <span class=class>{icon::icon(28, sign)}</span>
                    <p><b>{head.to_owned()}</b>" "{rest.to_owned()}</p>
                </li>
            }
        })
        .collect_view();
    view! {
        <div class="blk">
            <h2 class="sec-head">{voice.label(Label::Why)}" "<span class="aside">{sure}</span></h2>
            <ol class="why">{reasons}</ol>
        </div>
    }
}
