//! The checkpoint and the roll: two lists, each replaced as a whole.

use super::sample::Sample;
use super::{Breach, promise};
use crate::storage::Storage;

cases! {
    a_checkpoint_comes_back_in_order,
    a_checkpoint_replaces_all_of_the_one_before,
    a_checkpoint_of_no_pieces_is_none,
    an_empty_piece_is_a_piece,
    a_checkpoint_changes_no_log,
    a_roll_comes_back_in_order,
    a_roll_replaces_all_of_the_one_before,
    a_roll_changes_no_checkpoint,
}

/// More pieces than one digit numbers.
fn pieces() -> Vec<Vec<u8>> {
    (0..12).map(|piece| vec![piece; 300]).collect()
}

async fn a_checkpoint_comes_back_in_order<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_checkpoint(&pieces()).await?;
    promise(s.checkpoint().await? == pieces())
}

async fn a_checkpoint_replaces_all_of_the_one_before<S: Storage>(
    s: &S,
    _: &Sample,
) -> Result<(), Breach> {
    s.put_checkpoint(&pieces()).await?;
    s.put_checkpoint(&pieces()[3..5]).await?;
    promise(s.checkpoint().await? == pieces()[3..5])
}

async fn a_checkpoint_of_no_pieces_is_none<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_checkpoint(&pieces()).await?;
    s.put_checkpoint(&[]).await?;
    promise(s.checkpoint().await?.is_empty())
}

async fn an_empty_piece_is_a_piece<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    let pieces = [vec![1], vec![], vec![3]];
    s.put_checkpoint(&pieces).await?;
    promise(s.checkpoint().await? == pieces)
}

async fn a_checkpoint_changes_no_log<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 7).await?;
    s.put_checkpoint(&pieces()).await?;
    promise(s.vector().await? == [(sample.device(), sample.log[6].head())])
}

async fn a_roll_comes_back_in_order<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_roll(&pieces()).await?;
    promise(s.roll().await? == pieces())
}

async fn a_roll_replaces_all_of_the_one_before<S: Storage>(
    s: &S,
    _: &Sample,
) -> Result<(), Breach> {
    s.put_roll(&pieces()).await?;
    s.put_roll(&pieces()[..2]).await?;
    promise(s.roll().await? == pieces()[..2])
}

async fn a_roll_changes_no_checkpoint<S: Storage>(s: &S, _: &Sample) -> Result<(), Breach> {
    s.put_checkpoint(&pieces()[..3]).await?;
    s.put_roll(&pieces()).await?;
    promise(s.checkpoint().await? == pieces()[..3])
}
