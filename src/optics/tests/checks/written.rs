//! Printing and reading a lens.

use crate::{apart, lens};
use optics::written::{Decimal, Dress, Mark, Minus, Mistake, Plano, parse_power};
use optics::{CrossedCylinders, OpticsError, SphereCyl, WrittenError};
use proptest::prelude::*;

#[test]
fn lenses_print_as_the_trade_writes_them() {
    for (lens, text) in [
        (lens(3.25, -1.5, 90.0), "+3.25 / −1.50 × 90"),
        (lens(0.0, -2.0, 180.0), "0.00 / −2.00 × 180"),
        (lens(-1.0, 0.375, 22.5), "−1.00 / +0.37 × 22.5"),
        (SphereCyl::sphere(0.75), "+0.75 DS"),
        (SphereCyl::sphere(0.0), "0.00"),
        (SphereCyl::sphere(-0.0), "0.00"),
    ] {
        assert_eq!(lens.to_string(), text);
    }
}

#[test]
fn a_cylinder_too_weak_to_print_shows_no_random_axis() {
    assert_eq!(lens(1.0, -0.003, 37.0).to_string(), "+1.00 DS");
}

#[test]
fn an_axis_that_rounds_to_zero_prints_180() {
    assert_eq!(lens(1.0, -1.0, 0.04).to_string(), "+1.00 / −1.00 × 180");
    assert_eq!(lens(1.0, -1.0, 179.97).to_string(), "+1.00 / −1.00 × 180");
}

#[test]
fn many_dresses_are_read() {
    let expected = lens(2.0, -1.0, 30.0);
    for text in [
        "+2.00/-1.00x30",
        "+2.00 / −1.00 × 30",
        "+2,00/-1,00X30",
        "+2.00 -1.00 x 30",
        "+2.00DS / -1.00DC x 30°",
        "  +2/-1x030  ",
    ] {
        assert_eq!(SphereCyl::parse(text), Ok(expected), "{text}");
    }
    assert_eq!(text_of("plano"), SphereCyl::sphere(0.0));
    assert_eq!(text_of("pl/-2.00x180"), lens(0.0, -2.0, 180.0));
    assert_eq!(text_of("0.00"), SphereCyl::sphere(0.0));
    assert_eq!(text_of("+0.75 DS"), SphereCyl::sphere(0.75));
    assert_eq!(text_of("+1.00/0.00"), SphereCyl::sphere(1.0));
    assert_eq!("+2.00/-1.00x30".parse(), Ok(expected));
}

fn text_of(text: &str) -> SphereCyl {
    SphereCyl::parse(text).unwrap()
}

#[test]
fn every_customary_dress_is_one_lens() {
    let expected = lens(2.0, -1.0, 30.0);
    for text in [
        "+2.00 DS / -1.00 DC x 30",
        "+2.00DS/-1.00DCx30",
        "+2.00 sph -1.00 cyl ax 30",
        "sph +2.00 cyl -1.00 axis 30",
        "Sph. +2.00 DS Cyl. -1.00 DC Ax. 30 deg",
        "+2.00 sphere / -1.00 cylinder x 30 degrees",
        "+2,00; -1,00; 30",
        "+2.00,-1.00,30",
        "+2,00,-1,00,30",
        "+2.00, -1.00, x 30",
        "+2, -1, 30",
        "+2/-1/30",
        "+2.00 -1.00 30",
        "+2.00 -1.00 030",
        "+2.00/-1.00@30",
        "+2·00/–1·00×30º",
        "+ 2.00 / − 1.00 × 30",
        "+2./-1.x30",
        "+02.00-01.00X030",
        "\u{a0}+2.00\t/\n-1.00 x 30 ",
        "+2.00 D -1.00 D ax30",
        "+1.00 DC x 30 / +2.00 DC x 120",
        "+2.00 x 120 / +1.00 x 30",
        "+2.00 @ 30 / +1.00 @ 120",
    ] {
        let read = text_of(text);
        assert!(apart(&read, &expected) < 1e-12, "{text} gave {read}");
    }
}

#[test]
fn plano_and_cylinders_alone() {
    for text in [
        "pl", "PLANO", "plan", "∞", "0", "0.00 DS", "-0.00", "pl/0.00", "plano DS",
    ] {
        assert_eq!(text_of(text), SphereCyl::sphere(0.0), "{text}");
    }
    for text in [
        "∞ / -0.50 x 90",
        "pl -0.50 x 90",
        "-0.50 DC x 90",
        "-.5 cyl x 90",
        "0,00-0,50x90",
    ] {
        assert_eq!(text_of(text), lens(0.0, -0.5, 90.0), "{text}");
    }
    assert_eq!(text_of("+1.00/pl"), SphereCyl::sphere(1.0));
    assert_eq!(text_of("sph +1.00 cyl 0.00"), SphereCyl::sphere(1.0));
}

fn refused(text: &str) -> WrittenError {
    match SphereCyl::parse(text) {
        Err(OpticsError::Written(error)) => error,
        other => panic!("{text:?} gave {other:?}"),
    }
}

#[test]
fn what_could_become_a_wrong_lens_is_refused_with_its_place() {
    for (text, mistake, at, piece) in [
        ("2.00", Mistake::NoSign, 0, "2.00"),
        ("  2.00", Mistake::NoSign, 2, "2.00"),
        ("+2.00/1.00x30", Mistake::NoSign, 6, "1.00"),
        ("+2.00 / −1.00", Mistake::NoAxis, 8, "−1.00"),
        ("+2,-1,30", Mistake::NoAxis, 3, "-1,30"),
        ("+1.00 DC", Mistake::NoAxis, 0, "+1.00"),
        ("+2.00 x 30", Mistake::NoCylinder, 6, "x 30"),
        ("+2.00 DS @ 30", Mistake::NoCylinder, 9, "@ 30"),
        ("+2.00 -1 25", Mistake::Unmarked, 9, "25"),
        ("+2.00x30/+1.00x110", Mistake::NotAtRightAngles, 14, "x110"),
        ("+2.00x30/+1.00@120", Mistake::Unreadable, 14, "@120"),
        ("+2.00/-1.00 DS x 30", Mistake::Unreadable, 6, "-1.00"),
        ("+2.00/-1.00x-30", Mistake::Unreadable, 12, "-30"),
        ("+2.00/-1.00x30x30", Mistake::Unreadable, 14, "x"),
        ("+1/-1/-1x90", Mistake::Unreadable, 6, "-1"),
        ("+2.00−1.00xé", Mistake::Unreadable, 11, "é"),
        ("＋2.00 −−1.00×5", Mistake::Unfinished, 6, "−"),
        ("+1.0.0", Mistake::Unreadable, 0, "+1.0.0"),
        ("+1e3", Mistake::Unreadable, 2, "e3"),
        ("+2.00\u{0}", Mistake::Unreadable, 5, "\u{0}"),
        ("+1/-1x", Mistake::Unfinished, 5, "x"),
        ("+1/", Mistake::Unfinished, 2, "/"),
        ("+1/-1/", Mistake::Unfinished, 5, "/"),
        ("+1-", Mistake::Unfinished, 2, "-"),
        ("", Mistake::Empty, 0, ""),
        (" \t", Mistake::Empty, 0, ""),
    ] {
        let error = refused(text);
        let found = (error.mistake, error.at, error.piece.as_str());
        assert_eq!(found, (mistake, at, piece), "{text:?}");
    }
}

#[test]
fn a_refusal_is_one_sentence_that_says_where() {
    for (text, sentence) in [
        (
            "2.00",
            "“2.00” (character 1) has no sign: write +2.00 or −2.00",
        ),
        (
            "+2.00/-1.00",
            "“-1.00” (character 7) is a cylinder without an axis: add it, like × 90",
        ),
        (
            "+2.00x30",
            "“x30” (character 6) is an axis without a cylinder: which cylinder is it the axis of?",
        ),
        (
            "+2.00/-1.00x200",
            "“200” (character 13) is no angle for a lens: the axis can be 0 to 180 degrees, and 200 is outside that",
        ),
        (
            "plus two",
            "“us” (character 3) cannot be read here: write a lens like +2.00 / −1.00 × 30",
        ),
        (
            "+2.00/-1 25",
            "“25” (character 10) may be an axis or decimals: write × 25 or a point",
        ),
        (
            " ",
            "nothing is written: write a lens like +2.00 / −1.00 × 30",
        ),
    ] {
        assert_eq!(refused(text).to_string(), sentence, "{text:?}");
    }
}

#[test]
fn rubbish_is_refused() {
    let digits = "9".repeat(400);
    for text in [
        "+",
        "-",
        "/",
        "x",
        "+inf",
        "nan",
        "+-1",
        "/-1x90",
        "+1/-1x9x9",
        "×",
        "d",
        "@",
        ",",
        "+,",
        "ds",
        "+1//-1x90",
        "+1/-1x90/",
        "+1/-1x9 0",
        "x90",
        "+1/-1xx90",
        "+1 +1 +1 x 90",
        "cyl +1",
        "+1@90",
        "+1@90/+2@90",
        "DC +1 DS",
        "+½",
        "+٣.٠٠",
        &format!("+{digits}"),
    ] {
        refused(text);
    }
}

#[test]
fn single_powers_are_read() {
    for (text, power) in [
        ("+2.50", 2.5),
        ("−1.25 D", -1.25),
        ("0", 0.0),
        ("+0,75 DS", 0.75),
        ("pl", 0.0),
    ] {
        assert_eq!(parse_power(text), Ok(power), "{text}");
    }
    for text in ["2.50", "+2.50 / -1.00 x 90", "+2.50 x 90", ""] {
        assert!(
            matches!(parse_power(text), Err(OpticsError::Written(_))),
            "{text}"
        );
    }
}

fn any_dress() -> impl Strategy<Value = Dress> {
    let minus = prop_oneof![Just(Minus::True), Just(Minus::Hyphen)];
    let decimal = prop_oneof![Just(Decimal::Point), Just(Decimal::Comma)];
    let mark = prop_oneof![
        Just(Mark::Times),
        Just(Mark::Letter),
        Just(Mark::At),
        Just(Mark::Ax),
        Just(Mark::Axis)
    ];
    let plano = prop_oneof![
        Just(Plano::Figures),
        Just(Plano::Word),
        Just(Plano::Short),
        Just(Plano::Infinity)
    ];
    let habits = any::<[bool; 4]>();
    (minus, decimal, mark, plano, habits).prop_map(
        |(minus, decimal, mark, plano, [units, stroke, spaced, three_digits])| Dress {
            minus,
            decimal,
            mark,
            plano,
            units,
            stroke,
            spaced,
            three_digits,
        },
    )
}

/// A lens on the quarter step with its axis to half a degree, as people write one.
fn written_lens() -> impl Strategy<Value = SphereCyl> {
    (-160..=160_i32, -60..=60_i32, 1..=360_i32)
        .prop_map(|(s, c, a)| lens(f64::from(s) / 4.0, f64::from(c) / 4.0, f64::from(a) / 2.0))
}

proptest! {
    #[test]
    fn every_dress_reads_back(lens in written_lens(), dress in any_dress()) {
        let text = lens.dressed(dress).to_string();
        prop_assert_eq!(SphereCyl::parse(&text), Ok(lens), "{}", text);
    }

    #[test]
    fn crossed_cylinders_read_back(lens in written_lens()) {
        let crossed = CrossedCylinders::from(lens);
        let read = SphereCyl::parse(&crossed.to_string());
        prop_assert!(read.is_ok_and(|read| apart(&read, &lens) < 1e-12), "{}", crossed);
        prop_assert_eq!(SphereCyl::from(crossed), lens);
    }

    // The second kind of text is made of what a lens is made of, so that it gets far into the reader.
    #[test]
    fn no_text_makes_the_reader_fall_over(
        text in any::<String>(),
        dressed in "([-+−–/x×@.,·;∞° 0-9éß🙂]|ds|dc|sph|cyl|ax|pl|deg){0,16}",
    ) {
        for text in [text, dressed] {
            match SphereCyl::parse(&text) {
                Ok(lens) => prop_assert!(lens.vector().blur_strength().is_finite()),
                Err(OpticsError::Written(error)) => {
                    let there: String = text.chars().skip(error.at).take(error.piece.chars().count()).collect();
                    prop_assert_eq!(there, error.piece);
                }
                Err(other) => prop_assert!(false, "{} gave {:?}", text, other),
            }
            let _ = parse_power(&text);
        }
    }
}
