//! How days, figures, distances and lenses are shown on this tablet. What is kept does not change.

use crate::edge::clock;
use crate::shell::app;
use crate::words;
use ::words::app::settings as say;
use leptos::prelude::*;
use optics::{CylinderSign, SphereCyl};
use record::{DateOrder, DecimalMark, FarUnit, Manner};
use widgets::{Choice, Pick};

/// The habits, with what they make of an example.
#[component]
pub fn HowShown() -> impl IntoView {
    let habits = app().habits;
    let manner = move || habits.with(|habits| habits.manner);
    let change =
        move |change: &dyn Fn(&mut Manner)| habits.update(|habits| change(&mut habits.manner));
    let today = clock::today();
    let dates = [
        (DateOrder::DayFirst, "day"),
        (DateOrder::MonthFirst, "month"),
        (DateOrder::YearFirst, "year"),
    ]
    .map(|(dates, first)| {
        let day = Manner {
            dates,
            ..Manner::default()
        };
        Pick::new(dates, || day.date(today)).slug(first)
    });
    // The two labels differ in nothing that an id may hold.
    let marks = vec![
        Pick::new(DecimalMark::Point, || "1.25").slug("point"),
        Pick::new(DecimalMark::Comma, || "1,25").slug("comma"),
    ];
    let units = vec![
        Pick::new(FarUnit::Metres, say::metres),
        Pick::new(FarUnit::Feet, say::feet),
    ];
    let signs = vec![
        Pick::new(CylinderSign::Minus, say::minus),
        Pick::new(CylinderSign::Plus, say::plus),
    ];
    view! {
        <section class="sheet" id="how-shown">
            <h2>{say::how_shown()}</h2>
            <Choice id="date-order" label=say::days() picks=dates.into() value=Signal::derive(move || Some(manner().dates))
                on_change=move |dates| change(&|manner: &mut Manner| manner.dates = dates)/>
            <Choice id="decimal-mark" label=say::before_decimals() picks=marks value=Signal::derive(move || Some(manner().decimal))
                on_change=move |decimal| change(&|manner: &mut Manner| manner.decimal = decimal)/>
            <Choice id="far-unit" label=say::how_far_chart() picks=units value=Signal::derive(move || Some(manner().far))
                on_change=move |far| change(&|manner: &mut Manner| manner.far = far)/>
            <Choice id="written-sign" label=say::cylinders_written() picks=signs value=Signal::derive(move || Some(habits.with(|habits| habits.written)))
                on_change=move |sign| habits.update(|habits| habits.written = sign)/>
            <p id="shown-so">{say::so_it_reads()}<b>{example}</b></p>
            <p class="soft">{say::only_shown()}</p>
        </section>
    }
    .into_any()
}

/// "+3.00 / −1.00 × 90, chart at 3 m, 25 November 2026".
fn example() -> String {
    let lens = SphereCyl::new(3.0, -1.0, 90.0).unwrap_or(SphereCyl::sphere(3.0));
    let (lens, at, on) = (
        words::lens(&lens),
        words::far(3.0),
        words::date(clock::today()),
    );
    say::example(&lens, &at, &on)
}
