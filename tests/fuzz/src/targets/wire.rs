//! Messages between a tablet and a relay.

use sync::exchange::http::{Meant, Reply, TYPE};
use sync::exchange::news::Events;
use sync::exchange::wire::LONGEST_ANSWER;
use sync::exchange::{
    Answer, Asides, Effect, Event, Exchange, FrameStore, MemoryStore, Page, Pushed, Quota,
    Remembered, Request, Run, Shown, Vector, Why, answer as answered,
};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Invitation, Role, Roll, Statement};

/// A relay that holds one log, and whose it is.
fn relay() -> (MemoryStore, Device, Vec<Frame>) {
    let mut device = devices(1, 1).remove(0);
    let store = MemoryStore::new();
    store.open_vault(&founded(&device));
    let log = device.log(3);
    let run = Run::new(log.clone()).expect("a log is a run");
    store.append(&run).expect("memory has room");
    (store, device, log)
}

fn founded(device: &Device) -> Statement {
    let roll = Roll::new(device.keys.vault());
    let first = device
        .keys
        .state(&roll, device.keys.public(), Change::Admit(Role::Lead));
    first.expect("whoever founds a vault is its lead")
}

/// What is read is written to what reads the same, and a relay answers it with what can be read.
pub fn request(bytes: &[u8]) {
    let Ok(request) = Request::from_bytes(bytes) else {
        return;
    };
    assert_eq!(
        Request::from_bytes(&request.to_bytes()).as_ref(),
        Ok(&request)
    );
    let (store, device, _) = relay();
    let quota = Quota { bytes: 1 << 20 };
    if let Ok(answer) = answered(
        &store,
        device.keys.vault(),
        device.keys.device(),
        quota,
        request,
    ) {
        let bytes = answer.to_bytes();
        assert!(bytes.len() <= LONGEST_ANSWER);
        assert_eq!(Answer::from_bytes(&bytes), Ok(answer));
    }
}

pub fn requests() -> Vec<Vec<u8>> {
    let (_, device, log) = relay();
    let have: Vector = [(log[1].device(), log[1].head())].into_iter().collect();
    let first = Box::new(founded(&device));
    let code = Invitation::from_bytes([5; 15]);
    let requests = [
        Request::Heads,
        Request::Pull { have },
        Request::Push(Run::new(log[1..].to_vec()).expect("part of a log is a run")),
        Request::Roll,
        Request::State(first.clone()),
        Request::Open { code, first },
        Request::Aside {
            after: Some((log[2].device(), log[2].head())),
        },
    ];
    requests.iter().map(Request::to_bytes).collect()
}

/// What is read is written to what reads the same, and a tablet that asked goes on, or fails; it keeps only what is signed.
pub fn answer(bytes: &[u8]) {
    let Ok(answer) = Answer::from_bytes(bytes) else {
        return;
    };
    assert_eq!(Answer::from_bytes(&answer.to_bytes()).as_ref(), Ok(&answer));
    let device = devices(1, 2).remove(1);
    let mut exchange = Exchange::new(device.keys.vault(), device.keys.device(), Vector::new());
    exchange.handle(Event::Wanted {
        have: Vector::new(),
    });
    for effect in exchange.handle(Event::Answered { answer, random: 1 }) {
        if let Effect::Store(run) = effect {
            assert_eq!(run.frames()[0].header().vault, device.keys.vault());
        }
    }
}

pub fn answers() -> Vec<Vec<u8>> {
    let (_, device, log) = relay();
    let head = log[3].head();
    let heads = vec![Shown {
        key: device.keys.public(),
        head,
    }];
    let page = Page {
        heads: heads.clone(),
        runs: vec![Run::new(log[..2].to_vec()).expect("part of a log is a run")],
        forks: [(log[1].device(), log[1].head())].into_iter().collect(),
        more: true,
    };
    let asides = Asides {
        frames: vec![(Why::Fork, log[1].clone())],
        more: false,
    };
    let answers = [
        Answer::Heads(heads),
        Answer::Page(page),
        Answer::Pushed(Pushed::Kept { head }),
        Answer::Pushed(Pushed::Gap { head: None }),
        Answer::Pushed(Pushed::Fork { sequence: 4 }),
        Answer::Pushed(Pushed::Aside { head: Some(head) }),
        Answer::Roll(vec![founded(&device)]),
        Answer::Aside(asides),
    ];
    answers.iter().map(Answer::to_bytes).collect()
}

/// A reply of HTTP with any body: an answer only where it is one.
pub fn reply(body: &[u8]) {
    for (status, kind) in [
        (200, TYPE),
        (403, "text/plain; charset=utf-8"),
        (401, "text/html"),
        (503, ""),
    ] {
        let meant = Reply {
            status,
            kind: kind.to_owned(),
            retry_after: Some(7),
            time: (status == 401).then_some(1),
            body: body.to_vec(),
        }
        .read();
        assert_eq!(
            matches!(meant, Meant::Answer(_)),
            kind == TYPE && Answer::from_bytes(body).is_ok()
        );
    }
}

pub fn memories() -> Vec<Vec<u8>> {
    let (_, _, log) = relay();
    let seen = [(log[1].device(), log[1].head())].into_iter().collect();
    vec![
        Remembered {
            seen,
            last: Some(1_700_000_000_000),
        }
        .to_bytes(),
    ]
}

/// What is read is written to what reads the same.
pub fn remembered(bytes: &[u8]) {
    if let Ok(remembered) = Remembered::from_bytes(bytes) {
        assert_eq!(
            Remembered::from_bytes(&remembered.to_bytes()),
            Ok(remembered)
        );
    }
}

/// A stream says the same however it is cut.
pub fn news(bytes: &[u8]) {
    let whole = Events::default().is_new(bytes);
    let mut events = Events::default();
    let each = bytes.iter().filter(|byte| events.is_new(&[**byte])).count();
    assert_eq!(whole, each > 0);
}
