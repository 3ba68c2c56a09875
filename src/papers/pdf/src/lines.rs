//! Breaking words into lines no wider than they may be.

use std::ops::Range;

use unicode_bidi::{BidiInfo, Level};
use unicode_linebreak::{BreakOpportunity, linebreaks};

use crate::fonts::{Fonts, Heft};
use crate::shape::{Run, runs};

/// How letters are set.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Style {
    pub heft: Heft,
    pub size: f32,
}

/// One line, its runs from left to right.
#[derive(Clone, Debug)]
pub(crate) struct Line {
    pub style: Style,
    pub runs: Vec<Run>,
    /// In points.
    pub width: f32,
    /// As it is read.
    pub text: String,
    /// Whether any of it goes from right to left.
    pub backward: bool,
    /// Whether the whole paragraph does.
    pub from_right: bool,
}

impl Style {
    pub const fn regular(size: f32) -> Self {
        Self {
            heft: Heft::Regular,
            size,
        }
    }

    pub const fn bold(size: f32) -> Self {
        Self {
            heft: Heft::Bold,
            size,
        }
    }
}

/// Breaks a text into lines. A word that is wider than a line is broken between letters.
pub(crate) fn broken(fonts: &Fonts, text: &str, style: Style, width: f32) -> Vec<Line> {
    let clean = fonts.clean(text);
    let paragraphs = clean.split('\n').map(str::trim);
    let lines = paragraphs.filter(|text| !text.is_empty());
    lines
        .flat_map(|text| paragraph(fonts, text, style, width))
        .collect()
}

/// A text on one line, however wide.
pub(crate) fn whole(fonts: &Fonts, text: &str, style: Style) -> Line {
    let clean = fonts.clean(text).replace('\n', " ");
    let text = clean.trim();
    let info = BidiInfo::new(text, None);
    line(fonts, &info, 0..text.len(), style)
}

/// A text of this project's own words, which all go from left to right: a name that begins it does not turn it round.
pub(crate) fn broken_from_left(fonts: &Fonts, text: &str, style: Style, width: f32) -> Vec<Line> {
    let clean = fonts.clean(text).replace('\n', " ");
    let text = clean.trim();
    let info = BidiInfo::new(text, Some(Level::ltr()));
    in_lines(fonts, text, &info, style, width)
}

fn paragraph(fonts: &Fonts, text: &str, style: Style, width: f32) -> Vec<Line> {
    let info = BidiInfo::new(text, None);
    in_lines(fonts, text, &info, style, width)
}

fn in_lines(fonts: &Fonts, text: &str, info: &BidiInfo<'_>, style: Style, width: f32) -> Vec<Line> {
    let mut lines = Vec::new();
    let mut start = 0;
    let mut end = 0;
    let fits = |range: Range<usize>| measured(fonts, &text[range], style) <= width;
    let breaks = linebreaks(text);
    for (next, kind) in breaks.filter(|(at, kind)| !is_held(text, *at, *kind)) {
        if end > start && !fits(start..next) {
            lines.push(start..end);
            start = end;
        }
        end = next;
        while let Some(cut) = too_wide(text, start..end, &fits) {
            lines.push(start..cut);
            start = cut;
        }
        if kind == BreakOpportunity::Mandatory && start < end {
            lines.push(start..end);
            start = end;
        }
    }
    lines
        .into_iter()
        .map(|range| line(fonts, info, range, style))
        .collect()
}

/// Units that are written behind their figure with a space between.
const UNITS: [&str; 9] = ["mm", "cm", "m", "ft", "D", "dpt", "%", "mmHg", "Δ"];

/// Whether a line may end there and had better not: between a figure and its unit (ISO 80000-1, 7.1.4: the two stand together), or
/// within a German day, between its number with the dot and the month.
fn is_held(text: &str, at: usize, kind: BreakOpportunity) -> bool {
    let (before, after) = text.split_at(at);
    let word = after.split(' ').next().unwrap_or_default();
    let unit = word.trim_end_matches([',', '.', ';', ':', ')']);
    let before = before.trim_end_matches(' ');
    let is_figure = |text: &str| text.ends_with(|last: char| last.is_ascii_digit());
    let is_ordinal = before.strip_suffix('.').is_some_and(is_figure);
    kind == BreakOpportunity::Allowed
        && (is_figure(before) && UNITS.contains(&unit)
            || is_ordinal && word.starts_with(char::is_uppercase))
}

/// Where to cut a piece that is wider than a line; nothing where it fits, or is a single letter.
fn too_wide(
    text: &str,
    piece: Range<usize>,
    fits: &impl Fn(Range<usize>) -> bool,
) -> Option<usize> {
    if fits(piece.clone()) {
        return None;
    }
    let inner = text[piece.clone()].char_indices().skip(1);
    let cuts: Vec<usize> = inner.map(|(at, _)| piece.start + at).collect();
    let holds = |count: usize| cuts.get(count).is_some_and(|cut| fits(piece.start..*cut));
    // Doubling first: a piece may be a thousand lines long.
    let mut far = 1;
    while holds(far) {
        far *= 2;
    }
    let near = &cuts[..far.min(cuts.len())];
    let fitting = near.partition_point(|cut| fits(piece.start..*cut));
    cuts.get(fitting.saturating_sub(1)).copied()
}

/// How wide letters are, without the space at their end.
fn measured(fonts: &Fonts, text: &str, style: Style) -> f32 {
    let shaped = runs(fonts, style.heft, text.trim_end(), false);
    shaped.iter().map(|run| run.width).sum::<f32>() * style.size
}

fn line(fonts: &Fonts, info: &BidiInfo<'_>, range: Range<usize>, style: Style) -> Line {
    let text = info.text[range.clone()].trim_end();
    let range = range.start..range.start + text.len();
    let mut set = Vec::new();
    let mut backward = false;
    let paragraph = info.paragraphs.first();
    if let Some(paragraph) = paragraph.filter(|_| !range.is_empty()) {
        let (levels, visual) = info.visual_runs(paragraph, range);
        for run in visual {
            let goes_back = levels[run.start].is_rtl();
            backward |= goes_back;
            set.extend(runs(fonts, style.heft, &info.text[run], goes_back));
        }
    }
    Line {
        style,
        width: set.iter().map(|run| run.width).sum::<f32>() * style.size,
        runs: set,
        text: text.to_owned(),
        backward,
        from_right: paragraph
            .map_or(Level::ltr(), |paragraph| paragraph.level)
            .is_rtl(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    thread_local! {
        static FONTS: Fonts = Fonts::built_in();
    }

    fn set(text: &str, width: f32) -> Vec<Line> {
        FONTS.with(|fonts| broken(fonts, text, Style::regular(10.0), width))
    }

    // UAX 9: Hebrew letters stand from right to left, figures among them from left to right.
    #[test]
    fn hebrew_stands_from_right_to_left() {
        let [line] = set("שלום 42 AB", 500.0).try_into().unwrap();
        assert!(line.from_right && line.backward);
        let order: Vec<&str> = line.runs.iter().map(|run| run.text.trim()).collect();
        let place = |text: &str| order.iter().position(|run| *run == text);
        assert!(
            place("AB") < place("42") && place("42") < place("שלום"),
            "{order:?}"
        );
        // The first glyph from the left is the last letter.
        let word = line.runs.iter().find(|run| run.text.contains('ש')).unwrap();
        let letters = word.glyphs.iter().map(|glyph| glyph.text_range.start);
        let letters: Vec<usize> = letters.collect();
        assert!(
            letters.windows(2).all(|pair| pair[0] > pair[1]),
            "{letters:?}"
        );
    }

    // A letter of Arabic has one shape alone and another between its neighbours.
    #[test]
    fn arabic_letters_are_joined() {
        let glyphs = |text: &str| -> Vec<u32> {
            let [line] = set(text, 500.0).try_into().unwrap();
            let runs = line.runs.iter();
            runs.flat_map(|run| run.glyphs.iter().map(|glyph| glyph.glyph_id.to_u32()))
                .collect()
        };
        let (alone, joined) = (glyphs("ع"), glyphs("ععع"));
        assert_eq!(joined.len(), 3);
        assert!(
            joined.iter().all(|glyph| *glyph != alone[0]),
            "{alone:?} {joined:?}"
        );
    }

    #[test]
    fn a_paragraph_of_english_with_a_name_stays_on_the_left() {
        let [line] = set("Thank you for seeing תמר בן־נמל, whom I saw.", 500.0)
            .try_into()
            .unwrap();
        assert!(line.backward && !line.from_right);
        assert!(line.runs[0].text.starts_with("Thank you"));
    }

    // UAX 9, HL1: whoever sets a text may tell its direction. The name first, then what is said of it.
    #[test]
    fn a_foot_that_begins_with_a_hebrew_name_still_goes_from_the_left() {
        let foot = "תמר בן־נמל, seen 4 March 2026";
        let lines = FONTS.with(|fonts| broken_from_left(fonts, foot, Style::regular(10.0), 500.0));
        let [line] = lines.try_into().unwrap();
        assert!(!line.from_right);
        let hebrew = |letter: char| ('א'..='ת').contains(&letter);
        assert!(line.runs[0].text.contains(hebrew));
        assert!(line.runs.last().unwrap().text.contains("2026"));
    }

    // ISO 80000-1, 7.1.4: a figure and its unit stand together. That a German day keeps its number is common practice, no source.
    #[test]
    fn a_figure_keeps_its_unit() {
        for (text, kept) in [
            ("made as +4.21 for 14 mm", "14 mm"),
            ("would change by −0.33 D, and so on", "−0.33 D,"),
            ("zu verbrauchen bis 3. März 2027", "3. März"),
        ] {
            for width in (40..160).map(|tenth| tenth as f32) {
                let lines = set(text, width);
                let kept_there = lines.iter().any(|line| line.text.contains(kept));
                assert!(kept_there, "{width}: {lines:?}");
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

        #[test]
        fn no_line_is_too_wide_and_no_letter_is_lost(
            text in "[a-zéא-ת −+0-9]{0,120}", width in 20.0f32..300.0
        ) {
            let lines = set(&text, width);
            for line in &lines {
                prop_assert!(line.width <= width + 0.5, "{} in {width}", line.width);
            }
            let close = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect::<String>();
            let read: String = lines.iter().map(|line| close(&line.text)).collect();
            prop_assert_eq!(read, close(&text));
        }
    }
}
