//! The order of reading: what a screen reader goes through, built while the pages are set.

/// A place in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Node(usize);

/// A piece of a page that belongs to a place in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Piece(pub usize);

/// What a node is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Kind {
    Root,
    Title(String),
    Heading(String),
    Paragraph,
    Part,
    List,
    Item,
    Label,
    Body,
    Table,
    Head,
    Rows,
    Row,
    ColumnName,
    RowName,
    /// A cell, and how many columns it takes.
    Cell(u32),
    /// A drawing, and what it shows in words.
    Drawing(String),
}

/// A node's child.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Child {
    Node(Node),
    Piece(Piece),
}

/// The tree.
#[derive(Debug)]
pub(crate) struct Tree {
    nodes: Vec<(Kind, Vec<Child>)>,
    pieces: usize,
}

impl Tree {
    pub fn new() -> Self {
        Self {
            nodes: vec![(Kind::Root, Vec::new())],
            pieces: 0,
        }
    }

    pub const ROOT: Node = Node(0);

    pub fn add(&mut self, parent: Node, kind: Kind) -> Node {
        let node = Node(self.nodes.len());
        self.nodes.push((kind, Vec::new()));
        self.nodes[parent.0].1.push(Child::Node(node));
        node
    }

    pub fn piece(&mut self, parent: Node) -> Piece {
        let piece = Piece(self.pieces);
        self.pieces += 1;
        self.nodes[parent.0].1.push(Child::Piece(piece));
        piece
    }

    pub fn of(&self, node: Node) -> (&Kind, &[Child]) {
        let (kind, children) = &self.nodes[node.0];
        (kind, children)
    }
}
