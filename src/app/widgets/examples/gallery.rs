//! Every widget on one page, to look at and to put a finger on.
//!
//! ```text
//! cargo build -p widgets --example gallery --target wasm32-unknown-unknown
//! wasm-bindgen --target web --no-typescript --out-dir GALLERY target/wasm32-unknown-unknown/debug/examples/gallery.wasm
//! cp -r src/app/widgets/gallery/* style GALLERY/ && cp -r style/fonts GALLERY/
//! ```
//!
//! Then serve GALLERY. `#night` in the address shows the other palette.

use leptos::prelude::*;
use optics::SphereCyl;
use widgets::scale::Scale;
use widgets::{
    AcuityPicker, AxisDial, Choice, ChoiceLook, Dial, Disclosure, LensField, Mark, Motion, Notice,
    Pick, Pill, ReadLine, Ruler, Sheet, Stepper, StreakIcon, TextField, TextKind, Toast, Unit,
};

fn main() {
    mount_to_body(Gallery);
}

#[component]
fn Gallery() -> impl IntoView {
    let night = RwSignal::new(location().hash().is_ok_and(|hash| hash.contains("night")));
    Effect::new(move |_| {
        let root = document().document_element().expect("a page has a root");
        let _ = root.set_attribute("data-palette", if night.get() { "night" } else { "day" });
    });
    let palette = Signal::derive(move || if night.get() { "Day" } else { "Night" }.to_owned());
    view! {
        <header class="top-bar">
            <h1 class="top-title">"Gallery"</h1>
            <span class="top-beside">"every widget once"</span>
            <nav class="top-pills"><Pill id="palette" value=palette on_press=move |()| night.update(|night| *night = !*night)/></nav>
        </header>
        <main class="page gallery">
            <Lenses/>
            <div class="gallery-pair"><Acuities/><Numbers/></div>
            <Rulers/>
            <div class="gallery-pair"><Choices/><Words/></div>
        </main>
    }
    .into_any()
}

#[component]
fn Lenses() -> impl IntoView {
    let right = RwSignal::new(SphereCyl::new(4.75, -1.5, 90.0).ok());
    let left = RwSignal::new(None);
    let before = SphereCyl::new(2.75, -1.5, 85.0).ok();
    view! {
        <div class="gallery-pair">
            <div class="sheet at-work"><LensField id="right" eye="right" value=right last=Signal::stored(before) on_change=move |lens| right.set(lens)/></div>
            <div class="sheet"><LensField id="left" eye="left" value=left last=Signal::stored(before) on_change=move |lens| left.set(lens)/></div>
        </div>
    }
    .into_any()
}

#[component]
fn Acuities() -> impl IntoView {
    let read = RwSignal::new(None::<ReadLine>);
    view! {
        <section class="sheet">
            <AcuityPicker id="read" label="smallest line read, right eye" value=read on_change=move |line| read.set(line)/>
            <p id="read-said">{move || format!("{:?}", read.get())}</p>
        </section>
    }
    .into_any()
}

#[component]
fn Numbers() -> impl IntoView {
    let lens = RwSignal::new(Some(3.5));
    let cm = RwSignal::new(Some(67.0));
    let axis = RwSignal::new(Some(180.0));
    view! {
        <section class="sheet gallery-column">
            <Stepper id="lens" label="lens in place" value=lens on_change=move |v| lens.set(Some(v)) step=0.25 min=-40.0 max=40.0
                signed=true page=1.0 unit=Unit::Dioptres on_clear=move |()| lens.set(None)/>
            <p id="lens-said">{move || format!("{:?}", lens.get())}</p>
            <Stepper id="cm" label="working distance" value=cm on_change=move |v| cm.set(Some(v)) step=1.0 min=10.0 max=120.0
                decimals=0 unit=Unit::Centimetres error=Signal::stored(Some("the +1.50 is for 67 cm".to_owned()))/>
            <AxisDial id="axis" label="axis, right eye" value=axis cyl=Signal::stored(-3.0) last=Signal::stored(Some(85.0))
                on_change=move |v| axis.set(Some(v))/>
            <Dial id="dial" label="right eye" axis=axis last=Signal::stored(Some(85.0))/>
        </section>
    }
    .into_any()
}

#[component]
fn Rulers() -> impl IntoView {
    let mark = Mark::new;
    let first = vec![
        mark(4.0, Motion::Against),
        mark(2.5, Motion::With),
        mark(3.25, Motion::Neutral),
        mark(3.25, Motion::Unsure),
    ];
    let second = vec![mark(5.5, Motion::Against), mark(4.75, Motion::Neutral)];
    let near = Signal::stored(Scale::around([4.0, 2.5, 3.25]));
    view! {
        <section class="sheet gallery-rulers">
            <Ruler id="ruler-180" label="180" scale=near marks=Signal::stored(first) band=Signal::stored(Some((3.1, 3.4)))
                at=Signal::stored(Some(3.25)) last=Signal::stored(Some(3.0))/>
            <Ruler id="ruler-90" label="90" scale=Signal::stored(Scale::around([5.5, 4.75])) marks=Signal::stored(second)
                band=Signal::stored(Some((4.6, 4.9))) last=Signal::stored(Some(4.75))/>
            <Ruler id="ruler-left" label="180" scale=Signal::stored(Scale::around([0.5, 5.5])) band=Signal::stored(Some((1.25, 4.4)))
                last=Signal::stored(Some(2.75))/>
        </section>
    }
    .into_any()
}

#[component]
fn Choices() -> impl IntoView {
    let beam = RwSignal::new(Some("normal"));
    let meridian = RwSignal::new(Some(180));
    let seen = RwSignal::new(None);
    let beams = vec![
        Pick::new("normal", || "Beam normal"),
        Pick::new("reversed", || "Reversed"),
    ];
    let meridians = vec![
        Pick::new(180, || "tests 180").picture(view! { <StreakIcon stands_at=90.0/> }),
        Pick::new(90, || "tests 90").picture(view! { <StreakIcon stands_at=180.0/> }),
    ];
    let motions = vec![
        Pick::new(Motion::With, || "With").below("more plus"),
        Pick::new(Motion::Neutral, || "Neutral"),
        Pick::new(Motion::Against, || "Against").below("less plus"),
    ];
    view! {
        <section class="sheet gallery-column">
            <div class="row">
                <Pill id="distance" value="67 cm" beside="1.49 D" on_press=|()| ()/>
                <Pill id="comes" label="comes" value="off at the end" on_press=|()| ()/>
            </div>
            <div class="row">
                <Choice id="beam" label="beam" unseen_label=true picks=beams value=beam on_change=move |b| beam.set(Some(b))/>
                <Choice id="meridian" label="meridian" picks=meridians value=meridian on_change=move |m| meridian.set(Some(m))/>
            </div>
            <Choice id="seen" label="seen" look=ChoiceLook::Squares picks=motions value=seen on_change=move |s| seen.set(Some(s))/>
            <Notice id="worse"><span><b>"Right eye is 2\u{bd} lines worse than in March."</b>" Pinhole next?"</span></Notice>
            <Notice id="newer"><span>"A newer version is here."</span><button class="pill">"use it now"</button></Notice>
            <Disclosure id="working" summary="show the working"><p>"+4.75 \u{2212} 1.49 = +3.26"</p></Disclosure>
        </section>
    }
    .into_any()
}

#[component]
fn Words() -> impl IntoView {
    let name = RwSignal::new(String::from("Orla Pennyquick"));
    let born = RwSignal::new(String::new());
    let note = RwSignal::new(String::new());
    let open = RwSignal::new(location().hash().is_ok_and(|hash| hash.contains("sheet")));
    let said = RwSignal::new(
        location()
            .hash()
            .is_ok_and(|hash| hash.contains("toast"))
            .then(|| "sweep taken away".to_owned()),
    );
    view! {
        <section class="sheet gallery-column">
            <TextField id="name" label="name" value=name on_change=move |text| name.set(text)/>
            <TextField id="born" label="date of birth" kind=TextKind::Date value=born on_change=move |text| born.set(text)
                hint="as it stands in the home's list" error=Signal::stored(Some("a date in the past is needed".to_owned()))/>
            <TextField id="note" label="note" kind=TextKind::Lines value=note on_change=move |text| note.set(text)/>
            <div class="row">
                <button class="act" id="open-sheet" on:click=move |_| open.set(true)>"Open a sheet"</button>
                <button class="pill" id="open-toast" on:click=move |_| said.set(Some("sweep taken away".into()))>"say something"</button>
                <button class="pill" disabled=true>"not yet"</button>
            </div>
            <Sheet id="over" title="Working distance" open=open on_close=move |()| open.set(false)>
                <p>"How far is the retinoscope from the lens?"</p>
                <button class="act">"Keep it"</button>
            </Sheet>
            <Toast id="toast" words=said on_action=move |()| said.set(None) on_close=move |()| said.set(None)/>
        </section>
    }
    .into_any()
}
