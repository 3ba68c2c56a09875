//! Browser journeys: an optometrist's day in Chromium, Firefox and WebKit, with real input, a real relay that is really
//! stopped, and waits on what the page shows. `cargo xtask test` runs them.
//!
//! Numbers that a journey expects come from outside: each says where.

mod at_hand;
mod bad_days;
mod brought_back;
mod by_tablet;
mod dump;
mod each_section;
mod earlier;
mod equal;
mod halves;
mod handed_over;
mod home;
mod in_german;
mod inside;
mod kept_words;
mod looks;
mod made_up;
mod news;
mod onward;
mod ordinary;
mod practice;
mod prints;
mod quickly;
mod seat;
mod second_look;
mod sheet;
mod sums;
mod sweeps;
mod thumbs;
mod versions;
mod visit;
mod week;

use anyhow::{Context, Result};
use lightround_tests::{Browser, Engine, Hand, Place, Relay};
use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::Instant;
use tokio::sync::Semaphore;

/// Two cores drive two browsers; more would only time one another out.
const AT_ONCE: u32 = 2;
static BROWSERS: Semaphore = Semaphore::const_new(AT_ONCE as usize);

/// A relay, a browser and a hand on it.
struct Stage {
    place: Place,
    /// None once it was stopped.
    relay: Option<Relay>,
    browser: Browser,
    hand: Hand,
}

impl Stage {
    fn relay(&self) -> Result<&Relay> {
        self.relay.as_ref().context("the relay was stopped")
    }

    /// Stops the relay for good; gives the address that it had.
    fn lose_the_server(&mut self) -> Result<String> {
        let relay = self.relay.take().context("the relay was stopped already")?;
        let address = relay.address().to_owned();
        relay.stop()?;
        Ok(address)
    }

    /// A browser that can start again with what it kept is killed outright; the other has its tab taken away.
    async fn tablet_dies(&mut self) -> Result<()> {
        if self.browser.engine.survives_a_kill() {
            self.browser.kill_and_reopen().await?;
            self.hand = Hand::on(&self.browser, &self.place);
            return self.hand.size(820, 1180).await;
        }
        let driver = self.hand.driver();
        let dying = driver.window().await?;
        let fresh = driver.new_tab().await?;
        driver.switch_to_window(dying).await?;
        driver.close_window().await?;
        driver.switch_to_window(fresh).await?;
        Ok(())
    }
}

/// Sets the stage in a fresh profile, plays, and takes everything down again; a failure leaves a screenshot.
async fn play(
    engine: Engine,
    name: &str,
    scene: impl AsyncFnOnce(&mut Stage) -> Result<()>,
) -> Result<()> {
    let _turn = BROWSERS.acquire().await?;
    let began = Instant::now();
    let place = Place::from_env()?;
    let profile = fresh_profile(engine, name);
    let relay = Some(Relay::start(&place)?);
    let browser = Browser::open(engine, &profile).await?;
    let hand = Hand::on(&browser, &place);
    hand.size(820, 1180).await?;
    let mut stage = Stage {
        place,
        relay,
        browser,
        hand,
    };
    let played = scene(&mut stage).await;
    if played.is_err() {
        // The failure itself is what counts; a browser that can't even be looked at any more is not.
        let _ = stage.hand.shot(&format!("failed-{name}")).await;
    }
    stage.browser.close().await?;
    println!(
        "{name} in {}: {:.0} s",
        engine.name(),
        began.elapsed().as_secs_f64()
    );
    let _ = std::fs::remove_dir_all(profile);
    played
}

fn fresh_profile(engine: Engine, name: &str) -> PathBuf {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    let number = NEXT.fetch_add(1, Ordering::Relaxed);
    std::env::temp_dir().join(format!(
        "lightround-{}-{name}-{}-{number}",
        engine.name(),
        std::process::id()
    ))
}

/// One test an engine for each scene.
macro_rules! in_every_engine {
    ($($name:ident => $scene:path;)*) => {
        mod chromium { $(#[tokio::test] async fn $name() -> anyhow::Result<()> { crate::play(lightround_tests::Engine::Chromium, stringify!($name), $scene).await })* }
        mod firefox { $(#[tokio::test] async fn $name() -> anyhow::Result<()> { crate::play(lightround_tests::Engine::Firefox, stringify!($name), $scene).await })* }
        mod webkit { $(#[tokio::test] async fn $name() -> anyhow::Result<()> { crate::play(lightround_tests::Engine::WebKit, stringify!($name), $scene).await })* }
    };
}

in_every_engine! {
    a_whole_visit_without_a_server => crate::visit::whole_visit;
    half_a_finding_outlives_the_tablet => crate::halves::half_findings;
    thumb_and_keyboard => crate::thumbs::thumb_and_keyboard;
    retinoscopy_sweep_by_sweep => crate::sweeps::sweep_by_sweep;
    retinoscopy_from_the_keyboard => crate::sweeps::sweep_by_keyboard;
    both_eyes_in_few_taps => crate::quickly::quick_entry;
    both_eyes_sweep_by_sweep_from_last_time => crate::quickly::sweeps;
    ten_eyes_are_found => crate::sweeps::ten_eyes;
    impossible_values_are_refused_at_the_field => crate::bad_days::impossible_values;
    a_weak_passphrase_is_judged_and_refused => crate::bad_days::weak_passphrase;
    a_wrong_passphrase_changes_nothing => crate::bad_days::wrong_passphrase;
    the_vault_locks_itself => crate::bad_days::idle;
    a_second_tab_is_told => crate::bad_days::second_tab;
    a_full_tablet_loses_nothing => crate::bad_days::full_tablet;
    what_holds_natively_holds_inside_the_browser => crate::inside::every_case;
    a_damaged_entry_is_said => crate::bad_days::damaged_entry;
    papers_are_made_and_the_log_is_kept => crate::handed_over::papers;
    earlier_findings_are_taken_once => crate::earlier::taken_once;
    words_beside_the_record_are_kept => crate::kept_words::kept;
    a_forgotten_passphrase_is_replaced => crate::sheet::recovered;
    the_tablets_own_unlocking_opens_it => crate::by_tablet::own_unlocking;
    every_tablet_is_lost => crate::brought_back::brought_back;
    what_is_written_goes_home => crate::home::goes_home;
    everything_in_german => crate::in_german::everything;
    a_newer_version_waits => crate::versions::newer_version;
    a_slip_is_asked_about => crate::second_look::asked_and_answered;
    a_sum_is_answered => crate::sums::a_sum;
    practice_with_a_drawn_reflex => crate::practice::drawn_reflex;
    retinoscopy_is_handed_on => crate::onward::handed_on;
    looking_around_among_made_up_people => crate::made_up::look_around;
    what_is_on_record_is_at_hand => crate::at_hand::known;
    an_ordinary_exam_of_all_sections => crate::ordinary::all_sections;
    every_screen_at_three_sizes => crate::looks::every_screen;
    every_section_at_three_sizes => crate::each_section::filled;
}
