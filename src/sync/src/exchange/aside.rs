//! Asking a relay for what it has set aside.

use super::{Answer, Failure, Host, Nonsense, Request, Why};
use vault::{Frame, Roll};

/// Asks for everything that was set aside, page by page. Only a lead is shown it. What a device that was ever on the roll
/// didn't sign is left out: nobody but the relay can have put it there.
///
/// # Errors
///
/// The relay fails, refuses, or goes round in circles.
pub async fn ask_aside<H: Host>(host: &H, roll: &Roll) -> Result<Vec<(Why, Frame)>, Failure> {
    let mut frames: Vec<(Why, Frame)> = Vec::new();
    loop {
        let after = frames
            .last()
            .map(|(_, frame)| (frame.device(), frame.head()));
        let Answer::Aside(page) = host.ask(Request::Aside { after }).await? else {
            return Err(Nonsense::Other.into());
        };
        let place = |frame: &Frame| (frame.device(), frame.sequence(), frame.hash());
        let places = frames.last().into_iter().chain(&page.frames);
        let in_order = places
            .map(|(_, frame)| place(frame))
            .is_sorted_by(|one, next| one < next);
        if !in_order || (page.more && page.frames.is_empty()) {
            return Err(Nonsense::Circle.into());
        }
        frames.extend(page.frames);
        if !page.more {
            break;
        }
    }
    frames.retain(|(_, frame)| is_genuine(roll, frame));
    Ok(frames)
}

fn is_genuine(roll: &Roll, frame: &Frame) -> bool {
    let standing = roll.standing(frame.device());
    frame.header().vault == roll.vault()
        && standing.is_some_and(|standing| frame.verify(&standing.key).is_ok())
}
