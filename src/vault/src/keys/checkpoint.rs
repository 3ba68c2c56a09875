//! Checkpoints: what a device has read of its vault, sealed for itself so that it needn't read it all again.
//!
//! Large, so it is a STREAM (Hoang, Reyhanitabar, Rogaway and Vizár, 2015) of chunks: none can be altered, exchanged, left
//! out at the end or added without it being seen. Its pieces, in order, are the chunks' ciphertexts, the first one after
//! the header.
//!
//! | bytes of the header | what                                |
//! |---------------------|-------------------------------------|
//! | 0                   | format: 1                           |
//! | 1                   | algorithm: 1 (XChaCha20-Poly1305)   |
//! | 2..18               | id of the epoch key                 |
//! | 18..37              | the beginning of all nonces, random |
//!
//! A chunk is 65,536 bytes of plaintext, the last one as many as are left, from none to 65,536; its nonce is the beginning, the number of the chunk
//! (u32, from 0) and a byte: 1 for the last chunk, else 0. Associated data of every chunk: `"lightround v1 checkpoint" || 0
//! || vault id || device id || header`. The key is `HKDF-SHA256(epoch key, info = "lightround v1 content checkpoint" || 0
//! || device id || key id)`.

use super::Keys;
use super::content::derive_content;
use crate::domains;
use crate::ids::KeyId;
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::{Nonce, TAG};
use zeroize::Zeroizing;

const FORMAT: u8 = 1;
const ALGORITHM: u8 = 1;
/// Bytes of a whole chunk of plaintext.
const CHUNK: usize = 64 * 1024;
/// Bytes before the first chunk.
const HEADER: usize = 37;
/// Bytes of the header before the nonces' beginning.
const PREFIX: usize = 18;

/// Why a checkpoint doesn't open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CheckpointError {
    /// Of a format or with an algorithm that this version doesn't know.
    #[error("it was made by another version")]
    Format,
    /// Under a key that is not here.
    #[error("it was made with other keys")]
    UnknownKey,
    /// Altered, cut short, or another device's.
    #[error("it is damaged")]
    Opaque,
}

impl Keys {
    /// Seals a checkpoint for this device: pieces to keep in order.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn seal_checkpoint(&self, plain: &[u8]) -> Result<Vec<Vec<u8>>, NoRandomness> {
        self.seal_checkpoint_from(plain, &mut System)
    }

    pub(crate) fn seal_checkpoint_from(
        &self,
        plain: &[u8],
        source: &mut dyn Source,
    ) -> Result<Vec<Vec<u8>>, NoRandomness> {
        let epoch = self.current();
        let mut header = [0; HEADER];
        header[..2].copy_from_slice(&[FORMAT, ALGORITHM]);
        header[2..PREFIX].copy_from_slice(epoch.id.as_bytes());
        header[PREFIX..].copy_from_slice(&draw::<{ HEADER - PREFIX }>(source)?);
        let key = derive_content(
            &epoch.key,
            domains::CONTENT_CHECKPOINT,
            self.device(),
            epoch.id,
        );
        let about = self.checkpoint_about(&header);
        // No plaintext at all is one empty chunk.
        let count = plain.len().div_ceil(CHUNK).max(1);
        let chunks = (0..count).map(|number| {
            let chunk = &plain[number * CHUNK..plain.len().min((number + 1) * CHUNK)];
            let sealed = key.seal(&nonce(&header, number, number + 1 == count), &about, chunk);
            match number {
                0 => [header.as_slice(), &sealed].concat(),
                _ => sealed,
            }
        });
        Ok(chunks.collect())
    }

    /// Opens a checkpoint.
    ///
    /// # Errors
    ///
    /// It doesn't open as a whole; nothing of it is given then.
    pub fn open_checkpoint(
        &self,
        pieces: &[Vec<u8>],
    ) -> Result<Zeroizing<Vec<u8>>, CheckpointError> {
        let (first, rest) = pieces.split_first().ok_or(CheckpointError::Opaque)?;
        let (header, chunk) = first
            .split_first_chunk::<HEADER>()
            .ok_or(CheckpointError::Opaque)?;
        if header[..2] != [FORMAT, ALGORITHM] {
            return Err(CheckpointError::Format);
        }
        let mut id = [0; 16];
        id.copy_from_slice(&header[2..PREFIX]);
        let epoch = self
            .epoch_by_id(KeyId::from_bytes(id))
            .ok_or(CheckpointError::UnknownKey)?;
        let key = derive_content(
            &epoch.key,
            domains::CONTENT_CHECKPOINT,
            self.device(),
            epoch.id,
        );
        let about = self.checkpoint_about(header);
        // Room for the whole at once, so that growing leaves no copy behind.
        let room = pieces.iter().map(Vec::len).sum();
        let mut plain = Zeroizing::new(Vec::with_capacity(room));
        let chunks = std::iter::once(chunk).chain(rest.iter().map(Vec::as_slice));
        for (number, sealed) in chunks.enumerate() {
            let last = number == rest.len();
            if !last && sealed.len() != CHUNK + TAG {
                return Err(CheckpointError::Opaque);
            }
            let opened = key
                .open(&nonce(header, number, last), &about, sealed)
                .map_err(|_| CheckpointError::Opaque)?;
            plain.extend_from_slice(&opened);
        }
        Ok(plain)
    }

    fn checkpoint_about(&self, header: &[u8; HEADER]) -> Vec<u8> {
        let (vault, device) = (self.vault(), self.device());
        domains::join(
            domains::CHECKPOINT,
            &[vault.as_bytes(), device.as_bytes(), header],
        )
    }
}

/// The nonce of a chunk. A checkpoint of 2^32 chunks would have 256 TiB.
fn nonce(header: &[u8; HEADER], number: usize, last: bool) -> Nonce {
    let mut nonce = [0; 24];
    nonce[..19].copy_from_slice(&header[PREFIX..]);
    nonce[19..23].copy_from_slice(&(number as u32).to_be_bytes());
    nonce[23] = u8::from(last);
    nonce
}
