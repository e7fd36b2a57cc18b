//! A WebDriver server for Firefox. By hand, because Debian packages no driver for Firefox, and eight commands are little.
//!
//! Started with `--marionette`, Firefox takes WebDriver's commands over a TCP connection: each a JSON list
//! `[0, number, name, parameters]` after its length and a colon. It answers `[1, number, error, result]`. This module speaks
//! WebDriver over http on the other side, so that a story drives Firefox like every other browser.
//! The protocol: <https://firefox-source-docs.mozilla.org/testing/marionette/Protocol.html>.
//!
//! **Decision:** Firefox is driven over its own protocol, Marionette, without a driver program. WebKitGTK's
//! page records its own console.
//! **Because:** Debian ships no driver for Firefox, and the stories need only eight commands; WebKitGTK's
//! driver hands out no console.
//! **Measured:** nothing; decided 2026-11-28 on what Debian ships.
//! **Reconsider when:** Debian packages a driver, or the stories need many more commands.

use crate::page::serve;
use anyhow::{Context, Result, bail};
use http_body_util::{BodyExt, Full};
use hyper::body::{Bytes, Incoming};
use hyper::header::{CONTENT_TYPE, HeaderValue};
use hyper::service::service_fn;
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use serde_json::{Value, json};
use std::convert::Infallible;
use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::sync::Mutex;

/// The WebDriver commands that stories use: the http method, the path after the session's id, and Marionette's name of the
/// command.
const COMMANDS: [(Method, &str, &str); 8] = [
    (Method::POST, "url", "WebDriver:Navigate"),
    (Method::GET, "url", "WebDriver:GetCurrentURL"),
    (Method::POST, "refresh", "WebDriver:Refresh"),
    (Method::POST, "execute/sync", "WebDriver:ExecuteScript"),
    (Method::POST, "execute/async", "WebDriver:ExecuteAsyncScript"),
    (Method::POST, "actions", "WebDriver:PerformActions"),
    (Method::POST, "window/rect", "WebDriver:SetWindowRect"),
    (Method::GET, "screenshot", "WebDriver:TakeScreenshot"),
];

/// Collects what the browser reported since it was last asked: errors and warnings of the page's scripts and of its policy, and
/// what the page wrote to the console. It runs in the browser's own context, not in the page.
const CONSOLE: &str = "
    const storage = Cc['@mozilla.org/consoleAPI-storage;1'].getService(Ci.nsIConsoleAPIStorage);
    const ours = (place) => /^(file|http|blob|data):/.test(place ?? '');
    const said = Services.console.getMessageArray()
        .filter((it) => it instanceof Ci.nsIScriptError && ours(it.sourceName) && !(it.flags & Ci.nsIScriptError.infoFlag))
        .map((it) => it.category + ': ' + it.errorMessage);
    const written = storage.getEvents()
        .filter((it) => ['error', 'warn', 'assert'].includes(it.level) && ours(it.filename))
        .map((it) => it.level + ': ' + it.arguments.join(' '));
    Services.console.reset();
    storage.clearEvents();
    return [...said, ...written].map((message) => ({ level: 'SEVERE', message }));";

/// A connection to a running Firefox.
struct Connection {
    stream: TcpStream,
    number: u64,
}

impl Connection {
    async fn open(port: u16) -> Result<Self> {
        let stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).await?;
        let mut connection = Self { stream, number: 0 };
        let greeting = connection.hears().await?;
        if greeting["marionetteProtocol"] != 3 {
            bail!("Firefox speaks another protocol: {greeting}");
        }
        Ok(connection)
    }

    /// Gives a command and hands back its result, or the browser's own error.
    async fn gives(&mut self, name: &str, parameters: Value) -> Result<Result<Value, Value>> {
        self.number += 1;
        let text = json!([0, self.number, name, parameters]).to_string();
        self.stream.write_all(format!("{}:{text}", text.len()).as_bytes()).await?;
        let mut answer = self.hears().await?;
        if answer[1] != self.number {
            bail!("Firefox answered another command than {name}: {answer}");
        }
        Ok(if answer[2].is_null() { Ok(answer[3].take()) } else { Err(answer[2].take()) })
    }

    async fn hears(&mut self) -> Result<Value> {
        let mut length = 0;
        while let digit @ b'0'..=b'9' = self.stream.read_u8().await.context("Firefox hung up")? {
            length = 10 * length + usize::from(digit - b'0');
        }
        let mut text = vec![0; length];
        self.stream.read_exact(&mut text).await?;
        Ok(serde_json::from_slice(&text)?)
    }

    /// What the browser complained of; asked in the browser's own realm.
    async fn complaints(&mut self) -> Result<Result<Value, Value>> {
        if let Err(error) = self.gives("Marionette:SetContext", json!({ "value": "chrome" })).await? {
            return Ok(Err(error));
        }
        let said = self.gives("WebDriver:ExecuteScript", json!({ "script": CONSOLE, "args": [] })).await?;
        self.gives("Marionette:SetContext", json!({ "value": "content" })).await?.ok();
        Ok(said)
    }
}

/// Drives the Firefox that listens on this port; hands back where the driver answers.
///
/// # Errors
/// [`anyhow::Error`] if the browser does not answer.
pub async fn drive(port: u16) -> Result<SocketAddr> {
    let firefox = Arc::new(Mutex::new(Connection::open(port).await?));
    let (listener, address) = serve::listen(0).await?;
    tokio::spawn(async move {
        while let Ok((stream, _)) = listener.accept().await {
            let firefox = Arc::clone(&firefox);
            tokio::spawn(async move {
                let answers = service_fn(move |request| {
                    let firefox = Arc::clone(&firefox);
                    async move { Ok::<_, Infallible>(answer(&firefox, request).await) }
                });
                let io = TokioIo::new(stream);
                let _ = hyper::server::conn::http1::Builder::new().serve_connection(io, answers).await;
            });
        }
    });
    Ok(address)
}

async fn answer(firefox: &Mutex<Connection>, request: Request<Incoming>) -> Response<Full<Bytes>> {
    let answer = obey(firefox, request).await.unwrap_or_else(|error| {
        Err(json!({ "error": "unknown error", "message": format!("{error:#}"), "stacktrace": "" }))
    });
    let (status, value) = match answer {
        Ok(value) => (StatusCode::OK, value),
        Err(error) => (StatusCode::INTERNAL_SERVER_ERROR, error),
    };
    let mut response = Response::new(Full::from(json!({ "value": value }).to_string()));
    *response.status_mut() = status;
    response.headers_mut().insert(CONTENT_TYPE, HeaderValue::from_static("application/json; charset=utf-8"));
    response
}

async fn obey(firefox: &Mutex<Connection>, request: Request<Incoming>) -> Result<Result<Value, Value>> {
    let method = request.method().clone();
    let path = request.uri().path().trim_matches('/').to_owned();
    let body = request.into_body().collect().await?.to_bytes();
    let parameters = if body.is_empty() { json!({}) } else { serde_json::from_slice(&body)? };
    let mut firefox = firefox.lock().await;
    if method == Method::POST && path == "session" {
        return firefox.gives("WebDriver:NewSession", json!({})).await;
    }
    let what = path.splitn(3, '/').nth(2).unwrap_or_default();
    if (&method, what) == (&Method::POST, "se/log") {
        return firefox.complaints().await.map(unwrapped);
    }
    let known = COMMANDS.iter().find(|(asked, end, _)| (asked, *end) == (&method, what));
    let (.., name) =
        known.with_context(|| format!("{method} {path} is none of the commands that Firefox is handed"))?;
    firefox.gives(name, parameters).await.map(unwrapped)
}

/// Some results come inside another `value`.
fn unwrapped(answer: Result<Value, Value>) -> Result<Value, Value> {
    answer.map(|mut result| match result.get_mut("value") {
        Some(value) => value.take(),
        None => result,
    })
}
