//! Who sits where in a week: each tablet with a browser of its own, and the relay between them, which comes and goes.

use crate::fresh_profile;
use anyhow::{Context, Result};
use lightround_tests::bedside::unlock;
use lightround_tests::{Browser, Engine, Hand, Place, Relay};
use std::path::PathBuf;

/// A browser with the tablet's passphrase, once it has one.
pub struct Seat {
    pub browser: Browser,
    pub hand: Hand,
    profile: PathBuf,
    pub passphrase: String,
}

impl Seat {
    pub async fn open(place: &Place, engine: Engine) -> Result<Self> {
        let profile = fresh_profile(engine, "week");
        let browser = Browser::open(engine, &profile).await?;
        let hand = Hand::on(&browser, place);
        hand.size(820, 1180).await?;
        Ok(Self {
            browser,
            hand,
            profile,
            passphrase: String::new(),
        })
    }

    pub async fn close(self) -> Result<()> {
        let closed = self.browser.close().await;
        let _ = std::fs::remove_dir_all(self.profile);
        closed
    }

    /// The page is loaded anew and the vault opened, as on another morning.
    pub async fn another_morning(&self, address: &str) -> Result<()> {
        self.hand.go(address).await?;
        unlock(&self.hand, &self.passphrase).await
    }
}

/// The clinic's relay, which keeps its file and its address whether it runs or not.
pub struct KeptRelay {
    pub place: Place,
    folder: PathBuf,
    host: String,
    /// None while it is stopped.
    pub running: Option<Relay>,
}

impl KeptRelay {
    pub fn new(place: &Place) -> Result<Self> {
        let folder = fresh_profile(Engine::Chromium, "week-relay");
        std::fs::create_dir_all(&folder)?;
        let relay = Relay::keeping(place, "127.0.0.1:0", &folder.join("kept.sqlite"))?;
        Ok(Self {
            place: place.clone(),
            folder,
            host: relay.host().to_owned(),
            running: Some(relay),
        })
    }

    pub fn file(&self) -> PathBuf {
        self.folder.join("kept.sqlite")
    }

    pub fn address(&self) -> String {
        format!("http://{}", self.host)
    }

    /// It, to be ended or killed.
    pub fn taken(&mut self) -> Result<Relay> {
        self.running.take().context("the relay does not run")
    }

    pub fn start(&mut self) -> Result<()> {
        self.running = Some(Relay::keeping(&self.place, &self.host, &self.file())?);
        Ok(())
    }
}

impl Drop for KeptRelay {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}
