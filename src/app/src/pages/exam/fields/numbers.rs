//! Fields that are a number with its limits.

use super::part::{Part, Spot};
use super::row::{Asked, missing, row};
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use optics::format::{plain, signed};
use optics::limits::{self, Limit};
use record::Finding;
use widgets::{Stepper, Unit};

/// How a number is stepped, and what it may be.
#[derive(Clone, Copy)]
pub struct Measure {
    /// What it may be.
    pub limit: Limit,
    /// One tap.
    pub step: f64,
    /// What the first tap gives.
    pub start: f64,
    /// Decimals shown.
    pub decimals: usize,
    /// Whether the sign always stands.
    pub signed: bool,
}

impl Measure {
    /// Steps of a number without a sign.
    pub const fn new(limit: Limit, step: f64, start: f64, decimals: usize) -> Self {
        Self {
            limit,
            step,
            start,
            decimals,
            signed: false,
        }
    }

    /// The same with its sign.
    #[must_use]
    pub const fn signed(self) -> Self {
        Self {
            signed: true,
            ..self
        }
    }

    const fn unit(self) -> Unit {
        match self.limit.unit {
            limits::Unit::Dioptres => Unit::Dioptres,
            limits::Unit::Degrees => Unit::Degrees,
            limits::Unit::Centimetres => Unit::Centimetres,
            limits::Unit::Millimetres => Unit::Millimetres,
            limits::Unit::Metres => Unit::Metres,
            limits::Unit::PrismDioptres => Unit::PrismDioptres,
            limits::Unit::Mercury => Unit::Mercury,
            limits::Unit::Percent => Unit::Percent,
            limits::Unit::Times => Unit::Times,
            _ => Unit::Count,
        }
    }

    /// "+2.00", "2.5 mm".
    pub fn in_words(self, value: f64) -> String {
        if self.signed {
            return signed(value, self.decimals);
        }
        let number = plain(value, self.decimals);
        match self.unit().written() {
            "" => number,
            unit => format!("{number} {unit}"),
        }
    }
}

/// A finding that is a number.
pub fn measured(
    part: &Part<Finding<f64>>,
    id: impl Into<String>,
    label: &'static str,
    measure: Measure,
) -> AnyView {
    let asked = part.asked(id, label, move |value| measure.in_words(*value));
    let spot = part.spot(
        |found| found.done().copied(),
        |found, value| *found = value.map_or(Finding::Blank, Finding::Done),
    );
    number(&asked, measure, spot)
}

/// A number that may be left out.
pub fn optional(
    part: &Part<Option<f64>>,
    id: impl Into<String>,
    label: &'static str,
    measure: Measure,
) -> AnyView {
    let before = part.before(move |value| value.map(|value| measure.in_words(value)));
    let spot = part.spot(|value| *value, |value, new| *value = new);
    number(&Asked::new(id, label).before(before), measure, spot)
}

/// The stepper. A number is cleared by a tap; why it is missing is asked by another.
pub fn number(asked: &Asked, measure: Measure, spot: Spot<Option<f64>>) -> AnyView {
    let Asked { id, label, .. } = asked.clone();
    let limit = measure.limit;
    let check = Callback::new(move |value| limit.check(value).map_err(|error| error.to_string()));
    let clear_id = format!("{id}-clear");
    let control = view! {
        <Stepper id=id label=label value=spot.value step=measure.step start=Signal::stored(measure.start) min=limit.low max=limit.high
            decimals=measure.decimals signed=measure.signed unit=measure.unit() check=check
            on_change=move |value| spot.put.run(Some(value)) on_clear=move |()| spot.put.run(None)/>
        <div class="asked-ways">
            {missing(asked, say::not_done_2())}
            <button type="button" class="pill" id=clear_id disabled=move || spot.value.get().is_none() on:click=move |_| spot.put.run(None)>{say::clear()}</button>
        </div>
    };
    row(asked, control.into_any())
}
