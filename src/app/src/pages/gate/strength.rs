//! How hard a typed passphrase is to guess, asked of a worker so that typing never waits.

use crate::edge::stretch;

/// What to show under a typed passphrase.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Strength {
    /// 0 (falls at once) to 4 (out of reach).
    pub score: u8,
    /// The same in words, with what would help.
    pub sentence: String,
}

/// The strength of a passphrase; none where nothing is typed or the worker can't answer.
pub async fn strength_of(passphrase: &str) -> Option<Strength> {
    if passphrase.is_empty() {
        return None;
    }
    if let Err(refused) = vault::phrase::check(passphrase) {
        return Some(Strength {
            score: 0,
            sentence: refused.to_string(),
        });
    }
    let found = stretch::strength(passphrase).await.ok()?;
    Some(Strength {
        score: found.score,
        sentence: found.hint,
    })
}
