//! An ordinary exam of all sections, of somebody who was seen before: from the list to the signature, no key pressed.

use crate::Stage;
use anyhow::{Result, ensure};
use lightround_tests::bedside::{EXAMINER, make_vault};
use lightround_tests::{Hand, quick};

/// The aim from the list to the signature.
const MOST_TAPS: usize = 120;

/// What is tapped in each section, in the order in which they come; the way on is a tap more.
pub const SECTIONS: [(&str, &[&str]); 16] = [
    (
        "History",
        &[
            "reason-0",
            "cannot-travel-0",
            "no-complaint",
            "allergies-0",
            "falls-more",
            "mobility-walks-with-help",
        ],
    ),
    (
        "Capacity and consent",
        &[
            "capacity-yes-presumed",
            "agreed-in-words",
            "asked-for-by-1",
            "identified-by-0",
        ],
    ),
    ("Worn glasses", &["no-glasses"]),
    ("Acuity", &["read-line-6-36", "work-left", "read-line-6-18"]),
    (
        "Pupils and media",
        &[
            "all-normal",
            "light-right-more",
            "light-left-more",
            "lens-right-its-own",
            "lens-left-its-own",
        ],
    ),
    (
        "Retinoscopy",
        &[
            "lens-right-first-more",
            "lens-right-second-more",
            "work-left",
            "way-left-frame",
            "frame-left-take-last",
        ],
    ),
    (
        "Subjective",
        &[
            "start-right-0",
            "reached-right-6-12",
            "work-left",
            "start-left-0",
            "reached-left-6-9",
        ],
    ),
    (
        "Near",
        &["task-0", "near-distance-more", "begin-with", "print-n8"],
    ),
    ("Binocular", &["all-normal"]),
    (
        "Pressure",
        &[
            "take-0",
            "mmhg-0-right-add",
            "mmhg-0-right-figure-15",
            "mmhg-0-right-figure-17",
            "mmhg-0-right-sheet-close",
            "mmhg-0-left-add",
            "mmhg-0-left-figure-16",
            "mmhg-0-left-figure-16",
            "mmhg-0-left-sheet-close",
        ],
    ),
    ("Drops", &["no-drops"]),
    (
        "Anterior",
        &[
            "looked-with-0",
            "all-normal",
            "angle-right-van-herick",
            "angle-right-wide-3",
            "angle-left-van-herick",
            "angle-left-wide-3",
        ],
    ),
    (
        "Posterior",
        &[
            "all-normal",
            "viewed-right-direct",
            "viewed-left-direct",
            "cup-right-more",
            "cup-left-more",
        ],
    ),
    ("Fields", &["all-normal"]),
    ("Sketches", &[]),
    ("Decision", &["glasses-prescribe"]),
];

/// What the signature is put under, each from what was tapped: the mean of 15 and 17 is 16 by hand, 40 cm and a cup of 0.3 are
/// where their steppers start.
const STANDS: [&str; 9] = [
    "sight test due",
    "can decide, presumed",
    "brisk",
    "N8 at 40 cm",
    "no movement",
    "16 mmHg (15, 17)",
    "van Herick 3",
    "0.3",
    "whole and straight",
];

/// Plays it.
pub async fn all_sections(stage: &mut Stage) -> Result<()> {
    let hand = stage.hand.clone();
    make_vault(&hand, stage.relay()?).await?;
    quick::signed_before(&hand, "Orla").await?;
    hand.click("header a[href='/']").await?;
    hand.read("#people", "Orla").await?;
    hand.count_from_here();
    hand.tap("#people [data-part=begin]").await?;
    for (title, taps) in SECTIONS {
        hand.read(".section-title", title).await?;
        for id in taps {
            hand.tap(&format!("#{id}")).await?;
        }
        if title == "Anterior" {
            marked(&hand).await?;
        }
        hand.tap("#next").await?;
    }
    hand.read(".section-title", "Sign").await?;
    hand.tap("#sign").await?;
    hand.read("#signatures", EXAMINER).await?;
    let tally = hand.counted();
    println!(
        "an ordinary exam of all sections: {} taps, {:.0} pixels",
        tally.taps, tally.travel
    );
    for words in STANDS {
        hand.read("main", words).await?;
    }
    hand.shot("ordinary-signed").await?;
    ensure!(
        tally.taps <= MOST_TAPS,
        "{} taps are more than {MOST_TAPS}",
        tally.taps
    );
    Ok(())
}

/// Five parts of each eye are marked as filled by the tap, and no more than those.
async fn marked(hand: &Hand) -> Result<()> {
    hand.until(
        "ten marks of the one tap",
        "return document.querySelectorAll('.asked.tapped').length === 10",
    )
    .await
}
