//! Retinoscopy of somebody who was seen before, with every tap counted: by quick entry, and sweep by sweep.

use crate::Hand;
use crate::bedside::{
    begin_exam_of, decide_and_sign, retinoscopy_left, retinoscopy_right, subjective,
};
use crate::hand::Tally;
use crate::playing::{By, Count, Eye, open_the_pad, until_enough};
use anyhow::Result;

/// Puts somebody down whose first exam is signed, and begins the second.
///
/// # Errors
/// Where the app does not do what is expected, here as below.
pub async fn seen_before(hand: &Hand, given: &str) -> Result<()> {
    signed_before(hand, given).await?;
    hand.click("#begin-exam [data-part=begin]").await?;
    hand.see("#reason").await?;
    Ok(())
}

/// Puts somebody down whose first exam is signed, and looks at their story.
///
/// # Errors
/// As above.
pub async fn signed_before(hand: &Hand, given: &str) -> Result<()> {
    begin_exam_of(hand, given, 86).await?;
    hand.click("#to-retinoscopy").await?;
    if hand.is_there("#pad").await? {
        hand.click("#to-frame").await?;
        hand.click("#way-right-meridians").await?;
    }
    retinoscopy_right(hand).await?;
    retinoscopy_left(hand).await?;
    hand.click("#next").await?;
    subjective(hand).await?;
    decide_and_sign(hand).await?;
    hand.click("#to-story").await?;
    hand.see("#begin-exam").await?;
    Ok(())
}

/// Both eyes from last time's: the right one by its meridians, a quarter more plus in both, the left one as it stood in the
/// frame, where the distance is still in: once the net itself was put there.
///
/// Last time +4.00 and +2.50, so now +4.25 and +2.75, which is +2.75 / −1.50 × 180 with 67 cm off: by hand.
///
/// # Errors
/// As above.
pub async fn by_quick_entry(hand: &Hand) -> Result<Tally> {
    hand.click("#to-retinoscopy").await?;
    hand.see("#lens-right-first-more").await?;
    hand.count_from_here();
    for part in ["first", "second"] {
        hand.tap(&format!("#lens-right-{part}-more")).await?;
        hand.tap(&format!("#lens-right-{part}-more")).await?;
    }
    hand.tap("#work-left").await?;
    hand.tap("#way-left-frame").await?;
    hand.tap("#frame-left-take-last").await?;
    hand.read("#net-off-right", "+2.75 / −1.50 × 180").await?;
    hand.read("#net-off-left", "+2.25 / −1.00 × 85").await?;
    Ok(hand.counted())
}

/// Both eyes sweep by sweep from last time's; the eyes have moved by up to half a dioptre. Gives the taps of each kind too.
///
/// At neutral the right eye now takes +4.25 and +2.25, so +2.75 / −2.00 × 180 with 67 cm off, and the left +3.00 along 175 and
/// +3.75 along 85, so +2.25 / −0.75 × 85: by hand.
///
/// # Errors
/// As above.
pub async fn by_sweeps(hand: &Hand) -> Result<(Tally, Count)> {
    open_the_pad(hand).await?;
    hand.read("#net-right", "starts from last time").await?;
    hand.count_from_here();
    let mut count = Count::default();
    until_enough(
        hand,
        &Eye::plain("right", 4.25, 2.25),
        By::Touch,
        &mut count,
    )
    .await?;
    hand.tap("#work-left").await?;
    until_enough(hand, &Eye::plain("left", 3.0, 3.75), By::Touch, &mut count).await?;
    let tally = hand.counted();
    hand.read("#net-off-right", "+2.75 / −2.00 × 180").await?;
    hand.read("#net-off-left", "+2.25 / −0.75 × 85").await?;
    Ok((tally, count))
}
