//! Hearing from the relay that there is something new. A stream that ends, or never was one, is no trouble: what it would have
//! told is found out a little later.

use super::home::{Going, signed_now};
use super::{Door, Gate, Open};
use crate::edge::wire::{self, Ear};
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::{Rc, Weak};
use sync::exchange::{Status, news};
use vault::request::Asked;

/// After a stream has ended: at random in between, so that not all tablets come at once to a relay that is back.
const AGAIN_MS: (f64, f64) = (1_000.0, 6_000.0);
/// Where there is no stream, because a proxy or an older relay knows none.
const ASK_MS: u32 = 180_000;

/// What goes on with the relay's news.
#[derive(Default)]
pub(super) struct Listening {
    ear: RefCell<Option<Ear>>,
    later: RefCell<Option<Timeout>>,
}

impl Door {
    /// Listens, after a round that the relay has answered; once at a time.
    pub(super) fn listen(self, open: &Open, going: &Rc<Going>) {
        let online = self.home.with_untracked(|home| {
            let status = home.as_ref().map(|home| &home.status);
            matches!(status, Some(Status::Online))
        });
        let listens = going.listening.ear.borrow().is_some();
        if !online || listens || self.gate.get_untracked() != Gate::Open {
            return;
        }
        let path = news::path(open.ledger.vault());
        let asked = Asked {
            method: news::METHOD,
            path: &path,
            body: &[],
        };
        let now = signed_now().saturating_add(going.ahead.get());
        let (Some(ear), Ok(vouched)) = (Ear::new(), open.ledger.vouch(asked, now.unsigned_abs()))
        else {
            return;
        };
        let until = ear.signal();
        going.listening.ear.replace(Some(ear));
        let going = Rc::downgrade(going);
        leptos::task::spawn_local(async move {
            let mut events = news::Events::default();
            let hear = |bytes: &[u8]| {
                if events.is_new(bytes) {
                    self.go_home();
                }
            };
            let was_one = wire::listen(&path, &vouched.to_string(), &until, hear).await;
            self.listen_later(&going, was_one);
        });
    }

    /// The stream is over. The next round begins another.
    fn listen_later(self, going: &Weak<Going>, was_one: bool) {
        // A locked vault hears nothing any more.
        let Some(going) = going.upgrade() else { return };
        going.listening.ear.replace(None);
        let millis = if was_one {
            let (least, most) = AGAIN_MS;
            (least + js_sys::Math::random() * (most - least)) as u32
        } else {
            ASK_MS
        };
        let later = Timeout::new(millis, move || self.go_home());
        going.listening.later.replace(Some(later));
    }
}
