//! Where this tablet stands in the vault: its role, the other tablets, its recovery sheet.

use super::{Door, Open};
use leptos::prelude::*;
use said::InWords;
use std::collections::BTreeMap;
use sync::{Refusal, Tablet, kept_key_file};
use vault::{DeviceId, Role, SlotKey};

/// Under which name it is kept that the recovery sheet is on paper, sealed as a draft is.
const ON_PAPER: &[u8] = b"recovery sheet";

/// Where this tablet stands. Copied freely.
#[derive(Clone, Copy)]
pub struct Standing {
    /// Whether its recovery sheet is made and on paper; none where that is not known yet.
    pub sheet: RwSignal<Option<bool>>,
    /// Whether the vault was made just now, so that the sheet is due.
    pub fresh: RwSignal<bool>,
    /// What this tablet may do; none where it was removed, or not admitted yet.
    pub role: RwSignal<Option<Role>>,
    /// Why nothing can be written here, if so.
    pub refusal: RwSignal<Option<Refusal>>,
    /// All tablets, this one first.
    pub tablets: RwSignal<Vec<Tablet>>,
    /// When each tablet wrote last, as far as that has come here: milliseconds since 1970.
    pub heard: RwSignal<BTreeMap<DeviceId, u64>>,
    /// What opens the key file, for as long as the vault was made just now.
    key: StoredValue<Option<SlotKey>, LocalStorage>,
}

impl Standing {
    pub(super) fn new() -> Self {
        Self {
            sheet: RwSignal::new(None),
            fresh: RwSignal::new(false),
            role: RwSignal::new(None),
            refusal: RwSignal::new(None),
            tablets: RwSignal::new(Vec::new()),
            heard: RwSignal::new(BTreeMap::new()),
            key: StoredValue::new_local(None),
        }
    }

    /// Whether a lead's business is offered here.
    pub fn leads(self) -> bool {
        self.role.get() == Some(Role::Lead)
    }

    /// Whether writing is offered here.
    pub fn writes(self) -> bool {
        self.role.get() != Some(Role::Viewer)
    }

    pub(super) fn just_made(self, key: SlotKey) {
        self.key.set_value(Some(key));
        self.fresh.set(true);
    }

    /// The sheet is made, or put off.
    pub fn settled(self) {
        self.key.set_value(None);
        self.fresh.set(false);
    }

    pub(super) fn take_key(self) -> Option<SlotKey> {
        self.key.try_update_value(Option::take).flatten()
    }

    /// Whether the passphrase has to be typed for what changes the keys.
    pub fn asks_passphrase(self) -> bool {
        self.key.with_value(Option::is_none)
    }

    pub(super) fn hear(self, device: DeviceId, wall_ms: u64) {
        self.heard.update_untracked(|heard| {
            let last = heard.entry(device).or_default();
            *last = wall_ms.max(*last);
        });
    }

    pub(super) fn clear(self) {
        self.settled();
        self.sheet.set(None);
        self.role.set(None);
        self.refusal.set(None);
        self.tablets.set(Vec::new());
        self.heard.set(BTreeMap::new());
    }
}

impl Door {
    /// Finds out where this tablet stands.
    pub(super) async fn take_up_standing(self) {
        let Ok(open) = self.held() else { return };
        let file = kept_key_file(open.ledger.storage()).await;
        let made = file.is_ok_and(|file| file.has_recovery());
        let on_paper = open.ledger.draft(ON_PAPER).await;
        let on_paper = on_paper.is_ok_and(|kept| kept.is_some());
        self.standing.sheet.set(Some(made && on_paper));
        self.look_at_tablets(&open).await;
    }

    /// Shows the tablets as they are now.
    pub(super) async fn look_at_tablets(self, open: &Open) {
        self.standing.role.set(open.ledger.role().await);
        let refusal = open.ledger.refusal().await;
        self.standing.refusal.set(refusal);
        if let Ok(tablets) = open.ledger.tablets().await {
            self.standing.tablets.set(tablets);
        }
        self.standing.heard.notify();
    }

    /// The recovery sheet is on paper now.
    ///
    /// # Errors
    /// One sentence; the reminder stays then.
    pub async fn sheet_is_on_paper(self) -> Result<(), String> {
        let kept = self.held()?.ledger.put_draft(ON_PAPER, &[1]).await;
        kept.map_err(|error| error.in_words())?;
        self.standing.sheet.set(Some(true));
        Ok(())
    }

    /// Another sheet was made, and is on no paper yet.
    pub(super) async fn sheet_is_to_print(self, open: &Open) {
        let _ = open.ledger.remove_draft(ON_PAPER).await;
        self.standing.sheet.set(Some(false));
    }
}
