//! The program itself: how it begins, what it is told, and how it ends.

use crate::common::Running;
use lightround_relay::store::Desk;
use std::process::Command;

/// Asked to stop, the program ends by itself, well, and leaves everything in place.
#[test]
fn the_program_stops_when_it_is_asked_to() {
    use std::io::{BufRead, BufReader};
    use std::process::Stdio;
    let app = crate::common::built_app("stopped");
    let file = app.parent().unwrap().join("kept.sqlite");
    let started = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .args(["serve", "--listen", "127.0.0.1:0", "--app"])
        .arg(&app)
        .arg("--data")
        .arg(&file)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut running = Running(started);
    let mut said = String::new();
    BufReader::new(running.0.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    assert!(
        said.starts_with("Lightround is at http://127.0.0.1:"),
        "{said}"
    );
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.0.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    assert!(running.0.wait().unwrap().success());
    assert!(
        lightround_relay::store::SqliteStore::open(&file)
            .unwrap()
            .ready()
            .is_ok()
    );
}

/// One file of settings for the program, with a variable that outweighs it, and counts at their own address.
#[tokio::test]
async fn the_program_reads_its_file_and_environment() {
    use std::io::{BufRead, BufReader, Read, Write};
    use std::process::Stdio;
    let app = crate::common::built_app("settings");
    let folder = app.parent().unwrap();
    let file = folder.join("relay.toml");
    let text = format!(
        "app = {app:?}\ndata = {:?}\nlisten = \"no address\"\nmetrics = \"127.0.0.1:0\"\n",
        folder.join("kept.sqlite")
    );
    std::fs::write(&file, text).unwrap();
    let started = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .env("LIGHTROUND_RELAY_CONFIG", &file)
        .env("LIGHTROUND_RELAY_LISTEN", "127.0.0.1:0")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut running = Running(started);
    let mut lines = BufReader::new(running.0.stdout.take().unwrap()).lines();
    let mut next = |before: &str| {
        let line = lines.next().unwrap().unwrap();
        let address = line
            .strip_prefix(before)
            .unwrap_or_else(|| panic!("{line}"));
        address.split('/').next().unwrap().to_owned()
    };
    let relay = next("Lightround is at http://");
    let metrics = next("Counts are at http://");
    let ask = |host: &str, path: &str| {
        let mut stream = std::net::TcpStream::connect(host).unwrap();
        let request = format!("GET {path} HTTP/1.1\r\nhost: relay\r\nconnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).unwrap();
        let mut said = String::new();
        stream.read_to_string(&mut said).unwrap();
        said
    };
    assert!(ask(&relay, "/relay/ready").ends_with("ready\n"));
    let counted = ask(&metrics, "/metrics");
    let line = r#"lightround_requests_total{what="ready",status="200"} 1"#;
    assert!(counted.contains(line), "{counted}");
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.0.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    assert!(running.0.wait().unwrap().success());
    let mut journal = String::new();
    running
        .0
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut journal)
        .unwrap();
    let lines: Vec<&str> = journal.lines().collect();
    assert_eq!(lines.first(), Some(&r#"{"relay":"serves"}"#), "{journal}");
    assert_eq!(lines.last(), Some(&r#"{"relay":"stops"}"#), "{journal}");
}

/// Asked to stop in the middle of a request, the program lets that finish; one that never comes to an end it does not wait
/// for, and new connections it takes none.
#[test]
fn the_program_finishes_what_is_under_way_and_waits_for_nobody_for_ever() {
    use std::io::{BufRead, BufReader, Read, Write};
    use std::net::TcpStream;
    use std::process::Stdio;
    use std::time::{Duration, Instant};
    let app = crate::common::built_app("under-way");
    let file = app.parent().unwrap().join("kept.sqlite");
    let started = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .args(["--listen", "127.0.0.1:0", "--app"])
        .arg(&app)
        .arg("--data")
        .arg(&file)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut running = Running(started);
    let mut said = String::new();
    BufReader::new(running.0.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    let host = said
        .trim()
        .strip_prefix("Lightround is at http://")
        .unwrap();
    let host = host.trim_end_matches('/').to_owned();
    let device = vault::sample::devices(78, 1).remove(0);
    let path = format!("/relay/v1/vaults/{}/heads", device.keys.vault());
    let body = sync::exchange::Request::Heads.to_bytes();
    let asked = vault::request::Asked {
        method: "POST",
        path: &path,
        body: &body,
    };
    let field = device.keys.vouch(asked, lightround_relay::carry::now());
    let head = format!(
        "POST {path} HTTP/1.1\r\nhost: relay\r\nauthorization: {}\r\ncontent-length: {}\r\n\r\n",
        field.unwrap(),
        body.len()
    );
    let [mut slow, mut endless] = [(), ()].map(|()| {
        let mut stream = TcpStream::connect(&host).unwrap();
        stream.write_all(head.as_bytes()).unwrap();
        stream
    });
    std::thread::sleep(Duration::from_millis(300));
    let began = Instant::now();
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.0.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    std::thread::sleep(Duration::from_millis(500));
    assert!(TcpStream::connect(&host).is_err(), "nobody new is let in");
    slow.write_all(&body).unwrap();
    let mut answer = String::new();
    slow.read_to_string(&mut answer).unwrap();
    assert!(
        answer.starts_with("HTTP/1.1 404 "),
        "it is answered: {answer}"
    );
    assert!(answer.contains("connection: close"), "{answer}");
    assert!(running.0.wait().unwrap().success());
    let took = began.elapsed();
    assert!(
        took > Duration::from_secs(4) && took < Duration::from_secs(30),
        "{took:?}"
    );
    assert_eq!(endless.read(&mut [0; 1]).unwrap_or(0), 0);
}
