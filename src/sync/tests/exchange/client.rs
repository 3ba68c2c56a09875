use super::{Relay, forked};
use sync::exchange::{
    Answer, Effect, Event, Exchange, Failure, Notice, Page, Progress, Pushed, Request, Run, Shown,
    Status, Vector,
};
use vault::sample::{Device, devices};
use vault::{Frame, Head};

/// A client of the second device, and the logs of the first two.
struct Scene {
    devices: Vec<Device>,
    logs: [Vec<Frame>; 2],
    client: Exchange,
}

impl Scene {
    fn new() -> Self {
        Self::with_seen(|_| Vector::new())
    }

    fn with_seen(seen: impl FnOnce(&[Vec<Frame>; 2]) -> Vector) -> Self {
        let mut devices = devices(1, 2);
        let logs = [devices[0].log(3), devices[1].log(3)];
        let keys = &devices[1].keys;
        let client = Exchange::new(keys.vault(), keys.device(), seen(&logs));
        Self {
            devices,
            logs,
            client,
        }
    }

    /// A page that shows the first so many frames of each log as the relay's, and holds these runs.
    fn page(&self, shown: [usize; 2], runs: &[&[Frame]], more: bool) -> Event {
        let heads = (0..2).filter(|at| shown[*at] > 0).map(|at| Shown {
            key: self.devices[at].keys.public(),
            head: self.logs[at][shown[at] - 1].head(),
        });
        answered(Answer::Page(Page {
            heads: heads.collect(),
            runs: runs
                .iter()
                .map(|run| Run::new(run.to_vec()).unwrap())
                .collect(),
            forks: Vector::new(),
            more,
        }))
    }

    fn have(&self, kept: [usize; 2]) -> Vector {
        vector(&self.logs, kept)
    }
}

fn vector(logs: &[Vec<Frame>; 2], kept: [usize; 2]) -> Vector {
    let logs = logs.iter().zip(kept).filter(|(_, kept)| *kept > 0);
    logs.map(|(log, kept)| (log[0].device(), log[kept - 1].head()))
        .collect()
}

fn answered(answer: Answer) -> Event {
    Event::Answered { answer, random: 0 }
}

fn kept(head: Head) -> Event {
    answered(Answer::Pushed(Pushed::Kept { head }))
}

/// The one effect that waits for an event, and what is told beside it.
fn split(effects: Vec<Effect>) -> (Option<Effect>, Vec<Notice>) {
    let mut notices = Vec::new();
    let mut doing = Vec::new();
    for effect in effects {
        match effect {
            Effect::Tell(notice) => notices.push(notice),
            Effect::Remember(_) | Effect::Wait { .. } => {}
            effect => doing.push(effect),
        }
    }
    assert!(doing.len() <= 1, "one thing at a time: {doing:?}");
    (doing.pop(), notices)
}

#[test]
fn a_round_pulls_then_pushes_then_says_that_it_is_done() {
    let mut scene = Scene::new();
    let have = scene.have([1, 3]);
    let asked = split(scene.client.handle(Event::Wanted { have: have.clone() }));
    assert_eq!(asked.0, Some(Effect::Ask(Request::Pull { have })));
    assert_eq!(asked.1, [Notice::Status(Status::Trying)]);

    let page = scene.page([3, 1], &[&scene.logs[0][1..2]], true);
    let (store, told) = split(scene.client.handle(page));
    assert!(matches!(store, Some(Effect::Store(run)) if run.frames() == &scene.logs[0][1..2]));
    let counted = Notice::Progress(Progress { done: 0, total: 4 });
    assert_eq!(told, [Notice::Status(Status::Online), counted]);

    let (ask, told) = split(scene.client.handle(Event::Stored));
    assert_eq!(
        ask,
        Some(Effect::Ask(Request::Pull {
            have: scene.have([2, 3])
        }))
    );
    assert_eq!(told[0].to_string(), "1 of 4 entries exchanged");

    let page = scene.page([3, 1], &[&scene.logs[0][2..3]], false);
    assert!(matches!(
        split(scene.client.handle(page)).0,
        Some(Effect::Store(_))
    ));
    let (load, _) = split(scene.client.handle(Event::Stored));
    let device = scene.devices[1].keys.device();
    assert_eq!(load, Some(Effect::Load { device, from: 2 }));

    let frames = scene.logs[1][1..3].to_vec();
    let run = Run::new(frames.clone()).unwrap();
    let (push, _) = split(scene.client.handle(Event::Loaded(frames)));
    assert_eq!(push, Some(Effect::Ask(Request::Push(run))));
    let (done, told) = split(scene.client.handle(kept(scene.logs[1][2].head())));
    assert_eq!(done, None);
    let counted = Notice::Progress(Progress { done: 4, total: 4 });
    assert_eq!(told, [counted, Notice::Finished]);
    assert_eq!(scene.client.seen(), &scene.have([3, 3]));
    assert!(scene.client.is_idle() && *scene.client.status() == Status::Online);
}

#[test]
fn online_is_what_answered_and_nothing_else() {
    let mut scene = Scene::new();
    assert_eq!(*scene.client.status(), Status::Offline(None));
    let have = scene.have([1, 1]);
    scene.client.handle(Event::Wanted { have: have.clone() });
    assert_eq!(*scene.client.status(), Status::Trying);
    let failure = Failure::Unreachable;
    let why = failure.clone();
    scene.client.handle(Event::Failed { failure, random: 0 });
    assert_eq!(*scene.client.status(), Status::Offline(Some(why)));
    scene.client.handle(Event::Wanted { have });
    let page = scene.page([1, 1], &[], false);
    assert!(
        scene
            .client
            .handle(page)
            .contains(&Effect::Tell(Notice::Finished))
    );
    assert_eq!(*scene.client.status(), Status::Online);
}

#[test]
fn waits_grow_with_failures_and_begin_anew_after_a_success() {
    let mut scene = Scene::new();
    let have = scene.have([1, 1]);
    let fail = |client: &mut Exchange, failure: Failure| {
        client.handle(Event::Wanted { have: have.clone() });
        let effects = client.handle(Event::Failed {
            failure,
            random: u32::MAX,
        });
        effects.iter().find_map(|effect| match effect {
            Effect::Wait { millis } => Some(*millis),
            _ => None,
        })
    };
    // Computed from the formula: doubled from one second up to five minutes.
    let waits: Vec<_> = (0..4)
        .map(|_| fail(&mut scene.client, Failure::Unreachable))
        .collect();
    assert_eq!(waits, [Some(1_000), Some(2_000), Some(4_000), Some(8_000)]);
    assert!(fail(&mut scene.client, Failure::Busy { seconds: 60 }) >= Some(60_000));
    scene.client.handle(Event::Wanted { have: have.clone() });
    let page = scene.page([1, 1], &[], false);
    scene.client.handle(page);
    assert_eq!(fail(&mut scene.client, Failure::Unreachable), Some(1_000));
}

#[test]
fn a_relay_that_was_put_back_is_noticed_and_healed() {
    let mut scene = Scene::with_seen(|logs| vector(logs, [3, 3]));
    let have = scene.have([3, 3]);
    scene.client.handle(Event::Wanted { have });
    let (_, told) = split(scene.client.handle(scene.page([1, 3], &[], false)));
    let rolled_back = Notice::RolledBack {
        device: scene.devices[0].keys.device(),
        seen: scene.logs[0][2].head(),
        shown: Some(scene.logs[0][0].head()),
    };
    assert!(told.contains(&rolled_back), "{told:?}");
    // Another device's frames are sent again from here.
    let frames = scene.logs[0][1..3].to_vec();
    let (push, _) = split(scene.client.handle(Event::Loaded(frames)));
    assert!(matches!(push, Some(Effect::Ask(Request::Push(run))) if run.frames().len() == 2));
}

#[test]
fn a_relay_that_was_emptied_gets_everything_again() {
    let mut scene = Scene::with_seen(|logs| vector(logs, [3, 3]));
    let have = scene.have([3, 3]);
    scene.client.handle(Event::Wanted { have });
    let (load, told) = split(scene.client.handle(scene.page([0, 0], &[], false)));
    assert!(matches!(load, Some(Effect::Load { from: 1, .. })));
    let count = told
        .iter()
        .filter(|notice| matches!(notice, Notice::RolledBack { .. }))
        .count();
    assert_eq!(count, 2);
}

#[test]
fn an_exchanged_frame_under_the_same_number_is_said_aloud() {
    let mut scene = Scene::with_seen(|logs| vector(logs, [4, 0]));
    let mut devices = devices(1, 1);
    let log = devices[0].log(3);
    let fork = forked(&mut devices[0], &log, 4);
    assert_ne!(fork[3].head(), log[3].head());
    let have = scene.have([4, 1]);
    scene.client.handle(Event::Wanted { have });
    let heads = vec![
        Shown {
            key: devices[0].keys.public(),
            head: fork[3].head(),
        },
        Shown {
            key: scene.devices[1].keys.public(),
            head: scene.logs[1][0].head(),
        },
    ];
    let forks = [(fork[3].device(), fork[3].head())].into_iter().collect();
    let page = Page {
        heads,
        runs: vec![],
        forks,
        more: false,
    };
    let (next, told) = split(scene.client.handle(answered(Answer::Page(page))));
    let said = Notice::Fork {
        device: fork[3].device(),
        sequence: 4,
    };
    assert!(
        told.contains(&said) && told.contains(&Notice::Finished),
        "{told:?}"
    );
    assert_eq!(next, None, "nothing is sent to a forked log");
}

#[test]
fn a_copied_tablet_is_told_and_gets_its_own_entries() {
    let mut scene = Scene::new();
    let have = scene.have([0, 1]);
    scene.client.handle(Event::Wanted { have });
    let page = scene.page([0, 3], &[&scene.logs[1][1..3]], false);
    let (store, told) = split(scene.client.handle(page));
    assert!(told.contains(&Notice::Copied { sequence: 3 }));
    assert!(matches!(store, Some(Effect::Store(_))));
}

#[test]
fn a_page_is_believed_in_nothing_that_it_does_not_prove() {
    let mut scene = Scene::new();
    let foreign = devices(2, 1)[0].log(2);
    let mut altered = scene.logs[0][1].bytes().to_vec();
    *altered.last_mut().unwrap() ^= 1;
    let altered = [Frame::parse(altered).unwrap()];
    let gap = &scene.logs[0][2..3];
    let stranger = devices(1, 3)[2].log(1);
    let (log, own) = (&scene.logs[0], &scene.logs[1]);
    for (runs, more, what) in [
        (vec![&altered[..]], false, "unsigned"),
        (vec![&foreign[..]], false, "another vault's"),
        (vec![gap], false, "after a gap"),
        (vec![&log[..2]], false, "what is here already"),
        (vec![&stranger[..]], false, "a device's without a key"),
        (vec![], true, "more, and nothing"),
        (
            vec![&log[1..2], &own[1..2], &log[1..2]],
            false,
            "the same twice",
        ),
    ] {
        let mut client = scene.client.clone();
        client.handle(Event::Wanted {
            have: scene.have([1, 1]),
        });
        let effects = client.handle(scene.page([3, 3], &runs, more));
        assert!(
            effects
                .iter()
                .all(|effect| !matches!(effect, Effect::Store(_))),
            "{what}"
        );
        assert!(
            effects
                .iter()
                .any(|effect| matches!(effect, Effect::Wait { .. })),
            "{what}"
        );
        assert!(client.is_idle(), "{what}");
    }
    scene.client.handle(Event::Wanted {
        have: scene.have([1, 1]),
    });
    let wrong = answered(Answer::Pushed(Pushed::Fork { sequence: 1 }));
    assert!(matches!(
        scene.client.handle(wrong)[..],
        [Effect::Tell(_), Effect::Wait { .. }]
    ));
}

#[test]
fn a_moved_log_asks_anew_and_not_for_ever() {
    let mut scene = Scene::new();
    let have = scene.have([1, 1]);
    scene.client.handle(Event::Wanted { have: have.clone() });
    let mut asked = 0;
    loop {
        let page = scene.page([2, 1], &[&scene.logs[0][1..2]], false);
        scene.client.handle(page);
        let (ask, told) = split(scene.client.handle(Event::Moved { have: have.clone() }));
        if told.contains(&Notice::Finished) {
            break;
        }
        assert!(matches!(ask, Some(Effect::Ask(Request::Pull { .. }))));
        asked += 1;
        assert!(asked < 100, "a round ends");
    }
}

#[test]
fn what_is_written_meanwhile_is_exchanged_in_another_round() {
    let mut scene = Scene::new();
    scene.client.handle(Event::Wanted {
        have: scene.have([1, 1]),
    });
    let have = scene.have([1, 2]);
    assert_eq!(
        scene.client.handle(Event::Wanted { have: have.clone() }),
        []
    );
    let page = scene.page([1, 1], &[], false);
    assert!(matches!(
        split(scene.client.handle(page)).0,
        Some(Effect::Load { from: 2, .. })
    ));
    scene
        .client
        .handle(Event::Loaded(scene.logs[1][1..2].to_vec()));
    let (again, told) = split(scene.client.handle(kept(scene.logs[1][1].head())));
    assert!(told.contains(&Notice::Finished));
    assert_eq!(again, Some(Effect::Ask(Request::Pull { have })));
}

#[test]
fn a_gap_is_believed_once_and_a_fork_or_a_removal_is_told() {
    for (first, second, said) in [
        (Pushed::Gap { head: None }, Pushed::Gap { head: None }, None),
        (
            Pushed::Fork { sequence: 2 },
            Pushed::Fork { sequence: 2 },
            Some("has written two different entries"),
        ),
        (
            Pushed::Aside { head: None },
            Pushed::Aside { head: None },
            Some("after it was removed"),
        ),
    ] {
        let mut scene = Scene::new();
        scene.client.handle(Event::Wanted {
            have: scene.have([0, 3]),
        });
        scene.client.handle(scene.page([0, 1], &[], false));
        scene
            .client
            .handle(Event::Loaded(scene.logs[1][1..3].to_vec()));
        let (next, mut told) = split(scene.client.handle(answered(Answer::Pushed(first))));
        if let Some(Effect::Load { from, .. }) = next {
            assert_eq!(from, 1, "goes back to where the relay says that it is");
            scene
                .client
                .handle(Event::Loaded(scene.logs[1][..3].to_vec()));
            told = split(scene.client.handle(answered(Answer::Pushed(second)))).1;
        }
        assert!(told.contains(&Notice::Finished), "{first:?}: {told:?}");
        let said_it = |part: &str| told.iter().any(|notice| notice.to_string().contains(part));
        assert!(said.is_none_or(said_it), "{first:?}: {told:?}");
    }
}

#[test]
fn an_unreadable_entry_stops_its_own_log_only() {
    let mut scene = Scene::new();
    scene.client.handle(Event::Wanted {
        have: scene.have([3, 3]),
    });
    let (load, _) = split(scene.client.handle(scene.page([1, 1], &[], false)));
    let Some(Effect::Load { device, .. }) = load else {
        panic!("{load:?}");
    };
    let (next, told) = split(scene.client.handle(Event::Loaded(vec![])));
    assert_eq!(
        told,
        [Notice::Unsent {
            device,
            sequence: 2
        }]
    );
    assert!(matches!(next, Some(Effect::Load { device: other, .. }) if other != device));
}

#[test]
fn what_comes_late_or_unasked_changes_nothing() {
    let scene = Scene::new();
    let late = [
        Event::Stored,
        Event::Loaded(vec![]),
        Event::Moved {
            have: Vector::new(),
        },
        kept(scene.logs[1][0].head()),
        Event::Failed {
            failure: Failure::Unreachable,
            random: 1,
        },
    ];
    let mut client = scene.client.clone();
    for event in late.clone() {
        assert_eq!(client.handle(event), []);
    }
    assert_eq!(client, scene.client);
    client.handle(Event::Wanted {
        have: scene.have([1, 1]),
    });
    let before = client.clone();
    for event in late.into_iter().take(3) {
        assert_eq!(client.handle(event), []);
    }
    assert_eq!(client, before);
}

#[test]
fn the_relay_of_these_tests_is_the_real_one() {
    let relay = Relay::new();
    let mut client = Exchange::new(relay.vault, relay.id(1), Vector::new());
    let effects = client.handle(Event::Wanted {
        have: Vector::new(),
    });
    let Some(Effect::Ask(request)) = effects
        .into_iter()
        .find(|effect| matches!(effect, Effect::Ask(_)))
    else {
        panic!("a round begins with a question");
    };
    let answer = relay.ask(1, request).unwrap();
    assert!(
        client
            .handle(answered(answer))
            .contains(&Effect::Tell(Notice::Finished))
    );
}

#[test]
fn a_log_that_may_not_be_written_keeps_no_other_from_going_home() {
    let mut scene = Scene::new();
    let have = scene.have([3, 3]);
    scene.client.handle(Event::Wanted { have });
    let page = scene.page([1, 1], &[], false);
    let (load, _) = split(scene.client.handle(page));
    let devices = [0, 1].map(|at| scene.devices[at].keys.device());
    let first =
        usize::from(matches!(load, Some(Effect::Load { device, .. }) if device == devices[1]));
    let other = 1 - first;

    let frames = scene.logs[first][1..3].to_vec();
    scene.client.handle(Event::Loaded(frames));
    let failure = Failure::Forbidden("entry 2 is not one that its tablet may write".into());
    let (load, told) = split(scene.client.handle(Event::Failed { failure, random: 0 }));
    let (device, sequence) = (devices[first], 2);
    assert_eq!(told, [Notice::NotTaken { device, sequence }]);
    let (device, from) = (devices[other], 2);
    assert_eq!(load, Some(Effect::Load { device, from }));

    let frames = scene.logs[other][1..3].to_vec();
    let head = frames[1].head();
    scene.client.handle(Event::Loaded(frames));
    let (done, told) = split(scene.client.handle(kept(head)));
    assert_eq!(done, None);
    assert!(told.contains(&Notice::Finished) && scene.client.is_idle());
}
