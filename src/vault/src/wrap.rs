//! A key sealed under another key.

use crate::domains;
use crate::random::{NoRandomness, Source, draw};
use crate::secret::{Nonce, Secret, WontOpen};
use serde::{Deserialize, Serialize};

/// 32 secret bytes under another key: XChaCha20-Poly1305, the nonce beside it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Wrapped {
    #[serde(with = "serde_bytes")]
    nonce: Nonce,
    #[serde(with = "serde_bytes")]
    wrapped: [u8; 48],
}

impl Wrapped {
    /// Wraps `inner` for the use that `domain` names; `about` binds it to what it belongs to.
    pub fn wrap(
        outer: &Secret,
        inner: &Secret,
        domain: &str,
        about: &[&[u8]],
        source: &mut dyn Source,
    ) -> Result<Self, NoRandomness> {
        let nonce = draw(source)?;
        let sealed = outer.seal(&nonce, &domains::join(domain, about), inner.bytes());
        let wrapped = sealed.try_into().expect("32 bytes and a tag of 16 are 48");
        Ok(Self { nonce, wrapped })
    }

    /// The key inside.
    pub fn unwrap(
        &self,
        outer: &Secret,
        domain: &str,
        about: &[&[u8]],
    ) -> Result<Secret, WontOpen> {
        let plain = outer.open(&self.nonce, &domains::join(domain, about), &self.wrapped)?;
        plain
            .as_slice()
            .try_into()
            .map(Secret::from_bytes)
            .map_err(|_| WontOpen)
    }
}
