//! The ruler: dioptres on an upright scale, what is still possible, every lens tried, and last time.

use crate::mark::marked;
use crate::room;
use crate::scale::{Mark, Motion, Scale, Tick};
use ::words::app::widgets as say;
use leptos::html;
use leptos::prelude::*;
use optics::format::power;
use std::fmt::Write;

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
    let said = move || {
        marked(spoken(
            &label.get(),
            &marks.get(),
            band.get(),
            at.get(),
            last.get(),
        ))
    };
    let seen = move || format!("0 0 {} {}", layout.get().width, layout.get().height);
    let line = move || (layout.get(), scale.get());
    let tried = Memo::new(move |_| marks.with(|marks| drawn(line(), marks)));
    view! {
        <div class="ruler-room" class:ruler-fills=fills node_ref=node id=id data-part="ruler" role="img" aria-label=said>
            <svg class="ruler" viewBox=seen aria-hidden="true"><Band line=Signal::derive(line) band/></svg>
            <svg class="ruler" viewBox=seen aria-hidden="true">
                <text class="ruler-title" x=move || layout.get().line_x y="18">{label}</text>
                <Ticks line=Signal::derive(line)/>
            </svg>
            <svg class="ruler" viewBox=seen aria-hidden="true">
                <At line=Signal::derive(line) at/>
                <Last line=Signal::derive(line) marks last/>
                <path class="ruler-sign" d=move || tried.with(|drawn| drawn.signs.clone())/>
                <For each=move || tried.with(|drawn| drawn.words.clone()) key=Words::key children=words_view/>
            </svg>
        </div>
    }
}

/// A layout and the stretch that lies on it.
type Line = (Layout, Scale);

/// The line, its ticks and their figures. All ticks of one weight are one path: a stretch that changes costs two attributes.
#[component]
fn Ticks(line: Signal<Line>) -> impl IntoView {
    let ticks = Memo::new(move |_| {
        let (layout, scale) = line.get();
        (line.get(), scale.ticks(layout.tall()))
    });
    let path = move |long: bool| ticks.with(|(line, ticks)| ticks_path(*line, ticks, long));
    let figures = move || ticks.with(|(line, ticks)| figures(*line, ticks));
    let down = move || {
        let l = line.get().0;
        format!("M {} {} V {}", l.line_x, l.top - 10.0, l.height - 2.0)
    };
    view! {
        <path class="ruler-line" d=down/>
        <path class="ruler-tick" d=move || path(false)/>
        <path class="ruler-tick ruler-tick-long" d=move || path(true)/>
        <For each=figures key=Figure::key children=|Figure { x, y, words }| view! { <text class="ruler-figure" x=x y=y>{marked(words)}</text> }/>
    }
    .into_any()
}

fn ticks_path((layout, scale): Line, ticks: &[Tick], long: bool) -> String {
    let reach = |tick: &Tick| match (tick.long, &tick.figure) {
        (true, _) => 12.0,
        (false, Some(_)) => 8.0,
        (false, None) => 4.5,
    };
    let mut path = String::new();
    for tick in ticks.iter().filter(|tick| tick.long == long) {
        let (at, reach) = (layout.down(scale.place_within(tick.power)), reach(tick));
        // Writing to a string never fails.
        let _ = write!(path, "M {} {at} h {} ", layout.line_x - reach, reach * 2.0);
    }
    path
}

/// A figure beside its tick.
struct Figure {
    x: f64,
    y: f64,
    words: String,
}

impl Figure {
    /// What stays as it was is not drawn again.
    fn key(&self) -> (u64, u64, String) {
        (self.x.to_bits(), self.y.to_bits(), self.words.clone())
    }
}

fn figures((layout, scale): Line, ticks: &[Tick]) -> Vec<Figure> {
    let figure = |tick: &Tick| {
        Some(Figure {
            x: layout.line_x - 18.0,
            y: layout.down(scale.place_within(tick.power)) + 5.0,
            words: tick.figure.clone()?,
        })
    };
    ticks.iter().filter_map(figure).collect()
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

/// The most likely power. It moves with every sweep; only its place changes on the page.
#[component]
fn At(line: Signal<Line>, at: Memo<Option<f64>>) -> impl IntoView {
    let y = Memo::new(move |_| {
        let (layout, scale) = line.get();
        layout.y(scale, at.get()?)
    });
    // Hidden, not taken away: what comes and goes has the page around it judged anew.
    let hidden = move || y.get().is_none().then_some("hidden");
    view! {
        <circle class="ruler-at" visibility=hidden cx=move || line.get().0.line_x cy=move || y.get() r="8.5"/>
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

/// What stands beside the line: the signs as one path, and words where there is room.
#[derive(Clone, Default, PartialEq)]
struct Drawn {
    signs: String,
    words: Vec<Words>,
}

/// Words, or the question mark of a lens that told nothing.
#[derive(Clone, PartialEq)]
struct Words {
    x: f64,
    y: f64,
    text: String,
    unsure: bool,
}

impl Words {
    /// What stays as it was is not drawn again.
    fn key(&self) -> (u64, u64, String) {
        (self.x.to_bits(), self.y.to_bits(), self.text.clone())
    }
}

/// Lenses tried, the oldest first. A sign that stands close to no other, in the first column, has its word beside it.
fn drawn(line: Line, marks: &[Mark]) -> Drawn {
    let all = shown(line, marks);
    let mut drawn = Drawn::default();
    for one in all.iter().rev() {
        let (x, y) = (line.0.marks_x() + 20.0 * one.column as f64, one.at);
        match sign(one.mark.points(), x, y) {
            Some(sign) => drawn.signs += &sign,
            None => drawn.words.push(Words {
                x,
                y: y + 5.0,
                text: "?".to_owned(),
                unsure: true,
            }),
        }
        let near = |other: &&Shown| (other.at - y).abs() < WORD_HIGH;
        if one.column == 0 && all.iter().filter(near).count() == 1 {
            let times = (one.times > 1).then(|| format!(" \u{d7}{}", one.times));
            drawn.words.push(Words {
                x: x + 13.0,
                y: y + 5.0,
                text: one.mark.words() + &times.unwrap_or_default(),
                unsure: false,
            });
        }
    }
    drawn
}

fn words_view(words: Words) -> impl IntoView {
    let Words { x, y, text, unsure } = words;
    view! { <text class="ruler-word" class:ruler-unsure=unsure x=x y=y>{text}</text> }
}

/// With points up the scale, to more plus; against points down it; neutral is a ring. What told nothing has no sign.
fn sign(motion: Motion, x: f64, y: f64) -> Option<String> {
    let arrow = |up: f64| {
        let (tip, tail, wing) = (y - 7.0 * up, y + 7.0 * up, y - 2.0 * up);
        let (left, right) = (x - 5.0, x + 5.0);
        format!("M {x} {tail} L {x} {tip} M {left} {wing} L {x} {tip} L {right} {wing} ")
    };
    match motion {
        Motion::With => Some(arrow(1.0)),
        Motion::Against => Some(arrow(-1.0)),
        Motion::Neutral => Some(format!(
            "M {} {y} a 6 6 0 1 0 12 0 a 6 6 0 1 0 -12 0 ",
            x - 6.0
        )),
        Motion::Unsure => None,
    }
}

/// Last time's power, with its words below those of a lens tried at almost the same power.
#[component]
fn Last(line: Signal<Line>, marks: Memo<Vec<Mark>>, last: Memo<Option<f64>>) -> impl IntoView {
    let place = Memo::new(move |_| {
        let (layout, scale) = line.get();
        let at = layout.y(scale, last.get()?)?;
        let mut tried = marks
            .get()
            .into_iter()
            .filter_map(|mark| layout.y(scale, mark.power));
        let crowded = tried.any(|mark| (mark - at).abs() < WORD_HIGH);
        Some((layout.line_x, at, crowded))
    });
    let dashes = move || {
        let (x, at, crowded) = place.get()?;
        Some(format!(
            "M {} {at} h {}",
            x + 14.0,
            if crowded { 6.0 } else { 20.0 }
        ))
    };
    let words_x = move || place.get().map(|(x, ..)| x + 40.0);
    let words_y = move || {
        let (_, at, crowded) = place.get()?;
        Some(at + if crowded { 22.0 } else { 5.0 })
    };
    view! {
        <Show when=move || place.get().is_some()>
            <path class="ruler-last" d=dashes/>
            <text class="ruler-last-word" x=words_x y=words_y>{say::last_time()}</text>
        </Show>
    }
    .into_any()
}

fn spoken(
    label: &str,
    marks: &[Mark],
    band: Option<(f64, f64)>,
    at: Option<f64>,
    last: Option<f64>,
) -> String {
    let mut parts = vec![say::meridian(&label)];
    parts.extend(at.map(|p| say::most_likely(&power(p))));
    parts.extend(band.map(|(low, high)| say::still_possible(&power(low), &power(high))));
    parts.extend(
        marks
            .iter()
            .map(|mark| format!("{} {}", power(mark.power), mark.words())),
    );
    parts.extend(last.map(|p| say::last_time_at(&power(p))));
    parts.join("; ")
}
