//! Messages between tabs of the page: that something was saved, and which tab has opened.

use wasm_bindgen::prelude::*;
use web_sys::{BroadcastChannel, MessageEvent};

/// A channel to the other tabs. Where the browser has none, tabs read the store again when they come to the front.
pub struct TabChannel {
    channel: Option<BroadcastChannel>,
}

impl TabChannel {
    /// Opens the channel of this name.
    #[must_use]
    pub fn open(name: &str) -> Self {
        Self { channel: BroadcastChannel::new(name).ok() }
    }

    /// Sends a message to the other tabs.
    pub fn tell(&self, word: &str) {
        if let Some(channel) = &self.channel {
            // A channel that was closed with its page needs no more messages.
            let _ = channel.post_message(&word.into());
        }
    }

    /// Calls `then` with every message of another tab.
    pub fn listen(&self, then: impl Fn(&str) + 'static) {
        let Some(channel) = &self.channel else { return };
        let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(word) = event.data().as_string() {
                then(&word);
            }
        });
        let _ = channel.add_event_listener_with_callback("message", heard.as_ref().unchecked_ref());
        // The channel lives as long as its page.
        heard.forget();
    }
}

/// Calls `then` each time this tab comes to the front.
pub fn when_in_front(then: impl Fn() + 'static) {
    let Some(window) = web_sys::window() else { return };
    let came = Closure::<dyn FnMut()>::new(then);
    let _ = window.add_event_listener_with_callback("focus", came.as_ref().unchecked_ref());
    // The window lives as long as its page.
    came.forget();
}
