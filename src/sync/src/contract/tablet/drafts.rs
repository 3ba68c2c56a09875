//! Drafts are kept by name, one under each.

use super::sample::{Sample, name};
use super::{Breach, promise};
use crate::storage::{Storage, StoredDraft};

cases! {
    there_is_no_draft_before_one_is_kept,
    a_draft_comes_back_as_it_was,
    a_draft_replaces_the_one_before,
    a_draft_is_no_frame,
    a_removed_draft_is_gone,
    removing_one_draft_leaves_the_others,
    removing_what_is_not_there_is_no_error,
    drafts_are_listed_in_the_order_of_their_names,
    an_empty_draft_is_a_draft,
    a_draft_of_a_million_bytes_is_kept_whole,
}

async fn there_is_no_draft_before_one_is_kept<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    promise(s.draft(name(2)).await?.is_none())
}

async fn a_draft_comes_back_as_it_was<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    promise(s.draft(name(1)).await?.as_deref() == Some(b"one"))
}

async fn a_draft_replaces_the_one_before<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"the first").await?;
    s.put_draft(name(1), b"two").await?;
    promise(s.draft(name(1)).await?.as_deref() == Some(b"two") && s.drafts().await?.len() == 1)
}

async fn a_draft_is_no_frame<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    promise(s.vector().await?.is_empty() && s.head(sample.device()).await?.is_none())
}

async fn a_removed_draft_is_gone<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    s.remove_draft(name(1)).await?;
    promise(s.draft(name(1)).await?.is_none() && s.drafts().await?.is_empty())
}

async fn removing_one_draft_leaves_the_others<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    s.put_draft(name(2), b"two").await?;
    s.remove_draft(name(1)).await?;
    promise(s.draft(name(2)).await?.as_deref() == Some(b"two"))
}

async fn removing_what_is_not_there_is_no_error<S: Storage>(
    s: &S,
    _: &Sample,
) -> Result<(), Breach> {
    Ok(s.remove_draft(name(1)).await?)
}

async fn drafts_are_listed_in_the_order_of_their_names<S: Storage>(
    s: &S,
    _: &Sample,
) -> Result<(), Breach> {
    let draft = |byte| StoredDraft {
        name: name(byte),
        sealed: vec![byte; 300],
    };
    for byte in [200, 3, 90] {
        s.put_draft(name(byte), &draft(byte).sealed).await?;
    }
    promise(s.drafts().await? == [draft(3), draft(90), draft(200)])
}

async fn an_empty_draft_is_a_draft<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"").await?;
    promise(s.draft(name(1)).await?.as_deref() == Some(b""))
}

async fn a_draft_of_a_million_bytes_is_kept_whole<S: Storage>(
    s: &S,
    _: &Sample,
) -> Result<(), Breach> {
    let sealed: Vec<u8> = (0..1_000_000_u32).map(|at| (at % 251) as u8).collect();
    s.put_draft(name(1), &sealed).await?;
    promise(s.draft(name(1)).await? == Some(sealed))
}
