//! The keeping of frames: what a tablet's storage and a relay's store both promise.

/// The cases of a part, every one in a vault of its own, of which nothing is kept yet.
macro_rules! cases {
    ($($case:ident,)*) => {
        pub async fn all<K: $crate::contract::keeping::Keeps>(
            fresh: &impl AsyncFn(vault::VaultId) -> Result<K, $crate::contract::Breach>,
            outcomes: &mut Vec<$crate::contract::Outcome>,
        ) {
            $(
                let v = $crate::contract::keeping::sample::Vault::numbered(outcomes.len());
                outcomes.push($crate::contract::Outcome {
                    case: stringify!($case),
                    ended: match fresh(v.id).await {
                        Ok(keeper) => $case(&keeper, v).await,
                        Err(breach) => Err(breach),
                    },
                });
            )*
        }
    };
}

mod appends;
mod asking;
mod contents;
mod emptied;
mod heads;
mod keeper;
mod pages;
mod refusals;
mod sample;

pub use keeper::{Keeps, OfRelay, OfTablet};

use super::{Breach, Outcome};
use vault::VaultId;

/// The fewest cases that there are: whoever runs them holds their number to it, so that none gets lost unseen.
pub const FEWEST: usize = 60;

/// Runs every case, each on what `fresh` gives for a vault of which nothing is kept yet.
///
/// The same devices write in all the vaults. So where one store keeps them all, the cases also hold it to keeping vaults apart.
pub async fn run<K: Keeps>(fresh: impl AsyncFn(VaultId) -> Result<K, Breach>) -> Vec<Outcome> {
    let mut outcomes = Vec::new();
    heads::all(&fresh, &mut outcomes).await;
    appends::all(&fresh, &mut outcomes).await;
    contents::all(&fresh, &mut outcomes).await;
    refusals::all(&fresh, &mut outcomes).await;
    pages::all(&fresh, &mut outcomes).await;
    emptied::all(&fresh, &mut outcomes).await;
    outcomes
}
