//! The sheet at the press: printed on one page, read back from a picture, and a damaged picture said to be one.

use crate::browser::drive::fixture::Fixture;
use crate::browser::drive::session::Desk;
use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

/// Draws the sheet's code on a canvas, so many pixels a module, and gives it to the input of the screen as a picture.
/// `hurt` blots out the middle of it.
const SHOOTS: &str = "const [hurt, done] = arguments;
    const root = document.querySelector('whitehold-desk').shadowRoot;
    const code = root.querySelector('.p-qr svg');
    const [x, y, side] = code.getAttribute('viewBox').split(' ').map(Number);
    const scale = 6;
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = (side + 10) * scale;
    const brush = canvas.getContext('2d');
    brush.fillStyle = '#e8e6e0';
    brush.fillRect(0, 0, canvas.width, canvas.height);
    brush.translate(5 * scale, 5 * scale);
    brush.scale(scale, scale);
    brush.translate(-x, -y);
    brush.fillStyle = '#222';
    brush.fill(new Path2D(code.querySelector('path').getAttribute('d')));
    if (hurt) { brush.fillStyle = '#777'; brush.fillRect(side / 5, side / 5, side / 2, side / 2); }
    canvas.toBlob((blob) => {
        const files = new DataTransfer();
        files.items.add(new File([blob], 'sheet.png', { type: 'image/png' }));
        const input = root.querySelector('#open-picture');
        input.files = files.files;
        input.dispatchEvent(new Event('change', { bubbles: true, composed: true }));
        done(true);
    });";

async fn photographs(desk: &Desk, hurt: bool) -> Result<()> {
    desk.awaits(SHOOTS, vec![json!(hurt)]).await?;
    desk.shows("#scanned").await?;
    Ok(())
}

/// Pages of the printed sheet on paper of this size, inches.
async fn pages(desk: &Desk, paper: (f64, f64)) -> Result<usize> {
    let wish = json!({ "paperWidth": paper.0, "paperHeight": paper.1, "preferCSSPageSize": false,
        "marginTop": 0.433, "marginBottom": 0.433, "marginLeft": 0.472, "marginRight": 0.472 });
    let printed: Value = desk.devtools("Page.printToPDF", wish).await?;
    let pdf = STANDARD.decode(printed["data"].as_str().context("nothing was printed")?)?;
    let text = String::from_utf8_lossy(&pdf);
    Ok(text.matches("/Type /Page\n").count() + text.matches("/Type /Page ").count())
}

/// Every order of the week is printed on one page, A4 and Letter, in both languages: one half of the week from a stick,
/// the other from the server.
pub async fn the_owner_prints_the_sheets_on_one_page_each(fixture: &Fixture) -> Result<()> {
    let (mut printed, mut wrong) = (0, Vec::new());
    for ((tablet, address), orders) in fixture.both_ways()?.into_iter().zip([1..=6, 7..=12]) {
        let desk = tablet.opens(&address).await?;
        desk.shows("#verdict").await?;
        for order in orders {
            printed += prints(&desk, &address, order, &mut wrong).await?;
        }
        desk.has_no_complaints().await?;
        desk.is_closed().await?;
    }
    ensure!(wrong.is_empty(), "{}", wrong.join("\n"));
    ensure!(printed >= 32, "only {printed} sheets were printed");
    Ok(())
}

/// Prints the sheet of an order of the week on both papers in both languages; hands back how many were printed.
async fn prints(desk: &Desk, address: &str, order: usize, wrong: &mut Vec<String>) -> Result<usize> {
    desk.goes_to(&format!("{address}#job")).await?;
    desk.run(
        "document.querySelector('whitehold-desk').shadowRoot.querySelector('.week').open = true",
        vec![],
    )
    .await?;
    desk.taps(&format!(".week li:nth-child({order}) button")).await?;
    desk.settles().await?;
    desk.goes_to(&format!("{address}#sheet")).await?;
    desk.settles().await?;
    if desk.text(".paper").await?.is_none() {
        // A refused order has nothing to run.
        desk.says(".state", "refused").await?;
        return Ok(0);
    }
    let mut printed = 0;
    for language in ["English", "Spanish"] {
        for (name, paper) in [("A4", (8.27, 11.69)), ("Letter", (8.5, 11.0))] {
            let count = pages(desk, paper).await?;
            let title = desk.shows(".p-head h2").await?;
            if count != 1 {
                let size =
                    "const it = document.querySelector('whitehold-desk').shadowRoot.querySelector('.paper');
                    return it.className + ', ' + it.offsetHeight + ' px high on the screen';";
                let size = desk.run(size, vec![]).await?;
                wrong.push(format!("{title} takes {count} pages of {name} in {language}: {size}"));
            }
            printed += 1;
        }
        desk.taps("#language").await?;
        desk.settles().await?;
    }
    Ok(printed)
}

/// A sheet photographed on one tablet stands in the form of another; a ruined one says so, and changes nothing.
pub async fn a_sheet_is_read_back_from_a_picture(fixture: &Fixture) -> Result<()> {
    let desk = fixture.tablet().opens_the_file().await?;
    desk.shows("#verdict").await?;
    desk.goes_to(&format!("{}#sheet", fixture.page.file()?)).await?;
    desk.shows(".p-head h2").await?;
    let (title, set) = (desk.shows(".p-head h2").await?, desk.shows(".p-set").await?);
    photographs(&desk, true).await?;
    desk.says("#scanned", "too much of it cannot be read").await?;
    desk.taps("#scanned button").await?;
    photographs(&desk, false).await?;
    desk.says("#scanned", "Read from the sheet").await?;
    desk.says(".p-head h2", &title).await?;
    desk.settles().await?;
    let now = desk.shows(".p-set").await?;
    ensure!(now == set, "the setting read back is another: {set} | {now}");
    desk.has_no_complaints().await?;
    desk.is_closed().await
}
