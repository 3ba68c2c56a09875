//! Whether the arithmetic prints the same figures here as elsewhere, to the last bit.

use anyhow::{Result, ensure};
use optics::prism::{Decentration, Prism};
use optics::retinoscopy::{Motion, Setup, Sweep, Sweeping, WorkingDistance};
use optics::{Eye, Meridian, SphereCyl, acuity, vertex};

/// What all bits below come to. Frozen where it was first reckoned: it may change only with the arithmetic itself.
const FROZEN: u64 = 0x1a18_6a75_ef9b_53b7;

/// Reckons a few hundred figures and holds their bits against the frozen ones.
///
/// # Errors
/// Where they differ.
pub fn check() -> Result<()> {
    let found = of_many()?;
    ensure!(
        found == FROZEN,
        "the arithmetic comes out otherwise here than where its bits were frozen: {found:#018x}"
    );
    Ok(())
}

fn of_many() -> Result<u64> {
    let mut bits = Bits(0xcbf2_9ce4_8422_2325);
    for at in 0..180_u8 {
        let axis = f64::from(at) + 0.5;
        let lens = SphereCyl::new(axis / 16.0 - 6.0, 0.25 - axis / 40.0, axis)?;
        let both = lens.vector() + SphereCyl::new(1.25, -0.75, 180.0 - axis)?.vector();
        bits.lens(&both.into());
        bits.lens(&vertex::effective_sphero_cyl(&lens, 14.0, 0.0)?);
        let prism = Prism::of_decentred(&lens, Decentration::inward(Eye::Left, 2.5, 8.0)?)?;
        bits.take(prism.h());
        bits.take(prism.v());
        bits.take(acuity::logmar(axis, 6.0, 2.5)?);
    }
    for bracket in swept()?.bracket().each() {
        bits.take(bracket.likeliest());
        bits.take(bracket.interval().low);
        bits.take(bracket.interval().high);
    }
    Ok(bits.0)
}

/// An eye in the middle of being swept.
fn swept() -> Result<Sweeping> {
    let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
    let seen = [
        (0.0, Motion::With),
        (6.0, Motion::Against),
        (3.0, Motion::With),
        (3.75, Motion::Neutral),
    ];
    let mut sweeping = Sweeping::default();
    for (lens, motion) in seen {
        for meridian in [25.0, 115.0] {
            let sweep = Sweep::new(Meridian::new(meridian)?, lens, setup, motion)?;
            sweeping.sweeps.push(sweep);
        }
    }
    Ok(sweeping)
}

/// All bits so far, as Fowler, Noll and Vo's hash.
struct Bits(u64);

impl Bits {
    fn take(&mut self, value: f64) {
        for byte in value.to_bits().to_le_bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    fn lens(&mut self, lens: &SphereCyl) {
        self.take(lens.sphere);
        self.take(lens.cylinder_power());
        self.take(
            lens.cylinder
                .map_or(0.0, |cylinder| cylinder.axis().degrees()),
        );
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_bits_are_those_that_were_frozen() {
        super::check().unwrap();
    }
}
