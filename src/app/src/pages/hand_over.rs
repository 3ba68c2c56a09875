//! Files that leave the tablet: what each holds is said before the first one, and it goes only where somebody sends it.

use crate::edge::{files, motion, press};
use crate::shell::app;
use ::words::app::pages as say;
use leptos::prelude::*;
use web_sys::File;
use workers::Job;

/// The kind of a file (RFC 6838).
pub mod kinds {
    /// ISO 32000.
    pub const PDF: &str = "application/pdf";
    /// RFC 4180.
    pub const CSV: &str = "text/csv";
    /// ECMA-376.
    pub const WORKBOOK: &str = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    /// FHIR R4 in JSON.
    pub const FHIR: &str = "application/fhir+json";
}

/// A button that makes a file.
#[derive(Clone, Copy)]
pub struct Offer {
    /// The button's id.
    pub id: &'static str,
    /// What it says.
    pub label: &'static str,
    /// The file's kind.
    pub kind: &'static str,
    /// The file's name.
    pub name: Callback<(), String>,
    /// What is to be made; else why it can't be.
    pub job: Callback<(), Result<Job, String>>,
}

#[derive(Clone, PartialEq)]
enum Stage {
    Still,
    Asking(usize),
    Making(Option<(usize, usize)>),
    Saved(String),
    Refused(String),
}

/// What goes on with one row of offers.
#[derive(Clone, Copy)]
struct Desk {
    offers: StoredValue<Vec<Offer>>,
    stage: RwSignal<Stage>,
    cautioned: RwSignal<bool>,
    on_saved: Option<Callback<()>>,
    /// The last file, where the browser can share it.
    made: StoredValue<Option<File>, LocalStorage>,
}

impl Desk {
    fn press(self, at: usize) {
        if self.cautioned.get_untracked() {
            self.make(at);
        } else {
            self.stage.set(Stage::Asking(at));
        }
    }

    fn make(self, at: usize) {
        let Some(offer) = self.offers.with_value(|offers| offers.get(at).copied()) else {
            return;
        };
        if is_making(&self.stage.get_untracked()) {
            return;
        }
        self.cautioned.set(true);
        self.stage.set(Stage::Making(None));
        leptos::task::spawn_local(async move {
            // That it goes on is shown before the page is busy with what the file is made from.
            motion::drawn().await;
            let stage = match self.made(offer).await {
                Ok(said) => Stage::Saved(said),
                Err(sentence) => Stage::Refused(sentence),
            };
            self.stage.try_set(stage);
        });
    }

    /// Makes a file and saves it; says so.
    async fn made(self, offer: Offer) -> Result<String, String> {
        let job = offer.job.run(())?;
        let so_far = |done, of| {
            self.stage.try_set(Stage::Making(Some((done, of))));
        };
        let pressed = press::file(&job, so_far).await?;
        let file = files::file(&offer.name.run(()), offer.kind, &pressed.bytes)?;
        files::save_file(&file)?;
        let said = saved(&file.name(), &pressed.lacking);
        if let Some(on_saved) = self.on_saved {
            on_saved.try_run(());
        }
        self.made
            .try_set_value(files::can_share(&file).then_some(file));
        Ok(said)
    }

    /// Of which file it is asked whether it is to be made.
    fn asked(self) -> Option<usize> {
        match self.stage.get() {
            Stage::Asking(at) => Some(at),
            _ => None,
        }
    }

    fn share(self) {
        if let Some(file) = self.made.get_value() {
            leptos::task::spawn_local(async move { files::share(&file).await });
        }
    }
}

const fn is_making(stage: &Stage) -> bool {
    matches!(stage, Stage::Making(_))
}

fn making(so_far: Option<(usize, usize)>) -> String {
    match so_far {
        Some((done, of)) => say::being_made_so_far(&done, &of),
        None => say::being_made().to_owned(),
    }
}

fn saved(name: &str, lacking: &str) -> String {
    let question_marks = if lacking.is_empty() {
        String::new()
    } else {
        say::no_font_for(&lacking)
    };
    say::saved_as(&name, &question_marks)
}

/// A row of buttons, the caution before the first file, and what came of it.
#[component]
pub fn HandOver(
    /// The id of the whole; its parts add a word.
    id: &'static str,
    /// The buttons.
    offers: Vec<Offer>,
    /// What the file will hold, a sentence or two.
    #[prop(into)]
    holds: Signal<String>,
    /// Whether that is always shown, and not before the first file alone.
    #[prop(optional)]
    always: bool,
    /// Called when a file was saved.
    #[prop(optional, into)]
    on_saved: Option<Callback<()>>,
) -> impl IntoView {
    let desk = Desk {
        offers: StoredValue::new(offers.clone()),
        stage: RwSignal::new(Stage::Still),
        cautioned: app().cautioned,
        on_saved,
        made: StoredValue::new_local(None),
    };
    let buttons = offers.into_iter().enumerate().map(|(at, offer)| {
        let busy = move || desk.stage.with(is_making).then_some("true");
        view! { <button class="act act-second" type="button" id=offer.id aria-disabled=busy on:click=move |_| desk.press(at)>{offer.label}</button> }
    });
    let said = move || match desk.stage.get() {
        Stage::Making(so_far) => making(so_far),
        Stage::Saved(said) => said,
        Stage::Refused(sentence) => say::nothing_saved(&sentence),
        Stage::Still | Stage::Asking(_) => String::new(),
    };
    let may_share = move || {
        matches!(desk.stage.get(), Stage::Saved(_)) && desk.made.with_value(Option::is_some)
    };
    // The question before the first file says the same.
    let told = move || always && desk.asked().is_none();
    view! {
        <div class="hand-over no-print" id=id>
            <Show when=told><p class="soft" id=format!("{id}-holds")>{holds}</p></Show>
            <div class="pills">{buttons.collect_view()}</div>
            <Before id desk holds/>
            <p class="soft hand-over-said" id=format!("{id}-said") role="status">{said}</p>
            <Show when=may_share>
                <button class="pill" type="button" id=format!("{id}-share") on:click=move |_| desk.share()>{say::hand_here()}</button>
            </Show>
        </div>
    }
    .into_any()
}

/// The caution, before the first file.
#[component]
fn Before(id: &'static str, desk: Desk, holds: Signal<String>) -> impl IntoView {
    let question = move |at: usize| {
        view! {
            <section class="notice" id=format!("{id}-before") aria-label=say::before_file_made()>
                <span>{holds}</span>
                <button class="act" type="button" id=format!("{id}-go") on:click=move |_| desk.make(at)>{say::make_file()}</button>
                <button class="pill" type="button" id=format!("{id}-not") on:click=move |_| desk.stage.set(Stage::Still)>{say::not_now()}</button>
            </section>
        }
        .into_any()
    };
    move || desk.asked().map(question)
}
