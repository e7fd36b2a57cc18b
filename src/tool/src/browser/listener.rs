//! An ear on this computer: it answers everything and remembers what was asked.

use anyhow::Result;
use std::collections::BTreeSet;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

/// Listens on a free port until the program ends.
pub struct Listener {
    pub address: SocketAddr,
    heard: Arc<Mutex<BTreeSet<String>>>,
}

impl Listener {
    pub fn start() -> Result<Self> {
        let socket = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let address = socket.local_addr()?;
        let heard = Arc::new(Mutex::new(BTreeSet::new()));
        let memory = Arc::clone(&heard);
        std::thread::spawn(move || {
            for stream in socket.incoming().flatten() {
                let memory = Arc::clone(&memory);
                std::thread::spawn(move || {
                    let asked = hear(stream);
                    memory.lock().unwrap_or_else(PoisonError::into_inner).insert(asked);
                });
            }
        });
        Ok(Self { address, heard })
    }

    /// What was asked so far: the first part of each path, or `connection` where nothing followed.
    pub fn heard(&self) -> BTreeSet<String> {
        self.heard.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

fn hear(mut stream: TcpStream) -> String {
    let mut start = [0; 1024];
    // A connection that stays silent has been heard all the same.
    let _ = stream.set_read_timeout(Some(Duration::from_secs(2)));
    let length = stream.read(&mut start).unwrap_or(0);
    let text = String::from_utf8_lossy(start.get(..length).unwrap_or_default()).into_owned();
    let answer = "HTTP/1.1 200 OK\r\ncontent-type: text/plain\r\naccess-control-allow-origin: *\r\ncontent-length: 0\r\nconnection: close\r\n\r\n";
    let _ = stream.write_all(answer.as_bytes());
    let path = text.split_whitespace().nth(1).unwrap_or_default().trim_start_matches('/');
    if path.is_empty() { "connection".to_owned() } else { path.to_owned() }
}
