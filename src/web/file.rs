//! Files out and in: downloads through a link, files that are chosen or dropped, and a file that the browser lets
//! the page write again and again.
//!
//! A download goes through an address of the page's own (`blob:`), which the page's policy allows and which no
//! other page can read. [`Handle`]s exist only in a secure context (`https`, a local file), and not in every
//! browser.
//!
//! **Decision:** the wasm never taps a link: a file goes out through a link that a person taps.
//! **Because:** so the page cannot navigate by itself, which no policy forbids.
//! **Measured:** nothing to measure; decided 2026-11-25.
//! **Reconsider when:** a policy can forbid navigation.

use crate::library::storage_layout::Trouble;
use crate::web::store::trouble;
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{Blob, BlobPropertyBag, DragEvent, Element, Event, File, HtmlInputElement, Url};

/// The largest file that is read, bytes. Assumed; a library of 200,000 readings takes a sixth of it.
pub const MOST_BYTES: f64 = 256.0 * 1024.0 * 1024.0;

/// After this time the browser has read the address of a download, ms. Assumed.
const TAKEN_OVER: i32 = 60_000;

#[wasm_bindgen]
extern "C" {
    /// A file on the disk that the page may write.
    #[wasm_bindgen(js_name = FileSystemFileHandle)]
    type FileHandle;
    #[wasm_bindgen(method, catch, js_class = "FileSystemFileHandle", js_name = createWritable)]
    async fn create_writable(this: &FileHandle) -> Result<JsValue, JsValue>;
    /// Its new content, which replaces the old when it is closed.
    #[wasm_bindgen(js_name = FileSystemWritableFileStream)]
    type Writable;
    #[wasm_bindgen(method, catch, js_class = "FileSystemWritableFileStream")]
    async fn write(this: &Writable, text: &str) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(method, catch, js_class = "FileSystemWritableFileStream")]
    async fn close(this: &Writable) -> Result<JsValue, JsValue>;
    /// The window, as far as it lets a person choose a file to write.
    #[wasm_bindgen(js_name = Window)]
    type Picking;
    #[wasm_bindgen(method, catch, js_class = "Window", js_name = showSaveFilePicker)]
    async fn show_save_file_picker(this: &Picking, options: &Object) -> Result<JsValue, JsValue>;
}

/// Makes the link that is being tapped a download of this text. Call it from the link's `click`, before the browser
/// follows it. The page never clicks a link by itself, so that it cannot send anything anywhere by itself.
///
/// # Errors
/// [`Trouble`] if the browser refuses; the link is then not followed.
pub fn hand_out(tap: &Event, name: &str, text: &str) -> Result<(), Trouble> {
    let give = || -> Result<(), JsValue> {
        let window = web_sys::window().ok_or(JsValue::NULL)?;
        // The listener may be on an outer element, and the tap on words or a drawing inside the link.
        let inmost: Element = tap.composed_path().get(0).dyn_into()?;
        let link = inmost.closest("a")?.ok_or(JsValue::NULL)?;
        let kind = BlobPropertyBag::new();
        kind.set_type("application/json");
        let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &kind)?;
        let address = Url::create_object_url_with_blob(&blob)?;
        link.set_attribute("download", name)?;
        link.set_attribute("href", &address)?;
        let done = Closure::once_into_js(move || {
            // An address that is gone already need not be revoked.
            let _ = Url::revoke_object_url(&address);
        });
        window.set_timeout_with_callback_and_timeout_and_arguments_0(done.unchecked_ref(), TAKEN_OVER)?;
        Ok(())
    };
    give().map_err(|thrown| {
        tap.prevent_default();
        trouble(&thrown)
    })
}

/// The file that was chosen in an `<input type="file">`. The input is emptied, so that the same file can be chosen
/// again.
#[must_use]
pub fn chosen(event: &Event) -> Option<File> {
    let input: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

/// The file that was dropped on an element.
#[must_use]
pub fn dropped(event: &DragEvent) -> Option<File> {
    event.prevent_default();
    event.data_transfer()?.files()?.get(0)
}

/// The file that was chosen in this input, which is emptied.
#[must_use]
pub fn chosen_of(input: &Element) -> Option<File> {
    let input: &HtmlInputElement = input.dyn_ref()?;
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

/// The bytes of a file.
///
/// # Errors
/// [`Trouble`] if it is larger than [`MOST_BYTES`], or the browser cannot read it.
pub async fn bytes(file: &File) -> Result<Vec<u8>, Trouble> {
    if file.size() > MOST_BYTES {
        return Err(Trouble::Full);
    }
    let buffer = wasm_bindgen_futures::JsFuture::from(file.array_buffer());
    let buffer = buffer.await.map_err(|thrown| trouble(&thrown))?;
    Ok(js_sys::Uint8Array::new(&buffer).to_vec())
}

/// The text of a file.
///
/// # Errors
/// [`Trouble`] if it is larger than [`MOST_BYTES`], or the browser cannot read it.
pub async fn text(file: &File) -> Result<String, Trouble> {
    if file.size() > MOST_BYTES {
        return Err(Trouble::Full);
    }
    let text = wasm_bindgen_futures::JsFuture::from(file.text()).await.map_err(|thrown| trouble(&thrown))?;
    text.as_string().ok_or_else(|| Trouble::Failed("no text".into()))
}

/// A file on the disk that the page may write again and again.
pub struct Handle {
    it: FileHandle,
}

impl Handle {
    /// True if this browser lets the page write files.
    #[must_use]
    pub fn can_be_had() -> bool {
        web_sys::window()
            .and_then(|window| Reflect::has(&window, &"showSaveFilePicker".into()).ok())
            .unwrap_or(false)
    }

    /// Lets a file be chosen; `None` if the choice is cancelled. Must follow a tap.
    ///
    /// # Errors
    /// [`Trouble`] if the browser refuses.
    pub async fn choose(name: &str) -> Result<Option<Self>, Trouble> {
        let Some(window) = web_sys::window() else { return Err(Trouble::Refused) };
        let options = Object::new();
        Reflect::set(&options, &"suggestedName".into(), &name.into()).map_err(|thrown| trouble(&thrown))?;
        let window: &Picking = window.unchecked_ref();
        match window.show_save_file_picker(&options).await {
            Ok(it) => Ok(Some(Self { it: it.unchecked_into() })),
            Err(thrown) => match trouble(&thrown) {
                Trouble::Failed(said) if said.starts_with("AbortError") => Ok(None),
                trouble => Err(trouble),
            },
        }
    }

    /// Writes the text as the whole file. The browser replaces the old content when the new is complete, so that a
    /// file is never half written.
    ///
    /// # Errors
    /// [`Trouble`] if it could not be written; the file then has its old content.
    pub async fn write(&self, text: &str) -> Result<(), Trouble> {
        let write = async || -> Result<(), JsValue> {
            let writable: Writable = self.it.create_writable().await?.unchecked_into();
            writable.write(text).await?;
            writable.close().await?;
            Ok(())
        };
        write().await.map_err(|thrown| trouble(&thrown))
    }
}
