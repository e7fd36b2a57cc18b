//! The answer: verdict, white, dryer figures, two rules, the print run, why, what would change it, other ways.

use super::{icon, rule, run};
use crate::desk::picture::cloth::{Swatches, swatches};
use crate::desk::{Choice, Field, Msg, Screen, State, key};
use crate::optics::Lab;
use crate::plan::{Code, Margin, Pick, Reason, Report, Step, Topic, Value, Verdict};
use crate::web::desk::Desk;
use crate::wording::{Label, Numeral, Phrase, Quantity, Voice, lead};
use leptos::prelude::*;

/// What the answer is drawn from: it is drawn anew only when one of these differs.
#[derive(Clone, PartialEq)]
struct Shown {
    report: Option<Report>,
    chosen: Option<String>,
    voice: Voice,
    cloth: Option<Lab>,
    days: f64,
    stale: bool,
    broken: bool,
}

impl Shown {
    fn of(state: &State) -> Self {
        Self {
            report: state.report.clone(),
            chosen: state.pick().map(key),
            voice: state.voice(),
            cloth: state.cloth,
            days: state.order.as_ref().map_or(90.0, |order| order.use_.looked_at_after_days),
            stale: state.stale(),
            broken: !state.errors.is_empty(),
        }
    }
}

/// The answer column.
pub fn answer(desk: Desk) -> impl IntoView {
    let shown = desk.memo(Shown::of);
    let busy = desk.memo(|state| state.asked.is_some());
    view! {
        <section
            class="answer"
            aria-labelledby="verdict"
            aria-busy=move || if busy.get() { "true" } else { "false" }
        >
            {move || {
                let shown = shown.get();
                match &shown.report {
                    None => nothing_yet(shown.voice, shown.broken).into_any(),
                    Some(report) => answered(desk, &shown, report).into_any(),
                }
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
        None => refused(desk, report, voice).into_any(),
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

fn refused(desk: Desk, report: &Report, voice: Voice) -> impl IntoView + use<> {
    let first =
        why_not(report).map_or_else(|| voice.label(Label::RefuseSay).to_owned(), |it| voice.reason(it));
    view! {
        {plate(Verdict::Refuse, voice, first, None)}
        {sum_line(desk)}
        {changes(desk, report, voice)}
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
    let show_window = view! {
        <a class="btn btn-main" href="#window" on:click=move |event| desk.follow_link(&event, Screen::Window)>
            {voice.label(Label::ShowWindow)}
        </a>
    };
    let rules =
        leading(pick).into_iter().map(|margin| rule::rule_view(margin, voice, shown.days)).collect_view();
    view! {
        {knit(colours.as_ref())}
        {plate(pick.verdict, voice, what_to_do(pick, voice), Some(show_window.into_any()))}
        {facts(pick, voice, colours.as_ref())}
        <div class="rules">{rules}</div>
        {sum_line(desk)}
        {run::run(pick, voice)}
        {why(pick, voice)}
        {on_this_cloth(shown, pick, colours.as_ref())}
        {changes(desk, report, voice)}
        {to_do(pick, voice)}
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
    let under = if mix.is_empty() { class } else { voice.say(&Phrase::MixOf { parts: mix }) };
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

/// Colours of the white on the cloth at the good end, most likely, and at the bad end.
fn colours(shown: &Shown, pick: &Pick) -> Option<Swatches> {
    let film = pick.steps.iter().rev().find_map(|step| match step {
        Step::White { film_um, .. } => Some(*film_um),
        _ => None,
    })?;
    let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed).map(|margin| margin.value);
    let differences = bleed.map_or([0.0; 3], |band| [band.low, band.likely, band.high]);
    swatches(shown.cloth?, film, &differences)
}

/// The knit of the cloth, in its own colour, for every picture of this answer.
fn knit(colours: Option<&Swatches>) -> Option<impl IntoView + use<>> {
    let colours = colours?.clone();
    Some(view! {
        <svg class="defs" width="0" height="0" aria-hidden="true">
            <defs>
                <pattern id="knit" width="7" height="8" patternUnits="userSpaceOnUse">
                    <rect width="7" height="8" fill=colours.cloth></rect>
                    <path d="M0 1.5Q2 2 3.5 7Q5 2 7 1.5" fill="none" stroke=colours.shade stroke-width="1.6"></path>
                    <path
                        d="M0 5.5Q1 6 1.75 8M7 5.5Q6 6 5.25 8"
                        fill="none"
                        stroke=colours.light
                        stroke-width="1"
                    ></path>
                </pattern>
            </defs>
        </svg>
    })
}

fn on_this_cloth(shown: &Shown, pick: &Pick, colours: Option<&Swatches>) -> Option<impl IntoView + use<>> {
    let voice = shown.voice;
    let colours = colours?.clone();
    let margin = pick.margins.iter().find(|margin| margin.what == Topic::Bleed)?.clone();
    let write = |value| voice.margin(&margin, value);
    let title = voice.say(&Phrase::ClothTitle {
        likely: write(margin.value.likely),
        high: write(margin.value.high),
        limit: write(margin.limit),
    });
    let circles = colours
        .turned
        .iter()
        .enumerate()
        .map(|(index, turned)| {
            let left = 59.3 + 246.7 * index as f64;
            view! {
                <g transform=format!("translate({left:.1} 0)")>
                    <circle cx="64" cy="66" r="53" fill=colours.fresh.clone()></circle>
                    <path d="M64 13a53 53 0 0 1 0 106z" fill=turned.clone()></path>
                    <path d="M64 2v11M64 119v11" stroke="#fff" stroke-width="3"></path>
                </g>
            }
        })
        .collect_view();
    let named = [
        (Label::BestCase, margin.value.low, None),
        (Label::Likely, margin.value.likely, None),
        (Label::BadEnd, margin.value.high, Some(Label::WorseOneInTen)),
    ]
    .map(|(name, value, note)| {
        let over = value > margin.limit;
        view! {
            <div>
                <dt>{voice.label(name)}</dt>
                <dd class:over=over>
                    {write(value)}" "<small>{note.map(|note| voice.label(note))}</small>
                </dd>
            </div>
        }
    })
    .collect_view();
    let limit = voice.say(&Phrase::LimitAt { value: write(margin.limit) });
    Some(view! {
        <figure class="blk">
            <figcaption class="sec-head">
                {voice.label(Label::OnThisCloth)}" "
                <span class="aside">{voice.label(Label::FreshAndForecast)}</span>
            </figcaption>
            <svg class="fig true-colour" viewBox="0 0 740 132" role="img">
                <title>{title}</title>
                <rect width="740" height="132" fill="url(#knit)"></rect>
                {circles}
            </svg>
            <dl class="three">{named}</dl>
            <p class="cap"><b>{limit}". "</b>{voice.label(Label::ClothFigure)}</p>
        </figure>
    })
}

/// True for a code that says what would change the answer, not why it is so.
fn is_change(code: Code) -> bool {
    matches!(
        code,
        Code::BuyClass
            | Code::UseBlocker
            | Code::IfUndyed
            | Code::IfHotter
            | Code::OtherHeat
            | Code::OtherProcess
    )
}

/// The verdict a change would lead to.
fn leads_to(reason: &Reason) -> Option<Verdict> {
    match reason.values.get("verdict") {
        Some(Value::Word(word)) => serde_json::from_value(serde_json::Value::String(word.clone())).ok(),
        _ => None,
    }
}

/// What would change the answer; what the desk can do at once is a button.
pub fn changes(desk: Desk, report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows: Vec<_> = report
        .to_make_it_possible
        .iter()
        .map(|reason| {
            let text = voice.reason(reason);
            let mark = leads_to(reason).map(|verdict| {
                view! {
                    <span class="num">{voice.verdict_short(verdict)}</span>
                    <span class=icon::verdict_class(verdict)>{icon::icon(96, icon::mark(verdict))}</span>
                }
            });
            if reason.code == Code::IfUndyed {
                view! {
                    <button
                        class="btn"
                        type="button"
                        on:click=move |_| desk.send(Msg::Choose(Choice::Dyed(Some(false))))
                    >
                        <span>{text}</span>
                        {mark}
                    </button>
                }
                .into_any()
            } else {
                view! { <p class="if-row"><span>{text}</span>{mark}</p> }.into_any()
            }
        })
        .collect();
    (!rows.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::WouldChange)}</h2>
                <div class="if">{rows}</div>
            </div>
        }
    })
}

fn to_do(pick: &Pick, voice: Voice) -> impl IntoView + use<> {
    let list = |title: Label, rows: Vec<String>| {
        (!rows.is_empty()).then(|| {
            let rows = rows.into_iter().map(|row| view! { <li>{row}</li> }).collect_view();
            view! {
                <div class="blk">
                    <h2 class="sec-head">{voice.label(title)}</h2>
                    <ul class="plain dashes">{rows}</ul>
                </div>
            }
        })
    };
    let advice = pick.advice.iter().map(|advice| voice.advice(*advice).to_owned()).collect();
    let checks = pick.first_piece.iter().map(|code| voice.code(*code)).collect();
    view! {
        {list(Label::ToDo, advice)}
        {list(Label::FirstPiece, checks)}
    }
}

fn other_ways(desk: Desk, report: &Report, chosen: &Pick, voice: Voice) -> Option<impl IntoView + use<>> {
    let numeral = Numeral(voice.language);
    let rows = report
        .picks
        .iter()
        .map(|pick| {
            let id = key(pick);
            let here = id == key(chosen);
            let base = pick.steps.iter().find_map(|step| match step {
                Step::Blocker { name, .. } => Some(name.clone()),
                _ => None,
            });
            let base = base.map_or_else(
                || voice.label(Label::NoBlocker).to_lowercase(),
                |blocker| voice.say(&Phrase::Needs { blocker }),
            );
            let bleed = pick.margins.iter().find(|margin| margin.what == Topic::Bleed);
            let bleed = bleed.map_or_else(|| "–".into(), |margin| voice.margin(margin, margin.value.likely));
            let choose = if here {
                view! { <b>{voice.label(Label::Chosen)}</b> }.into_any()
            } else {
                let name = format!("{} {}", voice.label(Label::Use), pick.name);
                view! {
                    <button
                        class="btn"
                        type="button"
                        aria-label=name
                        on:click=move |_| desk.send(Msg::Use(id.clone()))
                    >
                        {voice.label(Label::Use)}
                    </button>
                }
                .into_any()
            };
            view! {
                <tr>
                    <td class="mk">
                        <span class=icon::verdict_class(pick.verdict)>
                            {icon::icon(96, icon::mark(pick.verdict))}
                            <span class="sr">{voice.verdict(pick.verdict)}</span>
                        </span>
                    </td>
                    <td><b>{pick.name.clone()}</b><br/>{base}</td>
                    <td class="r">{bleed}</td>
                    <td class="r">{voice.chance(pick.fail_later.likely)}</td>
                    <td class="r">{numeral.fixed(pick.rate_per_hour.likely, 0)}</td>
                    <td class="r">{numeral.fixed(pick.cost_per_print.likely, 2)}</td>
                    <td>{choose}</td>
                </tr>
            }
        })
        .collect_view();
    (report.picks.len() > 1).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">
                    {voice.label(Label::OtherWays)}" "<span class="aside">{voice.label(Label::ShelfFirst)}</span>
                </h2>
                <div class="scroll" tabindex="0" role="region" aria-label=voice.label(Label::OtherWays)>
                    <table class="tbl">
                        <thead>
                            <tr>
                                <th class="mk"><span class="sr">{voice.label(Label::Verdict)}</span></th>
                                <th>{voice.label(Label::White)}</th>
                                <th class="r">{voice.topic(Topic::Bleed)}</th>
                                <th class="r">{voice.label(Label::LateFault)}</th>
                                <th class="r">{voice.label(Label::PerHour)}</th>
                                <th class="r">{voice.label(Label::PerPrint)}</th>
                                <th><span class="sr">{voice.label(Label::Use)}</span></th>
                            </tr>
                        </thead>
                        <tbody>{rows}</tbody>
                    </table>
                </div>
            </div>
        }
    })
}

fn worth_knowing(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .unknowns
        .iter()
        .map(|unknown| {
            let worth = voice.say(&Phrase::Worth { chance: voice.chance(unknown.worth) });
            view! { <p class="if-row"><span>{voice.reason(&unknown.ask)}</span><span class="lab">{worth}</span></p> }
        })
        .collect_view();
    (!report.unknowns.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::WorthKnowing)}</h2>
                <div class="if">{rows}</div>
            </div>
        }
    })
}

/// Every margin as a table: the words behind the pictures.
fn every_margin(pick: &Pick, voice: Voice) -> impl IntoView + use<> {
    let rows = margin_rows(&pick.margins, voice);
    view! {
        <details class="more blk">
            <summary class="btn btn-wide">{voice.label(Label::Margins)}</summary>
            {rows}
        </details>
    }
}

/// Margins as a table.
pub fn margin_rows(margins: &[Margin], voice: Voice) -> impl IntoView + use<> {
    let rows = margins
        .iter()
        .map(|margin| {
            let write = |value| voice.margin(margin, value);
            let range =
                voice.say(&Phrase::To { low: write(margin.value.low), high: write(margin.value.high) });
            let side = match margin.needed {
                crate::plan::Side::AtLeast => Label::AtLeast,
                crate::plan::Side::AtMost => Label::AtMost,
            };
            let needs = format!("{} {}", voice.label(side), write(margin.limit));
            let sign = if margin.holds() {
                ("c-go", icon::TICK)
            } else if margin.holds_likely() {
                ("c-trial", icon::ASK)
            } else {
                ("c-no", icon::CROSS)
            };
            view! {
                <tr>
                    <td class="mk"><span class=sign.0>{icon::icon(24, sign.1)}</span></td>
                    <td><b>{voice.topic(margin.what)}</b></td>
                    <td class="r">{write(margin.value.likely)}</td>
                    <td class="r">{range}</td>
                    <td class="r">{needs}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="region" aria-label=voice.label(Label::Margins)>
            <table class="tbl">
                <thead>
                    <tr>
                        <th class="mk"></th>
                        <th>{voice.label(Label::What)}</th>
                        <th class="r">{voice.label(Label::Value)}</th>
                        <th class="r">{voice.label(Label::Range)}</th>
                        <th class="r">{voice.label(Label::Needs)}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

fn cannot(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .rejected
        .iter()
        .map(|rejected| {
            let reasons = rejected.reasons.first().map(|reason| voice.reason(reason));
            view! {
                <li>
                    <span class="c-no">{icon::icon(96, icon::mark(Verdict::Refuse))}</span>
                    <p><b>{rejected.name.clone()}". "</b>{reasons}</p>
                </li>
            }
        })
        .collect_view();
    (!report.rejected.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::CannotDoIt)}</h2>
                <ul class="why">{rows}</ul>
            </div>
        }
    })
}

fn careful(report: &Report, voice: Voice) -> Option<impl IntoView + use<>> {
    let rows = report
        .cautions
        .iter()
        .map(|caution| {
            view! {
                <div class="warn">
                    <span class="c-heat">{icon::icon(36, icon::caution(caution.code))}</span>
                    <p>{voice.reason(caution)}</p>
                </div>
            }
        })
        .collect_view();
    (!report.cautions.is_empty()).then(|| {
        view! {
            <div class="blk">
                <h2 class="sec-head">{voice.label(Label::Careful)}</h2>
                {rows}
            </div>
        }
    })
}
