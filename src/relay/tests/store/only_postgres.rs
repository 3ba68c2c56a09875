//! What only PostgreSQL can be asked: what becomes of transactions that get into each other's way.

use crate::cluster;
use crate::sample::{Vault, run};
use lightround_relay::store::{Desk, PostgresStore};
use postgres::{Client, IsolationLevel, NoTls};
use std::thread;
use std::time::Duration;
use sync::exchange::{Appended, FrameStore, StoreError};

fn place(name: &str) -> (PostgresStore, Client) {
    let address = cluster::address(name);
    let store = PostgresStore::open(&address).unwrap();
    (store, Client::connect(&address, NoTls).unwrap())
}

/// Writes a head behind the store's back and holds the row for a while, so that whoever wants it meanwhile must get
/// SQLSTATE 40001 from a serializable transaction.
fn in_the_way(client: &mut Client, vault: &Vault, begun: &std::sync::Barrier) {
    let mut transaction = client
        .build_transaction()
        .isolation_level(IsolationLevel::Serializable)
        .start()
        .unwrap();
    let changed = transaction
        .execute(
            "UPDATE head SET bytes = bytes WHERE vault = $1",
            &[&vault.id.as_bytes().as_slice()],
        )
        .unwrap();
    assert_eq!(changed, 1);
    begun.wait();
    thread::sleep(Duration::from_millis(150));
    transaction.commit().unwrap();
}

#[test]
fn a_transaction_that_was_in_the_way_is_waited_out_and_tried_again() {
    let (store, mut client) = place("retried");
    let mut vault = Vault::new();
    let log = vault.log(2);
    store.append(&run(&log[..1])).unwrap();
    // The server counts the transactions that it undid: that one was is the proof that there was a conflict at all.
    let before = undone(&mut client);
    let begun = std::sync::Barrier::new(2);
    thread::scope(|scope| {
        scope.spawn(|| in_the_way(&mut client, &vault, &begun));
        begun.wait();
        assert_eq!(store.append(&run(&log[1..])), Ok(Appended::Kept));
    });
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(Some(log[1].head()))
    );
    drop(store);
    let seen = (0..100).any(|_| {
        thread::sleep(Duration::from_millis(50));
        undone(&mut client) > before
    });
    assert!(seen, "nothing was in the way");
}

fn undone(client: &mut Client) -> i64 {
    client
        .query_one(
            "SELECT xact_rollback FROM pg_stat_database WHERE datname = 'retried'",
            &[],
        )
        .unwrap()
        .get(0)
}

/// The server refuses every append as it refuses a transaction that others were in the way of.
#[test]
fn it_is_not_tried_for_ever() {
    let (store, mut client) = place("busy");
    client
        .batch_execute(
            "CREATE SEQUENCE tries;
             CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$
             BEGIN
                 PERFORM nextval('tries');
                 RAISE EXCEPTION 'in the way' USING ERRCODE = '40001';
             END $$;
             CREATE TRIGGER refuse BEFORE INSERT ON frame EXECUTE FUNCTION refuse()",
        )
        .unwrap();
    let mut vault = Vault::new();
    let log = vault.log(1);
    assert_eq!(
        store.append(&run(&log)),
        Err(StoreError::Busy("in the way (40001)".into()))
    );
    // A sequence isn't undone with its transaction.
    let tries: i64 = client
        .query_one("SELECT last_value FROM tries", &[])
        .unwrap()
        .get(0);
    assert_eq!(tries, 8);
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(None),
        "nothing of it was kept"
    );
    client
        .batch_execute("DROP TRIGGER refuse ON frame")
        .unwrap();
    assert_eq!(store.append(&run(&log)), Ok(Appended::Kept));
}

#[test]
fn tables_of_an_earlier_version_are_brought_up_to_date_with_what_they_hold() {
    let (store, mut client) = place("earlier");
    let mut vault = Vault::new();
    let log = vault.log(2);
    store.append(&run(&log)).unwrap();
    drop(store);
    client
        .batch_execute(
            "DROP INDEX invitation_expires; DROP TABLE erased; UPDATE lightround SET steps = 1",
        )
        .unwrap();
    let store = PostgresStore::open(&cluster::address("earlier")).unwrap();
    let there = client.query_one("SELECT to_regclass('invitation_expires') IS NOT NULL", &[]);
    assert!(there.unwrap().get::<_, bool>(0));
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(Some(log[1].head()))
    );
}

/// Relays that start at the same time before an empty database: one makes the tables, and all serve.
#[test]
fn of_many_that_start_at_once_one_makes_the_tables() {
    let address = cluster::address("begun");
    thread::scope(|scope| {
        let all: Vec<_> = (0..6)
            .map(|_| scope.spawn(|| PostgresStore::open(&address)))
            .collect();
        for one in all {
            assert_eq!(one.join().unwrap().unwrap().ready(), Ok(()));
        }
    });
}

#[test]
fn tables_of_a_later_version_are_left_alone() {
    let (store, mut client) = place("later");
    drop(store);
    client
        .batch_execute("UPDATE lightround SET steps = 99")
        .unwrap();
    let refused = PostgresStore::open(&cluster::address("later")).unwrap_err();
    assert!(refused.to_string().contains("version 99"), "{refused}");
}

#[test]
fn a_lost_connection_is_replaced() {
    let (store, mut client) = place("lost");
    store.ready().unwrap();
    client
        .batch_execute(
            "SELECT pg_terminate_backend(pid) FROM pg_stat_activity
             WHERE datname = 'lost' AND pid <> pg_backend_pid()",
        )
        .unwrap();
    thread::sleep(Duration::from_millis(100));
    assert_eq!(store.ready(), Ok(()));
}

#[test]
fn an_address_that_is_none_is_said() {
    assert!(matches!(
        PostgresStore::open("postgres://["),
        Err(StoreError::Failed(_))
    ));
}

/// A database that shows a certificate: believed where the named authority made it, and nowhere else. The server itself
/// says whether the connection is encrypted.
#[test]
fn a_connection_is_encrypted_where_the_address_says_who_vouches_for_it() {
    let address = cluster::address("secured");
    let [right, wrong] = ["right", "wrong"].map(|name| {
        let made = rcgen::generate_simple_self_signed(["127.0.0.1".to_owned()]).unwrap();
        let key = made.signing_key.serialize_pem();
        cluster::file(&format!("{name}.key"), &key);
        cluster::file(&format!("{name}.pem"), &made.cert.pem())
    });
    let by = |file: &std::path::Path| format!("{address}?sslrootcert={}", file.display());
    let plain = PostgresStore::open(&by(&right)).unwrap_err();
    assert!(
        plain.to_string().contains("TLS"),
        "the server has none yet: {plain}"
    );

    let mut client = Client::connect(&address, NoTls).unwrap();
    for set in [
        format!("ALTER SYSTEM SET ssl_cert_file = '{}'", right.display()),
        format!(
            "ALTER SYSTEM SET ssl_key_file = '{}'",
            right.with_extension("key").display()
        ),
        "ALTER SYSTEM SET ssl = on".to_owned(),
        "SELECT pg_reload_conf()".to_owned(),
    ] {
        client.batch_execute(&set).unwrap();
    }
    let opened = (0..100).find_map(|_| {
        thread::sleep(Duration::from_millis(50));
        PostgresStore::open(&by(&right)).ok()
    });
    assert_eq!(opened.unwrap().ready(), Ok(()));
    // Another database of the same server has one connection that is encrypted and one that is not.
    let store = PostgresStore::open(&by(&right)).unwrap();
    store.ready().unwrap();
    let encrypted: i64 = client
        .query_one(
            "SELECT count(*) FROM pg_stat_ssl JOIN pg_stat_activity USING (pid)
             WHERE datname = 'secured' AND ssl AND pid <> pg_backend_pid()",
            &[],
        )
        .unwrap()
        .get(0);
    assert_eq!(encrypted, 1);

    let refused = PostgresStore::open(&by(&wrong)).unwrap_err();
    assert!(refused.to_string().contains("TLS"), "{refused}");
    for (address, said) in [
        (
            format!("{address}?sslmode=require"),
            "sslmode=require needs sslrootcert=FILE",
        ),
        (
            by(std::path::Path::new("/no/such.pem")),
            "/no/such.pem can't vouch for the database",
        ),
        (by(&right.with_extension("key")), "it holds no certificate"),
    ] {
        let refused = PostgresStore::open(&address).unwrap_err();
        assert!(refused.to_string().contains(said), "{refused}");
    }
}
