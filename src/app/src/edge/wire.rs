//! One request to the relay that this app came from, and its reply; or what the relay says by itself.

use futures::future::{Either, select};
use gloo_net::http::{Request, Response};
use gloo_timers::future::TimeoutFuture;
use std::pin::pin;
use sync::exchange::http::{Reply, TIME, TYPE};
use sync::exchange::news;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{AbortController, AbortSignal, ReadableStreamDefaultReader};

/// Milliseconds after which nobody waits for a reply any longer: enough for the largest run of entries over a poor line.
const PATIENCE_MS: u32 = 120_000;

/// Posts a message; none where nothing came back, for whatever reason.
pub async fn post(path: &str, body: &[u8], vouched: &str) -> Option<Reply> {
    let abort = AbortController::new().ok()?;
    let request = Request::post(path)
        .header("content-type", TYPE)
        .header("authorization", vouched)
        .abort_signal(Some(&abort.signal()))
        .body(js_sys::Uint8Array::from(body))
        .ok()?;
    let (asked, late) = (
        pin!(async { reply(request.send().await.ok()?).await }),
        pin!(TimeoutFuture::new(PATIENCE_MS)),
    );
    match select(asked, late).await {
        Either::Left((reply, _)) => reply,
        Either::Right(_) => {
            abort.abort();
            None
        }
    }
}

async fn reply(response: Response) -> Option<Reply> {
    let field = |name: &str| response.headers().get(name);
    Some(Reply {
        status: response.status(),
        kind: field("content-type").unwrap_or_default(),
        retry_after: field("retry-after").and_then(|seconds| seconds.parse().ok()),
        time: field(TIME).and_then(|now| now.parse().ok()),
        body: response.binary().await.ok()?,
    })
}

/// Somebody who listens; dropping it ends that.
pub struct Ear(AbortController);

impl Ear {
    /// One that hears nothing yet; none where the browser has no way to end a request.
    pub fn new() -> Option<Self> {
        AbortController::new().ok().map(Self)
    }

    /// By which a request hears that nobody listens any more.
    pub fn signal(&self) -> AbortSignal {
        self.0.signal()
    }
}

impl Drop for Ear {
    fn drop(&mut self) {
        self.0.abort();
    }
}

/// Gives whatever a stream brings to `heard`, until it ends or is ended. Tells whether it was such a stream at all.
pub async fn listen(
    path: &str,
    vouched: &str,
    until: &AbortSignal,
    heard: impl FnMut(&[u8]),
) -> bool {
    stream(path, vouched, until, heard).await.is_some()
}

async fn stream(
    path: &str,
    vouched: &str,
    until: &AbortSignal,
    mut heard: impl FnMut(&[u8]),
) -> Option<()> {
    let request = Request::get(path)
        .header("accept", news::TYPE)
        .header("authorization", vouched)
        .abort_signal(Some(until));
    let response = request.send().await.ok()?;
    let kind = response.headers().get("content-type")?;
    if !response.ok() || kind.split(';').next() != Some(news::TYPE) {
        return None;
    }
    let reader = response.body()?.get_reader();
    let reader: ReadableStreamDefaultReader = reader.dyn_into().ok()?;
    // What breaks off has been a stream all the same.
    while let Ok(read) = JsFuture::from(reader.read()).await {
        let value = js_sys::Reflect::get(&read, &"value".into()).unwrap_or_default();
        let Ok(bytes) = value.dyn_into::<js_sys::Uint8Array>() else {
            break;
        };
        heard(&bytes.to_vec());
    }
    Some(())
}
