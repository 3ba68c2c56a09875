//! Windows-1252, for files that are not UTF-8: the table of the WHATWG Encoding Standard.
//!
//! Written out here, because a library of every encoding would weigh more in the browser than the rest of this crate; the tests
//! hold it against one.

/// What the bytes 0x80 to 0x9F stand for. All others stand for the character of their own number.
const HIGH: [char; 32] = [
    '\u{20AC}', '\u{81}', '\u{201A}', '\u{192}', '\u{201E}', '\u{2026}', '\u{2020}', '\u{2021}',
    '\u{2C6}', '\u{2030}', '\u{160}', '\u{2039}', '\u{152}', '\u{8D}', '\u{17D}', '\u{8F}',
    '\u{90}', '\u{2018}', '\u{2019}', '\u{201C}', '\u{201D}', '\u{2022}', '\u{2013}', '\u{2014}',
    '\u{2DC}', '\u{2122}', '\u{161}', '\u{203A}', '\u{153}', '\u{9D}', '\u{17E}', '\u{178}',
];

/// Every byte stands for something.
pub fn decode(bytes: &[u8]) -> String {
    let characters = bytes.iter().map(|byte| match byte {
        0x80..=0x9F => HIGH[usize::from(byte - 0x80)],
        other => char::from(*other),
    });
    characters.collect()
}

#[cfg(test)]
mod tests {
    /// Published: the WHATWG Encoding Standard's index, as `encoding_rs` carries it.
    #[test]
    fn every_byte_is_read_as_the_standard_has_it() {
        let all: Vec<u8> = (0..=255).collect();
        let (expected, malformed) = encoding_rs::WINDOWS_1252.decode_without_bom_handling(&all);
        assert!(!malformed);
        assert_eq!(super::decode(&all), expected);
    }
}
