//! The document that describes the relay, held against what the relay does.

use crate::common::Reply;
use crate::scene::{NOW, Scene};
use lightround_relay::paths;
use serde_json::Value;
use std::collections::BTreeSet;
use std::sync::OnceLock;
use sync::exchange::{Request, Run, Vector};
use vault::Role;
use vault::roll::Change;

fn document() -> &'static Value {
    static READ: OnceLock<Value> = OnceLock::new();
    READ.get_or_init(|| serde_json::from_str(include_str!("../../openapi.json")).unwrap())
}

/// What a `$ref` points to.
fn resolved(value: &'static Value) -> &'static Value {
    match value.get("$ref") {
        Some(pointer) => {
            let pointer = pointer.as_str().unwrap().strip_prefix('#').unwrap();
            document().pointer(pointer).unwrap()
        }
        None => value,
    }
}

/// The operation of a request, if its path is described.
fn operation(method: &str, path: &str) -> Option<&'static Value> {
    let path = path.split('?').next()?;
    let parts: Vec<&str> = path.split('/').collect();
    let template = match parts.as_slice() {
        ["", "relay", "v1", "vaults", vault, what] if vault.len() == 32 => {
            format!("/relay/v1/vaults/{{vault}}/{what}")
        }
        _ => path.to_owned(),
    };
    document()["paths"].get(template)?.get(method)
}

/// A reply is one of those that are described: its status, type and fields.
pub fn hold(method: &str, path: &str, reply: &Reply) {
    let Some(operation) = operation(method, path) else {
        assert!(
            matches!(reply.status, 400 | 401 | 404 | 405),
            "{path}: {}",
            reply.status
        );
        return;
    };
    let described = operation["responses"].get(reply.status.to_string());
    let described = described.unwrap_or_else(|| panic!("{path}: {} isn't described", reply.status));
    let described = resolved(described);
    let kind = reply.header("content-type").unwrap();
    assert!(
        described["content"].get(kind).is_some(),
        "{path}: {} as {kind}",
        reply.status
    );
    for field in ["retry-after", "lightround-time", "www-authenticate"] {
        let said = described.pointer(&format!("/headers/{field}"));
        let needed = said.is_some_and(|said| said["required"] == true);
        let there = reply.header(field).is_some();
        assert!(there || !needed, "{path}: {} lacks {field}", reply.status);
        assert!(
            !there || said.is_some(),
            "{path}: {} has {field}",
            reply.status
        );
    }
}

fn requests(scene: &mut Scene) -> [Request; 7] {
    let first = Box::new(scene.first());
    [
        Request::Heads,
        Request::Pull {
            have: Vector::new(),
        },
        Request::Push(Run::new(scene.devices[1].log(1)).unwrap()),
        Request::Roll,
        Request::State(first.clone()),
        Request::Open {
            code: scene.invitation(),
            first,
        },
        Request::Aside { after: None },
    ]
}

#[tokio::test]
async fn every_address_is_described_and_every_described_address_answers() {
    let mut scene = Scene::new("described").await;
    let kinds = requests(&mut scene).map(|request| request.name());
    let ours: BTreeSet<String> = paths::ALL
        .iter()
        .flat_map(|path| kinds.map(|kind| path.replace("{what}", kind)))
        .collect();
    let described = document()["paths"].as_object().unwrap();
    let theirs: BTreeSet<String> = described.keys().cloned().collect();
    assert_eq!(ours, theirs);
    for (path, item) in described {
        let address = path.replace("{vault}", &scene.vault.to_string());
        for method in ["get", "post", "put", "delete"] {
            let asked = method.to_uppercase();
            let fields = [("content-length", "0")];
            let reply = scene.relay.ask(&asked, &address, &fields).await;
            let there = item.get(method).is_some();
            assert_eq!(
                reply.status != 405,
                there,
                "{asked} {path}: {}",
                reply.status
            );
            if there {
                hold(method, &address, &reply);
            }
        }
    }
}

/// The other way round: whatever is described does happen. Each is provoked and held against the document.
#[tokio::test]
async fn every_described_answer_to_a_push_happens() {
    let mut scene = Scene::new("pushes-described").await;
    let mut seen = BTreeSet::new();
    let log = scene.devices[1].log(3);
    let head = log[0].head();
    let other = scene.devices[1].write(head, b"another");
    let viewer = scene.devices[2].log(1);
    for (frames, status) in [
        (vec![log[1].clone()], 409),
        (vec![log[0].clone()], 200),
        (vec![log[1].clone()], 200),
        (vec![other], 409),
        (viewer, 403),
    ] {
        let request = Request::Push(Run::new(frames).unwrap());
        let reply = scene.ask(0, &request).await;
        assert_eq!(reply.status, status, "{}", reply.text());
        seen.insert(reply.status);
    }
    scene.state(1, Change::Remove { last: 2 }).await;
    let late = Request::Push(Run::new(vec![log[2].clone()]).unwrap());
    seen.insert(scene.ask(0, &late).await.status);
    seen.insert(scene.ask(3, &late).await.status);
    let path = scene.path("push");
    let heads = Request::Heads.to_bytes();
    let field = scene.field(0, "POST", &path, &heads, NOW);
    seen.insert(scene.post(&path, &field, &heads).await.status);
    seen.insert(scene.post(&path, &field, &heads).await.status);
    // 408, 413, 429, 503 and 507 have tests of their own, which hold their replies against the document too.
    let described = operation("post", &path).unwrap()["responses"]
        .as_object()
        .unwrap();
    let elsewhere = ["408", "413", "429", "503", "507"];
    let expected: BTreeSet<u16> = described
        .keys()
        .filter(|status| !elsewhere.contains(&status.as_str()))
        .map(|status| status.parse().unwrap())
        .collect();
    assert_eq!(seen, expected);
}

#[tokio::test]
async fn the_document_is_served_as_it_is_and_holds_together() {
    let scene = Scene::new("document").await;
    let reply = scene.relay.get(paths::OPENAPI).await;
    assert_eq!(reply.header("content-type"), Some("application/json"));
    assert_eq!(
        serde_json::from_slice::<Value>(&reply.body).unwrap(),
        *document()
    );
    // OpenAPI Specification 3.1.0, sections 4.8.1, 4.8.2, 4.8.10, 4.8.16 and 4.8.17: what must be there.
    assert_eq!(document()["openapi"], "3.1.0");
    assert_eq!(document()["info"]["version"], env!("CARGO_PKG_VERSION"));
    assert!(document()["info"]["title"].is_string());
    let mut names = BTreeSet::new();
    for item in document()["paths"].as_object().unwrap().values() {
        for (method, operation) in item.as_object().unwrap() {
            if method == "parameters" {
                continue;
            }
            assert!(names.insert(operation["operationId"].as_str().unwrap()));
            let responses = operation["responses"].as_object().unwrap();
            assert!(!responses.is_empty());
            for response in responses.values() {
                assert!(resolved(response)["description"].is_string());
            }
        }
    }
    every_reference_leads_somewhere(document());
}

fn every_reference_leads_somewhere(value: &'static Value) {
    resolved(value);
    match value {
        Value::Array(items) => items.iter().for_each(every_reference_leads_somewhere),
        Value::Object(fields) => fields.values().for_each(every_reference_leads_somewhere),
        _ => {}
    }
}

#[tokio::test]
async fn every_kind_of_request_is_answered_as_described() {
    let mut scene = Scene::new("kinds").await;
    for request in requests(&mut scene) {
        let reply = scene.ask(0, &request).await;
        assert_eq!(reply.status, 200, "{}: {}", request.name(), reply.text());
    }
    scene.state(1, Change::Remove { last: 2 }).await;
    let removed = scene.ask(1, &Request::Heads).await;
    assert_eq!(removed.status, 403);
    let admitted = scene.devices[3].keys.public();
    let late = scene.devices[0].keys.state(
        &vault::Roll::new(scene.vault),
        admitted,
        Change::Admit(Role::Lead),
    );
    assert!(late.is_err(), "nobody else founds it");
}
