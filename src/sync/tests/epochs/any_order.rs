//! Whatever happens in whatever order.

use crate::clinic::{Clinic, places};
use futures::executor::block_on;
use proptest::prelude::*;
use std::collections::BTreeSet;
use sync::Fault;
use vault::Role;

#[derive(Clone, Debug)]
enum Step {
    Write(usize),
    Bring(usize, usize),
    Enrol(usize),
    Remove(usize, usize),
    Renew(usize),
    Restart(usize),
}

fn step() -> impl Strategy<Value = Step> {
    let at = 0..6_usize;
    prop_oneof![
        5 => at.clone().prop_map(Step::Write),
        6 => (at.clone(), at.clone()).prop_map(|(from, to)| Step::Bring(from, to)),
        1 => at.clone().prop_map(Step::Enrol),
        1 => (at.clone(), at.clone()).prop_map(|(lead, who)| Step::Remove(lead, who)),
        3 => at.clone().prop_map(Step::Renew),
        1 => at.prop_map(Step::Restart),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever happens in whatever order: once all is brought to all and the leads have done what is due, everybody who
    /// belongs to the vault reads the same and writes under the same key, which no removed device has. Two things can't be
    /// had, and are said: what a lead wrote under a key that it was removed before it handed on, and a tablet that such a
    /// lead brought in under that key, which has to come in anew.
    #[test]
    fn everybody_who_stays_comes_to_the_same(steps in proptest::collection::vec(step(), 1..40)) {
        let mut clinic = Clinic::new();
        for (number, step) in steps.into_iter().enumerate() {
            let count = clinic.tablets.len();
            match step {
                Step::Write(at) => clinic.write(at % count, format!("{number}").as_bytes()),
                Step::Bring(from, to) if from % count != to % count => clinic.bring(from % count, to % count),
                Step::Enrol(lead) if count < 6 && clinic.roll().role(clinic.device(lead % count)) == Some(Role::Lead) => {
                    clinic.enrol(lead % count, if number % 2 == 0 { Role::Lead } else { Role::Clinician });
                }
                Step::Remove(lead, who) if lead % count != who % count => {
                    clinic.remove(lead % count, who % count);
                }
                Step::Renew(at) => {
                    let tablet = &clinic.tablets[at % count];
                    if tablet.here {
                        let _ = block_on(tablet.ledger.renew_keys());
                    }
                }
                Step::Restart(at) => {
                    let at = at % count;
                    if clinic.tablets[at].here {
                        clinic.tablets[at].ledger = clinic.reopened(at).ledger;
                    }
                }
                _ => {}
            }
        }
        let staying: Vec<usize> = (0..clinic.tablets.len()).filter(|at| clinic.tablets[*at].here).collect();
        for _ in 0..3 {
            clinic.bring_all();
            for at in &staying {
                let _ = block_on(clinic.tablets[*at].ledger.renew_keys());
            }
        }
        clinic.bring_all();
        let opened: Vec<_> = staying.iter().map(|at| clinic.reopened(*at)).collect();
        let unread: BTreeSet<_> = opened.iter().flat_map(|opened| &opened.damage).map(|damage| (damage.device, damage.sequence)).collect();
        let unmet: Vec<_> = staying.iter().copied().filter(|at| unread.contains(&(clinic.device(*at), 1))).collect();
        for at in &unmet {
            prop_assert!(!clinic.tablets[clinic.tablets[*at].host].here);
        }
        let met: Vec<_> = staying.iter().zip(&opened).filter(|(at, _)| !unmet.contains(at)).collect();
        let stays = |device| met.iter().any(|(at, _)| clinic.device(**at) == device);
        for (_, opened) in &met {
            for damage in &opened.damage {
                prop_assert_eq!(&damage.fault, &Fault::NoKey);
                prop_assert!(!stays(damage.device), "{:?}", damage);
            }
            prop_assert_eq!(places(opened, &unread), places(met[0].1, &unread));
        }
        let current: BTreeSet<_> = met.iter().map(|(at, _)| clinic.open_keys(**at).epoch_now()).collect();
        prop_assert!(current.len() <= 1, "{:?}", current);
        for (at, tablet) in clinic.tablets.iter().enumerate().filter(|(_, tablet)| !tablet.here) {
            let knows = current.contains(&clinic.open_keys(at).epoch_now());
            prop_assert!(!knows, "a removed tablet has the present key: {:?}", tablet.file.device());
        }
    }
}
