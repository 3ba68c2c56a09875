//! Printing and reading a lens.

use crate::lens;
use optics::written::parse_power;
use optics::{OpticsError, SphereCyl};

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
fn what_could_become_a_wrong_lens_is_refused_with_a_sentence() {
    for (text, sentence) in [
        ("2.00", "“2.00” has no sign: write +2.00 or −2.00"),
        ("+2.00/1.00x30", "“1.00” has no sign: write +1.00 or −1.00"),
        (
            "+2.00/-1.00",
            "“+2.00/-1.00” has a cylinder without an axis: add it, like × 90",
        ),
        (
            "+2.00x30",
            "“+2.00x30” has an axis without a cylinder: which cylinder is it the axis of?",
        ),
        (
            "+2.00/-1.00x200",
            "the axis can be 0 to 180 degrees, and 200 is outside that",
        ),
        (
            "plus two",
            "“plus two” cannot be read as a lens: write it like +2.00 / −1.00 × 30",
        ),
    ] {
        assert_eq!(
            SphereCyl::parse(text).unwrap_err().to_string(),
            sentence,
            "{text}"
        );
    }
}

#[test]
fn rubbish_is_unreadable() {
    for text in [
        "",
        " ",
        "+",
        "-",
        "/",
        "x",
        "+inf",
        "nan",
        "+1e3",
        "+1.0.0",
        "+-1",
        "+1/-1x",
        "/-1x90",
        "+1/-1x9x9",
        "+1/-1/-1x90",
        "+1-",
        "×",
        "d",
        "+2.00\u{0}",
    ] {
        let read = SphereCyl::parse(text);
        assert!(
            matches!(read, Err(OpticsError::Unreadable { .. })),
            "{text:?} gave {read:?}"
        );
    }
}

#[test]
fn single_powers_are_read() {
    assert_eq!(parse_power("+2.50"), Ok(2.5));
    assert_eq!(parse_power("−1.25 D"), Ok(-1.25));
    assert_eq!(parse_power("0"), Ok(0.0));
    assert!(matches!(
        parse_power("2.50"),
        Err(OpticsError::NoSign { .. })
    ));
}
