//! The one list of sections, in the order in which an exam goes, and what is made from it.

use ::words::{Language, record::sections as say, spoken};
use ciborium::Value;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use super::{
    Acuity, Anterior, Binocular, Consent, Decision, Drops, Fields, Fitting, History, Near, Order,
    Posterior, Pressure, Pupils, Retinoscopy, Sketches, Subjective, WornGlasses,
};
use crate::body::{SectionBody, kinds};
use crate::check::FieldError;
use crate::finding::{Eye, Eyes, Finding};
use crate::reading::Reads;

/// What every section answers of itself.
pub(crate) trait Filled {
    /// One plain sentence for each field that can't stand as it is.
    fn check(&self) -> Vec<FieldError>;

    /// The eyes of which nothing was answered, though the section was begun.
    fn unanswered(&self) -> Vec<Eye> {
        Vec::new()
    }

    /// Answers with what is normal whatever is blank and can be; says whether there is such a thing here.
    fn fill_normal(&mut self) -> bool {
        false
    }

    /// The findings that can be half entered, by their names, and whether each is blank.
    fn halves(&self) -> Vec<(Eye, String, bool)> {
        Vec::new()
    }
}

/// The type of one section.
pub trait Part: Sized {
    /// Which section it is.
    const KIND: SectionKind;

    /// The section's contents, where it is this one.
    fn of(section: &Section) -> Option<&Self>;

    /// The same, to change it.
    fn of_mut(section: &mut Section) -> Option<&mut Self>;

    /// The contents as a section.
    fn into_section(self) -> Section;
}

macro_rules! sections {
    ($($(#[$doc:meta])* $name:ident: $title:path, $slug:literal, $wire:ident;)*) => {
        /// One section of an exam, whole.
        #[allow(
            clippy::large_enum_variant,
            reason = "a section is passed about by reference, and a box would save nothing on the way to the bytes"
        )]
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Section {
            $($(#[$doc])* $name($name),)*
        }

        /// Names a section without its contents.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum SectionKind {
            $($(#[$doc])* $name,)*
        }

        impl SectionKind {
            /// Every section, in the order in which an exam goes.
            pub const ALL: [Self; [$($slug),*].len()] = [$(Self::$name),*];

            /// The heading.
            pub fn title(self) -> &'static str {
                match self {
                    $(Self::$name => $title(),)*
                }
            }

            /// The word in an address.
            pub const fn slug(self) -> &'static str {
                match self {
                    $(Self::$name => $slug,)*
                }
            }

            pub(crate) const fn wire_name(self) -> &'static str {
                match self {
                    $(Self::$name => kinds::$wire,)*
                }
            }
        }

        /// A section's contents alone, for writing: the kind already stands in the envelope.
        #[derive(Serialize)]
        #[serde(untagged)]
        pub(crate) enum Inner<'a> {
            $($name(&'a $name),)*
        }

        impl Section {
            /// A section of this kind with nothing filled in.
            pub fn empty(kind: SectionKind) -> Self {
                match kind {
                    $(SectionKind::$name => Self::$name($name::default()),)*
                }
            }

            /// Which section this is.
            pub const fn kind(&self) -> SectionKind {
                match self {
                    $(Self::$name(_) => SectionKind::$name,)*
                }
            }

            pub(crate) const fn inner(&self) -> Inner<'_> {
                match self {
                    $(Self::$name(section) => Inner::$name(section),)*
                }
            }

            pub(crate) const fn filled(&self) -> &dyn Filled {
                match self {
                    $(Self::$name(section) => section,)*
                }
            }

            /// The section with what is normal wherever it is blank: one tap for many findings. Nothing where a section has no
            /// such answers.
            pub fn normal_where_blank(&self) -> Option<Self> {
                let mut filled = self.clone();
                let can = match &mut filled {
                    $(Self::$name(section) => section.fill_normal(),)*
                };
                can.then_some(filled)
            }

            pub(crate) const fn reads(&self) -> &dyn Reads {
                match self {
                    $(Self::$name(section) => section,)*
                }
            }

            /// Reads the body of an entry that holds a section of this kind.
            pub(crate) fn read(
                kind: SectionKind,
                body: &Value,
            ) -> Result<SectionBody<Self, String>, ciborium::value::Error> {
                match kind {
                    $(SectionKind::$name => read::<$name>(body),)*
                }
            }
        }

        $(impl Part for $name {
            const KIND: SectionKind = SectionKind::$name;

            fn of(section: &Section) -> Option<&Self> {
                match section {
                    Section::$name(section) => Some(section),
                    _ => None,
                }
            }

            fn of_mut(section: &mut Section) -> Option<&mut Self> {
                match section {
                    Section::$name(section) => Some(section),
                    _ => None,
                }
            }

            fn into_section(self) -> Section {
                Section::$name(self)
            }
        })*
    };
}

sections! {
    /// Why the person is seen, and what they tell.
    History: say::title_history, "history", HISTORY;
    /// Whether the person can decide for themselves, and who agreed to what.
    Consent: say::title_consent, "consent", CONSENT;
    /// The glasses that are worn, with what they measure.
    WornGlasses: say::title_worn_glasses, "worn-glasses", WORN_GLASSES;
    /// What each eye reads.
    Acuity: say::title_acuity, "acuity", ACUITY;
    /// Pupils, and how clear the way of the light is.
    Pupils: say::title_pupils, "pupils", PUPILS;
    /// The lenses that neutralise the reflex.
    Retinoscopy: say::title_retinoscopy, "retinoscopy", RETINOSCOPY;
    /// The lenses that the person chose.
    Subjective: say::title_subjective, "subjective", SUBJECTIVE;
    /// What helps near by.
    Near: say::title_near, "near", NEAR;
    /// How the eyes work together.
    Binocular: say::title_binocular, "binocular", BINOCULAR;
    /// The pressure in the eyes.
    Pressure: say::title_pressure, "pressure", PRESSURE;
    /// Drops that were given.
    Drops: say::title_drops, "drops", DROPS;
    /// The front of the eye.
    Anterior: say::title_anterior, "anterior", ANTERIOR;
    /// The back of the eye.
    Posterior: say::title_posterior, "posterior", POSTERIOR;
    /// How far each eye sees to the sides, and its middle.
    Fields: say::title_fields, "fields", FIELDS;
    /// What was drawn.
    Sketches: say::title_sketches, "sketches", SKETCHES;
    /// What is done about it.
    Decision: say::title_decision, "decision", DECISION;
    /// The glasses that are to be made.
    Order: say::title_order, "order", ORDER;
    /// The glasses that came, as measured and as fitted.
    Fitting: say::title_fitting, "fitting", FITTING;
}

impl SectionKind {
    /// Finds the section that an address names.
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.slug() == slug)
    }

    /// The heading as it stands within a sentence: a German noun keeps its capital.
    pub fn within(self) -> String {
        match spoken() {
            Language::English => self.title().to_lowercase(),
            Language::German => self.title().to_owned(),
        }
    }

    /// What a sentence about it begins with: the word of its address, or its heading where that is no word of the language.
    pub fn named(self) -> &'static str {
        match spoken() {
            Language::English => self.slug(),
            Language::German => self.title(),
        }
    }

    pub(crate) fn from_wire_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.wire_name() == name)
    }

    /// Whether it is written after the exam is signed, in the ordinary course of things: glasses are ordered from a signed
    /// prescription and come weeks later. It needs no reason then, and changes nothing that was signed.
    pub const fn follows_signing(self) -> bool {
        matches!(self, Self::Order | Self::Fitting)
    }
}

fn read<T: Part + DeserializeOwned>(
    body: &Value,
) -> Result<SectionBody<Section, String>, ciborium::value::Error> {
    let read: SectionBody<T, String> = body.deserialized()?;
    Ok(SectionBody {
        exam: read.exam,
        section: read.section.into_section(),
        reason: read.reason,
    })
}

/// The eyes of which a finding is blank.
pub(super) fn blanks<T>(eyes: &Eyes<Finding<T>>) -> Vec<Eye> {
    eyes_where(eyes, Finding::is_blank)
}

/// The eyes of which something holds.
pub(super) fn eyes_where<T>(eyes: &Eyes<T>, holds: impl Fn(&T) -> bool) -> Vec<Eye> {
    let each = eyes.each().into_iter().filter(|(_, of)| holds(of));
    each.map(|(eye, _)| eye).collect()
}

/// One finding of each eye as something that can be half entered.
pub(super) fn halves<T>(eyes: &Eyes<Finding<T>>, part: &str) -> Vec<(Eye, String, bool)> {
    let each = eyes.each().into_iter();
    each.map(|(eye, finding)| (eye, part.to_owned(), finding.is_blank()))
        .collect()
}

/// The lens of a pair in a list, as something that can be half entered: the first is `lens_1`.
pub fn lens_of_pair(place: usize) -> String {
    format!("lens_{}", place + 1)
}

/// The lenses of pairs in a list as findings that can be half entered.
pub(super) fn pair_halves<'a, T: 'a>(
    pairs: impl Iterator<Item = &'a Eyes<Finding<T>>>,
) -> Vec<(Eye, String, bool)> {
    let each = pairs.enumerate();
    each.flat_map(|(place, lenses)| halves(lenses, &lens_of_pair(place)))
        .collect()
}
