//! Randomness, from the system or the browser.

/// The system gave no random bytes; nothing was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("this device gives no random numbers, so no key can be made on it")]
pub struct NoRandomness;

/// Where random bytes come from. Only the tests that freeze formats have another source than [`System`].
pub trait Source {
    fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness>;
}

/// The operating system's or the browser's generator.
pub struct System;

impl Source for System {
    fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
        getrandom::fill(bytes).map_err(|_| NoRandomness)
    }
}

/// `N` bytes of a source.
pub fn draw<const N: usize>(source: &mut dyn Source) -> Result<[u8; N], NoRandomness> {
    let mut bytes = [0; N];
    source.fill(&mut bytes)?;
    Ok(bytes)
}

/// `N` random bytes.
pub fn random<const N: usize>() -> Result<[u8; N], NoRandomness> {
    draw(&mut System)
}
