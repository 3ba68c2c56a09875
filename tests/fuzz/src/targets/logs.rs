//! What is sealed: in frames, as a device of the vault that means ill could make them, and in a checkpoint.

use ciborium::{Value, cbor};
use futures::executor::block_on;
use sync::exchange::{FrameStore, MemoryStore, Pushed, Quota, Run, keep_run};
use sync::{Append, Ledger, MemoryStorage, Opened, Storage};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Head, Keys, Purpose, Role, Roll};

/// What is known in `1..=5`, in the order of their bytes.
const PURPOSES: [Purpose; 5] = [
    Purpose::Introduction,
    Purpose::PersonKey,
    Purpose::Entry,
    Purpose::Epoch,
    Purpose::Erasure,
];
/// Frames of a made-up log.
const MOST: usize = 20;

/// A device's log after its introduction: each frame as its purpose, its length (u16) and its plain text.
pub fn log(bytes: &[u8]) {
    let (mut writer, reader) = writer_and_reader();
    let frames = frames(&mut writer, bytes);
    let storage = kept(&frames);
    let opened = opened(&storage, reader);
    assert!(opened.entries.len() <= frames.len());
    let (_, reader) = writer_and_reader();
    let again = self::opened(&storage, reader);
    assert_eq!(again.entries, opened.entries);
    assert_eq!(again.damage, opened.damage);
    assert_eq!(again.erased, opened.erased);
    relayed(&writer, frames);
}

/// A relay keeps all of it, and carries out what it can read of it.
fn relayed(lead: &Device, frames: Vec<Frame>) {
    let vault = lead.keys.vault();
    let admit = Change::Admit(Role::Lead);
    let first = lead
        .keys
        .state(&Roll::new(vault), lead.keys.public(), admit);
    let first = first.expect("whoever founds a vault is its lead");
    let store = MemoryStore::new();
    store.open_vault(&first);
    let roll = Roll::read(vault, [&first]).expect("it is the first");
    let run = Run::new(frames).expect("a log is a run");
    let kept = keep_run(&store, &roll, Quota { bytes: u64::MAX }, &run);
    assert_eq!(kept, Ok(Pushed::Kept { head: run.head() }));
    let head = store.head(vault, lead.keys.device());
    assert_eq!(head, Ok(Some(run.head())));
}

fn writer_and_reader() -> (Device, Keys) {
    let mut both = devices(1, 2);
    let reader = both.remove(1).keys;
    (both.remove(0), reader)
}

fn frames(writer: &mut Device, mut bytes: &[u8]) -> Vec<Frame> {
    let mut frames = vec![writer.begin("tablet")];
    while let [purpose, high, low, rest @ ..] = bytes {
        let length = usize::from(u16::from_be_bytes([*high, *low])).min(rest.len());
        let (plain, after) = rest.split_at(length);
        let purpose = PURPOSES[usize::from(*purpose) % PURPOSES.len()];
        let head = frames.last().map(Frame::head);
        frames.extend(writer.seal_any(head, purpose, plain));
        if frames.len() > MOST {
            break;
        }
        bytes = after;
    }
    frames
}

fn kept(frames: &[Frame]) -> MemoryStorage {
    let storage = MemoryStorage::new();
    let append = Append {
        device: frames[0].device(),
        expected: None,
        frames,
        drop_drafts: &[],
    };
    block_on(storage.append(append)).expect("memory has room");
    storage
}

fn opened(storage: &MemoryStorage, keys: Keys) -> Opened<MemoryStorage> {
    block_on(Ledger::open(storage.clone(), keys)).expect("damage is told, and stops nothing")
}

pub fn seeds() -> Vec<Vec<u8>> {
    let (writer, reader) = writer_and_reader();
    let device = || Value::Bytes(writer.keys.device().as_bytes().to_vec());
    let (number, epoch) = writer.keys.epoch_now();
    let id = |byte| Value::Bytes(vec![byte; 16]);
    let key = |byte| Value::Bytes(vec![byte; 32]);
    let introduction = cbor!({
        "signing" => Value::Bytes(writer.keys.public().bytes().to_vec()),
        "exchange" => Value::Bytes(writer.keys.exchange_public().to_vec()),
        "name" => "another name",
    });
    let person = cbor!({ "subject" => id(5), "key_id" => id(6), "key" => key(7) });
    let erasure = cbor!({
        "subject" => id(5),
        "at" => 1_700_000_000_000_u64,
        "keys" => [{ "id" => id(6), "device" => device(), "sequence" => 3 }],
    });
    let boxed = Value::Bytes(reader.exchange_public().to_vec());
    let begun = cbor!({
        "number" => number,
        "key_id" => Value::Bytes(epoch.as_bytes().to_vec()),
        "roll" => 0,
        "check" => key(8),
        "boxes" => [{ "to" => boxed, "enc" => key(9), "sealed" => Value::Bytes(vec![1; 48]) }],
        "recovery" => key(2),
        "older" => [{
            "number" => 1,
            "key_id" => id(3),
            "roll" => 0,
            "key" => { "nonce" => Value::Bytes(vec![4; 24]), "ciphertext" => Value::Bytes(vec![4; 48]) },
        }],
    });
    let made = [(0, introduction), (1, person), (4, erasure), (3, begun)];
    let mut logs: Vec<Vec<u8>> = made
        .into_iter()
        .map(|(purpose, value)| {
            let value = value.expect("it is written as CBOR");
            let mut plain = Vec::new();
            ciborium::into_writer(&value, &mut plain).expect("writing to memory can't fail");
            piece(purpose, &plain)
        })
        .collect();
    logs.push(piece(2, b"an entry"));
    logs.push(logs.concat());
    logs
}

fn piece(purpose: u8, plain: &[u8]) -> Vec<u8> {
    let length = u16::try_from(plain.len()).expect("a seed is short");
    [[purpose].as_slice(), &length.to_be_bytes(), plain].concat()
}

/// A checkpoint as its pieces are kept: a list of byte strings in CBOR. It can't be opened but by whose it is.
pub fn checkpoint(bytes: &[u8]) {
    let pieces: Vec<Vec<u8>> = match ciborium::from_reader::<Vec<serde_bytes::ByteBuf>, _>(bytes) {
        Ok(pieces) => pieces
            .into_iter()
            .map(serde_bytes::ByteBuf::into_vec)
            .collect(),
        Err(_) => vec![bytes.to_vec()],
    };
    let (_, reader) = writer_and_reader();
    assert!(reader.open_checkpoint(&pieces).is_err());
}

/// What is sealed in a checkpoint, over a log of three frames: it is gone by, or passed over and everything read anew.
pub fn inside(plain: &[u8]) {
    let (mut writer, reader) = writer_and_reader();
    let storage = kept(&writer.log(2));
    let pieces = reader.seal_checkpoint(plain).expect("there is randomness");
    block_on(storage.put_checkpoint(&pieces)).expect("memory has room");
    let opened = opened(&storage, reader);
    let frames = opened.resumed.frames();
    assert!(frames <= 3, "{frames} frames of three are covered");
}

/// Written by hand from the layout that the module of checkpoints gives.
pub fn insides() -> Vec<Vec<u8>> {
    let mut writer = writer_and_reader().0;
    let log = writer.log(2);
    let covers = |head: Head| {
        let mut plain = vec![1, 0];
        plain.extend([0; 8 + 32 + 8]);
        plain.extend(1_u32.to_be_bytes());
        plain.extend(writer.keys.public().bytes());
        plain.extend(head.sequence.to_be_bytes());
        plain.extend(head.hash.as_bytes());
        plain.push(1);
        plain.extend(writer.keys.exchange_public());
        plain.extend(6_u32.to_be_bytes());
        plain.extend(b"tablet");
        plain.extend(0_u32.to_be_bytes());
        plain.extend(1_u64.to_be_bytes());
        plain.extend(0_u32.to_be_bytes());
        plain.extend(2_u64.to_be_bytes());
        plain.extend([0; 17]);
        plain.extend(7_u32.to_be_bytes());
        plain.extend(b"entry 0");
        plain
    };
    vec![covers(log[1].head()), covers(log[2].head())]
}
