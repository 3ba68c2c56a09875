//! The letter that sends a person to somebody else.
//!
//! [`Letter::proposed`] fills it in from the exam; whoever sends it changes the words and the choice of findings. What must
//! not get lost between the two is no part of it: [`Letter::document`] adds the urgency, allergies, drops and the
//! limits of what was found, whatever the words say.
//!
//! Findings are proposed by relevance: what a section says beyond its normal ([`Section::normal_where_blank`]), and always
//! acuity, the lenses and the pressure, since nobody can judge the rest without them (common practice, no source).

use ::words::papers::{documents as of, referral as say};
use ::words::record::reading as read;
use chrono::NaiveDate;
use record::{
    Device, Drops, Exam, History, Line, Person, Pressure, Said, Section, SectionKind, Urgency,
};

use super::{act, amendments, foot, mind, signed, standing, who};
use crate::cautions;
use crate::document::{Block, Document, Fact, Print, Table};
use crate::error::PaperError;

/// A letter, to be changed before it is sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Letter {
    /// To whom.
    pub to: String,
    /// How the letter begins.
    pub opening: String,
    /// What was found, each to be left out or taken in.
    pub findings: Vec<Finding>,
    /// What is asked of the reader.
    pub asked: String,
    /// How the letter ends, with how to reach the sender.
    pub closing: String,
}

/// A finding that a letter may tell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// Where it stands in the exam.
    pub section: SectionKind,
    /// What was found.
    pub line: Line,
    /// Whether the letter tells it.
    pub told: bool,
}

/// In the order in which a letter tells them.
const TOLD: [SectionKind; 12] = [
    SectionKind::History,
    SectionKind::Acuity,
    SectionKind::Subjective,
    SectionKind::Retinoscopy,
    SectionKind::Pupils,
    SectionKind::Anterior,
    SectionKind::Pressure,
    SectionKind::Posterior,
    SectionKind::Fields,
    SectionKind::Binocular,
    SectionKind::Drops,
    SectionKind::Near,
];

/// The label of a line of a section, in the language spoken.
type Label = fn() -> &'static str;

/// Told even where they are as they should be.
const ALWAYS: [SectionKind; 3] = [
    SectionKind::Acuity,
    SectionKind::Subjective,
    SectionKind::Pressure,
];

/// Where somebody sees it anyway, or it says nothing of the eye: told only where it is asked for.
const ASKED_FOR: [(SectionKind, Label); 2] = [
    (SectionKind::Subjective, read::chart),
    (SectionKind::Anterior, read::looked_with),
];

/// Of the history, what a letter tells unasked.
const OF_HISTORY: [Label; 2] = [read::seen_because, read::complaints];

fn opening(person: &Person, exam: &Exam) -> String {
    let name = &person.details().name;
    match exam.place().trim() {
        "" => say::opening_where_they_live(name),
        place => say::opening(name, &place),
    }
}

impl Letter {
    /// A letter from what stands in the exam.
    ///
    /// # Errors
    /// [`PaperError::NotReferred`] where the decision refers to nobody.
    pub fn proposed(person: &Person, exam: &Exam) -> Result<Self, PaperError> {
        let decision = exam.decision().settled().map(|version| version.value);
        let referral = decision.and_then(|decision| decision.refer.as_ref());
        let referral = referral.ok_or(PaperError::NotReferred)?;
        let findings = TOLD.into_iter().flat_map(|kind| findings(exam, kind));
        Ok(Self {
            to: referral.to.trim().to_owned(),
            opening: opening(person, exam),
            findings: findings.collect(),
            asked: say::closing().to_owned(),
            closing: String::new(),
        })
    }

    /// The letter as a document, as written on a day. Before the exam is signed every page says so.
    ///
    /// # Errors
    /// [`PaperError`], one sentence for each reason.
    pub fn document(
        &self,
        person: &Person,
        exam: &Exam,
        written_on: NaiveDate,
    ) -> Result<Document, PaperError> {
        let standing = standing(person, exam)?;
        let decision = exam.decision().settled().map(|version| version.value);
        let referral = decision.and_then(|decision| decision.refer.as_ref());
        let urgency = referral.ok_or(PaperError::NotReferred)?.urgency;
        let mut blocks = vec![
            Block::Facts(vec![Fact::new(say::to(), self.to.trim())]),
            pressing(urgency),
            Block::Paragraph(self.opening.trim().to_owned()),
            Block::Heading(say::what_was_found().to_owned()),
        ];
        blocks.extend(self.told());
        blocks.extend(kept(exam));
        blocks.extend(amendments(exam));
        for words in [&self.asked, &self.closing] {
            if !words.trim().is_empty() {
                blocks.push(Block::Paragraph(words.trim().to_owned()));
            }
        }
        blocks.push(signed(exam, written_on));
        Ok(Document {
            title: say::title().to_owned(),
            standing,
            print: Print::Ordinary,
            who: who(person, exam),
            blocks,
            foot: foot(person, exam),
        })
    }

    /// The chosen findings as one table; what is of the person alone spans both eyes.
    fn told(&self) -> Vec<Block> {
        let mut facts = Vec::new();
        let mut rows = Vec::new();
        for finding in self.findings.iter().filter(|finding| finding.told) {
            let Line { label, said } = &finding.line;
            let label = labelled(finding.section, label);
            match said {
                Said::One(words) => facts.push(Fact::new(label, words)),
                Said::Eyes(eyes) => rows.push(vec![label, eyes.right.clone(), eyes.left.clone()]),
            }
        }
        let head = ["", say::right(), say::left()].map(str::to_owned).to_vec();
        let facts = (!facts.is_empty()).then_some(Block::Facts(facts));
        let table = (!rows.is_empty()).then_some(Block::Table(Table { head, rows }));
        facts.into_iter().chain(table).collect()
    }
}

/// `lens` alone says too little outside its section.
fn labelled(section: SectionKind, label: &str) -> String {
    match section {
        SectionKind::Acuity if label == read::chart() => say::chart().to_owned(),
        SectionKind::Acuity => say::reads_with(&label),
        SectionKind::Subjective if label == read::lens() => say::lens_for_far().to_owned(),
        SectionKind::Subjective if label == read::reads() => say::reads_with_that().to_owned(),
        SectionKind::Pressure => say::pressure(&label),
        SectionKind::Drops => say::drops(&label),
        _ => label.to_owned(),
    }
}

fn findings(exam: &Exam, kind: SectionKind) -> Vec<Finding> {
    let Some(version) = exam.section(kind).settled() else {
        return Vec::new();
    };
    let usual = Section::empty(kind)
        .normal_where_blank()
        .map_or_else(Vec::new, |normal| normal.lines());
    let chosen = exam.subjective().settled().is_some();
    let each = version.value.lines().into_iter().map(|line| Finding {
        section: kind,
        told: match kind {
            SectionKind::History => OF_HISTORY.iter().any(|label| line.label == label()),
            SectionKind::Retinoscopy => !chosen && line.label == read::with_distance_off(),
            // What was given stands among what a letter says in any case.
            SectionKind::Near | SectionKind::Drops => false,
            kind if is_asked_for(kind, &line.label) => false,
            kind if ALWAYS.contains(&kind) => true,
            _ => !usual.contains(&line) && !normal_in_both(&line, &usual),
        },
        line,
    });
    each.collect()
}

fn is_asked_for(kind: SectionKind, label: &str) -> bool {
    let mut each = ASKED_FOR.iter();
    each.any(|(section, asked)| *section == kind && asked() == label)
}

/// Whether a line says of each eye no more than the normal does, or nothing.
fn normal_in_both(line: &Line, usual: &[Line]) -> bool {
    let Said::Eyes(eyes) = &line.said else {
        return false;
    };
    let same = usual.iter().find(|other| other.label == line.label);
    let Some(Said::Eyes(normal)) = same.map(|other| &other.said) else {
        return false;
    };
    let quiet = |said: &str, normal: &str| said == normal || said == "—";
    quiet(&eyes.right, &normal.right) && quiet(&eyes.left, &normal.left)
}

fn pressing(urgency: Urgency) -> Block {
    let line = |words: &str| vec![words.to_owned()];
    let title = say::urgency(&urgency.word());
    match urgency {
        Urgency::Routine => mind(&title, line(say::in_turn())),
        Urgency::Soon => mind(&title, line(say::ahead_of_turn())),
        Urgency::Urgent => act(&title, line(say::within_days())),
        Urgency::Emergency => act(&title, line(say::today())),
    }
}

/// What a letter says whatever else it says.
fn kept(exam: &Exam) -> Option<Block> {
    let mut lines = Vec::new();
    let history = exam
        .part::<History>()
        .settled()
        .map(|version| version.value);
    let allergies = history.and_then(|history| history.allergies.in_words(Clone::clone));
    lines.extend(allergies.map(|words| say::allergies(&words)));
    let medicines = history.map(|history| history.medicines.trim());
    let medicines = medicines.filter(|words| !words.is_empty());
    lines.extend(medicines.map(|words| say::medicines(&words)));
    lines.extend(drops(exam));
    lines.extend(air_alone(exam));
    let subjective = exam.subjective().settled().map(|version| version.value);
    let before = cautions::all(exam, subjective);
    lines.extend(before.into_iter().filter(|line| line != of::local_rules()));
    (!lines.is_empty()).then(|| mind(say::please_mind(), lines))
}

fn drops(exam: &Exam) -> Option<String> {
    let drops = exam.part::<Drops>().settled()?.value;
    let given: Vec<String> = drops.each().map(record::Given::in_words).collect();
    (!given.is_empty()).then(|| say::drops_given(&given.join("; ")))
}

/// A puff of air alone is not enough to refer on: NICE NG81 (as of January 2022), case-finding.
fn air_alone(exam: &Exam) -> Option<String> {
    let pressure = exam.part::<Pressure>().settled()?.value;
    let air = |device: &Device| *device == Device::NonContact;
    let mut taken = pressure.taken.iter().map(|taken| &taken.device).peekable();
    taken.peek()?;
    taken.all(air).then(|| say::air_alone().to_owned())
}
