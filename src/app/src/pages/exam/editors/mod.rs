//! The editors that are made of fields alone, each a list of what is asked.

mod anterior;
mod binocular;
mod consent;
mod drops;
mod fitting;
mod history;
mod jotted;
mod near;
mod order;
mod outlines;
mod posterior;
mod pressure;
mod pupils;
mod sketches;
mod visual_fields;
mod worn_glasses;

use super::fields::{Slate, why_sheet};
use super::reading::SectionReading;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use record::SectionKind;

pub use outlines::outline;
pub use sketches::dots;

/// The fields of a section; none where it has an editor of its own.
fn fields(kind: SectionKind) -> Option<fn(Slate) -> AnyView> {
    Some(match kind {
        SectionKind::History => history::history,
        SectionKind::Consent => consent::consent,
        SectionKind::WornGlasses => worn_glasses::worn_glasses,
        SectionKind::Pupils => pupils::pupils,
        SectionKind::Near => near::near,
        SectionKind::Binocular => binocular::binocular,
        SectionKind::Pressure => pressure::pressure,
        SectionKind::Drops => drops::drops,
        SectionKind::Anterior => anterior::anterior,
        SectionKind::Posterior => posterior::posterior,
        SectionKind::Fields => visual_fields::fields,
        SectionKind::Sketches => sketches::sketches,
        SectionKind::Order => order::order,
        SectionKind::Fitting => fitting::fitting,
        SectionKind::Acuity
        | SectionKind::Retinoscopy
        | SectionKind::Subjective
        | SectionKind::Decision => return None,
    })
}

/// A section's page: what is normal in one tap, its fields, and last time's beside them.
pub fn editor(kind: SectionKind, slate: Slate) -> Option<AnyView> {
    let fields = fields(kind)?;
    let page = view! {
        {normal(slate)}
        {fields(slate)}
        {why_sheet(slate)}
        {last_time(slate)}
    };
    Some(page.into_any())
}

/// Fills what is blank with what is normal, says how much that was, and takes it back.
fn normal(slate: Slate) -> AnyView {
    if untrack(|| slate.now.with(|now| now.normal_where_blank().is_none())) {
        return ().into_any();
    }
    let more = Memo::new(move |_| {
        slate.now.with(|now| {
            now.normal_where_blank()
                .is_some_and(|normal| normal != *now)
        })
    });
    view! {
        <div class="normal-row">
            <button type="button" class="act act-second" id="all-normal" disabled=move || !more.get() on:click=move |_| slate.fill_normal()>
                {say::all_else_normal_both_eyes()}
            </button>
            <Show when=move || slate.tap.with(Option::is_some)>
                <span class="soft" role="status">{say::marked_by_tap()}</span>
            </Show>
            <Show when=move || slate.untouched()>
                <button type="button" class="pill" id="take-back" on:click=move |_| slate.take_back()>{say::take_back()}</button>
            </Show>
        </div>
    }
    .into_any()
}

fn last_time(slate: Slate) -> AnyView {
    view! {
        {move || slate.before.get().map(|(when, section)| view! {
            <section class="sheet last-time" id="last-time">
                <h3>{when}</h3>
                <SectionReading section/>
            </section>
        })}
    }
    .into_any()
}
