//! The open vault: what every page reads from and writes to.
//!
//! [`Door`] opens and locks it. Reading is synchronous, from the folded [`Story`]; writing is durable before it is
//! admitted to the story, so a page never shows as kept what is not.

mod carrying;
mod desk;
mod finder;
mod from_elsewhere;
mod gatekeeping;
mod home;
mod listening;
mod made_up;
mod opening;
mod people;
mod platform;
mod rounds;
pub mod snapshot;
mod standing;
mod tablets;
mod wording;
mod writing;

pub use carrying::Carried;
pub use home::Home;
pub use standing::Standing;
pub use tablets::{Coming, hear_offer, hear_packet, hear_reveal};

use crate::edge::single::Writer;
use ::words::app::session as say;
use finder::Finder;
use futures::lock::Mutex;
use home::Going;
use leptos::prelude::*;
use record::{Clock, DeviceId, Draft, ExamId, SectionKind, Story};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use storage::IdbStorage;
use sync::Ledger;
use sync::checkpoint::Resumed;

/// Under which name a draft keeps the reason of an amendment while it is typed.
pub const REASON: &str = "reason";

/// What stands between a person and the records.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Gate {
    /// Finding out.
    Looking,
    /// There is no vault on this tablet yet.
    NoVault,
    /// There is one, and it is locked.
    Locked {
        /// Why, where there is something to say.
        note: Option<String>,
    },
    /// Another tab has it open.
    OtherTab,
    /// It can't be opened here.
    Broken {
        /// Why.
        sentence: String,
    },
    /// It is open.
    Open,
}

/// Whether what is on the screen is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// All of it.
    Kept,
    /// It is being kept just now.
    Underway,
    /// The last change could not be kept; it stands on the screen and is tried again with the next.
    Trouble(String),
}

impl Keeping {
    /// A word for it that a style or a test can rely on.
    pub fn slug(&self) -> &'static str {
        match self {
            Self::Kept => "kept",
            Self::Underway => "underway",
            Self::Trouble(_) => "trouble",
        }
    }
}

/// What a new vault is made with.
#[derive(Clone)]
pub struct NewVault {
    /// The passphrase.
    pub passphrase: String,
    /// Who signs.
    pub examiner: String,
    /// What this tablet is called.
    pub tablet: String,
}

/// Which draft: an exam's section.
pub type DraftOf = (ExamId, SectionKind);

/// The vault's door. Copied freely; everything behind it is shared.
#[derive(Clone, Copy)]
pub struct Door {
    /// What stands between a person and the records.
    pub gate: RwSignal<Gate>,
    /// Whether what is on the screen is kept.
    pub keeping: RwSignal<Keeping>,
    /// What could not be read when the vault was opened, a sentence each.
    pub damaged: RwSignal<Vec<String>>,
    /// Where reading began when the vault was opened: a snapshot spares what it covers.
    pub resumed: RwSignal<Resumed>,
    /// Who signs.
    pub examiner: RwSignal<Option<String>>,
    /// How things stand with the relay; none where this vault was never opened on one.
    pub home: RwSignal<Option<Home>>,
    /// Whether the vault behind it holds made-up people.
    pub made_up: RwSignal<bool>,
    /// Where this tablet stands in the vault.
    pub standing: Standing,
    finder: Finder,
    story: RwSignal<Story>,
    drafts: RwSignal<BTreeMap<DraftOf, Draft>>,
    /// What is told on papers beside the record, half written.
    wordings: RwSignal<BTreeMap<wording::PaperOf, papers::Told>>,
    open: StoredValue<Option<Rc<Open>>, LocalStorage>,
    /// The right to write, from the first look on and until another tab asks for it; the vault may be locked meanwhile.
    writer: StoredValue<Option<Writer>, LocalStorage>,
    /// Whether this tab stands in line for the right to write.
    waiting: StoredValue<bool, LocalStorage>,
}

/// What is held while the vault is open; dropping it wipes the keys.
struct Open {
    ledger: Ledger<IdbStorage>,
    clock: RefCell<Clock>,
    /// Drafts that changed since they were last kept.
    changed: RefCell<BTreeSet<DraftOf>>,
    keeping_now: RefCell<bool>,
    /// What goes on with the relay, where this vault was opened on one.
    going: RefCell<Option<Rc<Going>>>,
    /// Held while a round is changed: a second tap is planned upon what the first one wrote.
    changing: Mutex<()>,
}

impl Door {
    /// A door that has not been looked at yet.
    pub fn new() -> Self {
        Self {
            gate: RwSignal::new(Gate::Looking),
            keeping: RwSignal::new(Keeping::Kept),
            damaged: RwSignal::new(Vec::new()),
            resumed: RwSignal::new(Resumed::Nowhere),
            examiner: RwSignal::new(None),
            home: RwSignal::new(None),
            made_up: RwSignal::new(false),
            standing: Standing::new(),
            finder: Finder::new(),
            story: RwSignal::new(Story::default()),
            drafts: RwSignal::new(BTreeMap::new()),
            wordings: RwSignal::new(BTreeMap::new()),
            open: StoredValue::new_local(None),
            writer: StoredValue::new_local(None),
            waiting: StoredValue::new_local(false),
        }
    }

    /// Everything on record; empty while the vault is locked.
    pub fn story(self) -> RwSignal<Story> {
        self.story
    }

    /// The device that this is; nothing while the vault is locked.
    pub fn device(self) -> Option<DeviceId> {
        let open = self.held().ok()?;
        Some(DeviceId(*open.ledger.device().as_bytes()))
    }

    fn held(self) -> Result<Rc<Open>, String> {
        self.open
            .with_value(Clone::clone)
            .ok_or_else(|| say::vault_locked().to_owned())
    }
}
