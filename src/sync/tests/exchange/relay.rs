use super::{ROOMY, Relay, bytes, forked};
use sync::exchange::{
    Answer, FrameStore, MOST_BYTES, Pushed, Quota, Refusal, Request, Run, Vector, Why, answer,
};
use vault::roll::Change;
use vault::sample::devices;
use vault::{Frame, FrameHash, Head, Role, Roll, RollError};

#[test]
fn a_run_is_kept_only_where_the_log_ends() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    assert_eq!(relay.push(1, &log[1..3]), Ok(Pushed::Gap { head: None }));
    assert_eq!(
        relay.push(1, &log[..2]),
        Ok(Pushed::Kept {
            head: log[1].head()
        })
    );
    let head = Some(log[1].head());
    assert_eq!(relay.push(1, &log[3..]), Ok(Pushed::Gap { head }));
    assert_eq!(
        relay.kept(1),
        bytes(&log[..2]),
        "what leaves a gap is not kept"
    );
    assert_eq!(
        relay.push(1, &log[2..]),
        Ok(Pushed::Kept {
            head: log[4].head()
        })
    );
    assert_eq!(relay.kept(1), bytes(&log));
}

#[test]
fn the_same_again_is_a_success_and_what_is_new_of_it_is_kept() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    relay.push(1, &log[..3]).unwrap();
    let head = log[2].head();
    assert_eq!(relay.push(1, &log[..3]), Ok(Pushed::Kept { head }));
    assert_eq!(
        relay.push(1, &log[1..2]),
        Ok(Pushed::Kept { head }),
        "an old one"
    );
    assert_eq!(
        relay.push(1, &log[1..]),
        Ok(Pushed::Kept {
            head: log[4].head()
        })
    );
    assert_eq!(relay.kept(1), bytes(&log));
}

#[test]
fn a_different_frame_under_a_taken_number_is_refused_and_kept_as_evidence() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    let fork = forked(&mut relay.devices[1], &log, 3);
    relay.push(1, &log).unwrap();
    assert_eq!(relay.push(1, &fork), Ok(Pushed::Fork { sequence: 3 }));
    assert_eq!(relay.push(1, &fork[3..]), Ok(Pushed::Fork { sequence: 4 }));
    assert_eq!(relay.kept(1), bytes(&log), "nothing of a fork is kept");
    let evidence = [&fork[2], &fork[3]].map(|frame| (Why::Fork, frame.bytes().to_vec()));
    assert_eq!(relay.store.aside(relay.vault, None, 10).unwrap(), evidence);
}

#[test]
fn a_fork_right_after_the_head_is_told_from_a_continuation() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    let fork = forked(&mut relay.devices[1], &log, 3);
    relay.push(1, &log[..3]).unwrap();
    assert_eq!(relay.push(1, &fork[3..]), Ok(Pushed::Fork { sequence: 3 }));
    assert_eq!(relay.kept(1), bytes(&log[..3]));
}

#[test]
fn only_members_are_answered_and_strangers_learn_nothing() {
    let mut relay = Relay::new();
    let log = relay.devices[3].log(1);
    assert_eq!(relay.ask(3, Request::Heads), Err(Refusal::Unknown));
    assert_eq!(relay.push(3, &log), Err(Refusal::Unknown));
    let elsewhere = devices(9999, 1)[0].keys.vault();
    let asked = answer(&relay.store, elsewhere, relay.id(0), ROOMY, Request::Heads);
    assert_eq!(
        asked,
        Err(Refusal::Unknown),
        "the same answer as for a vault that is here"
    );
    relay.state(1, Change::Remove { last: 0 });
    assert_eq!(relay.ask(1, Request::Heads), Err(Refusal::Removed));
}

#[test]
fn a_removed_device_is_shown_its_removal_and_nothing_after_it() {
    let mut relay = Relay::new();
    relay.state(1, Change::Remove { last: 0 });
    let known = relay.store.roll(relay.vault).unwrap();
    relay.state(3, Change::Admit(Role::Clinician));
    assert_eq!(relay.ask(1, Request::Roll), Ok(Answer::Roll(known.clone())));
    let roll = Roll::read(relay.vault, &known).unwrap();
    assert_eq!(roll.role(relay.id(1)), None, "it is signed there");
    for asker in [0, 2, 3] {
        let Ok(Answer::Roll(whole)) = relay.ask(asker, Request::Roll) else {
            panic!("a roll");
        };
        assert_eq!(whole.len(), known.len() + 1);
    }
    let stranger = devices(9999, 1)[0].keys.device();
    let asked = answer(&relay.store, relay.vault, stranger, ROOMY, Request::Roll);
    assert_eq!(asked, Err(Refusal::Unknown));
}

#[test]
fn frames_that_their_device_may_not_write_are_refused() {
    let mut relay = Relay::new();
    let viewer = relay.devices[2].log(1);
    assert_eq!(
        relay.push(2, &viewer),
        Err(Refusal::NotAllowed { sequence: 2 })
    );
    assert_eq!(relay.kept(2).len(), 0, "all or nothing");
    let introduced = Pushed::Kept {
        head: viewer[0].head(),
    };
    assert_eq!(relay.push(2, &viewer[..1]), Ok(introduced));
    let stranger = relay.devices[3].log(0);
    assert_eq!(
        relay.push(0, &stranger),
        Err(Refusal::NotAllowed { sequence: 1 })
    );
    let mut altered = relay.devices[1].log(0).remove(0).bytes().to_vec();
    *altered.last_mut().unwrap() ^= 1;
    let altered = Frame::parse(altered).unwrap();
    assert_eq!(
        relay.push(1, &[altered]),
        Err(Refusal::NotAllowed { sequence: 1 })
    );
    let foreign = devices(9998, 1)[0].log(0);
    assert_eq!(relay.push(1, &foreign), Err(Refusal::OtherVault));
}

#[test]
fn any_member_may_bring_back_what_any_device_wrote() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(3);
    assert_eq!(
        relay.push(2, &log),
        Ok(Pushed::Kept {
            head: log[3].head()
        })
    );
    relay.state(1, Change::Remove { last: 4 });
    assert_eq!(
        relay.push(2, &log),
        Ok(Pushed::Kept {
            head: log[3].head()
        })
    );
}

#[test]
fn what_a_removed_device_wrote_afterwards_is_set_aside_and_not_lost() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    relay.state(1, Change::Remove { last: 3 });
    let head = Some(log[2].head());
    assert_eq!(relay.push(0, &log), Ok(Pushed::Aside { head }));
    assert_eq!(relay.kept(1), bytes(&log[..3]), "what counts is in the log");
    assert_eq!(relay.push(0, &log[3..]), Ok(Pushed::Aside { head }));
    let aside = [&log[3], &log[4]].map(|frame| (Why::AfterRemoval, frame.bytes().to_vec()));
    assert_eq!(relay.store.aside(relay.vault, None, 10).unwrap(), aside);
}

#[test]
fn a_full_vault_takes_nothing_more_and_still_gives() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(2);
    let quota = Quota { bytes: 2 * 459 };
    let push = |frames: &[Frame]| {
        let run = Run::new(frames.to_vec()).unwrap();
        answer(
            &relay.store,
            relay.vault,
            relay.id(1),
            quota,
            Request::Push(run),
        )
    };
    assert!(push(&log[..2]).is_ok());
    assert_eq!(push(&log[2..]), Err(Refusal::Full));
    assert!(
        push(&log[..2]).is_ok(),
        "what is there already takes no room"
    );
    assert_eq!(relay.pull(1, Vector::new()).runs[0].frames(), &log[..2]);
}

#[test]
fn a_pull_gives_what_is_beyond_the_vector() {
    let mut relay = Relay::new();
    let logs = [relay.devices[0].log(2), relay.devices[1].log(3)];
    relay.push(0, &logs[0]).unwrap();
    relay.push(1, &logs[1]).unwrap();
    let all = relay.pull(2, Vector::new());
    assert!(!all.more && all.forks.is_empty());
    assert_eq!(
        all.runs.iter().map(|run| run.frames().len()).sum::<usize>(),
        7
    );
    assert_eq!(all.heads.len(), 2);
    let mut have = Vector::new();
    have.set(relay.id(0), Some(logs[0][2].head()));
    have.set(relay.id(1), Some(logs[1][1].head()));
    let rest = relay.pull(2, have.clone());
    assert_eq!(rest.runs.len(), 1);
    assert_eq!(rest.runs[0].frames(), &logs[1][2..]);
    have.set(relay.id(1), Some(logs[1][3].head()));
    assert!(relay.pull(2, have).runs.is_empty());
}

#[test]
fn one_who_has_more_or_other_frames_is_told_so() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(3);
    let fork = forked(&mut relay.devices[1], &log, 2);
    relay.push(1, &log[..3]).unwrap();
    let mut have = Vector::new();
    have.set(relay.id(1), Some(log[3].head()));
    assert!(
        relay.pull(1, have.clone()).forks.is_empty(),
        "further is no fork"
    );
    have.set(relay.id(1), Some(fork[1].head()));
    let page = relay.pull(1, have);
    assert_eq!(page.forks.head(relay.id(1)), Some(log[1].head()));
    assert!(page.runs.is_empty(), "nothing is sent after a fork");
}

#[test]
fn a_page_is_cut_by_bytes_and_says_that_there_is_more() {
    let mut relay = Relay::new();
    let mut log = vec![relay.devices[1].begin("sample")];
    for _ in 0..3 {
        let head = log[log.len() - 1].head();
        log.push(relay.devices[1].write(head, &vec![1; 400_000]));
    }
    relay.push(1, &log[..2]).unwrap();
    relay.push(1, &log[2..3]).unwrap();
    relay.push(1, &log[3..]).unwrap();
    let (mut have, mut pages) = (Vector::new(), 0);
    loop {
        let page = relay.pull(2, have.clone());
        assert!(page.runs.iter().map(Run::bytes).sum::<usize>() <= MOST_BYTES);
        for run in &page.runs {
            assert_eq!(run.before(), have.head(run.device()));
            have.set(run.device(), Some(run.head()));
        }
        pages += 1;
        if !page.more {
            break;
        }
    }
    assert_eq!((pages, have.head(relay.id(1))), (3, Some(log[3].head())));
}

#[test]
fn an_absurd_vector_harms_nobody() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(1);
    relay.push(1, &log).unwrap();
    let mut have = Vector::new();
    let hash = FrameHash::from_bytes([3; 32]);
    have.set(
        relay.id(1),
        Some(Head {
            sequence: u64::MAX,
            hash,
        }),
    );
    assert!(relay.pull(1, have).runs.is_empty());
}

#[test]
fn only_leads_extend_the_roll_and_the_same_again_is_a_success() {
    let relay = Relay::new();
    let [lead, clinician, _, stranger] = &relay.devices;
    let admit = Change::Admit(Role::Clinician);
    let statement = lead
        .keys
        .state(&relay.roll, stranger.keys.public(), admit)
        .unwrap();
    let refused = relay.ask(1, Request::State(Box::new(statement)));
    assert_eq!(refused, Err(Refusal::Roll(RollError::NotALead)));
    assert_eq!(
        relay.ask(3, Request::State(Box::new(statement))),
        Err(Refusal::Unknown)
    );
    for _ in 0..2 {
        let Ok(Answer::Roll(roll)) = relay.ask(0, Request::State(Box::new(statement))) else {
            panic!("a lead may, and again");
        };
        assert_eq!((roll.len(), roll[3]), (4, statement));
    }
    assert!(
        relay.ask(3, Request::Roll).is_ok(),
        "the admitted is a member at once"
    );
    let removal = Change::Remove { last: 0 };
    let late = lead
        .keys
        .state(&relay.roll, clinician.keys.public(), removal)
        .unwrap();
    let expected = RollError::OutOfPlace { expected: 5 };
    assert_eq!(
        relay.ask(0, Request::State(Box::new(late))),
        Err(Refusal::Roll(expected))
    );
}

#[test]
fn heads_show_each_log_with_its_key() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(1);
    relay.push(1, &log).unwrap();
    let Ok(Answer::Heads(heads)) = relay.ask(0, Request::Heads) else {
        panic!("heads were asked for");
    };
    assert_eq!(heads.len(), 1);
    assert_eq!(
        (heads[0].key, heads[0].head),
        (relay.devices[1].keys.public(), log[1].head())
    );
}

/// What was set aside is for leads: they see all of it, in order, page by page, and nobody else sees any.
#[test]
fn what_was_set_aside_is_shown_to_a_lead_and_to_nobody_else() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(8);
    relay.push(1, &log[..3]).unwrap();
    relay.state(1, Change::Remove { last: 3 });
    relay.push(0, &log[3..]).unwrap();
    let other = forked(&mut relay.devices[1], &log, 2);
    relay.push(0, &other[..2]).unwrap();
    let Answer::Aside(page) = relay.ask(0, Request::Aside { after: None }).unwrap() else {
        panic!("something else");
    };
    let numbers: Vec<(Why, u64)> = page
        .frames
        .iter()
        .map(|(why, frame)| (*why, frame.sequence()))
        .collect();
    let expected: Vec<(Why, u64)> = std::iter::once((Why::Fork, 2))
        .chain((4..=9).map(|number| (Why::AfterRemoval, number)))
        .collect();
    assert_eq!((numbers, page.more), (expected, false));
    let third = &page.frames[2].1;
    let after = Some((third.device(), third.head()));
    let Answer::Aside(rest) = relay.ask(0, Request::Aside { after }).unwrap() else {
        panic!("something else");
    };
    assert_eq!(rest.frames, page.frames[3..]);
    relay.state(3, Change::Admit(Role::Clinician));
    for (asker, refusal) in [
        (1, Refusal::Removed),
        (2, Refusal::NotALead),
        (3, Refusal::NotALead),
    ] {
        assert_eq!(
            relay.ask(asker, Request::Aside { after: None }),
            Err(refusal)
        );
    }
}
