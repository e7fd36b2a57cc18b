//! Days at the press: a rush job in red polyester, a day in Spanish, and fields into which anything is written.

use crate::browser::bench::Bench;
use anyhow::{Result, ensure};
use serde_json::json;

/// A red polyester rush job: haste does not make it a bare go, and the sheet carries the same verdict and the days to look.
pub async fn a_red_polyester_rush_job_goes_to_the_press_with_its_care(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_site().await?;
    desk.shows("#verdict").await?;
    desk.types("#label", "100% polyester interlock, 150 g/m2, red").await?;
    desk.says("#understood", "polyester").await?;
    desk.types("#lot", "RUSH-1").await?;
    desk.run("document.querySelector('whitehold-desk').shadowRoot.querySelector('#q-most + .seg button:nth-child(6)').click()", vec![]).await?;
    desk.settles().await?;
    let verdict = desk.shows("#verdict").await?;
    ensure!(verdict != "Go", "red polyester in a hurry is a bare go");
    desk.taps("nav a[href='#window']").await?;
    desk.says(".win", "m/min").await?;
    desk.taps("nav a[href='#sheet']").await?;
    desk.says(".p-verdict", &verdict).await?;
    desk.says(".paper", "RUSH-1").await?;
    desk.says(".p-looks", "the kept piece").await?;
    desk.run("history.back()", vec![]).await?;
    desk.says(".win", "m/min").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// A day in Spanish, from the first order to the sheet and to what went wrong; decimals take a comma.
pub async fn a_spanish_speaking_operator_works_the_day(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().upright().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.taps("#language").await?;
    desk.types("#label", "50% algodón 50% poliéster, punto, 185 g/m2, rojo").await?;
    desk.says("#understood", "algodón").await?;
    for (screen, says) in [
        ("window", "Ventana"),
        ("forecast", "blanco"),
        ("shop", "taller de muestra"),
        ("library", "Biblioteca"),
        ("wrong", "¿Qué se ve en la impresión?"),
        ("sheet", "Primera pieza"),
        ("settings", "Humedad de la sala"),
    ] {
        desk.taps(&format!("nav a[href='#{screen}']")).await?;
        desk.settles().await?;
        let seen = desk
            .run(
                "return document.querySelector('whitehold-desk').shadowRoot.querySelector('.desk').innerText",
                vec![],
            )
            .await?;
        let seen = seen.as_str().unwrap_or_default().to_lowercase();
        ensure!(
            seen.contains(&says.to_lowercase()) || screen == "sheet" && seen.contains("límites"),
            "{screen} does not say `{says}`: {}",
            seen.chars().take(600).collect::<String>()
        );
    }
    desk.taps("nav a[href='#wrong']").await?;
    desk.taps("[data-do='0']").await?;
    desk.types("#ran_belt", "1,2").await?;
    desk.says("#compare", "Como se hizo").await?;
    let tongue = desk.run("return document.documentElement.lang", vec![]).await?;
    ensure!(tongue == "es", "the page says that it is in {tongue}");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}

/// What nobody should write, and somebody does.
const BAD: [&str; 8] = [
    "",
    "999999999999999999999",
    "-5",
    "330 °F oz",
    "🙂🙂",
    "שלום \u{202e}abc",
    "<img src=x onerror=alert(1)><b>&lt;",
    "1e309 NaN Infinity",
];

/// Every field of every screen takes whatever is written: the last answer stays, nothing runs, and the words are words.
pub async fn every_field_takes_whatever_is_written(bench: &Bench) -> Result<()> {
    let desk = bench.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    let mut fields = 0;
    for screen in ["job", "window", "wrong", "shop", "library"] {
        desk.goes_to(&format!("{}#{screen}", bench.file()?)).await?;
        desk.settles().await?;
        let writes = "const [text, done] = arguments;
            const root = document.querySelector('whitehold-desk').shadowRoot;
            const all = Array.from(root.querySelectorAll('input:not([type=file]):not([type=range]), textarea'));
            for (const field of all) {
                field.value = text;
                field.dispatchEvent(new Event('input', { bubbles: true, composed: true }));
                field.dispatchEvent(new Event('blur'));
            }
            setTimeout(() => done([all.length, root.querySelectorAll('img, main b b, script').length]), 250);";
        for bad in BAD.into_iter().chain(["a".repeat(20_000).as_str()]) {
            let seen = desk.awaits(writes, vec![json!(bad)]).await?;
            fields += seen[0].as_u64().unwrap_or(0);
            ensure!(seen[1] == 0, "{screen}: `{bad}` became markup");
        }
    }
    ensure!(fields > 200, "only {fields} times was something written");
    desk.goes_to(&format!("{}#job", bench.file()?)).await?;
    desk.shows("#verdict").await?;
    desk.shows(".stale").await?;
    desk.taps(".stale button").await?;
    desk.says("#verdict", "Trial first").await?;
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
