//! Every pair of colours that carries text, in both palettes, against WCAG 2.2 (success criteria 1.4.6 and 1.4.11).

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Red, green, blue as light, each 0 to 1.
type Light = [f64; 3];
type Palette = BTreeMap<String, Light>;

fn style() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../style")
}

/// The opaque colours of one palette's block in `tokens.css`.
fn palette(name: &str) -> Palette {
    let css = fs::read_to_string(style().join("tokens.css")).expect("style/tokens.css is read");
    let (_, after) = css
        .split_once(&format!("[data-palette=\"{name}\"]"))
        .expect("the palette has a block");
    let block = after.split_once('}').expect("the block ends").0;
    let token = |line: &str| {
        let (token, rest) = line.trim().strip_prefix("--")?.split_once(": #")?;
        Some((token.to_owned(), light(&rest[..6])))
    };
    block.lines().filter_map(token).collect()
}

/// sRGB to light: the definition of relative luminance in WCAG 2.2.
fn light(hex: &str) -> Light {
    [0, 2, 4].map(|at| {
        let part =
            f64::from(u8::from_str_radix(&hex[at..at + 2], 16).expect("two hex digits")) / 255.0;
        if part <= 0.04045 {
            part / 12.92
        } else {
            ((part + 0.055) / 1.055).powf(2.4)
        }
    })
}

fn luminance([red, green, blue]: Light) -> f64 {
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

fn contrast(a: Light, b: Light) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn assert_pairs(least: f64, pairs: &[(&str, &[&str])]) {
    for name in ["day", "night"] {
        let palette = palette(name);
        for (front, grounds) in pairs {
            for ground in *grounds {
                let found = contrast(palette[*front], palette[*ground]);
                assert!(
                    found >= least,
                    "{name}: {front} on {ground} is {found:.2}:1, not {least}:1"
                );
            }
        }
    }
}

#[test]
fn the_sum_is_the_standards() {
    // Published: WCAG 2.2, definition of contrast ratio: black on white is 21:1.
    assert!((contrast(light("000000"), light("ffffff")) - 21.0).abs() < 1e-9);
    // From memory: #767676 is the lightest grey that passes 4.5:1 on white.
    assert!(contrast(light("767676"), light("ffffff")) >= 4.5);
    assert!(contrast(light("777777"), light("ffffff")) < 4.5);
}

#[test]
fn text_stands_at_seven_to_one() {
    assert_pairs(
        7.0,
        &[
            ("ink", &["paper", "aside", "sheet", "still", "glow"]),
            ("soft", &["paper", "aside", "sheet", "still"]),
            ("lamp", &["paper", "aside", "sheet"]),
            ("on-ink", &["ink", "soft"]),
        ],
    );
}

#[test]
fn outlines_and_signs_stand_at_three_to_one() {
    assert_pairs(
        3.0,
        &[
            ("edge", &["paper", "sheet"]),
            ("lamp", &["glow", "still"]),
            ("dark-line", &["dark"]),
            ("reflex", &["dark"]),
        ],
    );
}

/// The design asks for next to no blue and little green at night; these shares of the red are the house's reading of it.
#[test]
fn night_is_nearly_all_red() {
    // One part in 255 of a channel, the least that can be written, is already a large share of a near-black.
    const LEAST: f64 = 1.0 / 255.0 / 12.92;
    for (token, [red, green, blue]) in palette("night") {
        assert!(blue <= red * 0.07 + LEAST, "{token}: blue");
        assert!(green <= red * 0.27 + LEAST, "{token}: green");
    }
}

#[test]
fn both_palettes_have_the_same_tokens() {
    let names = |name| palette(name).into_keys().collect::<Vec<_>>();
    assert_eq!(names("day"), names("night"));
    assert_eq!(names("day").len(), 15);
}

#[test]
fn only_the_tokens_name_a_colour() {
    for entry in fs::read_dir(style()).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.extension().is_none_or(|end| end != "css")
            || name == "tokens.css"
            || name == "print.css"
        {
            continue;
        }
        let css = fs::read_to_string(&path).unwrap();
        for (number, line) in css.lines().enumerate() {
            let value = line.split_once(':').map_or("", |(_, value)| value);
            let colour = ["#", "rgb(", "hsl("]
                .iter()
                .any(|sign| value.contains(sign));
            assert!(!colour, "{name}:{}: {line}", number + 1);
        }
    }
}

#[test]
fn every_face_named_is_there() {
    let css = fs::read_to_string(style().join("base.css")).unwrap();
    let faces: Vec<_> = css
        .split("url(\"/")
        .skip(1)
        .map(|rest| rest.split('"').next().unwrap())
        .collect();
    assert_eq!(faces.len(), 3);
    for face in faces {
        assert!(style().join(face).exists(), "{face}");
    }
}
