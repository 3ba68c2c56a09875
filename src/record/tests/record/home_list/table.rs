//! Bytes to rows.

use record::home_list::{Encoding, ListError, Separator, Table};

use super::table;

#[test]
fn the_separator_is_the_one_that_most_lines_agree_on() {
    for (text, separator) in [
        ("Name,Room\nOrla,14\n", Separator::Comma),
        (
            "Name;Room\nPennyquick, Orla;14\nTidewell, Ambrose;15\n",
            Separator::Semicolon,
        ),
        ("Name\tRoom\nOrla\t14, upstairs; left\n", Separator::Tab),
        ("Name\nOrla\n", Separator::Comma),
        ("Name,Room;Unit\nOrla,14;East\n", Separator::Comma),
    ] {
        assert_eq!(table(text).separator, separator, "{text}");
    }
}

/// Published: RFC 4180, sections 2.5 to 2.7, on quotation marks.
#[test]
fn quoted_cells_hold_separators_lines_and_quotation_marks() {
    let read = table(
        "Name,Note\r\n\"Pennyquick, Orla\",\"says \"\"no\"\"\r\nat first\"\r\n\"Tidewell\",\r\n",
    );
    assert_eq!(
        read.rows[0].cells,
        ["Pennyquick, Orla", "says \"no\"\r\nat first"]
    );
    assert_eq!(read.rows[1].cells, ["Tidewell", ""]);
    assert_eq!(
        (read.rows[0].line, read.rows[1].line),
        (2, 4),
        "the line of the file, not the row"
    );
}

#[test]
fn a_title_above_the_headings_and_blank_lines_are_passed_over() {
    let read =
        table("Residents of Saltmarsh Court,,\n,,\nName,Room,Note\n\nOrla,14,\n,,\nIvo,8,new\n");
    assert_eq!(read.heading, ["Name", "Room", "Note"]);
    assert_eq!(read.rows.len(), 2);
    assert_eq!(read.rows[1].line, 7);
}

/// The bytes of é: C3 A9 in UTF-8, E9 in Windows-1252 (the WHATWG Encoding Standard).
#[test]
fn letters_are_read_in_either_encoding() {
    let cases: [(&[u8], Encoding); 3] = [
        (b"Name,Room\nOrl\xC3\xA9,14\n", Encoding::Utf8),
        (b"\xEF\xBB\xBFName,Room\nOrl\xC3\xA9,14\n", Encoding::Utf8),
        (b"Name,Room\nOrl\xE9,14\n", Encoding::Windows1252),
    ];
    for (bytes, encoding) in cases {
        let read = Table::read(bytes).unwrap();
        assert_eq!(
            (read.encoding, read.heading[0].as_str()),
            (encoding, "Name")
        );
        assert_eq!(read.rows[0].cells[0], "Orl\u{e9}");
    }
}

#[test]
fn what_is_no_list_is_refused_in_one_sentence() {
    let error = |bytes: &[u8]| Table::read(bytes).unwrap_err();
    assert_eq!(error(b""), ListError::Empty);
    assert_eq!(error(b" \n,,\n"), ListError::Empty);
    assert_eq!(error(b"Name,Room\n"), ListError::OnlyHeading);
    // A spreadsheet is a zip archive (PK), UTF-16 begins with FF FE: both are full of noughts.
    assert_eq!(error(b"PK\x03\x04\x14\x00\x06\x00"), ListError::NotText);
    assert_eq!(error(b"\xFF\xFEN\x00a\x00"), ListError::NotText);
    assert_eq!(
        error(&vec![b'a'; (4 << 20) + 1]),
        ListError::TooLong {
            bytes: (4 << 20) + 1
        }
    );
    assert_eq!(
        error("Name,Room\nOrla,14\n".repeat(5_002).as_bytes()),
        ListError::TooMany
    );
}
