//! What the rules look at: today's sections, last time's of the same person, the age, the thresholds.

use ::words::record::second_look as say;
use chrono::NaiveDate;
use optics::SphereCyl;
use optics::change::Change;

use super::Thresholds;
use crate::exam::Exam;
use crate::finding::{Eye, Eyes};
use crate::sections::{
    Acuity, Anterior, Consent, Decision, Drops, Fields, Glasses, History, Mobility, Near, Order,
    Part, Posterior, Pressure, Pupils, Retinoscopy, Section, Subjective, Urgency, WornGlasses,
};
use crate::story::Story;
use crate::summary::{Age, FinalLens, Source};

/// One exam, laid out for the rules.
pub(super) struct Case<'a> {
    pub acuity: Option<&'a Acuity>,
    pub retinoscopy: Option<&'a Retinoscopy>,
    pub subjective: Option<&'a Subjective>,
    pub decision: Option<&'a Decision>,
    pub history: Option<&'a History>,
    pub consent: Option<&'a Consent>,
    pub worn: Option<&'a WornGlasses>,
    pub pupils: Option<&'a Pupils>,
    pub near: Option<&'a Near>,
    pub pressure: Option<&'a Pressure>,
    pub drops: Option<&'a Drops>,
    pub anterior: Option<&'a Anterior>,
    pub posterior: Option<&'a Posterior>,
    pub fields: Option<&'a Fields>,
    pub order: Option<&'a Order>,
    pub today: NaiveDate,
    pub age: Option<Age>,
    pub last: Last<'a>,
    pub thresholds: &'a Thresholds,
}

/// What earlier exams of the same person found, the newest of each.
pub(super) struct Last<'a> {
    pub acuity: Option<&'a Acuity>,
    pub subjective: Option<&'a Subjective>,
    /// The lenses of the newest earlier exam that has any.
    pub lenses: Eyes<Option<FinalLens>>,
}

impl<'a> Case<'a> {
    pub fn new(
        story: &'a Story,
        exam: &'a Exam,
        unsaved: &'a [Section],
        thresholds: &'a Thresholds,
        today: NaiveDate,
    ) -> Self {
        let person = story.person(&exam.person());
        let lenses = story.before(&exam.id()).map(Exam::final_lenses);
        Self {
            acuity: now(exam, unsaved),
            retinoscopy: now(exam, unsaved),
            subjective: now(exam, unsaved),
            decision: now(exam, unsaved),
            history: now(exam, unsaved),
            consent: now(exam, unsaved),
            worn: now(exam, unsaved),
            pupils: now(exam, unsaved),
            near: now(exam, unsaved),
            pressure: now(exam, unsaved),
            drops: now(exam, unsaved),
            anterior: now(exam, unsaved),
            posterior: now(exam, unsaved),
            fields: now(exam, unsaved),
            order: now(exam, unsaved),
            today,
            age: person.and_then(|person| person.details().age_on(today)),
            last: Last {
                acuity: before(story, exam),
                subjective: before(story, exam),
                lenses: lenses
                    .into_iter()
                    .find(|lenses| lenses.right.is_some() || lenses.left.is_some())
                    .unwrap_or_default(),
            },
            thresholds,
        }
    }

    /// Today's lens of an eye: chosen, else of retinoscopy.
    pub fn lens(&self, eye: Eye) -> Option<FinalLens> {
        FinalLens::of(eye, self.subjective, self.retinoscopy)
    }

    /// Today's lens where the person chose it.
    pub fn chosen(&self, eye: Eye) -> Option<SphereCyl> {
        let lens = self.lens(eye)?;
        (lens.source == Source::Subjective).then_some(lens.lens)
    }

    /// Retinoscopy's net of an eye.
    pub fn net(&self, eye: Eye) -> Option<SphereCyl> {
        Some(self.retinoscopy?.net(eye)?.net)
    }

    /// Last time's lens of an eye.
    pub fn last_lens(&self, eye: Eye) -> Option<SphereCyl> {
        Some(self.last.lenses.of(eye).as_ref()?.lens)
    }

    /// From last time's lens to today's.
    pub fn since_last(&self, eye: Eye) -> Option<Change> {
        Change::between(&self.last_lens(eye)?, &self.lens(eye)?.lens).ok()
    }

    /// From what the eye is used to, the glasses worn for far where they were measured, else last time's lens, to today's.
    pub fn change(&self, eye: Eye) -> Option<Change> {
        let worn = self.worn.and_then(|worn| worn.far_lens(eye)).copied();
        let used_to = worn.or_else(|| self.last_lens(eye))?;
        Change::between(&used_to, &self.lens(eye)?.lens).ok()
    }

    /// Something of both eyes, where both have it.
    pub fn both<T>(&self, of: impl Fn(&Self, Eye) -> Option<T>) -> Option<Eyes<T>> {
        Some(Eyes {
            right: of(self, Eye::Right)?,
            left: of(self, Eye::Left)?,
        })
    }

    /// Whether it was decided that new lenses are not worth it, so that nothing of them will be worn.
    pub fn leaves_alone(&self) -> bool {
        let glasses = self.decision.and_then(|decision| decision.glasses);
        glasses == Some(Glasses::LeaveAlone)
    }

    pub fn prescribes(&self) -> bool {
        self.decision.is_some_and(Decision::prescribes)
    }

    /// Whether anything was decided.
    pub fn is_decided(&self) -> bool {
        self.decision.is_some_and(Decision::is_made)
    }

    /// How soon the person is sent to somebody; nothing where nobody is referred.
    pub fn referral(&self) -> Option<Urgency> {
        Some(self.decision?.refer.as_ref()?.urgency)
    }

    fn falls(&self) -> Option<u16> {
        self.history?.falls_in_12_months.done().copied()
    }

    /// Whether the person is old or fell, so that a change of lenses can do harm. Somebody who lies in bed does not fall.
    pub fn may_fall(&self) -> bool {
        let old_from = self.thresholds.frail_from_years.value();
        let old = self.age.is_some_and(|age| f64::from(age.years) >= old_from);
        let from = self.thresholds.falls_from.value();
        let fell = self.falls().is_some_and(|falls| f64::from(falls) >= from);
        let in_bed = self.history.and_then(|history| history.mobility) == Some(Mobility::Bed);
        (old || fell) && !in_bed
    }

    /// "somebody of 86 who fell in the last year", as far as it is known.
    pub fn somebody(&self) -> String {
        let age = self
            .age
            .map_or_else(|| say::somebody().to_owned(), |age| say::somebody_of(&age));
        match self.falls() {
            None | Some(0) => age,
            Some(1) => age + say::who_fell(),
            Some(falls) => say::who_fell_often(&age, &falls),
        }
    }
}

/// Today's section: as it is being written, else as it is written down and settled.
fn now<'a, T: Part>(exam: &'a Exam, unsaved: &'a [Section]) -> Option<&'a T> {
    let written = unsaved.iter().rev().find_map(T::of);
    written.or_else(|| Some(exam.part::<T>().settled()?.value))
}

/// The newest earlier one.
fn before<'a, T: Part>(story: &'a Story, exam: &Exam) -> Option<&'a T> {
    T::of(story.last_before(&exam.id(), T::KIND)?.version.value)
}
