//! A person at the screen: finds things by what the page offers, waits for what should come, taps, drags and types.

use crate::touch::Touch;
use crate::{Browser, Engine, Place};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use thirtyfour::common::print::{PrintPage, PrintParameters};
use thirtyfour::error::WebDriverError;
use thirtyfour::prelude::*;
use tokio::time::{Instant, sleep};

/// How long anything may take before a journey fails: slow machines are slow, and a wait ends as soon as it can.
const PATIENCE: Duration = Duration::from_secs(45);
const LOOK_EVERY: Duration = Duration::from_millis(25);

/// Brings an element into sight, and answers once two frames in a row find it at the same place.
const STANDS_STILL: &str = r"
const [element, done] = arguments;
element.scrollIntoView({ block: 'center', behavior: 'instant' });
const frame = (then) => document.hidden ? setTimeout(then, 16) : requestAnimationFrame(then);
const look = (before) => {
  const { x, y, width, height } = element.getBoundingClientRect();
  const now = [x, y, width, height].join();
  if (now === before) done(true); else frame(() => look(now));
};
frame(() => look());";

/// What a journey does to a page.
#[derive(Clone)]
pub struct Hand {
    driver: WebDriver,
    engine: Engine,
    place: Place,
    tally: Arc<Mutex<Option<Tally>>>,
}

/// What a thumb has done.
#[derive(Clone, Copy, Debug, Default)]
pub struct Tally {
    /// How often it came down.
    pub taps: usize,
    /// How far it went from each place to the next, in CSS pixels.
    pub travel: f64,
    at: Option<(f64, f64)>,
}

impl Tally {
    fn came_down(&mut self, at: (f64, f64)) {
        self.taps += 1;
        let from = self.at.replace(at).unwrap_or(at);
        self.travel += (at.0 - from.0).hypot(at.1 - from.1);
    }
}

impl Hand {
    /// A hand on this browser.
    pub fn on(browser: &Browser, place: &Place) -> Self {
        Self {
            driver: browser.driver.clone(),
            engine: browser.engine,
            place: place.clone(),
            tally: Arc::default(),
        }
    }

    /// The WebDriver session underneath.
    pub fn driver(&self) -> &WebDriver {
        &self.driver
    }

    /// Goes to an address.
    ///
    /// # Errors
    /// Where the page can't be loaded.
    pub async fn go(&self, address: &str) -> Result<()> {
        self.driver
            .goto(address)
            .await
            .with_context(|| format!("going to {address}"))
    }

    /// Counts taps from here on.
    pub fn count_from_here(&self) {
        *self.tally() = Some(Tally::default());
    }

    /// What was counted, and counts no longer.
    pub fn counted(&self) -> Tally {
        self.tally().take().unwrap_or_default()
    }

    fn tally(&self) -> MutexGuard<'_, Option<Tally>> {
        self.tally.lock().unwrap_or_else(PoisonError::into_inner)
    }

    async fn count(&self, element: &WebElement) -> Result<()> {
        if self.tally().is_none() {
            return Ok(());
        }
        let shown = element.rect().await?;
        let at = (shown.x + shown.width / 2.0, shown.y + shown.height / 2.0);
        if let Some(tally) = self.tally().as_mut() {
            tally.came_down(at);
        }
        Ok(())
    }

    /// Waits for an element that is shown, by CSS selector.
    ///
    /// # Errors
    /// Says what did not come, and what stood on the page instead.
    pub async fn see(&self, selector: &str) -> Result<WebElement> {
        let until = Instant::now() + PATIENCE;
        loop {
            if let Some(found) = self.shown(selector).await? {
                return Ok(found);
            }
            if Instant::now() > until {
                bail!(
                    "{selector} did not come; the page says:\n{}",
                    self.page_text().await
                );
            }
            sleep(LOOK_EVERY).await;
        }
    }

    async fn shown(&self, selector: &str) -> Result<Option<WebElement>> {
        for element in self.found(selector).await? {
            // An element that the page replaced between the two questions is simply not there yet.
            if element.is_displayed().await.unwrap_or(false) {
                return Ok(Some(element));
            }
        }
        Ok(None)
    }

    /// Whether it is on the page now.
    ///
    /// # Errors
    /// Where the browser doesn't answer.
    pub async fn is_there(&self, selector: &str) -> Result<bool> {
        Ok(!self.found(selector).await?.is_empty())
    }

    /// WebKit answers with a stale element where the page replaced it while it was being looked for: then it looks again.
    async fn found(&self, selector: &str) -> Result<Vec<WebElement>> {
        loop {
            match self.driver.find_all(By::Css(selector)).await {
                Ok(found) => return Ok(found),
                Err(error) if is_stale(&error) => {}
                Err(error) => return Err(error.into()),
            }
        }
    }

    /// Waits until it has gone.
    ///
    /// # Errors
    /// Where it stays.
    pub async fn see_gone(&self, selector: &str) -> Result<()> {
        let until = Instant::now() + PATIENCE;
        while self.is_there(selector).await? {
            if Instant::now() > until {
                bail!("{selector} did not go away");
            }
            sleep(LOOK_EVERY).await;
        }
        Ok(())
    }

    /// Waits until an element's text holds these words.
    ///
    /// # Errors
    /// Says what it held instead.
    pub async fn read(&self, selector: &str, words: &str) -> Result<()> {
        let until = Instant::now() + PATIENCE;
        loop {
            let text = self.text(selector).await?;
            if text.contains(words) {
                return Ok(());
            }
            if Instant::now() > until {
                bail!("{selector} should say “{words}” and says “{text}”");
            }
            sleep(LOOK_EVERY).await;
        }
    }

    /// An element's text, once it is shown.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn text(&self, selector: &str) -> Result<String> {
        loop {
            match self.see(selector).await?.text().await {
                Ok(text) => return Ok(text),
                Err(error) if is_stale(&error) => {}
                Err(error) => return Err(error.into()),
            }
        }
    }

    /// Clicks with the mouse button, scrolled into sight first as a person would.
    ///
    /// # Errors
    /// Where it doesn't come or something covers it.
    pub async fn click(&self, selector: &str) -> Result<()> {
        let until = Instant::now() + PATIENCE;
        loop {
            let clicked = match self.in_reach(selector).await {
                Ok(element) => element.click().await.map_err(Into::into),
                Err(error) => Err(error),
            };
            match clicked {
                Ok(()) => return Ok(()),
                Err(error) if Instant::now() > until => {
                    return Err(error).with_context(|| format!("clicking {selector}"));
                }
                Err(_) => sleep(LOOK_EVERY).await,
            }
        }
    }

    /// Clicks twice in a row, as an impatient person does.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn click_twice(&self, selector: &str) -> Result<()> {
        let element = self.in_reach(selector).await?;
        let chain = self.driver.action_chain().double_click_element(&element);
        chain
            .perform()
            .await
            .with_context(|| format!("clicking {selector} twice"))
    }

    /// Taps with a finger.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn tap(&self, selector: &str) -> Result<()> {
        let element = self.in_reach(selector).await?;
        self.count(&element).await?;
        self.touch(Touch::down(&element, 0, 0)?.up())
            .await
            .with_context(|| format!("tapping {selector}"))
    }

    /// Holds a finger on it.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn hold(&self, selector: &str, milliseconds: u32) -> Result<()> {
        let element = self.in_reach(selector).await?;
        self.touch(Touch::down(&element, 0, 0)?.hold(milliseconds).up())
            .await
            .with_context(|| format!("holding {selector}"))
    }

    /// Puts a finger down at an offset from its centre, slides it and lifts.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn drag(&self, selector: &str, from: (i32, i32), by: (i32, i32)) -> Result<()> {
        let element = self.in_reach(selector).await?;
        self.touch(
            Touch::down(&element, from.0, from.1)?
                .slide(by.0, by.1)
                .up(),
        )
        .await
        .with_context(|| format!("dragging {selector}"))
    }

    /// Scrolled into sight, and standing still: nobody taps at what is still on its way.
    async fn in_reach(&self, selector: &str) -> Result<WebElement> {
        let element = self.see(selector).await?;
        self.driver
            .execute_async(STANDS_STILL, vec![element.to_json()?])
            .await?;
        Ok(element)
    }

    async fn touch(&self, gesture: Touch) -> Result<()> {
        self.driver
            .handle()
            .cmd(thirtyfour::common::command::Command::ExtensionCommand(
                Box::new(gesture),
            ))
            .await?;
        Ok(())
    }

    /// Empties a field and types into it, scrolled into sight first as a person would.
    ///
    /// # Errors
    /// Where it doesn't come or takes nothing.
    pub async fn write(&self, selector: &str, text: &str) -> Result<()> {
        let until = Instant::now() + PATIENCE;
        let element = loop {
            let element = self.in_reach(selector).await?;
            match element.clear().await {
                Ok(()) => break element,
                Err(error) if Instant::now() > until => {
                    return Err(error).with_context(|| format!("emptying {selector}"));
                }
                Err(_) => sleep(LOOK_EVERY).await,
            }
        };
        element
            .send_keys(text)
            .await
            .with_context(|| format!("typing into {selector}"))
    }

    /// Picks a file on this machine; the input itself is not to be seen, only its label.
    ///
    /// # Errors
    /// Where there is no such input.
    pub async fn pick(&self, selector: &str, file: &str) -> Result<()> {
        let input = self.driver.find(By::Css(selector)).await;
        let picked = input.with_context(|| format!("{selector} is not there"))?;
        picked
            .send_keys(file)
            .await
            .with_context(|| format!("picking {file} in {selector}"))
    }

    /// Presses keys with an element focused.
    ///
    /// # Errors
    /// Where it doesn't come.
    pub async fn keys(
        &self,
        selector: &str,
        keys: impl Into<thirtyfour::TypingData>,
    ) -> Result<()> {
        self.see(selector)
            .await?
            .send_keys(keys)
            .await
            .with_context(|| format!("pressing keys in {selector}"))
    }

    /// Runs a script and gives its answer.
    ///
    /// # Errors
    /// Where it throws.
    pub async fn ask(&self, script: &str) -> Result<Value> {
        Ok(self
            .driver
            .execute(script, Vec::new())
            .await?
            .json()
            .clone())
    }

    /// Runs a script that ends by calling its last argument.
    ///
    /// # Errors
    /// Where it throws, or doesn't answer in time.
    pub async fn ask_later(&self, script: &str) -> Result<Value> {
        Ok(self
            .driver
            .execute_async(script, Vec::new())
            .await?
            .json()
            .clone())
    }

    /// Waits until a script answers true.
    ///
    /// # Errors
    /// Where it never does.
    pub async fn until(&self, what: &str, script: &str) -> Result<()> {
        let until = Instant::now() + PATIENCE;
        while self.ask(script).await? != Value::Bool(true) {
            if Instant::now() > until {
                bail!(
                    "{what} did not come about; the page says:\n{}",
                    self.page_text().await
                );
            }
            sleep(LOOK_EVERY).await;
        }
        Ok(())
    }

    /// Keeps a screenshot as `engine-name.png`.
    ///
    /// # Errors
    /// Where it can't be taken or written.
    pub async fn shot(&self, name: &str) -> Result<()> {
        let path = self
            .place
            .shots
            .join(format!("{}-{name}.png", self.engine.name()));
        self.driver
            .screenshot(&path)
            .await
            .with_context(|| format!("the screenshot {}", path.display()))
    }

    /// Prints the page, backgrounds and all, on paper of this width and height in centimetres; keeps it as
    /// `engine-name.pdf`, and gives the PDF.
    ///
    /// # Errors
    /// Where the engine can't print, or the file can't be written.
    pub async fn print(&self, name: &str, width: f64, height: f64) -> Result<Vec<u8>> {
        let paper = PrintParameters {
            page: PrintPage { width, height },
            background: true,
            ..PrintParameters::default()
        };
        let printed = self.driver.print_page(paper).await;
        let pdf = printed.context("printing the page")?;
        let file = format!("{}-{name}.pdf", self.engine.name());
        std::fs::write(self.place.shots.join(file), &pdf)?;
        Ok(pdf)
    }

    async fn page_text(&self) -> String {
        let said = self
            .ask("return location.pathname + '\\n' + document.body.innerText")
            .await;
        said.ok()
            .and_then(|value| value.as_str().map(str::to_owned))
            .unwrap_or_else(|| "(nothing)".into())
    }
}

fn is_stale(error: &WebDriverError) -> bool {
    matches!(
        &**error,
        thirtyfour::error::WebDriverErrorInner::StaleElementReference(_)
    )
}
