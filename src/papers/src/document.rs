//! What every paper is made of: a title, whom it is about, and blocks in the order in which they are read.
//!
//! A document has no layout: whoever prints it, as a page of the app or as PDF, sets the blocks. So a number on paper is
//! the string that stands here, and [`Document::words`] has every one of them.

use ::words::papers::documents as say;
use record::{Exam, ExamState};
use serde::{Deserialize, Serialize};

/// A paper, ready to be set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Document {
    /// What it is, as its heading: `Prescription for glasses`.
    pub title: String,
    /// How it stands with the signature.
    pub standing: Standing,
    /// How large it is set.
    pub print: Print,
    /// Whom it is about, and when.
    pub who: Vec<Fact>,
    /// What it says, in the order in which it is read.
    pub blocks: Vec<Block>,
    /// What stands at the foot of every page, before the page's number.
    pub foot: String,
}

/// How a paper stands with the signature under its exam.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Standing {
    /// Nobody has signed: every page says so across it.
    Unsigned,
    /// As it was signed.
    Signed,
    /// Something was changed after signing; the paper says so beside its title.
    Amended,
    /// Of many exams, each of which says for itself how it stands.
    Gathered,
}

/// How large a paper is set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Print {
    /// For a desk.
    #[default]
    Ordinary,
    /// For eyes that need it.
    Large,
}

/// A label and what stands there.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fact {
    /// `date of birth`.
    pub label: String,
    /// `4 March 1940`.
    pub value: String,
}

/// One piece of a paper.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Block {
    /// Begins a part.
    Heading(String),
    /// Words.
    Paragraph(String),
    /// Points, one under another.
    List(Vec<String>),
    /// Labels beside their values.
    Facts(Vec<Fact>),
    /// Rows under named columns.
    Table(Table),
    /// Lenses, eye by eye.
    Lenses(LensTable),
    /// What must not be overlooked.
    Callout(Callout),
    /// A measure drawn against its limit.
    Measure(Measure),
    /// Where somebody signs, or has signed.
    Sign(Sign),
}

/// Rows under named columns. The first cell of a row names it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Table {
    /// The columns' names; the first may be empty.
    pub head: Vec<String>,
    /// Each row, with a cell for each column.
    pub rows: Vec<Vec<String>>,
}

/// Lenses, eye by eye: a table whose figures are what the paper is for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LensTable {
    /// The columns' names, without the eye's.
    pub head: Vec<String>,
    /// The right eye, then the left.
    pub rows: Vec<LensRow>,
}

/// One eye's line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LensRow {
    /// `right` or `left`.
    pub eye: String,
    /// What stands there.
    pub lens: LensCells,
}

/// What stands in an eye's line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum LensCells {
    /// A cell for each column.
    Figures(Vec<String>),
    /// Why there is no lens.
    Note(String),
}

/// What must not be overlooked, set apart.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Callout {
    /// How much it presses.
    pub weight: Weight,
    /// What it is about.
    pub title: String,
    /// Each sentence.
    pub lines: Vec<String>,
}

/// How much a callout presses.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Weight {
    /// To be known.
    Mind,
    /// To be acted on.
    Act,
}

/// A measure against its limit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Measure {
    /// What was measured: `right cylinder`.
    pub label: String,
    /// How far off it is, as a part of what is allowed: 1 is at the limit. Nothing where there is no limit.
    pub part: Option<f64>,
    /// How it stands with what is allowed.
    pub against: Against,
    /// The same in words: `within`, `borderline`, `outside`, `not judged`.
    pub stands: String,
    /// The comparison in words, with every figure.
    pub sentence: String,
}

/// How a measure stands with what is allowed. Who draws it may speak another language than who wrote it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Against {
    /// Within.
    Within,
    /// Within, but by less than the measuring can tell.
    Borderline,
    /// Beyond.
    Outside,
    /// Nobody can say.
    NotJudged,
}

impl Against {
    /// Its word in a style sheet.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::Borderline => "borderline",
            Self::Outside => "outside",
            Self::NotJudged => "not-judged",
        }
    }
}

/// Where somebody signs, or has signed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sign {
    /// Signed in the record.
    Signed {
        /// By whom.
        by: String,
        /// When the paper was written, or the exam signed.
        on: String,
    },
    /// A line for a pen.
    Open {
        /// Who is to sign there.
        whom: String,
    },
}

impl Standing {
    /// How a paper about an exam stands.
    pub fn of(exam: &Exam) -> Self {
        match exam.state() {
            ExamState::Open => Self::Unsigned,
            ExamState::Signed => Self::Signed,
            ExamState::Amended => Self::Amended,
        }
    }

    /// What is written across the page or beside the title; nothing for a paper as it was signed, or of many exams.
    pub fn mark(self) -> Option<&'static str> {
        match self {
            Self::Unsigned => Some(say::not_signed()),
            Self::Signed | Self::Gathered => None,
            Self::Amended => Some(say::amended()),
        }
    }
}

impl Fact {
    /// A label and what stands there.
    pub fn new(label: impl Into<String>, value: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            value: value.into(),
        }
    }
}

impl Document {
    /// The same about somebody who is made up: it says so before all else.
    #[must_use]
    pub fn about_nobody(mut self) -> Self {
        let said = Callout {
            weight: Weight::Act,
            title: say::made_up_person().to_owned(),
            lines: vec![say::for_nobody().to_owned()],
        };
        self.blocks.insert(0, Block::Callout(said));
        self
    }

    /// Every text on the paper in the order in which it is read, the foot last.
    pub fn words(&self) -> Vec<&str> {
        let mut words = vec![self.title.as_str()];
        words.extend(self.standing.mark());
        facts(&self.who, &mut words);
        for block in &self.blocks {
            block.words(&mut words);
        }
        words.push(&self.foot);
        words.retain(|text| !text.trim().is_empty());
        words
    }
}

fn facts<'a>(facts: &'a [Fact], words: &mut Vec<&'a str>) {
    for fact in facts {
        words.extend([fact.label.as_str(), fact.value.as_str()]);
    }
}

impl Block {
    fn words<'a>(&'a self, words: &mut Vec<&'a str>) {
        match self {
            Self::Heading(text) | Self::Paragraph(text) => words.push(text),
            Self::List(points) => words.extend(points.iter().map(String::as_str)),
            Self::Facts(each) => facts(each, words),
            Self::Table(table) => {
                let rows = table.head.iter().chain(table.rows.iter().flatten());
                words.extend(rows.map(String::as_str));
            }
            Self::Lenses(lenses) => lenses.words(words),
            Self::Callout(callout) => {
                words.push(&callout.title);
                words.extend(callout.lines.iter().map(String::as_str));
            }
            Self::Measure(measure) => {
                words.extend([&*measure.label, &*measure.stands, &*measure.sentence]);
            }
            Self::Sign(Sign::Signed { by, on }) => words.extend([by.as_str(), on]),
            Self::Sign(Sign::Open { whom }) => words.push(whom),
        }
    }
}

impl LensTable {
    fn words<'a>(&'a self, words: &mut Vec<&'a str>) {
        words.extend(self.head.iter().map(String::as_str));
        for row in &self.rows {
            words.push(&row.eye);
            match &row.lens {
                LensCells::Figures(cells) => words.extend(cells.iter().map(String::as_str)),
                LensCells::Note(note) => words.push(note),
            }
        }
    }

    /// The same without the columns in which no eye has anything.
    #[must_use]
    pub fn without_empty_columns(self) -> Self {
        let filled = |place: usize| {
            self.rows.iter().any(|row| match &row.lens {
                LensCells::Figures(cells) => cells.get(place).is_some_and(|cell| !cell.is_empty()),
                LensCells::Note(_) => false,
            })
        };
        let kept: Vec<usize> = (0..self.head.len())
            .filter(|place| filled(*place))
            .collect();
        let pick = |cells: &[String]| -> Vec<String> {
            let each = kept.iter().filter_map(|place| cells.get(*place));
            each.cloned().collect()
        };
        let rows = self.rows.iter().map(|row| LensRow {
            eye: row.eye.clone(),
            lens: match &row.lens {
                LensCells::Figures(cells) => LensCells::Figures(pick(cells)),
                note @ LensCells::Note(_) => note.clone(),
            },
        });
        Self {
            head: pick(&self.head),
            rows: rows.collect(),
        }
    }
}
