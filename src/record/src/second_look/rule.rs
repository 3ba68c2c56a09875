//! The names of the rules, and what stands about each whatever it finds.

use super::{
    Raised, acuity, addition, complaints, consent, crossed, cups, distance, drops, grid,
    large_change, multifocal, nuclear, pressure, scissoring, sign, swapped, trial_frame,
};
use crate::finding::Eye;
use crate::sections::SectionKind;

/// What stands about a rule; it lies in the rule's own file.
pub(super) struct About {
    /// The word by which answers know it. Never used again for another rule.
    pub slug: &'static str,
    /// What it looks for, in a few words.
    pub name: fn() -> &'static str,
    /// Why it asks.
    pub reason: fn() -> &'static str,
    /// Who says so.
    pub source: fn() -> &'static str,
    /// Where it can be put right.
    pub section: SectionKind,
    /// Of which of today's sections it speaks.
    pub speaks_of: &'static [SectionKind],
}

/// Today's lenses stand in either.
pub(super) const LENSES: &[SectionKind] = &[SectionKind::Retinoscopy, SectionKind::Subjective];

/// Those and the pupils.
pub(super) const LENSES_AND_PUPILS: &[SectionKind] = &[
    SectionKind::Pupils,
    SectionKind::Retinoscopy,
    SectionKind::Subjective,
];

/// Those and the glasses that are worn.
pub(super) const LENSES_AND_WORN: &[SectionKind] = &[
    SectionKind::WornGlasses,
    SectionKind::Retinoscopy,
    SectionKind::Subjective,
];

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident = $about:path;)*) => {
        /// A rule of the second look.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            pub(super) const fn about(self) -> &'static About {
                match self {
                    $(Self::$name => &$about,)*
                }
            }
        }
    };
}

rules! {
    /// A complaint that is for today, and nobody referred.
    AlarmingComplaint = complaints::ALARMING;
    /// A pupil widened with a narrow angle, or one that nobody looked at.
    DropsAngle = drops::DROPS_ANGLE;
    /// A pressure that is high.
    PressureHigh = pressure::PRESSURE_HIGH;
    /// A grid that is bent, and no urgent referral.
    GridBent = grid::GRID_BENT;
    /// Both eyes look like last time's other eye.
    EyesSwapped = swapped::EYES_SWAPPED;
    /// Retinoscopy and result differ by the working distance.
    DistanceSlip = distance::DISTANCE_SLIP;
    /// Plus became minus, or minus plus.
    SignFlipped = sign::SIGN_FLIPPED;
    /// The axis stands 90 degrees off.
    AxisCrossed = crossed::AXIS_CROSSED;
    /// The working lens does not match the distance.
    LensMismatch = trial_frame::LENS_MISMATCH;
    /// The working distance is short or long for no reason that is written down.
    UnusualDistance = trial_frame::UNUSUAL_DISTANCE;
    /// A scissoring reflex that leads to nothing.
    Scissoring = scissoring::SCISSORING;
    /// Pressures that differ much.
    PressureUnequal = pressure::PRESSURE_UNEQUAL;
    /// Cups that differ much.
    CupsUnequal = cups::CUPS_UNEQUAL;
    /// Acuity fell since last time.
    AcuityMuchWorse = acuity::MUCH_WORSE;
    /// Acuity is worse through a pinhole.
    WorseThroughPinhole = acuity::WORSE_THROUGH_PINHOLE;
    /// More myopic, with a clouded nucleus.
    NuclearShift = nuclear::NUCLEAR_SHIFT;
    /// A change that may be too much for somebody who is frail.
    LargeChange = large_change::LARGE_CHANGE;
    /// The eyes are set farther apart than before.
    NewAnisometropia = large_change::NEW_ANISOMETROPIA;
    /// Nothing is written down for near.
    AdditionMissing = addition::ADDITION_MISSING;
    /// One addition for the right eye and another for the left.
    AdditionUnequal = addition::ADDITION_UNEQUAL;
    /// The addition does not go with age and distance.
    AdditionOutOfRange = addition::ADDITION_OUT_OF_RANGE;
    /// A strong lens without its distance from the eye.
    NoVertexDistance = trial_frame::NO_VERTEX_DISTANCE;
    /// A near chart, and nothing said of the distance's allowance.
    NearChart = trial_frame::NEAR_CHART;
    /// A first multifocal for somebody at risk of falling.
    FirstMultifocal = multifocal::FIRST_MULTIFOCAL;
    /// Drops without batch number or date.
    DropsBottle = drops::DROPS_BOTTLE;
    /// Drops past their date.
    DropsExpired = drops::DROPS_EXPIRED;
    /// The consent of somebody who can't give it.
    ConsentWithoutCapacity = consent::CONSENT;
}

impl Rule {
    /// The word by which answers know it.
    pub const fn slug(self) -> &'static str {
        self.about().slug
    }

    /// Finds the rule that an answer names; nothing for one of a newer version.
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.slug() == slug)
    }

    /// What it looks for, in a few words.
    pub fn name(self) -> &'static str {
        (self.about().name)()
    }

    /// Why it asks.
    pub fn reason(self) -> &'static str {
        (self.about().reason)()
    }

    /// Who says that it is worth asking.
    pub fn source(self) -> &'static str {
        (self.about().source)()
    }

    /// Of which of today's sections it speaks: an answer holds until one of them has a later version.
    pub const fn speaks_of(self) -> &'static [SectionKind] {
        self.about().speaks_of
    }

    pub(super) fn asks(self, eye: Option<Eye>, sentence: String) -> Raised {
        let about = self.about();
        Raised {
            rule: self,
            eye,
            sentence,
            reason: self.reason(),
            source: self.source().to_owned(),
            section: about.section,
        }
    }
}

impl Raised {
    /// The same on somebody else's word: of a threshold, whoever set it.
    pub(super) fn on_word_of(self, source: &str) -> Self {
        Self {
            source: source.to_owned(),
            ..self
        }
    }
}
