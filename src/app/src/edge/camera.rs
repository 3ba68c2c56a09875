//! The camera, for reading a code off another screen, where the browser reads codes by itself.

use ::words::app::session as say;
use gloo_timers::future::TimeoutFuture;
use js_sys::{Array, Function, Object, Promise, Reflect};
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{HtmlVideoElement, MediaStream, MediaStreamConstraints, MediaStreamTrack};

/// The browser's own reader of codes.
const READER: &str = "BarcodeDetector";
/// Milliseconds from one look to the next.
const PAUSE_MS: u32 = 150;

/// Whether a code can be read by camera here.
pub fn can_scan() -> bool {
    let has = |of: &JsValue, name: &str| Reflect::has(of, &name.into()).unwrap_or(false);
    has(&window(), READER) && has(&window().navigator(), "mediaDevices")
}

/// Shows the camera's picture and waits for a code; none where `stop` was set meanwhile.
///
/// # Errors
/// One sentence, where there is no camera or it may not be used.
pub async fn scan(video: HtmlVideoElement, stop: Rc<Cell<bool>>) -> Result<Option<String>, String> {
    let stream = camera()
        .await
        .map_err(|_| say::camera_refused().to_owned())?;
    let found = watch(&video, &stream, &stop).await;
    for track in stream.get_tracks() {
        track.unchecked_into::<MediaStreamTrack>().stop();
    }
    video.set_src_object(None);
    found.map_err(|_| say::camera_dark().to_owned())
}

async fn camera() -> Result<MediaStream, JsValue> {
    let facing = Object::new();
    Reflect::set(&facing, &"facingMode".into(), &"environment".into())?;
    let wanted = MediaStreamConstraints::new();
    wanted.set_video(&facing);
    let devices = window().navigator().media_devices()?;
    let stream = JsFuture::from(devices.get_user_media_with_constraints(&wanted)?).await?;
    stream.dyn_into()
}

async fn watch(
    video: &HtmlVideoElement,
    stream: &MediaStream,
    stop: &Cell<bool>,
) -> Result<Option<String>, JsValue> {
    video.set_src_object(Some(stream));
    JsFuture::from(video.play()?).await?;
    let reader = reader()?;
    let detect: Function = Reflect::get(&reader, &"detect".into())?.dyn_into()?;
    while !stop.get() {
        let seen: Promise = detect.call1(&reader, video)?.dyn_into()?;
        // A picture that can't be read yet is no end of it.
        if let Ok(codes) = JsFuture::from(seen).await {
            let first = Array::from(&codes).get(0);
            let text = Reflect::get(&first, &"rawValue".into()).ok();
            if let Some(text) = text.and_then(|text| text.as_string()) {
                return Ok(Some(text));
            }
        }
        TimeoutFuture::new(PAUSE_MS).await;
    }
    Ok(None)
}

fn reader() -> Result<JsValue, JsValue> {
    let maker: Function = Reflect::get(&window(), &READER.into())?.dyn_into()?;
    let options = Object::new();
    let formats = Array::of1(&"qr_code".into());
    Reflect::set(&options, &"formats".into(), &formats)?;
    Reflect::construct(&maker, &Array::of1(&options))
}
