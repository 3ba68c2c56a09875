//! The key file is one, and is replaced whole.

use super::sample::Sample;
use super::{Breach, promise};
use crate::storage::Storage;

cases! {
    a_key_file_replaces_the_one_before,
    a_key_file_replaces_nothing_else,
    a_shorter_key_file_leaves_nothing_of_the_longer,
}

async fn a_key_file_replaces_the_one_before<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    sample.found(s, 1).await?;
    s.put_key_file(b"another").await?;
    promise(s.key_file().await?.as_deref() == Some(b"another"))
}

async fn a_key_file_replaces_nothing_else<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    sample.found(s, 3).await?;
    s.put_key_file(b"another").await?;
    promise(s.vector().await? == [(sample.device(), sample.log[2].head())])
}

async fn a_shorter_key_file_leaves_nothing_of_the_longer<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    let long = vec![7; 100_000];
    sample.found(s, 1).await?;
    s.put_key_file(&long).await?;
    let before = s.key_file().await?;
    s.put_key_file(&long[..10]).await?;
    promise(before.as_ref() == Some(&long) && s.key_file().await?.as_deref() == Some(&long[..10]))
}
