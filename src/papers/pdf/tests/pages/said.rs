//! Every word and every number that a document holds stands on its pages.

use papers::sample::{Desk, lens, orla, subjective};
use papers::{Document, Prescription};
use pdf::{Paper, pdf};
use proptest::prelude::*;
use record::{Name, NearAdd, PersonDetails, Section, Subjective};

use crate::every;
use crate::read::{Read, close};

/// Each word of a document, found on the pages as another library reads them.
fn all_said(document: &Document, paper: Paper) -> Read {
    let made = pdf(document, paper).unwrap();
    assert_eq!(made.lacking, []);
    let read = Read::of(&made.bytes);
    let letters = read.letters();
    for text in document.words() {
        for word in text.split_whitespace() {
            assert!(
                letters.contains(&close(word)),
                "{word} of “{text}” in {}",
                document.title
            );
        }
    }
    read
}

#[test]
fn every_paper_on_both_sizes() {
    let desk = Desk::full();
    for document in every(&desk) {
        for paper in [Paper::A4, Paper::Letter] {
            let read = all_said(&document, paper);
            let count = read.pages();
            for page in 1..=count {
                let number = format!("page{page}of{count}");
                assert!(
                    read.letters().contains(&number),
                    "{number} in {}",
                    document.title
                );
            }
        }
    }
}

#[test]
fn names_of_every_kind_fit() {
    let sixty = "Zsófia-Éléonore d’Ærøskøbing-Ó Conchobhair Šťastná of Quay 6";
    assert_eq!(sixty.chars().count(), 60);
    for (given, family) in [
        (sixty, "O’Brien"),
        ("Łukasz", "Þórðardóttir-Ğünşık"),
        ("Надежда", "Приморская"),
        ("Καλλιόπη", "Λιμανάκη"),
        // Accents that were typed apart.
        ("Zoe\u{301}", "Pe\u{301}rez"),
        (&"W".repeat(60), &"i".repeat(60)),
    ] {
        let details = PersonDetails {
            name: Name {
                given: given.into(),
                family: family.into(),
            },
            ..orla()
        };
        let desk = Desk::full_of(details);
        for document in every(&desk) {
            let made = pdf(&document, Paper::A4).unwrap();
            assert_eq!(made.lacking, [], "{given}");
            let letters = Read::of(&made.bytes).letters();
            // A name without a space is broken between letters, so the pieces stand one after the other.
            let composed = close(given).replace("e\u{301}", "é");
            assert!(
                letters.contains(&composed),
                "{given} in {}: {letters}",
                document.title
            );
        }
    }
}

#[test]
fn letters_that_no_font_has_are_told() {
    let details = PersonDetails {
        name: Name {
            given: "港".into(),
            family: "Mori".into(),
        },
        ..orla()
    };
    let desk = Desk::full_of(details);
    let made = pdf(&every(&desk)[0], Paper::A4).unwrap();
    assert_eq!(made.lacking, ['港']);
    assert!(Read::of(&made.bytes).letters().contains("?Mori"));
}

#[test]
fn words_without_end_go_on_to_further_pages() {
    let mut desk = Desk::unsigned(orla());
    let mut history = papers::sample::history();
    history.health = "stroke in the autumn, walks with a frame; ".repeat(400);
    history.medicines = "n".repeat(5_000);
    desk.put(Section::History(history));
    let summary = every_open(&desk);
    let made = pdf(&summary, Paper::A4).unwrap();
    let read = Read::of(&made.bytes);
    assert!(read.pages() > 4, "{}", read.pages());
    let met = read.letters().matches("walkswithaframe").count();
    // A line may end on one page and go on on the next, with the foot between.
    assert!(met > 390, "{met}");
}

fn every_open(desk: &Desk) -> Document {
    let on = papers::sample::day(2026, 3, 7);
    papers::visit_summary(desk.person(), desk.exam(), on).unwrap()
}

#[test]
fn unsigned_pages_say_so_across() {
    let desk = Desk::unsigned(orla());
    let read = all_said(&every_open(&desk), Paper::A4);
    let met = read.letters().matches("notsigned").count();
    // Across each page, and once beside the title.
    assert_eq!(met, read.pages() + 1);
    let signed = Desk::full();
    let read = all_said(&every_open(&signed), Paper::A4);
    assert!(!read.letters().contains("notsigned"));
}

fn eighths(range: std::ops::Range<i32>) -> impl Strategy<Value = f64> {
    range.prop_map(|eighths| f64::from(eighths) / 8.0)
}

fn a_lens() -> impl Strategy<Value = String> {
    (eighths(-160..160), eighths(-48..48), 1..=180u8).prop_map(|(sphere, cylinder, axis)| {
        use optics::format::power;
        if cylinder == 0.0 {
            power(sphere)
        } else {
            format!("{} / {} × {axis}", power(sphere), power(cylinder))
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    #[test]
    fn each_number_of_a_random_exam_is_on_its_papers(
        right in a_lens(),
        left in a_lens(),
        add in (2..32i32).prop_map(|eighths| f64::from(eighths) / 8.0),
        vertex in 8..18u8,
        given in "\\PC{0,30}",
    ) {
        let mut chosen: Subjective = subjective();
        chosen.eyes.right.done_mut().unwrap().lens = lens(&right);
        chosen.eyes.left.done_mut().unwrap().lens = lens(&left);
        chosen.add = Some(NearAdd { power: add, at_cm: 40.0 });
        chosen.vertex_mm = Some(f64::from(vertex));
        let name = Name { given, family: "Pennyquick".into() };
        let mut desk = Desk::unsigned(PersonDetails { name, ..orla() });
        desk.put(Section::Subjective(chosen));
        desk.sign();
        let on = papers::sample::day(2026, 3, 7);
        let paper = Prescription::from_exam(desk.person(), desk.exam(), on).unwrap();
        let figures = paper.eyes.each_ref().map(|eye| [&eye.sphere, &eye.cylinder, &eye.axis, &eye.add]);
        for document in [paper.document(), every_open(&desk)] {
            let letters = Read::of(&pdf(&document, Paper::A4).unwrap().bytes).letters();
            for figure in figures.iter().flatten() {
                prop_assert!(letters.contains(&close(figure)), "{figure} in {}", document.title);
            }
            let vertex = format!("{vertex}mm");
            prop_assert!(letters.contains(&vertex), "{}", vertex);
        }
    }
}
