//! What people write by hand or type: lenses, powers, acuities, prisms, print, and what they look for.

use crate::seeds::texts;
use optics::acuity::{Print, Written};
use optics::prism::Prism;
use optics::written::parse_power;
use optics::{Eye, SphereCyl};
use record::find::{Findable, Index};
use record::{Half, Jotted, LooksAt, Unit};
use std::fmt::Debug;
use std::str::FromStr;

pub fn seeds() -> Vec<Vec<u8>> {
    texts(&[
        "R +2.50/-1.00x90 L +2.25/-0.75x85 add +2.50",
        "OD −1,25 D",
        "plano",
        "+2.50 / −1.00 × 90",
        "6/9-1+2",
        "20/40",
        "logMAR −0.1",
        "0.5",
        "CF 30 cm",
        "N8",
        "1.6 M",
        "2 BU & 1.5 in",
        "3@135°",
        "Ground floor: 3, 5, 10a\nFirst floor",
        "45 cm",
    ])
}

/// What is read is shown as what can be read, and then shows the same: a lens is shown to its last figure that matters.
pub fn written(bytes: &[u8]) {
    let text = &*String::from_utf8_lossy(bytes);
    if let Ok(lens) = text.parse::<SphereCyl>() {
        shown_again(&lens);
    }
    if let Ok(acuity) = text.parse::<Written>() {
        shown_again(&acuity);
    }
    if let Ok(print) = text.parse::<Print>() {
        shown_again(&print);
    }
    if let Ok(power) = parse_power(text) {
        assert!(power.is_finite());
    }
    for eye in [Eye::Right, Eye::Left] {
        let _ = Prism::read(text, eye);
    }
    let _ = text.parse::<Jotted>();
    let _ = LooksAt::read_distance(text);
    let _ = Unit::read_lines(text);
}

fn shown_again<T: FromStr + ToString>(read: &T)
where
    T::Err: Debug,
{
    let shown = read.to_string();
    let again: T = shown.parse().expect("what is shown can be read");
    assert_eq!(again.to_string(), shown);
}

pub fn halves() -> Vec<Vec<u8>> {
    texts(&[
        "fingers",
        "lens 2.5 - 90",
        "meridians 90 1.25 -",
        "over 1 -0.5 90 - - - 12",
    ])
}

/// What is half entered is read as it was written.
pub fn half(bytes: &[u8]) {
    if let Some(half) = Half::read(&String::from_utf8_lossy(bytes)) {
        assert_eq!(Half::read(&half.to_string()), Some(half));
    }
}

pub fn questions() -> Vec<Vec<u8>> {
    texts(&["penn", "orl 14", "31/1/1940", "1940-01-31", "Pennyquick, O"])
}

/// Whatever is asked, somebody is found or nobody is.
pub fn asked(bytes: &[u8]) {
    let mut index = Index::default();
    for (key, name) in [(1, "Orla Pennyquick"), (2, "Odd Ørland")] {
        index.put(Findable {
            name: name.into(),
            ..Findable::new(key)
        });
    }
    assert!(index.find(&String::from_utf8_lossy(bytes)).len() <= 2);
}
