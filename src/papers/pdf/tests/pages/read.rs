//! Reading a file back.

use lopdf::{Dictionary, Document, Object};

pub struct Read(pub Document);

impl Read {
    pub fn of(bytes: &[u8]) -> Self {
        Self(Document::load_mem(bytes).unwrap())
    }

    pub fn pages(&self) -> usize {
        self.0.get_pages().len()
    }

    /// The words of all pages.
    pub fn text(&self) -> String {
        let pages: Vec<u32> = self.0.get_pages().keys().copied().collect();
        self.0.extract_text(&pages).unwrap()
    }

    /// The words without any space between, for lines break where they may.
    pub fn letters(&self) -> String {
        close(&self.text())
    }

    pub fn dictionary<'a>(&'a self, object: &'a Object) -> &'a Dictionary {
        let (_, object) = self.0.dereference(object).unwrap();
        match object {
            Object::Stream(stream) => &stream.dict,
            other => other.as_dict().unwrap(),
        }
    }

    /// What stands under a key of the catalog.
    pub fn catalog(&self, key: &str) -> &Object {
        let catalog = self.0.catalog().unwrap();
        let (_, object) = self
            .0
            .dereference(catalog.get(key.as_bytes()).unwrap())
            .unwrap();
        object
    }

    /// The tag tree as words: `H1`, `Table(TR(TH TD))`.
    pub fn tags(&self) -> String {
        let root = self.catalog("StructTreeRoot").as_dict().unwrap();
        self.children(root)
    }

    fn children(&self, node: &Dictionary) -> String {
        let Ok(kids) = node.get(b"K") else {
            return String::new();
        };
        let (_, kids) = self.0.dereference(kids).unwrap();
        let kids = match kids {
            Object::Array(kids) => kids.clone(),
            other => vec![other.clone()],
        };
        let named = kids.iter().filter_map(|kid| {
            let (_, kid) = self.0.dereference(kid).unwrap();
            let kid = kid.as_dict().ok()?;
            let role = kid.get(b"S").ok()?.as_name().ok()?;
            let role = String::from_utf8(role.to_vec()).unwrap();
            let inner = self.children(kid);
            Some(if inner.is_empty() {
                role
            } else {
                format!("{role}({inner})")
            })
        });
        named.collect::<Vec<_>>().join(" ")
    }
}

/// Without spaces; a hyphen that no line breaks at is a hyphen.
pub fn close(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| if letter == '\u{2011}' { '-' } else { letter })
        .collect()
}
