//! A section as it reads: both eyes side by side, nothing to touch.

use super::sweeps;
use crate::words;
use leptos::prelude::*;
use optics::Step;
use optics::format::plain;
use optics::retinoscopy::Neutral;
use record::{
    Acuity, Decision, Eye, Eyes, Finding, Glasses, Retinoscopy, Section, Subjective, Swept,
};

/// One line: what it is, and what stands there, for both eyes or for the person.
struct Line {
    label: String,
    eyes: Result<Eyes<String>, String>,
}

impl Line {
    fn eyes(label: &str, eyes: Eyes<String>) -> Self {
        Self {
            label: label.into(),
            eyes: Ok(eyes),
        }
    }

    fn one(label: &str, value: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            eyes: Err(value.into()),
        }
    }
}

/// The section, read only.
#[component]
pub fn SectionReading(
    /// What stands in it.
    section: Section,
) -> impl IntoView {
    let rows = lines(&section).into_iter().map(|line| match line.eyes {
        Ok(eyes) => view! { <tr><th scope="row">{line.label}</th><td>{eyes.right}</td><td>{eyes.left}</td></tr> }.into_any(),
        Err(value) => view! { <tr><th scope="row">{line.label}</th><td colspan="2">{value}</td></tr> }.into_any(),
    });
    let both = !matches!(section, Section::Decision(_));
    view! {
        <table class="reading">
            {both.then(|| view! { <thead><tr><td></td><th scope="col">"right"</th><th scope="col">"left"</th></tr></thead> })}
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn lines(section: &Section) -> Vec<Line> {
    match section {
        Section::Acuity(acuity) => acuity_lines(acuity),
        Section::Retinoscopy(retinoscopy) => retinoscopy_lines(retinoscopy),
        Section::Subjective(subjective) => subjective_lines(subjective),
        Section::Decision(decision) => decision_lines(decision),
    }
}

fn acuity_lines(acuity: &Acuity) -> Vec<Line> {
    let read = |finding: &Finding<record::Seen>| {
        let labelled = words::acuity_finding(finding);
        words::acuity_is(&acuity.chart, finding)
            .map_or(labelled.clone(), |is| format!("{labelled}, {is}"))
    };
    vec![
        Line::one(
            "chart",
            format!(
                "made for {} m, used at {} m",
                plain(acuity.chart.made_for_m, 2),
                plain(acuity.chart.used_at_m, 2)
            ),
        ),
        Line::eyes("unaided", acuity.eyes.map(|eye| read(&eye.unaided))),
        Line::eyes(
            "with glasses",
            acuity.eyes.map(|eye| read(&eye.with_glasses)),
        ),
        Line::eyes("pinhole", acuity.eyes.map(|eye| read(&eye.pinhole))),
    ]
}

fn retinoscopy_lines(section: &Retinoscopy) -> Vec<Line> {
    let setup = section.setup;
    let allowed = match setup.working_lens {
        None => "taken off at the end".to_owned(),
        Some(lens) => format!(
            "{} in the {} cell",
            optics::format::power(lens.power()),
            lens.cell()
        ),
    };
    let lens = |finding: &Finding<Neutral>| match finding.done() {
        Some(Neutral::OverLens(held)) => format!("{} over {}", held.over(), held.worn()),
        Some(neutral) => neutral.lens_with(setup.cylinders).to_string(),
        None => finding.why_not().unwrap_or_else(|| words::NOTHING.into()),
    };
    let net = |eye| {
        section.net(eye).map_or_else(
            || words::NOTHING.into(),
            |net| net.net.rounded(Step::Quarter).value.to_string(),
        )
    };
    let mut lines = vec![
        Line::one("distance", format!("{}, {allowed}", setup.distance)),
        Line::eyes("lens at neutral", section.eyes.map(lens)),
        Line::eyes(
            "with the distance off",
            Eyes {
                right: net(Eye::Right),
                left: net(Eye::Left),
            },
        ),
    ];
    lines.extend(
        section
            .vertex_mm
            .map(|mm| Line::one("vertex", format!("{} mm", plain(mm, 1)))),
    );
    let told = [
        ("how it was found", swept_in_words as fn(&Swept) -> String),
        ("the eye", eye_in_words),
    ];
    for (label, in_words) in told {
        let said = section.swept.map(in_words);
        if !(said.right.is_empty() && said.left.is_empty()) {
            lines.push(Line::eyes(label, said));
        }
    }
    lines
}

/// "pupil 2.5 mm, media dense, reflex dull, 8° beside the line of sight, cyclopentolate 1 % 35 min before"; nothing where
/// nothing was said.
fn eye_in_words(swept: &Swept) -> String {
    let eye = &swept.sweeping.circumstances;
    let said = [
        eye.pupil_mm()
            .map(|mm| format!("pupil {} mm", plain(mm, 1))),
        eye.media
            .map(|media| format!("media {}", sweeps::words::media(media))),
        eye.reflex
            .map(|reflex| format!("reflex {}", sweeps::words::reflex(reflex))),
        eye.off_sight()
            .map(|degrees| format!("{}\u{b0} beside the line of sight", plain(degrees, 0))),
        swept
            .drops
            .as_ref()
            .map(|drops| format!("{} {} min before", drops.drug.trim(), drops.minutes)),
    ];
    said.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// "7 sweeps from last time; with in both when moved in, as it goes from neutral"; nothing where it was not swept.
fn swept_in_words(swept: &Swept) -> String {
    let sweeping = &swept.sweeping;
    if sweeping.sweeps.is_empty() {
        return String::new();
    }
    let start = sweeping
        .start
        .map(|start| format!(" from {}", sweeps::words::source(start.from)));
    let checked = swept
        .moved_in
        .map(|answer| format!("; {}", answer.sentence()));
    format!(
        "{} sweeps{}{}",
        sweeping.sweeps.len(),
        start.unwrap_or_default(),
        checked.unwrap_or_default()
    )
}

fn subjective_lines(section: &Subjective) -> Vec<Line> {
    let lens = section.eyes.map(|finding| match finding.done() {
        Some(eye) => eye.lens.to_string(),
        None => finding.why_not().unwrap_or_else(|| words::NOTHING.into()),
    });
    let reads = section.eyes.map(|finding| {
        let seen = finding.done().and_then(|eye| eye.acuity);
        seen.map_or_else(
            || words::NOTHING.into(),
            |seen| section.chart.in_words(&seen),
        )
    });
    let mut lines = vec![
        Line::one(
            "chart",
            format!("at {} m", plain(section.chart.used_at_m, 2)),
        ),
        Line::eyes("lens", lens),
        Line::eyes("reads", reads),
    ];
    lines.extend(
        section
            .vertex_mm
            .map(|mm| Line::one("vertex", format!("{} mm", plain(mm, 1)))),
    );
    lines.extend(
        section
            .add
            .map(|add| Line::one("near addition", words::near_add(&add))),
    );
    lines
}

fn decision_lines(decision: &Decision) -> Vec<Line> {
    let glasses = decision.glasses.map(|glasses| match glasses {
        Glasses::Prescribe => "prescribe",
        Glasses::LeaveAlone => "leave alone",
    });
    let filled = |text: &String| (!text.trim().is_empty()).then(|| text.clone());
    [
        glasses.map(|glasses| Line::one("glasses", glasses)),
        decision.refer.as_ref().map(|referral| {
            Line::one(
                "refer",
                format!("{}: {}", referral.urgency.word(), referral.to),
            )
        }),
        filled(&decision.advice).map(|advice| Line::one("said", advice)),
        decision.recall.as_ref().map(|recall| {
            Line::one(
                "see again",
                format!("in {} months: {}", recall.months, recall.reason),
            )
        }),
        filled(&decision.note).map(|note| Line::one("note", note)),
    ]
    .into_iter()
    .flatten()
    .collect()
}
