//! The ruler: dioptres on an upright scale, what is still possible, every lens tried, and last time.

use crate::room;
use crate::scale::{Mark, Motion, Scale, Tick};
use leptos::html;
use leptos::prelude::*;
use optics::format::power;

/// How the drawing lies in its own units: as large as the room that it stands in, or as a picture of one size.
#[derive(Clone, Copy, PartialEq)]
struct Layout {
    width: f64,
    height: f64,
    top: f64,
    line_x: f64,
}

impl Layout {
    /// Of one size.
    const PICTURE: Self = Self {
        width: 200.0,
        height: 300.0,
        top: 42.0,
        line_x: 76.0,
    };

    /// Filling a room; a narrow one has less to spare at the side.
    fn filling((width, height): (f64, f64)) -> Self {
        Self {
            width,
            height,
            top: 34.0,
            line_x: if width < 190.0 { 58.0 } else { 76.0 },
        }
    }

    fn marks_x(self) -> f64 {
        self.line_x + 28.0
    }

    /// How long the scale itself is.
    fn tall(self) -> f64 {
        self.height - self.top - 12.0
    }

    fn down(self, place: f64) -> f64 {
        self.top + place * self.tall()
    }

    fn y(self, scale: Scale, power: f64) -> Option<f64> {
        scale.place(power).map(|place| self.down(place))
    }
}

/// One meridian's ruler, as a picture of three sheets: a change of what moves leaves the figures of the scale, which cost most,
/// as they are.
#[component]
pub fn Ruler(
    /// The picture's id.
    #[prop(into)]
    id: String,
    /// The meridian, as it stands above: "180".
    #[prop(into)]
    label: Signal<String>,
    /// The stretch shown.
    #[prop(into)]
    scale: Signal<Scale>,
    /// Every lens tried, oldest first.
    #[prop(optional, into)]
    marks: Signal<Vec<Mark>>,
    /// What is still possible: the least and the most, dioptres.
    #[prop(optional, into)]
    band: Signal<Option<(f64, f64)>>,
    /// The most likely power.
    #[prop(optional, into)]
    at: Signal<Option<f64>>,
    /// Last time's power.
    #[prop(optional, into)]
    last: Signal<Option<f64>>,
    /// Whether it fills the room that its page gives it.
    #[prop(optional)]
    fills: bool,
) -> impl IntoView {
    // A tap changes one of these at a time: what stays is not drawn again.
    let (scale, marks) = (
        Memo::new(move |_| scale.get()),
        Memo::new(move |_| marks.get()),
    );
    let (band, at) = (Memo::new(move |_| band.get()), Memo::new(move |_| at.get()));
    let last = Memo::new(move |_| last.get());
    let node = NodeRef::<html::Div>::new();
    let room = if fills {
        room::of(node)
    } else {
        Signal::stored(None)
    };
    let layout = Memo::new(move |_| room.get().map_or(Layout::PICTURE, Layout::filling));
    let said = move || spoken(&label.get(), &marks.get(), band.get(), at.get(), last.get());
    let seen = move || format!("0 0 {} {}", layout.get().width, layout.get().height);
    let line = move || (layout.get(), scale.get());
    view! {
        <div class="ruler-room" class:ruler-fills=fills node_ref=node id=id data-part="ruler" role="img" aria-label=said>
            <svg class="ruler" viewBox=seen aria-hidden="true"><Band line=Signal::derive(line) band/></svg>
            <svg class="ruler" viewBox=seen aria-hidden="true">
                <text class="ruler-title" x=move || layout.get().line_x y="18">{label}</text>
                {move || { let l = layout.get(); view! { <line class="ruler-line" x1=l.line_x y1=l.top - 10.0 x2=l.line_x y2=l.height - 2.0/> } }}
                {move || scale.get().ticks(layout.get().tall()).into_iter().map(|tick| tick_view(line(), tick)).collect_view()}
            </svg>
            <svg class="ruler" viewBox=seen aria-hidden="true">
                {move || at.get().and_then(|p| layout.get().y(scale.get(), p)).map(|cy| view! { <circle class="ruler-at" cx=layout.get().line_x cy=cy r="8.5"/> })}
                {move || last.get().and_then(|power| last_view(line(), &marks.get(), power))}
                <For each=move || drawn(line(), &marks.get()) key=Drawn::key children=sign_view/>
            </svg>
        </div>
    }
}

/// A layout and the stretch that lies on it.
type Line = (Layout, Scale);

fn tick_view((layout, scale): Line, tick: Tick) -> impl IntoView {
    let reach = if tick.long {
        12.0
    } else if tick.figure.is_some() {
        8.0
    } else {
        4.5
    };
    let class = if tick.long {
        "ruler-tick ruler-tick-long"
    } else {
        "ruler-tick"
    };
    let (at, x) = (layout.down(scale.place_within(tick.power)), layout.line_x);
    view! {
        <line class=class x1=x - reach y1=at x2=x + reach y2=at/>
        {tick.figure.map(|figure| view! { <text class="ruler-figure" x=x - 18.0 y=at + 5.0>{figure}</text> })}
    }
}

/// What is still possible. Every sweep narrows it, so only its two ends change on the page.
#[component]
fn Band(line: Signal<Line>, band: Memo<Option<(f64, f64)>>) -> impl IntoView {
    let ends = Memo::new(move |_| {
        let (low, high) = band.get()?;
        let (layout, scale) = line.get();
        let [top, bottom] = [high, low].map(|end| layout.down(scale.place_within(end)));
        let half = f64::max((bottom - top) / 2.0, 14.0);
        Some((f64::midpoint(top, bottom) - half, half * 2.0))
    });
    let x = move || line.get().0.line_x - 14.0;
    let y = move || ends.get().map(|ends| ends.0);
    let height = move || ends.get().map(|ends| ends.1);
    view! {
        <Show when=move || ends.get().is_some()>
            <rect class="ruler-band" x=x y=y width="28" height=height rx="14"/>
        </Show>
    }
    .into_any()
}

/// Nearer than this to one another, two words would run into one.
const WORD_HIGH: f64 = 15.0;
/// And two signs.
const SIGN_HIGH: f64 = 17.0;

/// Whether both are one lens that showed one thing: no two trial lenses are nearer than an eighth of a dioptre.
fn same(a: &Mark, b: &Mark) -> bool {
    (a.power - b.power).abs() < 0.01 && (a.motion, a.reversed) == (b.motion, b.reversed)
}

/// One lens that showed one thing, however often.
struct Shown {
    mark: Mark,
    times: usize,
    at: f64,
    column: usize,
}

/// What was shown, the newest first; where signs would run into one another the older stands aside.
fn shown((layout, scale): Line, marks: &[Mark]) -> Vec<Shown> {
    let mut all: Vec<Shown> = Vec::new();
    for mark in marks.iter().rev() {
        let Some(at) = layout.y(scale, mark.power) else {
            continue;
        };
        if let Some(before) = all.iter_mut().find(|one| same(&one.mark, mark)) {
            before.times += 1;
            continue;
        }
        let taken = |column: usize| {
            let mut beside = all.iter().filter(|one| one.column == column);
            beside.any(|one| (one.at - at).abs() < SIGN_HIGH)
        };
        // Each sign before this one takes one column at most.
        let free = (0..=all.len()).find(|column| !taken(*column));
        let column = free.unwrap_or_default();
        all.push(Shown {
            mark: *mark,
            times: 1,
            at,
            column,
        });
    }
    all
}

/// A sign where it stands, with its word.
#[derive(Clone)]
struct Drawn {
    motion: Motion,
    x: f64,
    y: f64,
    words: Option<String>,
}

impl Drawn {
    /// What stays as it was is not drawn again.
    fn key(&self) -> (Motion, u64, u64, Option<String>) {
        (
            self.motion,
            self.x.to_bits(),
            self.y.to_bits(),
            self.words.clone(),
        )
    }
}

/// Lenses tried, the oldest first. A sign that stands close to no other, in the first column, has its word beside it.
fn drawn(line: Line, marks: &[Mark]) -> Vec<Drawn> {
    let all = shown(line, marks);
    let drawn = all.iter().rev().map(|one| {
        let near = |other: &&Shown| (other.at - one.at).abs() < WORD_HIGH;
        let alone = one.column == 0 && all.iter().filter(near).count() == 1;
        let times = if one.times > 1 {
            format!(" \u{d7}{}", one.times)
        } else {
            String::new()
        };
        Drawn {
            motion: one.mark.points(),
            x: line.0.marks_x() + 20.0 * one.column as f64,
            y: one.at,
            words: alone.then(|| one.mark.words() + &times),
        }
    });
    drawn.collect()
}

fn sign_view(drawn: Drawn) -> impl IntoView {
    let Drawn {
        motion,
        x,
        y,
        words,
    } = drawn;
    view! {
        {sign(motion, x, y)}
        {words.map(|words| view! { <text class="ruler-word" x=x + 13.0 y=y + 5.0>{words}</text> })}
    }
}

/// With points up the scale, to more plus; against points down it.
fn sign(motion: Motion, x: f64, y: f64) -> AnyView {
    let arrow = |up: f64| {
        let (tip, tail, wing) = (y - 7.0 * up, y + 7.0 * up, y - 2.0 * up);
        let d = format!(
            "M {x} {tail} L {x} {tip} M {} {wing} L {x} {tip} L {} {wing}",
            x - 5.0,
            x + 5.0
        );
        view! { <path class="ruler-sign" d=d/> }.into_any()
    };
    match motion {
        Motion::With => arrow(1.0),
        Motion::Against => arrow(-1.0),
        Motion::Neutral => view! { <circle class="ruler-sign" cx=x cy=y r="6"/> }.into_any(),
        Motion::Unsure => {
            view! { <text class="ruler-word ruler-unsure" x=x y=y + 5.0>"?"</text> }.into_any()
        }
    }
}

fn last_view((layout, scale): Line, marks: &[Mark], power: f64) -> Option<impl IntoView + use<>> {
    let at = layout.y(scale, power)?;
    // A lens tried at almost the same power has its words here: last time's go below them.
    let crowded = marks
        .iter()
        .filter_map(|mark| layout.y(scale, mark.power))
        .any(|mark| (mark - at).abs() < 15.0);
    let words = if crowded { at + 22.0 } else { at + 5.0 };
    let x = layout.line_x;
    let end = x + if crowded { 20.0 } else { 34.0 };
    Some(view! {
        <line class="ruler-last" x1=x + 14.0 y1=at x2=end y2=at/>
        <text class="ruler-last-word" x=x + 40.0 y=words>"last time"</text>
    })
}

fn spoken(
    label: &str,
    marks: &[Mark],
    band: Option<(f64, f64)>,
    at: Option<f64>,
    last: Option<f64>,
) -> String {
    let mut parts = vec![format!("meridian {label}")];
    parts.extend(at.map(|p| format!("most likely {}", power(p))));
    parts.extend(
        band.map(|(low, high)| format!("still possible from {} to {}", power(low), power(high))),
    );
    parts.extend(
        marks
            .iter()
            .map(|mark| format!("{} {}", power(mark.power), mark.words())),
    );
    parts.extend(last.map(|p| format!("last time {}", power(p))));
    parts.join("; ")
}
