//! Glasses in words: those worn, those ordered, those that came.

use ::words::record::reading as say;
use optics::SphereCyl;
use optics::format::{plain, power};
use optics::prism::Prism;

use super::{Lines, Reads, day, filled, listed};
use crate::finding::{Eye, Eyes};
use crate::sections::{
    Fitted, Fitting, LensForm, MadeLens, OneOf, Order, OrderedLens, OrderedPair, UsedFor,
    WornGlasses, WornLens, WornPair,
};

/// "+2.00 / −0.50 × 90, add +2.50, prism 1.00 in".
fn lens(eye: Eye, lens: &SphereCyl, add_d: Option<f64>, prism: Option<Prism>) -> String {
    listed([
        Some(lens.to_string()),
        add_d.map(|add| say::add(&power(add))),
        prism.map(|prism| say::prism(&prism.written(eye))),
    ])
}

fn pair(used_for: UsedFor, form: LensForm) -> String {
    format!("{}, {}", used_for.word(), form.word())
}

fn mm(label: &str, length: Option<f64>) -> Option<String> {
    length.map(|mm| say::measure_mm(&label, &plain(mm, 1)))
}

fn both<T>(eyes: &Eyes<T>, say: impl Fn(Eye, &T) -> Option<String>) -> Eyes<Option<String>> {
    Eyes {
        right: say(Eye::Right, &eyes.right),
        left: say(Eye::Left, &eyes.left),
    }
}

impl WornLens {
    /// Its power with addition and prism, before this eye.
    pub fn in_words(&self, eye: Eye) -> String {
        lens(eye, &self.lens, self.add_d, self.prism)
    }
}

impl WornPair {
    /// "far, single vision".
    pub fn heading(&self) -> String {
        pair(self.used_for, self.form)
    }
}

impl Reads for WornGlasses {
    fn read(&self, lines: &mut Lines) {
        lines.finding(say::glasses(), &self.pairs, |pairs| say::pairs(pairs.len()));
        for worn in self.pairs.done().into_iter().flatten() {
            let lenses = both(&worn.lenses, |eye, found| {
                found.in_words(|lens| lens.in_words(eye))
            });
            lines.eyes(worn.heading(), lenses);
            let told = listed([
                worn.measured.map(|how| how.in_words().into()),
                mm(say::centres(), worn.centres_mm),
                filled(&worn.worn),
            ]);
            lines.one(say::those_for(&worn.used_for.word()), told);
            lines.one(say::lenses_are(), &*worn.lens_state);
            lines.one(say::frame_is(), &*worn.frame_state);
            lines.finding(say::name_on_it(), &worn.name_on_it, |name| {
                filled(name).unwrap_or_else(|| say::no_glasses_ordered().into())
            });
        }
    }
}

impl OrderedLens {
    /// Its power with addition, prism and place, before this eye.
    pub fn in_words(&self, eye: Eye) -> String {
        listed([
            Some(lens(eye, &self.lens, self.add_d, self.prism)),
            mm(say::centre(), self.centre_mm),
            mm(say::height(), self.height_mm),
        ])
    }
}

impl OrderedPair {
    /// "near, single vision".
    pub fn heading(&self) -> String {
        pair(self.used_for, self.form)
    }
}

impl Reads for Order {
    fn read(&self, lines: &mut Lines) {
        for ordered in &self.pairs {
            let lenses = both(&ordered.lenses, |eye, found| {
                found.as_ref().map(|lens| lens.in_words(eye))
            });
            lines.eyes(ordered.heading(), lenses);
            let engraved = ordered.engraved.as_ref();
            let told = listed([
                filled(&ordered.frame),
                filled(&ordered.lens_note),
                mm(say::vertex(), ordered.vertex_mm),
                engraved.map(|name| say::engraved(&name)),
            ]);
            lines.one(say::those_for(&ordered.used_for.word()), told);
        }
        lines.one(say::made_by(), &*self.made_by);
        lines.some(say::sent_on(), self.sent_on.map(day));
    }
}

impl MadeLens {
    /// Its power with addition, prism and height, before this eye.
    pub fn in_words(&self, eye: Eye) -> String {
        listed([
            Some(lens(eye, &self.lens, self.add_d, self.prism)),
            mm(say::height(), self.height_mm),
        ])
    }
}

impl Fitted {
    /// "pair 1 of the order".
    pub fn heading(&self) -> String {
        say::pair_of_order(&(u32::from(self.pair) + 1))
    }
}

impl Reads for Fitting {
    fn read(&self, lines: &mut Lines) {
        for fitted in &self.pairs {
            let told = listed([
                fitted.received_on.map(|date| say::came(&day(date))),
                fitted.fitted_on.map(|date| say::fitted(&day(date))),
                Some(say::judged_by(&fitted.judged_by.in_words())),
            ]);
            lines.one(fitted.heading(), told);
            let lenses = both(&fitted.lenses, |eye, found| {
                found.in_words(|lens| lens.in_words(eye))
            });
            lines.eyes(say::measured_to(&fitted.read_to.in_words()), lenses);
            let named = fitted
                .name_on_it
                .map(|there| if there { say::yes() } else { say::no() });
            lines.some(say::name_on_it(), named.map(str::to_owned));
            lines.one(say::adjusted(), &*fitted.adjusted);
            lines.finding(say::taken(), &fitted.reaction, Clone::clone);
        }
    }
}
