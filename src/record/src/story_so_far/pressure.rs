//! The mean pressure by one device. Wide pupils can raise it, so what was taken before dilating drops goes first.

use ::words::record::story as say;
use optics::format::plain;

use super::{Measure, Noted, settled};
use crate::exam::Exam;
use crate::finding::{Eye, Finding};
use crate::sections::{Device, Pressure, Taken};

/// The first mean by this device before any dilating drops, else the first after them; which it was is said.
pub(super) fn mean(exam: &Exam, eye: Eye, device: &Device) -> Noted {
    let section = match settled(&exam.part::<Pressure>()) {
        Ok(Some(section)) => section,
        Ok(None) => return Noted::default(),
        Err(why) => return Noted::missing(Some(why)),
    };
    let taken = || section.taken.iter().filter(|taken| taken.device == *device);
    let with_mean = || taken().filter_map(|taken| Some((taken.mean_mmhg(eye)?, taken)));
    let before = with_mean().find(|(_, taken)| !taken.after_dilating);
    match before.or_else(|| with_mean().next()) {
        Some((mean, taken)) => found(mean, taken, eye, device),
        None => Noted::missing(
            taken()
                .map(|taken| taken.eyes.of(eye))
                .find_map(Finding::why_not),
        ),
    }
}

fn found(mean: f64, taken: &Taken, eye: Eye, device: &Device) -> Noted {
    let readings = taken.eyes.of(eye).done().map_or(&[][..], |all| &all.mmhg);
    let how = match readings {
        [_] => taken.heading(),
        several => {
            let each: Vec<String> = several.iter().map(|mmhg| plain(*mmhg, 1)).collect();
            say::mean_of(&taken.heading(), &each.join(", "))
        }
    };
    Noted::found(mean, Measure::Pressure(device.clone()).with_unit(mean), how)
}
