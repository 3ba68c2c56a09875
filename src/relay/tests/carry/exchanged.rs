use crate::scene::{NOW, Scene};
use lightround_relay::carry::{Limits, Line};
use sync::exchange::{Answer, Pushed, Request, Vector};
use vault::roll::Change;
use vault::{Invitation, Role};

#[tokio::test]
async fn what_one_device_pushes_another_pulls() {
    let mut scene = Scene::new("pushes").await;
    let log = scene.devices[1].log(3);
    let kept = Pushed::Kept {
        head: log[3].head(),
    };
    assert_eq!(scene.push(1, &log).await, (200, kept));
    let reply = scene
        .ask(
            0,
            &Request::Pull {
                have: Vector::new(),
            },
        )
        .await;
    assert_eq!(
        (reply.status, reply.header("content-type")),
        (200, Some("application/cbor"))
    );
    assert_eq!(reply.header("cache-control"), Some("no-store"));
    assert!(reply.header("content-security-policy").is_some());
    let Ok(Answer::Page(page)) = Answer::from_bytes(&reply.body) else {
        panic!("{}", reply.text());
    };
    assert_eq!(page.runs[0].frames(), &log);
    let reply = scene.ask(2, &Request::Heads).await;
    let Ok(Answer::Heads(heads)) = Answer::from_bytes(&reply.body) else {
        panic!("{}", reply.text());
    };
    assert_eq!(heads[0].head, log[3].head());
}

#[tokio::test]
async fn a_gap_a_fork_and_a_removal_have_their_status() {
    let mut scene = Scene::new("fork").await;
    let log = scene.devices[1].log(3);
    let mut fork = log[..2].to_vec();
    fork.push(scene.devices[1].write(log[1].head(), b"otherwise"));
    assert_eq!(
        scene.push(1, &log[2..]).await,
        (409, Pushed::Gap { head: None })
    );
    scene.push(1, &log[..3]).await;
    assert_eq!(
        scene.push(1, &fork).await,
        (409, Pushed::Fork { sequence: 3 })
    );
    scene.state(1, Change::Remove { last: 3 }).await;
    let aside = Pushed::Aside {
        head: Some(log[2].head()),
    };
    assert_eq!(scene.push(0, &log[3..]).await, (202, aside));
}

#[tokio::test]
async fn an_invitation_opens_a_vault_and_only_for_its_own_first_device() {
    let scene = Scene::unopened("invited", Limits::default()).await;
    let (code, first) = (scene.invitation(), Box::new(scene.first()));
    let unknown = Invitation::make().unwrap();
    let reply = scene
        .ask(
            0,
            &Request::Open {
                code: unknown,
                first: first.clone(),
            },
        )
        .await;
    assert_eq!(reply.status, 404);
    assert_eq!(
        reply.text(),
        "this invitation is not valid: it may have been used, or its time is over\n"
    );
    let open = Request::Open { code, first };
    assert_eq!(scene.ask(1, &open).await.status, 400, "for another device");
    assert_eq!(scene.ask(0, &open).await.status, 200);
    assert_eq!(
        scene.ask(0, &open).await.status,
        200,
        "the answer may have been lost"
    );
    let other = scene.devices[1].keys.state(
        &vault::Roll::new(scene.vault),
        scene.devices[1].keys.public(),
        Change::Admit(Role::Lead),
    );
    let taken = Request::Open {
        code: scene.invitation(),
        first: Box::new(other.unwrap()),
    };
    assert_eq!(
        scene.ask(1, &taken).await.status,
        409,
        "a vault isn't taken over"
    );
}

#[tokio::test]
async fn the_roll_is_shown_to_members_and_changed_by_leads() {
    let scene = Scene::new("roll").await;
    let reply = scene.ask(2, &Request::Roll).await;
    let Ok(Answer::Roll(roll)) = Answer::from_bytes(&reply.body) else {
        panic!("{}", reply.text());
    };
    assert_eq!(vault::Roll::read(scene.vault, &roll).unwrap(), scene.roll);
    let about = scene.devices[3].keys.public();
    let statement = scene.devices[0]
        .keys
        .state(&scene.roll, about, Change::Admit(Role::Lead));
    let state = Request::State(Box::new(statement.unwrap()));
    assert_eq!(scene.ask(1, &state).await.status, 403);
    assert_eq!(scene.ask(3, &state).await.status, 404);
    assert_eq!(scene.ask(0, &state).await.status, 200);
    let late = scene.devices[0]
        .keys
        .state(&scene.roll, about, Change::Admit(Role::Clinician));
    let late = Request::State(Box::new(late.unwrap()));
    assert_eq!(scene.ask(0, &late).await.status, 409);
}

#[tokio::test]
async fn the_journal_says_what_kind_and_how_it_ended_and_nothing_else() {
    let mut scene = Scene::new("journal").await;
    let log = scene.devices[1].log(0);
    scene.push(1, &log).await;
    scene.post(&scene.path("mischief\"}"), "", b"").await;
    let lines = scene.lines.lock().unwrap().clone();
    let pushed = &lines[lines.len() - 2];
    assert!(matches!(
        pushed,
        Line::Answered {
            at: NOW,
            what: "push",
            status: 200,
            bytes_in: 459..,
            bytes_out: 1..,
            ..
        }
    ));
    assert!(matches!(
        lines.last(),
        Some(Line::Answered {
            what: "other",
            status: 401,
            ..
        })
    ));
    let written: String = lines.iter().map(ToString::to_string).collect();
    for secret in [scene.vault.to_string(), log[0].device().to_string()] {
        assert!(!written.contains(&secret), "{written}");
    }
}

#[tokio::test]
async fn the_relay_is_ready_when_its_store_is() {
    let scene = Scene::new("ready").await;
    let reply = scene.relay.get("/relay/ready").await;
    assert_eq!((reply.status, reply.text().as_str()), (200, "ready\n"));
    assert_eq!(scene.relay.get("/relay/health").await.status, 200);
    assert_eq!(scene.relay.get("/").await.status, 200, "and serves the app");
}

#[tokio::test]
async fn a_lead_is_shown_over_http_what_was_set_aside() {
    let mut scene = Scene::new("aside-shown").await;
    let log = scene.devices[1].log(3);
    assert_eq!(scene.push(1, &log[..2]).await.0, 200);
    scene
        .state(1, vault::roll::Change::Remove { last: 2 })
        .await;
    assert_eq!(scene.push(0, &log[2..]).await.0, 202);
    let request = Request::Aside { after: None };
    let reply = scene.ask(0, &request).await;
    let Ok(Answer::Aside(page)) = Answer::from_bytes(&reply.body) else {
        panic!("{}", reply.text());
    };
    let shown: Vec<&vault::Frame> = page.frames.iter().map(|(_, frame)| frame).collect();
    assert_eq!(shown, [&log[2], &log[3]]);
    let refused = scene.ask(2, &request).await;
    assert_eq!(
        (refused.status, refused.text().as_str()),
        (403, "only a lead tablet is shown what was set aside\n")
    );
}
