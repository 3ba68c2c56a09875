//! What is told and agreed before anything is measured.

use record::{
    Agreed, Assessed, Capacity, Complaint, Consent, Finding, History, Mobility, Part, Section,
    Symptom,
};

use crate::chance::Chance;
use crate::course::Course;
use crate::somebody::Somebody;

pub fn history(somebody: &Somebody, found: &mut Chance) -> Section {
    let complaint = |what, words: &str| Complaint {
        what,
        eye: None,
        words: words.to_owned(),
    };
    let complaints = match somebody.course {
        Course::Clouding => vec![complaint(Symptom::Glare, "from the window in the morning")],
        Course::LowVision => vec![complaint(Symptom::BlurredNear, "no longer reads letters")],
        _ if found.one_in(3) => vec![complaint(Symptom::BlurredNear, "")],
        _ => Vec::new(),
    };
    // A third of those over 65 fall in a year (from memory).
    let fell = somebody.mobility != Mobility::Bed && found.one_in(3);
    let uses: Vec<String> = somebody
        .details
        .looks_at
        .iter()
        .map(ToString::to_string)
        .collect();
    History {
        reason: "yearly visit".into(),
        cannot_travel: cannot_travel(somebody.mobility).into(),
        told_by: if somebody.decides { "" } else { "key worker" }.into(),
        complaints: Finding::Done(complaints),
        medicines: found
            .pick(&[
                "none",
                "for blood pressure",
                "for blood pressure and the heart",
                "for thyroid",
            ])
            .into(),
        allergies: Finding::Done(
            found
                .pick(&["none known", "none known", "penicillin"])
                .into(),
        ),
        falls_in_12_months: Finding::Done(u16::from(fell)),
        mobility: Some(somebody.mobility),
        uses: uses.join(", "),
        ..History::default()
    }
    .into_section()
}

const fn cannot_travel(mobility: Mobility) -> &'static str {
    match mobility {
        Mobility::Bed => "stays in bed",
        Mobility::Chair => "can\u{2019}t get into a car",
        Mobility::WalksAlone => "loses the way",
        Mobility::WithAid | Mobility::WithHelp => "walks a few steps only",
    }
}

pub fn consent(somebody: &Somebody) -> Section {
    let (capacity, agreed) = if somebody.decides {
        (Capacity::Presumed, Agreed::Spoken)
    } else {
        let assessed = Assessed {
            communicates: true,
            how: "asked three times in simple words what the light is for".into(),
            ..Assessed::default()
        };
        let why = "sees little without glasses; the family was asked".into();
        (Capacity::Assessed(assessed), Agreed::BestInterests { why })
    };
    let details = &somebody.details;
    let helps = [details.hearing.as_str(), details.language.as_str()];
    let helps: Vec<&str> = helps.into_iter().filter(|word| !word.is_empty()).collect();
    Consent {
        asked_for_by: "the home".into(),
        identified_by: "staff, and the name on the door".into(),
        communication: helps.join("; "),
        capacity: Finding::Done(capacity),
        agreed: Finding::Done(agreed),
        ..Consent::default()
    }
    .into_section()
}
