//! Inputs made of other inputs, from a seed: the same seed, the same inputs.

/// The longest input that is made; what is longer is cut.
const LONGEST: usize = 8 * 1024;
/// Bytes at which readers trip: ends of ranges, CBOR's break and its longest lengths, what text is cut at.
const TELLING: [u8; 14] = [
    0, 1, 0x18, 0x1b, 0x1f, 0x40, 0x7f, 0x80, 0x9f, 0xbf, 0xff, b'"', b',', b'\n',
];

/// Endless changes of some inputs.
pub struct Mutations<'a> {
    inputs: &'a [Vec<u8>],
    state: u64,
}

impl<'a> Mutations<'a> {
    /// Of these inputs; of none, it is of the empty one.
    pub fn new(inputs: &'a [Vec<u8>], seed: u64) -> Self {
        Self {
            inputs,
            state: seed,
        }
    }

    /// `SplitMix64` (Steele, Lea and Flood 2014).
    fn chance(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// Less than `bound`; 0 where that is 0.
    fn below(&mut self, bound: usize) -> usize {
        (self.chance() % bound.max(1) as u64) as usize
    }

    fn input(&mut self) -> &'a [u8] {
        let at = self.below(self.inputs.len());
        self.inputs.get(at).map_or(&[], Vec::as_slice)
    }

    /// Part of an input.
    fn part(&mut self) -> &'a [u8] {
        let input = self.input();
        let from = self.below(input.len());
        let length = self.below((input.len() - from).min(64) + 1);
        &input[from..from + length]
    }

    /// One change of the kinds that fuzzing engines make.
    fn change(&mut self, bytes: &mut Vec<u8>) {
        let at = self.below(bytes.len() + 1);
        let byte = match self.below(2) {
            0 => TELLING[self.below(TELLING.len())],
            _ => self.chance() as u8,
        };
        match (self.below(7), bytes.get_mut(at)) {
            (0, Some(there)) => *there ^= 1 << (byte & 7),
            (1, Some(there)) => *there = byte,
            (2, Some(there)) => *there = there.wrapping_add((byte & 15).wrapping_sub(8)),
            (3, Some(_)) => {
                let end = at + self.below((bytes.len() - at).min(32) + 1);
                bytes.drain(at..end);
            }
            (4, Some(_)) => bytes.truncate(at),
            (5, _) => bytes.insert(at, byte),
            _ => {
                let part = self.part();
                bytes.splice(at..at, part.iter().copied());
            }
        }
    }
}

impl Iterator for Mutations<'_> {
    type Item = Vec<u8>;

    fn next(&mut self) -> Option<Vec<u8>> {
        let mut bytes = self.input().to_vec();
        for _ in 0..=self.below(6) {
            self.change(&mut bytes);
        }
        bytes.truncate(LONGEST);
        Some(bytes)
    }
}
