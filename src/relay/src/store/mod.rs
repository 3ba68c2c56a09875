//! Where the relay keeps what it carries: SQLite beside it, or PostgreSQL elsewhere.
//!
//! Both hold the same tables. Every key leads with the vault, a head is written in the transaction of the frames that it
//! comes from, and nothing is numbered across vaults, so the tables can be spread over machines by vault.

mod postgres;
mod sqlite;

pub use postgres::PostgresStore;
pub use sqlite::SqliteStore;

use std::path::Path;
use std::sync::Arc;
use sync::exchange::{FrameStore, StoreError, Why};
use vault::{DeviceId, FrameHash, Head, Statement, VaultId};

/// What became of opening a vault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opening {
    /// It is open, or was opened by the same statement before.
    Opened,
    /// There is no such invitation, or its time is over.
    NoInvitation,
    /// It was opened by another statement.
    Taken,
}

/// One line of the list of vaults.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Summary {
    /// The vault.
    pub vault: VaultId,
    /// When it was opened: milliseconds since 1970.
    pub opened: u64,
    /// Devices with a log.
    pub devices: u64,
    /// Frames in their logs.
    pub frames: u64,
    /// Bytes of those frames.
    pub bytes: u64,
    /// Frames that were set aside.
    pub aside: u64,
}

/// A store of frames with the relay's own affairs: invitations, and the list of vaults.
#[allow(
    clippy::missing_errors_doc,
    reason = "every method fails as StoreError says, and no other way"
)]
pub trait Desk: FrameStore {
    /// Keeps an invitation by the hash of its code, until `expires` (milliseconds since 1970).
    fn invite(&self, code: [u8; 32], expires: u64) -> Result<(), StoreError>;

    /// Uses an invitation up and opens a vault with the first statement of its roll.
    fn open_vault(
        &self,
        code: [u8; 32],
        now: u64,
        first: &Statement,
    ) -> Result<Opening, StoreError>;

    /// All vaults, in the order of their ids.
    fn vaults(&self) -> Result<Vec<Summary>, StoreError>;

    /// Erases a vault with all its logs, step by step: first nobody finds it any more, then its frames go, a few at a time
    /// so that nobody waits long. Tells how many frames there were; none where nothing of it was there. What an
    /// interruption leaves, the next call erases.
    fn erase(&self, vault: VaultId) -> Result<Option<u64>, StoreError>;

    /// Whether the store can be written to and read from.
    fn ready(&self) -> Result<(), StoreError>;
}

/// Opens the store that `place` names: an address that begins with `postgres://`, or else a file of SQLite's.
///
/// # Errors
///
/// It can't be reached, or is of a later version.
pub fn open(place: &str) -> Result<Arc<dyn Desk>, StoreError> {
    if is_database(place) {
        Ok(Arc::new(PostgresStore::open(place)?))
    } else {
        Ok(Arc::new(SqliteStore::open(Path::new(place))?))
    }
}

/// The same, but makes no new file: to look into one that isn't there would find it in good order.
///
/// # Errors
///
/// There is no such file, or as [`open`].
pub fn open_there(place: &str) -> Result<Arc<dyn Desk>, StoreError> {
    if is_database(place) || Path::new(place).exists() {
        open(place)
    } else {
        Err(StoreError::Failed(format!("there is no file {place}")))
    }
}

/// Whether a place is the address of a database, and not a file.
pub fn is_database(place: &str) -> bool {
    place.starts_with("postgres://") || place.starts_with("postgresql://")
}

/// Frames that are erased in one transaction.
const AT_A_TIME: u64 = 500;

/// Erases what `some` erases, which takes a number of frames and tells how many there were, until it finds no more.
fn to_the_end(mut some: impl FnMut(u64) -> Result<u64, StoreError>) -> Result<u64, StoreError> {
    let mut all = 0;
    loop {
        match some(AT_A_TIME)? {
            0 => return Ok(all),
            more => all += more,
        }
    }
}

/// Why a frame is aside, as it is kept.
fn why_number(why: Why) -> i16 {
    match why {
        Why::Fork => 1,
        Why::AfterRemoval => 2,
    }
}

fn why(number: i16) -> Result<Why, StoreError> {
    match number {
        1 => Ok(Why::Fork),
        2 => Ok(Why::AfterRemoval),
        other => Err(damaged("why a frame was set aside", &other)),
    }
}

/// Where the list of what was set aside is read from its beginning: no frame has the number 0.
const BEFORE_ALL: (DeviceId, Head) = (
    DeviceId::from_bytes([0; 16]),
    Head {
        sequence: 0,
        hash: FrameHash::NONE,
    },
);

/// Numbers of both databases are signed. No log gets that far; only questions do.
fn signed(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}

fn unsigned(number: i64) -> u64 {
    u64::try_from(number).unwrap_or(0)
}

fn fixed<const N: usize>(what: &str, bytes: &[u8]) -> Result<[u8; N], StoreError> {
    bytes
        .try_into()
        .map_err(|_| damaged(what, &format!("{} bytes", bytes.len())))
}

fn statement(bytes: &[u8]) -> Result<Statement, StoreError> {
    Statement::parse(bytes).map_err(|error| damaged("a statement of a roll", &error))
}

fn damaged(what: &str, how: &dyn std::fmt::Display) -> StoreError {
    StoreError::Damaged(format!("{what}: {how}"))
}

/// As many of these, from the first on, as fit into `room` bytes.
fn fitting(frames: Vec<Vec<u8>>, room: usize) -> Vec<Vec<u8>> {
    let mut left = room;
    let fits = |frame: &Vec<u8>| {
        left.checked_sub(frame.len())
            .inspect(|rest| left = *rest)
            .is_some()
    };
    frames.into_iter().take_while(fits).collect()
}
