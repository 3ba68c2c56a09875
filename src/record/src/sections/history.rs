//! History: why the person is seen, what they or others tell, and what they use their eyes for.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use super::Filled;
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Finding};

/// What was told. Texts are in the examiner's words; blank where nothing was said.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct History {
    /// Why the person is seen now.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// Why the person can't come to a practice. Regulations in England ask for it on the form.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub cannot_travel: String,
    /// Who told it, where it was not the person.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub told_by: String,
    /// What the person complains of; an empty list where they were asked and complain of nothing.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub complaints: Finding<Vec<Complaint>>,
    /// Operations, diseases and injuries of the eyes.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub eyes_before: String,
    /// General health.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub health: String,
    /// Medicines, drops among them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub medicines: String,
    /// Allergies; "none known" is an answer.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub allergies: Finding<String>,
    /// Eye diseases in the family.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub family: String,
    /// Falls in the last twelve months.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub falls_in_12_months: Finding<u16>,
    /// How the person gets about.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mobility: Option<Mobility>,
    /// What the person uses their eyes for, and how far away.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub uses: String,
}

/// One complaint.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Complaint {
    /// What.
    pub what: Symptom,
    /// Of which eye, where it is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub eye: Option<Eye>,
    /// Since when and how, in words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub words: String,
}

macro_rules! symptoms {
    ($($(#[$doc:meta])* $name:ident = $word:path;)*) => {
        /// What a person may complain of.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Symptom {
            $($(#[$doc])* $name,)*
        }

        impl Symptom {
            /// Every symptom.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            /// The words for it.
            pub fn words(self) -> &'static str {
                match self {
                    $(Self::$name => $word(),)*
                }
            }
        }
    };
}

symptoms! {
    /// Far is blurred.
    BlurredFar = say::blurred_far;
    /// Near is blurred.
    BlurredNear = say::blurred_near;
    /// Vision went at once.
    SuddenLoss = say::sudden_loss;
    /// Lines are bent.
    BentLines = say::bent_lines;
    /// Double vision.
    Double = say::double_vision;
    /// Flashes.
    Flashes = say::flashes;
    /// Floaters.
    Floaters = say::floaters;
    /// A curtain or shadow.
    Curtain = say::curtain;
    /// Glare.
    Glare = say::glare;
    /// Pain in or about the eye.
    Pain = say::pain;
    /// A red eye.
    Red = say::red_eye;
    /// Watering.
    Watering = say::watering;
    /// Dry or gritty.
    Gritty = say::dry;
    /// Headache.
    Headache = say::headache;
    /// Pain in the jaw on chewing, or a tender scalp.
    JawOrScalp = say::jaw_or_scalp;
    /// Sees what is not there; to be asked directly, for nobody tells of it.
    SeesThings = say::sees_what_is_not;
    /// Something else, in words.
    Other = say::something_else;
}

/// How a person gets about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mobility {
    /// Walks alone.
    WalksAlone,
    /// Walks with a stick or a frame.
    WithAid,
    /// Walks with somebody's help.
    WithHelp,
    /// Sits.
    Chair,
    /// Lies.
    Bed,
}

impl Mobility {
    /// Every way, the most able first.
    pub const ALL: [Self; 5] = [
        Self::WalksAlone,
        Self::WithAid,
        Self::WithHelp,
        Self::Chair,
        Self::Bed,
    ];

    /// The words for it.
    pub fn words(self) -> &'static str {
        match self {
            Self::WalksAlone => say::walks_alone(),
            Self::WithAid => say::walks_with_aid(),
            Self::WithHelp => say::walks_with_help(),
            Self::Chair => say::sits(),
            Self::Bed => say::stays_in_bed(),
        }
    }

    /// Whether the person walks, and so can fall on a step.
    pub const fn walks(self) -> bool {
        matches!(self, Self::WalksAlone | Self::WithAid | Self::WithHelp)
    }
}

/// Falls a year; more are taken for a slip. Own choice: three a day.
const MOST_FALLS: u16 = 1000;

impl Filled for History {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.reason_of("complaints", &self.complaints);
        checks.reason_of("allergies", &self.allergies);
        checks.reason_of("falls_in_12_months", &self.falls_in_12_months);
        if let Some(allergies) = self.allergies.done() {
            checks.text("allergies", allergies, say::ask_which_allergies());
        }
        for complaint in self.complaints.done().into_iter().flatten() {
            if complaint.what == Symptom::Other {
                checks.text("complaints", &complaint.words, say::ask_complaint());
            }
        }
        if self
            .falls_in_12_months
            .done()
            .is_some_and(|falls| *falls > MOST_FALLS)
        {
            checks.say("falls_in_12_months", say::falls_range(&MOST_FALLS));
        }
        checks.done()
    }
}
