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

impl Totals {
    /// Counts visits.
    pub fn of<'a>(visits: impl IntoIterator<Item = &'a Visit>) -> Self {
        let mut totals = Self::default();
        let (mut places, mut clinicians) = (BTreeMap::new(), BTreeMap::new());
        let (mut outcomes, mut referrals) = (BTreeMap::new(), BTreeMap::new());
        for visit in visits {
            totals.visits += 1;
            totals.pairs += visit.pairs;
            if let Some(minutes) = visit.minutes {
                totals.minutes += minutes;
                totals.timed += 1;
            }
            *places.entry(visit.place.clone()).or_insert(0) += 1;
            *clinicians.entry(visit.clinician.clone()).or_insert(0) += 1;
            *outcomes.entry(visit.outcome).or_insert(0) += 1;
            if let Some(urgency) = visit.referred {
                *referrals.entry(urgency).or_insert(0) += 1;
            }
        }
        totals.places = named(places);
        totals.clinicians = named(clinicians);
        totals.outcomes = Outcome::ALL
            .map(|one| total(one.words(), outcomes.get(&one)))
            .into();
        totals.referrals = Urgency::ALL
            .map(|one| total(one.word(), referrals.get(&one)))
            .into();
        totals
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
