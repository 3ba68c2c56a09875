//! The program itself over TLS, with a certificate made here, and with clients that don't come to the point.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{Running, built_app};
use lightround_relay::tls::Certificate;
use lightround_relay::{App, CertificateFiles, Door, router, serve};
use rcgen::{CertifiedKey, generate_simple_self_signed};
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::CertificateDer;
use tokio_rustls::rustls::{ClientConfig, ClientConnection, RootCertStore, Stream};

/// A running relay.
struct Program {
    _running: Running,
    address: String,
}

/// The program serving this folder, with what it says it is at.
fn start(folder: &Path, more: &[&str]) -> Program {
    let mut child = program(folder, more)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut said = String::new();
    BufReader::new(child.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    let address = said.trim().strip_prefix("Lightround is at ").unwrap();
    let address = address.trim_end_matches('/').to_owned();
    Program {
        _running: Running(child),
        address,
    }
}

fn program(folder: &Path, more: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_lightround-relay"));
    command
        .args(["serve", "--listen", "127.0.0.1:0", "--app"])
        .arg(folder)
        .args(more)
        .stderr(Stdio::null());
    command
}

/// A certificate for `localhost`, and the files that it and its key are in.
fn certificate(folder: &Path, name: &str) -> (CertificateDer<'static>, PathBuf, PathBuf) {
    let CertifiedKey { cert, signing_key } =
        generate_simple_self_signed(["localhost".to_owned()]).unwrap();
    let [chain, key] =
        ["chain", "key"].map(|what| folder.parent().unwrap().join(format!("{name}-{what}.pem")));
    fs::write(&chain, cert.pem()).unwrap();
    fs::write(&key, signing_key.serialize_pem()).unwrap();
    (cert.der().clone(), chain, key)
}

fn secured(folder: &Path, more: &[&str]) -> (CertificateDer<'static>, Program) {
    let (certificate, chain, key) = certificate(folder, "own");
    let files = [
        "--certificate",
        chain.to_str().unwrap(),
        "--key",
        key.to_str().unwrap(),
    ];
    let program = start(folder, &[&files, more].concat());
    assert!(
        program.address.starts_with("https://127.0.0.1:"),
        "{}",
        program.address
    );
    (certificate, program)
}

fn trusting(certificate: &CertificateDer<'static>) -> Arc<ClientConfig> {
    let mut roots = RootCertStore::empty();
    roots.add(certificate.clone()).unwrap();
    let config = ClientConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_root_certificates(roots)
        .with_no_client_auth();
    Arc::new(config)
}

fn connected(program: &Program) -> TcpStream {
    connected_to(program.address.split("//").nth(1).unwrap())
}

fn connected_to(host: &str) -> TcpStream {
    let stream = TcpStream::connect(host).unwrap();
    stream
        .set_read_timeout(Some(Duration::from_secs(20)))
        .unwrap();
    stream
}

fn health(program: &Program, config: Arc<ClientConfig>) -> std::io::Result<String> {
    asked(program.address.split("//").nth(1).unwrap(), config)
}

fn asked(host: &str, config: Arc<ClientConfig>) -> std::io::Result<String> {
    let mut socket = connected_to(host);
    let name = "localhost".try_into().unwrap();
    let mut tls = ClientConnection::new(config, name).map_err(std::io::Error::other)?;
    let mut stream = Stream::new(&mut tls, &mut socket);
    stream
        .write_all(b"GET /relay/health HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n")?;
    let mut said = String::new();
    stream.read_to_string(&mut said)?;
    Ok(said)
}

#[test]
fn who_trusts_the_certificate_is_answered_over_tls() {
    let (certificate, program) = secured(&built_app("tls"), &[]);
    let said = health(&program, trusting(&certificate)).unwrap();
    assert!(
        said.starts_with("HTTP/1.1 200 OK\r\n") && said.ends_with("well\n"),
        "{said}"
    );
    assert!(
        said.contains("content-security-policy: default-src 'none'"),
        "{said}"
    );
}

#[test]
fn another_certificate_is_not_taken_for_it() {
    let folder = built_app("tls-other");
    let (_, program) = secured(&folder, &[]);
    let (other, _, _) = certificate(&folder, "other");
    assert!(health(&program, trusting(&other)).is_err());
}

#[test]
fn without_tls_nothing_is_said_at_that_address() {
    let (_, program) = secured(&built_app("tls-plain"), &[]);
    let mut socket = connected(&program);
    socket
        .write_all(b"GET / HTTP/1.1\r\nhost: localhost\r\n\r\n")
        .unwrap();
    let mut said = Vec::new();
    let _ = socket.read_to_end(&mut said);
    let said = String::from_utf8_lossy(&said);
    assert!(
        !said.contains("HTTP") && !said.contains("Lightround"),
        "{said}"
    );
}

/// Clients that connect and then say nothing, or a word at a time: they are let go, and hold up nobody meanwhile.
#[test]
fn silence_holds_nobody_up() {
    let (certificate, program) = secured(&built_app("tls-silent"), &["--patience", "6"]);
    let mut silent: Vec<TcpStream> = (0..20).map(|_| connected(&program)).collect();
    let began = Instant::now();
    health(&program, trusting(&certificate)).unwrap();
    assert!(
        began.elapsed() < Duration::from_secs(6),
        "{:?}",
        began.elapsed()
    );
    for socket in &mut silent {
        assert_eq!(socket.read(&mut [0; 9]).unwrap(), 0, "it is let go");
    }
}

#[test]
fn half_a_request_is_let_go() {
    let program = start(&built_app("half"), &["--patience", "1"]);
    let mut socket = connected(&program);
    socket.write_all(b"GET / HTTP/1.1\r\nhost: loc").unwrap();
    let mut said = Vec::new();
    socket.read_to_end(&mut said).unwrap();
    let said = String::from_utf8_lossy(&said);
    assert!(!said.contains("200 OK"), "{said}");
}

/// With one place, the second waits outside until the first is gone, and is served then.
#[test]
fn more_connections_than_may_be_open_wait() {
    let program = start(
        &built_app("places"),
        &["--connections", "1", "--patience", "3"],
    );
    let first = connected(&program);
    let ask = b"GET /relay/health HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n";
    let mut second = connected(&program);
    second.write_all(ask).unwrap();
    second
        .set_read_timeout(Some(Duration::from_millis(300)))
        .unwrap();
    assert!(second.read(&mut [0; 1]).is_err(), "it is not served yet");
    drop(first);
    second
        .set_read_timeout(Some(Duration::from_secs(20)))
        .unwrap();
    let mut said = String::new();
    second.read_to_string(&mut said).unwrap();
    assert!(said.ends_with("well\n"), "{said}");
}

/// A renewed certificate is taken up while the relay serves; one that is half written is not, and the old one stays.
#[test]
fn a_renewed_certificate_is_taken_up_and_a_broken_one_is_not() {
    let folder = built_app("tls-renewed");
    let (first, chain, key) = certificate(&folder, "own");
    let files = CertificateFiles {
        chain: chain.clone(),
        key: key.clone(),
    };
    let in_use = Arc::new(Certificate::load(&files).unwrap());
    let door = Door {
        tls: Some(Arc::clone(&in_use)),
        connections: 9,
        patience: Duration::from_secs(9),
    };
    let runtime = tokio::runtime::Runtime::new().unwrap();
    let router = router(App::load(&folder).unwrap(), None);
    let listener = runtime
        .block_on(tokio::net::TcpListener::bind("127.0.0.1:0"))
        .unwrap();
    let host = listener.local_addr().unwrap().to_string();
    runtime.spawn(serve(listener, door, router, std::future::pending::<()>()));

    let trusted = |der: &CertificateDer<'static>| asked(&host, trusting(der)).is_ok();
    assert!(trusted(&first));
    assert!(!in_use.renew().unwrap(), "nothing has changed");
    let (second, _, _) = certificate(&folder, "own");
    assert!(
        trusted(&first) && !trusted(&second),
        "not before it is looked at"
    );
    assert!(in_use.renew().unwrap());
    assert!(trusted(&second) && !trusted(&first));

    fs::write(&chain, "-----BEGIN CERTIFICATE-----\n").unwrap();
    assert!(in_use.renew().is_err());
    assert!(trusted(&second));
    assert!(!in_use.renew().unwrap(), "said once");
    let (third, _, _) = certificate(&folder, "own");
    assert!(in_use.renew().unwrap());
    assert!(trusted(&third));
}

#[test]
fn what_is_no_certificate_is_refused_in_one_sentence() {
    let folder = built_app("tls-bad");
    let (_, chain, key) = certificate(&folder, "own");
    let (_, other_chain, _) = certificate(&folder, "other");
    let beside = |name: &str, text: &str| {
        let file = folder.parent().unwrap().join(name);
        fs::write(&file, text).unwrap();
        file
    };
    let (empty, gone) = (beside("empty.pem", ""), folder.join("gone.pem"));
    let broken = beside(
        "broken.pem",
        "-----BEGIN CERTIFICATE-----\n?\n-----END CERTIFICATE-----\n",
    );
    for (chain, key, said) in [
        (&other_chain, &key, "can't be used together"),
        (&gone, &key, "can't be read as a certificate in PEM"),
        (&chain, &gone, "can't be read as a private key in PEM"),
        (&empty, &key, "holds no certificate"),
        (&broken, &key, "can't be read as a certificate in PEM"),
        (&chain, &chain, "can't be read as a private key in PEM"),
    ] {
        let mut command = program(&folder, &[]);
        let output = command
            .arg("--certificate")
            .arg(chain)
            .arg("--key")
            .arg(key)
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        let sentence = String::from_utf8(output.stderr).unwrap();
        assert!(!output.status.success());
        assert!(
            sentence.contains(said) && sentence.lines().count() == 1,
            "{sentence}"
        );
    }
}
