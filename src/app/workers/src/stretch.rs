//! To and from the worker that stretches.

use crate::{READY, message};
use js_sys::Uint8Array;
use vault::{SlotKey, StretchParams};
use wasm_bindgen::JsValue;
use zeroize::{Zeroize, Zeroizing};

/// What the page asks.
pub struct StretchRequest {
    /// As it was typed.
    pub passphrase: Zeroizing<String>,
    /// As the key file says.
    pub params: StretchParams,
}

/// What the worker says.
pub enum StretchAnswer {
    /// It can be asked now.
    Ready,
    /// The key.
    Key(SlotKey),
    /// Why there is none, in a sentence.
    Failed(String),
}

impl StretchRequest {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        let StretchParams {
            salt,
            memory_kib,
            passes,
            lanes,
        } = self.params;
        message::question(&[
            ("passphrase", self.passphrase.as_str().into()),
            ("salt", Uint8Array::from(salt.as_slice()).into()),
            ("memory", memory_kib.into()),
            ("passes", passes.into()),
            ("lanes", lanes.into()),
        ])
    }

    /// Reads a message; none where it is no such request.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        Some(Self {
            passphrase: Zeroizing::new(message::text(message, "passphrase")?),
            params: StretchParams {
                salt: message::bytes(message, "salt")?,
                memory_kib: message::whole(message, "memory")?,
                passes: message::whole(message, "passes")?,
                lanes: message::whole(message, "lanes")?,
            },
        })
    }
}

impl StretchAnswer {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        match self {
            Self::Ready => crate::ready(),
            Self::Key(key) => {
                let mut bytes = key.to_bytes();
                let message = message::object(&[
                    ("kind", "key".into()),
                    ("key", Uint8Array::from(bytes.as_slice()).into()),
                ]);
                bytes.zeroize();
                message
            }
            Self::Failed(sentence) => {
                message::object(&[("kind", "failed".into()), ("sentence", sentence.into())])
            }
        }
    }

    /// Reads a message; none where it is no such answer.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        match message::text(message, "kind")?.as_str() {
            READY => Some(Self::Ready),
            "key" => message::bytes(message, "key")
                .map(SlotKey::from_bytes)
                .map(Self::Key),
            "failed" => message::text(message, "sentence").map(Self::Failed),
            _ => None,
        }
    }
}
