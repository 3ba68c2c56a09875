//! Carry files: everything from one tablet to another without any relay.

use super::Door;
use crate::edge::clock;
use ::words::app::session as say;
use said::{InWords, carried_roll};
use std::sync::Arc;
use sync::CarriedRoll;

/// A carry file that is ready to go.
#[derive(Clone)]
pub struct Carried {
    /// What to call it.
    pub name: String,
    /// What is in it, for whoever takes it along.
    pub said: String,
    /// The file.
    pub bytes: Arc<Vec<u8>>,
}

impl Door {
    /// A carry file of everything, or of what the other side lacks, going by a file that came from there.
    ///
    /// # Errors
    /// One sentence, such as that the other side lacks nothing.
    pub async fn carry_out(self, theirs: Option<Vec<u8>>) -> Result<Carried, String> {
        let open = self.held()?;
        let exported = open.ledger.carry_out(theirs.as_deref()).await;
        let exported = exported.map_err(|error| error.in_words())?;
        Ok(Carried {
            name: format!("lightround {}.carry", clock::today()),
            said: exported.in_words(),
            bytes: Arc::new(exported.bytes),
        })
    }

    /// Takes a carry file in; gives a sentence on what came of it.
    ///
    /// # Errors
    /// One sentence; nothing was changed then, unless the storage failed midway, and the same file may be taken again.
    pub async fn carry_in(self, bytes: &[u8]) -> Result<String, String> {
        let open = self.held()?;
        let report = open.ledger.carry_in(bytes).await;
        let report = report.map_err(|error| error.in_words())?;
        self.bring_in(&open).await;
        let roll = open.ledger.carry_roll_in(bytes).await;
        let roll = roll.map_err(|error| error.in_words())?;
        let tablets = carried_roll(&roll).map(str::to_owned);
        let only_tablets =
            report.new == 0 && report.apart.is_empty() && matches!(roll, CarriedRoll::Taken(_));
        if let CarriedRoll::Taken(found) = roll {
            self.admit(&open, found).await;
            self.look_at_tablets(&open).await;
        }
        self.tend_keys(&open).await;
        self.go_home();
        if only_tablets {
            return Ok(say::only_tablets_newer().to_owned());
        }
        let said = [Some(report.in_words()), tablets];
        Ok(said.into_iter().flatten().collect::<Vec<_>>().join("; "))
    }
}
