//! The frame around every page: who may write, whether the vault is open, the palette, and what waits to be said.

use crate::edge::offline::{self, Offline};
use crate::edge::prefs::{self, Habits, Palette};
use crate::edge::{back, idle, keep, single};
use crate::pages::home::HomePill;
use crate::pages::{
    earlier, exam, gate, keeping, keys, log, paper, papers, person, person_form, places, practice,
    round, rounds, settings, sums, vault,
};
use crate::session::{Door, Gate};
use crate::words;
use ::words::Language;
use ::words::app::shell as say;
use leptos::prelude::*;
use leptos_router::components::{Route, Router, Routes};
use leptos_router::hooks::use_location;
use leptos_router::path;
use optics::CylinderSign;
use record::Manner;
use widgets::{InManner, Notice};

/// What every page can reach.
#[derive(Clone, Copy)]
pub struct App {
    /// The vault's door.
    pub door: Door,
    /// This tablet's habits.
    pub habits: RwSignal<Habits>,
    /// The language of everything that is shown.
    pub language: Memo<Language>,
    /// How its reader writes days, figures and distances.
    pub manner: Memo<Manner>,
    /// The sign of the cylinders in results.
    pub written: Memo<CylinderSign>,
    /// The app's own files.
    pub offline: Offline,
    /// Whether somebody has read that a file is not encrypted any more.
    pub cautioned: RwSignal<bool>,
    /// What the browser promises about keeping records; none until it has answered.
    pub keeping: RwSignal<Option<keep::Keeping>>,
}

impl App {
    /// Goes over to another language, at once.
    pub fn speak(self, language: Language) {
        ::words::speak(language);
        self.habits.update(|habits| habits.speak(language));
    }
}

/// The app, from any page.
pub fn app() -> App {
    expect_context()
}

/// The whole app.
#[component]
pub fn Shell() -> impl IntoView {
    let habits = prefs::live();
    let app = App {
        door: Door::new(),
        habits,
        language: Memo::new(move |_| habits.with(|habits| habits.language)),
        manner: Memo::new(move |_| habits.with(|habits| habits.manner)),
        written: Memo::new(move |_| habits.with(|habits| habits.written)),
        offline: offline::start(),
        cautioned: RwSignal::new(false),
        keeping: RwSignal::new(None),
    };
    provide_context(app);
    mark_made_up(app.door);
    mark_reads_only(app.door);
    let in_manner = move |words: String| words::followed(app.manner).in_words(&words);
    provide_context(InManner(Callback::new(in_manner)));
    app.door.look();
    single::on_asked(move || app.door.let_go());
    idle::watch(
        move || app.habits.get_untracked().idle_seconds,
        move || app.door.lock(Some(say::locked_untouched().into())),
    );
    back::watch(move || app.door.go_home());
    leptos::task::spawn_local(keep::ask(move |kept| app.keeping.set(Some(kept))));

    view! {
        <Router>
            // Words are asked for as a page is built: another language builds it anew. Asked for, not only followed: what nobody has
            // asked for yet tells of no change.
            {move || {
                app.language.get();
                view! { <NewerVersion/><Open/> }
            }}
        </Router>
    }
}

/// A page that is printed from made-up people says so by a mark on the whole page.
fn mark_made_up(door: Door) {
    Effect::new(move |_| {
        let made_up = door.made_up.get();
        if let Some(root) = document().document_element() {
            let _ = if made_up {
                root.set_attribute("data-made-up", "")
            } else {
                root.remove_attribute("data-made-up")
            };
        }
    });
}

/// On a tablet that only reads, what writes is not offered: the style sheet hides whatever is marked so.
fn mark_reads_only(door: Door) {
    Effect::new(move |_| {
        let writes = door.standing.writes();
        if let Some(root) = document().document_element() {
            let _ = if writes {
                root.remove_attribute("data-reads-only")
            } else {
                root.set_attribute("data-reads-only", "")
            };
        }
    });
}

/// A page that writes; on a tablet that only reads, a word on that in its place. Which of the two this is may be known a moment
/// after the page is there.
fn writes<V: IntoView + 'static>(page: impl Fn() -> V + Send + 'static) -> impl IntoView {
    let standing = app().door.standing;
    let reads = Memo::new(move |_| !standing.writes());
    move || {
        if reads.get() {
            view! {
                <TopBar title=say::reading_only()><a class="pill" href="/">{say::rounds()}</a></TopBar>
                <main class="page"><p id="reads-only">{say::reads_only_why()}</p></main>
            }
            .into_any()
        } else {
            page().into_any()
        }
    }
}

/// On a tablet that only reads every page says so, once.
#[component]
fn ReadsOnly() -> impl IntoView {
    let door = app().door;
    let shown = move || door.gate.get() == Gate::Open && !door.standing.writes();
    view! {
        <Show when=shown><span class="soft" id="reads-only-mark">{say::reads_only()}</span></Show>
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
            <Route path=path!("/people/new") view=|| writes(person_form::NewPersonPage)/>
            <Route path=path!("/people/:person") view=person::PersonPage/>
            <Route path=path!("/people/:person/details") view=|| writes(person_form::DetailsPage)/>
            <Route path=path!("/exams/:exam/prescription") view=paper::PrescriptionPage/>
            <Route path=path!("/exams/:exam/papers") view=papers::PapersPage/>
            <Route path=path!("/exams/:exam/papers/:paper") view=papers::PaperPage/>
            <Route path=path!("/exams/:exam/:section") view=exam::ExamPage/>
            <Route path=path!("/rounds/new") view=|| writes(round::NewRoundPage)/>
            <Route path=path!("/rounds/:round") view=round::RoundPage/>
            <Route path=path!("/rounds/:round/list") view=|| writes(round::ListPage)/>
            <Route path=path!("/places") view=places::PlacesPage/>
            <Route path=path!("/places/new") view=|| writes(places::PlacePage)/>
            <Route path=path!("/places/:place") view=places::PlacePage/>
            <Route path=path!("/places/:place/list") view=|| writes(round::ListPage)/>
            <Route path=path!("/log") view=log::LogPage/>
            <Route path=path!("/earlier") view=|| writes(earlier::EarlierPage)/>
            <Route path=path!("/sums") view=sums::SumsPage/>
            <Route path=path!("/vault") view=vault::VaultPage/>
            <Route path=path!("/vault/sheet") view=keys::SheetPage/>
            <Route path=path!("/vault/passphrase") view=keys::PassphrasePage/>
            <Route path=path!("/vault/carry") view=keys::CarryPage/>
            <Route path=path!("/vault/tablets") view=keys::TabletsPage/>
            <Route path=path!("/vault/tablets/new") view=keys::EnrolPage/>
            <Route path=path!("/keeping") view=keeping::KeepingPage/>
            <Route path=path!("/settings") view=settings::SettingsPage/>
        </Routes>
    }
}

#[component]
fn NotHere() -> impl IntoView {
    view! {
        <TopBar title=say::nothing_here()/>
        <main class="page"><p>{say::there_no_page_address()} <a href="/">{say::go_rounds()}</a></p></main>
    }
}

#[component]
fn NewerVersion() -> impl IntoView {
    let app = app();
    let take = move |_| {
        app.door.lock(Some(say::locked_for_newer().into()));
        app.offline.use_newer();
    };
    view! {
        <Show when=move || app.offline.newer_waits.get()>
            <Notice id="newer-version">
                <span>{say::newer_version()}</span>
                <button class="pill" id="use-newer" on:click=take>{say::use_now()}</button>
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
                <ReadsOnly/>
                <HomePill/>
                {children.map(|children| children())}
                <PaletteButton/>
                <Show when=move || app.door.gate.get() == Gate::Open>
                    <button class="pill" id="lock" on:click=move |_| app.door.lock(None)>{say::lock()}</button>
                </Show>
            </nav>
            <MadeUpBand/>
        </header>
    }
}

/// Says on every page that nobody here is real, and ends it in one tap.
#[component]
fn MadeUpBand() -> impl IntoView {
    let door = app().door;
    let shown = move || door.made_up.get() && door.gate.get() == Gate::Open;
    view! {
        <Show when=shown>
            <div class="made-up-band" id="made-up-band" role="note">
                <span>{say::made_up_people()}</span>
                <gate::EndLookingAround/>
            </div>
        </Show>
    }
    .into_any()
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
            say::night()
        } else {
            say::day()
        }
    };
    view! {
        <button class="pill" id="palette" on:click=move |_| { let next = other(); habits.update(|habits| habits.palette = next) }>{name}</button>
    }
}
