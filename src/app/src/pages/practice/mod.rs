//! Practice with a drawn reflex: an eye that nobody has, under the streak, as the arithmetic says that it must look.
//!
//! It holds nothing about anybody, so it needs no vault.

mod eye;
mod pad;
mod sweeping;

use crate::edge::motion;
use crate::pages::exam::setup::LengthPill;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::practice as say;
use eye::{EyePill, Shown};
use leptos::prelude::*;
use optics::retinoscopy::reflex::{Bench, Light, Lit, Look, PATCH_HALF_MM, another_eye};
use optics::retinoscopy::{Beam, Media, WorkingDistance};
use optics::{Meridian, SphereCyl, limits};
use pad::Pad;
use widgets::eye_picture::{Band, sweep_direction};
use widgets::{Choice, Disclosure, Glow, Pick, Pill, Reflex, Sheet, Unit};

/// Where the page is.
pub const PATH: &str = "/practice";

/// What is set up, and the eye.
#[derive(Clone, Copy, PartialEq)]
struct Practice {
    eye: SphereCyl,
    lens: SphereCyl,
    distance: WorkingDistance,
    beam: Beam,
    tests: Meridian,
    pupil_mm: f64,
    media: Media,
}

impl Practice {
    fn look(&self) -> Option<Look> {
        let bench = Bench {
            eye: self.eye,
            in_path: self.lens,
            distance: self.distance,
            light: Light::of(self.beam, self.distance),
            tests: self.tests,
            pupil_mm: self.pupil_mm,
            media: self.media,
        };
        bench.look().ok()
    }

    /// As far as the streak goes: until its patch has left the pupil.
    fn reach_mm(&self) -> f64 {
        (self.pupil_mm / 2.0 + PATCH_HALF_MM + 0.5).ceil()
    }
}

fn drawn_eye() -> SphereCyl {
    another_eye([(); 3].map(|()| js_sys::Math::random()))
}

/// The page.
#[component]
pub fn PracticePage() -> impl IntoView {
    let usual = app().habits.get_untracked().working_distance_cm;
    let practice = WorkingDistance::from_cm(usual).ok().map(|distance| {
        RwSignal::new(Practice {
            eye: drawn_eye(),
            lens: SphereCyl::sphere(0.0),
            distance,
            beam: Beam::Normal,
            tests: Meridian::HORIZONTAL,
            pupil_mm: 4.0,
            media: Media::Clear,
        })
    });
    view! {
        <TopBar title=say::practice() beside=say::drawn_reflex()><a class="pill" id="leave-practice" href="/">{say::back()}</a></TopBar>
        {practice.map(|practice| view! { <Workbench practice/> })}
    }
}

#[component]
fn Workbench(practice: RwSignal<Practice>) -> impl IntoView {
    let look = Memo::new(move |_| practice.with(Practice::look));
    let said = Signal::derive(move || {
        let said = look.get().map(Look::sentence);
        said.map_or_else(
            || say::cannot_be_drawn().into(),
            |said| words::number(&said),
        )
    });
    let shown = RwSignal::new(false);
    let by_itself = RwSignal::new(!motion::as_little_as_may_be());
    view! {
        <main class="practice">
            <SetupPills practice shown/>
            <div class="practice-shown">
                <Picture practice look said by_itself/>
                <Disclosure id="seen" summary=say::say_what_is_seen()><p id="seen-words">{said}</p></Disclosure>
                <Shown practice look shown/>
            </div>
            <Pad practice by_itself shown/>
            <span class="unseen" aria-live="polite">{said}</span>
        </main>
    }
    .into_any()
}

#[component]
fn Picture(
    practice: RwSignal<Practice>,
    look: Memo<Option<Look>>,
    said: Signal<String>,
    by_itself: RwSignal<bool>,
) -> impl IntoView {
    let reach = Signal::derive(move || practice.with(Practice::reach_mm));
    let streak = sweeping::streak(by_itself, reach);
    let along = Memo::new(move |_| sweep_direction(practice.with(|now| now.tests.degrees())));
    let pupil = Memo::new(move |_| practice.with(|now| now.pupil_mm));
    let radius = move || pupil.get() / 2.0;
    let band = Signal::derive(move || match look.get()?.lit(streak.get()).ok()? {
        Lit::Dark => None,
        Lit::Whole => Some(Band::WHOLE),
        Lit::Band { from, to } => Some(Band {
            from: from * radius(),
            to: to * radius(),
        }),
    });
    let glow = Memo::new(move |_| Glow {
        across: along.get() + look.get().map_or(0.0, Look::skew),
        brightness: look.get().map_or(0.0, Look::brightness),
        softness: look.get().map_or(0.0, Look::softness) * radius(),
    });
    let moved = move |mm| {
        by_itself.set(false);
        streak.set(mm);
    };
    view! {
        <Reflex id="reflex" label=say::under_streak() pupil_mm=pupil sweeps_along=along streak_mm=streak patch_half_mm=PATCH_HALF_MM
            reach_mm=reach band=band glow=glow said=said on_move=moved/>
    }
}

#[component]
fn SetupPills(practice: RwSignal<Practice>, shown: RwSignal<bool>) -> impl IntoView {
    let put_distance = move |cm| {
        // The stepper's own check has refused what is no distance.
        if let Ok(distance) = WorkingDistance::from_cm(cm) {
            practice.update(|now| now.distance = distance);
        }
    };
    let put_pupil = move |mm| practice.update(|now| now.pupil_mm = mm);
    let (cm, mm) = (limits::DISTANCE_CM, limits::PUPIL_MM);
    view! {
        <div class="pills">
            <LengthPill id="distance" label="" title=say::working_distance() value=Signal::derive(move || practice.get().distance.cm()) unit=Unit::Centimetres
                step=1.0 ends=(cm.low, cm.high) check=limits::distance_cm on_change=put_distance
                beside=Signal::derive(move || words::dioptres(practice.get().distance.dioptres()))/>
            <LengthPill id="pupil" label=say::pupil() value=Signal::derive(move || practice.get().pupil_mm) unit=Unit::Millimetres step=0.5
                ends=(mm.low, mm.high) decimals=1 check=limits::pupil_mm on_change=put_pupil/>
            <MediaPill practice/>
            <EyePill practice shown/>
        </div>
    }
}

fn media_word(media: Media) -> &'static str {
    match media {
        Media::Clear => say::clear(),
        Media::Slight => say::slightly_dim(),
        Media::Moderate => say::clearly_dim(),
        Media::Dense => say::dense(),
    }
}

#[component]
fn MediaPill(practice: RwSignal<Practice>) -> impl IntoView {
    let open = RwSignal::new(false);
    let shown = Signal::derive(move || media_word(practice.get().media).to_owned());
    view! {
        <Pill id="media" label=say::media() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="media-sheet" title=say::how_clear_media() open=open on_close=move |()| open.set(false)>
            <MediaChoice practice/>
        </Sheet>
    }
    .into_any()
}

#[component]
fn MediaChoice(practice: RwSignal<Practice>) -> impl IntoView {
    let picks = Media::ALL.map(|media| Pick::new(media, || media_word(media)));
    view! {
        <Choice id="media-choice" label=say::media() unseen_label=true picks=picks.into() value=Signal::derive(move || Some(practice.get().media))
            on_change=move |media| practice.update(|now| now.media = media)/>
    }
}
