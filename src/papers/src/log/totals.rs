//! How many of what, over all visits that are wanted.

use std::collections::BTreeMap;

use record::Urgency;

use super::{Outcome, Visit};

/// A number of visits of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Total {
    /// Which kind: a place, an outcome.
    pub name: String,
    /// How many.
    pub count: u32,
}

/// The totals of a log.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Totals {
    /// All visits.
    pub visits: u32,
    /// By place, in the order of the alphabet.
    pub places: Vec<Total>,
    /// By clinician.
    pub clinicians: Vec<Total>,
    /// By outcome; none is left out.
    pub outcomes: Vec<Total>,
    /// Referrals by urgency; none is left out.
    pub referrals: Vec<Total>,
    /// Pairs of glasses ordered.
    pub pairs: u32,
    /// Minutes of the visits whose time is known.
    pub minutes: u32,
    /// How many those are.
    pub timed: u32,
}

/// Totals while they are counted.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    visits: u32,
    pairs: u32,
    minutes: u32,
    timed: u32,
    places: BTreeMap<String, u32>,
    clinicians: BTreeMap<String, u32>,
    outcomes: BTreeMap<Outcome, u32>,
    referrals: BTreeMap<Urgency, u32>,
}

impl Tally {
    /// Counts a visit.
    pub fn count(&mut self, visit: &Visit) {
        self.visits += 1;
        self.pairs += visit.pairs;
        if let Some(minutes) = visit.minutes {
            self.minutes += minutes;
            self.timed += 1;
        }
        *self.places.entry(visit.place.clone()).or_insert(0) += 1;
        *self.clinicians.entry(visit.clinician.clone()).or_insert(0) += 1;
        *self.outcomes.entry(visit.outcome).or_insert(0) += 1;
        if let Some(urgency) = visit.referred {
            *self.referrals.entry(urgency).or_insert(0) += 1;
        }
    }

    /// The totals of what was counted.
    pub fn totals(self) -> Totals {
        let outcome = |one: Outcome| total(one.words(), self.outcomes.get(&one));
        let referral = |one: Urgency| total(one.word(), self.referrals.get(&one));
        Totals {
            visits: self.visits,
            outcomes: Outcome::ALL.map(outcome).into(),
            referrals: Urgency::ALL.map(referral).into(),
            places: named(self.places),
            clinicians: named(self.clinicians),
            pairs: self.pairs,
            minutes: self.minutes,
            timed: self.timed,
        }
    }
}

impl Totals {
    /// Counts visits.
    pub fn of<'a>(visits: impl IntoIterator<Item = &'a Visit>) -> Self {
        let mut tally = Tally::default();
        visits.into_iter().for_each(|visit| tally.count(visit));
        tally.totals()
    }

    /// Minutes a visit, where any time is known.
    pub fn minutes_a_visit(&self) -> Option<f64> {
        (self.timed > 0).then(|| f64::from(self.minutes) / f64::from(self.timed))
    }
}

fn named(counts: BTreeMap<String, u32>) -> Vec<Total> {
    let each = counts.into_iter();
    each.map(|(name, count)| Total { name, count }).collect()
}

fn total(name: &str, count: Option<&u32>) -> Total {
    Total {
        name: name.to_owned(),
        count: count.copied().unwrap_or_default(),
    }
}
