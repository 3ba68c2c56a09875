//! One tab writes. A Web Lock is held for as long as the vault may be written; another tab can ask for it.

use ::words::app::session as say;
use futures::channel::oneshot;
use js_sys::{Function, Object, Promise, Reflect};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};

const LOCK: &str = "lightround.writer";
const CHANNEL: &str = "lightround.tabs";
const LET_GO: &str = "let-go";

/// Why this tab can't be sure that it is the only writer.
#[derive(Clone, Debug, thiserror::Error)]
pub enum SingleError {
    /// The browser has no Web Locks.
    #[error("{}", say::no_single_writer())]
    NotOffered,
    /// It has them, and the request failed.
    #[error("{}", say::writer_refused(.0))]
    Refused(String),
}

/// The right to write; let go when dropped.
pub struct Writer {
    release: Function,
}

impl Drop for Writer {
    fn drop(&mut self) {
        let _ = self.release.call0(&JsValue::NULL);
    }
}

/// Takes the lock if no other tab holds it.
///
/// # Errors
/// [`SingleError`] where the browser offers no lock or refuses the request.
pub async fn try_hold() -> Result<Option<Writer>, SingleError> {
    request(true).await
}

/// Waits until the lock is free, then takes it.
///
/// # Errors
/// As [`try_hold`].
pub async fn wait_for() -> Result<Writer, SingleError> {
    request(false).await?.ok_or(SingleError::NotOffered)
}

async fn request(only_if_free: bool) -> Result<Option<Writer>, SingleError> {
    let (granted, answer) = oneshot::channel::<Option<Writer>>();
    let granted = Rc::new(RefCell::new(Some(granted)));
    let on_lock = Closure::once(move |lock: JsValue| -> JsValue {
        let Some(granted) = granted.borrow_mut().take() else {
            return JsValue::UNDEFINED;
        };
        if lock.is_null() {
            let _ = granted.send(None);
            return JsValue::UNDEFINED;
        }
        // The browser holds the lock until this promise settles; dropping `Writer` settles it.
        let mut granted = Some(granted);
        Promise::new(&mut |resolve, _| {
            if let Some(granted) = granted.take() {
                let _ = granted.send(Some(Writer { release: resolve }));
            }
        })
        .into()
    });
    ask(only_if_free, on_lock.as_ref().unchecked_ref())?;
    let answer = answer
        .await
        .map_err(|_| SingleError::Refused(say::no_answer().into()));
    drop(on_lock);
    answer
}

fn ask(only_if_free: bool, on_lock: &Function) -> Result<(), SingleError> {
    let navigator = leptos::prelude::window().navigator();
    let locks = Reflect::get(&navigator, &"locks".into()).map_err(|_| SingleError::NotOffered)?;
    if locks.is_undefined() {
        return Err(SingleError::NotOffered);
    }
    let said = |error: JsValue| SingleError::Refused(format!("{error:?}"));
    let request: Function = Reflect::get(&locks, &"request".into())
        .and_then(JsCast::dyn_into)
        .map_err(|_| SingleError::NotOffered)?;
    let options = Object::new();
    Reflect::set(&options, &"ifAvailable".into(), &only_if_free.into()).map_err(said)?;
    request
        .call3(&locks, &LOCK.into(), &options, on_lock)
        .map_err(said)?;
    Ok(())
}

/// Asks whichever tab holds the lock to lock its vault and let go.
pub fn ask_to_let_go() {
    if let Ok(channel) = BroadcastChannel::new(CHANNEL) {
        let _ = channel.post_message(&LET_GO.into());
        channel.close();
    }
}

/// Calls `then` each time another tab asks for the lock. Listens for as long as the page lives.
pub fn on_asked(then: impl Fn() + 'static) {
    let Ok(channel) = BroadcastChannel::new(CHANNEL) else {
        return;
    };
    let listener = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
        if event.data().as_string().as_deref() == Some(LET_GO) {
            then();
        }
    });
    channel.set_onmessage(Some(listener.as_ref().unchecked_ref()));
    listener.forget();
    // The channel must outlive this function, or the browser may collect it with its listener.
    std::mem::forget(channel);
}
