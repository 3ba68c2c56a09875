//! The frame around every page: who may write, whether the vault is open, the palette, and what waits to be said.

use crate::edge::offline::{self, Offline};
use crate::edge::prefs::{self, Habits, Palette};
use crate::edge::{idle, keep, single};
use crate::pages::{exam, gate, new_person, paper, person, practice, rounds, sums, vault};
use crate::session::{Door, Gate};
use leptos::prelude::*;
use leptos_router::components::{Route, Router, Routes};
use leptos_router::hooks::use_location;
use leptos_router::path;
use widgets::Notice;

/// What every page can reach.
#[derive(Clone, Copy)]
pub struct App {
    /// The vault's door.
    pub door: Door,
    /// This tablet's habits.
    pub habits: RwSignal<Habits>,
    /// The app's own files.
    pub offline: Offline,
    /// What the browser promises about keeping records; none until it has answered.
    pub keeping: RwSignal<Option<keep::Keeping>>,
}

/// The app, from any page.
pub fn app() -> App {
    expect_context()
}

/// The whole app.
#[component]
pub fn Shell() -> impl IntoView {
    let app = App {
        door: Door::new(),
        habits: prefs::live(),
        offline: offline::start(),
        keeping: RwSignal::new(None),
    };
    provide_context(app);
    app.door.look();
    single::on_asked(move || app.door.let_go());
    idle::watch(
        move || app.habits.get_untracked().idle_seconds,
        move || app.door.lock(Some("locked after a while untouched".into())),
    );
    leptos::task::spawn_local(keep::ask(move |kept| app.keeping.set(Some(kept))));

    view! {
        <Router>
            <NewerVersion/>
            <Open/>
        </Router>
    }
}

/// What can be seen now. Practice holds nothing about anybody: it needs no vault.
#[component]
fn Open() -> impl IntoView {
    let (door, path) = (app().door, use_location().pathname);
    let practising = Memo::new(move |_| path.with(|path| path == practice::PATH));
    move || match (practising.get(), door.gate.get()) {
        (true, _) => view! { <practice::PracticePage/> }.into_any(),
        (false, Gate::Open) => view! { <Pages/> }.into_any(),
        (false, _) => view! { <gate::GatePage/> }.into_any(),
    }
}

#[component]
fn Pages() -> impl IntoView {
    view! {
        <Routes fallback=NotHere>
            <Route path=path!("/") view=rounds::RoundsPage/>
            <Route path=path!("/people/new") view=new_person::NewPersonPage/>
            <Route path=path!("/people/:person") view=person::PersonPage/>
            <Route path=path!("/exams/:exam/prescription") view=paper::PrescriptionPage/>
            <Route path=path!("/exams/:exam/:section") view=exam::ExamPage/>
            <Route path=path!("/sums") view=sums::SumsPage/>
            <Route path=path!("/vault") view=vault::VaultPage/>
        </Routes>
    }
}

#[component]
fn NotHere() -> impl IntoView {
    view! {
        <TopBar title="nothing here"/>
        <main class="page"><p>"There is no page at this address. " <a href="/">"Go to the rounds."</a></p></main>
    }
}

#[component]
fn NewerVersion() -> impl IntoView {
    let app = app();
    let take = move |_| {
        app.door
            .lock(Some("locked to take the newer version".into()));
        app.offline.use_newer();
    };
    view! {
        <Show when=move || app.offline.newer_waits.get()>
            <Notice id="newer-version">
                <span>"A newer version of the app is on this tablet. Use it between people: the vault locks first."</span>
                <button class="pill" id="use-newer" on:click=take>"use it now"</button>
            </Notice>
        </Show>
    }
}

/// The bar at the top of every page.
#[component]
pub fn TopBar(
    /// Where this is.
    #[prop(into)]
    title: Signal<String>,
    /// Beside the title, softer.
    #[prop(optional, into)]
    beside: Signal<String>,
    /// Where the title leads, if anywhere.
    #[prop(optional, into)]
    leads_to: Signal<Option<String>>,
    /// Extra pills before the palette's.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let app = app();
    view! {
        <header class="top-bar">
            <h1 class="top-title">
                {move || match leads_to.get() {
                    Some(path) => view! { <a href=path>{title}</a> }.into_any(),
                    None => title.get().into_any(),
                }}
            </h1>
            <span class="top-beside">{beside}</span>
            <nav class="top-pills">
                {children.map(|children| children())}
                <PaletteButton/>
                <Show when=move || app.door.gate.get() == Gate::Open>
                    <button class="pill" id="lock" on:click=move |_| app.door.lock(None)>"Lock"</button>
                </Show>
            </nav>
        </header>
    }
}

/// One tap between Day and Night.
#[component]
pub fn PaletteButton() -> impl IntoView {
    let habits = app().habits;
    let other = move || match habits.get().palette {
        Palette::Day => Palette::Night,
        Palette::Night => Palette::Day,
    };
    let name = move || {
        if other() == Palette::Night {
            "Night"
        } else {
            "Day"
        }
    };
    view! {
        <button class="pill" id="palette" on:click=move |_| { let next = other(); habits.update(|habits| habits.palette = next) }>{name}</button>
    }
}
