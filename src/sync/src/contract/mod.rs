//! What every [`Storage`] promises, as cases to run against it: in a test, or in a browser.
//!
//! ```
//! use sync::{MemoryStorage, contract};
//!
//! let outcomes = contract::run(async || Ok(MemoryStorage::new()));
//! let outcomes = futures::executor::block_on(outcomes)?;
//! assert!(outcomes.iter().all(|outcome| outcome.ended.is_ok()));
//! # Ok::<(), contract::NoSample>(())
//! ```

mod appends;
mod copies;
mod drafts;
mod emptied;
mod founding;
mod keyfile;
mod pages;
mod pieces;
mod renewal;
mod sample;
mod wiping;

pub use sample::NoSample;

use crate::storage::{Storage, StorageError};
use sample::Sample;

/// What became of one case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// The promise, as a sentence with `_` between its words.
    pub case: &'static str,
    /// Whether it was kept.
    pub ended: Result<(), Breach>,
}

/// A promise that was not kept.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Breach {
    /// It did something else than was promised.
    #[error("the storage does not keep this promise")]
    Broken,
    /// It failed where it must not.
    #[error("the storage fails: {0}")]
    Storage(#[from] StorageError),
}

/// A case for each name, every one on a storage of its own.
macro_rules! cases {
    ($fresh:ident, $sample:ident: $($part:ident { $($case:ident,)* })*) => {
        vec![$($(Outcome {
            case: stringify!($case),
            ended: match $fresh().await {
                Ok(storage) => $part::$case(&storage, $sample).await,
                Err(error) => Err(error.into()),
            },
        },)*)*]
    };
}

/// Runs every case, each on a storage that `fresh` gives, which is empty.
///
/// # Errors
///
/// There are no frames to try a storage with.
pub async fn run<S: Storage>(
    fresh: impl AsyncFn() -> Result<S, StorageError>,
) -> Result<Vec<Outcome>, NoSample> {
    let sample = &Sample::make()?;
    Ok(cases!(fresh, sample:
        founding {
            nothing_is_there_at_first,
            founding_keeps_the_key_file,
            founding_begins_the_log,
            a_second_founding_is_refused,
            a_refused_founding_leaves_the_key_file,
            a_refused_founding_leaves_the_logs,
            no_vault_is_founded_over_frames,
            a_founding_over_frames_keeps_no_key_file,
            no_vault_is_founded_over_a_key_file,
            a_founding_over_a_key_file_begins_no_log,
            drafts_and_a_roll_may_be_there_before_the_vault,
        }
        keyfile {
            a_key_file_replaces_the_one_before,
            a_key_file_replaces_nothing_else,
            a_shorter_key_file_leaves_nothing_of_the_longer,
        }
        wiping {
            wiping_removes_the_key_file,
            wiping_removes_the_logs,
            wiping_removes_the_drafts,
            wiping_removes_the_checkpoint,
            wiping_removes_the_roll,
            wiping_removes_the_mark_of_a_copy,
            a_wiped_storage_can_be_founded_again,
            wiping_what_is_empty_is_no_error,
        }
        appends {
            the_head_is_the_newest_frame,
            an_append_moves_the_head,
            frames_come_back_as_they_were,
            several_appends_make_one_log,
            an_append_leaves_other_logs,
            the_largest_frame_is_kept_whole,
            an_append_to_a_log_that_is_not_there_is_refused,
            an_append_that_expects_no_log_is_refused,
            an_append_after_an_older_head_is_refused,
            an_append_after_a_later_head_is_refused,
            an_append_after_a_fork_is_refused,
            a_refused_append_leaves_the_head,
            a_refused_append_leaves_the_frames,
            of_two_appends_at_once_one_is_kept,
            an_append_drops_the_drafts_that_it_names,
            an_append_leaves_the_other_drafts,
            an_append_may_name_a_draft_that_is_not_there,
            a_refused_append_drops_no_draft,
            an_append_of_no_frames_drops_drafts,
            an_append_of_no_frames_leaves_the_head,
            an_append_of_no_frames_is_refused_at_another_head,
        }
        pages {
            a_page_has_no_more_than_was_asked_for,
            a_page_begins_where_it_was_asked_to,
            the_last_page_has_what_is_left,
            nothing_comes_after_the_last_page,
            a_page_of_no_frames_is_empty,
            a_page_from_0_begins_at_the_first_frame,
            a_page_from_the_greatest_number_is_empty,
            a_page_is_of_one_device,
            a_page_of_an_unknown_device_is_empty,
            a_long_log_is_in_order,
            an_unknown_device_has_no_head,
            the_vector_has_every_log_in_order,
        }
        pieces {
            a_checkpoint_comes_back_in_order,
            a_checkpoint_replaces_all_of_the_one_before,
            a_checkpoint_of_no_pieces_is_none,
            an_empty_piece_is_a_piece,
            a_checkpoint_changes_no_log,
            a_roll_comes_back_in_order,
            a_roll_replaces_all_of_the_one_before,
            a_roll_changes_no_checkpoint,
        }
        emptied {
            what_stays_of_a_frame_stands_in_its_place,
            nothing_is_put_where_no_frame_was,
            emptying_leaves_the_heads,
            emptying_drops_the_checkpoint,
            emptying_leaves_the_drafts,
            emptying_twice_is_emptying_once,
            a_log_with_emptied_frames_goes_on,
        }
        copies {
            what_is_marked_as_a_copy_stays_so,
            marking_twice_is_no_error,
            a_mark_leaves_the_key_file,
        }
        renewal {
            another_identity_has_its_key_file,
            another_identity_begins_its_log,
            the_old_log_ends_where_it_should,
            the_old_log_may_stay_whole,
            the_old_log_may_go_whole,
            another_identity_is_no_copy,
            another_identity_has_no_checkpoint_yet,
            another_identity_keeps_the_drafts,
            another_identity_keeps_the_roll,
            another_identity_goes_on_with_its_log,
            another_identity_is_refused_at_another_head,
            a_refused_identity_leaves_the_key_file,
            a_refused_identity_leaves_the_logs,
            a_refused_identity_leaves_the_mark_of_a_copy,
        }
        drafts {
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
    ))
}

/// What a case comes to: whether what was promised is so.
fn promise(kept: bool) -> Result<(), Breach> {
    if kept { Ok(()) } else { Err(Breach::Broken) }
}
