//! Which requests were made before.

use super::ask::TOLERANCE;
use std::collections::HashSet;
use std::mem;
use std::sync::{Mutex, PoisonError};
use vault::DeviceId;

/// The most that are remembered of one span of time. Beyond that the older span is forgotten early: what a repeated
/// request can do is no more than the first did, so to remember them is a second lock and not the first.
const MOST: usize = 50_000;
/// A span in milliseconds: a signed time is good this long, counting both sides of the relay's clock.
const SPAN: u64 = 2 * TOLERANCE;

/// The nonces of this span and of the one before it.
#[derive(Debug, Default)]
pub struct Nonces(Mutex<Spans>);

#[derive(Debug, Default)]
struct Spans {
    began: u64,
    now: HashSet<(DeviceId, [u8; 16])>,
    before: HashSet<(DeviceId, [u8; 16])>,
}

impl Nonces {
    /// Whether this device uses this nonce for the first time.
    pub fn is_new(&self, device: DeviceId, nonce: [u8; 16], now: u64) -> bool {
        let mut spans = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if now.saturating_sub(spans.began) > SPAN || spans.now.len() >= MOST {
            spans.before = mem::take(&mut spans.now);
            spans.began = now;
        }
        !spans.before.contains(&(device, nonce)) && spans.now.insert((device, nonce))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_nonce_is_new_once_as_long_as_its_request_is_good() {
        let nonces = Nonces::default();
        let [one, other] = [1, 2].map(|byte| DeviceId::from_bytes([byte; 16]));
        assert!(nonces.is_new(one, [1; 16], 0));
        assert!(nonces.is_new(other, [1; 16], 0), "each device has its own");
        for now in [0, 1, SPAN, SPAN + 1, SPAN + 2] {
            assert!(!nonces.is_new(one, [1; 16], now), "{now}");
        }
        assert!(nonces.is_new(one, [2; 16], 1));
    }

    #[test]
    fn they_fill_no_memory() {
        let nonces = Nonces::default();
        let device = DeviceId::from_bytes([1; 16]);
        for number in 0..3 * MOST as u128 {
            assert!(nonces.is_new(device, number.to_be_bytes(), 0));
        }
        let spans = nonces.0.lock().unwrap();
        assert!(spans.now.len() <= MOST && spans.before.len() <= MOST);
    }
}
