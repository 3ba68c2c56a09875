//! Entries: the immutable things that are written down, and their bytes.
//!
//! An entry is a CBOR map with an envelope that every version can read, and a body:
//!
//! | field | CBOR | what |
//! |---|---|---|
//! | `id` | 16 bytes | the entry |
//! | `parents` | array of 16 bytes | the entries it rests on or replaces |
//! | `author` | text | who wrote it |
//! | `device` | 16 bytes | where it was written |
//! | `stamp` | map `wall_ms`, `counter` | when |
//! | `kind` | text | what the body is |
//! | `schema` | unsigned | the version of that kind's layout, from 1 |
//! | `body` | map | see [`crate::Body`] |
//!
//! Readers ignore fields that they don't know, so a field may be added under the same schema when older readers may
//! safely overlook it. Whatever an older reader must not overlook or can't read, a new variant among them, raises
//! the schema: that reader then carries the entry as [`Body::Unread`].

use ciborium::Value;
use serde::{Deserialize, Serialize, de::DeserializeOwned};

use crate::body::{Body, OpenedBody, PersonBody, SectionBody, SignedBody, Unread, kinds};
use crate::cbor;
use crate::error::{ReadError, RecordError};
use crate::ids::{DeviceId, EntryId};
use crate::sections::{Section, SectionKind};
use crate::stamp::Stamp;

/// The newest layout of each kind's body that this version writes and reads.
const SCHEMA: u16 = 1;

/// One thing written down, never changed afterwards.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Entry {
    /// Its name.
    pub id: EntryId,
    /// The entries that it rests on, or replaces.
    pub parents: Vec<EntryId>,
    /// Who wrote it, as shown to others.
    pub author: String,
    /// The device on which it was written.
    pub device: DeviceId,
    /// When.
    pub stamp: Stamp,
    /// The version of the body's layout.
    pub schema: u16,
    /// What it says.
    pub body: Body,
}

#[derive(Serialize, Deserialize)]
struct Envelope<A, P, K, B> {
    id: EntryId,
    parents: P,
    author: A,
    device: DeviceId,
    stamp: Stamp,
    kind: K,
    schema: u16,
    body: B,
}

type Received = Envelope<String, Vec<EntryId>, String, Value>;

impl Entry {
    /// Writes an entry down in the present layout. Id and stamp are made by the caller.
    pub const fn new(
        id: EntryId,
        parents: Vec<EntryId>,
        author: String,
        device: DeviceId,
        stamp: Stamp,
        body: Body,
    ) -> Self {
        Self {
            id,
            parents,
            author,
            device,
            stamp,
            schema: SCHEMA,
            body,
        }
    }

    /// The entry's bytes. An entry that came unread gives back exactly the bytes that came.
    pub fn to_cbor(&self) -> Vec<u8> {
        match &self.body {
            Body::Person { person, details } => self.wrap(PersonBody {
                person: *person,
                details,
            }),
            Body::ExamOpened {
                exam,
                person,
                place,
                opened_on,
            } => self.wrap(OpenedBody {
                exam: *exam,
                person: *person,
                place,
                opened_on: *opened_on,
            }),
            Body::Section {
                exam,
                section,
                reason,
            } => self.wrap(SectionBody {
                exam: *exam,
                section: section.inner(),
                reason: reason.as_deref(),
            }),
            Body::Signed {
                exam,
                heads,
                signer,
            } => self.wrap(SignedBody {
                exam: *exam,
                heads,
                signer,
            }),
            Body::Answered(answered) => self.wrap(answered),
            Body::Sent(sent) => self.wrap(sent),
            Body::Place(written) => self.wrap(written),
            Body::Round(written) => self.wrap(written),
            Body::Visit(written) => self.wrap(written),
            Body::Packed(written) => self.wrap(written),
            Body::Kit(kit) => self.wrap(kit),
            Body::Same(same) => self.wrap(same),
            Body::Apart(apart) => self.wrap(apart),
            Body::Settings(settings) => self.wrap(settings),
            Body::Unread(unread) => unread.bytes().to_vec(),
        }
    }

    fn wrap<B: Serialize>(&self, body: B) -> Vec<u8> {
        cbor::write(&Envelope {
            id: self.id,
            parents: &self.parents,
            author: &self.author,
            device: self.device,
            stamp: self.stamp,
            kind: self.body.kind(),
            schema: self.schema,
            body,
        })
    }

    /// Reads an entry.
    ///
    /// # Errors
    /// [`RecordError::Read`] when the bytes are no entry. A kind or a layout from a newer version is no error: it
    /// gives [`Body::Unread`].
    pub fn from_cbor(bytes: &[u8]) -> Result<Self, RecordError> {
        let received: Received = cbor::read(bytes)?;
        let body = body(&received.kind, received.schema, received.body, bytes)?;
        Ok(Self {
            id: received.id,
            parents: received.parents,
            author: received.author,
            device: received.device,
            stamp: received.stamp,
            schema: received.schema,
            body,
        })
    }
}

/// Reads a body whose kind and layout are known; carries any other.
fn body(kind: &str, schema: u16, value: Value, whole: &[u8]) -> Result<Body, ReadError> {
    if schema == 0 {
        return Err(ReadError::Envelope {
            why: ::words::record::unread::layouts_from_one().to_owned(),
        });
    }
    if schema > SCHEMA {
        return Ok(unread(kind, whole));
    }
    match kind {
        kinds::PERSON => typed(kind, &value).map(|body: PersonBody<_>| Body::Person {
            person: body.person,
            details: body.details,
        }),
        kinds::EXAM_OPENED => typed(kind, &value).map(|body: OpenedBody<_>| Body::ExamOpened {
            exam: body.exam,
            person: body.person,
            place: body.place,
            opened_on: body.opened_on,
        }),
        kinds::SIGNED => typed(kind, &value).map(|body: SignedBody<_, _>| Body::Signed {
            exam: body.exam,
            heads: body.heads,
            signer: body.signer,
        }),
        kinds::ANSWERED => typed(kind, &value).map(Body::Answered),
        kinds::SENT => typed(kind, &value).map(Body::Sent),
        kinds::PLACE => typed(kind, &value).map(Body::Place),
        kinds::ROUND => typed(kind, &value).map(Body::Round),
        kinds::VISIT => typed(kind, &value).map(Body::Visit),
        kinds::PACKED => typed(kind, &value).map(Body::Packed),
        kinds::KIT => typed(kind, &value).map(Body::Kit),
        kinds::SAME => typed(kind, &value).map(Body::Same),
        kinds::APART => typed(kind, &value).map(Body::Apart),
        kinds::SETTINGS => typed(kind, &value).map(Body::Settings),
        _ => match SectionKind::from_wire_name(kind) {
            Some(section) => section_body(section, &value),
            None => Ok(unread(kind, whole)),
        },
    }
}

fn section_body(kind: SectionKind, value: &Value) -> Result<Body, ReadError> {
    let body = Section::read(kind, value).map_err(|error| refused(kind.wire_name(), &error))?;
    Ok(Body::Section {
        exam: body.exam,
        section: body.section,
        reason: body.reason,
    })
}

fn typed<T: DeserializeOwned>(kind: &str, value: &Value) -> Result<T, ReadError> {
    value.deserialized().map_err(|error| refused(kind, &error))
}

fn refused(kind: &str, error: &ciborium::value::Error) -> ReadError {
    ReadError::Body {
        kind: kind.to_owned(),
        why: error.to_string(),
    }
}

fn unread(kind: &str, whole: &[u8]) -> Body {
    Body::Unread(Unread::new(kind.to_owned(), whole.to_vec()))
}
