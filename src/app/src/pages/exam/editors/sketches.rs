//! Sketches: strokes over an outline, with a pen or a finger.

use super::super::fields::{Part, Slate, adding, all_words, at, card, cards};
use super::outlines::outline;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use record::{Eye, OneOf, Outline, Point, Sketch, Sketches, Stroke};
use widgets::{Choice, Dot, Pick, SketchPad, TextField};

/// The section's fields.
pub fn sketches(slate: Slate) -> AnyView {
    let all = Part::<Sketches>::whole(slate);
    let list = at!(all, drawn);
    let (each, length) = (list.clone(), list.shown(Vec::len));
    let add = move |place: usize| {
        if let Some(outline) = Outline::all().into_iter().nth(place) {
            let eye = (outline != Outline::Face).then(|| slate.working.get_untracked());
            list.change(|drawn| {
                drawn.push(Sketch {
                    outline,
                    eye,
                    strokes: Vec::new(),
                    caption: String::new(),
                });
            });
        }
    };
    let whose = Eye::BOTH
        .map(|eye| Pick::new(eye, || say::eye(&eye.said())))
        .into();
    view! {
        <section class="sheet asks">
            <Choice id="sketch-eye" label=say::which_eye_2() picks=whose value=Signal::derive(move || Some(slate.working.get()))
                on_change=move |eye| slate.working.set(eye)/>
            {adding("sketch", say::draw_over(), all_words::<Outline>(), add)}
        </section>
        {cards(length, move |place| sketch(&each, place))}
    }
    .into_any()
}

fn sketch(list: &Part<Vec<Sketch>>, place: usize) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let drawn = untrack(|| one.ask(|one| outline(one.outline, one.eye)));
    let strokes = at!(one, strokes);
    let none = strokes.shown(Vec::is_empty);
    let (puts, takes) = (strokes.clone(), strokes.clone());
    let put = move |dots: Vec<Dot>| {
        let points = dots.into_iter().map(Point::from).collect();
        puts.change(|strokes| strokes.push(Stroke { points }));
    };
    let undo = move |_| {
        takes.change(|strokes| {
            strokes.pop();
        });
    };
    let caption = at!(one, caption).spot(Clone::clone, |words, new| *words = new);
    let heading = one.shown(Sketch::heading);
    let holds = view! {
        <SketchPad id=id("pad") label=heading outline=drawn.unwrap_or_else(|| ().into_any())
            strokes=strokes.shown(|strokes| strokes.iter().map(dots).collect::<Vec<_>>()) on_stroke=put/>
        <div class="asked-ways">
            <button type="button" class="pill" id=id("undo-stroke") disabled=move || none.get() on:click=undo>{say::undo_last_stroke()}</button>
        </div>
        <TextField id=id("caption") label=say::what_shows() value=caption.value on_change=caption.put/>
    };
    let list = list.clone();
    card(
        id("sketched"),
        heading,
        move || list.remove(place),
        holds.into_any(),
    )
}

/// A stroke as the pad draws it.
pub fn dots(stroke: &Stroke) -> Vec<Dot> {
    stroke.points.iter().copied().map(Into::into).collect()
}
