//! A checkpoint's plain bytes. They are sealed by [`vault::Keys::seal_checkpoint`], so only damage of our own making could
//! show here; they are read as if they came from anybody all the same.
//!
//! Numbers are big-endian; `text` and `bytes` stand after their length (u32).
//!
//! ```text
//! format u8: 1
//! roll u8: 0 none, 1 one; then its length u64 and the hash of its last statement, 32 bytes (zeros for none)
//! witness u64
//! logs u32; for each: public key 32, sequence u64, hash 32, introduced u8, X25519 key 32 (zeros for none), name as text
//! (empty for none)
//! frames taken anew u32; for each: bytes
//! entries u64; for each: log u32 (its place in the list above), sequence u64, about u8, subject 16 (zeros for none), bytes
//! ```

use super::{Content, Covered, Ignored};
use crate::ledger::Read;
use std::collections::BTreeMap;
use vault::frame::PublicKey;
use vault::{Frame, FrameHash, Head, Subject, Zeroizing};

/// The format that this version writes and reads.
const FORMAT: u8 = 1;

/// Writes a checkpoint. Every entry is of one of its logs.
pub fn write<'a>(
    content: &Content,
    entries: impl Iterator<Item = &'a Read> + Clone,
) -> Zeroizing<Vec<u8>> {
    // Room for the whole at once, so that growing leaves no copy of what people said behind.
    let size: usize = entries.clone().map(|read| read.payload.len() + 33).sum();
    let anew: usize = content
        .anew
        .iter()
        .map(|frame| frame.bytes().len() + 4)
        .sum();
    let names: usize = content
        .logs
        .iter()
        .map(|log| log.introduced.as_ref().map_or(0, |(name, _)| name.len()) + 109)
        .sum();
    let mut out = Writer(Zeroizing::new(Vec::with_capacity(
        size + anew + names + 128,
    )));
    out.put(&[FORMAT, u8::from(content.roll.is_some())]);
    let (length, last) = content.roll.unwrap_or((0, FrameHash::NONE));
    out.put(&length.to_be_bytes());
    out.put(last.as_bytes());
    out.put(&content.witness.to_be_bytes());
    out.count(content.logs.len());
    for log in &content.logs {
        out.put(&log.key.bytes());
        out.put(&log.head.sequence.to_be_bytes());
        out.put(log.head.hash.as_bytes());
        let (name, exchange) = log.introduced.clone().unwrap_or_default();
        out.put(&[u8::from(log.introduced.is_some())]);
        out.put(&exchange);
        out.bytes(name.as_bytes());
    }
    out.count(content.anew.len());
    for frame in &content.anew {
        out.bytes(frame.bytes());
    }
    let places: BTreeMap<_, u32> = (0..)
        .zip(&content.logs)
        .map(|(place, log)| (log.device(), place))
        .collect();
    out.put(&(entries.clone().count() as u64).to_be_bytes());
    for read in entries {
        out.put(&places[&read.device].to_be_bytes());
        out.put(&read.sequence.to_be_bytes());
        out.put(&[u8::from(read.subject.is_some())]);
        out.put(
            read.subject
                .unwrap_or(Subject::from_bytes([0; 16]))
                .as_bytes(),
        );
        out.bytes(&read.payload);
    }
    out.0
}

/// Reads a checkpoint.
///
/// # Errors
///
/// Another format; bytes that make no sense.
pub fn read(bytes: &[u8]) -> Result<(Content, Vec<Read>), Ignored> {
    match bytes.first() {
        Some(&FORMAT) => {}
        Some(_) => return Err(Ignored::OtherFormat),
        None => return Err(Ignored::Damaged),
    }
    let mut rest = Reader(&bytes[1..]);
    let whole = rest.whole().filter(|_| rest.0.is_empty());
    whole.ok_or(Ignored::Damaged)
}

struct Writer(Zeroizing<Vec<u8>>);

impl Writer {
    fn put(&mut self, bytes: &[u8]) {
        self.0.extend_from_slice(bytes);
    }

    /// A list of more than four thousand million things fits into no device.
    fn count(&mut self, count: usize) {
        self.put(&(count as u32).to_be_bytes());
    }

    fn bytes(&mut self, bytes: &[u8]) {
        self.count(bytes.len());
        self.put(bytes);
    }
}

/// What is left to read.
struct Reader<'a>(&'a [u8]);

impl<'a> Reader<'a> {
    fn whole(&mut self) -> Option<(Content, Vec<Read>)> {
        let content = self.content()?;
        let entries = self.entries(&content)?;
        Some((content, entries))
    }

    fn content(&mut self) -> Option<Content> {
        let known = self.flag()?;
        let mark = (self.u64()?, FrameHash::from_bytes(self.array()?));
        let witness = self.u64()?;
        let count = self.u32()?;
        let logs: Vec<Covered> = (0..count).map(|_| self.log()).collect::<Option<_>>()?;
        let count = self.u32()?;
        let anew = (0..count)
            .map(|_| Frame::parse(self.bytes()?.to_vec()).ok())
            .collect::<Option<_>>()?;
        let in_order = logs.is_sorted_by(|one, next| one.device() < next.device());
        in_order.then_some(Content {
            roll: known.then_some(mark),
            logs,
            witness,
            anew,
        })
    }

    fn log(&mut self) -> Option<Covered> {
        let key = PublicKey::from_bytes(&self.array()?)?;
        let head = Head {
            sequence: self.u64()?,
            hash: FrameHash::from_bytes(self.array()?),
        };
        let introduced = self.flag()?;
        let exchange = self.array()?;
        let name = String::from_utf8(self.bytes()?.to_vec()).ok()?;
        Some(Covered {
            key,
            head,
            introduced: introduced.then_some((name, exchange)),
        })
    }

    fn entries(&mut self, content: &Content) -> Option<Vec<Read>> {
        let devices: Vec<_> = content.logs.iter().map(Covered::device).collect();
        let count = self.u64()?;
        (0..count).map(|_| self.entry(&devices)).collect()
    }

    fn entry(&mut self, devices: &[vault::DeviceId]) -> Option<Read> {
        let device = *devices.get(self.u32()? as usize)?;
        let sequence = self.u64()?;
        let about = self.flag()?;
        let subject = Subject::from_bytes(self.array()?);
        Some(Read {
            device,
            sequence,
            subject: about.then_some(subject),
            payload: self.bytes()?.to_vec(),
        })
    }

    fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        let (array, rest) = self.0.split_first_chunk()?;
        self.0 = rest;
        Some(*array)
    }

    fn bytes(&mut self) -> Option<&'a [u8]> {
        let length = self.u32()? as usize;
        let (bytes, rest) = self.0.split_at_checked(length)?;
        self.0 = rest;
        Some(bytes)
    }

    fn flag(&mut self) -> Option<bool> {
        match self.array()? {
            [0] => Some(false),
            [1] => Some(true),
            [_] => None,
        }
    }

    fn u32(&mut self) -> Option<u32> {
        self.array().map(u32::from_be_bytes)
    }

    fn u64(&mut self) -> Option<u64> {
        self.array().map(u64::from_be_bytes)
    }
}
