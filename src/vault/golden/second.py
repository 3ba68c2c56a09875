"""A second implementation of the vault's formats, written from the layouts in the crate's documentation and on other
libraries (PyNaCl, argon2-cffi, cryptography, cbor2), so that the golden files are not this code checking itself.

    python3 second.py        writes the .hex files beside it; a frozen file that would change is an error
"""
import hashlib
import pathlib
import sys

import cbor2
from argon2.low_level import Type, hash_secret_raw
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF
from nacl.bindings import crypto_aead_xchacha20poly1305_ietf_encrypt as encrypt

HERE = pathlib.Path(__file__).parent
PASSPHRASE = "harbour lantern thimble orchard"
SALT = bytes(range(16))
MEMORY, PASSES, LANES = 8192, 1, 1


class Draws:
    """Every draw is filled with its ordinal number: the first with 01, the second with 02, …"""

    def __init__(self):
        self.count = 0

    def __call__(self, length):
        self.count += 1
        return bytes([self.count]) * length


def domain(name, *parts):
    return b"lightround v1 " + name.encode() + b"\0" + b"".join(parts)


def u32(number):
    return number.to_bytes(4, "big")


def sha(data):
    return hashlib.sha256(data).digest()


def derive(key, info):
    return HKDF(SHA256(), 32, None, info).derive(key)


def pad(payload):
    size = 256
    while size < len(payload) + 4:
        size *= 2
    return (u32(len(payload)) + payload).ljust(size, b"\0")


def wrap(draws, outer, inner, name, *about):
    nonce = draws(24)
    return {"nonce": nonce, "wrapped": encrypt(inner, domain(name, *about), nonce, outer)}


def write(name, data, note):
    path = HERE / (name + ".hex")
    lines = [data.hex()[at:at + 96] for at in range(0, len(data.hex()), 96)]
    text = "# " + note + "\n" + "\n".join(lines) + "\n"
    if path.exists() and path.read_text() != text:
        sys.exit(f"{name} is frozen and would change")
    path.write_text(text)


class Device:
    """Drawn in the order in which the crate draws: vault, KEK, seed, exchange, epoch id, epoch key."""

    def __init__(self, draws):
        self.draws = draws
        self.vault, self.kek, self.seed, self.exchange = draws(16), draws(32), draws(32), draws(32)
        self.epoch_id, self.epoch_key = draws(16), draws(32)
        self.signing = Ed25519PrivateKey.from_private_bytes(self.seed)
        self.public = self.signing.public_key().public_bytes_raw()
        self.exchange_public = X25519PrivateKey.from_private_bytes(self.exchange).public_key().public_bytes_raw()
        self.id = sha(self.public)[:16]
        self.sequence, self.previous = 0, bytes(32)

    def key_file(self, slot_key):
        owner = (self.vault, self.id)
        slot = b"passphrase\0" + SALT + u32(MEMORY) + u32(PASSES) + u32(LANES)
        body = cbor2.dumps({
            "vault": self.vault,
            "device": self.id,
            "device_name": "bedside tablet",
            "slots": [{
                "kind": "passphrase",
                "stretch": {"salt": SALT, "memory_kib": MEMORY, "passes": PASSES, "lanes": LANES},
                "kek": wrap(self.draws, slot_key, self.kek, "wrap key-encryption key", self.vault, slot),
            }],
            "signing": wrap(self.draws, self.kek, self.seed, "wrap signing seed", *owner),
            "exchange": wrap(self.draws, self.kek, self.exchange, "wrap exchange secret", *owner),
            "epochs": [{
                "number": 1,
                "key_id": self.epoch_id,
                "key": wrap(self.draws, self.kek, self.epoch_key, "wrap epoch key", *owner, u32(1), self.epoch_id),
            }],
        })
        return body

    def frame(self, purpose, key, key_id, name, payload, epoch=1):
        """Seals the next frame of the log."""
        self.sequence += 1
        padded = pad(payload)
        header = b"\x01\x01" + self.vault + self.id + self.sequence.to_bytes(8, "big") + self.previous
        header += u32(epoch) + key_id + bytes([purpose]) + u32(len(padded) + 16)
        assert len(header) == 99
        nonce = self.draws(24)
        content = derive(key, domain("content " + name, self.id, key_id))
        body = nonce + encrypt(padded, header, nonce, content)
        self.previous = sha(domain("frame hash", header, sha(body)))
        return header + body + self.signing.sign(domain("frame signature", self.previous))

    def draft(self, name_of, plain):
        name = derive(self.epoch_key, domain("draft name", self.id, name_of))[:16]
        prefix = b"\x01\x01" + self.epoch_id
        nonce = self.draws(24)
        content = derive(self.epoch_key, domain("content draft", self.id, self.epoch_id))
        about = domain("draft", self.vault, self.id, name, prefix)
        return name, prefix + nonce + encrypt(pad(plain), about, nonce, content)


def outer(body):
    return {"format": 1, "body": body, "sum": sha(domain("key file sum", body))}


def main():
    draws = Draws()
    device = Device(draws)
    slot_key = hash_secret_raw(PASSPHRASE.encode(), SALT, PASSES, MEMORY, LANES, 32, Type.ID)
    body = device.key_file(slot_key)
    write("keyfile/good", cbor2.dumps(outer(body)), "a key file as it was first released")

    epoch = (device.epoch_key, device.epoch_id)
    card = cbor2.dumps({"signing": device.public, "exchange": device.exchange_public, "name": "bedside tablet"})
    first = device.frame(1, *epoch, "introduction", card)
    person_id, person_key = draws(16), draws(32)
    payload = cbor2.dumps({"subject": b"\xaa" * 16, "key_id": person_id, "key": person_key})
    second = device.frame(2, *epoch, "person key", payload)
    third = device.frame(3, person_key, person_id, "person entry", b"right eye, 6/9")
    fourth = device.frame(3, *epoch, "entry", b"n" * 300)
    write("frame/good-1-introduction", first, "frame 1: the device introduces itself")
    write("frame/good-2-person-key", second, "frame 2: a person's key")
    write("frame/good-3-person-entry", third, "frame 3: an entry under that key: 'right eye, 6/9'")
    write("frame/good-4-entry", fourth, "frame 4: an entry under the epoch key, 300 times 'n', in the class of 512")
    name, draft = device.draft(b"exam 7, acuity", b"half a line")
    write("draft/name", name, "the keyed name of the draft of 'exam 7, acuity'")
    write("draft/good", draft, "that draft, sealed: 'half a line'")
    bad_frames(device, first, fourth)
    bad_key_files(body)
    other_device(device, person_id, person_key)


def other_device(device, person_id, person_key):
    """A second device of the same vault, which writes about the person whose key the first one made."""
    other = Device(device.draws)
    other.vault, other.epoch_id, other.epoch_key = device.vault, device.epoch_id, device.epoch_key
    epoch = (device.epoch_key, device.epoch_id)
    card = cbor2.dumps({"signing": other.public, "exchange": other.exchange_public, "name": "spare tablet"})
    introduction = other.frame(1, *epoch, "introduction", card)
    entry = other.frame(3, person_key, person_id, "person entry", b"left eye, 6/12")
    later = other.frame(9, *epoch, "something later", b"of a later version")
    write("frame/other-1-introduction", introduction, "frame 1 of a second device")
    write("frame/other-2-person-entry", entry, "its frame 2, under the key that the first device made: 'left eye, 6/12'")
    write("frame/other-3-later", later, "its frame 3, of a purpose that this version doesn't know")


def changed(frame, at, *new):
    return frame[:at] + bytes(new) + frame[at + len(new):]


def bad_frames(device, first, fourth):
    """One thing wrong in each. The note's first word is what the parser must say; `Unsigned` and `Opaque` parse."""
    for name, data, note in [
        ("empty", b"", "TooShort: nothing at all"),
        ("header-only", fourth[:99], "TooShort: cut after the header"),
        ("one-byte-short-of-the-shortest", first[:458], "TooShort: one byte less than the shortest frame"),
        ("cut-at-the-end", fourth[:-1], "Length: its last byte is missing"),
        ("a-byte-too-many", fourth + b"\0", "Length: a byte was added"),
        ("format-0", changed(fourth, 0, 0), "Format: format 0"),
        ("format-2", changed(fourth, 0, 2), "Format: a format of the future"),
        ("algorithm-0", changed(fourth, 1, 0), "Algorithm: algorithm 0"),
        ("algorithm-2", changed(fourth, 1, 2), "Algorithm: an algorithm of the future"),
        ("sequence-0", changed(fourth, 34, *bytes(8)), "Sequence: number 0"),
        ("first-with-previous", changed(first, 42, 1), "Previous: the first frame names a previous one"),
        ("later-without-previous", changed(fourth, 42, *bytes(32)), "Previous: frame 4 names none"),
        ("epoch-0", changed(fourth, 74, 0, 0, 0, 0), "Epoch: epoch 0"),
        ("purpose-0", changed(fourth, 94, 0), "Purpose: purpose 0"),
        ("length-0", changed(fourth, 95, 0, 0, 0, 0), "CiphertextLength: no ciphertext"),
        ("length-below-the-tag", changed(fourth, 95, 0, 0, 0, 15), "CiphertextLength: less than a tag"),
        ("length-between-classes", changed(fourth, 95, 0, 0, 2, 15), "CiphertextLength: no class"),
        ("length-of-another-class", changed(fourth, 95, 0, 0, 1, 16), "Length: the class below the right one"),
        ("length-at-its-most", changed(fourth, 95, 255, 255, 255, 255), "CiphertextLength: 4 GiB announced"),
        ("other-device", changed(fourth, 18, fourth[18] ^ 1), "Unsigned: another device's id"),
        ("other-vault", changed(fourth, 2, fourth[2] ^ 1), "Unsigned: another vault's id"),
        ("renumbered", changed(fourth, 34, 0, 0, 0, 0, 0, 0, 0, 5), "Unsigned: moved to number 5"),
        ("relinked", changed(fourth, 42, fourth[42] ^ 1), "Unsigned: linked to another frame"),
        ("other-purpose", changed(fourth, 94, 1), "Unsigned: an entry called an introduction"),
        ("nonce-bit", changed(fourth, 99, fourth[99] ^ 1), "Unsigned: a bit of the nonce"),
        ("ciphertext-bit", changed(fourth, 123, fourth[123] ^ 1), "Unsigned: a bit of the ciphertext"),
        ("tag-bit", changed(fourth, -65, fourth[-65] ^ 1), "Unsigned: a bit of the tag"),
        ("signature-bit", changed(fourth, -64, fourth[-64] ^ 1), "Unsigned: a bit of the signature"),
        ("wrong-key", resealed(device, "person entry", pad(b"x")), "Opaque: signed, under a key of another purpose"),
        ("length-lies", resealed(device, "entry", u32(300) + bytes(252)), "Opaque: longer than its class, it says"),
        ("padding-not-zero", resealed(device, "entry", u32(1) + b"xy" + bytes(250)), "Opaque: dirt in the padding"),
        ("class-too-large", resealed(device, "entry", u32(1) + b"x" + bytes(507)), "Opaque: a smaller class would do"),
    ]:
        write("frame/bad-" + name, data, note)


def resealed(device, name, padded):
    """A frame that is signed as it should be, with a plaintext that no honest device seals."""
    header = b"\x01\x01" + device.vault + device.id + (5).to_bytes(8, "big") + device.previous
    header += u32(1) + device.epoch_id + b"\x03" + u32(len(padded) + 16)
    nonce = b"\xee" * 24
    content = derive(device.epoch_key, domain("content " + name, device.id, device.epoch_id))
    body = nonce + encrypt(padded, header, nonce, content)
    hashed = sha(domain("frame hash", header, sha(body)))
    return header + body + device.signing.sign(domain("frame signature", hashed))


def bad_key_files(body):
    """The note's first word is what reading or unlocking must say."""
    inside = cbor2.loads(body)

    def with_inside(**fields):
        return cbor2.dumps(outer(cbor2.dumps({**inside, **fields})))

    def with_stretch(**fields):
        slot = inside["slots"][0]
        return with_inside(slots=[{**slot, "stretch": {**slot["stretch"], **fields}}])

    def flipped(wrapped):
        return {**wrapped, "wrapped": bytes([wrapped["wrapped"][0] ^ 1]) + wrapped["wrapped"][1:]}

    whole = outer(body)
    epoch = inside["epochs"][0]
    without = {name: value for name, value in inside.items() if name != "exchange"}
    for name, data, note in [
        ("empty", b"", "Damaged: nothing at all"),
        ("cut", cbor2.dumps(whole)[:-40], "Damaged: cut short"),
        ("not-cbor", b"\xff" * 64, "Damaged: something else"),
        ("no-sum", cbor2.dumps({"format": 1, "body": body}), "Damaged: without its sum"),
        ("a-bit", changed(cbor2.dumps(whole), 80, cbor2.dumps(whole)[80] ^ 1), "Damaged: one bit of the inside"),
        ("sum-bit", cbor2.dumps({**whole, "sum": bytes(32)}), "Damaged: the sum itself"),
        ("format-0", cbor2.dumps({**whole, "format": 0}), "Damaged: format 0"),
        ("format-2", cbor2.dumps({"format": 2, "everything": "else"}), "Newer: a format of the future"),
        ("no-slots", with_inside(slots=[]), "Damaged: no slot"),
        ("no-epochs", with_inside(epochs=[]), "Damaged: no epoch"),
        ("epoch-2-alone", with_inside(epochs=[{**epoch, "number": 2}]), "Damaged: the first epoch is missing"),
        ("no-exchange", cbor2.dumps(outer(cbor2.dumps(without))), "Damaged: without its exchange key"),
        ("short-vault", with_inside(vault=bytes(15)), "Damaged: a vault id of 15 bytes"),
        ("huge-memory", with_stretch(memory_kib=4294967295), "Damaged: 4 TiB to stretch"),
        ("no-passes", with_stretch(passes=0), "Damaged: no pass"),
        ("little-memory", with_stretch(memory_kib=8191), "Damaged: too cheap to be ours"),
        ("other-salt", with_stretch(salt=bytes(16)), "WrongPassphrase: a slot with another salt, its sum made to fit"),
        ("more-passes", with_stretch(passes=2), "WrongPassphrase: a slot with other numbers, its sum made to fit"),
        ("other-vault", with_inside(vault=bytes(16)), "WrongPassphrase: a slot of another vault, its sum made to fit"),
        ("signing-bit", with_inside(signing=flipped(inside["signing"])), "Keys: the signing key doesn't open"),
        ("exchange-bit", with_inside(exchange=flipped(inside["exchange"])), "Keys: the exchange key doesn't open"),
        ("epoch-bit", with_inside(epochs=[{**epoch, "key": flipped(epoch["key"])}]), "Keys: an epoch doesn't open"),
        ("other-device", with_inside(device=bytes(16)), "Keys: everything is another device's"),
        ("swapped", with_inside(signing=inside["exchange"], exchange=inside["signing"]), "Keys: two wraps exchanged"),
    ]:
        write("keyfile/bad-" + name, data, note)
    more = {**inside, "later": [1, 2, 3]}
    write("keyfile/good-with-more", cbor2.dumps({**outer(cbor2.dumps(more)), "later": "x"}), "fields of a later version")


main()
