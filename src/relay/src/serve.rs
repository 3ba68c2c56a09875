//! Accepting connections, with or without TLS, until asked to stop.
//!
//! A loop of its own and not axum's, which waits for ever for the head of a request and takes any number of connections.

use crate::tls::Certificate;
use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::{GracefulShutdown, Watcher};
use hyper_util::service::TowerToHyperService;
use std::future::Future;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::{sleep, timeout};

/// How long open connections may finish after the relay was asked to stop.
pub const GRACE: Duration = Duration::from_secs(5);
/// The wait after a connection could not be accepted: most often too many files are open.
const BREATH: Duration = Duration::from_millis(200);

/// How connections are taken.
#[derive(Clone)]
pub struct Door {
    /// With TLS, or without.
    pub tls: Option<Arc<Certificate>>,
    /// The most connections at a time; others wait outside.
    pub connections: u32,
    /// How long a handshake, and the head of a request, may take to come.
    pub patience: Duration,
}

/// Serves until `stop` resolves, then lets open requests finish for at most [`GRACE`].
pub async fn serve(listener: TcpListener, door: Door, router: Router, stop: impl Future) {
    let places = Arc::new(Semaphore::new(door.connections as usize));
    let open = GracefulShutdown::new();
    let mut stop = pin!(stop);
    loop {
        let next = next(&listener, &places);
        let (stream, place) = tokio::select! {
            next = next => next,
            _ = &mut stop => break,
        };
        let (door, router, watcher) = (door.clone(), router.clone(), open.watcher());
        tokio::spawn(async move {
            let _place = place;
            shake_hands(stream, door, router, watcher).await;
        });
    }
    drop(listener);
    let _ = timeout(GRACE, open.shutdown()).await;
}

/// The next connection, once there is a place for it.
async fn next(
    listener: &TcpListener,
    places: &Arc<Semaphore>,
) -> (TcpStream, Option<OwnedSemaphorePermit>) {
    // The semaphore is never closed: without a place there would be no next.
    let place = Arc::clone(places).acquire_owned().await.ok();
    loop {
        match listener.accept().await {
            Ok((stream, _)) => return (stream, place),
            Err(_) => sleep(BREATH).await,
        }
    }
}

async fn shake_hands(stream: TcpStream, door: Door, router: Router, watcher: Watcher) {
    // Answers are written whole; to hold them back for more to come only delays them.
    let _ = stream.set_nodelay(true);
    let Some(tls) = door.tls else {
        return speak(stream, door.patience, router, watcher).await;
    };
    // A handshake that fails is the other side's affair: there is no way to tell it more than TLS did.
    if let Ok(Ok(stream)) = timeout(door.patience, tls.acceptor().accept(stream)).await {
        speak(stream, door.patience, router, watcher).await;
    }
}

async fn speak<S: AsyncRead + AsyncWrite + Unpin + 'static>(
    stream: S,
    patience: Duration,
    router: Router,
    watcher: Watcher,
) {
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(patience)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(router));
    // It ends with an error where the other side goes away in the middle, which it may.
    let _ = watcher.watch(connection).await;
}
