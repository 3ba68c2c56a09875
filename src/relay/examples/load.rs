//! How much a relay carries, against the database alone: `cargo xtask bench` runs it and puts the numbers into its table.
//!
//! Requests go through the real router on a real socket, signed and made beforehand; the database alone gets the same bytes
//! in transactions of the same size, with the same durability.
#![allow(
    clippy::unwrap_used,
    reason = "a measurement that can't be made has nothing to say"
)]

use lightround_relay::carry::{Carrying, Journal, Limits, Rate, now};
use lightround_relay::store::{Desk, SqliteStore};
use lightround_relay::{App, Door, router, serve};
use rusqlite::{Connection, params};
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::Instant;
use sync::exchange::{Request, Run, Vector};
use vault::request::Asked;
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Role, Roll, VaultId};

/// Clients at a time, at most.
const CLIENTS: usize = 16;
/// Frames of one client that come in runs.
const IN_RUNS: usize = 4_000;
/// Frames of each client that come one by one.
const ALONE: usize = 200;

fn main() {
    let left = PathBuf::from(std::env::args().nth(1).expect("where to leave the numbers"));
    let folder = std::env::temp_dir().join(format!("lightround-load-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let mut measures = Vec::new();
    for (clients, size, each) in [
        (1, 500, IN_RUNS),
        (CLIENTS, 500, IN_RUNS / 4),
        (1, 1, ALONE),
        (CLIENTS, 1, ALONE),
    ] {
        measures.extend(measured(&folder, clients, size, each));
    }
    measures.push(json!({ "name": "relay: memory at most", "unit": "bytes", "ours": memory() }));
    std::fs::remove_dir_all(folder).unwrap();
    std::fs::write(left, Value::Array(measures).to_string()).unwrap();
}

/// Frames a second in and out, with so many clients that push so many frames at a time.
fn measured(folder: &Path, clients: usize, size: usize, each: usize) -> Vec<Value> {
    let mut devices = devices(clients as u64 * 1_000 + size as u64, clients as u64);
    let logs: Vec<Vec<Frame>> = devices
        .iter_mut()
        .map(|device| device.log(each - 1))
        .collect();
    let frames = (clients * each) as f64;
    let vault = devices[0].keys.vault();
    let name = format!("{clients}-{size}");

    let address = relay(folder, &name, &devices);
    let pushes = logs.iter().zip(&devices).map(|(log, device)| {
        let runs = log.chunks(size).map(|run| Run::new(run.to_vec()).unwrap());
        runs.map(|run| request(device, vault, &Request::Push(run)))
            .collect()
    });
    let into = frames / at_once(address, pushes.collect());
    let alone = frames / inserted(&folder.join(format!("{name}-alone.sqlite")), &logs, size);
    let said = format!("relay: frames in, {size} at a time, clients: {clients}");
    let mut measures = vec![
        json!({ "name": said, "unit": "frames/s", "ours": into, "against": "SQLite alone", "theirs": alone }),
    ];
    if size > 1 {
        let out = frames / pulled(address, &devices, vault, &logs);
        let alone = frames / selected(&folder.join(format!("{name}-alone.sqlite")));
        let said = format!("relay: frames out, logs: {clients}");
        measures.push(json!({ "name": said, "unit": "frames/s", "ours": out, "against": "SQLite alone", "theirs": alone }));
    }
    measures
}

/// A relay with an open vault of these devices.
fn relay(folder: &Path, name: &str, devices: &[Device]) -> SocketAddr {
    let store = SqliteStore::open(&folder.join(format!("{name}.sqlite"))).unwrap();
    let lead = &devices[0].keys;
    let mut roll = Roll::new(lead.vault());
    for device in devices {
        let admit = Change::Admit(Role::Lead);
        let statement = lead.state(&roll, device.keys.public(), admit).unwrap();
        roll.add(&statement).unwrap();
        if statement.number == 1 {
            store.invite([1; 32], 2).unwrap();
            store.open_vault([1; 32], 1, &statement).unwrap();
        } else {
            assert!(sync::exchange::FrameStore::extend_roll(&store, &statement).unwrap());
        }
    }
    let rate = Rate {
        burst: 1_000_000,
        each_second: 1_000_000,
    };
    let limits = Limits {
        rate,
        ..Limits::default()
    };
    let carrying = Carrying::new(Arc::new(store), limits, Journal::silent());
    let dist = folder.join("dist");
    std::fs::create_dir_all(&dist).unwrap();
    std::fs::write(dist.join("index.html"), "<!doctype html>").unwrap();
    let router = router(App::load(&dist).unwrap(), Some(carrying));
    let door = Door {
        tls: None,
        connections: limits.connections,
        patience: limits.patience,
    };
    let (say, said) = std::sync::mpsc::channel();
    thread::spawn(move || {
        let runtime = tokio::runtime::Runtime::new().unwrap();
        runtime.block_on(async {
            let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await.unwrap();
            say.send(listener.local_addr().unwrap()).unwrap();
            serve(listener, door, router, std::future::pending::<()>()).await;
        });
    });
    said.recv().unwrap()
}

/// The bytes of a request, signed.
fn request(device: &Device, vault: VaultId, request: &Request) -> Vec<u8> {
    let (path, body) = (
        format!("/relay/v1/vaults/{vault}/{}", request.name()),
        request.to_bytes(),
    );
    let asked = Asked {
        method: "POST",
        path: &path,
        body: &body,
    };
    let field = device.keys.vouch(asked, now()).unwrap();
    let head = format!(
        "POST {path} HTTP/1.1\r\nhost: relay\r\nauthorization: {field}\r\ncontent-length: {}\r\n\r\n",
        body.len()
    );
    [head.into_bytes(), body].concat()
}

/// Seconds until every client has made all its requests, one after the other on one connection.
fn at_once(address: SocketAddr, clients: Vec<Vec<Vec<u8>>>) -> f64 {
    let began = Instant::now();
    thread::scope(|scope| {
        for requests in &clients {
            scope.spawn(move || {
                let mut stream = TcpStream::connect(address).unwrap();
                stream.set_nodelay(true).unwrap();
                for request in requests {
                    stream.write_all(request).unwrap();
                    answer(&mut stream);
                }
            });
        }
    });
    began.elapsed().as_secs_f64()
}

/// The body of the next answer, which has to be a good one.
fn answer(stream: &mut TcpStream) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut part = vec![0; 64 * 1024];
    loop {
        let end = bytes.windows(4).position(|four| four == b"\r\n\r\n");
        if let Some(end) = end {
            let head = String::from_utf8_lossy(&bytes[..end]).to_lowercase();
            assert!(head.starts_with("http/1.1 200 "), "{head}");
            let length = head.split("content-length: ").nth(1).unwrap();
            let length: usize = length.lines().next().unwrap().parse().unwrap();
            let mut body = bytes.split_off(end + 4);
            let there = body.len();
            body.resize(length, 0);
            stream.read_exact(&mut body[there..]).unwrap();
            return body;
        }
        let read = stream.read(&mut part).unwrap();
        bytes.extend_from_slice(&part[..read]);
    }
}

/// Seconds until a new tablet has everything.
fn pulled(address: SocketAddr, devices: &[Device], vault: VaultId, logs: &[Vec<Frame>]) -> f64 {
    let frames: usize = logs.iter().map(Vec::len).sum();
    let mut stream = TcpStream::connect(address).unwrap();
    let (mut have, mut got) = (Vector::new(), 0);
    let began = Instant::now();
    while got < frames {
        let pull = Request::Pull { have: have.clone() };
        stream
            .write_all(&request(&devices[0], vault, &pull))
            .unwrap();
        let answer = sync::exchange::Answer::from_bytes(&answer(&mut stream)).unwrap();
        let sync::exchange::Answer::Page(page) = answer else {
            panic!("{answer:?}");
        };
        for run in page.runs {
            got += run.frames().len();
            have.raise(run.device(), run.head());
        }
    }
    began.elapsed().as_secs_f64()
}

/// Seconds in which SQLite alone takes the same, as durably, in transactions of the same size.
fn inserted(file: &Path, logs: &[Vec<Frame>], size: usize) -> f64 {
    let connection = Connection::open(file).unwrap();
    connection
        .execute_batch(
            "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
             CREATE TABLE frame (vault BLOB, device BLOB, sequence INTEGER, hash BLOB, bytes BLOB,
                                 PRIMARY KEY (vault, device, sequence)) STRICT",
        )
        .unwrap();
    let began = Instant::now();
    for run in logs.iter().flat_map(|log| log.chunks(size)) {
        connection.execute_batch("BEGIN").unwrap();
        let mut insert = connection
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
        connection.execute_batch("COMMIT").unwrap();
    }
    began.elapsed().as_secs_f64()
}

/// Seconds in which SQLite alone reads the same.
fn selected(file: &Path) -> f64 {
    let connection = Connection::open(file).unwrap();
    let began = Instant::now();
    let mut asked = connection
        .prepare("SELECT bytes FROM frame ORDER BY vault, device, sequence")
        .unwrap();
    let bytes = asked.query_map([], |row| row.get::<_, Vec<u8>>(0)).unwrap();
    assert!(bytes.map(|bytes| bytes.unwrap().len()).sum::<usize>() > 0);
    began.elapsed().as_secs_f64()
}

/// The most memory that this process ever had, in bytes; 0 where the system doesn't tell.
fn memory() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kibibytes = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok());
    kibibytes.unwrap_or(0_u64) * 1024
}
