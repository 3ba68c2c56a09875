//! Chromium, Firefox and WebKit behind one type, each driven by its own WebDriver.

use crate::display::Display;
use anyhow::{Context, Result, bail};
use serde_json::{Value, json};
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::Duration;
use thirtyfour::{Capabilities, WebDriver};
use tokio::process::{Child, Command};
use tokio::time::{Instant, sleep};

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Blink.
    Chromium,
    /// Gecko.
    Firefox,
    /// WebKit, of the tablet's family.
    WebKit,
}

impl Engine {
    /// Its name, as it stands in a screenshot's file name.
    pub fn name(self) -> &'static str {
        match self {
            Engine::Chromium => "chromium",
            Engine::Firefox => "firefox",
            Engine::WebKit => "webkit",
        }
    }

    fn driver(self) -> &'static str {
        match self {
            Engine::Chromium => "chromedriver",
            Engine::Firefox => "geckodriver",
            Engine::WebKit => "WebKitWebDriver",
        }
    }

    /// Whether its driver can print a page; WebKit's can't.
    pub fn prints(self) -> bool {
        self != Engine::WebKit
    }

    /// Whether a killed browser comes back with what it had written; WebKit's test browser always starts empty.
    pub fn survives_a_kill(self) -> bool {
        self != Engine::WebKit
    }
}

/// One browser with its driver.
pub struct Browser {
    /// The engine that it runs on.
    pub engine: Engine,
    /// The WebDriver session.
    pub driver: WebDriver,
    process: Child,
    profile: PathBuf,
    display: Option<Display>,
}

impl Browser {
    /// Starts a browser with the profile folder given; the same folder again finds what was kept.
    ///
    /// # Errors
    /// Says what could not be started.
    pub async fn open(engine: Engine, profile: &Path) -> Result<Self> {
        std::fs::create_dir_all(profile)?;
        let port = free_port()?;
        let display = match engine {
            Engine::WebKit => Some(Display::open().await?),
            Engine::Chromium | Engine::Firefox => None,
        };
        let mut process = start_driver(engine, port, display.as_ref())?;
        let driver = match connect(engine, port, profile, &mut process).await {
            Ok(driver) => driver,
            Err(error) => {
                let _ = kill_group(&mut process).await;
                return Err(error);
            }
        };
        driver.set_script_timeout(Duration::from_mins(1)).await?;
        driver.set_page_load_timeout(Duration::from_mins(1)).await?;
        Ok(Self {
            engine,
            driver,
            process,
            profile: profile.to_owned(),
            display,
        })
    }

    /// Kills the browser and its driver without a word, as a flat battery does, and starts them again.
    ///
    /// # Errors
    /// Where the engine can't be started again.
    pub async fn kill_and_reopen(&mut self) -> Result<()> {
        kill_group(&mut self.process).await?;
        for lock in ["SingletonLock", "lock"] {
            let _ = std::fs::remove_file(self.profile.join(lock));
        }
        let fresh = Self::open(self.engine, &self.profile).await?;
        // The old session's end would be sent to a driver that is no more, and waited for.
        std::mem::forget(std::mem::replace(&mut self.driver, fresh.driver));
        self.process = fresh.process;
        self.display = fresh.display;
        Ok(())
    }

    /// Ends the session and the driver.
    ///
    /// # Errors
    /// Where the driver doesn't answer any more.
    pub async fn close(mut self) -> Result<()> {
        let ended = self.driver.clone().quit().await;
        kill_group(&mut self.process).await?;
        ended.context("the browser could not be closed")
    }
}

fn free_port() -> Result<u16> {
    Ok(TcpListener::bind("127.0.0.1:0")?.local_addr()?.port())
}

fn start_driver(engine: Engine, port: u16, display: Option<&Display>) -> Result<Child> {
    let mut command = Command::new(engine.driver());
    match engine {
        Engine::Firefox => command.args(["--port", &port.to_string(), "--websocket-port", "0"]),
        Engine::Chromium | Engine::WebKit => command.arg(format!("--port={port}")),
    };
    if let Some(display) = display {
        command.env("DISPLAY", display.name());
    }
    // A group of its own, so that the browser dies with its driver.
    command
        .process_group(0)
        .kill_on_drop(true)
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command.spawn().with_context(|| {
        format!(
            "{} can't be started: run `cargo xtask test`, which brings it",
            engine.driver()
        )
    })
}

async fn connect(
    engine: Engine,
    port: u16,
    profile: &Path,
    process: &mut Child,
) -> Result<WebDriver> {
    let address = format!("http://127.0.0.1:{port}");
    let until = Instant::now() + Duration::from_mins(1);
    loop {
        let tried = WebDriver::new(&address, capabilities(engine, profile)).await;
        match tried {
            Ok(driver) => return Ok(driver),
            Err(error) if Instant::now() > until => {
                return Err(error)
                    .with_context(|| format!("{} did not start a browser", engine.driver()));
            }
            Err(_) => {}
        }
        if let Some(status) = process.try_wait()? {
            bail!("{} ended by itself ({status})", engine.driver());
        }
        sleep(Duration::from_millis(200)).await;
    }
}

fn capabilities(engine: Engine, profile: &Path) -> Capabilities {
    let specific = match engine {
        Engine::Chromium => json!({
            "browserName": "chrome",
            "goog:chromeOptions": { "args": [
                "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--lang=en-GB",
                "--touch-events=enabled",
                format!("--user-data-dir={}", profile.display()),
            ]},
        }),
        Engine::Firefox => json!({
            "browserName": "firefox",
            "moz:firefoxOptions": {
                "args": ["-headless", "-profile", profile.display().to_string()],
                "prefs": { "intl.accept_languages": "en-GB", "dom.w3c_touch_events.enabled": 1 },
            },
        }),
        Engine::WebKit => json!({
            "browserName": "MiniBrowser",
            "webkitgtk:browserOptions": { "binary": webkit_browser(), "args": ["--automation"] },
        }),
    };
    match specific {
        Value::Object(map) => Capabilities::from(map),
        _ => Capabilities::default(),
    }
}

/// Debian keeps WebKit's test browser beside the library that it belongs to.
fn webkit_browser() -> String {
    let library = std::fs::read_dir("/usr/lib")
        .into_iter()
        .flatten()
        .flatten();
    let mut found: Vec<PathBuf> = library
        .flat_map(|triplet| {
            ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"]
                .map(|name| triplet.path().join(name).join("MiniBrowser"))
        })
        .filter(|path| path.exists())
        .collect();
    found.sort();
    found
        .pop()
        .map_or_else(|| "MiniBrowser".into(), |path| path.display().to_string())
}

async fn kill_group(process: &mut Child) -> Result<()> {
    if let Some(id) = process.id() {
        let _ = Command::new("kill")
            .args(["-KILL", "--", &format!("-{id}")])
            .status()
            .await;
    }
    process.wait().await?;
    Ok(())
}
