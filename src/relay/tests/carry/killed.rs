//! The program killed outright while tablets push, again and again: whatever it acknowledged is there afterwards.

use crate::cluster;
use crate::common::{Running, built_app};
use lightround_relay::carry::now;
use lightround_relay::store::{self, Desk};
use lightround_relay::verify;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::mpsc::channel;
use std::thread;
use std::time::Duration;
use sync::exchange::{Request, Run};
use vault::request::Asked;
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Role, Roll};

/// How often the program is killed in each test.
const KILLS: u64 = 100;

fn start(app: &Path, data: &str) -> (Running, String) {
    started(
        &mut Command::new(env!("CARGO_BIN_EXE_lightround-relay")),
        app,
        data,
    )
}

fn started(command: &mut Command, app: &Path, data: &str) -> (Running, String) {
    let child = command
        .args([
            "--listen",
            "127.0.0.1:0",
            "--each-second",
            "100000",
            "--data",
            data,
            "--app",
        ])
        .arg(app)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut running = Running(child);
    let mut said = String::new();
    BufReader::new(running.0.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    let host = said
        .trim()
        .strip_prefix("Lightround is at http://")
        .unwrap();
    (running, host.trim_end_matches('/').to_owned())
}

/// The device opens its vault.
fn open(kept: &dyn Desk, device: &Device) {
    let lead = Change::Admit(Role::Lead);
    let empty = Roll::new(device.keys.vault());
    let first = device.keys.state(&empty, device.keys.public(), lead);
    let first = first.unwrap();
    let code = *first.hash().as_bytes();
    kept.invite(code, 2).unwrap();
    kept.open_vault(code, 1, &first).unwrap();
}

fn is_kept(answer: &[u8]) -> bool {
    answer.starts_with(b"HTTP/1.1 200 ")
}

/// Pushes one frame; what the relay said, if it still could.
fn push(device: &Device, host: &str, frame: &Frame) -> Vec<u8> {
    let body = Request::Push(Run::new(vec![frame.clone()]).unwrap()).to_bytes();
    let path = format!("/relay/v1/vaults/{}/push", device.keys.vault());
    let asked = Asked {
        method: "POST",
        path: &path,
        body: &body,
    };
    let field = device.keys.vouch(asked, now()).unwrap();
    let head = format!(
        "POST {path} HTTP/1.1\r\nhost: relay\r\nconnection: close\r\nauthorization: {field}\r\ncontent-length: {}\r\n\r\n",
        body.len()
    );
    let mut said = Vec::new();
    let _ = TcpStream::connect(host).and_then(|mut stream| {
        stream.write_all(&[head.as_bytes(), &body].concat())?;
        stream.read_to_end(&mut said)
    });
    said
}

fn killed_again_and_again(test: &str, seed: u64, data: &str) {
    let app = built_app(test);
    let mut device = devices(seed, 1).remove(0);
    let (vault, id) = (device.keys.vault(), device.keys.device());
    let kept = store::open(data).unwrap();
    open(kept.as_ref(), &device);
    let log = device.log(20_000);
    let mut acknowledged = 0;
    for round in 0..KILLS {
        let (running, host) = start(&app, data);
        let (under_way, pushing) = channel();
        let killing = thread::spawn(move || {
            let _ = pushing.recv_timeout(Duration::from_secs(30));
            // At ever other moments, soon after the first push and later.
            thread::sleep(Duration::from_millis(3 + 7 * (round % 8)));
            drop(running);
        });
        let before = acknowledged;
        while acknowledged < log.len() && is_kept(&push(&device, &host, &log[acknowledged])) {
            acknowledged += 1;
            let _ = under_way.send(());
        }
        killing.join().unwrap();
        assert!(acknowledged > before, "round {round}: nothing was pushed");
        let head = kept.head(vault, id).unwrap().unwrap();
        let there = head.sequence as usize;
        // One more may be kept whose answer was lost.
        assert!(
            (acknowledged..=acknowledged + 1).contains(&there),
            "{there} of {acknowledged}"
        );
        assert_eq!(head, log[there - 1].head());
        acknowledged = there;
    }
    let walked = verify(kept.as_ref()).unwrap();
    let ours = walked
        .wrong
        .iter()
        .filter(|wrong| wrong.contains(&vault.to_string()));
    assert_eq!(ours.count(), 0, "{walked}");
    let listed = kept.vaults().unwrap();
    let line = listed.iter().find(|line| line.vault == vault).unwrap();
    assert_eq!(line.frames, acknowledged as u64);
}

/// A disk that is full, as far as the program can tell: no file of its may grow beyond so many blocks.
#[test]
fn a_full_disk_is_said_and_loses_nothing_acknowledged() {
    let app = built_app("full-disk");
    let file = app.parent().unwrap().join("kept.sqlite");
    let data = file.to_str().unwrap();
    let mut device = devices(503, 1).remove(0);
    let kept = store::open(data).unwrap();
    open(kept.as_ref(), &device);
    drop(kept);
    let log = device.log(3_000);
    let mut command = Command::new("sh");
    command.args(["-c", "trap '' XFSZ; ulimit -f 1000; exec \"$0\" \"$@\""]);
    command.arg(env!("CARGO_BIN_EXE_lightround-relay"));
    let (running, host) = started(&mut command, &app, data);
    let mut acknowledged = 0;
    let refused = loop {
        let said = push(&device, &host, &log[acknowledged]);
        if !is_kept(&said) {
            break String::from_utf8(said).unwrap();
        }
        acknowledged += 1;
    };
    assert!(acknowledged > 20, "{acknowledged}");
    assert!(refused.starts_with("HTTP/1.1 503 "), "{refused}");
    assert!(refused.contains("retry-after: 30"), "{refused}");
    assert!(
        refused.ends_with("the relay can't get at what it keeps just now\n"),
        "{refused}"
    );
    drop(running);
    // With room again it goes on where it was.
    let (running, host) = start(&app, data);
    for frame in &log[acknowledged..acknowledged + 20] {
        assert!(is_kept(&push(&device, &host, frame)));
    }
    drop(running);
    let walked = verify(store::open(data).unwrap().as_ref()).unwrap();
    assert_eq!(
        (walked.frames, walked.wrong),
        (acknowledged as u64 + 20, vec![])
    );
}

#[test]
fn nothing_acknowledged_is_lost_from_sqlite() {
    let file = built_app("killed-kept")
        .parent()
        .unwrap()
        .join("kept.sqlite");
    killed_again_and_again("killed-sqlite", 501, file.to_str().unwrap());
}

#[test]
fn nothing_acknowledged_is_lost_from_postgresql() {
    killed_again_and_again("killed-postgres", 502, &cluster::address("killed"));
}
