use crate::scene::{NOW, Scene};
use std::sync::atomic::Ordering;
use sync::exchange::wire::LONGEST_REQUEST;
use sync::exchange::{Request, Run, Vector};
use vault::sample::devices;

const FIVE_MINUTES: u64 = 5 * 60 * 1_000;

#[tokio::test]
async fn a_signature_is_good_for_one_request() {
    let scene = Scene::new("stolen").await;
    let (path, body) = (
        scene.path("pull"),
        Request::Pull {
            have: Vector::new(),
        }
        .to_bytes(),
    );
    let field = scene.field(1, "POST", &path, &body, NOW);
    let heads = Request::Heads.to_bytes();
    for (what, path, body) in [
        ("another path", scene.path("heads"), heads.clone()),
        ("another body", path.clone(), heads),
        ("a question added", format!("{path}?more"), body.clone()),
        (
            "another vault",
            path.replace(&scene.vault.to_string(), &"0".repeat(32)),
            body.clone(),
        ),
    ] {
        let reply = scene.post(&path, &field, &body).await;
        assert_eq!(reply.status, 401, "{what}: {}", reply.text());
        assert_eq!(reply.header("www-authenticate"), Some("Lightround"));
    }
    assert_eq!(scene.post(&path, &field, &body).await.status, 200);
    let again = scene.post(&path, &field, &body).await;
    assert_eq!(
        (again.status, again.text().as_str()),
        (401, "this request was made before\n")
    );
}

#[tokio::test]
async fn a_wrong_clock_is_told_the_time() {
    let scene = Scene::new("clock").await;
    let (path, body) = (scene.path("heads"), Request::Heads.to_bytes());
    for (time, status) in [
        (NOW - FIVE_MINUTES, 200),
        (NOW + FIVE_MINUTES, 200),
        (NOW - FIVE_MINUTES - 1, 401),
        (NOW + FIVE_MINUTES + 1, 401),
        (0, 401),
        (u64::MAX, 401),
    ] {
        let field = scene.field(1, "POST", &path, &body, time);
        let reply = scene.post(&path, &field, &body).await;
        assert_eq!(reply.status, status, "{time}");
        let told = (status == 401).then(|| NOW.to_string());
        assert_eq!(reply.header("lightround-time"), told.as_deref(), "{time}");
    }
}

#[tokio::test]
async fn a_captured_request_is_of_no_use_later() {
    let scene = Scene::new("captured").await;
    let (path, body) = (scene.path("heads"), Request::Heads.to_bytes());
    let field = scene.field(1, "POST", &path, &body, NOW + FIVE_MINUTES);
    assert_eq!(scene.post(&path, &field, &body).await.status, 200);
    for later in [
        1,
        FIVE_MINUTES,
        2 * FIVE_MINUTES,
        2 * FIVE_MINUTES + 1,
        9 * FIVE_MINUTES,
    ] {
        scene.clock.store(NOW + later, Ordering::Relaxed);
        assert_eq!(
            scene.post(&path, &field, &body).await.status,
            401,
            "{later}"
        );
    }
}

#[tokio::test]
async fn who_doesnt_say_who_asks_is_not_answered() {
    let scene = Scene::new("nobody").await;
    let (path, body) = (scene.path("heads"), Request::Heads.to_bytes());
    let good = scene.field(1, "POST", &path, &body, NOW);
    let length = body.len().to_string();
    let none = scene
        .relay
        .send("POST", &path, &[("content-length", &length)], &body)
        .await;
    assert_eq!(none.status, 401);
    for field in [
        "",
        "Bearer 1234",
        "Lightround",
        &good[..good.len() - 2],
        &good.replace("time=1", "time=2"),
    ] {
        assert_eq!(scene.post(&path, field, &body).await.status, 401, "{field}");
    }
    let two = [
        ("authorization", good.as_str()),
        ("authorization", good.as_str()),
        ("content-length", &length),
    ];
    assert_eq!(
        scene.relay.send("POST", &path, &two, &body).await.status,
        401
    );
}

#[tokio::test]
async fn strangers_and_unknown_vaults_get_the_same_answer() {
    let scene = Scene::new("stranger").await;
    let stranger = scene.ask(3, &Request::Heads).await;
    let body = Request::Heads.to_bytes();
    let elsewhere = format!("/relay/v1/vaults/{}/heads", devices(99, 1)[0].keys.vault());
    let field = scene.field(1, "POST", &elsewhere, &body, NOW);
    let unknown = scene.post(&elsewhere, &field, &body).await;
    assert_eq!((stranger.status, unknown.status), (404, 404));
    assert_eq!(stranger.text(), unknown.text());
}

#[tokio::test]
async fn nonsense_is_refused_in_a_sentence() {
    let scene = Scene::new("nonsense").await;
    let pull = Request::Pull {
        have: Vector::new(),
    }
    .to_bytes();
    for (what, body) in [
        ("pull", vec![]),
        ("pull", b"{\"have\":[]}".to_vec()),
        ("pull", pull[..pull.len() - 1].to_vec()),
        ("pull", [pull.as_slice(), b"more"].concat()),
        ("heads", pull.clone()),
        ("push", pull.clone()),
        ("unheard-of", pull.clone()),
    ] {
        let path = scene.path(what);
        let field = scene.field(1, "POST", &path, &body, NOW);
        let reply = scene.post(&path, &field, &body).await;
        assert_eq!(reply.status, 400, "{what}: {}", reply.text());
        let said = reply.text();
        assert!(
            said.ends_with('\n') && said.starts_with(char::is_lowercase),
            "{said}"
        );
    }
    for vault in [
        "",
        "0",
        "zz",
        &"A".repeat(32),
        &"0".repeat(33),
        "+0000000000000000000000000000000",
    ] {
        let path = format!("/relay/v1/vaults/{vault}/pull");
        let field = scene.field(1, "POST", &path, &pull, NOW);
        let reply = scene.post(&path, &field, &pull).await;
        assert!(
            matches!(reply.status, 400 | 404),
            "{vault}: {}",
            reply.status
        );
    }
    assert_eq!(scene.relay.get(&scene.path("pull")).await.status, 405);
}

#[tokio::test]
async fn forged_and_foreign_frames_are_refused_and_leave_nothing() {
    let mut scene = Scene::new("forged").await;
    let viewer = scene.devices[2].log(1);
    let stranger = scene.devices[3].log(0);
    let foreign = devices(98, 1)[0].log(0);
    let mut altered = scene.devices[1].log(0)[0].bytes().to_vec();
    *altered.last_mut().unwrap() ^= 1;
    let altered = vec![vault::Frame::parse(altered).unwrap()];
    for (frames, status) in [
        (viewer, 403),
        (stranger, 403),
        (altered, 403),
        (foreign, 400),
    ] {
        let run = Run::new(frames).unwrap();
        let reply = scene.ask(0, &Request::Push(run)).await;
        assert_eq!(reply.status, status, "{}", reply.text());
    }
    let reply = scene
        .ask(
            0,
            &Request::Pull {
                have: Vector::new(),
            },
        )
        .await;
    let Ok(sync::exchange::Answer::Page(page)) = sync::exchange::Answer::from_bytes(&reply.body)
    else {
        panic!("{}", reply.text());
    };
    assert!(page.heads.is_empty() && page.runs.is_empty());
}

#[tokio::test]
async fn what_is_too_long_is_not_even_read() {
    let scene = Scene::new("long").await;
    let path = scene.path("push");
    let body = vec![0; LONGEST_REQUEST + 1];
    let field = scene.field(1, "POST", &path, &body, NOW);
    assert_eq!(scene.post(&path, &field, &body).await.status, 413);
    // One that only says so, and one that doesn't say how long it is.
    let fields = [
        ("authorization", field.as_str()),
        ("content-length", "99999999999"),
    ];
    let reply = scene
        .relay
        .send("POST", &path, &fields, &body[..10_000])
        .await;
    assert_eq!(reply.status, 413);
    let chunked = [
        ("authorization", field.as_str()),
        ("transfer-encoding", "chunked"),
    ];
    let chunk = [
        format!("{:x}\r\n", body.len()).as_bytes(),
        &body,
        b"\r\n0\r\n\r\n",
    ]
    .concat();
    assert_eq!(
        scene
            .relay
            .send("POST", &path, &chunked, &chunk)
            .await
            .status,
        413
    );
}
