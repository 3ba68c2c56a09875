//! PostgreSQL: its own bulk insert is `COPY`, a transaction each.

use postgres::binary_copy::BinaryCopyInWriter;
use postgres::types::Type;
use postgres::{Client, NoTls};
use std::time::Instant;
use vault::Frame;

const COLUMNS: [Type; 5] = [
    Type::BYTEA,
    Type::BYTEA,
    Type::INT8,
    Type::BYTEA,
    Type::BYTEA,
];

pub struct Alone(Client);

impl Alone {
    pub fn new(address: &str) -> Self {
        let mut client = Client::connect(address, NoTls).unwrap();
        client
            .batch_execute(
                "CREATE TABLE frame (vault BYTEA, device BYTEA, sequence BIGINT, hash BYTEA, bytes BYTEA,
                                     PRIMARY KEY (vault, device, sequence));
                 ALTER TABLE frame ALTER COLUMN bytes SET STORAGE EXTERNAL",
            )
            .unwrap();
        Self(client)
    }
}

impl super::Alone for Alone {
    fn insert(&mut self, logs: &[Vec<Frame>], size: usize) -> f64 {
        let copy = self
            .0
            .prepare("COPY frame FROM STDIN (FORMAT binary)")
            .unwrap();
        let began = Instant::now();
        for run in logs.iter().flat_map(|log| log.chunks(size)) {
            let rows = self.0.copy_in(&copy).unwrap();
            let mut rows = BinaryCopyInWriter::new(rows, &COLUMNS);
            for frame in run {
                let (vault, device, hash) = (frame.header().vault, frame.device(), frame.hash());
                rows.write(&[
                    &vault.as_bytes().as_slice(),
                    &device.as_bytes().as_slice(),
                    &frame.sequence().cast_signed(),
                    &hash.as_bytes().as_slice(),
                    &frame.bytes(),
                ])
                .unwrap();
            }
            rows.finish().unwrap();
        }
        began.elapsed().as_secs_f64()
    }

    fn select(&mut self) -> f64 {
        let began = Instant::now();
        let rows = self
            .0
            .query(
                "SELECT bytes FROM frame ORDER BY vault, device, sequence",
                &[],
            )
            .unwrap();
        let bytes = rows.iter().map(|row| row.get::<_, Vec<u8>>(0).len());
        assert!(bytes.sum::<usize>() > 0);
        began.elapsed().as_secs_f64()
    }
}
