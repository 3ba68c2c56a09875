//! Glasses in words: those worn, those ordered, those that came.

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
        add_d.map(|add| format!("add {}", power(add))),
        prism.map(|prism| format!("prism {}", prism.written(eye))),
    ])
}

fn pair(used_for: UsedFor, form: LensForm) -> String {
    format!("{}, {}", used_for.word(), form.word())
}

fn mm(label: &str, length: Option<f64>) -> Option<String> {
    length.map(|mm| format!("{label} {} mm", plain(mm, 1)))
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
        lines.finding("glasses", &self.pairs, |pairs| match pairs.len() {
            0 => "none".into(),
            1 => "1 pair".into(),
            many => format!("{many} pairs"),
        });
        for worn in self.pairs.done().into_iter().flatten() {
            let lenses = both(&worn.lenses, |eye, found| {
                found.in_words(|lens| lens.in_words(eye))
            });
            lines.eyes(worn.heading(), lenses);
            let told = listed([
                worn.measured.map(|how| how.in_words().into()),
                mm("centres", worn.centres_mm),
                filled(&worn.worn),
            ]);
            lines.one(format!("those for {}", worn.used_for.word()), told);
            lines.one("lenses are", &*worn.lens_state);
            lines.one("frame is", &*worn.frame_state);
            lines.finding("name on it", &worn.name_on_it, |name| {
                filled(name).unwrap_or_else(|| "none".into())
            });
        }
    }
}

impl OrderedLens {
    /// Its power with addition, prism and place, before this eye.
    pub fn in_words(&self, eye: Eye) -> String {
        listed([
            Some(lens(eye, &self.lens, self.add_d, self.prism)),
            mm("centre", self.centre_mm),
            mm("height", self.height_mm),
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
                mm("vertex", ordered.vertex_mm),
                engraved.map(|name| format!("engraved “{name}”")),
            ]);
            lines.one(format!("those for {}", ordered.used_for.word()), told);
        }
        lines.one("made by", &*self.made_by);
        lines.some("sent on", self.sent_on.map(day));
    }
}

impl MadeLens {
    /// Its power with addition, prism and height, before this eye.
    pub fn in_words(&self, eye: Eye) -> String {
        listed([
            Some(lens(eye, &self.lens, self.add_d, self.prism)),
            mm("height", self.height_mm),
        ])
    }
}

impl Fitted {
    /// "pair 1 of the order".
    pub fn heading(&self) -> String {
        format!("pair {} of the order", u32::from(self.pair) + 1)
    }
}

impl Reads for Fitting {
    fn read(&self, lines: &mut Lines) {
        for fitted in &self.pairs {
            let told = listed([
                fitted.received_on.map(|date| format!("came {}", day(date))),
                fitted.fitted_on.map(|date| format!("fitted {}", day(date))),
                Some(format!("judged by {}", fitted.judged_by.in_words())),
            ]);
            lines.one(fitted.heading(), told);
            let lenses = both(&fitted.lenses, |eye, found| {
                found.in_words(|lens| lens.in_words(eye))
            });
            lines.eyes(format!("measured to {}", fitted.read_to.in_words()), lenses);
            let named = fitted
                .name_on_it
                .map(|there| if there { "yes" } else { "no" });
            lines.some("name on it", named.map(str::to_owned));
            lines.one("adjusted", &*fitted.adjusted);
            lines.finding("taken", &fitted.reaction, Clone::clone);
        }
    }
}
