//! The fonts that are built in, and which of them has a letter.
//!
//! Atkinson Hyperlegible Next for Latin, Noto Sans for the rest, all under the SIL Open Font License; how the files were made
//! stands beside them.

use std::cell::RefCell;
use std::collections::BTreeSet;

use krilla::text::Font;
use rustybuzz::Face;
use unicode_normalization::UnicodeNormalization as _;

/// How heavy letters are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Heft {
    Regular,
    Bold,
}

/// One font file, as it is shaped and as it is embedded.
pub(crate) struct One {
    pub face: Face<'static>,
    pub font: Font,
}

/// Every font, the first that has a letter first.
pub(crate) struct Fonts {
    regular: Vec<One>,
    bold: Vec<One>,
    lacking: RefCell<BTreeSet<char>>,
}

macro_rules! built_in {
    ($weight:literal) => {
        [
            include_bytes!(concat!("../fonts/atkinson-latin-", $weight, ".ttf")).as_slice(),
            include_bytes!(concat!("../fonts/atkinson-latin-ext-", $weight, ".ttf")),
            include_bytes!(concat!("../fonts/noto-cyrillic-", $weight, ".ttf")),
            include_bytes!(concat!("../fonts/noto-greek-", $weight, ".ttf")),
            include_bytes!(concat!("../fonts/noto-hebrew-", $weight, ".ttf")),
            include_bytes!(concat!("../fonts/noto-arabic-", $weight, ".ttf")),
        ]
    };
}

impl Fonts {
    pub fn built_in() -> Self {
        Self {
            regular: built_in!("400").map(One::new).into(),
            bold: built_in!("700").map(One::new).into(),
            lacking: RefCell::default(),
        }
    }

    pub fn each(&self, heft: Heft) -> &[One] {
        match heft {
            Heft::Regular => &self.regular,
            Heft::Bold => &self.bold,
        }
    }

    /// The place of the font for a letter after one set in `before`: marks and spaces stay with their neighbours.
    pub fn place(&self, heft: Heft, letter: char, before: Option<usize>) -> usize {
        let fonts = self.each(heft);
        let stays = before.filter(|place| !letter.is_alphanumeric() && fonts[*place].has(letter));
        stays
            .or_else(|| fonts.iter().position(|one| one.has(letter)))
            .unwrap_or_default()
    }

    /// A text that the fonts can set: accents composed, what is no letter left out, what no font has as a question mark.
    pub fn clean(&self, text: &str) -> String {
        text.nfc().filter_map(|letter| self.kept(letter)).collect()
    }

    fn kept(&self, letter: char) -> Option<char> {
        match letter {
            '\n' => Some('\n'),
            letter if letter.is_control() || letter == '\u{2028}' || letter == '\u{2029}' => {
                Some(' ')
            }
            letter if unseen(letter) => None,
            letter if self.regular.iter().any(|one| one.has(letter)) => Some(letter),
            letter => {
                self.lacking.borrow_mut().insert(letter);
                Some('?')
            }
        }
    }

    /// The letters that stand as question marks.
    pub fn lacking(&self) -> Vec<char> {
        self.lacking.borrow().iter().copied().collect()
    }
}

/// Marks of direction, joiners and variants: they have no shape, and a screen reader has no use for them.
const fn unseen(letter: char) -> bool {
    matches!(letter, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}')
}

impl One {
    fn new(bytes: &'static [u8]) -> Self {
        Self {
            face: Face::from_slice(bytes, 0).expect("the built-in fonts are whole"),
            font: Font::new(bytes.into(), 0).expect("the built-in fonts are whole"),
        }
    }

    fn has(&self, letter: char) -> bool {
        self.face
            .glyph_index(letter)
            .is_some_and(|glyph| glyph.0 != 0)
    }
}
