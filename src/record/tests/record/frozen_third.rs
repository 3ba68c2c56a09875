//! Bytes of the third layout that must never change; made as those in `frozen.rs` were.

use record::{Answered, Body, Chart, Entry, Eye, Section, Subjective};

use crate::frozen::{EXAM, entry, id, section};
use crate::samples::{bytes, names};

fn answered(rule: &str, eye: Option<Eye>, reason: &str, heads: &[u8]) -> Body {
    Body::Answered(Answered {
        exam: EXAM,
        rule: rule.into(),
        eye,
        reason: reason.into(),
        heads: heads.iter().copied().map(id).collect(),
    })
}

fn expected() -> Vec<(&'static str, Entry)> {
    let one = answered("sign-flipped", Some(Eye::Right), "nuclear cataract", &[8]);
    let both = answered("distance-slip", None, "measured again at 67 cm", &[7, 8]);
    let newer = answered("asked-by-a-newer-version", Some(Eye::Left), "so be it", &[]);
    let room = Section::Subjective(Subjective {
        chart: Chart {
            made_for_m: 3.0,
            used_at_m: 3.0,
        },
        for_the_room: true,
        ..Subjective::default()
    });
    vec![
        ("answered", entry(42, &[7, 8], both)),
        ("answered-eye", entry(41, &[8], one)),
        ("answered-newer-rule", entry(43, &[3], newer)),
        ("subjective-for-the-room", section(44, &[3], room)),
    ]
}

#[test]
fn the_third_layout_is_frozen() {
    for (name, entry) in expected() {
        let frozen = bytes(&format!("v3/{name}"));
        assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&entry), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
}

#[test]
fn no_file_of_the_third_layout_is_left_unread() {
    let known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    assert_eq!(names("v3"), known);
}
