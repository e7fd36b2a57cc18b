//! The desk in another browser than Chromium: what has to run for it, and what is left when it ends, which is nothing.

use crate::browser::drive::marionette;
use crate::browser::drive::session::{Desk, Engine};
use crate::host::firefox;
use crate::host::webkit::WebKit;
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result, bail, ensure};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Map, Value, json};
use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// How long a browser may take to start; a machine that installs and builds beside it is slow.
const PATIENCE: Duration = Duration::from_secs(90);

/// What Firefox is told in its profile: to take any free port, to stay silent on the network, to show no page of its own.
const FIREFOX_WISHES: &str = r#"
user_pref("marionette.port", 0);
user_pref("app.normandy.enabled", false);
user_pref("app.update.enabled", false);
user_pref("browser.aboutwelcome.enabled", false);
user_pref("browser.safebrowsing.downloads.remote.enabled", false);
user_pref("browser.safebrowsing.malware.enabled", false);
user_pref("browser.safebrowsing.phishing.enabled", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.startup.homepage_override.mstone", "ignore");
user_pref("datareporting.healthreport.uploadEnabled", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("extensions.getAddons.cache.enabled", false);
user_pref("extensions.update.enabled", false);
user_pref("network.captive-portal-service.enabled", false);
user_pref("network.connectivity-service.enabled", false);
user_pref("services.settings.server", "data:,");
user_pref("toolkit.telemetry.reportingpolicy.firstRun", false);
"#;

/// A browser that was started for one story. It ends with this value, and takes away everything that it left.
pub struct OtherBrowser {
    /// What a person sees and does there.
    pub desk: Desk,
    client: Client,
    _running: Running,
}

impl OtherBrowser {
    /// Makes the page as large as a tablet; the window is larger by its frame.
    pub async fn is_held(&self, (width, height): (u32, u32)) -> Result<()> {
        self.client.set_window_size(width, height).await?;
        let frame = "return [outerWidth - innerWidth, outerHeight - innerHeight]";
        let frame = self.client.execute(frame, vec![]).await?;
        let frame = |side: usize| frame[side].as_u64().and_then(|it| u32::try_from(it).ok()).unwrap_or(0);
        Ok(self.client.set_window_size(width + frame(0), height + frame(1)).await?)
    }
}

/// The programs of one browser and the folder it writes to; both are gone when this value is.
struct Running {
    programs: Vec<Child>,
    folder: PathBuf,
}

impl Running {
    /// An empty folder of this name.
    fn in_folder(workspace: &Workspace, name: &str) -> Result<Self> {
        let folder = workspace.target().join("stories").join(name);
        if folder.exists() {
            std::fs::remove_dir_all(&folder)?;
        }
        std::fs::create_dir_all(&folder)?;
        Ok(Self { programs: Vec::new(), folder })
    }

    /// Starts a program; what it starts itself belongs to the same group and ends with it.
    fn starts(&mut self, command: &mut Command) -> Result<&mut Child> {
        #[cfg(unix)]
        std::os::unix::process::CommandExt::process_group(command, 0);
        // Whatever a browser wants to keep, it keeps in the folder.
        for variable in ["HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"] {
            command.env(variable, &self.folder);
        }
        let child = command.stdin(Stdio::null()).spawn();
        self.programs
            .push(child.with_context(|| format!("{} could not start", command.get_program().display()))?);
        self.programs.last_mut().context("no program")
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        for program in self.programs.iter_mut().rev() {
            if cfg!(unix) {
                let group = format!("-{}", program.id());
                let _ = Command::new("kill").args(["-KILL", "--", &group]).stderr(Stdio::null()).status();
            }
            // It may have ended already.
            let _ = program.kill();
            let _ = program.wait();
        }
        // A process that is just ending may still write a file.
        for _ in 0..20 {
            if std::fs::remove_dir_all(&self.folder).is_ok() || !self.folder.exists() {
                return;
            }
            std::thread::sleep(Duration::from_millis(100));
        }
    }
}

/// Starts Firefox, without a window.
pub async fn firefox(workspace: &Workspace) -> Result<OtherBrowser> {
    let browser = firefox::find()?;
    let mut running = Running::in_folder(workspace, "firefox")?;
    write(&running.folder.join("user.js"), FIREFOX_WISHES)?;
    let profile = running.folder.clone();
    let mut command = Command::new(browser);
    command.args(["--headless", "--no-remote", "--marionette", "--remote-allow-system-access", "--profile"]);
    command.arg(&profile).stdout(Stdio::null()).stderr(Stdio::null());
    running.starts(&mut command)?;
    let port = comes("Firefox", || {
        std::fs::read_to_string(profile.join("MarionetteActivePort")).ok()?.trim().parse().ok()
    })
    .await?;
    let driver = marionette::drive(port).await?;
    opens(&format!("http://{driver}"), json!({}), Engine::Firefox, running).await
}

/// Starts WebKitGTK on a screen of its own.
pub async fn webkit(workspace: &Workspace) -> Result<OtherBrowser> {
    let webkit = WebKit::find()?;
    let mut running = Running::in_folder(workspace, "webkit")?;
    let mut screen = Command::new(&webkit.screen);
    screen.args(["-displayfd", "1", "-screen", "0", "1600x1600x24", "-nolisten", "tcp"]);
    let screen = running.starts(screen.stdout(Stdio::piped()).stderr(Stdio::null()))?;
    let mut display = String::new();
    BufReader::new(screen.stdout.take().context("the screen says nothing")?).read_line(&mut display)?;
    ensure!(!display.trim().is_empty(), "{} made no screen", webkit.screen.display());

    let address = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?;
    let mut driver = Command::new(&webkit.driver);
    driver.arg(format!("--port={}", address.port())).env("DISPLAY", format!(":{}", display.trim()));
    driver.env("GDK_BACKEND", "x11").env("NO_AT_BRIDGE", "1").env_remove("WAYLAND_DISPLAY");
    running.starts(driver.stdout(Stdio::null()).stderr(Stdio::null()))?;
    comes("WebKitWebDriver", || TcpStream::connect(address).ok()).await?;
    let wishes =
        json!({ "webkitgtk:browserOptions": { "binary": webkit.browser, "args": ["--automation"] } });
    opens(&format!("http://{address}"), wishes, Engine::WebKit, running).await
}

/// Asks the driver for a browser.
async fn opens(driver: &str, wishes: Value, engine: Engine, running: Running) -> Result<OtherBrowser> {
    let wishes = if let Value::Object(wishes) = wishes { wishes } else { Map::new() };
    let mut builder = ClientBuilder::new(HttpConnector::new());
    let client = tokio::time::timeout(PATIENCE, builder.capabilities(wishes).connect(driver)).await;
    let client =
        client.context("the browser did not start in time")?.context("the browser could not be started")?;
    Ok(OtherBrowser { desk: Desk::in_engine(client.clone(), engine), client, _running: running })
}

/// Waits for something a program does after its start.
async fn comes<T>(program: &str, look: impl Fn() -> Option<T>) -> Result<T> {
    let start = Instant::now();
    loop {
        if let Some(found) = look() {
            return Ok(found);
        }
        if start.elapsed() > PATIENCE {
            bail!(
                "{program} did not answer within {} s. Next thing to try: start it by hand and read what it says",
                PATIENCE.as_secs()
            );
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}
