//! Frames a second in and out, against the database alone.

use crate::alone::Database;
use crate::scene::{answer, connection, open_vault, relay, request};
use serde_json::{Value, json};
use std::io::Write;
use std::net::SocketAddr;
use std::path::Path;
use std::thread;
use std::time::Instant;
use sync::exchange::{Answer, Request, Run, Vector};
use vault::sample::{Device, devices};
use vault::{Frame, VaultId};

/// Clients at a time, at most.
const CLIENTS: usize = 16;
/// Frames of one client that come in runs.
const IN_RUNS: usize = 4_000;
/// Frames of each client that come one by one.
const ALONE: usize = 200;
/// The aim, of what the database's own bulk insert does with the same bytes. Frames that come one by one are no bulk.
const AIM: f64 = 0.5;

/// With one client and with many, in runs and one by one.
pub fn measured(folder: &Path, database: Database) -> Vec<Value> {
    let ways = [
        (1, 500, IN_RUNS),
        (CLIENTS, 500, IN_RUNS / 4),
        (1, 1, ALONE),
        (CLIENTS, 1, ALONE),
    ];
    let measured = ways.map(|(clients, size, each)| {
        eprintln!(
            "{}: {clients} at a time, {size} frames a push",
            database.name()
        );
        with(folder, database, clients, size, each)
    });
    measured.concat()
}

/// With so many clients that push so many frames at a time.
fn with(folder: &Path, database: Database, clients: usize, size: usize, each: usize) -> Vec<Value> {
    let mut devices = devices(clients as u64 * 1_000 + size as u64, clients as u64);
    let logs: Vec<Vec<Frame>> = devices
        .iter_mut()
        .map(|device| device.log(each - 1))
        .collect();
    let frames = (clients * each) as f64;
    let vault = devices[0].keys.vault();
    let name = format!("load_{clients}_{size}");

    let store = database.store(folder, &name);
    open_vault(store.as_ref(), &devices);
    let address = relay(folder, store);
    let pushes = logs.iter().zip(&devices).map(|(log, device)| {
        let runs = log.chunks(size).map(|run| Run::new(run.to_vec()).unwrap());
        runs.map(|run| request(device, vault, &Request::Push(run)))
            .collect()
    });
    let into = frames / at_once(address, pushes.collect());
    let mut alone = database.alone(folder, &name);
    let (kept, against) = (database.name(), format!("{} alone", database.name()));
    let inserted = frames / alone.insert(&logs, size);
    let into_said = format!("relay on {kept}: frames in, {size} at a time, clients: {clients}");
    let mut measures = vec![
        json!({ "name": into_said, "unit": "frames/s", "ours": into, "against": against, "theirs": inserted }),
    ];
    if size > 1 {
        let out = frames / pulled(address, &devices, vault, &logs);
        let selected = frames / alone.select();
        let said = format!("relay on {kept}: frames out, logs: {clients}");
        measures.push(json!({ "name": said, "unit": "frames/s", "ours": out, "against": against, "theirs": selected }));
        for measure in &mut measures {
            measure["floor"] = json!(inserted * AIM);
        }
        // What no relay that looks at every signature can do without.
        let verified = frames / verified(&logs, &devices);
        measures.push(json!({ "name": into_said, "unit": "frames/s", "ours": into, "against": "verifying alone, one core", "theirs": verified }));
    }
    measures
}

/// Seconds until every client has made all its requests, one after the other on one connection.
fn at_once(address: SocketAddr, clients: Vec<Vec<Vec<u8>>>) -> f64 {
    let began = Instant::now();
    thread::scope(|scope| {
        for requests in &clients {
            scope.spawn(move || {
                let mut stream = connection(address);
                for request in requests {
                    stream.write_all(request).unwrap();
                    answer(&mut stream);
                }
            });
        }
    });
    began.elapsed().as_secs_f64()
}

/// Seconds in which every signature is looked at, one after the other.
fn verified(logs: &[Vec<Frame>], devices: &[Device]) -> f64 {
    let began = Instant::now();
    for (log, device) in logs.iter().zip(devices) {
        let key = device.keys.public();
        assert!(log.iter().all(|frame| frame.verify(&key).is_ok()));
    }
    began.elapsed().as_secs_f64()
}

/// Seconds until a new tablet has everything.
fn pulled(address: SocketAddr, devices: &[Device], vault: VaultId, logs: &[Vec<Frame>]) -> f64 {
    let frames: usize = logs.iter().map(Vec::len).sum();
    let mut stream = connection(address);
    let (mut have, mut got) = (Vector::new(), 0);
    let began = Instant::now();
    while got < frames {
        let pull = Request::Pull { have: have.clone() };
        stream
            .write_all(&request(&devices[0], vault, &pull))
            .unwrap();
        let answer = Answer::from_bytes(&answer(&mut stream)).unwrap();
        let Answer::Page(page) = answer else {
            panic!("{answer:?}");
        };
        for run in page.runs {
            got += run.frames().len();
            have.raise(run.device(), run.head());
        }
    }
    began.elapsed().as_secs_f64()
}
