//! What stands together on a page. That nothing is signed on a page of its own, and that a heading stands with what it is the
//! heading of, is common practice of typesetting, no source.

use papers::sample::{Desk, orla};
use papers::{
    Block, Callout, Document, Fact, Print, Sign, Standing, Table, Weight, care_staff_note,
};
use pdf::{Paper, pdf};
use record::{Name, PersonDetails};

use crate::read::{Read, close};

/// So many paragraphs of one line fill a page, more or less.
const ABOUT_A_PAGE: std::ops::Range<usize> = 26..36;

fn after_paragraphs(count: usize, end: Vec<Block>) -> Vec<String> {
    let mut blocks = vec![Block::Paragraph("One line of a letter.".into()); count];
    blocks.extend(end);
    let document = Document {
        title: "Letter".into(),
        standing: Standing::Signed,
        print: Print::Ordinary,
        who: vec![],
        blocks,
        foot: "foot".into(),
    };
    Read::of(&pdf(&document, Paper::A4).unwrap().bytes).each_page()
}

fn table() -> Block {
    let row = |word: &str| vec![word.to_owned(), "right".into(), "left".into()];
    Block::Table(Table {
        head: row(""),
        rows: vec![row("BEGIN"), row("MIDDLE"), row("END")],
    })
}

fn ends() -> Vec<Block> {
    vec![
        Block::Paragraph("END".into()),
        Block::List(vec!["BEGIN".into(), "END".into()]),
        Block::Facts(vec![Fact::new("first", "BEGIN"), Fact::new("last", "END")]),
        table(),
        Block::Callout(Callout {
            weight: Weight::Mind,
            title: "BEGIN".into(),
            lines: vec!["END".into()],
        }),
    ]
}

#[test]
fn no_signature_stands_alone_on_a_page() {
    for end in ends() {
        let mut on_two = 0;
        for count in ABOUT_A_PAGE {
            let sign = Block::Sign(Sign::Signed {
                by: "SIGNED".into(),
                on: "ON".into(),
            });
            let pages = after_paragraphs(count, vec![end.clone(), sign]);
            on_two += pages.len() - 1;
            let last = pages.last().unwrap();
            assert!(last.contains("SIGNED"), "{pages:?}");
            assert!(last.contains("END"), "{end:?} after {count}: {last}");
        }
        assert!(on_two > 0, "none of them went over its page: {end:?}");
    }
}

#[test]
fn a_heading_stands_with_the_table_below_a_fact_or_two() {
    for count in ABOUT_A_PAGE {
        let heading = || Block::Heading("HEADING".into());
        let fact = || Block::Facts(vec![Fact::new("chart", "at 6 m")]);
        let by = Block::Paragraph("written by her".into());
        for end in [
            vec![heading(), fact(), table()],
            vec![heading(), by, fact(), table()],
        ] {
            let pages = after_paragraphs(count, end);
            let page = pages.iter().find(|page| page.contains("HEADING")).unwrap();
            assert!(page.contains("BEGIN"), "after {count}: {pages:?}");
        }
    }
}

#[test]
fn a_long_name_stands_whole_under_every_page() {
    for (given, family) in [
        (
            "Zsófia-Éléonore d’Ærøskøbing",
            "Ó Conchobhair-Šťastná of Lantern Quay",
        ),
        (
            "Wilhelmina Wagonwright-Wymondham",
            "Winterbottom-Wallasey of the Wide West Wharf",
        ),
    ] {
        let name = Name {
            given: given.into(),
            family: family.into(),
        };
        let desk = Desk::full_of(PersonDetails { name, ..orla() });
        let on = papers::sample::day(2026, 3, 7);
        let note = papers::NoteOptions::default();
        let document = care_staff_note(desk.person(), desk.exam(), &note, on).unwrap();
        assert_eq!(document.print, Print::Large);
        for page in Read::of(&pdf(&document, Paper::A4).unwrap().bytes).each_page() {
            assert!(page.contains(&close(&document.foot)), "{page}");
        }
    }
}
