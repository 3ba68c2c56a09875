//! A thousand ordinary exams: how often the second look asks about one in which nobody slipped.
//!
//! The people are made up, the spread of what is found is not:
//! - two refractions of one person differ in mean sphere within ±0.49 D 19 times in 20 (Sheedy, Schanz and Bullimore 2004,
//!   Optom Vis Sci 81:334-340), so one is within 0.177 D (one standard deviation) of the eye;
//! - their crossed cylinders scatter by about 0.085 D (`MacKenzie` 2008, Ophthalmic Physiol Opt 28:143-150);
//! - retinoscopy less what is chosen is −0.02 ± 0.33 D in mean sphere, ±0.10 and ±0.08 D in the cylinder (Jorge et al. 2005,
//!   Optom Vis Sci 82:64-68);
//! - eyes of 75 and over change by −0.65 D in ten years (Fotedar et al. 2008, Ophthalmology 115:1273-1278);
//! - the rest (how acuity scatters, how alike two eyes are) is from memory or common practice, no source.

use demo::Chance;
use optics::acuity::ChartLine;
use optics::retinoscopy::{Neutral, Setup, WorkingDistance};
use optics::{PowerVector, SphereCyl, Step, vertex};
use record::{
    Acuity, Born, Chart, Eye, EyeAcuity, Eyes, Finding, Glasses, NearAdd, Retinoscopy, Rule,
    Section, Seen, Subjective, SubjectiveEye,
};
use std::collections::BTreeMap;

use super::ordinary_health::health;
use super::visit::{decided, desk, look};

/// One person as they truly are.
struct Person {
    age: u16,
    eyes: Eyes<PowerVector>,
    logmar: Eyes<f64>,
    chart: Chart,
}

fn person(chance: &mut Chance) -> Person {
    let right = PowerVector {
        m: chance.about(0.75, 2.0),
        j0: chance.about(-0.2, 0.35),
        j45: chance.about(0.0, 0.2),
    };
    // The fellow eye is much alike, its oblique cylinder mirrored.
    let left = PowerVector {
        m: chance.about(right.m, 0.35),
        j0: chance.about(right.j0, 0.2),
        j45: chance.about(-right.j45, 0.15),
    };
    let used_at_m = if chance.one_in(2) { 6.0 } else { 3.0 };
    Person {
        age: 65 + (chance.share() * 33.0) as u16,
        eyes: Eyes { right, left },
        logmar: Eyes {
            right: chance.about(0.25, 0.15),
            left: chance.about(0.25, 0.15),
        },
        chart: Chart {
            made_for_m: used_at_m,
            used_at_m,
        },
    }
}

/// A year or two later.
fn aged(person: &Person, chance: &mut Chance) -> Person {
    let years = 1.0 + chance.share();
    let shift = chance.about(-0.065 * years, 0.15);
    let eyes = person.eyes.map(|eye| PowerVector {
        m: chance.about(eye.m + shift, 0.1),
        j0: chance.about(eye.j0 - 0.02, 0.03),
        j45: chance.about(eye.j45, 0.03),
    });
    Person {
        eyes,
        logmar: person.logmar.map(|logmar| logmar + 0.01 * years),
        ..*person
    }
}

fn scattered(eye: PowerVector, chance: &mut Chance, spread: [f64; 3]) -> SphereCyl {
    SphereCyl::from(PowerVector {
        m: chance.about(eye.m, spread[0]),
        j0: chance.about(eye.j0, spread[1]),
        j45: chance.about(eye.j45, spread[2]),
    })
}

/// The line and letters nearest to an acuity. Not better than 6/4, not worse than 6/60.
fn seen(logmar: f64) -> Seen {
    let all = ChartLine::ALL.into_iter();
    let of = |line: ChartLine| (line.denominator() / 6.0).log10();
    let line = all
        .min_by(|one, other| {
            (of(*one) - logmar)
                .abs()
                .total_cmp(&(of(*other) - logmar).abs())
        })
        .expect("a chart has lines");
    let letters = ((of(line) - logmar) / 0.02).round().clamp(-4.0, 4.0) as i8;
    Seen::Line { line, letters }
}

fn acuity(person: &Person, chance: &mut Chance) -> Section {
    let eyes = person.logmar.map(|logmar| {
        let with_glasses = chance.about(logmar + 0.05, 0.05);
        let through = chance.about(with_glasses - 0.05, 0.05);
        let pinhole = with_glasses > 0.3;
        EyeAcuity {
            unaided: Finding::Done(seen(chance.about(logmar + 0.4, 0.1))),
            with_glasses: Finding::Done(seen(with_glasses)),
            pinhole: if pinhole {
                Finding::Done(seen(through))
            } else {
                Finding::Blank
            },
        }
    });
    let chart = person.chart;
    Section::Acuity(Acuity { chart, eyes })
}

fn retinoscopy(person: &Person, chance: &mut Chance) -> Section {
    let cm = (60.0 + chance.share() * 10.0).round();
    let setup = Setup::new(WorkingDistance::from_cm(cm).unwrap(), None);
    let eyes = person.eyes.map(|eye| {
        let net = scattered(*eye, chance, [0.33, 0.10, 0.08]);
        let neutral = optics::retinoscopy::expected_neutral(&net, &setup);
        Finding::Done(Neutral::InFrame(neutral.rounded(Step::Quarter).value))
    });
    Section::Retinoscopy(Retinoscopy {
        setup,
        eyes,
        ..Retinoscopy::default()
    })
}

fn subjective(person: &Person, chance: &mut Chance) -> Section {
    let lens = person.eyes.map(|eye| {
        let found = scattered(*eye, chance, [0.177, 0.085, 0.085]);
        let at_chart = found.with_sphere_changed(allowance(person));
        at_chart.rounded(Step::Quarter).value
    });
    let strong = vertex::matters(&lens.right) || vertex::matters(&lens.left);
    let eye = |eye: Eye, chance: &mut Chance| {
        Finding::Done(SubjectiveEye {
            lens: *lens.of(eye),
            acuity: Some(seen(chance.about(*person.logmar.of(eye), 0.05))),
        })
    };
    Section::Subjective(Subjective {
        chart: person.chart,
        for_the_room: person.chart.used_at_m < 6.0,
        vertex_mm: strong.then_some(12.0),
        add: Some(NearAdd {
            power: 2.25 + 0.25 * (chance.share() * 3.0).floor(),
            at_cm: 40.0,
        }),
        eyes: Eyes {
            right: eye(Eye::Right, chance),
            left: eye(Eye::Left, chance),
        },
        ..Subjective::default()
    })
}

/// What the chart's distance leaves in the lens, where somebody looks at it and not at far.
fn allowance(person: &Person) -> f64 {
    if person.chart.used_at_m < 6.0 {
        1.0 / person.chart.used_at_m
    } else {
        0.0
    }
}

#[test]
fn an_ordinary_exam_is_seldom_asked_about() {
    let mut chance = Chance::new(20_260_304);
    let mut counted: BTreeMap<Rule, u32> = BTreeMap::new();
    for _ in 0..1000 {
        let before = person(&mut chance);
        let now = aged(&before, &mut chance);
        let visit = |person: &Person, chance: &mut Chance| {
            let mut sections = health(chance);
            sections.push(acuity(person, chance));
            sections.push(retinoscopy(person, chance));
            sections.push(subjective(person, chance));
            sections.push(decided(Glasses::Prescribe));
            sections
        };
        let (then, today) = (visit(&before, &mut chance), visit(&now, &mut chance));
        let born = Born::Stated {
            years: now.age,
            in_year: 2026,
        };
        for asked in look(&desk(Some(born), &then, &today)) {
            *counted.entry(asked.rule).or_default() += 1;
        }
    }
    let total: u32 = counted.values().sum();
    assert!(total < 200, "{total} in 1000 exams: {counted:?}");
    // Were nothing asked at all, the exams would not be what is looked at.
    assert!(counted.contains_key(&Rule::LargeChange), "{counted:?}");
}
