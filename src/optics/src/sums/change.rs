//! Two prescriptions compared.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::lens;
use super::shared::{eye_name, size};
use crate::change::{Caution, Change, Thresholds};
use crate::{Eyes, Line};
use ::words::optics::sums_glasses as say;

const BEFORE: Ask = Ask::new(
    "right-before",
    say::ask_right_lens_before,
    "+1.00 / −1.50 × 80",
    Kind::Lens,
);
const NOW: Ask = Ask::new(
    "right-now",
    say::ask_right_lens_now,
    "+2.00 / −1.50 × 90",
    Kind::Lens,
);
const LEFT_BEFORE: Ask = Ask::new(
    "left-before",
    say::ask_left_lens_before,
    "+1.00 / −0.50 × 100",
    Kind::Lens,
);
const LEFT_NOW: Ask = Ask::new(
    "left-now",
    say::ask_left_lens_now,
    "+1.25 / −0.50 × 100",
    Kind::Lens,
);

/// Two prescriptions.
pub(super) const COMPARED: Sum = Sum {
    slug: "compare",
    name: say::title_compare,
    about: say::about_compare,
    asks: &[BEFORE, NOW, LEFT_BEFORE, LEFT_NOW],
    answer: compared,
};

fn compared(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (before, now) = (asked.need(&BEFORE, lens)?, asked.need(&NOW, lens)?);
    let (left_before, left_now) = (
        asked.need(&LEFT_BEFORE, lens)?,
        asked.need(&LEFT_NOW, lens)?,
    );
    let both = Eyes {
        right: Change::between(&before, &now)?,
        left: Change::between(&left_before, &left_now)?,
    };
    let thresholds = Thresholds::default();
    let mut lines = Vec::new();
    for (eye, change) in both.each() {
        let eye = eye_name(eye);
        lines.push(Line::new(eye, change.sentence()));
        lines.push(Line::new(
            say::whole_difference(&eye),
            change.blur_sentence(),
        ));
        lines.extend(asks(&say::ask_eye(&eye), change.cautions(&thresholds)));
    }
    lines.push(Line::new(
        say::difference(),
        say::before_now(
            &size(both.anisometropia_before()),
            &size(both.anisometropia_now()),
        ),
    ));
    lines.extend(asks(say::ask_both(), both.caution(&thresholds)));
    Ok(lines)
}

fn asks(label: &str, cautions: impl IntoIterator<Item = Caution>) -> Vec<Line> {
    let cautions = cautions.into_iter();
    cautions
        .map(|caution| Line::new(label, caution.question()))
        .collect()
}
