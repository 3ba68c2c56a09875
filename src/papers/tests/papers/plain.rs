//! The notes are read by people who are not of the trade.
//!
//! Flesch–Kincaid grade (Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas, Naval Technical
//! Training Command, Research Branch Report 8-75):
//!
//! ```text
//! 0.39 words / sentences + 11.8 syllables / words − 15.59
//! ```
//!
//! An early-teen reader is in grade 7 or 8 (age 12 to 14), so nothing may come out above 8.

use papers::sample::{Desk, day, decision, drops, orla};
use papers::{Block, Document, NoteOptions, Print, care_staff_note, person_note};
use record::{Drug, Finding, Glasses, Section, Urgency};

/// Groups of vowels, less a silent e at the end; never none. The common way to count by machine; no source.
fn syllables(word: &str) -> usize {
    let letters: Vec<char> = word
        .to_lowercase()
        .chars()
        .filter(|letter| letter.is_alphabetic())
        .collect();
    let vowel = |letter: char| "aeiouyáéíóú".contains(letter);
    let groups = (0..letters.len())
        .filter(|place| vowel(letters[*place]) && (*place == 0 || !vowel(letters[place - 1])))
        .count();
    let silent = match letters.as_slice() {
        [.., before, 'l', 'e'] => vowel(*before),
        [_, .., last, 'e'] => !vowel(*last),
        _ => false,
    };
    groups.saturating_sub(usize::from(silent)).max(1)
}

fn grade(sentences: &[String]) -> f64 {
    let words: Vec<&str> = sentences
        .iter()
        .flat_map(|sentence| sentence.split_whitespace())
        .filter(|word| word.chars().any(char::is_alphabetic))
        .collect();
    let spoken: usize = words.iter().map(|word| syllables(word)).sum();
    let (count, per) = (words.len() as f64, sentences.len() as f64);
    0.39 * count / per + 11.8 * spoken as f64 / count - 15.59
}

/// Every sentence of a note; what was given is left out, since drugs have the names that they have.
fn sentences(note: &Document) -> Vec<String> {
    let mut found = Vec::new();
    for block in &note.blocks {
        let texts: Vec<&String> = match block {
            Block::Paragraph(text) | Block::Heading(text) => vec![text],
            Block::List(points) => points.iter().filter(|point| !point.contains('%')).collect(),
            Block::Callout(callout) => callout.lines.iter().collect(),
            _ => vec![],
        };
        for text in texts {
            let ends = text.split_inclusive(['.', ':', ';']).map(str::trim);
            found.extend(
                ends.filter(|one| one.chars().any(char::is_alphabetic))
                    .map(str::to_owned),
            );
        }
    }
    found
}

// Counted by hand: 6 words of 9 syllables in one sentence, 0.39 × 6 + 11.8 × 9 / 6 − 15.59 = 4.45.
#[test]
fn the_formula_is_the_published_one() {
    let text = ["The little boat came into harbour.".to_owned()];
    let spoken: Vec<usize> = text[0].split(' ').map(syllables).collect();
    assert_eq!(spoken, [1, 2, 1, 1, 2, 2]);
    let expected = 4.45;
    assert!((grade(&text) - expected).abs() < 1e-9);
}

fn desks() -> Vec<Desk> {
    let mut desks = vec![Desk::full()];
    for urgency in Urgency::ALL {
        for drug in Drug::all() {
            let mut desk = Desk::unsigned(orla());
            let mut given = drops();
            if let Finding::Done(all) = &mut given.given {
                all[0].drug = drug;
            }
            desk.put(Section::Drops(given));
            let mut decided = decision();
            decided.glasses = Some(Glasses::LeaveAlone);
            decided.refer.as_mut().unwrap().urgency = urgency;
            desk.put(Section::Decision(decided));
            desks.push(desk);
        }
    }
    desks
}

#[test]
fn notes_can_be_read_by_an_early_teen() {
    let options = NoteOptions {
        contact: "Call us if you are not sure.".into(),
        words: String::new(),
    };
    for desk in desks() {
        let (person, exam, on) = (desk.person(), desk.exam(), day(2026, 3, 7));
        for note in [
            person_note(person, exam, &options, on).unwrap(),
            care_staff_note(person, exam, &options, on).unwrap(),
        ] {
            assert_eq!(note.print, Print::Large);
            let said = sentences(&note);
            assert!(said.len() >= 5, "{said:?}");
            let grade = grade(&said);
            assert!(grade <= 8.0, "grade {grade:.1}: {said:#?}");
        }
    }
}

#[test]
fn the_person_learns_which_glasses_are_for_what_and_what_to_watch_for() {
    let desk = Desk::full();
    let note = person_note(
        desk.person(),
        desk.exam(),
        &NoteOptions::default(),
        day(2026, 3, 7),
    );
    let note = note.unwrap();
    let said = note.words().join("\n");
    for words in [
        "One pair is for things far away",
        "One pair is for things close by",
        "Take these off before walking",
        "You had eye drops today",
        "Do not drive",
        "Tell somebody at once if",
        "your eye hurts",
        "Gull Harbour Hospital",
        "We should look again in a year.",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
}
