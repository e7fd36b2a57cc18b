//! Which compiler makes the wasm: rustup's, or where rustup is refused, Debian's own packages.

use crate::host::command::first_line;
use crate::host::programs::{install, is_root};
use crate::host::progress::say;
use crate::host::workspace::Workspace;
use anyhow::{Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The one target the page is built for.
pub const WASM: &str = "wasm32-unknown-unknown";

const DEBIAN_PACKAGES: [&str; 3] = ["rustc-web", "rust-web-src", "lld-22"];
const DEBIAN_RUSTC: &str = "/usr/bin/rustc";
const DEBIAN_LINKER: &str = "wasm-ld-22";
const DEBIAN_SOURCES: &str = "/usr/lib/rustlib/src/rust/library/std/Cargo.toml";

/// Where the wasm target's standard library comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Toolchain {
    /// The toolchain named in `rust-toolchain.toml`, with the target added by rustup.
    #[default]
    Rustup,
    /// Debian's `rustc-web`, which builds the standard library from `rust-web-src`.
    Debian,
}

impl Toolchain {
    /// Reads the value of `--toolchain`.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the name is neither `rustup` nor `debian`.
    pub fn from_name(name: &str) -> Result<Self> {
        match name {
            "rustup" => Ok(Self::Rustup),
            "debian" => Ok(Self::Debian),
            other => bail!("`{other}` is not a toolchain that this tool knows; there are rustup and debian."),
        }
    }

    /// Makes sure that the compiler can build for wasm, adding what is missing where that is allowed.
    ///
    /// # Errors
    /// [`anyhow::Error`] if something is missing that this tool cannot add; the message says what to do.
    pub fn prepare(self, workspace: &Workspace) -> Result<()> {
        match self {
            Self::Rustup => prepare_rustup(workspace),
            Self::Debian => prepare_debian(),
        }
    }

    /// A cargo command for the wasm target: `cargo <verb> --target wasm32-unknown-unknown`.
    #[must_use]
    pub fn cargo(self, workspace: &Workspace, verb: &str) -> Command {
        let mut command = workspace.cargo();
        command.arg(verb).args(["--target", WASM]).args(same_everywhere());
        if self == Self::Debian {
            // Set for this command only: with RUSTC_BOOTSTRAP build scripts take the compiler for a nightly one.
            command
                .args(["-Z", "build-std=std,panic_abort", "--target-dir"])
                .arg(self.target(workspace))
                .env("RUSTC", DEBIAN_RUSTC)
                .env("RUSTC_BOOTSTRAP", "1")
                .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", DEBIAN_LINKER);
        }
        command
    }

    /// The folder that cargo writes this toolchain's output to.
    #[must_use]
    pub fn target(self, workspace: &Workspace) -> PathBuf {
        match self {
            Self::Rustup => workspace.target(),
            Self::Debian => workspace.target().join("debian"),
        }
    }
}

/// Arguments that remove this computer's folders from the file names in panic messages of dependencies. The page is then the
/// same to the byte wherever it is built, and does not reveal where that was.
fn same_everywhere() -> Vec<String> {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let Some(home) = home.or_else(|| std::env::home_dir().map(|folder| folder.join(".cargo"))) else {
        return Vec::new();
    };
    let sources = home.join("registry").join("src").join("").display().to_string();
    let flag = format!("--remap-path-prefix={sources}=");
    vec!["--config".to_owned(), format!("target.{WASM}.rustflags=[{flag:?}]")]
}

fn prepare_rustup(workspace: &Workspace) -> Result<()> {
    if has_target(workspace) {
        return Ok(());
    }
    say(&format!("    adding the target {WASM} with rustup"));
    let added = Command::new("rustup").args(["target", "add", WASM]).current_dir(&workspace.root).status();
    if added.is_ok_and(|status| status.success()) && has_target(workspace) {
        return Ok(());
    }
    bail!(
        "rustc has no standard library for {WASM}, and rustup could not add it.\n\
         Next thing to try: with a connection, `rustup target add {WASM}`.\n\
         Where rustup is not allowed, on Debian: `apt-get install {}`, then `cargo xtask build --toolchain debian`.",
        DEBIAN_PACKAGES.join(" ")
    )
}

/// Asks rustc where the target's libraries would be, and looks whether they are there.
fn has_target(workspace: &Workspace) -> bool {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let mut question = Command::new(rustc);
    question.args(["--print", "target-libdir", "--target", WASM]).current_dir(&workspace.root);
    first_line(&mut question).is_some_and(|folder| Path::new(&folder).is_dir())
}

fn prepare_debian() -> Result<()> {
    let ready = || {
        Path::new(DEBIAN_RUSTC).is_file()
            && Path::new(DEBIAN_SOURCES).is_file()
            && Path::new("/usr/bin").join(DEBIAN_LINKER).is_file()
    };
    if !ready() && is_root() {
        install(&DEBIAN_PACKAGES)?;
    }
    if ready() {
        return Ok(());
    }
    bail!(
        "Debian's wasm compiler is not here. Next thing to try: `apt-get install {}`.",
        DEBIAN_PACKAGES.join(" ")
    )
}
