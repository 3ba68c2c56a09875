//! What a screen reader goes through (PDF/UA-1, ISO 14289).

use papers::sample::Desk;
use pdf::{Paper, pdf};
use words::{Language, in_language};

use crate::every;
use crate::read::{Read, close};

#[test]
fn a_file_says_that_it_is_tagged_and_in_which_language() {
    for document in every(&Desk::full()) {
        let read = Read::of(&pdf(&document, Paper::A4).unwrap().bytes);
        let marked = read.dictionary(read.catalog("MarkInfo"));
        assert!(marked.get(b"Marked").unwrap().as_bool().unwrap());
        assert_eq!(read.catalog("Lang").as_str().unwrap(), b"en");
        let shown = read.dictionary(read.catalog("ViewerPreferences"));
        assert!(shown.get(b"DisplayDocTitle").unwrap().as_bool().unwrap());
        assert!(read.0.catalog().unwrap().has(b"Outlines"));
    }
}

/// A screen reader speaks as the file says: German words under an English language can't be understood (ISO 14289-1, 7.2).
#[test]
fn a_german_paper_says_that_it_is_german() {
    let made = in_language(Language::German, || {
        let documents = every(&Desk::full());
        pdf(&documents[0], Paper::A4).unwrap()
    });
    let read = Read::of(&made.bytes);
    assert_eq!(read.catalog("Lang").as_str().unwrap(), b"de");
    assert!(read.text().contains("Seite 1 von"), "{}", read.text());
}

#[test]
fn a_prescription_is_read_from_the_title_to_the_signature() {
    let document = every(&Desk::full()).remove(0);
    let read = Read::of(&pdf(&document, Paper::A4).unwrap().bytes);
    let fact = "LI(Lbl LBody)";
    let item = fact;
    let eye = "TR(TH TD TD TD TD TD)";
    let expected = format!(
        "Document(H1 L({fact} {fact} {fact}) \
         Table(THead(TR(TD TH TH TH TH TH)) TBody({eye} {eye})) \
         L({fact} {fact}) Div(P L({item} {item})) P P)"
    );
    assert_eq!(read.tags(), expected);
}

#[test]
fn every_heading_and_drawing_is_there_in_its_order() {
    let papers = every(&Desk::full());
    let summary = Read::of(&pdf(&papers[5], Paper::A4).unwrap().bytes).tags();
    let headings = papers[5].blocks.iter();
    let headings = headings
        .filter(|block| matches!(block, papers::Block::Heading(_)))
        .count();
    assert_eq!(summary.matches("H2").count(), headings);
    let fitting = Read::of(&pdf(&papers[6], Paper::A4).unwrap().bytes).tags();
    let measures = papers[6].blocks.iter().filter(|block| match block {
        papers::Block::Measure(measure) => measure.part.is_some(),
        _ => false,
    });
    assert_eq!(fitting.matches("Figure").count(), measures.count());
}

#[test]
fn what_is_heard_is_what_is_written_in_its_order() {
    for document in every(&Desk::full()) {
        let mut written: String = document.words().concat();
        let written_without_foot = written.len() - document.foot.len();
        written.truncate(written_without_foot);
        for paper in [Paper::A4, Paper::Letter] {
            let read = Read::of(&pdf(&document, paper).unwrap().bytes);
            let heard = close(&read.aloud()).replace('•', "");
            assert_eq!(heard, close(&written), "{}", document.title);
        }
    }
}
