//! How far every device's log goes, as one side knows it: the only cursor there is.

use std::collections::BTreeMap;
use vault::{DeviceId, Head};

/// Device by device, the newest frame.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Vector(BTreeMap<DeviceId, Head>);

impl Vector {
    /// Nothing of anybody.
    pub fn new() -> Self {
        Self::default()
    }

    /// The newest frame of a device; none where its log is empty.
    pub fn head(&self, device: DeviceId) -> Option<Head> {
        self.0.get(&device).copied()
    }

    /// The number of that frame; 0 where the log is empty.
    pub fn sequence(&self, device: DeviceId) -> u64 {
        self.head(device).map_or(0, |head| head.sequence)
    }

    /// Says that a device's log ends with `head`, or is empty.
    pub fn set(&mut self, device: DeviceId, head: Option<Head>) {
        match head {
            Some(head) => self.0.insert(device, head),
            None => self.0.remove(&device),
        };
    }

    /// Says so if that is further than what was known. Tells whether it was.
    pub fn raise(&mut self, device: DeviceId, head: Head) -> bool {
        let further = head.sequence > self.sequence(device);
        if further {
            self.0.insert(device, head);
        }
        further
    }

    /// Devices and heads, in the order of the devices' ids.
    pub fn iter(&self) -> impl Iterator<Item = (DeviceId, Head)> {
        self.0.iter().map(|(device, head)| (*device, *head))
    }

    /// How many devices have a log.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether nobody has.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Devices of which this side has more frames than `other`, in order.
    pub fn beyond(&self, other: &Self) -> Vec<DeviceId> {
        self.iter()
            .filter(|(device, head)| head.sequence > other.sequence(*device))
            .map(|(device, _)| device)
            .collect()
    }

    /// How many frames this side has beyond `other`.
    pub fn count_beyond(&self, other: &Self) -> u64 {
        self.iter()
            .map(|(device, head)| head.sequence.saturating_sub(other.sequence(device)))
            .fold(0, u64::saturating_add)
    }
}

impl FromIterator<(DeviceId, Head)> for Vector {
    fn from_iter<I: IntoIterator<Item = (DeviceId, Head)>>(heads: I) -> Self {
        Self(heads.into_iter().collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use vault::FrameHash;

    fn head(sequence: u64) -> Head {
        Head {
            sequence,
            hash: FrameHash::from_bytes([sequence as u8; 32]),
        }
    }

    fn vector(heads: &[(u8, u64)]) -> Vector {
        heads
            .iter()
            .map(|(device, sequence)| (DeviceId::from_bytes([*device; 16]), head(*sequence)))
            .collect()
    }

    #[test]
    fn what_one_side_has_beyond_the_other() {
        let (one, other) = (
            vector(&[(1, 5), (2, 2), (4, 1)]),
            vector(&[(1, 3), (2, 2), (3, 9)]),
        );
        assert_eq!(
            one.beyond(&other),
            [1, 4].map(|byte| DeviceId::from_bytes([byte; 16]))
        );
        assert_eq!((one.count_beyond(&other), other.count_beyond(&one)), (3, 9));
        assert_eq!(one.count_beyond(&one), 0);
    }

    #[test]
    fn a_vector_is_raised_and_never_lowered() {
        let device = DeviceId::from_bytes([1; 16]);
        let mut raised = vector(&[(1, 5)]);
        assert!(!raised.raise(device, head(5)) && !raised.raise(device, head(4)));
        assert!(raised.raise(device, head(6)));
        assert_eq!(raised, vector(&[(1, 6)]));
        raised.set(device, None);
        assert!(raised.is_empty() && raised.sequence(device) == 0);
    }
}
