//! Acuity as it is written: read, printed, read again, and refused with the place where it went wrong.

use crate::assert_near;
use optics::acuity::{Acuity, Measure, PartialLine, Written, WrittenError, WrittenLine, on_chart};
use proptest::prelude::*;

fn read(text: &str) -> Result<Written, WrittenError> {
    text.parse()
}

// How the trade writes it: common practice, no source.
#[test]
fn what_is_written_is_printed_in_one_dress() {
    for (written, printed) in [
        ("6/9", "6/9"),
        ("6/9-2", "6/9 −2"),
        ("6/9 −2", "6/9 −2"),
        ("6/9 -2 +1", "6/9 −2 +1"),
        ("6/9 -2, +1", "6/9 −2 +1"),
        ("6/9+1-2", "6/9 −2 +1"),
        (" 6 / 9.5 ", "6/9.5"),
        ("6/9,5, -1", "6/9.5 −1"),
        ("20/40+1", "20/40 +1"),
        ("10/40 ft", "10/40 ft"),
        ("3/24", "3/24"),
        ("2.5/36", "2.5/36"),
        ("0.5", "0.5"),
        ("0,63 -1", "0.63 −1"),
        ("logmar 0.3", "logMAR 0.3"),
        ("-0.1 logMAR", "logMAR −0.1"),
        ("LogMAR –0.1", "logMAR −0.1"),
        ("CF 50 cm", "counts fingers at 50 cm"),
        ("cf@1m", "counts fingers at 100 cm"),
        ("counting fingers at 0.29 m", "counts fingers at 29 cm"),
        ("HM", "sees hand movements"),
        ("pl", "sees light"),
        ("LP", "sees light"),
        ("NPL", "sees no light"),
        ("nlp", "sees no light"),
    ] {
        let once = read(written).unwrap();
        assert_eq!(once.to_string(), printed, "{written}");
        assert_eq!(read(printed), Ok(once), "{printed}");
    }
}

// Computed from 0.02 a letter: last full line 0.3 with three letters of the next is 0.24.
#[test]
fn letters_are_counted_for_better_and_worse() {
    for (written, logmar) in [
        ("logMAR 0.3", 0.3),
        ("6/12", 0.301),
        ("6/12 +3", 0.241),
        ("6/12 -2", 0.341),
        ("6/12 -2 +1", 0.321),
        ("3/24", 0.903),
        ("20/200", 1.0),
        ("1/60", 1.778),
    ] {
        let Acuity::Measured(found) = read(written).unwrap().into() else {
            panic!("{written} is measured");
        };
        assert_near(found.value(), logmar, 0.0005);
    }
}

#[test]
fn a_refusal_says_where_and_what() {
    for (written, said) in [
        ("", "no acuity is written here"),
        (
            "6/",
            "“6/” stops short: the number under the stroke is missing",
        ),
        (
            "6/x",
            "“6/x” cannot be read from “x” on: the number under the stroke goes there",
        ),
        (
            "6/9 -",
            "“6/9 -” stops short: a count of letters like −2 or +1 is missing",
        ),
        (
            "6/9 -2 -1",
            "“6/9 -2 -1” cannot be read from “-1” on: nothing more goes there",
        ),
        (
            "6/9 bright",
            "“6/9 bright” cannot be read from “bright” on: nothing more goes there",
        ),
        (
            "6/9 -8",
            "the letters missed or gained can be 0 to 7 letters, and 8 is outside that",
        ),
        (
            "6/9 +0",
            "“6/9 +0” cannot be read from “0” on: a count of letters like −2 or +1 goes there",
        ),
        ("6/0", "the size of the letter must be above 0"),
        ("0", "the decimal acuity must be above 0"),
        (
            "0.1/6",
            "the chart distance can be 0.25 to 10 m, and 0.1 is outside that",
        ),
        (
            "-0.1",
            "“-0.1” stops short: logMAR, for only that has a sign, is missing",
        ),
        ("CF", "“CF” says not how far away: write it like CF 50 cm"),
        ("CF 50", "“CF 50” stops short: cm or m is missing"),
        (
            "CF 9 m",
            "the distance of the fingers can be 1 to 600 cm, and 900 is outside that",
        ),
        (
            "CF 30.5 cm",
            "“CF 30.5 cm” cannot be read from “30.5 cm” on: a whole number of centimetres goes there",
        ),
        (
            "J5",
            "“J5” cannot be read from “J5” on: a line like 6/9, a decimal like 0.5, or CF, HM, PL or NPL goes there",
        ),
    ] {
        assert_eq!(read(written).unwrap_err().to_string(), said);
    }
    let Err(WrittenError::Stopped { after, .. }) = read("  6/9 −2 ?") else {
        panic!("stopped");
    };
    assert_eq!(after, 9);
}

#[test]
fn letters_beside_a_logmar_are_refused() {
    let one = PartialLine::new(1, 0).unwrap();
    let refused = WrittenLine::new(Measure::LogMar(0.3), one).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "a logMAR has its letters counted already: leave them out, or give the line instead"
    );
    assert!(read("logMAR 0.3 -1").is_err());
}

// The 6/12 line of a 3 m chart, read at 1.5 m: 1.5/6, as good as 6/24. Computed from the formula.
#[test]
fn a_chart_at_another_distance_is_written_as_it_was_read() {
    let measure = on_chart(12.0, 3.0, 1.5).unwrap();
    let line = WrittenLine::new(measure, PartialLine::WHOLE).unwrap();
    assert_eq!(line.to_string(), "1.5/6");
    assert_near(line.acuity().value(), 4.0_f64.log10(), 1e-12);
}

fn any_measure() -> impl Strategy<Value = Measure> {
    let hundredths =
        |range: std::ops::RangeInclusive<u32>| range.prop_map(|n| f64::from(n) / 100.0);
    prop_oneof![
        (hundredths(25..=1000), hundredths(100..=20000))
            .prop_map(|(distance, size)| Measure::Metres { distance, size }),
        (hundredths(100..=3200), hundredths(300..=60000))
            .prop_map(|(distance, size)| Measure::Feet { distance, size }),
        (0.002..=5.0_f64).prop_map(Measure::Decimal),
        (-1.0..=3.0_f64).prop_map(Measure::LogMar),
    ]
}

proptest! {
    #[test]
    fn what_is_printed_is_read_back(measure in any_measure(), missed in 0_u8..=7, gained in 0_u8..=7) {
        let partial = match measure {
            Measure::LogMar(_) => PartialLine::WHOLE,
            _ => PartialLine::new(missed, gained).unwrap(),
        };
        if let Ok(line) = WrittenLine::new(measure, partial) {
            prop_assert_eq!(read(&line.to_string()), Ok(Written::Line(line)), "{}", line);
        }
    }

    // Whatever is typed is taken or refused in words, and what is taken is read back.
    #[test]
    fn any_text_is_taken_or_refused(text in "[0-9./,+−\\- cfhmplatn@NLPFT]{0,14}|\\PC{0,20}") {
        match read(&text) {
            Ok(written) => prop_assert_eq!(read(&written.to_string()), Ok(written)),
            Err(error) => prop_assert!(!error.to_string().is_empty()),
        }
    }

    #[test]
    fn any_measure_is_taken_or_refused(one in any::<f64>(), two in any::<f64>()) {
        for measure in [
            Measure::Metres { distance: one, size: two },
            Measure::Feet { distance: one, size: two },
            Measure::Decimal(one),
            Measure::LogMar(one),
        ] {
            if let Ok(line) = WrittenLine::new(measure, PartialLine::WHOLE) {
                prop_assert!((-1.0..=3.0).contains(&line.acuity().value()));
            }
        }
    }
}
