//! The stream that says that there is something new: to whom, when, and nothing else.

use crate::common::{Relay, Reply};
use crate::described;
use crate::scene::{NOW, Scene};
use lightround_relay::carry::Limits;
use std::time::Duration;
use sync::exchange::Request;
use sync::exchange::news::Events;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::time::timeout;
use vault::roll::Change;

/// Longer than the relay waits before it looks by itself.
const SOON: Duration = Duration::from_secs(20);

/// A stream that is open.
pub struct Stream {
    socket: TcpStream,
    events: Events,
    pub said: Vec<u8>,
}

impl Stream {
    /// Listens at a relay; a reply where it is none.
    pub async fn open(relay: &Relay, scene: &Scene, asker: usize) -> Result<Self, Reply> {
        let path = scene.path("news");
        let field = scene.field(asker, "GET", &path, b"", NOW);
        let mut socket = TcpStream::connect(relay.address).await.unwrap();
        let request = format!(
            "GET {path} HTTP/1.1\r\nhost: relay\r\nconnection: close\r\nauthorization: {field}\r\n\r\n"
        );
        socket.write_all(request.as_bytes()).await.unwrap();
        let mut head = Vec::new();
        while !head.ends_with(b"\r\n\r\n") {
            head.push(socket.read_u8().await.unwrap());
        }
        let mut reply = Reply::read(&head);
        described::hold("get", &path, &reply);
        if reply.status != 200 {
            let length = reply.header("content-length").unwrap().parse().unwrap();
            reply.body = vec![0; length];
            socket.read_exact(&mut reply.body).await.unwrap();
            return Err(reply);
        }
        assert_eq!(reply.header("content-type"), Some("text/event-stream"));
        Ok(Self {
            socket,
            events: Events::default(),
            said: Vec::new(),
        })
    }

    /// Waits for the next event; false where the stream ends before.
    pub async fn hears(&mut self) -> bool {
        timeout(SOON, self.next())
            .await
            .expect("an event, or the end")
    }

    /// Whether no event comes for a while. What HTTP puts behind the last one is none.
    async fn is_quiet(&mut self) -> bool {
        timeout(Duration::from_secs(3), self.next()).await.is_err()
    }

    async fn next(&mut self) -> bool {
        loop {
            let Ok(byte) = self.socket.read_u8().await else {
                return false;
            };
            self.said.push(byte);
            if self.events.is_new(&[byte]) {
                return true;
            }
        }
    }
}

async fn listen(scene: &Scene, asker: usize) -> Stream {
    let opened = Stream::open(&scene.relay, scene, asker).await;
    opened.unwrap_or_else(|reply| panic!("{}: {}", reply.status, reply.text()))
}

async fn refused(scene: &Scene, asker: usize) -> u16 {
    let opened = Stream::open(&scene.relay, scene, asker).await;
    opened.err().expect("no stream").status
}

#[tokio::test]
async fn who_listens_hears_that_something_is_new_and_never_what() {
    let mut scene = Scene::new("news").await;
    let (mut lead, mut viewer) = (listen(&scene, 0).await, listen(&scene, 2).await);
    assert!(
        lead.hears().await && viewer.hears().await,
        "once at the beginning"
    );
    let log = scene.devices[1].log(2);
    assert_eq!(scene.push(1, &log[..2]).await.0, 200);
    assert!(lead.hears().await && viewer.hears().await);
    // The same again changes nothing, so nobody is told.
    assert_eq!(scene.push(1, &log[..2]).await.0, 200);
    assert!(lead.is_quiet().await);
    scene.state(3, Change::Admit(vault::Role::Clinician)).await;
    assert!(viewer.hears().await, "the roll has grown");
    let said = String::from_utf8(viewer.said).unwrap();
    // What HTTP puts around pieces, and nothing but three times the same.
    assert_eq!(
        said.matches("event: new\ndata: new\n\n").count(),
        3,
        "{said}"
    );
    let rest = said.replace("event: new\ndata: new\n\n", "");
    assert!(
        rest.chars()
            .all(|sign| sign.is_ascii_hexdigit() || "\r\n".contains(sign)),
        "{rest}"
    );
}

#[tokio::test]
async fn nobody_listens_who_is_not_on_the_roll() {
    let mut scene = Scene::new("news-strangers").await;
    assert_eq!(refused(&scene, 3).await, 404);
    let mut clinician = listen(&scene, 1).await;
    assert!(clinician.hears().await);
    scene.state(1, Change::Remove { last: 0 }).await;
    assert!(
        !clinician.hears().await,
        "who is removed hears nothing more"
    );
    assert_eq!(refused(&scene, 1).await, 403);
    let path = scene.path("news");
    let unsigned = scene.relay.ask("GET", &path, &[]).await;
    assert_eq!(unsigned.status, 401);
    // A signature over another method is none over this one.
    let field = scene.field(0, "POST", &path, b"", NOW);
    let moved = scene
        .relay
        .ask("GET", &path, &[("authorization", &field)])
        .await;
    assert_eq!(moved.status, 401);
    let nowhere = path.replace(&scene.vault.to_string(), "nowhere");
    assert_eq!(scene.relay.ask("GET", &nowhere, &[]).await.status, 400);
}

#[tokio::test]
async fn one_device_has_one_stream_and_all_together_leave_room_for_requests() {
    let limits = Limits {
        connections: 4,
        ..Limits::default()
    };
    let scene = Scene::limited("news-limits", limits).await;
    let mut first = listen(&scene, 0).await;
    assert!(first.hears().await);
    let mut second = listen(&scene, 0).await;
    assert!(second.hears().await);
    assert!(
        !first.hears().await,
        "the newer one is the one that is listened to"
    );
    let mut other = listen(&scene, 1).await;
    assert!(other.hears().await);
    let full = Stream::open(&scene.relay, &scene, 2).await.err().unwrap();
    assert_eq!((full.status, full.header("retry-after")), (503, Some("2")));
    // Requests are answered all the same.
    assert_eq!(scene.ask(0, &Request::Heads).await.status, 200);
}

#[tokio::test]
async fn a_relay_that_stops_ends_its_streams() {
    let scene = Scene::new("news-stops").await;
    let mut stream = listen(&scene, 0).await;
    assert!(stream.hears().await);
    scene.carrying.end();
    assert!(!stream.hears().await);
}
