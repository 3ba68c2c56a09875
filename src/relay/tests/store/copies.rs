//! Backups, restoring and moving between databases: a copy has everything, once, and overwrites nothing.

use crate::sample::{Vault, bytes, run};
use crate::{cluster, fresh_file, invited};
use lightround_relay::store::{Desk, PostgresStore, SqliteStore};
use lightround_relay::{Copied, copy, verify};
use std::thread;
use sync::exchange::{Appended, FrameStore, Why};
use vault::Frame;

fn sqlite() -> SqliteStore {
    SqliteStore::open(&fresh_file()).unwrap()
}

fn postgres(name: &str) -> PostgresStore {
    PostgresStore::open(&cluster::address(name)).unwrap()
}

/// A vault with a roll of two and a log of so many.
fn filled(store: &impl Desk, frames: usize) -> (Vault, Vec<Frame>) {
    let mut vault = Vault::new();
    let [first, second] = vault.statements();
    invited(store, &first);
    assert_eq!(store.extend_roll(&second), Ok(true));
    let log = vault.log(frames);
    for part in log.chunks(500) {
        assert_eq!(store.append(&run(part)), Ok(Appended::Kept));
    }
    (vault, log)
}

fn sound(frames: u64) -> Copied {
    Copied {
        vaults: 1,
        frames,
        wrong: vec![],
    }
}

/// Every way between the two databases, with more frames than fit into one run.
#[test]
fn a_copy_has_everything_and_a_second_only_what_is_new() {
    let ways: [(Box<dyn Desk>, Box<dyn Desk>); 3] = [
        (Box::new(sqlite()), Box::new(sqlite())),
        (Box::new(sqlite()), Box::new(postgres("restored"))),
        (Box::new(postgres("saved")), Box::new(sqlite())),
    ];
    for (from, to) in &ways {
        let (from, to) = (from.as_ref(), to.as_ref());
        let mut vault = Vault::new();
        let [first, second] = vault.statements();
        let code = *first.hash().as_bytes();
        from.invite(code, 50).unwrap();
        from.open_vault(code, 42, &first).unwrap();
        let log = vault.devices[0].log(701);
        from.append(&run(&log[..500])).unwrap();
        from.append(&run(&log[500..700])).unwrap();
        from.set_aside(&log[701], Why::Fork).unwrap();
        assert_eq!(copy(from, to), Ok(sound(700)));
        assert_eq!(
            to.vaults(),
            from.vaults(),
            "with the time when it was opened"
        );
        assert_eq!(to.aside(vault.id, None, 9), from.aside(vault.id, None, 9));

        from.extend_roll(&second).unwrap();
        from.append(&run(&log[700..701])).unwrap();
        assert_eq!(copy(from, to), Ok(sound(1)));
        assert_eq!(copy(from, to), Ok(sound(0)));
        assert_eq!(to.roll(vault.id), Ok(vec![first, second]));
        let walked = verify(to).unwrap();
        assert_eq!((walked.frames, walked.wrong), (701, vec![]));
    }
}

/// A relay that is put back has newer entries than the backup; tablets have pushed meanwhile.
#[test]
fn restoring_takes_nothing_away() {
    let (relay, backup) = (sqlite(), sqlite());
    let (mut vault, log) = filled(&relay, 3);
    copy(&relay, &backup).unwrap();
    let newer = vault.after(&log, b"newer");
    relay.append(&run(std::slice::from_ref(&newer))).unwrap();
    assert_eq!(copy(&backup, &relay), Ok(sound(0)));
    assert_eq!(
        relay.head(vault.id, vault.device(0)),
        Ok(Some(newer.head()))
    );
}

#[test]
fn a_log_that_parted_ways_is_said_and_left_alone() {
    for more in 0..2 {
        let (from, to) = (sqlite(), sqlite());
        let (mut vault, log) = filled(&from, 2);
        copy(&from, &to).unwrap();
        let here = vault.after(&log, b"here");
        let there = vault.after(&log, b"there");
        to.append(&run(std::slice::from_ref(&here))).unwrap();
        from.append(&run(std::slice::from_ref(&there))).unwrap();
        let longer = [log.clone(), vec![there.clone()]].concat();
        for _ in 0..more {
            let next = vault.after(&longer, b"more");
            from.append(&run(&[next])).unwrap();
        }
        let copied = copy(&from, &to).unwrap();
        assert_eq!(copied.frames, 0);
        assert_eq!(copied.wrong.len(), 1, "{copied}");
        let number = if more == 0 { 3 } else { 4 };
        let said = format!(
            "another entry {} is there, and was left as it is",
            number - more
        );
        assert!(copied.wrong[0].ends_with(&said), "{copied}");
        assert_eq!(to.head(vault.id, vault.device(0)), Ok(Some(here.head())));
    }
}

#[test]
fn another_roll_is_said_and_left_alone() {
    let (from, to) = (sqlite(), sqlite());
    let mut vault = Vault::new();
    let [first, second] = vault.statements();
    for store in [&from, &to] {
        invited(store, &first);
    }
    from.extend_roll(&second).unwrap();
    let mut other = Vault::new();
    let [_, foreign] = other.statements();
    // What no relay would take, somebody wrote into the file.
    let altered = fresh_file();
    let broken = SqliteStore::open(&altered).unwrap();
    copy(&from, &broken).unwrap();
    rusqlite::Connection::open(&altered)
        .unwrap()
        .execute(
            "UPDATE roll SET statement = ?1 WHERE number = 2",
            [foreign.bytes()],
        )
        .unwrap();
    let copied = copy(&broken, &to).unwrap();
    assert!(copied.wrong[0].contains("its roll"), "{copied}");
    assert_eq!(to.roll(vault.id), Ok(vec![first]));
}

/// What a hand or a failing disk did to a backup is found before it gets back.
#[test]
fn an_altered_backup_is_said_and_what_is_sound_comes_back() {
    for (harm, said, sound) in [
        (
            "UPDATE frame SET bytes = zeroblob(length(bytes)) WHERE sequence = 3",
            "after entry 0",
            0,
        ),
        (
            "DELETE FROM frame WHERE sequence = 3",
            "entry 3 is missing",
            2,
        ),
        (
            "DELETE FROM frame WHERE sequence = 5",
            "entry 5 is missing",
            4,
        ),
        (
            "UPDATE frame SET bytes = (SELECT f.bytes FROM frame f WHERE f.sequence = 2) WHERE sequence = 1",
            "entry 1 is missing",
            0,
        ),
    ] {
        let file = fresh_file();
        let (backup, to) = (SqliteStore::open(&file).unwrap(), sqlite());
        let (vault, log) = filled(&backup, 5);
        rusqlite::Connection::open(&file)
            .unwrap()
            .execute(harm, [])
            .unwrap();
        let copied = copy(&backup, &to).unwrap();
        assert_eq!(copied.wrong.len(), 1, "{harm}: {copied}");
        assert!(copied.wrong[0].contains(said), "{harm}: {copied}");
        let there = to.range(vault.id, vault.device(0), 1, 9, usize::MAX);
        assert_eq!(there, Ok(bytes(&log[..sound])), "{harm}");
    }
}

/// A relay that is written to all the time: every copy is sound, and the last has it all.
#[test]
fn a_store_is_copied_while_it_grows() {
    let file = fresh_file();
    let (from, to) = (SqliteStore::open(&file).unwrap(), sqlite());
    let (mut vault, mut log) = filled(&from, 1);
    for number in 0..120_u32 {
        let next = vault.after(&log, &number.to_be_bytes());
        log.push(next);
    }
    thread::scope(|scope| {
        let grown = scope.spawn(|| {
            for at in 1..log.len() {
                assert_eq!(from.append(&run(&log[at..=at])), Ok(Appended::Kept));
            }
        });
        while !grown.is_finished() {
            // Another process reads the same file.
            let reader = SqliteStore::open(&file).unwrap();
            assert_eq!(copy(&reader, &to).unwrap().wrong, Vec::<String>::new());
            assert_eq!(verify(&to).unwrap().wrong, Vec::<String>::new());
        }
    });
    copy(&from, &to).unwrap();
    assert_eq!(verify(&to).unwrap().frames, 121);
}

/// Not a trace in the file, its log of writes, or anywhere beside it; strangers keep theirs.
#[test]
fn what_is_erased_is_gone_from_the_file() {
    let file = fresh_file();
    let store = SqliteStore::open(&file).unwrap();
    let (vault, log) = filled(&store, 700);
    let (stranger, theirs) = filled(&store, 2);
    store.set_aside(&log[5], Why::Fork).unwrap();
    // The last bytes of a frame are its ciphertext and signature.
    let traces = |frame: &Frame| {
        let trace = &frame.bytes()[frame.bytes().len() - 100..];
        ["", "-wal"].iter().any(|ending| {
            let kept = std::fs::read(format!("{}{ending}", file.display())).unwrap();
            kept.windows(trace.len()).any(|window| window == trace)
        })
    };
    assert!(traces(&log[5]) && traces(&theirs[1]));
    assert_eq!(store.erase(vault.id), Ok(Some(701)));
    assert!(
        ![0, 5, 350, 699].iter().any(|at| traces(&log[*at])),
        "something is left"
    );
    assert!(traces(&theirs[1]));
    assert_eq!(verify(&store).unwrap().wrong, Vec::<String>::new());
    assert_eq!(
        store.head(stranger.id, stranger.device(0)),
        Ok(Some(theirs[1].head()))
    );
}
