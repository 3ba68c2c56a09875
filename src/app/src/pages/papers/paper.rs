//! One paper: on the screen as it is printed, and as a PDF.

use super::sheet::DocumentSheet;
use super::wording::{Words, proposed};
use super::{PAPERS, made, named, whose};
use crate::pages::hand_over::{HandOver, Offer, kinds};
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::papers as say;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use papers::{Document, PaperKind, Standing, Told, holds};
use record::ExamId;
use widgets::{Choice, Pick};
use workers::{Job, PaperSize};

/// The page.
#[component]
pub fn PaperPage() -> impl IntoView {
    let exam = named();
    let who = whose(exam);
    let params = use_params_map();
    let kind = Memo::new(move |_| {
        params.with(|params| PaperKind::from_slug(&params.get("paper").unwrap_or_default()))
    });
    let title = Signal::derive(move || {
        kind.get().map_or_else(
            || say::no_such_paper().to_owned(),
            |kind| kind.title().to_owned(),
        )
    });
    let beside = Signal::derive(move || who.get().map(|who| who.0).unwrap_or_default());
    let back = move || {
        exam.get()
            .map_or_else(|| "/".into(), |exam| words::exam_path(&exam, PAPERS))
    };
    view! {
        <TopBar title beside><a class="pill" id="back-to-papers" href=back>{say::papers()}</a></TopBar>
        <main class="page paper-page">
            {move || match (exam.get(), kind.get()) {
                (Some(exam), Some(kind)) => view! { <OnePaper exam kind/> }.into_any(),
                _ => view! { <p>{say::there_is_no_paper()} <a href=back>{say::go_papers()}</a></p> }.into_any(),
            }}
        </main>
    }
    .into_any()
}

#[component]
fn OnePaper(exam: ExamId, kind: PaperKind) -> impl IntoView {
    let (door, habits) = (app().door, app().habits);
    let proposal = proposed(door, exam, kind);
    let wording = RwSignal::new(proposal.clone().with(&door.told(exam, kind)));
    let told = Memo::new(move |_| wording.with(|wording| wording.told(&proposal)));
    Effect::new(move |before: Option<Told>| {
        let now = told.get();
        if before.is_some_and(|before| before != now) {
            door.keep_told(exam, kind, now.clone());
        }
        now
    });
    let document = Memo::new(move |_| wording.with(|wording| made(door, exam, kind, wording)));
    let can = Memo::new(move |_| document.with(Result::is_ok));
    let size = Memo::new(move |_| habits.with(|habits| habits.paper));
    view! {
        <Words exam kind wording/>
        <Show when=move || can.get()><Doing exam kind document told size/></Show>
        {move || match document.get() {
            Ok(document) => view! { <DocumentSheet document size/> }.into_any(),
            Err(why) => view! { <p class="notice" id="no-paper">{say::cannot_be_made(&why)}</p> }.into_any(),
        }}
    }
    .into_any()
}

/// Print it, or make a PDF of it, on the paper that is in the printer.
#[component]
fn Doing(
    exam: ExamId,
    kind: PaperKind,
    document: Memo<Result<Document, String>>,
    told: Memo<Told>,
    size: Memo<PaperSize>,
) -> impl IntoView {
    let (door, habits) = (app().door, app().habits);
    let trouble = RwSignal::new(None::<String>);
    let leaves = Callback::new(move |()| {
        let document = document.get_untracked().ok();
        let signed = document.filter(|document| document.standing != Standing::Unsigned);
        let Some(document) = signed.filter(|_| kind.has_words() && door.standing.writes()) else {
            return;
        };
        leptos::task::spawn_local(async move {
            let kept = door.send(exam, kind, &document, told.get_untracked()).await;
            trouble.try_set(kept.err().map(|why| say::not_kept_with_exam(&why)));
        });
    });
    let print = move |_| {
        leaves.run(());
        let _ = window().print();
    };
    let sizes = vec![
        Pick::new(PaperSize::A4, || "A4"),
        Pick::new(PaperSize::Letter, say::letter),
    ];
    let today = crate::edge::clock::today();
    let offer = Offer {
        id: "make-pdf",
        label: say::make_pdf(),
        kind: kinds::PDF,
        name: Callback::new(move |()| format!("{}-{today}.pdf", kind.slug())),
        job: Callback::new(move |()| {
            let document = document.get_untracked()?;
            let size = size.get_untracked();
            Ok(Job::Pdf { document, size })
        }),
    };
    let holds = Signal::derive(move || {
        document.with(|document| document.as_ref().map(holds::paper).unwrap_or_default())
    });
    view! {
        <div class="paper-does no-print">
            <Choice id="paper-size" label=say::paper() unseen_label=true picks=sizes value=Signal::derive(move || Some(size.get()))
                on_change=move |size| habits.update(|habits| habits.paper = size)/>
            <button class="act act-second" type="button" id="print" on:click=print>{say::print()}</button>
            <HandOver id="pdf" offers=vec![offer] holds on_saved=leaves/>
            <p class="field-error" role="alert">{move || trouble.get()}</p>
        </div>
    }
    .into_any()
}
