//! `lightround transpose`: the same lens with the other sign of cylinder.

use anyhow::{Result, bail};
use optics::{SphereCyl, limits};

/// Answers the words after `transpose`.
pub fn answer(words: &[String]) -> Result<String> {
    let [text] = words else {
        bail!("give one lens, in quotes: \"+2.00/-1.00x30\"");
    };
    let lens = SphereCyl::parse(text)?;
    limits::lens(&lens)?;
    Ok(format!("{}\n", lens.transposed()))
}
