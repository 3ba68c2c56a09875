//! SQLite: one statement, again and again within a transaction.

use rusqlite::{Connection, params};
use std::path::Path;
use std::time::Instant;
use vault::Frame;

pub struct Alone(Connection);

impl Alone {
    pub fn new(file: &Path) -> Self {
        let connection = Connection::open(file).unwrap();
        connection
            .execute_batch(
                "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
                 CREATE TABLE frame (vault BLOB, device BLOB, sequence INTEGER, hash BLOB, bytes BLOB,
                                     PRIMARY KEY (vault, device, sequence)) STRICT",
            )
            .unwrap();
        Self(connection)
    }
}

impl super::Alone for Alone {
    fn insert(&mut self, logs: &[Vec<Frame>], size: usize) -> f64 {
        let began = Instant::now();
        for run in logs.iter().flat_map(|log| log.chunks(size)) {
            self.0.execute_batch("BEGIN").unwrap();
            let mut insert = self
                .0
                .prepare_cached("INSERT INTO frame VALUES (?1, ?2, ?3, ?4, ?5)")
                .unwrap();
            for frame in run {
                let (vault, device, hash) = (frame.header().vault, frame.device(), frame.hash());
                let place = params![
                    vault.as_bytes(),
                    device.as_bytes(),
                    frame.sequence().cast_signed(),
                    hash.as_bytes(),
                    frame.bytes()
                ];
                insert.execute(place).unwrap();
            }
            self.0.execute_batch("COMMIT").unwrap();
        }
        began.elapsed().as_secs_f64()
    }

    fn select(&mut self) -> f64 {
        let began = Instant::now();
        let mut asked = self
            .0
            .prepare("SELECT bytes FROM frame ORDER BY vault, device, sequence")
            .unwrap();
        let bytes = asked.query_map([], |row| row.get::<_, Vec<u8>>(0)).unwrap();
        assert!(bytes.map(|bytes| bytes.unwrap().len()).sum::<usize>() > 0);
        began.elapsed().as_secs_f64()
    }
}
