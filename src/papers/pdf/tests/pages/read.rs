//! Reading a file back.

use std::collections::BTreeMap;

use lopdf::content::Operation;
use lopdf::{Dictionary, Document, Object, ObjectId};

/// What each marked piece of a page says.
type Said = BTreeMap<(ObjectId, i64), String>;

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

    /// The words of each page, without any space between.
    pub fn each_page(&self) -> Vec<String> {
        let pages = self.0.get_pages();
        let text = pages
            .keys()
            .map(|page| self.0.extract_text(&[*page]).unwrap());
        text.map(|text| close(&text)).collect()
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

/// What a screen reader hears: the pieces of all pages in the order of the tag tree (ISO 32000-1, 14.7 and 14.8), what stands in
/// for a piece (`ActualText`) in its place, and of what is not tagged nothing.
impl Read {
    pub fn aloud(&self) -> String {
        let mut said = Said::new();
        for page in self.0.get_pages().into_values() {
            self.pieces(page, &mut said);
        }
        let root = self.catalog("StructTreeRoot").as_dict().unwrap();
        let mut heard = String::new();
        self.hear(root, None, &said, &mut heard);
        heard
    }

    fn hear(&self, node: &Dictionary, page: Option<ObjectId>, said: &Said, heard: &mut String) {
        let page_of = |node: &Dictionary| node.get(b"Pg").and_then(Object::as_reference).ok();
        let page = page_of(node).or(page);
        let Ok(kids) = node.get(b"K") else {
            return;
        };
        let (_, kids) = self.0.dereference(kids).unwrap();
        let kids = match kids {
            Object::Array(kids) => kids.clone(),
            other => vec![other.clone()],
        };
        for kid in &kids {
            let (_, kid) = self.0.dereference(kid).unwrap();
            match kid {
                Object::Integer(place) => heard.push_str(&said[&(page.unwrap(), *place)]),
                Object::Dictionary(kid) => match kid.get(b"MCID").and_then(Object::as_i64) {
                    Ok(place) => {
                        let page = page_of(kid).or(page).unwrap();
                        heard.push_str(&said[&(page, place)]);
                    }
                    Err(_) => self.hear(kid, page, said, heard),
                },
                other => panic!("{other:?} in the tag tree"),
            }
        }
    }

    /// The marked pieces of a page. A piece within a piece belongs to the outer one.
    fn pieces(&self, page: ObjectId, said: &mut Said) {
        let fonts = self.0.get_page_fonts(page).unwrap();
        let content = self.0.get_and_decode_page_content(page).unwrap();
        let mut open: Vec<Option<i64>> = Vec::new();
        let (mut font, mut stands_in) = (None, false);
        for operation in &content.operations {
            match operation.operator.as_str() {
                "BDC" | "BMC" => {
                    let told = operation.operands.get(1);
                    let told = told.and_then(|told| told.as_dict().ok());
                    let place = told.and_then(|told| told.get(b"MCID").ok());
                    let place = place.and_then(|place| place.as_i64().ok());
                    open.push(place);
                    let Some(place) = place else { continue };
                    let actual = told.and_then(|told| told.get(b"ActualText").ok());
                    stands_in = actual.is_some();
                    let text = actual.map(|text| lopdf::decode_text_string(text).unwrap());
                    said.insert((page, place), text.unwrap_or_default());
                }
                "EMC" => {
                    open.pop();
                }
                "Tf" => font = operation.operands[0].as_name().ok().map(<[u8]>::to_vec),
                "Tj" | "TJ" => {
                    let place = open.iter().rev().flatten().next();
                    let (Some(place), Some(font), false) = (place, &font, stands_in) else {
                        continue;
                    };
                    let encoding = fonts[font].get_font_encoding(&self.0).unwrap();
                    let text = said.get_mut(&(page, *place)).unwrap();
                    for bytes in strings(operation) {
                        *text += &Document::decode_text(&encoding, bytes).unwrap();
                    }
                }
                _ => {}
            }
        }
    }
}

/// What is shown by one operation.
fn strings(operation: &Operation) -> Vec<&[u8]> {
    let operands = operation.operands.iter();
    let flat = operands.flat_map(|operand| match operand {
        Object::Array(each) => each.iter().collect(),
        one => vec![one],
    });
    flat.filter_map(|one| one.as_str().ok()).collect()
}

/// Without spaces; a hyphen that no line breaks at is a hyphen.
pub fn close(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| if letter == '\u{2011}' { '-' } else { letter })
        .collect()
}
