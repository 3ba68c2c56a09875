//! The service worker: the app's files kept on the tablet, one version at a time.

use ::words::app::session as say;
use js_sys::{Object, Reflect};
use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{ServiceWorkerContainer, ServiceWorkerRegistration};

/// What the page knows of its own files.
#[derive(Clone, Copy)]
pub struct Offline {
    /// The files are kept on the tablet and this page runs from them.
    pub ready: RwSignal<bool>,
    /// A newer version is kept as well, and waits to be used.
    pub newer_waits: RwSignal<bool>,
    /// What went wrong in keeping the files, if anything did.
    pub trouble: RwSignal<Option<String>>,
    registration: StoredValue<Option<ServiceWorkerRegistration>, LocalStorage>,
}

/// Registers the service worker and follows it.
pub fn start() -> Offline {
    let offline = Offline {
        ready: RwSignal::new(false),
        newer_waits: RwSignal::new(false),
        trouble: RwSignal::new(None),
        registration: StoredValue::new_local(None),
    };
    let Some(container) = container() else {
        offline.trouble.set(Some(say::offline_impossible().into()));
        return offline;
    };
    offline.ready.set(container.controller().is_some());
    reload_on_new_version(&container, offline);
    leptos::task::spawn_local(async move {
        if let Err(error) = register(&container, offline).await {
            let why = js_sys::Error::from(error).message();
            // Without a network the registered worker goes on as it is; only a first visit has a reason to say so.
            if !offline.ready.get_untracked() {
                offline
                    .trouble
                    .set(Some(say::offline_failed(&String::from(why))));
            }
        }
    });
    offline
}

impl Offline {
    /// Lets the waiting version take over; the page then loads itself anew from it.
    pub fn use_newer(self) {
        let waiting = self
            .registration
            .with_value(|kept| kept.as_ref().and_then(ServiceWorkerRegistration::waiting));
        let Some(waiting) = waiting else { return };
        let message = Object::new();
        let _ = Reflect::set(&message, &"kind".into(), &"take-over".into());
        let _ = waiting.post_message(&message);
    }
}

/// The page's way to the worker, where the browser has one.
pub(super) fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    let offered = Reflect::has(&navigator, &"serviceWorker".into()).unwrap_or(false);
    offered.then(|| navigator.service_worker())
}

async fn register(container: &ServiceWorkerContainer, offline: Offline) -> Result<(), JsValue> {
    let registration = JsFuture::from(container.register("/sw.js")).await?;
    let registration: ServiceWorkerRegistration = registration.dyn_into()?;
    offline.newer_waits.set(newer_waits(&registration));
    follow_updates(&registration, offline);
    offline.registration.set_value(Some(registration));
    JsFuture::from(container.ready()?).await?;
    Ok(())
}

/// Whether a worker waits while another has charge. Asked anew at every step that a worker takes, and never told from its step
/// alone: an engine may tell of the first worker's being there only when it has charge already.
fn newer_waits(registration: &ServiceWorkerRegistration) -> bool {
    let controlled = container().is_some_and(|container| container.controller().is_some());
    controlled && registration.waiting().is_some()
}

fn follow_updates(registration: &ServiceWorkerRegistration, offline: Offline) {
    let watched = registration.clone();
    let on_found = Closure::<dyn Fn()>::new(move || {
        let Some(worker) = watched.installing() else {
            return;
        };
        let followed = watched.clone();
        let on_change =
            Closure::<dyn Fn()>::new(move || offline.newer_waits.set(newer_waits(&followed)));
        worker.set_onstatechange(Some(on_change.as_ref().unchecked_ref()));
        on_change.forget();
    });
    registration.set_onupdatefound(Some(on_found.as_ref().unchecked_ref()));
    on_found.forget();
}

/// The first worker only takes charge of a page that runs the same files already; a later one brings others, so the page
/// loads anew rather than run one version's page on another's files.
fn reload_on_new_version(container: &ServiceWorkerContainer, offline: Offline) {
    let on_change = Closure::<dyn Fn()>::new(move || {
        if offline.ready.get_untracked() {
            let _ = window().location().reload();
        }
        offline.ready.set(true);
    });
    container.set_oncontrollerchange(Some(on_change.as_ref().unchecked_ref()));
    on_change.forget();
}
