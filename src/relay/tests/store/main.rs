//! What every store promises: that it keeps frames as every place does (`keeping`), and what only a relay's store promises
//! beyond that (`cases`). Both run over all of them: in memory, SQLite, PostgreSQL.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod cases;
#[path = "../common/cluster.rs"]
mod cluster;
mod copies;
mod keeping;
mod only_postgres;
mod only_sqlite;
mod plans;
mod sample;
mod weighed;

use lightround_relay::store::{Desk, Opening, PostgresStore, SqliteStore};
use sample::Vault;
use std::path::PathBuf;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU64, Ordering};
use sync::exchange::{FrameStore, MemoryStore};
use vault::Statement;

/// A store to try, and how a vault is opened in it.
trait Place: FrameStore {
    fn open(&self, first: &Statement);
}

impl Place for MemoryStore {
    fn open(&self, first: &Statement) {
        assert!(self.open_vault(first));
    }
}

impl Place for SqliteStore {
    fn open(&self, first: &Statement) {
        invited(self, first);
    }
}

impl Place for PostgresStore {
    fn open(&self, first: &Statement) {
        invited(self, first);
    }
}

/// Later than any test's time: whoever opens a vault sweeps out what has ended meanwhile, of every test on one database.
const ENDS: u64 = 100;

fn invited(desk: &impl Desk, first: &Statement) {
    let code = *first.hash().as_bytes();
    desk.invite(code, ENDS).unwrap();
    assert_eq!(desk.open_vault(code, 1, first), Ok(Opening::Opened));
}

fn memory() -> MemoryStore {
    MemoryStore::new()
}

fn sqlite() -> SqliteStore {
    SqliteStore::open(&fresh_file()).unwrap()
}

/// One database for all: its tests keep to vaults of their own, as strangers on one relay do.
fn postgres() -> PostgresStore {
    static MADE: OnceLock<()> = OnceLock::new();
    let address = cluster::address("suite");
    MADE.get_or_init(|| drop(PostgresStore::open(&address).unwrap()));
    PostgresStore::open(&address).unwrap()
}

fn fresh_file() -> PathBuf {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    let number = COUNT.fetch_add(1, Ordering::Relaxed);
    let folder = std::env::temp_dir().join(format!("lightround-store-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(format!("{number}.sqlite"));
    for ending in ["", "-wal", "-shm"] {
        let _ = std::fs::remove_file(format!("{}{ending}", file.display()));
    }
    file
}

/// Every case over every store.
macro_rules! suite {
    ($stores:tt: $($part:ident { $($case:ident),* $(,)? })*) => {
        $($(over!($stores $part $case);)*)*
    };
}

/// One case over these stores.
macro_rules! over {
    ([$($store:ident),*] $part:ident $case:ident) => {
        mod $case {
            $(#[test]
            fn $store() {
                crate::cases::$part::$case(&crate::$store(), &mut crate::Vault::new());
            })*
        }
    };
}

suite!([memory, sqlite, postgres]:
    heads {
        an_unknown_vault_has_nothing,
        an_open_vault_has_a_roll_and_no_logs,
        vaults_share_nothing,
    }
    at_once {
        of_many_at_once_one_comes_first,
        many_logs_grow_at_once,
        one_log_grows_by_many_hands,
    }
    ranges {
        a_range_has_no_more_bytes_than_asked_for,
        a_long_range_has_no_more_bytes_than_asked_for,
        a_range_that_fits_exactly_is_whole,
        a_range_without_room_is_empty,
        hashes_are_those_of_the_frames,
        hashes_stop_where_they_are_asked_to,
        hashes_after_the_end_are_none,
        hashes_from_a_number_beyond_all_are_none,
        hashes_are_of_one_device,
    }
    rolls {
        a_roll_is_in_order,
        a_roll_takes_only_the_next_number,
        a_roll_of_no_vault_takes_nothing,
        of_two_next_statements_one_comes_first,
    }
    asides {
        nothing_is_aside_at_first,
        what_is_aside_is_in_no_log,
        the_same_frame_is_aside_once,
        two_frames_of_one_number_are_both_aside,
        aside_is_in_order_and_cut,
        aside_goes_on_where_it_was_cut,
        aside_is_by_vault,
        size_counts_logs_and_what_is_aside,
        size_counts_nothing_that_was_refused,
    }
    erased {
        what_is_emptied_stays_in_its_place,
        emptying_twice_is_emptying_once,
        a_log_with_emptied_frames_goes_on,
        emptied_frames_are_appended_as_any,
        another_frame_of_that_number_stays,
        emptying_what_is_not_there_leaves_nothing,
        what_comes_under_an_erased_key_is_kept_emptied,
        what_is_set_aside_under_an_erased_key_is_kept_emptied,
        a_frame_that_holds_an_erased_key_is_known_by_its_place,
        erased_keys_are_by_vault,
    }
);

suite!([sqlite, postgres]:
    desks {
        an_invitation_opens_one_vault,
        an_invitation_ends,
        a_code_that_was_never_given_opens_nothing,
        the_same_opening_again_is_a_success,
        another_opening_of_the_same_vault_is_refused,
        a_refused_opening_uses_nothing_up,
        of_many_at_once_one_uses_the_invitation,
        the_list_counts_what_is_there,
        an_erased_vault_is_gone_and_others_stay,
        what_an_interruption_left_is_erased_by_the_next,
        a_store_is_ready,
    }
);
