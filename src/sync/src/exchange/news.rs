//! What a relay says by itself: that there is something new. What it is, a round finds out.

use vault::VaultId;

/// The method of the request; its body is empty.
pub const METHOD: &str = "GET";
/// The type of the stream.
pub const TYPE: &str = "text/event-stream";

/// Where it is asked for, after the host.
pub fn path(vault: VaultId) -> String {
    format!("/relay/v1/vaults/{vault}/news")
}

/// A stream of events, as its bytes come in.
///
/// An event ends with an empty line (HTML Living Standard, section 9.2.6); comments, and whatever else a later relay may say,
/// are passed over.
///
/// ```
/// use sync::exchange::news::Events;
///
/// let mut events = Events::default();
/// assert!(!events.is_new(b": still here\n\nevent: new\nda"));
/// assert!(events.is_new(b"ta: new\n\n"));
/// ```
#[derive(Clone, Debug, Default)]
pub struct Events {
    line: Vec<u8>,
    named_new: bool,
    has_data: bool,
}

/// Bytes of the longest line that is kept while it comes: an event of ours has far less.
const LONGEST: usize = 1_000;

impl Events {
    /// Takes what came, and tells whether an event of something new ended in it.
    pub fn is_new(&mut self, bytes: &[u8]) -> bool {
        let mut new = false;
        for byte in bytes {
            match byte {
                // A line ends with either or both; the empty line between two of them ends nothing twice.
                b'\n' => new |= self.line_ends(),
                b'\r' => {}
                byte if self.line.len() < LONGEST => self.line.push(*byte),
                _ => {}
            }
        }
        new
    }

    fn line_ends(&mut self) -> bool {
        let line = std::mem::take(&mut self.line);
        let (field, value) = match line.iter().position(|byte| *byte == b':') {
            Some(at) => (&line[..at], line[at + 1..].trim_ascii_start()),
            None => (&line[..], &[][..]),
        };
        match field {
            b"event" => self.named_new = value == b"new",
            b"data" => self.has_data = true,
            b"" if line.is_empty() => {
                let new = self.named_new && self.has_data;
                (self.named_new, self.has_data) = (false, false);
                return new;
            }
            _ => {}
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(text: &[u8]) -> usize {
        let mut events = Events::default();
        let each = text.iter().filter(|byte| events.is_new(&[**byte]));
        each.count()
    }

    #[test]
    fn the_address_names_the_vault() {
        let path = path(VaultId::from_bytes([0x0a; 16]));
        assert_eq!(path, format!("/relay/v1/vaults/{}/news", "0a".repeat(16)));
    }

    // HTML Living Standard, section 9.2.6: an event is dispatched at an empty line, and not where its data is empty; a colon
    // begins a comment; what it doesn't name is passed over; what ends without an empty line is no event.
    #[test]
    fn an_event_counts_once_it_has_ended() {
        assert_eq!(all(b"event: new\ndata: new\n\n"), 1);
        assert_eq!(all(b"event:new\r\ndata:new\r\n\r\n"), 1);
        assert_eq!(
            all(b"event: new\ndata: new\n\nevent: new\ndata: new\n\n"),
            2
        );
        assert_eq!(all(b"event: new\ndata: new\n"), 0);
        assert_eq!(all(b"event: new\n\n"), 0);
        assert_eq!(all(b": still here\n\n"), 0);
        assert_eq!(all(b"event: later\ndata: new\n\n"), 0);
        assert_eq!(all(b"id: 7\nretry: 10\nevent: new\ndata: new\n\n"), 1);
    }

    #[test]
    fn a_line_without_end_takes_no_room() {
        let mut events = Events::default();
        for _ in 0..10_000 {
            assert!(!events.is_new(&[b'x'; 100]));
        }
        assert!(events.line.capacity() < 4 * LONGEST);
        assert!(!events.is_new(b"\n\n"));
        assert!(events.is_new(b"event: new\ndata: new\n\n"));
    }
}
