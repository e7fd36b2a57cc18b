//! Chromium and its running driver.

use crate::browser::drive::patience::until;
use crate::host::chromium::Chromium;
use anyhow::{Context, Result};
use std::io::Write;
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// The running WebDriver program; it ends with this value.
pub struct ChromeDriver {
    /// The browser that is driven.
    pub chromium: Chromium,
    program: Child,
    address: SocketAddr,
}

impl ChromeDriver {
    /// Finds Chromium and starts its driver.
    ///
    /// # Errors
    /// [`anyhow::Error`] if Chromium cannot be had, or the driver does not answer within 20 s.
    pub async fn start() -> Result<Self> {
        let chromium = Chromium::find()?;
        let address = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?;
        let program = Command::new(&chromium.driver)
            .arg(format!("--port={}", address.port()))
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .with_context(|| format!("{} could not start", chromium.driver.display()))?;
        let driver = Self { chromium, program, address };
        let answers = until("chromedriver answers", Duration::from_secs(20), async || {
            Ok(TcpStream::connect(address).ok())
        });
        answers.await.context("Next thing to try: start chromedriver by hand and read what it says")?;
        Ok(driver)
    }

    /// Where the driver listens.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://{}", self.address)
    }
}

impl Drop for ChromeDriver {
    /// Asks the driver to end, so that it takes its browsers with it: those of a story that failed are still open.
    fn drop(&mut self) {
        if let Ok(mut stream) = TcpStream::connect(self.address) {
            let _ = write!(
                stream,
                "GET /shutdown HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n",
                self.address
            );
            let patience = Instant::now() + Duration::from_secs(5);
            while Instant::now() < patience && matches!(self.program.try_wait(), Ok(None)) {
                std::thread::sleep(Duration::from_millis(50));
            }
        }
        // It may have ended already.
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}
