//! What stands for each eye while it is swept, and what a tap does to it.

use super::words;
use crate::edge::motion;
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::retinoscopy::Retinoscopy as Net;
use optics::retinoscopy::bracket::{Source, Start};
use optics::retinoscopy::{
    Beam, Circumstances, EyeBracket, Held, Motion, NextMove, Setup, Sweep, Sweeping,
};
use optics::{Meridian, SphereCyl, Step, limits};
use record::{Cycloplegic, Eye, Eyes, MovedIn, Retinoscopy, Swept};
use widgets::Rules;

/// What the examiner's hands hold for one eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InHand {
    /// The lens in place, dioptres, without the working lens.
    pub lens: f64,
    /// The meridian that the streak tests.
    pub meridian: Meridian,
    /// The beam.
    pub beam: Beam,
}

impl InHand {
    /// As the last sweep left it; before the first, no lens.
    fn after(sweeping: &Sweeping) -> Self {
        let first = Self {
            lens: 0.0,
            meridian: sweeping.cross()[0],
            beam: Beam::Normal,
        };
        sweeping.sweeps.last().map_or(first, Self::of)
    }

    const fn of(sweep: &Sweep) -> Self {
        Self {
            lens: sweep.lens,
            meridian: sweep.meridian,
            beam: sweep.beam,
        }
    }

    /// The two meridians on the rulers, the one nearer to lying first.
    pub fn cross(self) -> [Meridian; 2] {
        let one = self.meridian;
        if one.lies() {
            [one, one.crossed()]
        } else {
            [one.crossed(), one]
        }
    }
}

/// One step of a trial lens.
fn lenses(step: Step) -> Rules {
    Rules::lens(limits::MERIDIAN_POWER.high, step.dioptres())
}

/// What an eye is to start from, while no sweep has written it down yet.
#[derive(Clone, Copy)]
enum Chosen {
    /// Nobody said: last time's finding, where there is one.
    Usual,
    /// What was chosen; perhaps nothing.
    This(Option<Start>),
}

/// What belongs to one eye.
#[derive(Clone, Copy)]
struct OfEye {
    hand: RwSignal<InHand>,
    setup: Memo<Setup>,
    last: Signal<Option<SphereCyl>>,
    chosen: RwSignal<Chosen>,
    sweeping: Memo<Sweeping>,
    start: Memo<Option<Start>>,
    circumstances: Memo<Circumstances>,
    bracket: Memo<EyeBracket>,
    net: Memo<Option<Net>>,
    next: Memo<NextMove>,
}

impl OfEye {
    fn new(value: Signal<Retinoscopy>, eye: Eye, last: Signal<Option<SphereCyl>>) -> Self {
        let chosen = RwSignal::new(Chosen::Usual);
        let sweeping = move || sweeping(value, eye, chosen, last);
        let hand = RwSignal::new(InHand::after(&untrack(sweeping)));
        let sweeping = Memo::new(move |_| sweeping());
        let bracket = Memo::new(move |before: Option<&EyeBracket>| {
            sweeping.with(|sweeping| match before {
                Some(before) => sweeping.bracket_after(before),
                None => sweeping.bracket(),
            })
        });
        let found = Memo::new(move |_| value.with(|section| section.net(eye)));
        let setup = Memo::new(move |_| value.with(|section| section.setup));
        let next = Memo::new(move |_| {
            let held = held(setup, hand);
            sweeping.with(|Sweeping { sweeps, .. }| {
                bracket.with(|bracket| NextMove::of(bracket, sweeps, &held))
            })
        });
        Self {
            hand,
            setup,
            last,
            chosen,
            sweeping,
            start: Memo::new(move |_| sweeping.with(|sweeping| sweeping.start)),
            circumstances: Memo::new(move |_| sweeping.with(|sweeping| sweeping.circumstances)),
            bracket,
            net: found,
            next,
        }
    }
}

/// Both eyes' sweeping: one of it for the page, handed to all its parts.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The section as it stands.
    pub value: Signal<Retinoscopy>,
    /// The eye being worked on.
    pub working: RwSignal<Eye>,
    /// What was said last, for the ear.
    pub said: RwSignal<String>,
    /// Another number each time that the screen shows a change.
    shown: Signal<u32>,
    on_change: Callback<Retinoscopy>,
    eyes: Eyes<OfEye>,
}

impl Desk {
    /// Sets the desk for a section, with last time's refraction of each eye.
    pub fn new(
        value: Signal<Retinoscopy>,
        on_change: Callback<Retinoscopy>,
        working: RwSignal<Eye>,
        last: Eyes<Signal<Option<SphereCyl>>>,
    ) -> Self {
        let of = |eye| OfEye::new(value, eye, *last.of(eye));
        let count = StoredValue::new(0_u32);
        let counted = move || {
            count.update_value(|count| *count = count.wrapping_add(1));
            count.get_value()
        };
        let changes = move || {
            value.track();
            working.track();
            last.right.track();
            last.left.track();
        };
        Self {
            value,
            working,
            said: RwSignal::new(String::new()),
            shown: motion::once_drawn(changes, counted),
            on_change,
            eyes: Eyes {
                right: of(Eye::Right),
                left: of(Eye::Left),
            },
        }
    }

    /// What `now` gives of what stands, anew once the screen shows the tap that changed it: for what stands beside the answer.
    pub fn beside<T: PartialEq + Send + Sync + 'static>(
        self,
        now: impl Fn() -> T + Send + Sync + 'static,
    ) -> Memo<T> {
        Memo::new(move |_| {
            self.follow_screen();
            untrack(&now)
        })
    }

    /// Has whoever asks go on once the screen shows a change.
    pub fn follow_screen(self) {
        self.shown.track();
    }

    /// What the hands hold for an eye.
    pub fn hand(self, eye: Eye) -> InHand {
        self.eyes.of(eye).hand.get()
    }

    /// What stands about an eye's sweeps; before the first, with what they will start from.
    pub fn sweeping(self, eye: Eye) -> Memo<Sweeping> {
        self.eyes.of(eye).sweeping
    }

    /// What sweeping an eye starts from.
    pub fn start(self, eye: Eye) -> Memo<Option<Start>> {
        self.eyes.of(eye).start
    }

    /// What an eye lets see.
    pub fn circumstances(self, eye: Eye) -> Memo<Circumstances> {
        self.eyes.of(eye).circumstances
    }

    /// Whether an eye was swept at all.
    pub fn has_swept(self, eye: Eye) -> bool {
        self.value
            .with(|section| !section.swept.of(eye).sweeping.sweeps.is_empty())
    }

    /// Last time's refraction.
    pub fn last(self, eye: Eye) -> Option<SphereCyl> {
        self.eyes.of(eye).last.get()
    }

    /// What the sweeps say.
    pub fn bracket(self, eye: Eye) -> Memo<EyeBracket> {
        self.eyes.of(eye).bracket
    }

    /// Whether an eye's finding is what its sweeps say.
    pub fn follows(self, eye: Eye) -> bool {
        let bracket = self.eyes.of(eye).bracket;
        self.value
            .with(|section| bracket.with(|bracket| section.follows_bracket(eye, bracket)))
    }

    /// What stands for an eye with the distance off, however it was found.
    pub fn net(self, eye: Eye) -> Memo<Option<Net>> {
        self.eyes.of(eye).net
    }

    /// What to do next.
    pub fn next(self, eye: Eye) -> Memo<NextMove> {
        self.eyes.of(eye).next
    }

    /// Distance, working lens and steps.
    pub fn setup(self, eye: Eye) -> Memo<Setup> {
        self.eyes.of(eye).setup
    }

    /// Set-up and lens in place.
    pub fn held(self, eye: Eye) -> Held {
        let OfEye { setup, hand, .. } = *self.eyes.of(eye);
        held(setup, hand)
    }

    /// Puts something else in the hands.
    pub fn take_in_hand(self, eye: Eye, change: impl FnOnce(&mut InHand)) {
        self.eyes.of(eye).hand.update(change);
    }

    /// Steps the lens in place.
    pub fn step(self, eye: Eye, steps: i32) {
        let lenses = lenses(self.value.with_untracked(|section| section.setup.step));
        self.take_in_hand(eye, |hand| hand.lens = lenses.stepped(hand.lens, steps));
        self.said
            .set(lenses.say(self.eyes.of(eye).hand.get_untracked().lens));
    }

    /// Writes a sweep of the working eye down.
    pub fn sweep(self, seen: Motion) {
        let eye = self.working.get_untracked();
        let hand = self.eyes.of(eye).hand.get_untracked();
        let setup = self.value.with_untracked(|section| section.setup);
        let Ok(sweep) = Sweep::new(hand.meridian, hand.lens, setup, seen) else {
            return;
        };
        let sweep = Sweep {
            beam: hand.beam,
            ..sweep
        };
        self.change(eye, |swept| swept.log(sweep));
        self.say_after(eye, &words::sweep(&sweep));
    }

    /// Takes the working eye's last sweep back; the hands hold again what it was made with.
    pub fn undo(self) {
        let eye = self.working.get_untracked();
        let mut taken = None;
        self.change(eye, |swept| taken = swept.undo());
        if let Some(sweep) = taken {
            self.eyes.of(eye).hand.set(InHand::of(&sweep));
            self.say_after(eye, &say::taken_back(&words::sweep(&sweep)));
        }
    }

    /// Takes up what is advised next.
    pub fn follow(self, eye: Eye) {
        let Some(take) = self.next(eye).with_untracked(NextMove::take) else {
            return;
        };
        self.take_in_hand(eye, |hand| {
            hand.meridian = take.meridian;
            hand.lens = take.lens.unwrap_or(hand.lens);
            hand.beam = take.beam.unwrap_or(hand.beam);
        });
        let hand = self.eyes.of(eye).hand.get_untracked();
        let lens = optics::format::power(hand.lens);
        self.said
            .set(say::lens_for(&lens, &words::degrees(hand.meridian)));
    }

    /// Writes down what moving in showed.
    pub fn moved_in(self, eye: Eye, answer: MovedIn) {
        self.change(eye, |swept| swept.moved_in = Some(answer));
        self.said.set(answer.sentence().to_owned());
    }

    /// Changes what the eye lets see.
    pub fn put_circumstances(self, eye: Eye, circumstances: Circumstances) {
        self.change(eye, |swept| swept.sweeping.circumstances = circumstances);
    }

    /// Says which drops were given, or that none were.
    pub fn put_drops(self, eye: Eye, drops: Option<Cycloplegic>) {
        self.change(eye, |swept| swept.drops = drops);
    }

    /// Changes what sweeping starts from.
    pub fn put_start(self, eye: Eye, start: Option<Start>) {
        self.eyes.of(eye).chosen.set(Chosen::This(start));
        self.change(eye, |swept| swept.sweeping.start = start);
        let sweeping = self.sweeping(eye).get_untracked();
        if sweeping.sweeps.is_empty() {
            self.take_in_hand(eye, |hand| hand.meridian = sweeping.cross()[0]);
        }
    }

    /// Makes what the sweeps say the finding, in place of what was entered otherwise.
    pub fn take_proposed(self, eye: Eye) {
        let mut section = self.value.get_untracked();
        section.take_proposed(eye);
        self.on_change.run(section);
    }

    /// Changes what stands about an eye's sweeps; what they start from is written down with it.
    pub fn change(self, eye: Eye, change: impl FnOnce(&mut Swept)) {
        let OfEye {
            sweeping, bracket, ..
        } = self.eyes.of(eye);
        let start = sweeping.with_untracked(|sweeping| sweeping.start);
        let mut section = self.value.get_untracked();
        bracket.with_untracked(|said| {
            section.change_swept_after(eye, said, |swept| {
                swept.sweeping.start = start;
                change(swept);
            });
        });
        self.on_change.run(section);
    }

    fn say_after(self, eye: Eye, what: &str) {
        let next = self.next(eye).get_untracked();
        self.said.set(format!("{what}. {}", next.sentence()));
    }
}

fn held(setup: Memo<Setup>, hand: RwSignal<InHand>) -> Held {
    Held {
        setup: setup.get(),
        lens: hand.get().lens,
    }
}

/// What stands about an eye's sweeps. Before anything is written down it starts from what was chosen, else from last time.
fn sweeping(
    value: Signal<Retinoscopy>,
    eye: Eye,
    chosen: RwSignal<Chosen>,
    last: Signal<Option<SphereCyl>>,
) -> Sweeping {
    let mut sweeping = value.with(|section| section.swept.of(eye).sweeping.clone());
    if sweeping.start.is_none() && sweeping.sweeps.is_empty() {
        let last = || {
            let lens = last.get()?.rounded(Step::Quarter).value;
            Some(Start {
                lens,
                from: Source::LastTime,
            })
        };
        sweeping.start = match chosen.get() {
            Chosen::Usual => last(),
            Chosen::This(start) => start,
        };
    }
    sweeping
}
