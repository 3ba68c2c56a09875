//! Numbers that look random and are the same every time: the generator called `SplitMix64` (Steele, Lea and Flood 2014,
//! "Fast splittable pseudorandom number generators", OOPSLA 2014).

/// A run of numbers.
#[derive(Clone, Debug)]
pub struct Chance {
    state: u64,
    scatter: f64,
}

impl Chance {
    /// The run of a seed.
    pub const fn new(seed: u64) -> Self {
        Self {
            state: seed,
            scatter: 1.0,
        }
    }

    /// The run of one person.
    pub fn of(seed: u64, place: usize) -> Self {
        Self::new(seed ^ (place as u64).wrapping_mul(0xD1B5_4A32_D192_ED03)).branch()
    }

    /// A run of its own, so that what is drawn from it changes nothing here.
    #[must_use]
    pub fn branch(&mut self) -> Self {
        Self {
            state: self.next(),
            scatter: self.scatter,
        }
    }

    /// The same, with deviations multiplied.
    #[must_use]
    pub const fn scattered_by(mut self, scatter: f64) -> Self {
        self.scatter = scatter;
        self
    }

    /// Any number of 64 bits.
    #[allow(
        clippy::should_implement_trait,
        reason = "a run of numbers never ends, so it is no iterator"
    )]
    pub fn next(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Once in so many times.
    pub fn one_in(&mut self, many: u64) -> bool {
        self.next().is_multiple_of(many)
    }

    /// One of these.
    ///
    /// # Panics
    /// There is none to pick from.
    pub fn pick<'a, T: ?Sized>(&mut self, of: &[&'a T]) -> &'a T {
        // Reckoned in 64 bits, so that a browser picks as a server does.
        of[(self.next() % of.len() as u64) as usize]
    }

    /// Normal, as the sum of twelve even numbers.
    pub fn about(&mut self, mean: f64, deviation: f64) -> f64 {
        let twelve: f64 = (0..12).map(|_| self.share()).sum();
        mean + deviation * self.scatter * (twelve - 6.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Chance;

    /// The first numbers from seed 1234567, as the generator's entry on Rosetta Code prints them (from memory).
    #[test]
    fn the_published_numbers_come_out() {
        let mut chance = Chance::new(1_234_567);
        assert_eq!(chance.next(), 6_457_827_717_110_365_317);
        assert_eq!(chance.next(), 3_203_168_211_198_807_973);
        assert_eq!(chance.next(), 9_817_491_932_198_370_423);
    }
}
