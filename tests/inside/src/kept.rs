//! The contract of every storage, over the browser's own.

use crate::{Case, Ended, Set};
use storage::{IdbStorage, Whose};
use sync::contract::{self, Outcome};
use sync::{Storage, StorageError};

/// Every case on the real database of this address, which is wiped before each.
pub async fn by_the_browser() -> Set {
    let cases = match contract::run(fresh).await {
        Ok(outcomes) => outcomes.into_iter().map(case).collect(),
        Err(error) => vec![Case {
            name: "frames to try the storage with".into(),
            ended: Ended::Failed(error.to_string()),
        }],
    };
    Set {
        name: "IndexedDB",
        stated: cases.len(),
        cases,
    }
}

async fn fresh() -> Result<IdbStorage, StorageError> {
    let storage = IdbStorage::open(Whose::Own).await?;
    storage.wipe().await?;
    Ok(storage)
}

fn case(outcome: Outcome) -> Case {
    Case {
        name: outcome.case.replace('_', " "),
        ended: match outcome.ended {
            Ok(()) => Ended::Passed,
            Err(breach) => Ended::Failed(breach.to_string()),
        },
    }
}
