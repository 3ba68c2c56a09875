//! How much a relay carries, against the database alone, and what one more frame costs: `cargo xtask bench` runs it and puts the
//! numbers into its table.
//!
//! Requests go through the real router on a real socket, signed and made beforehand; the database alone gets the same bytes
//! in transactions of the same size, with the same durability. PostgreSQL is measured where there is one.
#![allow(
    clippy::unwrap_used,
    reason = "a measurement that can't be made has nothing to say"
)]

mod alone;
mod carried;
#[path = "../../tests/common/cluster.rs"]
mod cluster;
mod fill;
mod growth;
mod scene;

use alone::Database;
use serde_json::{Value, json};
use std::path::PathBuf;

fn main() {
    let left = PathBuf::from(std::env::args().nth(1).expect("where to leave the numbers"));
    let folder = std::env::temp_dir().join(format!("lightround-load-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let mut measures = carried::measured(&folder, Database::Sqlite);
    measures.push(json!({ "name": "relay: memory at most", "unit": "bytes", "ours": memory() }));
    if cluster::is_there() {
        measures.extend(carried::measured(&folder, Database::Postgres));
    } else {
        eprintln!("there is no PostgreSQL here (apt-get install postgresql): it is left out");
    }
    measures.extend(growth::measured(&folder));
    std::fs::remove_dir_all(folder).unwrap();
    std::fs::write(left, Value::Array(measures).to_string()).unwrap();
}

/// The most memory that this process ever had, in bytes; 0 where the system doesn't tell.
fn memory() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kibibytes = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok());
    kibibytes.unwrap_or(0_u64) * 1024
}
