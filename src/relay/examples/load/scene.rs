//! A relay on a real socket, and the requests of the devices of its vaults.

use lightround_relay::carry::{Carrying, Journal, Limits, Rate, now};
use lightround_relay::store::Desk;
use lightround_relay::{App, Door, router, serve};
use std::io::Read;
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::thread;
use sync::exchange::Request;
use vault::request::Asked;
use vault::roll::Change;
use vault::sample::Device;
use vault::{Role, Roll, VaultId};

/// Opens a vault with all of these devices on its roll.
pub fn open_vault(store: &dyn Desk, devices: &[Device]) {
    let lead = &devices[0].keys;
    let code = [*lead.vault().as_bytes(); 2].concat().try_into().unwrap();
    let mut roll = Roll::new(lead.vault());
    for device in devices {
        let admit = Change::Admit(Role::Lead);
        let statement = lead.state(&roll, device.keys.public(), admit).unwrap();
        roll.add(&statement).unwrap();
        if statement.number == 1 {
            store.invite(code, 2).unwrap();
            store.open_vault(code, 1, &statement).unwrap();
        } else {
            assert!(store.extend_roll(&statement).unwrap());
        }
    }
}

/// A relay over this store.
pub fn relay(folder: &Path, store: Arc<dyn Desk>) -> SocketAddr {
    let rate = Rate {
        burst: 1_000_000,
        each_second: 1_000_000,
    };
    let limits = Limits {
        rate,
        ..Limits::default()
    };
    let carrying = Carrying::new(store, limits, Journal::silent());
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
pub fn request(device: &Device, vault: VaultId, request: &Request) -> Vec<u8> {
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

/// A connection on which one request follows the other.
pub fn connection(address: SocketAddr) -> TcpStream {
    let stream = TcpStream::connect(address).unwrap();
    stream.set_nodelay(true).unwrap();
    stream
}

/// The body of the next answer, which has to be a good one.
pub fn answer(stream: &mut TcpStream) -> Vec<u8> {
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
