//! For every hand and eye: each screen by axe-core, by touch, by keyboard alone, twice as large, calm and in the reader's
//! own colours.

use crate::browser::drive::axe;
use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use crate::browser::drive::tablet::Tablet;
use anyhow::{Result, ensure};
use serde_json::json;

const SCREENS: [&str; 8] = ["job", "window", "forecast", "shop", "library", "wrong", "sheet", "settings"];

/// What is to be tapped and is smaller than a finger, by its words. Text inside a sentence and what is moved out of
/// sight for readers do not count; a slider is held along its whole length.
const TOO_SMALL: &str = "const root = document.querySelector('whitehold-desk').shadowRoot;
    const small = [];
    for (const it of root.querySelectorAll('button, a, input:not(.sr), textarea, select, summary, label.btn')) {
        if (!it.checkVisibility({ checkVisibilityCSS: true }) || it.disabled || it.closest('.sr, .skip')) continue;
        const box = it.getBoundingClientRect();
        if (box.width < 47.5 || box.height < 47.5) small.push((it.innerText || it.id || it.className) + ' ' + box.width.toFixed(0) + 'x' + box.height.toFixed(0));
    }
    return small;";

/// How far the page reaches past its right edge, and what reaches there.
const SIDEWAYS: &str = "const wide = document.documentElement.clientWidth;
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const past = Array.from(root.querySelectorAll('main *')).filter((it) => it.checkVisibility() && !it.closest('.scroll, .sr, svg')
        && it.getBoundingClientRect().right > wide + 1).slice(0, 3).map((it) => it.className + ' ' + it.getBoundingClientRect().right.toFixed(0));
    return document.documentElement.scrollWidth > wide + 1 ? past.concat(document.documentElement.scrollWidth + ' of ' + wide) : [];";

/// Words that are broken over two lines because they have no room.
const BROKEN: &str = "const root = document.querySelector('whitehold-desk').shadowRoot;
    const broken = [];
    const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
        const holds = text.parentElement;
        if (!holds?.checkVisibility() || holds.closest('.sr, svg, style, textarea')) continue;
        for (const word of text.data.matchAll(/[\\p{L}\\d]{2,}/gu)) {
            const range = document.createRange();
            range.setStart(text, word.index);
            range.setEnd(text, word.index + word[0].length);
            const lines = new Set(Array.from(range.getClientRects(), (line) => line.top.toFixed(0)));
            if (lines.size > 1) broken.push(word[0]);
        }
    }
    return broken.slice(0, 5);";

/// How many things can be reached by the tabulator.
const REACHABLE: &str = "const root = document.querySelector('whitehold-desk').shadowRoot;
    return Array.from(root.querySelectorAll('button, a[href], input, textarea, select, summary, [tabindex=\"0\"]'))
        .filter((it) => !it.disabled && it.tabIndex >= 0 && it.checkVisibility({ checkVisibilityCSS: true })
            && (it.tagName === 'SUMMARY' || !it.closest('details:not([open])'))).length;";

/// Takes those marks away again, and the focus.
const FORGETS: &str = "const root = document.querySelector('whitehold-desk').shadowRoot;
    for (const it of root.querySelectorAll('[data-reached]')) delete it.dataset.reached;
    root.activeElement?.blur();";

/// Marks what has the focus and says whether it was reached before, and whether the focus can be seen.
const REACHED: &str = "const it = document.querySelector('whitehold-desk').shadowRoot.activeElement;
    if (!it) return 'nothing';
    if (it.dataset.reached) return 'again';
    it.dataset.reached = 'yes';
    const seen = (of) => { const style = getComputedStyle(of); return style.outlineStyle !== 'none' || style.strokeWidth === '4px'; };
    const label = it.closest('label');
    return seen(it) || (label && seen(label)) ? 'seen' : 'unseen ' + (it.id || it.innerText || it.className.baseVal || it.className);";

async fn opens(tablet: Tablet<'_>) -> Result<Desk> {
    let desk = tablet.opens_the_file().await?;
    desk.shows("#verdict").await?;
    Ok(desk)
}

async fn shows(fixture: &Fixture, desk: &Desk, screen: &str) -> Result<()> {
    desk.goes_to(&format!("{}#{screen}", fixture.page.file()?)).await?;
    desk.settles().await
}

async fn list(desk: &Desk, script: &str) -> Result<Vec<String>> {
    let found = desk.run(script, vec![]).await?;
    Ok(found.as_array().into_iter().flatten().filter_map(|it| it.as_str().map(str::to_owned)).collect())
}

/// No picture is filled with a pattern that is left out while it is not in view.
async fn pictures_are_whole(desk: &Desk) -> Result<()> {
    let script = "const root = document.querySelector('whitehold-desk').shadowRoot;
        const left = [];
        for (const drawn of root.querySelectorAll('svg *')) {
            const look = getComputedStyle(drawn);
            for (const id of `${look.fill} ${look.stroke}`.matchAll(/url\\([^#]*#([^\"')]+)/g)) {
                let at = root.getElementById(id[1]);
                while (at && getComputedStyle(at).contentVisibility !== 'auto') at = at.parentElement;
                if (at) left.push(id[1]);
            }
        }
        return left;";
    let left = desk.run(script, vec![]).await?;
    ensure!(left == json!([]), "patterns that are left out below the fold: {left}");
    Ok(())
}

async fn axe_over_all(fixture: &Fixture, tablet: Tablet<'_>, colours: &str) -> Result<()> {
    let script = axe::script(&fixture.workspace)?;
    let desk = opens(tablet).await?;
    let mut wrong = Vec::new();
    for language in ["English", "Spanish"] {
        for screen in SCREENS {
            shows(fixture, &desk, screen).await?;
            pictures_are_whole(&desk).await?;
            if let Err(found) =
                axe::finds_nothing(&desk, &script, &format!("{screen}, {colours}, {language}")).await
            {
                wrong.push(found.to_string());
            }
        }
        desk.taps("#language").await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    // That it looks into the desk at all: a field without a name is found.
    desk.run("document.querySelector('whitehold-desk').shadowRoot.querySelector('main').append(document.createElement('input'))", vec![]).await?;
    let found = axe::finds_nothing(&desk, &script, "a field without a name").await;
    ensure!(found.is_err_and(|found| found.to_string().contains("label")), "axe does not look into the desk");
    desk.is_closed().await
}

pub async fn axe_finds_nothing_in_light_colours(fixture: &Fixture) -> Result<()> {
    axe_over_all(fixture, fixture.tablet(), "light").await
}

pub async fn axe_finds_nothing_in_dark_colours(fixture: &Fixture) -> Result<()> {
    axe_over_all(fixture, fixture.tablet().upright().dark(), "dark").await
}

/// Every target takes a finger, and nothing is broken or lies past the edge when all is twice as large: the page by the
/// browser's zoom, or the letters alone by what is set on the device.
pub async fn every_screen_takes_a_finger_and_twice_the_size(fixture: &Fixture) -> Result<()> {
    let mut wrong = Vec::new();
    for (name, tablet, letters) in [
        ("landscape", fixture.tablet(), 16),
        ("portrait", fixture.tablet().upright(), 16),
        ("200 %", fixture.tablet().sized(640, 400), 16),
        ("200 %, upright", fixture.tablet().sized(400, 640), 16),
        ("large letters", fixture.tablet(), 32),
        ("large letters, upright", fixture.tablet().upright(), 32),
    ] {
        let desk = opens(tablet).await?;
        desk.devtools("Page.setFontSizes", json!({ "fontSizes": { "standard": letters } })).await?;
        for screen in SCREENS {
            shows(fixture, &desk, screen).await?;
            for small in list(&desk, TOO_SMALL).await? {
                wrong.push(format!("{screen}, {name}: {small} is smaller than a finger"));
            }
            for word in list(&desk, BROKEN).await? {
                wrong.push(format!("{screen}, {name}: `{word}` is broken"));
            }
            let past = list(&desk, SIDEWAYS).await?;
            if !past.is_empty() {
                wrong.push(format!("{screen}, {name}: it reaches past the edge: {}", past.join(", ")));
            }
        }
        desk.is_closed().await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    Ok(())
}

/// The tabulator reaches everything, and the focus is seen wherever it is.
pub async fn every_screen_is_used_by_keyboard_alone(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture.tablet()).await?;
    let mut wrong = Vec::new();
    for screen in SCREENS {
        shows(fixture, &desk, screen).await?;
        let all = desk.run(REACHABLE, vec![]).await?.as_u64().unwrap_or(0);
        // The frame stays from screen to screen, and with it what was marked.
        desk.run(FORGETS, vec![]).await?;
        let mut reached = 0;
        // Once round, and a little more for the browser's own stops.
        for _ in 0..all + 4 {
            for kind in ["rawKeyDown", "keyUp"] {
                let key = json!({ "type": kind, "key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9 });
                desk.devtools("Input.dispatchKeyEvent", key).await?;
            }
            match desk.run(REACHED, vec![]).await?.as_str().unwrap_or_default() {
                "seen" => reached += 1,
                "again" | "nothing" => {}
                unseen => {
                    reached += 1;
                    wrong.push(format!("{screen}: the focus is {unseen}"));
                }
            }
        }
        if reached < all {
            wrong.push(format!("{screen}: of {all} things {reached} are reached"));
        }
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    desk.is_closed().await
}

/// Who wants no motion gets none; who brings colours of their own reads every screen in them.
pub async fn every_screen_is_calm_and_takes_the_readers_colours(fixture: &Fixture) -> Result<()> {
    let desk = opens(fixture.tablet()).await?;
    let wish = json!({ "features": [
        { "name": "prefers-reduced-motion", "value": "reduce" }, { "name": "forced-colors", "value": "active" } ] });
    desk.devtools("Emulation.setEmulatedMedia", wish).await?;
    for screen in SCREENS {
        shows(fixture, &desk, screen).await?;
        let moves = desk.run("return document.getAnimations().length", vec![]).await?;
        ensure!(moves == 0, "{screen}: {moves} things move");
        let ink = "const root = document.querySelector('whitehold-desk').shadowRoot;
            const of = (colour) => { const it = document.createElement('i'); it.style.color = colour; document.body.append(it);
                const text = getComputedStyle(it).color; it.remove(); return text; };
            const body = getComputedStyle(root.querySelector('.head h1')).color;
            return [body === of('CanvasText'), getComputedStyle(root.querySelector('.btn')).borderTopStyle !== 'none'];";
        let kept = desk.run(ink, vec![]).await?;
        ensure!(kept == json!([true, true]), "{screen}: the reader's colours are not taken: {kept}");
    }
    desk.is_closed().await
}
