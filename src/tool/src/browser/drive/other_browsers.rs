//! Firefox and WebKitGTK: the programs that run for each, all of which end with the story.

use crate::browser::drive::marionette;
use crate::browser::drive::patience::until;
use crate::browser::drive::session::{Engine, Session};
use crate::host::firefox;
use crate::host::webkit::WebKit;
use crate::host::workspace::{Workspace, write};
use anyhow::{Context, Result, ensure};
use fantoccini::ClientBuilder;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Map, Value, json};
use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// How long a browser may take to start; a machine that installs and builds beside it is slow.
const PATIENCE: Duration = Duration::from_secs(90);

/// Firefox's preferences: any free port, no network traffic of its own, no start page.
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

/// A browser that was started for one story.
pub struct OtherBrowser {
    /// Its tabs.
    pub session: Session,
    /// What runs for it until the story ends.
    pub programs: Programs,
}

/// Makes the page as large as a tablet; the window is larger by its frame.
///
/// # Errors
/// [`anyhow::Error`] if the driver refuses.
pub async fn size_page(session: &Session, (width, height): (u32, u32)) -> Result<()> {
    session.size_window(width, height).await?;
    let frame = "return [outerWidth - innerWidth, outerHeight - innerHeight]";
    let [across, down]: [u32; 2] = serde_json::from_value(session.run(frame, vec![]).await?)?;
    session.size_window(width + across, height + down).await
}

/// The programs of one browser and the folder it writes to. All of them end, and the folder goes, with this value.
pub struct Programs {
    running: Vec<Child>,
    folder: PathBuf,
}

impl Programs {
    /// An empty folder of this name.
    fn in_folder(workspace: &Workspace, name: &str) -> Result<Self> {
        let folder = workspace.target().join("stories").join(name);
        if folder.exists() {
            std::fs::remove_dir_all(&folder)?;
        }
        std::fs::create_dir_all(&folder)?;
        Ok(Self { running: Vec::new(), folder })
    }

    /// Starts a program; what it starts itself belongs to the same group and ends with it.
    fn start(&mut self, command: &mut Command) -> Result<&mut Child> {
        #[cfg(unix)]
        std::os::unix::process::CommandExt::process_group(command, 0);
        // Whatever a browser wants to keep, it keeps in the folder.
        for variable in ["HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"] {
            command.env(variable, &self.folder);
        }
        let child = command.stdin(Stdio::null()).spawn();
        self.running
            .push(child.with_context(|| format!("{} could not start", command.get_program().display()))?);
        self.running.last_mut().context("no program")
    }
}

impl Drop for Programs {
    fn drop(&mut self) {
        for program in self.running.iter_mut().rev() {
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
    let mut programs = Programs::in_folder(workspace, "firefox")?;
    write(&programs.folder.join("user.js"), FIREFOX_WISHES)?;
    let profile = programs.folder.clone();
    let mut command = Command::new(browser);
    command.args(["--headless", "--no-remote", "--marionette", "--remote-allow-system-access", "--profile"]);
    command.arg(&profile).stdout(Stdio::null()).stderr(Stdio::null());
    programs.start(&mut command)?;
    let port = until("Firefox names its port", PATIENCE, async || {
        let port = std::fs::read_to_string(profile.join("MarionetteActivePort"));
        Ok(port.ok().and_then(|port| port.trim().parse().ok()))
    });
    let port = port.await?;
    let driver = marionette::drive(port).await?;
    open(&format!("http://{driver}"), json!({}), Engine::Firefox, programs).await
}

/// Starts WebKitGTK on a screen of its own.
pub async fn webkit(workspace: &Workspace) -> Result<OtherBrowser> {
    let webkit = WebKit::find()?;
    let mut programs = Programs::in_folder(workspace, "webkit")?;
    let mut screen = Command::new(&webkit.screen);
    screen.args(["-displayfd", "1", "-screen", "0", "1600x1600x24", "-nolisten", "tcp"]);
    let screen = programs.start(screen.stdout(Stdio::piped()).stderr(Stdio::null()))?;
    let mut display = String::new();
    BufReader::new(screen.stdout.take().context("the screen says nothing")?).read_line(&mut display)?;
    ensure!(!display.trim().is_empty(), "{} made no screen", webkit.screen.display());

    let address = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?.local_addr()?;
    let mut driver = Command::new(&webkit.driver);
    driver.arg(format!("--port={}", address.port())).env("DISPLAY", format!(":{}", display.trim()));
    driver.env("GDK_BACKEND", "x11").env("NO_AT_BRIDGE", "1").env_remove("WAYLAND_DISPLAY");
    programs.start(driver.stdout(Stdio::null()).stderr(Stdio::null()))?;
    until("WebKitWebDriver answers", PATIENCE, async || Ok(TcpStream::connect(address).ok())).await?;
    let wishes =
        json!({ "webkitgtk:browserOptions": { "binary": webkit.browser, "args": ["--automation"] } });
    open(&format!("http://{address}"), wishes, Engine::WebKit, programs).await
}

/// Asks the driver for a browser.
async fn open(driver: &str, wishes: Value, engine: Engine, programs: Programs) -> Result<OtherBrowser> {
    let wishes = if let Value::Object(wishes) = wishes { wishes } else { Map::new() };
    let mut builder = ClientBuilder::new(HttpConnector::new());
    let client = tokio::time::timeout(PATIENCE, builder.capabilities(wishes).connect(driver)).await;
    let client =
        client.context("the browser did not start in time")?.context("the browser could not be started")?;
    Ok(OtherBrowser { session: Session::new(client, engine), programs })
}
