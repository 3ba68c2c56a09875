//! What every place that keeps frames promises, and what every tablet's storage promises beyond that, over the browser's own.

use crate::{Case, Ended, Set};
use storage::{IdbStorage, Whose};
use sync::contract::keeping::{self, OfTablet};
use sync::contract::{Outcome, tablet};
use sync::{Storage, StorageError};

/// Every case on the real database of this address, which is wiped before each.
pub async fn by_the_browser() -> [Set; 2] {
    let frames = keeping::run(async |_| Ok(OfTablet(fresh().await?))).await;
    let rest = match tablet::run(fresh).await {
        Ok(outcomes) => outcomes.into_iter().map(case).collect(),
        Err(error) => vec![Case {
            name: "frames to try the storage with".into(),
            ended: Ended::Failed(error.to_string()),
        }],
    };
    [
        set("IndexedDB, frames", frames.into_iter().map(case).collect()),
        set("IndexedDB, beyond frames", rest),
    ]
}

async fn fresh() -> Result<IdbStorage, StorageError> {
    let storage = IdbStorage::open(Whose::Own).await?;
    storage.wipe().await?;
    Ok(storage)
}

fn set(name: &'static str, cases: Vec<Case>) -> Set {
    Set {
        name,
        stated: cases.len(),
        cases,
    }
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
