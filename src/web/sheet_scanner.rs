//! Reads the code on a photographed job sheet: the browser opens the picture, a canvas that is not shown scales it,
//! and its pixels are read as grey values. The picture never leaves the device.

use crate::library::sheet_code::{SheetCode, SheetCodeError, text_in};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, File, HtmlCanvasElement, ImageBitmap};

/// Longest side of the scaled picture, pixels, in the order in which they are tried: at a camera's own size noise
/// hides the code, at a small one a small code blurs. Found on pictures of printed sheets.
const SIDES: [f64; 3] = [1400.0, 900.0, 2400.0];

/// The sheet code in a picture.
///
/// # Errors
/// [`SheetCodeError`] if the file is no picture, holds no code, or the code is none of a job sheet.
pub async fn sheet_code_in(file: &File) -> Result<SheetCode, SheetCodeError> {
    let picture = bitmap(file).await.map_err(|_| SheetCodeError::NoPicture)?;
    let mut unread = SheetCodeError::NoCode;
    for side in SIDES {
        let (width, height, grey) = pixels(&picture, side).map_err(|_| SheetCodeError::NoPicture)?;
        match text_in(width, height, &grey) {
            Ok(text) => return SheetCode::read(&text),
            Err(SheetCodeError::NoCode) => {}
            Err(why) => unread = why,
        }
    }
    Err(unread)
}

async fn bitmap(file: &File) -> Result<ImageBitmap, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let bitmap = JsFuture::from(window.create_image_bitmap_with_blob(file)?);
    bitmap.await?.dyn_into()
}

/// Width, height and grey pixels of the picture at this size at most.
fn pixels(picture: &ImageBitmap, side: f64) -> Result<(usize, usize, Vec<u8>), JsValue> {
    let document = web_sys::window().and_then(|window| window.document()).ok_or(JsValue::NULL)?;
    let canvas: HtmlCanvasElement = document.create_element("canvas")?.unchecked_into();
    let (wide, high) = (f64::from(picture.width()), f64::from(picture.height()));
    let scale = (side / wide.max(high).max(1.0)).min(1.0);
    let (wide, high) = ((wide * scale).max(1.0).round(), (high * scale).max(1.0).round());
    // A canvas is at most 2400 pixels wide here.
    canvas.set_width(wide as u32);
    canvas.set_height(high as u32);
    let brush: CanvasRenderingContext2d = canvas.get_context("2d")?.ok_or(JsValue::NULL)?.unchecked_into();
    brush.draw_image_with_image_bitmap_and_dw_and_dh(picture, 0.0, 0.0, wide, high)?;
    let pixels = brush.get_image_data(0.0, 0.0, wide, high)?.data();
    // Luma of Rec. 601 in parts of 256; transparent pixels count as paper.
    let grey = pixels.chunks_exact(4).map(|pixel| match *pixel {
        [red, green, blue, shown] => {
            let luma = (77 * u32::from(red) + 150 * u32::from(green) + 29 * u32::from(blue)) >> 8;
            (255 - (255 - luma.min(255)) * u32::from(shown) / 255) as u8
        }
        _ => 255,
    });
    Ok((wide as usize, high as usize, grey.collect()))
}
