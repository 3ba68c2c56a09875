//! Carrying what is written home to the clinic's relay, and bringing what others wrote: whenever there may be a network,
//! one round at a time, never in the way of anything.

use super::listening::Listening;
use super::{Door, Gate, Open};
use crate::edge::clock::now_ms;
use crate::edge::{back, wire};
use ::words::app::session as say;
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use record::Entry;
use said::{InWords, held_back};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use sync::exchange::http::{self, Meant};
use sync::exchange::{
    Answer, Exchange, Failure, Host, Notice, Progress, Remembered, Request, RollRefused, Status,
    Vector, round, settle_roll,
};
use sync::{Found, Storage};
use vault::request::Asked;
use vault::{DeviceId, Head, Invitation, Statement};

/// Under which name it is kept what is known of the relay, sealed as a draft is.
pub(super) const RELAY: &[u8] = b"relay";

/// How things stand with the relay, as pages show it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Home {
    /// Whether the relay answers, as far as is known.
    pub status: Status,
    /// How many entries here are not known to be there.
    pub waiting: u64,
    /// How far a round has got that is under way.
    pub underway: Option<Progress>,
    /// When everything was exchanged last: milliseconds since 1970.
    pub last: Option<u64>,
    /// What somebody has to know, a sentence each.
    pub said: Vec<String>,
}

/// What goes on between this tablet and the relay while the vault is open.
pub struct Going {
    /// Taken out while a round is under way.
    exchange: RefCell<Option<Exchange>>,
    /// Something was written during a round.
    again: Cell<bool>,
    remembered: RefCell<Remembered>,
    /// How far the relay's clock is ahead of this tablet's, in milliseconds.
    pub(super) ahead: Cell<i64>,
    /// What the relay says by itself.
    pub(super) listening: Listening,
    /// The next round, where one is to come by itself.
    next: RefCell<Option<Timeout>>,
}

impl Going {
    fn new(open: &Open, remembered: Remembered) -> Self {
        let (vault, device) = (open.ledger.vault(), open.ledger.device());
        Self {
            exchange: RefCell::new(Some(Exchange::new(vault, device, remembered.seen.clone()))),
            again: Cell::new(false),
            remembered: RefCell::new(remembered),
            ahead: Cell::new(0),
            listening: Listening::default(),
            next: RefCell::new(None),
        }
    }

    async fn keep(&self, open: &Open) {
        let remembered = self.remembered.borrow().to_bytes();
        // What isn't remembered is found out anew.
        let _ = open.ledger.put_draft(RELAY, &remembered).await;
    }
}

impl Open {
    /// How far the relay is known to have held a tablet’s entries.
    pub(super) fn seen_of(&self, device: DeviceId) -> Option<Head> {
        let going = self.going.borrow();
        let remembered = going.as_ref()?.remembered.borrow();
        remembered.seen.head(device)
    }
}

impl Door {
    /// Takes up what is known of the relay, where this vault was ever opened on one, and goes there.
    pub(super) async fn take_up_home(self) {
        let Ok(open) = self.held() else { return };
        let kept = open.ledger.draft(RELAY).await.ok().flatten();
        // What can't be read is only the relay's past: it is found out anew.
        let remembered = kept.map(|kept| Remembered::from_bytes(&kept).unwrap_or_default());
        if let Some(remembered) = remembered {
            self.go_there(&open, remembered);
        }
    }

    fn go_there(self, open: &Open, remembered: Remembered) {
        self.home.set(Some(Home {
            status: Status::Offline(None),
            waiting: 0,
            underway: None,
            last: remembered.last,
            said: Vec::new(),
        }));
        open.going
            .replace(Some(Rc::new(Going::new(open, remembered))));
        self.go_home();
    }

    /// Opens this vault on the relay with an invitation, and begins to carry.
    ///
    /// # Errors
    /// One sentence; nothing is changed then.
    pub async fn open_at_relay(self, invitation: &str) -> Result<(), String> {
        let code: Invitation = invitation
            .parse()
            .map_err(|error: vault::NoInvitation| error.in_words())?;
        let open = self.held()?;
        let roll = open.ledger.begin_roll().await;
        let roll = roll.map_err(|error| error.in_words())?;
        let first = *roll.first().ok_or(say::no_list_of_tablets())?;
        let going = Going::new(&open, Remembered::default());
        let line = Line {
            door: self,
            open: &open,
            going: &going,
        };
        let first = Box::new(first);
        line.ask(Request::Open { code, first })
            .await
            .map_err(|failure| failure.in_words())?;
        let remembered = Remembered::default();
        open.ledger
            .put_draft(RELAY, &remembered.to_bytes())
            .await
            .map_err(|error| error.in_words())?;
        self.go_there(&open, remembered);
        Ok(())
    }

    /// Wants an exchange: at the start, when there may be a network again, after something was written, by hand.
    pub fn go_home(self) {
        let Ok(open) = self.held() else { return };
        let Some(going) = open.going.borrow().clone() else {
            return;
        };
        going.next.replace(None);
        let exchange = going.exchange.borrow_mut().take();
        let Some(exchange) = exchange else {
            going.again.set(true);
            return;
        };
        leptos::task::spawn_local(self.go(open, going, exchange));
    }

    async fn go(self, open: Rc<Open>, going: Rc<Going>, mut exchange: Exchange) {
        let wait = loop {
            going.again.set(false);
            let line = Line {
                door: self,
                open: &open,
                going: &going,
            };
            self.settle_tablets(&open, &line).await;
            let rounded = round(&mut exchange, open.ledger.storage(), &line).await;
            let wait = rounded.unwrap_or_else(|error| {
                self.say(error.in_words());
                None
            });
            self.bring_in(&open).await;
            self.tend_keys(&open).await;
            self.count(&open, exchange.seen()).await;
            if wait.is_some() || !going.again.get() {
                break wait;
            }
        };
        going.keep(&open).await;
        going.exchange.replace(Some(exchange));
        self.listen(&open, &going);
        if let (Some(millis), Gate::Open) = (wait, self.gate.get_untracked()) {
            back::ask_to_be_woken();
            let millis = u32::try_from(millis).unwrap_or(u32::MAX);
            let again = Timeout::new(millis, move || self.go_home());
            going.next.replace(Some(again));
        }
    }

    /// Brings the list of tablets here and the relay’s together.
    async fn settle_tablets(self, open: &Open, line: &Line<'_>) {
        let Ok(known) = open.ledger.statements().await else {
            return;
        };
        let (vault, own) = (open.ledger.vault(), open.ledger.device());
        match settle_roll(line, vault, own, &known).await {
            Ok(settled) if settled != known => match open.ledger.take_roll(&settled).await {
                Ok(found) => {
                    self.admit(open, found).await;
                    self.tell_what_was_restated(open, line, &settled).await;
                }
                Err(error) => self.say(error.in_words()),
            },
            // The round itself tells of a relay that can’t be asked.
            Ok(_) | Err(RollRefused::Failed(_)) => {}
            Err(refused) => self.say(refused.in_words()),
        }
    }

    /// Where two leads stated something at once, the relay hears again what came second.
    async fn tell_what_was_restated(self, open: &Open, line: &Line<'_>, settled: &[Statement]) {
        let Ok(known) = open.ledger.statements().await else {
            return;
        };
        if known != settled {
            let (vault, own) = (open.ledger.vault(), open.ledger.device());
            // What fails now is told before the next round.
            let _ = settle_roll(line, vault, own, &known).await;
        }
    }

    /// Reads what a round or a carry file brought, into the story.
    pub(super) async fn bring_in(self, open: &Open) {
        match open.ledger.catch_up().await {
            Ok(found) => self.admit(open, found).await,
            Err(error) => self.say(error.in_words()),
        }
        self.look_at_tablets(open).await;
    }

    /// Reads everything anew, where something is gone that was read before.
    pub(super) async fn read_anew(self, open: &Open) {
        match open.ledger.read_again().await {
            Ok(found) => {
                let mut said = held_back(&found.held);
                let mut clock = open.clock.borrow().clone();
                let story = self.fold(&found.entries, &mut clock, &mut said);
                self.finder.clear();
                self.story.set(story);
                self.drop_stray_drafts();
                self.drop_stray_wordings();
                self.damaged.set(said);
            }
            Err(error) => self.say(error.in_words()),
        }
        self.look_at_tablets(open).await;
    }

    pub(super) async fn admit(self, open: &Open, found: Found) {
        if !found.erased.is_empty() {
            return self.read_anew(open).await;
        }
        for damage in found.damage {
            self.say(damage.in_words());
        }
        for sentence in held_back(&found.held) {
            self.say(sentence);
        }
        let read = found.entries.iter();
        let entries: Vec<Entry> = read
            .filter_map(|read| {
                let entry = Entry::from_cbor(&read.payload).ok()?;
                self.standing.hear(read.device, entry.stamp.wall_ms);
                Some(entry)
            })
            .collect();
        if entries.is_empty() || self.gate.get_untracked() != Gate::Open {
            return;
        }
        self.story.update(|story| {
            for entry in entries {
                open.clock.borrow_mut().witness(entry.stamp);
                if let Err(error) = story.admit(entry) {
                    self.say(error.to_string());
                }
            }
        });
    }

    /// What was half written about somebody who is gone goes as well.
    fn drop_stray_drafts(self) {
        let stray = self.drafts.with_untracked(|drafts| {
            self.story.with_untracked(|story| {
                let kept = drafts.keys().copied();
                kept.filter(|(exam, _)| story.exam(exam).is_none())
                    .collect::<Vec<_>>()
            })
        });
        for (exam, kind) in stray {
            self.drop_draft(exam, kind);
        }
    }

    async fn count(self, open: &Open, seen: &Vector) {
        if let Ok(heads) = open.ledger.storage().vector().await {
            let have: Vector = heads.into_iter().collect();
            self.tell_home(|home| home.waiting = have.count_beyond(seen));
        }
    }

    fn say(self, sentence: String) {
        if self.home.with_untracked(Option::is_none) {
            return self.damaged.update(|said| {
                if !said.contains(&sentence) {
                    said.push(sentence);
                }
            });
        }
        self.tell_home(|home| {
            if !home.said.contains(&sentence) {
                home.said.push(sentence);
            }
        });
    }

    fn tell_home(self, change: impl FnOnce(&mut Home)) {
        let mut home = self.home.get_untracked();
        if let Some(home) = &mut home {
            change(home);
        }
        if home != self.home.get_untracked() {
            self.home.set(home);
        }
    }
}

/// The way to the relay that this app came from.
struct Line<'a> {
    door: Door,
    open: &'a Open,
    going: &'a Going,
}

impl Line<'_> {
    /// Sends a request; where the relay says that the clock is off, once more by the relay's.
    async fn send(&self, request: &Request) -> Result<Answer, Failure> {
        let first = self.once(request).await?;
        let Meant::Clock { now } = first else {
            return meant(first);
        };
        let off = i64::try_from(now).unwrap_or_default() - signed_now();
        self.going.ahead.set(off);
        let minutes = usize::try_from(off.abs() / 60_000).unwrap_or(usize::MAX);
        self.door.say(if off > 0 {
            say::clock_is_slow(minutes)
        } else {
            say::clock_is_fast(minutes)
        });
        meant(self.once(request).await?)
    }

    async fn once(&self, request: &Request) -> Result<Meant, Failure> {
        let path = http::path(self.open.ledger.vault(), request);
        let body = request.to_bytes();
        let asked = Asked {
            method: http::METHOD,
            path: &path,
            body: &body,
        };
        let now = signed_now().saturating_add(self.going.ahead.get());
        let vouched = self
            .open
            .ledger
            .vouch(asked, now.unsigned_abs())
            .map_err(|error| Failure::Refused(error.in_words()))?;
        let reply = wire::post(&path, &body, &vouched.to_string()).await;
        Ok(reply.ok_or(Failure::Unreachable)?.read())
    }
}

pub(super) fn signed_now() -> i64 {
    i64::try_from(now_ms()).unwrap_or(i64::MAX)
}

fn meant(meant: Meant) -> Result<Answer, Failure> {
    match meant {
        Meant::Answer(answer) => Ok(answer),
        Meant::Failed(failure) => Err(failure),
        Meant::Clock { .. } => Err(Failure::Refused(say::clocks_disagree().into())),
    }
}

impl Host for Line<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        // A locked vault asks nothing more; what is under way ends here.
        if self.door.gate.get_untracked() != Gate::Open {
            return Err(Failure::Unreachable);
        }
        self.send(&request).await
    }

    fn random(&self) -> u32 {
        (js_sys::Math::random() * f64::from(u32::MAX)) as u32
    }

    async fn remember(&self, seen: &Vector) {
        self.going.remembered.borrow_mut().seen = seen.clone();
        self.going.keep(self.open).await;
    }

    fn tell(&self, notice: Notice) {
        match notice {
            Notice::Status(status) => self.door.tell_home(|home| {
                if matches!(status, Status::Offline(_)) {
                    home.underway = None;
                }
                home.status = status;
            }),
            Notice::Progress(progress) => {
                self.door.tell_home(|home| home.underway = Some(progress));
            }
            Notice::Finished => {
                let now = now_ms();
                self.going.remembered.borrow_mut().last = Some(now);
                self.door.tell_home(|home| {
                    home.underway = None;
                    home.last = Some(now);
                });
            }
            notice => self.door.say(notice.in_words()),
        }
    }
}
