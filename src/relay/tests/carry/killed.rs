//! The program killed outright while tablets push, again and again: whatever it acknowledged is there afterwards.

use crate::cluster;
use crate::common::built_app;
use lightround_relay::carry::now;
use lightround_relay::store;
use lightround_relay::verify;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::channel;
use std::thread;
use std::time::Duration;
use sync::exchange::{Request, Run};
use vault::request::Asked;
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Role, Roll};

fn start(app: &std::path::Path, data: &str) -> (Child, String) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
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
    let mut said = String::new();
    BufReader::new(child.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    let host = said
        .trim()
        .strip_prefix("Lightround is at http://")
        .unwrap();
    (child, host.trim_end_matches('/').to_owned())
}

/// Pushes one frame; whether the relay said that it is kept.
fn push(device: &Device, host: &str, frame: &Frame) -> bool {
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
    let sent = TcpStream::connect(host).and_then(|mut stream| {
        stream.write_all(&[head.as_bytes(), &body].concat())?;
        stream.read_to_end(&mut said)
    });
    sent.is_ok() && said.starts_with(b"HTTP/1.1 200 ")
}

fn killed_again_and_again(test: &str, seed: u64, data: &str) {
    let app = built_app(test);
    let mut device = devices(seed, 1).remove(0);
    let (vault, id) = (device.keys.vault(), device.keys.device());
    let kept = store::open(data).unwrap();
    let lead = Change::Admit(Role::Lead);
    let first = device
        .keys
        .state(&Roll::new(vault), device.keys.public(), lead);
    let first = first.unwrap();
    let code = *first.hash().as_bytes();
    kept.invite(code, 2).unwrap();
    kept.open_vault(code, 1, &first).unwrap();

    let log = device.log(2_000);
    let mut acknowledged = 0;
    for round in 0..6_u64 {
        let (mut child, host) = start(&app, data);
        let (under_way, pushing) = channel();
        let killing = thread::spawn(move || {
            let _ = pushing.recv_timeout(Duration::from_secs(30));
            thread::sleep(Duration::from_millis(3 + 11 * round));
            child.kill().unwrap();
            child.wait().unwrap();
        });
        let before = acknowledged;
        while acknowledged < log.len() && push(&device, &host, &log[acknowledged]) {
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
