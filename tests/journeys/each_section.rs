//! Every section of an exam, filled as an ordinary exam fills it, looked at as [`looks`](crate::looks) looks.

use crate::Stage;
use crate::looks::look;
use crate::ordinary::SECTIONS;
use anyhow::Result;
use lightround_tests::bedside::make_vault;
use lightround_tests::{Hand, quick};

/// What comes after the decision, each with what is tapped there: glasses to be made, then to be measured.
const AFTERWARDS: [(&str, &[&str]); 2] = [
    ("order", &["order-pair-1", "engraved-0"]),
    ("fitting", &["came-0"]),
];

/// Plays it.
pub async fn filled(stage: &mut Stage) -> Result<()> {
    let (hand, engine) = (stage.hand.clone(), stage.browser.engine);
    make_vault(&hand, stage.relay()?).await?;
    quick::signed_before(&hand, "Orla").await?;
    hand.click("header a[href='/']").await?;
    hand.read("#people", "Orla").await?;
    hand.click("#people [data-part=begin]").await?;
    for (title, taps) in SECTIONS {
        hand.read(".section-title", title).await?;
        tap_all(&hand, taps).await?;
        let name = title.to_lowercase().replace(' ', "-");
        look(&hand, engine, &format!("section-{name}")).await?;
        hand.click("#next").await?;
    }
    for (slug, taps) in AFTERWARDS {
        hand.click(&format!("#to-{slug}")).await?;
        tap_all(&hand, taps).await?;
        look(&hand, engine, &format!("section-{slug}")).await?;
    }
    Ok(())
}

async fn tap_all(hand: &Hand, ids: &[&str]) -> Result<()> {
    for id in ids {
        hand.tap(&format!("#{id}")).await?;
    }
    Ok(())
}
