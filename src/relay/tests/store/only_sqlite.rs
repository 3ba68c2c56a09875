//! What only a file can be asked: what is in it after a crash, and in a file that is something else.

use crate::sample::{Vault, bytes, run};
use crate::{fresh_file, invited};
use lightround_relay::store::{Desk, SqliteStore};
use rusqlite::Connection;
use std::fs;
use sync::exchange::{Appended, FrameStore, StoreError};

#[test]
fn everything_is_there_after_reopening() {
    let file = fresh_file();
    let mut vault = Vault::new();
    let ([first, second], log) = (vault.statements(), vault.log(3));
    let store = SqliteStore::open(&file).unwrap();
    invited(&store, &first);
    store.extend_roll(&second).unwrap();
    store.append(&run(&log)).unwrap();
    drop(store);
    let store = SqliteStore::open(&file).unwrap();
    assert_eq!(store.roll(vault.id), Ok(vec![first, second]));
    assert_eq!(
        store.range(vault.id, vault.device(0), 1, 9, 9999),
        Ok(bytes(&log))
    );
}

/// What a relay that is killed leaves behind: the file and its log, copied while it runs.
#[test]
fn what_was_acknowledged_is_in_the_files_at_once() {
    let (file, copy) = (fresh_file(), fresh_file());
    let mut vault = Vault::new();
    let log = vault.log(5);
    let store = SqliteStore::open(&file).unwrap();
    for at in 0..log.len() {
        store.append(&run(&log[at..=at])).unwrap();
        for ending in ["", "-wal"] {
            let name = |path: &std::path::Path| format!("{}{ending}", path.display());
            fs::copy(name(&file), name(&copy)).unwrap();
        }
        let killed = SqliteStore::open(&copy).unwrap();
        assert_eq!(
            killed.head(vault.id, vault.device(0)),
            Ok(Some(log[at].head()))
        );
        drop(killed);
    }
}

#[test]
fn the_file_is_set_up_to_survive_a_loss_of_power() {
    let file = fresh_file();
    let store = SqliteStore::open(&file).unwrap();
    let connection = Connection::open(&file).unwrap();
    let mode: String = connection
        .pragma_query_value(None, "journal_mode", |row| row.get(0))
        .unwrap();
    assert_eq!(mode, "wal");
    drop(store);
}

#[test]
fn a_file_of_an_earlier_version_is_brought_up_to_date_with_what_it_holds() {
    let file = fresh_file();
    let mut vault = Vault::new();
    let log = vault.log(2);
    SqliteStore::open(&file)
        .unwrap()
        .append(&run(&log))
        .unwrap();
    Connection::open(&file)
        .unwrap()
        .execute_batch("DROP INDEX invitation_expires; DROP TABLE erased; PRAGMA user_version = 1")
        .unwrap();
    let store = SqliteStore::open(&file).unwrap();
    let index = "SELECT count(*) FROM sqlite_schema WHERE name = 'invitation_expires'";
    let there: i64 = Connection::open(&file)
        .unwrap()
        .query_row(index, [], |row| row.get(0))
        .unwrap();
    assert_eq!(there, 1);
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(Some(log[1].head()))
    );
}

#[test]
fn a_file_of_a_later_version_is_left_alone() {
    let file = fresh_file();
    drop(SqliteStore::open(&file).unwrap());
    Connection::open(&file)
        .unwrap()
        .pragma_update(None, "user_version", 99)
        .unwrap();
    let refused = SqliteStore::open(&file).unwrap_err();
    assert!(refused.to_string().contains("version 99"), "{refused}");
}

#[test]
fn a_file_that_is_no_database_is_left_alone() {
    let file = fresh_file();
    let text =
        "a letter that somebody wrote, long enough to be taken for a page of a database".repeat(99);
    fs::write(&file, &text).unwrap();
    assert!(matches!(
        SqliteStore::open(&file),
        Err(StoreError::Damaged(_))
    ));
    assert_eq!(fs::read_to_string(&file).unwrap(), text);
}

/// A piece of work that fails takes nothing with it that waited in the same transaction.
#[test]
fn a_failed_write_undoes_only_itself() {
    let file = fresh_file();
    let store = SqliteStore::open(&file).unwrap();
    store.invite([1; 32], 5).unwrap();
    assert!(store.invite([1; 32], 5).is_err(), "a code is given once");
    let mut vault = Vault::new();
    assert_eq!(store.append(&run(&vault.log(2))), Ok(Appended::Kept));
}

#[test]
fn damage_in_the_file_is_reported_as_damage() {
    let file = fresh_file();
    let mut vault = Vault::new();
    let store = SqliteStore::open(&file).unwrap();
    store.append(&run(&vault.log(2))).unwrap();
    Connection::open(&file)
        .unwrap()
        .execute("UPDATE head SET hash = x'00'", [])
        .unwrap();
    let read = store.head(vault.id, vault.device(0));
    assert!(matches!(read, Err(StoreError::Damaged(_))), "{read:?}");
}
