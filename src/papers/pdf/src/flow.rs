//! Pages filled from top to bottom.

use crate::fonts::Fonts;
use crate::lines::{Line, Style, broken, whole};
use crate::look::{Look, baseline, leading};
use crate::tree::{Kind, Node, Piece, Tree};

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

impl Paper {
    /// Width and height in points.
    pub const fn size(self) -> (f32, f32) {
        match self {
            Self::A4 => (595.28, 841.89),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// To the left and right of what is set.
pub(crate) const SIDE: f32 = 54.0;
const TOP: f32 = 50.0;
/// The foot stands in it.
pub(crate) const BOTTOM: f32 = 62.0;

/// Something on a page. What has no piece is not read aloud.
#[derive(Clone, Debug)]
pub(crate) struct Op {
    pub piece: Option<Piece>,
    pub what: What,
}

/// What is drawn.
#[derive(Clone, Debug)]
pub(crate) enum What {
    /// A line of letters, its left end on the baseline.
    Text {
        line: Line,
        x: f32,
        y: f32,
        colour: [u8; 3],
    },
    /// Shapes that belong together.
    Shapes(Vec<Shape>),
}

/// One shape.
#[derive(Clone, Debug)]
pub(crate) struct Shape {
    /// Its corners; it is closed.
    pub corners: Vec<(f32, f32)>,
    /// What fills it; nothing where it is only outlined.
    pub fill: Option<[u8; 3]>,
    /// Its outline and how thick that is.
    pub edge: Option<([u8; 3], f32)>,
}

impl Shape {
    pub fn block(x: f32, y: f32, width: f32, height: f32, fill: [u8; 3]) -> Self {
        Self {
            corners: vec![
                (x, y),
                (x + width, y),
                (x + width, y + height),
                (x, y + height),
            ],
            fill: Some(fill),
            edge: None,
        }
    }
}

/// A heading and where it stands.
#[derive(Clone, Debug)]
pub(crate) struct Mark {
    pub text: String,
    pub page: usize,
    pub y: f32,
}

/// Pages under way.
pub(crate) struct Flow<'f> {
    pub fonts: &'f Fonts,
    pub look: Look,
    pub tree: Tree,
    /// From the top of the page.
    pub y: f32,
    /// How much has to fit under the end of the block that is being set: a signature never stands alone on a page.
    pub keep_below: f32,
    paper: Paper,
    pages: Vec<Vec<Op>>,
    marks: Vec<Mark>,
}

/// Pages that are set.
pub(crate) struct Set {
    pub pages: Vec<Vec<Op>>,
    pub tree: Tree,
    pub marks: Vec<Mark>,
    pub look: Look,
}

impl<'f> Flow<'f> {
    pub fn new(fonts: &'f Fonts, paper: Paper, look: Look) -> Self {
        Self {
            fonts,
            look,
            tree: Tree::new(),
            y: TOP,
            keep_below: 0.0,
            paper,
            pages: vec![Vec::new()],
            marks: Vec::new(),
        }
    }

    pub fn finish(self) -> Set {
        Set {
            pages: self.pages,
            tree: self.tree,
            marks: self.marks,
            look: self.look,
        }
    }

    /// The width of what is set.
    pub fn width(&self) -> f32 {
        self.paper.size().0 - 2.0 * SIDE
    }

    /// What is left of the page.
    fn left(&self) -> f32 {
        self.paper.size().1 - BOTTOM - self.y
    }

    /// The height of an empty page.
    pub fn whole_page(&self) -> f32 {
        self.paper.size().1 - BOTTOM - TOP
    }

    /// Goes to a new page where this much does not fit on the old one. Says whether it did.
    pub fn room(&mut self, height: f32) -> bool {
        if height <= self.left() || self.y <= TOP {
            return false;
        }
        self.pages.push(Vec::new());
        self.y = TOP;
        true
    }

    /// The same for the end of a block, with what has to stand below it.
    pub fn room_before_end(&mut self, height: f32) -> bool {
        self.room(height + self.keep_below)
    }

    /// Goes down, unless at the top of a page.
    pub fn space(&mut self, height: f32) {
        if self.y > TOP {
            self.y += height;
        }
    }

    /// Keeps the place of a heading.
    pub fn mark(&mut self, text: &str) {
        self.marks.push(Mark {
            text: text.to_owned(),
            page: self.pages.len() - 1,
            y: self.y,
        });
    }

    pub fn broken(&self, text: &str, style: Style, width: f32) -> Vec<Line> {
        broken(self.fonts, text, style, width)
    }

    pub fn whole(&self, text: &str, style: Style) -> Line {
        whole(self.fonts, text, style)
    }

    fn op(&mut self, piece: Option<Piece>, what: What) {
        let page = self.pages.last_mut().expect("there is always a page");
        page.push(Op { piece, what });
    }

    /// A line of letters whose line box begins at `y`.
    pub fn text(&mut self, node: Option<Node>, line: Line, x: f32, y: f32, colour: [u8; 3]) {
        let piece = node.map(|node| self.tree.piece(node));
        let y = y + baseline(line.style.size);
        self.op(piece, What::Text { line, x, y, colour });
    }

    /// Shapes that nobody has to hear of.
    pub fn ornament(&mut self, shapes: Vec<Shape>) {
        self.op(None, What::Shapes(shapes));
    }

    /// A drawing with what it shows in words.
    pub fn drawing(&mut self, parent: Node, words: String, shapes: Vec<Shape>) {
        let node = self.tree.add(parent, Kind::Drawing(words));
        let piece = self.tree.piece(node);
        self.op(Some(piece), What::Shapes(shapes));
    }

    /// A thin line across, at `y`.
    pub fn rule(&mut self, y: f32, thick: f32, colour: [u8; 3]) {
        let width = self.width();
        self.ornament(vec![Shape::block(SIDE, y, width, thick, colour)]);
    }

    /// Lines under one another from `x`, going to new pages as needed.
    pub fn lines(&mut self, node: Node, lines: Vec<Line>, x: f32, width: f32, colour: [u8; 3]) {
        for line in lines {
            let high = leading(line.style.size);
            self.room(high);
            let at = if line.from_right {
                x + width - line.width
            } else {
                x
            };
            let y = self.y;
            self.text(Some(node), line, at, y, colour);
            self.y += high;
        }
    }
}

/// How high lines stand under one another.
pub(crate) fn height(lines: &[Line]) -> f32 {
    lines.iter().map(|line| leading(line.style.size)).sum()
}
