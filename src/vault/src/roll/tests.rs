use super::*;
use crate::sample::{Device, devices};

/// A founded roll with three more devices: a clinician, a viewer and one that is not on it.
fn founded() -> (Roll, [Device; 4]) {
    let devices: [Device; 4] = devices(1, 4).try_into().ok().unwrap();
    let mut roll = Roll::new(devices[0].keys.vault());
    state(
        &mut roll,
        &devices[0],
        &devices[0],
        Change::Admit(Role::Lead),
    )
    .unwrap();
    state(
        &mut roll,
        &devices[0],
        &devices[1],
        Change::Admit(Role::Clinician),
    )
    .unwrap();
    state(
        &mut roll,
        &devices[0],
        &devices[2],
        Change::Admit(Role::Viewer),
    )
    .unwrap();
    (roll, devices)
}

fn state(
    roll: &mut Roll,
    by: &Device,
    about: &Device,
    change: Change,
) -> Result<Statement, RollError> {
    let statement = by.keys.state(roll, about.keys.public(), change)?;
    roll.add(&statement).map(|()| statement)
}

#[test]
fn each_device_has_its_role() {
    let (roll, devices) = founded();
    let roles = devices.map(|device| roll.role(device.keys.device()));
    assert_eq!(
        roles,
        [
            Some(Role::Lead),
            Some(Role::Clinician),
            Some(Role::Viewer),
            None
        ]
    );
    assert_eq!(roll.length(), 3);
}

#[test]
fn only_leads_state_anything() {
    let (mut roll, devices) = founded();
    for by in &devices[1..] {
        let refused = state(&mut roll, by, &devices[3], Change::Admit(Role::Clinician));
        assert_eq!(refused, Err(RollError::NotALead));
    }
    assert_eq!(roll.length(), 3, "a refused statement changes nothing");
}

#[test]
fn a_roll_is_founded_by_a_device_for_itself_as_lead() {
    let (_, devices) = founded();
    let [one, other, ..] = &devices;
    let mut roll = Roll::new(one.keys.vault());
    for (about, change) in [
        (other, Change::Admit(Role::Lead)),
        (one, Change::Admit(Role::Clinician)),
        (one, Change::Remove { last: 1 }),
    ] {
        assert_eq!(
            state(&mut roll, one, about, change),
            Err(RollError::NotALead)
        );
    }
}

#[test]
fn the_removed_never_come_back_and_the_last_lead_stays() {
    let (mut roll, [lead, clinician, _, stranger]) = founded();
    let gone = Change::Remove { last: 2 };
    assert_eq!(
        state(&mut roll, &lead, &lead, gone),
        Err(RollError::LastLead)
    );
    assert_eq!(
        state(&mut roll, &lead, &lead, Change::Admit(Role::Clinician)),
        Err(RollError::LastLead)
    );
    assert_eq!(
        state(&mut roll, &lead, &stranger, gone),
        Err(RollError::NotHere)
    );
    state(&mut roll, &lead, &clinician, gone).unwrap();
    assert_eq!(
        state(&mut roll, &lead, &clinician, gone),
        Err(RollError::NotHere)
    );
    assert_eq!(
        state(&mut roll, &lead, &clinician, Change::Admit(Role::Clinician)),
        Err(RollError::WasRemoved)
    );
    state(&mut roll, &lead, &stranger, Change::Admit(Role::Lead)).unwrap();
    state(&mut roll, &stranger, &lead, gone).unwrap();
    assert_eq!(roll.role(lead.keys.device()), None);
}

#[test]
fn roles_rise_and_a_writer_does_not_become_a_viewer() {
    let (mut roll, [lead, clinician, viewer, _]) = founded();
    let admit = Change::Admit;
    assert_eq!(
        state(&mut roll, &lead, &clinician, admit(Role::Viewer)),
        Err(RollError::BecomesViewer)
    );
    state(&mut roll, &lead, &viewer, admit(Role::Clinician)).unwrap();
    state(&mut roll, &lead, &clinician, admit(Role::Lead)).unwrap();
    state(&mut roll, &clinician, &lead, admit(Role::Clinician)).unwrap();
    assert_eq!(roll.role(lead.keys.device()), Some(Role::Clinician));
}

#[test]
fn a_statement_holds_in_one_place_of_one_vault() {
    let (mut roll, [lead, clinician, _, stranger]) = founded();
    let admit = Change::Admit(Role::Clinician);
    let early = lead
        .keys
        .state(&roll, stranger.keys.public(), admit)
        .unwrap();
    state(&mut roll, &lead, &clinician, Change::Remove { last: 1 }).unwrap();
    assert_eq!(roll.add(&early), Err(RollError::OutOfPlace { expected: 5 }));
    let other = devices(2, 1).remove(0);
    let foreign = other
        .keys
        .state(
            &Roll::new(other.keys.vault()),
            other.keys.public(),
            Change::Admit(Role::Lead),
        )
        .unwrap();
    assert_eq!(roll.add(&foreign), Err(RollError::OtherVault));
}

#[test]
fn no_bit_of_a_statement_can_be_changed_unseen() {
    let (roll, [lead, _, _, stranger]) = founded();
    let about = stranger.keys.public();
    let statement = lead
        .keys
        .state(&roll, about, Change::Admit(Role::Clinician))
        .unwrap();
    let bytes = statement.bytes();
    assert_eq!(Statement::parse(&bytes), Ok(statement));
    for at in 0..STATEMENT {
        let mut changed = bytes;
        changed[at] ^= 1;
        let refused =
            Statement::parse(&changed).map_or(true, |changed| roll.clone().add(&changed).is_err());
        assert!(refused, "byte {at}");
    }
}

#[test]
fn malformed_statements_are_refused_for_what_is_wrong() {
    let (roll, [lead, _, _, stranger]) = founded();
    let about = stranger.keys.public();
    let good = lead
        .keys
        .state(&roll, about, Change::Admit(Role::Viewer))
        .unwrap()
        .bytes();
    let with = |at: usize, byte: u8| {
        let mut bytes = good;
        bytes[at] = byte;
        Statement::parse(&bytes)
    };
    assert_eq!(Statement::parse(&[]), Err(StatementError::Length(0)));
    assert_eq!(
        Statement::parse(&good[1..]),
        Err(StatementError::Length(194))
    );
    assert_eq!(with(0, 2), Err(StatementError::Format(2)));
    for (at, byte) in [(1, 0), (1, 2), (1, 3), (90, 0), (90, 4), (98, 1)] {
        assert_eq!(with(at, byte), Err(StatementError::Change), "byte {at}");
    }
    let mut weak = good;
    weak[58..90].fill(0);
    assert_eq!(Statement::parse(&weak), Err(StatementError::Key));
}

#[test]
fn frames_are_judged_by_writer_role_and_removal() {
    let (mut roll, mut devices) = founded();
    let mut logs: Vec<Vec<Frame>> = devices.iter_mut().map(|device| device.log(2)).collect();
    assert_eq!(roll.judge(&logs[1][2]), Verdict::Counts);
    assert_eq!(
        roll.judge(&logs[2][0]),
        Verdict::Counts,
        "a viewer's introduction"
    );
    assert_eq!(
        roll.judge(&logs[2][1]),
        Verdict::Refused,
        "a viewer's entry"
    );
    assert_eq!(roll.judge(&logs[3][0]), Verdict::Refused, "a stranger's");
    state(
        &mut roll,
        &devices[0],
        &devices[1],
        Change::Remove { last: 2 },
    )
    .unwrap();
    assert_eq!(roll.judge(&logs[1][1]), Verdict::Counts);
    assert_eq!(roll.judge(&logs[1][2]), Verdict::AfterRemoval);
    let mut bytes = logs[0].remove(1).bytes().to_vec();
    *bytes.last_mut().unwrap() ^= 1;
    assert_eq!(
        roll.judge(&Frame::parse(bytes).unwrap()),
        Verdict::Refused,
        "altered"
    );
}
