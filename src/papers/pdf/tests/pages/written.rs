//! How the file is made.

use papers::sample::{Desk, orla};
use pdf::{Paper, pdf};
use record::{Name, PersonDetails};

use crate::every;
use crate::read::Read;

/// ISO 32000: a subset's name begins with six capitals and a plus.
fn is_subset(name: &[u8]) -> bool {
    name.len() > 7 && name[..6].iter().all(u8::is_ascii_uppercase) && name[6] == b'+'
}

#[test]
fn fonts_are_embedded_as_subsets() {
    for document in every(&Desk::full()) {
        let made = pdf(&document, Paper::A4).unwrap();
        // All twelve fonts together have 670 kB.
        assert!(
            made.bytes.len() < 90_000,
            "{} in {}",
            made.bytes.len(),
            document.title
        );
        let read = Read::of(&made.bytes);
        let mut met = 0;
        for object in read.0.objects.values() {
            let Ok(dictionary) = object.as_dict() else {
                continue;
            };
            if dictionary.has(b"FontDescriptor") {
                let descriptor = read.dictionary(dictionary.get(b"FontDescriptor").unwrap());
                let embedded = descriptor.has(b"FontFile2") || descriptor.has(b"FontFile3");
                assert!(embedded, "{dictionary:?}");
                assert!(is_subset(
                    dictionary.get(b"BaseFont").unwrap().as_name().unwrap()
                ));
                met += 1;
            }
        }
        assert!(met >= 2, "a regular and a bold font");
    }
}

#[test]
fn the_same_document_gives_the_same_bytes() {
    let document = every(&Desk::full()).remove(5);
    let twice = [(), ()].map(|()| pdf(&document, Paper::A4).unwrap().bytes);
    assert_eq!(twice[0], twice[1]);
}

// A4 is 210 by 297 mm (ISO 216), Letter 8.5 by 11 inches; a point is 1/72 inch.
#[test]
fn pages_have_their_size() {
    let document = every(&Desk::full()).remove(0);
    for (paper, width, height) in [
        (Paper::A4, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
        (Paper::Letter, 8.5 * 72.0, 11.0 * 72.0),
    ] {
        let read = Read::of(&pdf(&document, paper).unwrap().bytes);
        for page in read.0.get_pages().values() {
            let page = read.0.get_object(*page).unwrap().as_dict().unwrap();
            let sides = page.get(b"MediaBox").unwrap().as_array().unwrap();
            let sides: Vec<f32> = sides.iter().map(|side| side.as_float().unwrap()).collect();
            assert!((sides[2] - width as f32).abs() < 0.02, "{sides:?}");
            assert!((sides[3] - height as f32).abs() < 0.02, "{sides:?}");
        }
    }
}

// What is read aloud is the order of the letters in Unicode, whichever way they are drawn.
#[test]
fn right_to_left_lines_say_how_they_are_read() {
    for (given, family) in [("תמר", "בן־נמל"), ("نور الهدى", "المرفأ")] {
        let name = Name {
            given: given.into(),
            family: family.into(),
        };
        let desk = Desk::full_of(PersonDetails {
            name: name.clone(),
            ..orla()
        });
        for document in every(&desk) {
            let made = pdf(&document, Paper::A4).unwrap();
            assert_eq!(made.lacking, []);
            let read = Read::of(&made.bytes);
            let mut said = String::new();
            for page in read.0.get_pages().values() {
                let content = read.0.get_and_decode_page_content(*page).unwrap();
                for operation in &content.operations {
                    for operand in &operation.operands {
                        if let Ok(actual) =
                            operand.as_dict().and_then(|dict| dict.get(b"ActualText"))
                        {
                            said += &lopdf::decode_text_string(actual).unwrap();
                            said.push('\n');
                        }
                    }
                }
            }
            assert!(
                said.contains(&name.to_string()),
                "{} in {}: {said}",
                name,
                document.title
            );
        }
    }
}
