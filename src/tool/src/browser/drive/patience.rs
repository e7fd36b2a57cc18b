//! Waiting for something that happens in another program.

use anyhow::{Result, bail};
use std::time::{Duration, Instant};

/// How long a story waits for the page to show something.
pub const PATIENCE: Duration = Duration::from_secs(15);

/// Time between two looks.
const PAUSE: Duration = Duration::from_millis(50);

/// Looks again and again until `look` finds something, and hands it back; `what` names it for the message.
///
/// # Errors
/// [`anyhow::Error`] if a look fails, or if nothing is found within `patience`.
pub async fn until<T>(
    what: impl Into<String>,
    patience: Duration,
    look: impl AsyncFn() -> Result<Option<T>>,
) -> Result<T> {
    let start = Instant::now();
    loop {
        if let Some(found) = look().await? {
            return Ok(found);
        }
        if start.elapsed() > patience {
            bail!("{}: not within {} s", what.into(), patience.as_secs());
        }
        tokio::time::sleep(PAUSE).await;
    }
}
