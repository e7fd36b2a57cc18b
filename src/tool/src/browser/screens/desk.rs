//! The page as a whole: its screens, its frame, its store.

use super::element::Element;
use super::parts::{self, Part};
use super::{
    DeskScreen, DiagnosisPage, ForecastPage, JobPage, JobSheetPage, LibraryPage, PrintRoomPage, SettingsPage,
    StartPage, StoreNotice, WindowPage,
};
use crate::browser::drive::patience::{PATIENCE, until};
use crate::browser::drive::session::Session;
use anyhow::{Context, Result, bail};
use serde_json::json;

/// An open page. What a person can do on a screen is with that screen: [`DeskPage::job`], [`DeskPage::library`] and so on.
pub struct DeskPage {
    pub(super) session: Session,
}

impl DeskPage {
    /// The page that a browser shows.
    #[must_use]
    pub fn new(session: Session) -> Self {
        Self { session }
    }

    /// The browser.
    #[must_use]
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// The order and its answer.
    #[must_use]
    pub fn job(&self) -> JobPage<'_> {
        JobPage(self)
    }

    /// The cure window.
    #[must_use]
    pub fn window(&self) -> WindowPage<'_> {
        WindowPage(self)
    }

    /// How the white ages.
    #[must_use]
    pub fn forecast(&self) -> ForecastPage<'_> {
        ForecastPage(self)
    }

    /// The shop's records.
    #[must_use]
    pub fn library(&self) -> LibraryPage<'_> {
        LibraryPage(self)
    }

    /// The shop's own print room.
    #[must_use]
    pub fn print_room(&self) -> PrintRoomPage<'_> {
        PrintRoomPage(self)
    }

    /// What went wrong with a print.
    #[must_use]
    pub fn diagnosis(&self) -> DiagnosisPage<'_> {
        DiagnosisPage(self)
    }

    /// The sheet that is printed for the press.
    #[must_use]
    pub fn job_sheet(&self) -> JobSheetPage<'_> {
        JobSheetPage(self)
    }

    /// The settings.
    #[must_use]
    pub fn settings(&self) -> SettingsPage<'_> {
        SettingsPage(self)
    }

    /// What the page says of a store that fails.
    #[must_use]
    pub fn notice(&self) -> StoreNotice<'_> {
        StoreNotice(self)
    }

    /// What the page says when it cannot start.
    #[must_use]
    pub fn start(&self) -> StartPage<'_> {
        StartPage(self)
    }

    /// The title over the screen.
    #[must_use]
    pub fn title(&self) -> Element<'_> {
        self.element(parts::TITLE)
    }

    /// All that the screen shows below the title.
    #[must_use]
    pub fn screen(&self) -> Element<'_> {
        self.element(parts::MAIN)
    }

    /// All that the desk shows, the frame too.
    #[must_use]
    pub fn everything(&self) -> Element<'_> {
        self.element(parts::DESK)
    }

    /// Whatever can be tapped on the screen, by its words.
    #[must_use]
    pub fn button(&self, words: &str) -> Element<'_> {
        self.element(parts::BUTTON).named(words)
    }

    /// Turns to a screen by the index at the edge of the page.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the index is not seen.
    pub async fn turn_to(&self, screen: DeskScreen) -> Result<()> {
        self.element(screen.link()).tap().await
    }

    /// Waits until a screen is there.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it does not come in time.
    pub async fn shows(&self, screen: DeskScreen) -> Result<()> {
        let landmark = self.element(screen.landmark());
        landmark.read().await.map(drop).with_context(|| screen.to_string())
    }

    /// Turns to a screen by its address, as a bookmark does, and waits until the page is at rest.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the browser cannot open it.
    pub async fn go_to(&self, screen: DeskScreen) -> Result<()> {
        let address = self.session.run("return location.href", vec![]).await?;
        let page = address.as_str().and_then(|it| it.split('#').next()).context("the page has no address")?;
        self.session.open(&format!("{page}#{}", screen.address())).await?;
        self.settle().await
    }

    /// One step back in the browser's history.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn go_back(&self) -> Result<()> {
        self.run("history.back()", vec![]).await.map(drop)
    }

    /// One step forward in the browser's history.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn go_forward(&self) -> Result<()> {
        self.run("history.forward()", vec![]).await.map(drop)
    }

    /// Taps Undo.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not seen.
    pub async fn undo(&self) -> Result<()> {
        self.element(parts::UNDO).tap().await
    }

    /// Taps Redo.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not seen.
    pub async fn redo(&self) -> Result<()> {
        self.element(parts::REDO).tap().await
    }

    /// Taps the other language.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not seen.
    pub async fn change_language(&self) -> Result<()> {
        self.element(parts::LANGUAGE).tap().await
    }

    /// The language that the page says it is in, as `en`.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn language(&self) -> Result<String> {
        let language = self.run("return document.documentElement.lang", vec![]).await?;
        Ok(language.as_str().unwrap_or_default().to_owned())
    }

    /// The theme that is set by hand, as `dark`; nothing where the device decides.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn theme(&self) -> Result<Option<String>> {
        let theme = self.run("return desk.dataset.theme ?? null", vec![]).await?;
        Ok(theme.as_str().map(str::to_owned))
    }

    /// Loads the page again.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn reload(&self) -> Result<()> {
        self.session.reload().await
    }

    /// Opens every fold of the screen.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn unfold_everything(&self) -> Result<()> {
        let fold = parts::FOLD.css;
        self.run("for (const fold of all(arguments[0])) fold.open = true;", vec![json!(fold)]).await.map(drop)
    }

    /// Waits until everything is acknowledged by the disk.
    ///
    /// # Errors
    /// [`anyhow::Error`] if it is not in time.
    pub async fn is_saved(&self) -> Result<()> {
        let saved =
            until("everything is saved", PATIENCE, async || Ok(self.is_saved_now().await?.then_some(())));
        saved.await
    }

    /// Whether everything is acknowledged by the disk now.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn is_saved_now(&self) -> Result<bool> {
        Ok(self.run("return isSaved()", vec![]).await? == true)
    }

    /// Waits until the desk is drawn and stays as it is for a moment.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the script fails.
    pub async fn settle(&self) -> Result<()> {
        let script = "await new Promise((done) => {
                if (!root) return setTimeout(done, 500);
                let calm = setTimeout(done, 400);
                new MutationObserver(() => { clearTimeout(calm); calm = setTimeout(done, 400); })
                    .observe(root, { subtree: true, childList: true, attributes: true, characterData: true });
                setTimeout(done, 8000);
            });";
        self.run(script, vec![]).await.map(drop)
    }

    /// Fails when the browser reported an error or a breach of the policy since the page opened.
    ///
    /// # Errors
    /// [`anyhow::Error`] with the complaints.
    pub async fn has_no_complaints(&self) -> Result<()> {
        let complaints = self.session.complaints().await?;
        if complaints.is_empty() {
            return Ok(());
        }
        bail!("the browser complains:\n    {}", complaints.join("\n    "))
    }

    /// Closes the browser.
    ///
    /// # Errors
    /// [`anyhow::Error`] if the driver refuses.
    pub async fn close(self) -> Result<()> {
        self.session.close().await
    }

    /// Ends the browser's program at once.
    ///
    /// # Errors
    /// [`anyhow::Error`] as for [`Session::kill`].
    pub async fn kill(self) -> Result<()> {
        self.session.kill().await
    }

    pub(super) fn element(&self, part: Part) -> Element<'_> {
        Element::new(self, part)
    }
}

impl std::fmt::Debug for DeskPage {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str("Desk")
    }
}
