//! A way into a section: reads one part of it, and puts it.
//!
//! The ways are plain functions of the section, so that a field costs two small closures and not a signal of its own type;
//! what comes out at the end is a [`Spot`] of one of a handful of types.

use super::slate::Slate;
use super::why::{Why, WhyNot};
use leptos::prelude::*;
use record::{Eye, Eyes, Finding, Part as Whole, Section};
use std::sync::Arc;

type Get<T> = Arc<dyn Fn(&Section) -> Option<&T> + Send + Sync>;
type GetMut<T> = Arc<dyn Fn(&mut Section) -> Option<&mut T> + Send + Sync>;

/// One part of the section on the slate. It may be gone: an item that was removed, a lens that was cleared.
pub struct Part<T: 'static> {
    /// Where it stands.
    pub slate: Slate,
    get: Get<T>,
    get_mut: GetMut<T>,
}

// Derived, this would ask the same of T.
impl<T> Clone for Part<T> {
    fn clone(&self) -> Self {
        Self {
            slate: self.slate,
            get: self.get.clone(),
            get_mut: self.get_mut.clone(),
        }
    }
}

/// What a field shows and changes.
#[derive(Clone, Copy)]
pub struct Spot<V: Send + Sync + 'static> {
    /// As it stands.
    pub value: Signal<V>,
    /// Called with each change.
    pub put: Callback<V>,
}

// These two settle the lifetimes of what a closure lends.
fn get<T>(way: impl Fn(&Section) -> Option<&T> + Send + Sync + 'static) -> Get<T> {
    Arc::new(way)
}

fn get_mut<T>(way: impl Fn(&mut Section) -> Option<&mut T> + Send + Sync + 'static) -> GetMut<T> {
    Arc::new(way)
}

impl<T: Whole + 'static> Part<T> {
    /// The whole section.
    pub fn whole(slate: Slate) -> Self {
        Self {
            slate,
            get: get(T::of),
            get_mut: get_mut(T::of_mut),
        }
    }
}

impl<T: 'static> Part<T> {
    /// A field of it.
    pub fn of<U>(&self, field: fn(&T) -> &U, field_mut: fn(&mut T) -> &mut U) -> Part<U> {
        let (outer, outer_mut) = (self.get.clone(), self.get_mut.clone());
        Part {
            slate: self.slate,
            get: get(move |section| outer(section).map(field)),
            get_mut: get_mut(move |section| outer_mut(section).map(field_mut)),
        }
    }

    /// What is in it, where it is there.
    pub fn some<U>(
        &self,
        inner: fn(&T) -> Option<&U>,
        inner_mut: fn(&mut T) -> Option<&mut U>,
    ) -> Part<U> {
        let (outer, outer_mut) = (self.get.clone(), self.get_mut.clone());
        Part {
            slate: self.slate,
            get: get(move |section| outer(section).and_then(inner)),
            get_mut: get_mut(move |section| outer_mut(section).and_then(inner_mut)),
        }
    }

    /// Reads it; follows every change.
    pub fn ask<V>(&self, read: impl FnOnce(&T) -> V) -> Option<V> {
        self.slate.now.with(|now| (self.get)(now).map(read))
    }

    /// Changes it.
    pub fn change(&self, change: impl FnOnce(&mut T)) {
        let mut next = self.slate.now.get_untracked();
        if let Some(part) = (self.get_mut)(&mut next) {
            change(part);
            self.slate.put.run(next);
        }
    }

    /// Something of it as a signal that speaks only when that has changed.
    pub fn shown<V>(&self, read: impl Fn(&T) -> V + Send + Sync + 'static) -> Signal<V>
    where
        V: Default + Clone + PartialEq + Send + Sync + 'static,
    {
        let part = self.clone();
        memo(Arc::new(move || part.ask(&read).unwrap_or_default()))
    }

    /// Something of it, to show and to change.
    pub fn spot<V>(
        &self,
        read: impl Fn(&T) -> V + Send + Sync + 'static,
        put: impl Fn(&mut T, V) + Send + Sync + 'static,
    ) -> Spot<V>
    where
        V: Default + Clone + PartialEq + Send + Sync + 'static,
    {
        let part = self.clone();
        Spot {
            value: self.shown(read),
            put: Callback::new(move |value| part.change(|part| put(part, value))),
        }
    }

    /// What stood there last time, in words.
    pub fn before(
        &self,
        words: impl Fn(&T) -> Option<String> + Send + Sync + 'static,
    ) -> Signal<Option<String>> {
        let (slate, way) = (self.slate, self.get.clone());
        memo(Arc::new(move || {
            slate.before.with(|before| {
                let (_, section) = before.as_ref()?;
                words(way(section)?)
            })
        }))
    }

    /// Whether one tap filled it in, and nobody has changed it since.
    pub fn tapped(&self) -> Signal<bool>
    where
        T: PartialEq,
    {
        let (slate, way) = (self.slate, self.get.clone());
        memo(Arc::new(move || {
            slate.tap.with(|tap| {
                let Some((before, after)) = tap else {
                    return false;
                };
                way(before) != way(after) && slate.now.with(|now| way(now) == way(after))
            })
        }))
    }
}

impl<T> Part<Vec<T>> {
    /// One of them, counted from 0.
    pub fn item(&self, place: usize) -> Part<T> {
        let (outer, outer_mut) = (self.get.clone(), self.get_mut.clone());
        Part {
            slate: self.slate,
            get: get(move |section| outer(section)?.get(place)),
            get_mut: get_mut(move |section| outer_mut(section)?.get_mut(place)),
        }
    }

    /// Takes one out.
    pub fn remove(&self, place: usize) {
        self.change(|all| {
            if place < all.len() {
                all.remove(place);
            }
        });
    }
}

impl<T> Part<Eyes<T>> {
    /// That of one eye.
    pub fn eye(&self, eye: Eye) -> Part<T> {
        match eye {
            Eye::Right => self.of(|eyes| &eyes.right, |eyes| &mut eyes.right),
            Eye::Left => self.of(|eyes| &eyes.left, |eyes| &mut eyes.left),
        }
    }
}

impl<T> Part<Finding<T>> {
    /// What was found, where it was.
    pub fn done(&self) -> Part<T> {
        self.some(Finding::done, Finding::done_mut)
    }

    /// Why it was not, by this name.
    pub fn why(&self, what: impl Into<String>) -> Why {
        let read = |found: &Finding<T>| match found {
            Finding::NotDone { reason } => Some(WhyNot::new(false, reason)),
            Finding::Unable { reason } => Some(WhyNot::new(true, reason)),
            Finding::Blank | Finding::Done(_) => None,
        };
        let put = |found: &mut Finding<T>, why: Option<WhyNot>| {
            *found = match why {
                None => Finding::Blank,
                Some(WhyNot { unable, reason }) if unable => Finding::Unable { reason },
                Some(WhyNot { reason, .. }) => Finding::NotDone { reason },
            };
        };
        Why {
            slate: self.slate,
            what: what.into(),
            spot: self.spot(read, put),
        }
    }
}

impl<T> Part<Finding<Vec<T>>> {
    /// Whether there is none, though it was asked.
    pub fn none(&self) -> Spot<bool> {
        self.spot(
            |found| found.done().is_some_and(Vec::is_empty),
            |found, none| {
                *found = if none {
                    Finding::Done(Vec::new())
                } else {
                    Finding::Blank
                }
            },
        )
    }

    /// Adds one.
    pub fn push(&self, one: T) {
        self.change(|found| match found {
            Finding::Done(all) => all.push(one),
            other => *other = Finding::Done(vec![one]),
        });
    }
}

fn memo<V: Clone + PartialEq + Send + Sync + 'static>(
    read: Arc<dyn Fn() -> V + Send + Sync>,
) -> Signal<V> {
    Memo::new(move |_| read()).into()
}

/// A field of a part by its name: `at!(part, light_mm)`.
macro_rules! at {
    ($part:expr, $field:ident) => {
        $part.of(|of| &of.$field, |of| &mut of.$field)
    };
}

pub(in crate::pages::exam) use at;
