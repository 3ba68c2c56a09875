//! A small built app in a temporary folder, a relay that serves it, and a client that sends exactly what it is told.
// Each test file uses its own part of this, and a test that cannot set itself up may panic.
#![allow(dead_code, clippy::unwrap_used)]

use axum::Router;
use lightround_relay::carry::Carrying;
use lightround_relay::{App, router};
use std::fs;
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};

pub const PAGE: &str = "<!doctype html><title>Lightround</title><script>one</script>";
pub const SCRIPT: &str =
    "export default function start() { return start; }\nexport function stop() { return start; }\n";

/// A folder as the build leaves it, new for this test.
pub fn built_app(test: &str) -> PathBuf {
    let around =
        std::env::temp_dir().join(format!("lightround-relay-{}-{test}", std::process::id()));
    let _ = fs::remove_dir_all(&around);
    let folder = around.join("dist");
    fs::create_dir_all(folder.join("fonts")).unwrap();
    fs::write(folder.join("index.html"), PAGE).unwrap();
    fs::write(folder.join("app-0123456789abcdef.js"), SCRIPT).unwrap();
    fs::write(folder.join("app-0123456789abcdef.js.br"), squeezed(SCRIPT)).unwrap();
    fs::write(folder.join("fonts/text.woff2"), b"wOF2").unwrap();
    folder
}

/// The same text in brotli.
pub fn squeezed(text: &str) -> Vec<u8> {
    let mut out = Vec::new();
    brotli::BrotliCompress(
        &mut text.as_bytes(),
        &mut out,
        &brotli::enc::BrotliEncoderParams::default(),
    )
    .unwrap();
    out
}

/// A relay on a free port of this machine.
pub struct Relay {
    pub address: SocketAddr,
}

/// The program while it runs; killed outright when dropped, so that a test that fails leaves nothing behind.
pub struct Running(pub std::process::Child);

impl Drop for Running {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// What came back.
pub struct Reply {
    pub status: u16,
    headers: Vec<(String, String)>,
    pub body: Vec<u8>,
}

impl Relay {
    pub async fn start(folder: &Path) -> Self {
        Self::carrying(folder, None).await
    }

    pub async fn carrying(folder: &Path, carrying: Option<Carrying>) -> Self {
        Self::answering(router(App::load(folder).unwrap(), carrying)).await
    }

    /// Anything that answers, on a free port.
    pub async fn answering(router: Router) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
        let address = listener.local_addr().unwrap();
        tokio::spawn(async move { axum::serve(listener, router).await });
        Self { address }
    }

    pub async fn get(&self, path: &str) -> Reply {
        self.ask("GET", path, &[]).await
    }

    pub async fn ask(&self, method: &str, path: &str, headers: &[(&str, &str)]) -> Reply {
        self.send(method, path, headers, &[]).await
    }

    pub async fn send(
        &self,
        method: &str,
        path: &str,
        headers: &[(&str, &str)],
        body: &[u8],
    ) -> Reply {
        let more = headers
            .iter()
            .map(|(name, value)| [name, ": ", value, "\r\n"].concat())
            .collect::<String>();
        let request =
            format!("{method} {path} HTTP/1.1\r\nhost: relay\r\nconnection: close\r\n{more}\r\n");
        let mut stream = TcpStream::connect(self.address).await.unwrap();
        stream.write_all(request.as_bytes()).await.unwrap();
        // A relay that has read enough may close before all of it is sent.
        let _ = stream.write_all(body).await;
        let mut bytes = Vec::new();
        let _ = stream.read_to_end(&mut bytes).await;
        Reply::read(&bytes)
    }
}

impl Reply {
    pub fn read(bytes: &[u8]) -> Self {
        let end = bytes
            .windows(4)
            .position(|four| four == b"\r\n\r\n")
            .unwrap();
        let head = String::from_utf8(bytes[..end].to_vec()).unwrap();
        let mut lines = head.split("\r\n");
        let status = lines
            .next()
            .unwrap()
            .split(' ')
            .nth(1)
            .unwrap()
            .parse()
            .unwrap();
        let headers = lines
            .filter_map(|line| line.split_once(": "))
            .map(|(name, value)| (name.to_lowercase(), value.to_owned()))
            .collect();
        Self {
            status,
            headers,
            body: bytes[end + 4..].to_vec(),
        }
    }

    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers
            .iter()
            .find(|(known, _)| known == name)
            .map(|(_, value)| value.as_str())
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }
}
