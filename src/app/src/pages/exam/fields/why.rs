//! Why a finding is missing: the one sheet that asks, with the reasons that are often given.

use super::part::Spot;
use super::slate::Slate;
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use record::{NOT_DONE_BECAUSE, UNABLE_BECAUSE};
use widgets::{Choice, ChoiceLook, Pick, Sheet, TextField};

/// Why a finding was left out, or could not be had.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WhyNot {
    /// It was tried, or would have been, and the person could not.
    pub unable: bool,
    /// In the examiner's words.
    pub reason: String,
}

impl WhyNot {
    /// As it stands on record.
    pub fn new(unable: bool, reason: &str) -> Self {
        Self {
            unable,
            reason: reason.to_owned(),
        }
    }

    /// "unable: asleep".
    pub fn in_words(&self) -> String {
        let way = if self.unable {
            say::unable()
        } else {
            say::not_done()
        };
        if self.reason.trim().is_empty() {
            say::way_why(&way)
        } else {
            format!("{way}: {}", self.reason)
        }
    }
}

/// The reason of one finding.
#[derive(Clone)]
pub struct Why {
    /// Where it is asked.
    pub slate: Slate,
    /// Which finding, in words.
    pub what: String,
    /// The reason as it stands; none where it is found or blank.
    pub spot: Spot<Option<WhyNot>>,
}

impl Why {
    /// Opens the sheet for it.
    pub fn ask(&self) {
        self.slate.why.set(Some(self.clone()));
    }
}

/// The sheet. A reason that is tapped closes it.
pub fn why_sheet(slate: Slate) -> AnyView {
    let open = Signal::derive(move || slate.why.with(Option::is_some));
    let title = Signal::derive(move || {
        let what = slate
            .why
            .with(|why| why.as_ref().map(|why| why.what.clone()));
        say::why_missing(&what.unwrap_or_default())
    });
    let close = move |()| slate.why.set(None);
    view! {
        <Sheet id="why-not" title=title open=open on_close=close>
            {move || slate.why.get().map(|why| reasons(slate, why.spot))}
        </Sheet>
    }
    .into_any()
}

fn reasons(slate: Slate, spot: Spot<Option<WhyNot>>) -> AnyView {
    let group = |unable: bool, label: &'static str, all: &'static [fn() -> &'static str]| {
        let picks = all
            .iter()
            .map(|reason| Pick::new(WhyNot::new(unable, reason()), reason));
        let id = if unable { "why-unable" } else { "why-not-done" };
        let pick = move |why| {
            spot.put.run(Some(why));
            slate.why.set(None);
        };
        view! { <Choice id=id label=label look=ChoiceLook::Squares picks=picks.collect() value=spot.value on_change=pick/> }
    };
    let ways = vec![
        Pick::new(false, say::left_out).slug("left-out"),
        Pick::new(true, say::person_could_not).slug("could-not"),
    ];
    let way = move |unable| {
        let why = spot.value.get_untracked().unwrap_or_default();
        spot.put.run(Some(WhyNot { unable, ..why }));
    };
    let own = move |reason| {
        let why = spot.value.get_untracked().unwrap_or_default();
        spot.put.run(Some(WhyNot { reason, ..why }));
    };
    let clear = move |_| {
        spot.put.run(None);
        slate.why.set(None);
    };
    view! {
        {group(false, say::not_done(), NOT_DONE_BECAUSE)}
        {group(true, say::unable(), UNABLE_BECAUSE)}
        <TextField id="why-own" label=say::your_own_words() value=Signal::derive(move || spot.value.get().map(|why| why.reason).unwrap_or_default()) on_change=own/>
        <Choice id="why-way" label=say::which_two() picks=ways value=Signal::derive(move || spot.value.get().map(|why| why.unable)) on_change=way/>
        <button type="button" class="pill" id="why-clear" on:click=clear>{say::not_missing_after_all()}</button>
    }
    .into_any()
}
