//! Other tablets: coming in, what they are called, what they may do, going.

use super::opening::fresh;
use super::{Door, Open};
use ::words::app::session as say;
use leptos::prelude::*;
use record::PersonId;
use said::InWords;
use std::collections::BTreeSet;
use sync::carry::CarryFile;
use sync::{Found, LeadError};
use vault::enrolment::{
    Acquainted, Arrival, Checked, Host, Message, Newcomer, Offer, Packet, Request, Reveal,
};
use vault::{DeviceId, Frame, RecoveryCode, Role, Statement, Subject, recover};

/// What a tablet begins with beside its keys.
pub(super) struct Beginning {
    /// Who signs.
    pub examiner: String,
    /// The list of tablets; empty where there is none.
    pub roll: Vec<Statement>,
    /// Whether its entries go to this address's relay.
    pub relay: bool,
}

/// Whoever comes to a vault that is on another tablet or on paper.
#[derive(Clone)]
pub struct Coming {
    /// Who signs.
    pub examiner: String,
    /// What this tablet is called.
    pub tablet: String,
    /// What is to open it.
    pub passphrase: String,
}

/// The lead's side.
impl Door {
    /// Takes the first code of a tablet that wants to come in.
    ///
    /// # Errors
    /// One sentence.
    pub async fn hear_request(self, text: &str) -> Result<Host, String> {
        let request = Request::read(text).map_err(|error| error.in_words())?;
        let host = self.held()?.ledger.receive(request).await;
        host.map_err(|error| error.in_words())
    }

    /// Lets it in, once somebody has seen the same words on both; gives the last code, for it alone.
    ///
    /// # Errors
    /// One sentence; it is not let in then.
    pub async fn let_in(self, checked: Checked, role: Role) -> Result<Vec<String>, String> {
        let open = self.held()?;
        let relay = self.home.with_untracked(Option::is_some);
        let address = window().location().origin().unwrap_or_default();
        let relay = relay.then_some(address.as_str());
        let packet = open.ledger.admit(checked, role, relay).await;
        let packet = packet.map_err(|error| error.in_words())?;
        self.look_at_tablets(&open).await;
        self.go_home();
        Ok(packet.lines())
    }

    /// Gives a tablet another role, or lets one in that holds the keys already.
    ///
    /// # Errors
    /// One sentence; it keeps its role then.
    pub async fn set_role(self, device: DeviceId, role: Role) -> Result<(), String> {
        let open = self.held()?;
        let changed = open.ledger.set_role(device, role).await;
        self.changed(&open, changed).await
    }

    /// Removes a tablet, and changes the keys so that it reads nothing of what comes.
    ///
    /// # Errors
    /// One sentence; it stays then.
    pub async fn remove_tablet(self, device: DeviceId) -> Result<(), String> {
        let open = self.held()?;
        let changed = open.ledger.remove(device).await;
        self.changed(&open, changed).await
    }

    async fn changed(self, open: &Open, changed: Result<Found, LeadError>) -> Result<(), String> {
        let found = changed.map_err(|error| error.in_words())?;
        self.admit(open, found).await;
        self.tend_keys(open).await;
        self.look_at_tablets(open).await;
        self.go_home();
        Ok(())
    }

    /// Calls this tablet something else.
    ///
    /// # Errors
    /// One sentence.
    pub async fn rename_tablet(self, name: &str) -> Result<(), String> {
        let name = name.trim();
        if name.is_empty() {
            return Err(say::tablet_needs_name().into());
        }
        let open = self.held()?;
        let renamed = open.ledger.rename(name).await;
        renamed.map_err(|error| error.in_words())?;
        self.look_at_tablets(&open).await;
        self.go_home();
        Ok(())
    }
}

/// Takes the third code. What can't be read leaves the host waiting; a wrong answer ends it.
///
/// # Errors
/// One sentence.
pub fn hear_reveal(host: &mut Option<Host>, text: &str) -> Result<Checked, String> {
    let reveal = Reveal::read(text).map_err(|error| error.in_words())?;
    let host = host.take().ok_or(say::begin_anew())?;
    host.check(&reveal).map_err(|error| error.in_words())
}

/// Takes the second code; what can't be read leaves the newcomer asking.
///
/// # Errors
/// One sentence.
pub fn hear_offer(newcomer: &mut Option<Newcomer>, text: &str) -> Result<Acquainted, String> {
    let offer = Offer::read(text).map_err(|error| error.in_words())?;
    let newcomer = newcomer.take().ok_or(say::begin_anew())?;
    Ok(newcomer.meet(offer))
}

/// Takes the last code; one that is not taken leaves it waiting.
///
/// # Errors
/// One sentence.
pub fn hear_packet(waiting: &mut Option<Acquainted>, text: &str) -> Result<Arrival, String> {
    let packet = Packet::read(text).map_err(|error| error.in_words())?;
    let acquainted = waiting.take().ok_or(say::begin_anew())?;
    acquainted.take(&packet).map_err(|rejected| {
        let sentence = rejected.why.in_words();
        *waiting = Some(rejected.waiting);
        sentence
    })
}

/// The new tablet's side.
impl Door {
    /// Opens the vault on this tablet, which a lead has let in.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn arrive(self, arrival: Arrival, coming: Coming) -> Result<(), String> {
        self.must_be_writer()?;
        let (key, params) = fresh(&coming.passphrase).await?;
        let beginning = Beginning {
            examiner: coming.examiner,
            roll: arrival.roll.clone(),
            relay: arrival.relay.is_some(),
        };
        let kept = arrival.keep(&key, params);
        let (file, keys) = kept.map_err(|error| error.in_words())?;
        self.begin(&file, keys, beginning).await
    }

    /// Brings a vault back on a new tablet, from its recovery sheet and a carry file; gives a sentence on what came.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn bring_back(
        self,
        code: &str,
        carried: &[u8],
        coming: Coming,
    ) -> Result<(), String> {
        self.must_be_writer()?;
        let code: RecoveryCode = code
            .parse()
            .map_err(|error: vault::RecoveryCodeError| error.in_words())?;
        let file = CarryFile::parse(carried).map_err(|error| error.in_words())?;
        let vault = file.vault;
        let frames: Vec<Frame> = file.logs.into_iter().flat_map(|log| log.frames).collect();
        let recovered = recover(&code, vault, &frames).map_err(|error| error.in_words())?;
        let (key, params) = fresh(&coming.passphrase).await?;
        let kept = recovered.keep(&key, params, &coming.tablet);
        let (file, keys) = kept.map_err(|error| error.in_words())?;
        let beginning = Beginning {
            examiner: coming.examiner,
            roll: Vec::new(),
            relay: false,
        };
        self.begin(&file, keys, beginning).await?;
        self.carry_in(carried).await.map(drop)
    }
}

/// Somebody who is erased.
impl Door {
    /// Erases a person for good, here and, as they hear of it, on all tablets; only a lead does.
    ///
    /// # Errors
    /// One sentence; it says so where a part is done already.
    pub async fn erase(self, person: PersonId) -> Result<(), String> {
        self.settle().await;
        let open = self.held()?;
        let now = crate::edge::clock::now_ms();
        let all = self.story.with_untracked(|story| {
            let joined = story.joined(&person).into_iter();
            let pairs = joined.flat_map(|joined| [joined.same.kept, joined.same.other]);
            pairs.chain([person]).collect::<BTreeSet<_>>()
        });
        let mut done = false;
        for one in all {
            let subject = Subject::from_bytes(*one.as_uuid().as_bytes());
            match open.ledger.erase(subject, now).await {
                Ok(_) => done = true,
                Err(LeadError::Nobody) => {}
                Err(error) => return Err(error.in_words()),
            }
        }
        if !done {
            return Err(LeadError::Nobody.in_words());
        }
        self.read_anew(&open).await;
        self.go_home();
        Ok(())
    }
}
