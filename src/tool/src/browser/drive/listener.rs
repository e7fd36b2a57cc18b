//! A web server on this computer that answers every request and remembers it.

use anyhow::Result;
use std::collections::BTreeSet;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

/// Listens on a free port until the program ends.
pub struct Listener {
    /// Where it listens.
    pub address: SocketAddr,
    heard: Arc<Mutex<BTreeSet<String>>>,
}

impl Listener {
    /// Starts listening.
    pub fn start() -> Result<Self> {
        let socket = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let address = socket.local_addr()?;
        let heard = Arc::new(Mutex::new(BTreeSet::new()));
        let memory = Arc::clone(&heard);
        std::thread::spawn(move || {
            for stream in socket.incoming().flatten() {
                let memory = Arc::clone(&memory);
                std::thread::spawn(move || {
                    memory.lock().unwrap_or_else(PoisonError::into_inner).extend(hear(stream));
                });
            }
        });
        Ok(Self { address, heard })
    }

    /// The paths that were asked for so far, without their first stroke.
    pub fn heard(&self) -> BTreeSet<String> {
        self.heard.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

/// The path of the request, if one comes.
///
/// Chromium connects ahead for a frame and for a form before it asks the policy, and then sends nothing: such a connection is
/// not a request.
fn hear(mut stream: TcpStream) -> Option<String> {
    let mut start = [0; 1024];
    // A connection may never send anything.
    let _ = stream.set_read_timeout(Some(Duration::from_secs(2)));
    let length = stream.read(&mut start).unwrap_or(0);
    let text = String::from_utf8_lossy(start.get(..length).unwrap_or_default()).into_owned();
    let answer = "HTTP/1.1 200 OK\r\ncontent-type: text/plain\r\naccess-control-allow-origin: *\r\ncontent-length: 0\r\nconnection: close\r\n\r\n";
    let _ = stream.write_all(answer.as_bytes());
    text.split_whitespace().nth(1).map(|path| path.trim_start_matches('/').to_owned())
}
