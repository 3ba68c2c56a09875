//! Reading the frozen files, and section values to test with.

use std::fs;
use std::path::PathBuf;

use optics::SphereCyl;
use optics::acuity::ChartLine;
use optics::retinoscopy::Neutral;
use record::{
    Acuity, Decision, EyeAcuity, Eyes, Finding, Glasses, Retinoscopy, Section, Seen, Subjective,
    SubjectiveEye,
};

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("frozen")
        .join(name)
}

/// The bytes of one frozen file: hexadecimal, `#` for a comment, `81 * 5000` for a run.
pub fn bytes(path: &str) -> Vec<u8> {
    let text = fs::read_to_string(folder(path).with_extension("hex")).unwrap();
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines.flat_map(line).collect()
}

fn line(text: &str) -> Vec<u8> {
    let (hex, times) = text.split_once(" * ").unwrap_or((text, "1"));
    let bytes: Vec<u8> = (0..hex.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(&hex[at..at + 2], 16).unwrap())
        .collect();
    bytes.repeat(times.parse().unwrap())
}

/// The names of all files in a frozen folder, so that none can be forgotten.
pub fn names(name: &str) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder(name))
        .unwrap()
        .map(|file| {
            file.unwrap()
                .path()
                .file_stem()
                .unwrap()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    names.sort();
    names
}

pub fn seen(line: u8, letters: i8) -> Seen {
    Seen::Line {
        line: ChartLine::new(line).unwrap(),
        letters,
    }
}

pub fn both<T: Clone>(value: T) -> Eyes<T> {
    Eyes {
        right: value.clone(),
        left: value,
    }
}

pub fn acuity(line: u8) -> Section {
    let eye = EyeAcuity {
        unaided: Finding::Done(seen(line, 0)),
        ..EyeAcuity::default()
    };
    Section::Acuity(Acuity {
        eyes: both(eye),
        ..Acuity::default()
    })
}

pub fn subjective(sphere: f64) -> Section {
    let eye = SubjectiveEye {
        lens: SphereCyl::sphere(sphere),
        acuity: Some(seen(9, 0)),
    };
    Section::Subjective(Subjective {
        eyes: both(Finding::Done(eye)),
        ..Subjective::default()
    })
}

pub fn retinoscopy(lens: &str) -> Section {
    let neutral = Neutral::InFrame(SphereCyl::parse(lens).unwrap());
    Section::Retinoscopy(Retinoscopy {
        eyes: both(Finding::Done(neutral)),
        ..Retinoscopy::default()
    })
}

pub fn decision(glasses: Glasses) -> Section {
    Section::Decision(Decision {
        glasses: Some(glasses),
        ..Decision::default()
    })
}
