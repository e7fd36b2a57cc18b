//! For every hand and eye: each screen by axe-core, by touch, by keyboard alone, twice as large, calm and in the reader's
//! own colours.

use crate::browser::axe;
use crate::browser::fixture::Fixture;
use crate::browser::screens::DeskScreen;
use crate::browser::screens::accessibility::Focus;
use crate::browser::tablet::Tablet;
use anyhow::{Result, ensure};
use serde_json::json;

async fn axe_over_all(fixture: &Fixture, tablet: Tablet<'_>, colours: &str) -> Result<()> {
    let script = axe::script(&fixture.workspace)?;
    let desk = tablet.open_file().await?;
    let mut wrong = Vec::new();
    for language in ["English", "Spanish"] {
        for screen in DeskScreen::ALL {
            desk.go_to(screen).await?;
            let left = desk.patterns_left_out().await?;
            ensure!(left.is_empty(), "{screen}: patterns that are left out below the fold: {left:?}");
            let found = axe::findings(&desk, &script).await?;
            wrong.extend(found.into_iter().map(|it| format!("{screen}, {colours}, {language}: {it}")));
        }
        desk.change_language().await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    // That it looks into the desk at all: a field without a name is found.
    desk.add_nameless_field().await?;
    let found = axe::findings(&desk, &script).await?;
    ensure!(found.iter().any(|it| it.contains("label")), "axe does not look into the desk: {found:?}");
    desk.close().await
}

pub async fn axe_finds_nothing_in_light_colours(fixture: &Fixture) -> Result<()> {
    axe_over_all(fixture, fixture.tablet(), "light").await
}

pub async fn axe_finds_nothing_in_dark_colours(fixture: &Fixture) -> Result<()> {
    axe_over_all(fixture, fixture.tablet().portrait().dark(), "dark").await
}

/// Every target takes a finger, and nothing is broken or lies past the edge when all is twice as large: the page by the
/// browser's zoom, or the letters alone by what is set on the device.
pub async fn every_screen_takes_a_finger_and_twice_the_size(fixture: &Fixture) -> Result<()> {
    let mut wrong = Vec::new();
    for (name, tablet, letters) in [
        ("landscape", fixture.tablet(), 16),
        ("portrait", fixture.tablet().portrait(), 16),
        ("200 %", fixture.tablet().sized(640, 400), 16),
        ("200 %, portrait", fixture.tablet().sized(400, 640), 16),
        ("large letters", fixture.tablet(), 32),
        ("large letters, portrait", fixture.tablet().portrait(), 32),
    ] {
        let desk = tablet.open_file().await?;
        let sizes = json!({ "fontSizes": { "standard": letters } });
        desk.session().devtools("Page.setFontSizes", sizes).await?;
        for screen in DeskScreen::ALL {
            desk.go_to(screen).await?;
            for (what, found) in [
                ("smaller than a finger", desk.too_small_for_a_finger().await?),
                ("broken words", desk.broken_words().await?),
                ("past the edge", desk.past_the_edge().await?),
            ] {
                if !found.is_empty() {
                    wrong.push(format!("{screen}, {name}, {what}: {}", found.join(", ")));
                }
            }
        }
        desk.close().await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    Ok(())
}

/// The tabulator reaches everything, and the focus is seen wherever it is.
pub async fn every_screen_is_used_by_keyboard_alone(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let mut wrong = Vec::new();
    for screen in DeskScreen::ALL {
        desk.go_to(screen).await?;
        let all = desk.reachable().await?;
        desk.forget_focus().await?;
        let mut reached = 0;
        // Once round, and a little more for the browser's own stops.
        for _ in 0..all + 4 {
            match desk.press_tab().await? {
                Focus::Seen => reached += 1,
                Focus::Again | Focus::Nowhere => {}
                Focus::Unseen(what) => {
                    reached += 1;
                    wrong.push(format!("{screen}: the focus on {what} is not seen"));
                }
            }
        }
        if reached < all {
            wrong.push(format!("{screen}: of {all} things {reached} are reached"));
        }
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    desk.close().await
}

/// A reader who wants no motion gets none; one who brings colours of their own reads every screen in them.
pub async fn every_screen_is_calm_and_takes_the_readers_colours(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().open_file().await?;
    let wish = json!({ "features": [
        { "name": "prefers-reduced-motion", "value": "reduce" }, { "name": "forced-colors", "value": "active" } ] });
    desk.session().devtools("Emulation.setEmulatedMedia", wish).await?;
    for screen in DeskScreen::ALL {
        desk.go_to(screen).await?;
        let moving = desk.moving().await?;
        ensure!(moving == 0, "{screen}: {moving} things move");
        ensure!(desk.takes_readers_colours().await?, "{screen}: the reader's colours are not taken");
    }
    desk.close().await
}
