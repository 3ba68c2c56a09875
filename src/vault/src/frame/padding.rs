//! Lengths tell less when they come in classes.
//!
//! A padded plaintext is `length u32 BE || payload || zeros` and 256 · 2^k bytes long, k from 0 to 11: 256 B to 512 KiB.
//! The smallest class that holds it is used. So a watcher learns the length of an entry to within a factor of two.

/// The smallest class.
pub const SMALLEST: usize = 256;
/// The largest class; a frame stays well within the 1 MiB that one exchange carries.
pub const LARGEST: usize = 512 * 1024;
/// Bytes of the length before the payload.
const PREFIX: usize = 4;
/// The longest payload of a frame, in bytes.
pub const LONGEST_PAYLOAD: usize = LARGEST - PREFIX;

/// Whether a padded plaintext may be this long.
pub fn is_class(length: usize) -> bool {
    (SMALLEST..=LARGEST).contains(&length) && length.is_power_of_two()
}

/// The payload in its class; none where it is longer than [`LONGEST_PAYLOAD`].
pub fn pad(payload: &[u8]) -> Option<Vec<u8>> {
    if payload.len() > LONGEST_PAYLOAD {
        return None;
    }
    let class = (payload.len() + PREFIX).next_power_of_two().max(SMALLEST);
    let mut padded = Vec::with_capacity(class);
    padded.extend_from_slice(&(payload.len() as u32).to_be_bytes());
    padded.extend_from_slice(payload);
    padded.resize(class, 0);
    Some(padded)
}

/// The payload of a padded plaintext; none where the length lies, the padding is not zero, or a smaller class would do.
pub fn unpad(padded: &[u8]) -> Option<&[u8]> {
    let (prefix, rest) = padded.split_first_chunk::<PREFIX>()?;
    let length = u32::from_be_bytes(*prefix) as usize;
    let (payload, zeros) = rest.split_at_checked(length)?;
    let snug = padded.len() == (length + PREFIX).next_power_of_two().max(SMALLEST);
    (snug && zeros.iter().all(|byte| *byte == 0)).then_some(payload)
}
