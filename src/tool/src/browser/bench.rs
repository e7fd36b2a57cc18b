//! The test bench: a running driver, the built page, and a web server that hands it out.

use crate::browser::tablet::Tablet;
use crate::chromium::Chromium;
use crate::serve;
use crate::workshop::Workshop;
use anyhow::{Context, Result, bail};
use std::io::Write;
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// What every story is handed.
pub struct Bench {
    /// Where the project is.
    pub workshop: Workshop,
    /// The browser that is driven.
    pub chromium: Chromium,
    driver: Driver,
    site: SocketAddr,
}

impl Bench {
    /// Starts the driver and the web server.
    pub async fn set_up(workshop: &Workshop) -> Result<Self> {
        let page = workshop.dist().join("whitehold.html");
        if !page.is_file() {
            bail!("{} is not there. Next thing to try: `cargo xtask build`", page.display());
        }
        let chromium = Chromium::find()?;
        let driver = Driver::start(&chromium.driver).await?;
        let site = Self::hand_out(workshop.dist().join("site")).await?;
        Ok(Self { workshop: workshop.clone(), chromium, driver, site })
    }

    /// Serves a folder over http for as long as the bench lives.
    pub async fn hand_out(folder: PathBuf) -> Result<SocketAddr> {
        let (listener, address) = serve::listen(0).await?;
        tokio::spawn(serve::serve(listener, folder));
        Ok(address)
    }

    /// A tablet, lying on its long side, in light colours.
    pub fn tablet(&self) -> Tablet<'_> {
        Tablet::new(self)
    }

    /// The two ways in which the page is used: from a stick on a tablet that lies, and from the shop's server on one that
    /// is held upright.
    pub fn both_ways(&self) -> Result<[(Tablet<'_>, String); 2]> {
        Ok([(self.tablet(), self.file()?), (self.tablet().upright(), self.site(""))])
    }

    /// The address of the one file on a stick.
    pub fn file(&self) -> Result<String> {
        file_address(&self.workshop.dist().join("whitehold.html"))
    }

    /// The address of a page on the shop's web server, `""` for the desk itself.
    pub fn site(&self, page: &str) -> String {
        format!("http://{}/{page}", self.site)
    }

    /// Where the driver listens.
    pub fn driver(&self) -> String {
        format!("http://{}", self.driver.address)
    }
}

/// A `file://` address.
pub fn file_address(path: &Path) -> Result<String> {
    let full = path.canonicalize().with_context(|| format!("{} is not there", path.display()))?;
    url::Url::from_file_path(&full)
        .map(String::from)
        .map_err(|()| anyhow::anyhow!("{} has no address", full.display()))
}

/// The running WebDriver program; it ends with this value.
struct Driver {
    program: Child,
    address: SocketAddr,
}

impl Driver {
    async fn start(program: &Path) -> Result<Self> {
        let address = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?;
        let program = Command::new(program)
            .arg(format!("--port={}", address.port()))
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .with_context(|| format!("{} could not start", program.display()))?;
        let driver = Self { program, address };
        let patience = Instant::now() + Duration::from_secs(20);
        while TcpStream::connect(address).is_err() {
            if Instant::now() > patience {
                bail!(
                    "chromedriver did not answer within 20 s. Next thing to try: start it by hand and read what it says"
                );
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(driver)
    }
}

impl Drop for Driver {
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
