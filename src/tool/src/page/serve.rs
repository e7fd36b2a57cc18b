//! A small web server for one folder, reachable from this computer only.
//!
//! It sends each page's own policy as a header too, so that a policy holds from the first byte, and adds what only a
//! header can say: who may frame the page. A crate that serves files would take the place of some twenty lines of this: the
//! rest is the policy, the other headers, and the port.

use crate::host::progress::say;
use crate::host::workspace::Workspace;
use crate::page::policy;
use crate::page::utf16;
use anyhow::{Context, Result};
use http_body_util::Full;
use hyper::body::{Bytes, Incoming};
use hyper::header::{CONTENT_TYPE, HeaderName, HeaderValue};
use hyper::service::service_fn;
use hyper::{Method, Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use std::convert::Infallible;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Component, Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use tokio::net::TcpListener;

/// The port that is tried first.
pub const PORT: u16 = 8737;

/// Serves `dist/site` until the program is stopped.
///
/// # Errors
/// [`anyhow::Error`] if no port is free.
pub fn serve_site(workspace: &Workspace, port: u16, opens: bool) -> Result<()> {
    let folder = workspace.dist().join("site");
    tokio::runtime::Builder::new_current_thread().enable_all().build()?.block_on(async {
        let (listener, address) = listen(port).await?;
        let page = format!("http://{address}/");
        say(&format!("==> serving dist/site at {page}\n    stop it with Ctrl-C"));
        if opens {
            open_browser(&page);
        }
        serve(listener, folder).await;
        Ok(())
    })
}

/// Takes the port, or any free one when it is taken.
///
/// # Errors
/// [`anyhow::Error`] if no port is free.
pub async fn listen(port: u16) -> Result<(TcpListener, SocketAddr)> {
    let listener = match TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await {
        Ok(listener) => listener,
        Err(_) => TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).await.context(
            "no port is free on 127.0.0.1. Next thing to try: open dist/whitehold.html straight from the folder",
        )?,
    };
    let address = listener.local_addr()?;
    Ok((listener, address))
}

/// Answers requests for the files of a folder, for ever.
pub async fn serve(listener: TcpListener, folder: PathBuf) {
    let folder: Arc<Path> = folder.into();
    loop {
        // A connection that breaks concerns the browser that broke it, not the server.
        let Ok((stream, _)) = listener.accept().await else { continue };
        let folder = Arc::clone(&folder);
        tokio::spawn(async move {
            let answers = service_fn(move |request: Request<Incoming>| {
                let answer = answer(&folder, request.method(), request.uri().path());
                async move { Ok::<_, Infallible>(answer) }
            });
            let _ = hyper::server::conn::http1::Builder::new()
                .serve_connection(TokioIo::new(stream), answers)
                .await;
        });
    }
}

fn answer(folder: &Path, method: &Method, path: &str) -> Response<Full<Bytes>> {
    if method != Method::GET && method != Method::HEAD {
        return plain(StatusCode::METHOD_NOT_ALLOWED, "only GET and HEAD are answered here");
    }
    let Some(file) = inside(folder, path) else {
        return plain(StatusCode::NOT_FOUND, "there is no such page here; the desk is at /");
    };
    let Ok(contents) = std::fs::read(&file) else {
        return plain(StatusCode::NOT_FOUND, "there is no such page here; the desk is at /");
    };
    let policy = utf16::text(&contents).and_then(|page| policy::of_page(&page).ok().map(str::to_owned));
    let mut response = Response::new(Full::from(contents));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(kind(&file)));
    for (name, value) in HEADERS {
        headers.insert(HeaderName::from_static(name), HeaderValue::from_static(value));
    }
    if let Some(policy) = policy
        && let Ok(value) = HeaderValue::from_str(&format!("{policy}; frame-ancestors 'self'"))
    {
        headers.insert(HeaderName::from_static("content-security-policy"), value);
    }
    response
}

/// Sent with every file.
const HEADERS: [(&str, &str); 4] = [
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "no-referrer"),
    ("cross-origin-opener-policy", "same-origin"),
    // The page is rebuilt under the same name.
    ("cache-control", "no-cache"),
];

fn plain(status: StatusCode, text: &'static str) -> Response<Full<Bytes>> {
    let mut response = Response::new(Full::from(text));
    *response.status_mut() = status;
    response.headers_mut().insert(CONTENT_TYPE, HeaderValue::from_static("text/plain; charset=utf-8"));
    response
}

/// The file a request asks for, if it is a file of the folder and of no other.
fn inside(folder: &Path, path: &str) -> Option<PathBuf> {
    let asked = Path::new(path.trim_start_matches('/'));
    let plain = asked.components().all(|part| matches!(part, Component::Normal(_)));
    if !plain {
        return None;
    }
    let file = folder.join(asked);
    let file = if file.is_dir() { file.join("index.html") } else { file };
    file.is_file().then_some(file)
}

fn kind(file: &Path) -> &'static str {
    match file.extension().and_then(|ending| ending.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("css") => "text/css; charset=utf-8",
        Some("ts") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Opens the person's browser, or says what to do by hand.
fn open_browser(page: &str) {
    let mut command = if cfg!(target_os = "windows") {
        let mut command = Command::new("cmd");
        command.args(["/C", "start", ""]);
        command
    } else if cfg!(target_os = "macos") {
        Command::new("open")
    } else {
        Command::new("xdg-open")
    };
    let opened = command.arg(page).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).spawn();
    if opened.is_err() {
        say(&format!("    no browser could be opened from here: open {page} by hand"));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_files_of_the_folder_are_handed_out() -> Result<()> {
        let folder = std::env::temp_dir().join(format!("whitehold-serve-{}", std::process::id()));
        std::fs::create_dir_all(folder.join("site"))?;
        std::fs::write(folder.join("secret.txt"), "secret")?;
        std::fs::write(folder.join("site/index.html"), "page")?;
        let site = folder.join("site");
        for (path, found) in [
            ("/", true),
            ("/index.html", true),
            ("/../secret.txt", false),
            ("//etc/passwd", false),
            ("/./../secret.txt", false),
            ("/none.html", false),
        ] {
            assert_eq!(inside(&site, path).is_some(), found, "{path}");
        }
        std::fs::remove_dir_all(&folder)?;
        Ok(())
    }

    #[test]
    fn a_page_is_sent_with_its_own_policy() -> Result<()> {
        let folder = std::env::temp_dir().join(format!("whitehold-policy-{}", std::process::id()));
        std::fs::create_dir_all(&folder)?;
        let page = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'\">";
        std::fs::write(folder.join("index.html"), page)?;
        let response = answer(&folder, &Method::GET, "/");
        let sent = response.headers().get("content-security-policy").context("no policy was sent")?;
        assert_eq!(sent.to_str()?, "default-src 'none'; frame-ancestors 'self'");
        assert_eq!(
            response.headers().get(CONTENT_TYPE).context("no type")?.to_str()?,
            "text/html; charset=utf-8"
        );
        assert_eq!(answer(&folder, &Method::POST, "/").status(), StatusCode::METHOD_NOT_ALLOWED);
        std::fs::remove_dir_all(&folder)?;
        Ok(())
    }
}
