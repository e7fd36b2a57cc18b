//! The element that the page is drawn in: its shadow root, style sheets, theme, and the page's address.

use crate::desk::{Screen, Theme};
use crate::wording::Language;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CssStyleSheet, HtmlElement, ShadowRoot, ShadowRootInit, ShadowRootMode};

/// The host element and its shadow root.
#[derive(Clone)]
pub struct Host {
    element: HtmlElement,
    root: ShadowRoot,
    standalone: bool,
}

impl Host {
    /// Opens a shadow root on the element, with these style sheets and an empty place for the views.
    ///
    /// # Errors
    /// The browser's exception if the element already has a shadow root, or a sheet cannot be read.
    pub fn open(
        element: HtmlElement,
        styles: &[String],
        standalone: bool,
    ) -> Result<(Self, HtmlElement), JsValue> {
        let root = element.attach_shadow(&ShadowRootInit::new(ShadowRootMode::Open))?;
        let sheets = js_sys::Array::new();
        for text in styles {
            let sheet = CssStyleSheet::new()?;
            sheet.replace_sync(text)?;
            sheets.push(&sheet);
        }
        js_sys::Reflect::set(&root, &"adoptedStyleSheets".into(), &sheets)?;
        let document = element.owner_document().ok_or("an element without a document")?;
        let place: HtmlElement = document.create_element("div")?.unchecked_into();
        root.append_child(&place)?;
        Ok((Self { element, root, standalone }, place))
    }

    /// Sets theme and language on the host.
    pub fn dress(&self, theme: Theme, language: Language) {
        let _ = match theme {
            Theme::Device => self.element.remove_attribute("data-theme"),
            Theme::Light => self.element.set_attribute("data-theme", "light"),
            Theme::Dark => self.element.set_attribute("data-theme", "dark"),
        };
        let _ = self.element.set_attribute("lang", language.tag());
        if self.standalone
            && let Some(page) = self.element.owner_document().and_then(|document| document.document_element())
        {
            let _ = page.set_attribute("lang", language.tag());
        }
    }

    /// The screen in the address; `None` where this is embedded in another page.
    #[must_use]
    pub fn address(&self) -> Option<Screen> {
        if !self.standalone {
            return None;
        }
        Screen::of_hash(&web_sys::window()?.location().hash().ok()?)
    }

    /// Puts a screen into the address, unless it is there already or this is embedded in another page.
    pub fn turn_to(&self, screen: Screen) {
        if self.standalone
            && self.address() != Some(screen)
            && let Some(history) = web_sys::window().and_then(|window| window.history().ok())
        {
            // Only the part after `#` changes. Where a browser forbids even that, Back goes one screen too far.
            let address = format!("#{}", screen.hash());
            let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&address));
        }
    }

    /// True if this is the whole page, false if it is embedded in another.
    #[must_use]
    pub fn standalone(&self) -> bool {
        self.standalone
    }

    /// Scrolls to the top.
    pub fn to_the_top(&self) {
        self.element.scroll_into_view();
    }

    /// Puts the focus on the element of this action, if the focus was lost when that was drawn anew.
    pub fn focus_action(&self, action: &str) {
        if self.root.active_element().is_some() {
            return;
        }
        let action = action.replace(['"', '\\'], "");
        let found = self.root.query_selector(&format!("[data-do=\"{action}\"]")).ok().flatten();
        if let Some(element) = found.and_then(|it| it.dyn_into::<HtmlElement>().ok()) {
            let _ = element.focus();
        }
    }

    /// Scrolls an element into view if it begins below most of the screen, as on a tablet held upright.
    pub fn show(&self, id: &str) {
        let Some(element) = self.root.get_element_by_id(id) else { return };
        let tall = web_sys::window().and_then(|it| it.inner_height().ok()?.as_f64()).unwrap_or_default();
        if element.get_bounding_client_rect().top() > 0.6 * tall {
            element.scroll_into_view();
        }
    }

    /// Puts the focus on an element and scrolls it into view.
    pub fn focus(&self, id: &str) {
        if let Some(element) =
            self.root.get_element_by_id(id).and_then(|it| it.dyn_into::<HtmlElement>().ok())
        {
            element.scroll_into_view();
            let _ = element.focus();
        }
    }
}
