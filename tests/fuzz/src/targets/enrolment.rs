//! How another device comes in: four messages, as pictures and as typed lines.

use crate::seeds::frozen;
use ciborium::Value;
use std::fmt::Debug;
use vault::enrolment::{
    Acquainted, Checked, Host, Message, Newcomer, Offer, Packet, Request, Reveal,
};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Role, Roll};

/// Each message has one way of being written.
pub fn message(bytes: &[u8]) {
    read::<Request>(bytes);
    read::<Offer>(bytes);
    read::<Reveal>(bytes);
    read::<Packet>(bytes);
}

fn read<M: Message + PartialEq + Debug>(bytes: &[u8]) {
    if let Ok(message) = M::parse(bytes) {
        assert_eq!(message.bytes(), bytes);
        assert_eq!(M::read(&message.lines().join("\n")), Ok(message));
    }
}

pub fn lines() -> Vec<Vec<u8>> {
    let messages = frozen(&["src/vault/golden/enrolment"]);
    let requests = messages
        .iter()
        .filter_map(|bytes| Request::parse(bytes).ok());
    let reveals = messages
        .iter()
        .filter_map(|bytes| Reveal::parse(bytes).ok());
    let lines = requests
        .map(|request| request.lines())
        .chain(reveals.map(|reveal| reveal.lines()));
    lines.map(|lines| lines.join("\n").into_bytes()).collect()
}

/// Lines as somebody may type them.
pub fn typed(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    for bytes in [
        Request::read(&text).map(|message| message.bytes()),
        Offer::read(&text).map(|message| message.bytes()),
        Reveal::read(&text).map(|message| message.bytes()),
        Packet::read(&text).map(|message| message.bytes()),
    ]
    .into_iter()
    .flatten()
    {
        message(&bytes);
    }
}

/// A newcomer and a lead that have met.
fn met() -> (Acquainted, Checked, Device) {
    let lead = devices(1, 1).remove(0);
    let newcomer = Newcomer::new("bedside tablet").expect("that is a name");
    let host = Host::receive(&lead.keys, newcomer.request().clone()).expect("there is randomness");
    let newcomer = newcomer.meet(host.offer().clone());
    let checked = host
        .check(newcomer.reveal())
        .expect("it is the nonce that was committed to");
    (newcomer, checked, lead)
}

/// What is sealed in a packet, of which only a lead knows how to make one.
pub fn inside(plain: &[u8]) {
    let (newcomer, checked, lead) = met();
    let packet = checked
        .admit_with(&lead.keys, plain)
        .expect("there is randomness");
    // A roll that admits this newcomer is signed with its key, which is another each time.
    assert!(newcomer.take(&packet).is_err());
}

pub fn insides() -> Vec<Vec<u8>> {
    let lead = devices(1, 1).remove(0);
    let roll = Roll::new(lead.keys.vault());
    let first = lead
        .keys
        .state(&roll, lead.keys.public(), Change::Admit(Role::Lead));
    let first = first.expect("whoever founds a vault is its lead");
    let (number, id) = lead.keys.epoch_now();
    let field = |name: &str, value: Value| (Value::from(name), value);
    let epoch = Value::Map(vec![
        field("number", number.into()),
        field("key_id", Value::Bytes(id.as_bytes().to_vec())),
        field("roll", 0.into()),
        field("key", Value::Bytes(vec![7; 32])),
    ]);
    let inside = Value::Map(vec![
        field("epochs", Value::Array(vec![epoch])),
        field(
            "roll",
            Value::Array(vec![Value::Bytes(first.bytes().to_vec())]),
        ),
        field("recovery", Value::Bytes(vec![9; 32])),
        field("relay", "https://relay.example".into()),
    ]);
    let mut bytes = Vec::new();
    ciborium::into_writer(&inside, &mut bytes).expect("writing to memory can't fail");
    vec![bytes]
}
