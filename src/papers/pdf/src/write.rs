//! From pages that are set to the file.

use std::collections::BTreeMap;
use std::num::NonZeroU16;

use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, ListNumbering, Node as Tagged, SpanTag,
    TableHeaderScope, Tag, TagGroup, TagKind, TagTree,
};
use krilla::{Document as File, SerializeSettings};
use papers::{Document, Standing};

use crate::PdfError;
use crate::flow::{BOTTOM, Op, Paper, SIDE, Set, Shape, What};
use crate::fonts::Fonts;
use crate::lines::{Line, Style, broken_from_left, whole};
use crate::look::{ACROSS, HAIR, Look, SOFT, colour, leading};
use crate::tree::{Child, Kind, Node, Piece, Tree};
use words::papers::pages as say;

/// The foot may take so many lines: a long name stands whole under every page.
const FOOT_LINES: usize = 2;
/// The foot is set smaller rather than broken, but no smaller than this.
const FOOT_LEAST: f32 = 8.5;

/// Where each piece ended up.
type Placed = BTreeMap<usize, Identifier>;

pub(crate) fn write(
    fonts: &Fonts,
    document: &Document,
    paper: Paper,
    set: Set,
) -> Result<Vec<u8>, PdfError> {
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| PdfError::Refused(format!("{error:?}")))?;
    let mut file = File::new_with(SerializeSettings {
        configuration,
        enable_tagging: true,
        ..SerializeSettings::default()
    });
    let title = format!("{}: {}", document.title, document.foot);
    let metadata = Metadata::new()
        .title(title)
        .language(words::spoken().tag().to_owned());
    file.set_metadata(metadata);
    let mut placed = Placed::new();
    let count = set.pages.len();
    for (place, ops) in set.pages.iter().enumerate() {
        let (width, height) = paper.size();
        let settings = PageSettings::from_wh(width, height)
            .ok_or_else(|| PdfError::Refused("the page has no size".to_owned()))?;
        let mut page = file.start_page_with(settings);
        let mut pen = Pen {
            fonts,
            surface: page.surface(),
        };
        if let (Standing::Unsigned, Some(mark)) = (document.standing, document.standing.mark()) {
            pen.across(paper, mark);
        }
        for op in ops {
            pen.draw(op, &mut placed);
        }
        pen.foot(paper, &set.look, &document.foot, place + 1, count);
    }
    file.set_outline(outline(&set));
    file.set_tag_tree(tags(&set.tree, &placed));
    file.finish()
        .map_err(|error| PdfError::Refused(format!("{error:?}")))
}

fn outline(set: &Set) -> Outline {
    let mut outline = Outline::new();
    for mark in &set.marks {
        let there = XyzDestination::new(mark.page, Point::from_xy(SIDE, mark.y));
        outline.push_child(OutlineNode::new(mark.text.clone(), there));
    }
    outline
}

/// What draws on one page.
struct Pen<'a, 'p> {
    fonts: &'a Fonts,
    surface: Surface<'p>,
}

impl Pen<'_, '_> {
    fn draw(&mut self, op: &Op, placed: &mut Placed) {
        let text = match &op.what {
            // Runs stand from left to right; who listens gets them as they are read.
            What::Text { line, .. } if line.backward => Some(line.text.as_str()),
            _ => None,
        };
        let tag = match (op.piece, text) {
            (None, _) => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)),
            (Some(_), Some(text)) => {
                ContentTag::Span(SpanTag::empty().with_actual_text(Some(text)))
            }
            (Some(_), None) => ContentTag::Other,
        };
        let identifier = self.surface.start_tagged(tag);
        if let Some(Piece(piece)) = op.piece {
            placed.insert(piece, identifier);
        }
        match &op.what {
            What::Text { line, x, y, colour } => self.text(line, *x, *y, *colour),
            What::Shapes(shapes) => shapes.iter().for_each(|shape| self.shape(shape)),
        }
        self.surface.end_tagged();
    }

    fn text(&mut self, line: &Line, mut x: f32, y: f32, ink: [u8; 3]) {
        self.surface.set_stroke(None);
        self.surface.set_fill(Some(fill(ink)));
        let fonts = self.fonts.each(line.style.heft);
        for run in &line.runs {
            let font = fonts[run.font].font.clone();
            let at = Point::from_xy(x, y);
            self.surface
                .draw_glyphs(at, &run.glyphs, font, &run.text, line.style.size, false);
            x += run.width * line.style.size;
        }
    }

    fn shape(&mut self, shape: &Shape) {
        let mut path = PathBuilder::new();
        for (place, (x, y)) in shape.corners.iter().enumerate() {
            if place == 0 {
                path.move_to(*x, *y);
            } else {
                path.line_to(*x, *y);
            }
        }
        path.close();
        self.surface.set_fill(shape.fill.map(fill));
        let stroke = shape.edge.map(|(ink, width)| Stroke {
            paint: colour(ink).into(),
            width,
            ..Stroke::default()
        });
        self.surface.set_stroke(stroke);
        if let Some(path) = path.finish() {
            self.surface.draw_path(&path);
        }
    }

    /// Words across the page, behind everything.
    fn across(&mut self, paper: Paper, words: &str) {
        let (width, height) = paper.size();
        let line = whole(self.fonts, words, Style::bold(118.0));
        let kind = Artifact::with_kind(ArtifactType::Watermark);
        self.surface.start_tagged(ContentTag::Artifact(kind));
        let turned = Transform::from_rotate_at(-52.0, width / 2.0, height / 2.0);
        self.surface.push_transform(&turned);
        let x = (width - line.width) / 2.0;
        self.text(&line, x, height / 2.0 + 40.0, ACROSS);
        self.surface.pop();
        self.surface.end_tagged();
    }

    /// Whom the page is about, and which page it is of how many.
    fn foot(&mut self, paper: Paper, look: &Look, words: &str, page: usize, pages: usize) {
        let (width, height) = paper.size();
        let style = Style::regular(look.small);
        let number = |style| whole(self.fonts, &say::page_of(&page, &pages), style);
        let room = width - 2.0 * SIDE - number(style).width - 20.0;
        let lines = foot_lines(self.fonts, words, look.small, room);
        // Both are one size, so that they read as one line.
        let number = number(lines.first().map_or(style, |line| line.style));
        let y = height - BOTTOM + 30.0;
        let kind = Artifact::with_kind(ArtifactType::Footer);
        self.surface.start_tagged(ContentTag::Artifact(kind));
        self.shape(&Shape::block(
            SIDE,
            y - look.small - 6.0,
            width - 2.0 * SIDE,
            0.5,
            HAIR,
        ));
        let mut down = y;
        for line in &lines {
            self.text(line, SIDE, down, SOFT);
            down += leading(line.style.size);
        }
        self.text(&number, width - SIDE - number.width, y, SOFT);
        self.surface.end_tagged();
    }
}

/// The foot on one line where it fits, smaller if need be; else on two.
fn foot_lines(fonts: &Fonts, words: &str, size: f32, width: f32) -> Vec<Line> {
    let set = |size| broken_from_left(fonts, words, Style::regular(size), width);
    let lines = set(size);
    if lines.len() <= 1 || size <= FOOT_LEAST {
        return lines.into_iter().take(FOOT_LINES).collect();
    }
    foot_lines(fonts, words, (size - 1.0).max(FOOT_LEAST), width)
}

fn fill(ink: [u8; 3]) -> Fill {
    Fill {
        paint: colour(ink).into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::default(),
    }
}

fn tags(tree: &Tree, placed: &Placed) -> TagTree {
    let mut tags = TagTree::new().with_lang(Some(words::spoken().tag().to_owned()));
    for child in children(tree, Tree::ROOT, placed) {
        tags.push(child);
    }
    tags
}

fn children(tree: &Tree, node: Node, placed: &Placed) -> Vec<Tagged> {
    let (_, children) = tree.of(node);
    let tagged = |child: &Child| match child {
        Child::Piece(Piece(piece)) => placed.get(piece).map(|id| Tagged::Leaf(*id)),
        Child::Node(node) => {
            let (kind, _) = tree.of(*node);
            let inner = self::children(tree, *node, placed);
            Some(Tagged::Group(TagGroup::with_children(tag(kind), inner)))
        }
    };
    children.iter().filter_map(tagged).collect()
}

fn tag(kind: &Kind) -> TagKind {
    let level = |level| NonZeroU16::new(level).unwrap_or(NonZeroU16::MIN);
    match kind {
        Kind::Root | Kind::Part => Tag::Div.into(),
        Kind::Title(text) => Tag::Hn(level(1), Some(text.clone())).into(),
        Kind::Heading(text) => Tag::Hn(level(2), Some(text.clone())).into(),
        Kind::Paragraph => Tag::P.into(),
        Kind::List => Tag::L(ListNumbering::None).into(),
        Kind::Item => Tag::LI.into(),
        Kind::Label => Tag::Lbl.into(),
        Kind::Body => Tag::LBody.into(),
        Kind::Table => Tag::Table.into(),
        Kind::Head => Tag::THead.into(),
        Kind::Rows => Tag::TBody.into(),
        Kind::Row => Tag::TR.into(),
        Kind::ColumnName => Tag::TH(TableHeaderScope::Column).into(),
        Kind::RowName => Tag::TH(TableHeaderScope::Row).into(),
        Kind::Cell(columns) => {
            let span = std::num::NonZeroU32::new(*columns).filter(|span| span.get() > 1);
            Tag::TD.with_col_span(span).into()
        }
        Kind::Drawing(words) => Tag::Figure(Some(words.clone())).into(),
    }
}
