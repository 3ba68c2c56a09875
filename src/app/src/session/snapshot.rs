//! The snapshot that speeds up opening: kept once the vault is shown, and again when it is locked. Nothing hangs on it but speed,
//! so a failure is not told: the vault opens as before then, only slower.

use super::Door;
use crate::edge::motion;
use sync::Read;
use sync::checkpoint::{Due, Ignored, Resumed};

impl Door {
    /// Keeps what opening found to be due, once the person at the screen waits for nothing.
    pub(super) fn keep_snapshot(self, due: Option<Due>, entries: Vec<Read>) {
        let (Some(due), Ok(open)) = (due, self.held()) else {
            return;
        };
        leptos::task::spawn_local(async move {
            motion::drawn().await;
            let _ = open.ledger.keep_checkpoint(due, &entries).await;
        });
    }

    /// Keeps another one where enough was written since the last: at a quiet moment.
    pub(super) async fn snapshot_if_due(self) {
        if let Ok(open) = self.held() {
            let _ = open.ledger.checkpoint_if_due().await;
        }
    }
}

/// How the vault was opened, in a word that a style or a test can rely on.
pub fn slug(resumed: Resumed) -> &'static str {
    match resumed {
        Resumed::Nowhere => "whole",
        Resumed::After(_) => "snapshot",
        Resumed::Ignored(_) => "anew",
    }
}

/// Why a snapshot was passed over, in a sentence; none where there was nothing to pass over.
pub fn passed_over(resumed: Resumed) -> Option<Ignored> {
    match resumed {
        Resumed::Ignored(why) => Some(why),
        Resumed::Nowhere | Resumed::After(_) => None,
    }
}
