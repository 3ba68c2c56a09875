//! A simulated eye and a simulated examiner.

use optics::retinoscopy::Motion;

/// A small generator of even numbers, seeded, so that a failing eye can be met again: `SplitMix64`, Steele, Lea and Flood 2014.
pub struct Chance(pub u64);

impl Chance {
    /// Between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Of a normal curve about 0 with standard deviation 1: Box and Muller 1958.
    pub fn normal(&mut self) -> f64 {
        let size = (-2.0 * self.even().max(f64::MIN_POSITIVE).ln()).sqrt();
        size * (std::f64::consts::TAU * self.even()).cos()
    }
}

/// What is known of an eye beforehand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum From {
    /// Any power within 12 D either side.
    Anywhere,
    /// Last time's finding: nine eyes in ten changed by 0.5 D or so, one in ten by far more, mostly towards minus.
    LastTime,
}

/// How an examiner sees.
#[derive(Clone, Copy, Debug)]
pub struct Examiner {
    /// Half the zone that looks neutral, in dioptres.
    pub half_zone: f64,
    /// How far the edge of that zone scatters, as a standard deviation in dioptres.
    pub spread: f64,
    /// The share of motions that are called wrongly.
    pub miscalls: f64,
}

impl Examiner {
    /// What is called where the eye needs `error` dioptres more plus.
    pub fn call(&self, error: f64, chance: &mut Chance) -> Motion {
        const CALLS: [Motion; 3] = [Motion::With, Motion::Neutral, Motion::Against];
        let judged = error + self.spread * chance.normal();
        let seen = if judged > self.half_zone {
            0
        } else if judged < -self.half_zone {
            2
        } else {
            1
        };
        let wrong = chance.even() < self.miscalls;
        let other = if chance.even() < 0.5 { 1 } else { 2 };
        CALLS[if wrong { (seen + other) % 3 } else { seen }]
    }
}
