//! Acuity, retinoscopy and subjective in words.

use ::words::record::reading as say;
use optics::Step;
use optics::format::{plain, power, signed};
use optics::retinoscopy::Neutral;
use optics::retinoscopy::bracket::Source;
use optics::retinoscopy::{Media, Reflex};

use super::{Lines, Reads, filled, listed};
use crate::finding::{Eye, Eyes, Finding};
use crate::sections::{Acuity, Chart, NearAdd, OneOf, Retinoscopy, Seen, Subjective, Swept};

impl OneOf for Media {
    fn all() -> Vec<Self> {
        Self::ALL.to_vec()
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::Clear => say::media_clear(),
            Self::Slight => say::media_slight(),
            Self::Moderate => say::media_moderate(),
            Self::Dense => say::media_dense(),
        }
    }
}

impl OneOf for Reflex {
    fn all() -> Vec<Self> {
        Self::ALL.to_vec()
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::Bright => say::reflex_bright(),
            Self::Dull => say::reflex_dull(),
            Self::Patchy => say::reflex_patchy(),
            Self::Scissoring => say::reflex_scissoring(),
            Self::None => say::reflex_none(),
        }
    }
}

impl OneOf for Source {
    fn all() -> Vec<Self> {
        vec![Self::LastTime, Self::Worn, Self::Machine, Self::FellowEye]
    }

    fn in_words(&self) -> &'static str {
        match self {
            Self::LastTime => say::from_last_time(),
            Self::Worn => say::from_glasses_worn(),
            Self::Machine => say::from_machine(),
            Self::FellowEye => say::from_fellow_eye(),
        }
    }
}

impl NearAdd {
    /// "+2.25 at 40 cm".
    pub fn in_words(&self) -> String {
        say::power_at(&power(self.power), &plain(self.at_cm, 1))
    }
}

impl Chart {
    /// "is 2/36 = 6/108 · logMAR 1.26" where the chart stood elsewhere than it was made for; else only the score.
    pub fn is_here(&self, finding: &Finding<Seen>) -> Option<String> {
        let seen = finding.done()?;
        let logmar = self.logmar(seen)?;
        let figure = if logmar < 0.0 {
            signed(logmar, 2)
        } else {
            format!("{logmar:.2}")
        };
        let score = format!("logMAR {figure}");
        if (self.made_for_m - self.used_at_m).abs() < f64::EPSILON {
            return Some(score);
        }
        let (here, six) = (self.as_it_is(seen)?, self.at_six_metres(seen)?);
        Some(say::is_here(&here, &six, &score))
    }

    /// "6/36 −1, is 2/36 …", or why not; nothing where it is blank.
    fn read_in_words(&self, finding: &Finding<Seen>) -> Option<String> {
        let labelled = finding.in_words(Seen::to_string)?;
        Some(listed([Some(labelled), self.is_here(finding)]))
    }
}

impl Reads for Acuity {
    fn read(&self, lines: &mut Lines) {
        let [made_for, used_at] =
            [self.chart.made_for_m, self.chart.used_at_m].map(|m| lines.far.said(m));
        lines.one(say::chart(), say::chart_made_for(&made_for, &used_at));
        let read = |finding: &Finding<Seen>| self.chart.read_in_words(finding);
        lines.eyes(say::unaided(), self.eyes.map(|eye| read(&eye.unaided)));
        lines.eyes(
            say::with_glasses(),
            self.eyes.map(|eye| read(&eye.with_glasses)),
        );
        lines.eyes(say::pinhole(), self.eyes.map(|eye| read(&eye.pinhole)));
    }
}

impl Reads for Retinoscopy {
    fn read(&self, lines: &mut Lines) {
        let setup = self.setup;
        let allowed = match setup.working_lens {
            None => say::taken_off_at_end().to_owned(),
            Some(lens) => say::lens_in_cell(&power(lens.power()), &lens.cell()),
        };
        lines.one(say::distance(), format!("{}, {allowed}", setup.distance));
        let lens = |neutral: &Neutral| match neutral {
            Neutral::OverLens(held) => say::held_over(&held.over(), &held.worn()),
            other => other.lens_with(setup.cylinders).to_string(),
        };
        lines.findings(say::lens_at_neutral(), &self.eyes, |found| found, lens);
        let net = |eye| Some(self.net(eye)?.net.rounded(Step::Quarter).value.to_string());
        let nets = Eyes {
            right: net(Eye::Right),
            left: net(Eye::Left),
        };
        lines.eyes(say::with_distance_off(), nets);
        lines.some(
            say::vertex_distance(),
            self.vertex_mm.map(|mm| format!("{} mm", plain(mm, 1))),
        );
        lines.eyes(say::how_found(), self.swept.map(Swept::found_in_words));
        lines.eyes(say::the_eye(), self.swept.map(Swept::eye_in_words));
    }
}

impl Swept {
    /// "7 sweeps from last time; with in both when moved in, as it goes from neutral".
    fn found_in_words(&self) -> Option<String> {
        let sweeping = &self.sweeping;
        if sweeping.sweeps.is_empty() {
            return None;
        }
        let start = sweeping
            .start
            .map(|start| say::found_from(&start.from.in_words()));
        let checked = self
            .moved_in
            .map(|answer| format!("; {}", answer.sentence()));
        Some(say::sweeps_made(
            &sweeping.sweeps.len(),
            &start.unwrap_or_default(),
            &checked.unwrap_or_default(),
        ))
    }

    /// "pupil 2.5 mm, media dense, reflex dull, 8° beside the line of sight, cyclopentolate 1 % 35 min before".
    fn eye_in_words(&self) -> Option<String> {
        let eye = &self.sweeping.circumstances;
        let drops = self.drops.as_ref();
        filled(&listed([
            eye.pupil_mm().map(|mm| say::eye_pupil(&plain(mm, 1))),
            eye.media.map(|media| say::eye_media(&media.in_words())),
            eye.reflex.map(|reflex| say::eye_reflex(&reflex.in_words())),
            eye.off_sight()
                .map(|degrees| say::eye_beside(&plain(degrees, 0))),
            drops.map(|drops| say::eye_drops(&drops.drug.trim(), &drops.minutes)),
        ]))
    }
}

impl Reads for Subjective {
    fn read(&self, lines: &mut Lines) {
        let at = say::at_distance(&lines.far.said(self.chart.used_at_m));
        lines.one(say::chart(), at);
        lines.findings(
            say::lens(),
            &self.eyes,
            |eye| eye,
            |eye| eye.lens.to_string(),
        );
        let reads = self.eyes.map(|finding| {
            let seen = finding.done()?.acuity?;
            Some(self.chart.in_words(&seen))
        });
        lines.eyes(say::reads(), reads);
        lines.some(
            say::vertex_distance(),
            self.vertex_mm.map(|mm| format!("{} mm", plain(mm, 1))),
        );
        lines.some(say::near_addition(), self.add.map(|add| add.in_words()));
    }
}
