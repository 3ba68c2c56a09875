//! How PostgreSQL does what the store asks: by index, in serializable transactions, with nothing that an engine spread over
//! many machines lacks. The server itself writes down every statement and its plan.

use crate::cluster;
use crate::sample::{Vault, run};
use lightround_relay::store::{Desk, PostgresStore};
use postgres::{Client, NoTls};
use std::collections::BTreeSet;
use sync::exchange::{FrameStore, Why};
use vault::ErasedKey;

/// Three thousand strangers' vaults, so that reading a table from end to end is a worse plan than its index.
const STRANGERS: &str = "
    INSERT INTO vault SELECT decode(md5(v::TEXT), 'hex'), v FROM generate_series(1, 3000) v;
    INSERT INTO roll SELECT decode(md5(v::TEXT), 'hex'), n, '\\x00' FROM generate_series(1, 3000) v, generate_series(1, 3) n;
    INSERT INTO head SELECT decode(md5(v::TEXT), 'hex'), decode(md5(d::TEXT), 'hex'), 10, '\\x00', 400
        FROM generate_series(1, 3000) v, generate_series(1, 3) d;
    INSERT INTO frame SELECT vault, device, n, hash, '\\x00' FROM head, generate_series(1, 10) n;
    INSERT INTO aside SELECT vault, device, 11, hash, 1, '\\x00' FROM head;
    INSERT INTO erased SELECT vault, hash, device, n FROM head, generate_series(1, 3) n;
    INSERT INTO invitation SELECT decode(md5(v::TEXT), 'hex'), 1000000 + v FROM generate_series(1, 3000) v;
    ANALYZE;
";

/// Everything that a store can be asked, once.
fn everything(store: &PostgresStore) {
    let mut vault = Vault::new();
    let [first, second] = vault.statements();
    let log = vault.log(4);
    store.invite([9; 32], 500_000).unwrap();
    store.open_vault([9; 32], 400_000, &first).unwrap();
    assert_eq!(store.extend_roll(&second), Ok(true));
    store.append(&run(&log[..2])).unwrap();
    store.append(&run(&log[2..])).unwrap();
    store.set_aside(&log[3], Why::Fork).unwrap();
    let erased = ErasedKey {
        id: log[1].header().key,
        device: vault.device(0),
        sequence: 9,
    };
    store.remember_erased(vault.id, &[erased]).unwrap();
    store.empty(&[log[1].emptied()]).unwrap();
    let device = vault.device(0);
    assert_eq!(store.roll(vault.id).unwrap().len(), 2);
    assert_eq!(store.head(vault.id, device), Ok(Some(log[3].head())));
    assert_eq!(store.vector(vault.id).unwrap().len(), 1);
    assert_eq!(store.hashes(vault.id, device, 1, 9).unwrap().len(), 4);
    assert_eq!(store.range(vault.id, device, 1, 9, 9_999).unwrap().len(), 4);
    assert_eq!(store.aside(vault.id, None, 9).unwrap().len(), 1);
    assert!(store.size(vault.id).unwrap() > 0);
    assert_eq!(store.vaults().unwrap().len(), 3_001);
    store.ready().unwrap();
    assert_eq!(store.erase(vault.id), Ok(Some(5)));
}

fn watched(name: &str) -> (PostgresStore, Client) {
    let address = cluster::address(name);
    drop(PostgresStore::open(&address).unwrap());
    let mut client = Client::connect(&address, NoTls).unwrap();
    client.batch_execute(STRANGERS).unwrap();
    client
        .batch_execute(&format!(
            "ALTER DATABASE {name} SET session_preload_libraries = 'auto_explain';
             ALTER DATABASE {name} SET auto_explain.log_min_duration = 0;
             ALTER DATABASE {name} SET auto_explain.log_nested_statements = on;
             ALTER DATABASE {name} SET log_statement = 'all'"
        ))
        .unwrap();
    (PostgresStore::open(&address).unwrap(), client)
}

/// The statements in a log, and the plans with their statements.
fn written(name: &str) -> (BTreeSet<String>, Vec<(String, String)>) {
    let (mut statements, mut plans) = (BTreeSet::new(), Vec::new());
    for item in cluster::log_of(name) {
        let spaced = item.split_whitespace().collect::<Vec<_>>().join(" ");
        if let Some((_, plan)) = spaced.split_once("plan: Query Text: ") {
            let cost = plan.find("(cost=").unwrap();
            plans.push((plan[..cost].to_owned(), plan.to_owned()));
        } else if let Some((kind, text)) = spaced.split_once(": ")
            && (kind.starts_with("execute") || kind == "statement")
        {
            statements.insert(text.to_owned());
        }
    }
    (statements, plans)
}

#[test]
fn every_statement_finds_its_rows_by_an_index() {
    let (store, _) = watched("planned");
    everything(&store);
    drop(store);
    let (statements, plans) = written("planned");
    let planned = |statement: &String| plans.iter().any(|(text, _)| text.starts_with(statement));
    let kept: Vec<&String> = statements
        .iter()
        .filter(|text| {
            !["START", "COMMIT", "SELECT to_regclass"]
                .iter()
                .any(|other| text.starts_with(other))
        })
        .collect();
    // As many as there are in the two files of the store.
    assert!(kept.len() >= 24, "{}: {kept:#?}", kept.len());
    for statement in kept {
        assert!(planned(statement), "no plan of {statement}");
    }
    for (text, plan) in &plans {
        for table in ["roll", "head", "frame", "aside", "erased", "invitation"] {
            assert!(!plan.contains(&format!("Seq Scan on {table}")), "{plan}");
        }
        // The list of all vaults is for whoever keeps the relay, and reads them all.
        let list = text.contains("FROM vault ORDER BY vault");
        assert!(list || !plan.contains("Seq Scan on vault"), "{plan}");
    }
}

#[test]
fn every_transaction_is_serializable_and_none_asks_what_a_spread_engine_lacks() {
    let (store, mut client) = watched("spread");
    everything(&store);
    drop(store);
    let (statements, _) = written("spread");
    let begun: Vec<&String> = statements
        .iter()
        .filter(|text| text.starts_with("START") || text.starts_with("BEGIN"))
        .collect();
    assert_eq!(begun, ["START TRANSACTION ISOLATION LEVEL SERIALIZABLE"]);
    for text in &statements {
        let text = text.to_uppercase();
        for word in [
            "LISTEN",
            "NOTIFY",
            "ADVISORY",
            "NEXTVAL",
            "LOCK TABLE",
            "FOR UPDATE",
            "CURSOR",
        ] {
            assert!(!text.contains(word), "{text}");
        }
    }
    let made = client
        .query_one(
            "SELECT (SELECT count(*) FROM pg_sequences)
                  + (SELECT count(*) FROM pg_trigger WHERE NOT tgisinternal)",
            &[],
        )
        .unwrap();
    assert_eq!(made.get::<_, i64>(0), 0, "sequences and triggers");
}
