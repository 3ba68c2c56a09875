//! A folder with a carry file and what opens it.

use chrono::NaiveDate;
use demo::{Demo, Life};
use futures::executor::block_on;
use record::{Body, Entry, ExamState, Story};
use std::fs;
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};
use sync::exchange::Vector;
use sync::{Ledger, MemoryStorage, carry};
use vault::{Opener, StretchParams, Subject, found_vault, stretch};

pub const PASSPHRASE: &str = "lantern quay skerry harbour tern slipway";

/// How many of the made-up people are in the vault.
pub const PEOPLE: usize = 6;

/// A folder that goes when it is dropped.
pub struct Folder {
    path: PathBuf,
    /// The code of the recovery sheet.
    pub code: String,
    /// Everything that was written.
    pub entries: Vec<Entry>,
}

impl Folder {
    /// A vault of made-up people, as a tablet's carry file with its key file.
    pub fn new(name: &str) -> Self {
        Self::of(name, PEOPLE, |_| true)
    }

    /// The same of so many people, with those of their entries that are named. What was written stands in the file as it was: one
    /// visit after the other.
    pub fn of(name: &str, people: usize, keeps: fn(&Entry) -> bool) -> Self {
        let path = std::env::temp_dir().join(format!("lightround-{name}-{}", std::process::id()));
        fs::create_dir_all(&path).unwrap();
        let params = StretchParams {
            salt: [7; 16],
            memory_kib: 8192,
            passes: 1,
            lanes: 1,
        };
        let slot = stretch(PASSPHRASE, &params).unwrap();
        let (file, _) = found_vault(&slot, params, "bedside tablet").unwrap();
        let (file, code) = file.add_recovery(Opener::Passphrase(&slot)).unwrap();
        let unlock = || file.unlock(&slot).unwrap();
        let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
        let lives = Demo::new(1, today).take(people);
        let written = lives.flat_map(with_subject);
        let mut written: Vec<_> = written.filter(|(_, entry)| keeps(entry)).collect();
        written.sort_by_key(|(_, entry)| entry.stamp);
        let storage = MemoryStorage::new();
        block_on(async {
            let ledger = Ledger::found(storage.clone(), &file, unlock())
                .await
                .unwrap();
            ledger.renew_keys().await.unwrap();
            for (about, entry) in &written {
                let kept = ledger.write(&entry.to_cbor(), Some(*about), &[]).await;
                kept.unwrap();
            }
            let carried = carry::export(&storage, &unlock(), &Vector::default())
                .await
                .unwrap();
            fs::write(path.join("week.carry"), carried.bytes).unwrap();
        });
        fs::write(path.join("keys"), file.to_bytes()).unwrap();
        let groups = code.groups();
        let groups: Vec<&str> = groups.iter().map(|group| group.as_str()).collect();
        Self {
            path,
            code: groups.join(" "),
            entries: written.into_iter().map(|(_, entry)| entry).collect(),
        }
    }

    pub fn at(&self, name: &str) -> PathBuf {
        self.path.join(name)
    }

    /// Whether the command does what is asked with no more than so much memory, all of its program among it.
    pub fn fits(&self, kibibytes: u64, command: &str, more: &[&str]) -> bool {
        // The recovery sheet opens without the room that stretching a passphrase takes.
        let opens = ["--carry", "week.carry", "--recovery", "--recovery-fd", "0"];
        let mut shell = Command::new("sh");
        shell
            .args(["-c", "ulimit -v $0 && exec \"$@\""])
            .arg(kibibytes.to_string())
            .arg(env!("CARGO_BIN_EXE_lightround"))
            .arg(command)
            .args(opens)
            .args(more);
        self.told(&mut shell, &self.code).status.success()
    }

    /// The command, with one line to read on descriptor 0.
    pub fn run(&self, words: &[&str], line: &str) -> Output {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lightround"));
        self.told(command.args(words), line)
    }

    fn told(&self, command: &mut Command, line: &str) -> Output {
        let mut child = command
            .current_dir(&self.path)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        // A command that refuses before it reads has closed the pipe.
        let _ = writeln!(child.stdin.take().unwrap(), "{line}");
        child.wait_with_output().unwrap()
    }

    /// The same with the tablet's key file.
    pub fn opened(&self, command: &str, more: &[&str], passphrase: &str) -> Output {
        let opens = [command, "--carry", "week.carry", "--keys", "keys"];
        let words = [&opens[..], &["--passphrase-fd", "0"], more].concat();
        self.run(&words, passphrase)
    }

    /// What the command answers where all is well.
    pub fn answer(&self, command: &str, more: &[&str]) -> String {
        let output = self.opened(command, more, PASSPHRASE);
        let complaint = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(0), "{complaint}");
        String::from_utf8(output.stdout).unwrap()
    }

    /// How many exams were begun.
    pub fn exams(&self) -> usize {
        let opened = |entry: &&Entry| matches!(entry.body, Body::ExamOpened { .. });
        self.entries.iter().filter(opened).count()
    }

    pub fn story(&self) -> Story {
        let mut story = Story::default();
        for entry in &self.entries {
            story.admit(entry.clone()).unwrap();
        }
        story
    }

    /// A signed exam's number and its person's name.
    pub fn signed(&self) -> (String, String) {
        let story = self.story();
        let person = story.people()[0];
        let exams = story.exams_of(&person.id());
        let signed = exams
            .iter()
            .find(|exam| exam.state() == ExamState::Signed)
            .unwrap();
        (signed.id().to_string(), person.details().name.to_string())
    }
}

fn with_subject(life: Life) -> impl Iterator<Item = (Subject, Entry)> {
    let about = Subject::from_bytes(*life.person.as_uuid().as_bytes());
    life.entries.into_iter().map(move |entry| (about, entry))
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.path);
    }
}
