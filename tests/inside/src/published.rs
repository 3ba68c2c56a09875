//! What others published about the vault's primitives, as the vault tries it.

use crate::{Case, Ended, Set};
use vault::published;

/// Every set.
pub fn sets() -> Vec<Set> {
    let set = |set: published::Set| Set {
        name: set.name,
        stated: set.stated,
        cases: set.cases.into_iter().map(case).collect(),
    };
    published::sets().into_iter().map(set).collect()
}

fn case(case: published::Case) -> Case {
    Case {
        name: case.name,
        ended: match case.ended {
            published::Ended::Passed => Ended::Passed,
            published::Ended::LeftOut(why) => Ended::LeftOut(why),
            published::Ended::Failed(how) => Ended::Failed(how.to_owned()),
        },
    }
}
