//! Records opened: a carry file is checked, deciphered and folded, and nothing of it is written anywhere.

use super::options::{Opens, Records, WhichExams};
use super::secret;
use crate::ended::Failure;
use ::papers::log::Visit;
use record::{Entry, Exam, Person, Story};
use std::fs::{self, File};
use std::path::Path;
use sync::carry::{Through, Walk, WalkError, read_through};
use vault::{Frame, KeyFile, Keys, Purpose, RecoveryCode, recover, stretch};

/// Records that were opened.
pub struct Opened {
    /// What they tell.
    pub story: Story,
    /// What is damaged or missing, one sentence each.
    pub damage: Vec<String>,
}

/// Opens what the options name.
pub fn open(records: &Records) -> Result<Opened, Failure> {
    let mut walk = walk(&records.carry)?;
    let keys = keys(&records.opens, &records.carry, &mut walk)?;
    let mut story = Story::default();
    let (through, mut damage) = read(&records.carry, &mut walk, &keys, |entry| {
        story.admit(entry).map_err(|error| error.to_string())
    })?;
    damage.extend(amiss(&through));
    if story.waiting() > 0 {
        damage.push(format!(
            "{} entries wait for others that are not in this file",
            story.waiting()
        ));
    }
    let newer = story.unread().count();
    if newer > 0 {
        damage.push(format!(
            "{newer} entries were written by a newer version and can’t be read here"
        ));
    }
    Ok(Opened { story, damage })
}

/// A carry file whose sum is right.
pub fn walk(path: &Path) -> Result<Walk<File>, Failure> {
    let file = File::open(path).map_err(|error| Failure::File {
        path: path.to_owned(),
        error,
    })?;
    Walk::begin(file).map_err(|error| carry(path, error))
}

/// The keys, by whatever opens them.
pub fn keys(opens: &Opens, path: &Path, walk: &mut Walk<File>) -> Result<Keys, Failure> {
    match &opens.keys {
        Some(file) => by_passphrase(file, opens.passphrase_fd),
        None => by_code(opens.recovery_fd, path, walk),
    }
}

fn by_passphrase(path: &Path, descriptor: Option<u32>) -> Result<Keys, Failure> {
    let bytes = fs::read(path).map_err(|error| Failure::File {
        path: path.to_owned(),
        error,
    })?;
    let file = KeyFile::from_bytes(&bytes).map_err(|error| Failure::KeyFile {
        path: path.to_owned(),
        error,
    })?;
    let passphrase = secret::ask("passphrase", descriptor)?;
    Ok(file.unlock(&stretch(&passphrase, &file.passphrase_params())?)?)
}

fn by_code(descriptor: Option<u32>, path: &Path, walk: &mut Walk<File>) -> Result<Keys, Failure> {
    let code: RecoveryCode = secret::ask("recovery code", descriptor)?.parse()?;
    walk.check().map_err(|error| carry(path, error))?;
    let mut frames: Vec<Frame> = Vec::new();
    let found = walk.each(|_, frame| {
        if frame.sequence() == 1 || frame.header().purpose == Purpose::Epoch {
            frames.push(frame);
        }
        Ok::<_, WalkError>(())
    });
    found.map_err(|error| carry(path, error))?;
    Ok(recover(&code, walk.vault(), &frames)?.into_keys())
}

/// Gives every entry, one after the other; and what came of that, with a sentence for each that can't be read.
pub fn read(
    path: &Path,
    walk: &mut Walk<File>,
    keys: &Keys,
    mut each: impl FnMut(Entry) -> Result<(), String>,
) -> Result<(Through, Vec<String>), Failure> {
    let mut damage = Vec::new();
    let through = read_through(walk, keys, |read| {
        let entry = Entry::from_cbor(&read.payload).map_err(|error| error.to_string());
        if let Err(sentence) = entry.and_then(&mut each) {
            let device = &read.device.to_string()[..8];
            damage.push(format!(
                "entry {} from tablet {device} can’t be read: {sentence}",
                read.sequence
            ));
        }
    });
    let through = through.map_err(|error| carry(path, error))?;
    Ok((through, damage))
}

/// What is amiss with a carry file, one sentence each.
pub fn amiss(through: &Through) -> Vec<String> {
    let apart = through.apart.iter().map(ToString::to_string);
    let damage = through.damage.iter().map(ToString::to_string);
    apart.chain(damage).collect()
}

pub fn carry(path: &Path, error: WalkError) -> Failure {
    Failure::Carry {
        path: path.to_owned(),
        error,
    }
}

/// The exams that are wanted, oldest first, each with its person.
pub fn wanted<'a>(story: &'a Story, exams: &WhichExams) -> Vec<(&'a Person, &'a Exam)> {
    let filter = exams.which.filter();
    let people = story.people().into_iter();
    let each = people.flat_map(|person| {
        let exams = story.exams_of(&person.id()).into_iter();
        exams.map(move |exam| (person, exam))
    });
    let mut found: Vec<_> = each
        .filter(|(person, exam)| exams.wants(exam) && filter.wants(&Visit::of(person, exam)))
        .collect();
    found.sort_by_key(|(_, exam)| (exam.opened_on(), exam.id()));
    found
}
