//! What is followed over the years.

use ::words::{Language, in_language, record::story as say};
use optics::format::{plain, signed};

use super::{Noted, acuity, cup, pressure, refraction};
use crate::exam::Exam;
use crate::finding::Eye;
use crate::lane::Heads;
use crate::sections::{Device, Pressure};

/// Something that is measured again and again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Measure {
    /// The mean sphere of the final lens, in dioptres.
    MeanSphere,
    /// The crossed cylinder along 180 and 90 of the final lens, in dioptres.
    J0,
    /// The crossed cylinder along 45 and 135 of the final lens, in dioptres.
    J45,
    /// The best that was read for far, in logMAR.
    Acuity,
    /// The mean pressure by one device, in mmHg. Two devices are never put on one line.
    Pressure(Device),
    /// The cup's height as a part of the disc's.
    CupToDisc,
}

impl Measure {
    /// Every measure that these exams may have, in the order in which they are shown.
    pub(super) fn through(exams: &[&Exam]) -> Vec<Self> {
        let mut all = vec![Self::MeanSphere, Self::J0, Self::J45, Self::Acuity];
        let parts: Vec<_> = exams.iter().map(|exam| exam.part::<Pressure>()).collect();
        let versions = parts.iter().flat_map(Heads::versions);
        for taken in versions.flat_map(|version| &version.value.taken) {
            let measure = Self::Pressure(taken.device.clone());
            if !all.contains(&measure) {
                all.push(measure);
            }
        }
        all.push(Self::CupToDisc);
        all
    }

    /// What an exam found of it.
    pub(super) fn of(&self, exam: &Exam, eye: Eye) -> Noted {
        match self {
            Self::MeanSphere => refraction::lens(exam, eye, self, |vector| vector.m),
            Self::J0 => refraction::lens(exam, eye, self, |vector| vector.j0),
            Self::J45 => refraction::lens(exam, eye, self, |vector| vector.j45),
            Self::Acuity => acuity::best(exam, eye),
            Self::Pressure(device) => pressure::mean(exam, eye, device),
            Self::CupToDisc => cup::cup(exam, eye),
        }
    }

    /// What it is called.
    pub fn title(&self) -> String {
        match self {
            Self::MeanSphere => say::mean_sphere().into(),
            Self::J0 => say::cylinder_180().into(),
            Self::J45 => say::cylinder_45().into(),
            Self::Acuity => say::best_acuity().into(),
            Self::Pressure(device) => say::pressure_by(&device.in_words()),
            Self::CupToDisc => say::cup_to_disc().into(),
        }
    }

    /// What it was obtained from: measures of one lens were obtained alike.
    pub fn comes_from(&self) -> String {
        match self {
            Self::MeanSphere | Self::J0 | Self::J45 => say::final_lens().into(),
            other => other.title(),
        }
    }

    /// A word for it that an address or a test can hold on to.
    pub fn slug(&self) -> String {
        match self {
            Self::MeanSphere => "mean-sphere".into(),
            Self::J0 => "j0".into(),
            Self::J45 => "j45".into(),
            Self::Acuity => "acuity".into(),
            Self::Pressure(device) => {
                let device = in_language(Language::English, || device.in_words());
                format!("pressure-{}", device.replace(' ', "-"))
            }
            Self::CupToDisc => "cup".into(),
        }
    }

    /// Its unit; empty for a part of a whole.
    pub fn unit(&self) -> &'static str {
        match self {
            Self::MeanSphere | Self::J0 | Self::J45 => say::dioptres(),
            Self::Acuity => "logMAR",
            Self::Pressure(_) => "mmHg",
            Self::CupToDisc => "",
        }
    }

    /// Whether a greater number is drawn lower: less logMAR is better sight, and better sight is up.
    pub const fn grows_downwards(&self) -> bool {
        matches!(self, Self::Acuity)
    }

    /// The least stretch of its scale: drawn larger, a change would look like more than two examinations differ by anyhow.
    pub const fn least_stretch(&self) -> f64 {
        // Twice what two findings of one eye differ by 19 times in 20: mean sphere 0.49 D between examiners (Sheedy et al.
        // 2004, Optom Vis Sci 81:334-340); components 0.24 D (computed from a standard deviation of 0.085 D: MacKenzie 2008,
        // Ophthalmic Physiol Opt 28:143-150). Acuity, pressure and cup: own choice.
        match self {
            Self::MeanSphere => 1.0,
            Self::J0 | Self::J45 => 0.5,
            Self::Acuity | Self::CupToDisc => 0.4,
            Self::Pressure(_) => 10.0,
        }
    }

    /// A value as it is written, without its unit: the sign stands where there can be two.
    ///
    /// ```
    /// use record::Measure;
    /// assert_eq!(Measure::MeanSphere.written(2.5), "+2.50");
    /// assert_eq!(Measure::Acuity.written(-0.1), "−0.10");
    /// assert_eq!(Measure::CupToDisc.written(0.45), "0.45");
    /// ```
    pub fn written(&self, value: f64) -> String {
        match self {
            Self::MeanSphere | Self::J0 | Self::J45 => signed(value, 2),
            Self::Acuity if value < 0.0 => signed(value, 2),
            Self::Acuity | Self::CupToDisc => format!("{value:.2}"),
            Self::Pressure(_) => plain(value, 1),
        }
    }

    /// The same with its unit.
    pub fn with_unit(&self, value: f64) -> String {
        format!("{} {}", self.written(value), self.unit())
            .trim_end()
            .to_owned()
    }
}
