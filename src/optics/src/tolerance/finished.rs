//! A pair of lenses as it was ordered, and as it was measured.

use crate::prism::Prism;
use crate::{Eyes, OpticsError, SphereCyl, limits};

/// One lens of a pair: its far power, and what else was ordered or measured of it.
///
/// ```
/// use optics::{SphereCyl, tolerance::Finished};
/// let lens = Finished::new(SphereCyl::parse("+2.25 / −1.25 × 35")?)?.with_add(2.5)?.with_segment(18.0)?;
/// assert_eq!(lens.add(), Some(2.5));
/// assert!(lens.with_add(f64::NAN).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finished {
    power: SphereCyl,
    add: Option<f64>,
    prism: Prism,
    segment_mm: Option<f64>,
}

impl Finished {
    /// A lens of this far power (back vertex power), without addition, prism or segment.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a power that no field accepts.
    pub fn new(power: SphereCyl) -> Result<Self, OpticsError> {
        limits::lens(&power)?;
        Ok(Self {
            power,
            add: None,
            prism: Prism::NONE,
            segment_mm: None,
        })
    }

    /// With a reading addition in dioptres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for one that no field accepts.
    pub fn with_add(self, add: f64) -> Result<Self, OpticsError> {
        let add = Some(limits::add(add)?);
        Ok(Self { add, ..self })
    }

    /// With a prism: as prescribed, or as measured at the point where the order wants its centre.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a component that no field accepts.
    pub fn with_prism(self, prism: Prism) -> Result<Self, OpticsError> {
        limits::prism(prism.h().abs())?;
        limits::prism(prism.v().abs())?;
        Ok(Self { prism, ..self })
    }

    /// With the height of its segment or fitting cross in millimetres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for one that no frame holds.
    pub fn with_segment(self, height_mm: f64) -> Result<Self, OpticsError> {
        let segment_mm = Some(limits::segment_mm(height_mm)?);
        Ok(Self { segment_mm, ..self })
    }

    /// Its far power.
    pub const fn power(&self) -> &SphereCyl {
        &self.power
    }

    /// Its addition in dioptres.
    pub const fn add(&self) -> Option<f64> {
        self.add
    }

    /// Its prism.
    pub const fn prism(&self) -> Prism {
        self.prism
    }

    /// The height of its segment in millimetres.
    pub const fn segment_mm(&self) -> Option<f64> {
        self.segment_mm
    }
}

/// A pair as it was ordered. Where the maker states a compensated power, that is the order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ordered(pub Eyes<Finished>);

/// A pair as it was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The lenses.
    pub lenses: Eyes<Finished>,
    /// How finely the focimeter reads.
    pub read_to: ReadTo,
}

/// How finely a focimeter reads power. The prism, axis and height steps that go with it are common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ReadTo {
    /// 0.12 D, by eye.
    Eighth,
    /// 0.06 D, by eye, between the marks.
    #[default]
    Sixteenth,
    /// 0.01 D, by an instrument.
    Hundredth,
}

impl ReadTo {
    /// A step of power in hundredths of a dioptre.
    pub(super) const fn power(self) -> i64 {
        match self {
            Self::Eighth => 12,
            Self::Sixteenth => 6,
            Self::Hundredth => 1,
        }
    }

    /// A step of prism in hundredths of a prism dioptre.
    pub(super) const fn prism(self) -> i64 {
        match self {
            Self::Eighth | Self::Sixteenth => 25,
            Self::Hundredth => 1,
        }
    }

    /// A step of axis in hundredths of a degree.
    pub(super) const AXIS: i64 = 100;

    /// A step of height on a rule in hundredths of a millimetre.
    pub(super) const HEIGHT: i64 = 50;
}
