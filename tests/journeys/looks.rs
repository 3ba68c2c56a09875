//! Every screen at a phone's, a tablet's and a laptop's size, Day and Night: kept as pictures to look at, and held to
//! what a machine can tell: nothing sticks out sideways, nothing to tap is too small, and (in Chromium) axe-core finds
//! nothing against WCAG 2.1 AA or the enhanced contrast of 7:1.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{
    acuity, begin_exam, decide_and_sign, make_vault, put_number, retinoscopy_left,
    retinoscopy_right, subjective, unlock,
};
use lightround_tests::{Engine, Hand, Relay};
use serde_json::Value;

/// The tablet's comes last: the journey goes on with it.
const SIZES: [(&str, u32, u32); 3] = [
    ("phone", 360, 740),
    ("laptop", 1366, 900),
    ("tablet", 820, 1180),
];

/// Things to tap that are smaller than a fingertip (48 CSS pixels high, as the design asks), with their size. A link
/// within a sentence is read first and tapped second, so it is left out, as WCAG 2.5.8 leaves it out.
const SMALL: &str = r"
return [...document.querySelectorAll('button, .act, .pill, .section-link, [role=radio], [role=slider], input, textarea')]
  .filter((each) => each.checkVisibility() && !each.closest('dialog:not([open])') && each.type !== 'checkbox')
  .map((each) => [each.id || each.className || each.tagName, each.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && box.height < 47.5)
  .map(([name, box]) => `${name}: ${box.width.toFixed(0)} by ${box.height.toFixed(0)}`);";

const WIDER: &str =
    "return document.documentElement.scrollWidth - document.documentElement.clientWidth";

/// Whether the link of the section that is open can be seen whole.
const OPEN_IN_SIGHT: &str = r"
const box = document.querySelector('.section-link[aria-current]')?.getBoundingClientRect();
return !box || (box.left >= -1 && box.right <= document.documentElement.clientWidth + 1);";

/// Plays it.
pub async fn every_screen(stage: &mut Stage) -> Result<()> {
    let (hand, relay) = (stage.hand.clone(), stage.relay()?);
    hand.go(relay.address()).await?;
    hand.see("#offered").await?;
    look(&hand, stage.browser.engine, "gate").await?;
    let passphrase = make_vault(&hand, relay).await?;
    look(&hand, stage.browser.engine, "rounds-empty").await?;
    fill(&hand, stage.browser.engine).await?;
    vault_and_rounds(&hand, stage.browser.engine, relay, &passphrase).await?;
    Ok(())
}

/// The exam's screens as they stand when each is filled in.
async fn fill(hand: &Hand, engine: Engine) -> Result<()> {
    begin_exam(hand).await?;
    hand.tap("#read-line-6-36").await?;
    look(hand, engine, "acuity").await?;
    acuity(hand).await?;
    swept(hand, engine).await?;
    retinoscopy_right(hand).await?;
    look(hand, engine, "retinoscopy-meridians").await?;
    retinoscopy_left(hand).await?;
    look(hand, engine, "retinoscopy-frame").await?;
    over_glasses(hand, engine).await?;
    hand.click("#next").await?;
    hand.see("#start-right-0").await?;
    look(hand, engine, "subjective-start").await?;
    subjective(hand).await?;
    hand.click("#to-subjective").await?;
    hand.see("#eye-right").await?;
    look(hand, engine, "subjective").await?;
    hand.click("#to-decision").await?;
    hand.see("#glasses-prescribe").await?;
    look(hand, engine, "decision").await?;
    decide_and_sign(hand).await?;
    look(hand, engine, "sign").await?;
    hand.click("#to-prescription").await?;
    hand.see("#rx-right").await?;
    look(hand, engine, "prescription").await?;
    hand.click("#back-to-exam").await?;
    hand.click("#to-subjective").await?;
    hand.see("#signed-section").await?;
    look(hand, engine, "signed-section").await?;
    hand.click("#to-story").await?;
    hand.see("#story").await?;
    look(hand, engine, "story").await
}

/// The pad before the first sweep and after a few, with an aside; then the other ways again.
async fn swept(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#way-right-sweeps").await?;
    hand.see("#pad").await?;
    look(hand, engine, "retinoscopy-pad").await?;
    for seen in ["with", "against", "with", "against", "with", "neutral"] {
        hand.tap("#advice-right").await?;
        hand.tap(&format!("#seen-{seen}")).await?;
    }
    hand.click("#reflex").await?;
    hand.click("#reflex-is-dull").await?;
    hand.read("#sweep-asides", "come closer").await?;
    look(hand, engine, "retinoscopy-sweeps").await?;
    hand.click("#to-frame").await?;
    hand.click("#way-right-meridians").await?;
    hand.see("#lens-right-first").await?;
    Ok(())
}

/// The left eye over the glasses worn, then in the frame again.
async fn over_glasses(hand: &Hand, engine: Engine) -> Result<()> {
    hand.click("#way-left-over").await?;
    put_number(hand, "worn-left-sphere", "2.5").await?;
    put_number(hand, "over-left-sphere", "1.5").await?;
    // A +1.50 held over at 67 cm is 0.01 more than the distance takes, so the glasses stand: by hand.
    hand.read("#net-off-left", "+2.50 DS").await?;
    hand.read("#hand-left", "+2.50 DS stands as it is").await?;
    look(hand, engine, "retinoscopy-over").await?;
    hand.click("#trial").await?;
    hand.see("#sign-working-plus").await?;
    look(hand, engine, "retinoscopy-trial").await?;
    hand.click("#trial-sheet-close").await?;
    hand.click("#way-left-frame").await?;
    retinoscopy_left(hand).await
}

async fn vault_and_rounds(
    hand: &Hand,
    engine: Engine,
    relay: &Relay,
    passphrase: &str,
) -> Result<()> {
    hand.click("header a[href='/']").await?;
    hand.read("#people", "Orla").await?;
    look(hand, engine, "rounds").await?;
    hand.click("#to-vault").await?;
    hand.see("#signer").await?;
    look(hand, engine, "vault").await?;
    hand.click("#lock-now").await?;
    hand.see("#unlock").await?;
    look(hand, engine, "unlock").await?;
    hand.go(&format!("{}/people/new", relay.address())).await?;
    unlock(hand, passphrase).await?;
    hand.see("#person-form").await?;
    look(hand, engine, "new-person").await
}

/// Looks at the screen that is open, at every size; in both palettes once, since they differ in nothing but colours.
pub async fn look(hand: &Hand, engine: Engine, name: &str) -> Result<()> {
    let palettes: &[&str] = match engine {
        Engine::Chromium => &["day", "night"],
        Engine::Firefox | Engine::WebKit => &["day"],
    };
    for (size, width, height) in SIZES {
        hand.size(width, height).await?;
        for palette in palettes {
            hand.ask(&format!(
                "document.documentElement.dataset.palette = '{palette}'; window.scrollTo(0, 0)"
            ))
            .await?;
            let whole = format!("{name}-{size}-{palette}");
            // What brings the open section into sight answers the new size a moment later.
            hand.until(
                &format!("{whole} with the open section in sight"),
                OPEN_IN_SIGHT,
            )
            .await?;
            hand.shot(&whole).await?;
            let wider = hand.ask(WIDER).await?;
            ensure!(
                wider.as_i64().unwrap_or(1) <= 0,
                "{whole} sticks out by {wider} pixels"
            );
            let small = hand.ask(SMALL).await?;
            ensure!(
                small.as_array().is_some_and(Vec::is_empty),
                "{whole} has things too small to tap: {small}"
            );
            if engine == Engine::Chromium {
                accessible(hand, if *palette == "day" { ALL } else { COLOURS })
                    .await
                    .with_context(|| whole)?;
            }
        }
    }
    hand.ask("document.documentElement.dataset.palette = 'day'")
        .await?;
    Ok(())
}

/// Everything that is asked of a page.
const ALL: &str = "{ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'], rules: { 'color-contrast-enhanced': { enabled: true } } }";
/// What another palette can change; all else was asked in the first, at the same size.
const COLOURS: &str = "{ runOnly: { type: 'rule', values: ['color-contrast', 'color-contrast-enhanced', 'link-in-text-block'] } }";

const AXE_RUN: &str = r"
const done = arguments[arguments.length - 1];
axe.run(document, ASKED)
  .then((found) => done(found.violations.flatMap((each) => each.nodes.map((node) => `${each.id}: ${node.target.join(' ')} (${node.failureSummary})`))))
  .catch((error) => done([String(error)]));";

async fn accessible(hand: &Hand, asked: &str) -> Result<()> {
    if hand.ask("return typeof axe").await? == "undefined" {
        let path = std::env::var("LIGHTROUND_AXE")
            .context("LIGHTROUND_AXE is not set: run the journeys with `cargo xtask test`")?;
        hand.ask(&std::fs::read_to_string(path).context("axe-core can't be read")?)
            .await?;
    }
    let found = hand.ask_later(&AXE_RUN.replace("ASKED", asked)).await?;
    let Value::Array(violations) = found else {
        anyhow::bail!("axe gave no list: {found}")
    };
    ensure!(
        violations.is_empty(),
        "axe-core: {}",
        violations
            .iter()
            .filter_map(Value::as_str)
            .collect::<Vec<_>>()
            .join("\n")
    );
    Ok(())
}
