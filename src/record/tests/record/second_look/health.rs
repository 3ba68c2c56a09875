//! Pressure, cups, grid, nucleus, complaints and consent.

use chrono::NaiveTime;
use record::{
    Agreed, Amount, Assessed, Capacity, Complaint, Consent, Decision, Device, DiscSize, Eye, Eyes,
    Fields, Finding, Glasses, Grade, Grid, History, LensState, Opacity, Part, Posterior,
    PosteriorEye, Pressure, PupilEye, Pupils, Readings, Referral, Rule, Section, Symptom, Taken,
    Urgency,
};

use super::visit::{NEITHER, ONCE, RIGHT, asks, decided, raised, subjective};

fn refer(urgency: Urgency) -> Section {
    Section::Decision(Decision {
        refer: Some(Referral {
            urgency,
            to: "eye clinic".into(),
        }),
        ..Decision::default()
    })
}

fn taken(device: Device, right: &[f64], left: &[f64]) -> Taken {
    let readings = |mmhg: &[f64]| {
        Finding::Done(Readings {
            mmhg: mmhg.to_vec(),
        })
    };
    Taken {
        device,
        at: NaiveTime::MIN,
        after_dilating: false,
        eyes: Eyes {
            right: readings(right),
            left: readings(left),
        },
        note: String::new(),
    }
}

fn pressure(right: &[f64], left: &[f64]) -> Section {
    Pressure {
        taken: vec![taken(Device::Rebound, right, left)],
    }
    .into_section()
}

/// NICE NG81: refer from 24 mmHg. The mean counts, not the highest reading.
#[test]
fn a_mean_of_24_is_high_until_somebody_is_referred() {
    let asks_of = |right: &[f64]| asks(Rule::PressureHigh, &[], &[pressure(right, &[20.0])]);
    assert_eq!(asks_of(&[23.0, 24.0, 24.5]), NEITHER); // 23.8
    assert_eq!(asks_of(&[23.0, 24.0, 25.0]), RIGHT); // 24.0
    assert_eq!(asks_of(&[]), NEITHER);
    let referred = [pressure(&[24.0], &[20.0]), refer(Urgency::Routine)];
    assert_eq!(asks(Rule::PressureHigh, &[], &referred), NEITHER);
    let asked = raised(&[], &[pressure(&[24.0], &[20.0])]);
    assert_eq!(
        asked[0].sentence,
        "right eye: 24 mmHg by rebound: is it to be taken again, or referred?"
    );
}

/// Lists of a hospital and of a state health service: above 35 mmHg urgent or emergency.
#[test]
fn a_mean_of_35_wants_more_than_a_routine_referral() {
    let asks_of = |mmhg, urgency| {
        let now = [pressure(&[mmhg], &[33.0]), refer(urgency)];
        asks(Rule::PressureHigh, &[], &now)
    };
    assert_eq!(asks_of(34.5, Urgency::Soon), NEITHER);
    assert_eq!(asks_of(35.0, Urgency::Soon), RIGHT);
    assert_eq!(asks_of(35.0, Urgency::Urgent), NEITHER);
}

/// A training summary of the guidance of NICE and SIGN: a difference above 4 mmHg. Devices disagree, so one device's
/// reading of one eye says nothing beside another's of the other eye.
#[test]
fn pressures_more_than_four_apart_are_asked_about() {
    let asks_of =
        |right: f64, left: f64| asks(Rule::PressureUnequal, &[], &[pressure(&[right], &[left])]);
    assert_eq!(asks_of(18.0, 14.0), NEITHER);
    assert_eq!(asks_of(18.5, 14.0), ONCE);
    assert_eq!(asks_of(14.0, 18.5), ONCE);
    let one = taken(Device::Rebound, &[20.0], &[]);
    let other = taken(Device::Applanation, &[], &[12.0]);
    let two_devices = Pressure {
        taken: vec![one, other],
    };
    let now = [two_devices.into_section()];
    assert_eq!(asks(Rule::PressureUnequal, &[], &now), NEITHER);
    let referred = [pressure(&[20.0], &[12.0]), refer(Urgency::Routine)];
    assert_eq!(asks(Rule::PressureUnequal, &[], &referred), NEITHER);
}

/// A difference of 0.2 or more is flagged: common practice, no source.
#[test]
fn cups_that_differ_by_a_fifth_are_asked_about() {
    let eyes = |right, left, left_size| {
        let eye = |cup, disc_size| PosteriorEye {
            cup_to_disc: Finding::Done(cup),
            disc_size: Some(disc_size),
            ..PosteriorEye::normal()
        };
        Posterior {
            eyes: Eyes {
                right: eye(right, DiscSize::Medium),
                left: eye(left, left_size),
            },
        }
        .into_section()
    };
    let asks_of = |now: Section| asks(Rule::CupsUnequal, &[], &[now]);
    assert_eq!(asks_of(eyes(0.5, 0.35, DiscSize::Medium)), NEITHER);
    assert_eq!(asks_of(eyes(0.5, 0.3, DiscSize::Medium)), ONCE);
    assert_eq!(asks_of(eyes(0.5, 0.3, DiscSize::Small)), NEITHER);
    let referred = [eyes(0.5, 0.3, DiscSize::Medium), refer(Urgency::Routine)];
    assert_eq!(asks(Rule::CupsUnequal, &[], &referred), NEITHER);
}

/// NICE NG82: suspected late wet macular degeneration is referred within one working day.
#[test]
fn a_bent_grid_wants_an_urgent_referral_unless_it_is_old() {
    let grid = |bent, known| {
        let right = Grid {
            bent,
            known,
            place: "middle".into(),
            ..Grid::default()
        };
        Fields {
            grid: Eyes {
                right: Finding::Done(right),
                left: Finding::Done(Grid::default()),
            },
            ..Fields::default()
        }
        .into_section()
    };
    let asks_of = |grid, decision: Section| asks(Rule::GridBent, &[], &[grid, decision]);
    let left_alone = || decided(Glasses::LeaveAlone);
    assert_eq!(asks(Rule::GridBent, &[], &[grid(true, None)]), NEITHER);
    assert_eq!(asks_of(grid(true, None), left_alone()), RIGHT);
    assert_eq!(asks_of(grid(true, Some(false)), left_alone()), RIGHT);
    assert_eq!(asks_of(grid(true, Some(true)), left_alone()), NEITHER);
    assert_eq!(asks_of(grid(false, None), left_alone()), NEITHER);
    assert_eq!(asks_of(grid(true, None), refer(Urgency::Soon)), RIGHT);
    assert_eq!(asks_of(grid(true, None), refer(Urgency::Urgent)), NEITHER);
}

/// Eyes with nuclear cataract became 0.96 D more myopic in ten years: Fotedar et al. 2008, Ophthalmology 115:1273-1278.
/// Two refractions of one eye differ by up to 0.49 D: Sheedy et al. 2004, Optom Vis Sci 81:334-340; 0.75 D is beyond.
#[test]
fn a_myopic_shift_with_a_clouded_nucleus_is_asked_about() {
    let pupils = |amount| {
        let lens = LensState::Own(Opacity {
            nuclear: Some(Grade::Plain(amount)),
            ..Opacity::default()
        });
        Pupils {
            eyes: Eyes {
                right: PupilEye {
                    lens: Finding::Done(lens),
                    ..PupilEye::default()
                },
                left: PupilEye::default(),
            },
            ..Pupils::default()
        }
        .into_section()
    };
    let then = [subjective("+1.00 DS", "+1.00 DS")];
    let asks_of = |amount, text: &str, decision: &[Section]| {
        let now = [pupils(amount), subjective(text, text)].into_iter();
        let now: Vec<Section> = now.chain(decision.iter().cloned()).collect();
        asks(Rule::NuclearShift, &then, &now)
    };
    assert_eq!(asks_of(Amount::Mild, "+0.50 DS", &[]), NEITHER);
    assert_eq!(asks_of(Amount::Mild, "+0.25 DS", &[]), RIGHT);
    assert_eq!(asks_of(Amount::Clear, "−1.00 DS", &[]), NEITHER);
    assert_eq!(asks_of(Amount::Mild, "+2.00 DS", &[]), NEITHER);
    let referred = [refer(Urgency::Routine)];
    assert_eq!(asks_of(Amount::Mild, "+0.25 DS", &referred), NEITHER);
    let left_alone = [decided(Glasses::LeaveAlone)];
    assert_eq!(asks_of(Amount::Mild, "+0.25 DS", &left_alone), NEITHER);
    // The larger change of that eye follows from it, and is not asked about as well.
    let now = [pupils(Amount::Dense), subjective("0.00 DS", "+1.00 DS")];
    assert_eq!(asks(Rule::NuclearShift, &then, &now), RIGHT);
    assert_eq!(asks(Rule::LargeChange, &then, &now), NEITHER);
}

/// College of Optometrists, annex on the urgency of referrals: sudden loss, a detaching retina and arteritis within a day.
#[test]
fn an_alarming_complaint_wants_a_referral() {
    let told = |what| {
        let complaint = Complaint {
            what,
            eye: Some(Eye::Right),
            words: String::new(),
        };
        History {
            complaints: Finding::Done(vec![complaint]),
            ..History::default()
        }
        .into_section()
    };
    let asks_of =
        |what, decision: Section| asks(Rule::AlarmingComplaint, &[], &[told(what), decision]);
    let left_alone = || decided(Glasses::LeaveAlone);
    for what in [Symptom::SuddenLoss, Symptom::Curtain, Symptom::JawOrScalp] {
        assert_eq!(asks_of(what, left_alone()), RIGHT, "{what:?}");
        assert_eq!(asks_of(what, refer(Urgency::Urgent)), NEITHER, "{what:?}");
        assert_eq!(asks(Rule::AlarmingComplaint, &[], &[told(what)]), NEITHER);
    }
    assert_eq!(asks_of(Symptom::Glare, left_alone()), NEITHER);
}

/// Who can't decide can't consent: Mental Capacity Act 2005, from memory.
#[test]
fn own_consent_goes_with_capacity() {
    let asks_of = |capacity, agreed| {
        let consent = Consent {
            capacity: Finding::Done(capacity),
            agreed: Finding::Done(agreed),
            ..Consent::default()
        };
        asks(Rule::ConsentWithoutCapacity, &[], &[consent.into_section()])
    };
    let unable = || {
        Capacity::Assessed(Assessed {
            how: "could not say it back".into(),
            ..Assessed::default()
        })
    };
    assert_eq!(asks_of(unable(), Agreed::Spoken), ONCE);
    let for_them = Agreed::BestInterests {
        why: "daughter asked".into(),
    };
    assert_eq!(asks_of(unable(), for_them), NEITHER);
    assert_eq!(asks_of(Capacity::Presumed, Agreed::Spoken), NEITHER);
}

#[test]
fn a_healthy_exam_is_asked_nothing() {
    let now = [
        Pupils::normal().into_section(),
        Posterior::normal().into_section(),
        Fields::normal().into_section(),
        pressure(&[15.0, 16.0], &[14.0]),
        decided(Glasses::LeaveAlone),
    ];
    assert_eq!(raised(&[], &now), []);
}
