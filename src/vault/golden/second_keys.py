"""A second implementation of what more than one device needs: slots, checkpoints, enrolment, epochs, erasures.

    python3 second_keys.py        writes the .hex files beside it; a frozen file that would change is an error
"""
import hmac

import cbor2
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey, X25519PublicKey
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305

import second
from second import Device, Draws, derive, domain, encrypt, outer, sha, u32, wrap, write

SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def u64(number):
    return number.to_bytes(8, "big")


def founded():
    """The founding device, with the draws as they stand after it; and its key file's inside."""
    draws = Draws()
    device = Device(draws)
    slot_key = second.hash_secret_raw(second.PASSPHRASE.encode(), second.SALT, second.PASSES, second.MEMORY,
                                      second.LANES, 32, second.Type.ID)
    return device, cbor2.loads(device.key_file(slot_key))


# Slots

def times(one, other):
    """In GF(32), modulo x^5 + x^2 + 1, by long multiplication."""
    product = 0
    for bit in range(5):
        if other >> bit & 1:
            product ^= one << bit
    for bit in range(8, 4, -1):
        if product >> bit & 1:
            product ^= 0b100101 << (bit - 5)
    return product


def power(exponent):
    result = 1
    for _ in range(exponent):
        result = times(result, 2)
    return result


def recovery_code(draw):
    numbers = [byte & 31 for byte in draw]
    total = 0
    for place, number in enumerate(numbers):
        total ^= times(number, power(place))
    [check] = [number for number in range(32) if times(number, power(27)) == total]
    return "".join(SIGNS[number] for number in numbers + [check])


def public(secret):
    return X25519PrivateKey.from_private_bytes(secret).public_key().public_bytes_raw()


def slots():
    device, inside = founded()
    draws = Draws()
    draws.count = 40
    vault, kek, owner = device.vault, device.kek, (device.vault, device.id)
    code = recovery_code(draws(27))
    write("slots/code", code.encode(), "the recovery code of the key files here, in ASCII: " + code)
    slot_key = derive(code.encode(), domain("recovery slot", vault))
    recovery = {"kind": "recovery", "kek": wrap(draws, slot_key, kek, "wrap key-encryption key", vault, b"recovery\0")}
    exchange = public(derive(code.encode(), domain("recovery exchange", vault)))
    marked = wrap(draws, kek, exchange, "wrap recovery key", *owner)
    identity, salt, secret = b"credential of the tablet", b"\x51" * 32, b"\x52" * 32
    slot_key = derive(secret, domain("platform slot", vault))
    kek_wrap = wrap(draws, slot_key, kek, "wrap key-encryption key", vault, b"platform\0" + salt + identity)
    platform = {"kind": "platform", "id": identity, "salt": salt, "kek": kek_wrap}
    [passphrase] = inside["slots"]

    def with_slots(*all_slots, **fields):
        return cbor2.dumps(outer(cbor2.dumps({**inside, "slots": list(all_slots), "recovery": marked, **fields})))

    def flipped(wrapped):
        return {**wrapped, "wrapped": bytes([wrapped["wrapped"][0] ^ 1]) + wrapped["wrapped"][1:]}

    def without(slot, name):
        return {key: value for key, value in slot.items() if key != name}

    later = {"kind": "something else", "what": b"of a later version"}
    write("slots/good", with_slots(passphrase, recovery, platform), "a passphrase, a recovery code, a platform")
    write("slots/good-with-later", with_slots(passphrase, later), "a slot of a kind that came later")
    for name, data, note in [
        ("no-passphrase", with_slots(recovery, platform), "Damaged: no passphrase opens it"),
        ("platform-alone", with_slots(platform), "Damaged: a platform as the only slot"),
        ("later-alone", with_slots(later), "Damaged: a later version's slot as the only one"),
        ("no-kind", with_slots(passphrase, without(recovery, "kind")), "Damaged: a slot without a kind"),
        ("kind-no-text", with_slots(passphrase, {**recovery, "kind": 7}), "Damaged: a kind that is a number"),
        ("no-map", with_slots(passphrase, 7), "Damaged: a slot that is a number"),
        ("no-kek", with_slots(passphrase, without(recovery, "kek")), "Damaged: a recovery slot with nothing in it"),
        ("no-salt", with_slots(passphrase, without(platform, "salt")), "Damaged: a platform's slot without its salt"),
        ("short-salt", with_slots(passphrase, {**platform, "salt": bytes(31)}), "Damaged: a salt of 31 bytes"),
        ("id-no-bytes", with_slots(passphrase, {**platform, "id": 7}), "Damaged: a credential that is a number"),
        ("recovery-short", with_slots(passphrase, recovery=b"\0" * 32), "Damaged: the recovery key unwrapped"),
        ("cheap-second-passphrase", with_slots(passphrase, {**passphrase, "stretch": {**passphrase["stretch"], "passes": 0}}),
         "Damaged: a second passphrase that is stretched as none is"),
        ("recovery-bit", with_slots(passphrase, {**recovery, "kek": flipped(recovery["kek"])}, platform),
         "WrongRecovery: a bit of the recovery slot, its sum made to fit"),
        ("no-recovery", with_slots(passphrase, platform), "WrongRecovery: there is no such slot"),
        ("platform-bit", with_slots(passphrase, recovery, {**platform, "kek": flipped(kek_wrap)}),
         "WrongPlatform: a bit of the platform's slot, its sum made to fit"),
        ("other-credential", with_slots(passphrase, recovery, {**platform, "id": b"another"}),
         "WrongPlatform: the same wrap under another credential"),
        ("other-salt", with_slots(passphrase, recovery, {**platform, "salt": bytes(32)}),
         "WrongPlatform: the same wrap under another salt"),
        ("swapped", with_slots(passphrase, {**recovery, "kek": kek_wrap}, {**platform, "kek": recovery["kek"]}),
         "WrongRecovery: two wraps exchanged"),
        ("marked-bit", with_slots(passphrase, recovery, platform, recovery=flipped(marked)),
         "Keys: the recovery key doesn't open"),
        ("marked-other", with_slots(passphrase, recovery, platform, recovery=inside["exchange"]),
         "Keys: another wrap in place of the recovery key"),
    ]:
        write("slots/bad-" + name, data, note)


# HPKE, base mode: RFC 9180, sections 4 and 5, for DHKEM(X25519, HKDF-SHA256), HKDF-SHA256, ChaCha20-Poly1305

KEM, SUITE = b"KEM\0\x20", b"HPKE\0\x20\0\x01\0\x03"


def labeled_extract(suite, salt, label, ikm):
    return hmac.digest(salt or bytes(32), b"HPKE-v1" + suite + label + ikm, "sha256")


def labeled_expand(suite, prk, label, info, length):
    labeled = length.to_bytes(2, "big") + b"HPKE-v1" + suite + label + info
    out, block = b"", b""
    while len(out) < length:
        block = hmac.digest(prk, block + labeled + bytes([len(out) // 32 + 1]), "sha256")
        out += block
    return out[:length]


def hpke_seal(to, info, aad, plain, drawn):
    secret = labeled_expand(KEM, labeled_extract(KEM, b"", b"dkp_prk", drawn), b"sk", b"", 32)
    enc = public(secret)
    dh = X25519PrivateKey.from_private_bytes(secret).exchange(X25519PublicKey.from_public_bytes(to))
    shared = labeled_expand(KEM, labeled_extract(KEM, b"", b"eae_prk", dh), b"shared_secret", enc + to, 32)
    context = b"\0" + labeled_extract(SUITE, b"", b"psk_id_hash", b"") + labeled_extract(SUITE, b"", b"info_hash", info)
    secret = labeled_extract(SUITE, shared, b"secret", b"")
    key = labeled_expand(SUITE, secret, b"key", context, 32)
    nonce = labeled_expand(SUITE, secret, b"base_nonce", context, 12)
    return enc, ChaCha20Poly1305(key).encrypt(nonce, plain, aad)


def ordinals(count):
    draws = Draws()
    draws.count = count
    return draws


# Checkpoints

def checkpoint():
    device, _ = founded()
    draws = ordinals(110)
    plain = bytes(range(256)) * 300
    prefix = draws(19)

    def sealed(plain, header=b"\x01\x01" + device.epoch_id, chunk=65536, whose=device.id, lasts=None):
        header += prefix
        key = derive(device.epoch_key, domain("content checkpoint", device.id, device.epoch_id))
        about = domain("checkpoint", device.vault, whose, header)
        chunks = [plain[at:at + chunk] for at in range(0, len(plain), chunk)] or [b""]
        pieces = []
        for number, part in enumerate(chunks):
            last = number == len(chunks) - 1 if lasts is None else lasts[number]
            pieces.append(encrypt(part, about, prefix + u32(number) + bytes([last]), key))
        return [header + pieces[0]] + pieces[1:]

    def listed(pieces):
        return cbor2.dumps(pieces)

    good = sealed(plain)
    write("checkpoint/good", listed(good), "76,800 bytes in two chunks: a list of its pieces, in CBOR")
    write("checkpoint/good-empty", listed(sealed(b"")), "nothing at all, in one empty chunk")
    flip = lambda piece, at: piece[:at] + bytes([piece[at] ^ 1]) + piece[at + 1:]
    for name, pieces, note in [
        ("none", [], "Opaque: no piece"),
        ("empty", [b""], "Opaque: an empty piece"),
        ("header-only", [good[0][:37]], "Opaque: a header and no chunk"),
        ("format-2", sealed(b"x", b"\x02\x01" + device.epoch_id), "Format: a format of the future"),
        ("algorithm-2", sealed(b"x", b"\x01\x02" + device.epoch_id), "Format: an algorithm of the future"),
        ("other-key", sealed(b"x", b"\x01\x01" + bytes(16)), "UnknownKey: a key that is not here"),
        ("first-alone", good[:1], "Opaque: the last chunk is missing"),
        ("last-alone", good[1:], "Format: the first chunk is missing"),
        ("exchanged", [good[0][:37] + good[1], good[0][37:]], "Opaque: two chunks exchanged"),
        ("twice", good + good[1:], "Opaque: the last chunk twice"),
        ("short-chunk", sealed(b"x" * 200, chunk=100), "Opaque: a chunk that is not the last and not whole"),
        ("early-last", sealed(plain, lasts=[True, True]), "Opaque: the first chunk says that it is the last"),
        ("never-last", sealed(plain, lasts=[False, False]), "Opaque: no chunk says that it is the last"),
        ("other-device", sealed(b"x", whose=bytes(16)), "Opaque: another device's"),
        ("bit", [flip(good[0], 5000), good[1]], "Opaque: one bit"),
        ("tag-bit", [good[0], flip(good[1], len(good[1]) - 1)], "Opaque: one bit of the last tag"),
        ("nonce-bit", [flip(good[0], 20), good[1]], "Opaque: one bit of the nonces' beginning"),
    ]:
        write("checkpoint/bad-" + name, listed(pieces), note)


# Enrolment

def statement(number, previous, vault, about, role, by):
    signed = b"\x01\x01" + vault + u64(number) + previous + about + bytes([role]) + u64(0)
    signed += by.public_key().public_bytes_raw()
    hashed = sha(domain("roll hash", signed))
    return signed + by.sign(domain("roll signature", hashed)), hashed


def enrolment():
    device, _ = founded()
    vault, lead = device.vault, device.signing
    draws = ordinals(60)
    seed, exchange, nonce = draws(32), draws(32), draws(16)
    signing = Ed25519PrivateKey.from_private_bytes(seed).public_key().public_bytes_raw()
    name = "clinic laptop".encode()
    request = b"\x01\x01" + signing + public(exchange) + sha(domain("enrolment commitment", nonce)) + bytes([len(name)]) + name
    offer = b"\x01\x02" + vault + device.public + ordinals(70)(16)
    reveal = b"\x01\x03" + nonce
    dialogue = sha(domain("enrolment dialogue", sha(request), sha(offer), sha(reveal)))
    words = (second.HERE.parent / "src/words.txt").read_text().split()
    drawn = sha(domain("enrolment phrase", dialogue))
    phrase = " ".join(words[int.from_bytes(drawn[at:at + 8], "big") % len(words)] for at in range(0, 32, 8))
    first, hashed = statement(1, bytes(32), vault, device.public, 3, lead)
    admitted, _ = statement(2, hashed, vault, signing, 2, lead)
    payload = {
        "epochs": [{"number": 1, "key_id": device.epoch_id, "roll": 0, "key": device.epoch_key}],
        "roll": [first, admitted],
        "recovery": None,
        "relay": "https://relay.example",
    }

    def packet(plain, drawn=b"\x51" * 32, signer=lead, dialogue=dialogue, to=public(exchange), aad=b"\x01\x04"):
        enc, sealed = hpke_seal(to, domain("enrolment packet", dialogue), aad, plain, drawn)
        signature = signer.sign(domain("enrolment signature", dialogue, enc, sha(sealed)))
        return b"\x01\x04" + enc + signature + sealed

    good = packet(cbor2.dumps(payload))
    write("enrolment/good-1-request", request, "a device asks to come in")
    write("enrolment/good-2-offer", offer, "the golden vault's lead answers")
    write("enrolment/good-3-reveal", reveal, "the device's nonce")
    write("enrolment/good-4-packet", good, "everything that the device needs")
    write("enrolment/phrase", phrase.encode(), "what both show, in ASCII: " + phrase)
    without = lambda name: cbor2.dumps({key: value for key, value in payload.items() if key != name})
    other = Ed25519PrivateKey.from_private_bytes(b"\x77" * 32)
    epoch = payload["epochs"][0]
    for name, data, note in [
        ("1-empty", b"", "Damaged: nothing at all"),
        ("1-format-2", b"\x02" + request[1:], "Format: a format of the future"),
        ("1-other", offer, "OtherMessage: an offer in place of a request"),
        ("1-number-9", b"\x01\x09" + request[2:], "Damaged: no such message"),
        ("1-cut", request[:-1], "Damaged: the name cut short"),
        ("1-longer", request + b"x", "Damaged: something after the name"),
        ("1-no-name", request[:98] + b"\0", "Damaged: an empty name"),
        ("1-long-name", request[:98] + bytes([61]) + b"n" * 61, "Damaged: a name that is too long"),
        ("1-name-no-text", request[:99] + b"\xff" * len(name), "Damaged: a name that is no UTF-8"),
        ("1-weak-key", request[:2] + bytes(32) + request[34:], "Damaged: a public key that is none"),
        ("2-cut", offer[:-1], "Damaged: cut short"),
        ("2-longer", offer + b"\0", "Damaged: something after its end"),
        ("2-weak-key", offer[:18] + bytes(32) + offer[50:], "Damaged: a public key that is none"),
        ("3-cut", reveal[:-1], "Damaged: cut short"),
        ("3-longer", reveal + b"\0", "Damaged: something after its end"),
        ("3-bit", reveal[:-1] + bytes([reveal[-1] ^ 1]), "Commitment: another nonce"),
        ("4-cut", good[:60], "Damaged: cut within the signature"),
        ("4-no-ciphertext", good[:98], "NotForUs: nothing sealed"),
        ("4-bit", good[:-1] + bytes([good[-1] ^ 1]), "NotForUs: one bit"),
        ("4-other-signer", packet(cbor2.dumps(payload), signer=other), "NotForUs: signed by another device"),
        ("4-other-dialogue", packet(cbor2.dumps(payload), dialogue=bytes(32)), "NotForUs: of another enrolment"),
        ("4-other-device", packet(cbor2.dumps(payload), to=public(b"\x78" * 32)), "NotForUs: sealed to another device"),
        ("4-other-place", packet(cbor2.dumps(payload), aad=b"\x01\x03"), "NotForUs: sealed as another message"),
        ("4-not-cbor", packet(b"\xff" * 40), "Senseless: signed and sealed nonsense"),
        ("4-no-epochs", packet(without("epochs")), "Senseless: without keys"),
        ("4-empty-epochs", packet(cbor2.dumps({**payload, "epochs": []})), "Senseless: with no key"),
        ("4-epoch-2-alone", packet(cbor2.dumps({**payload, "epochs": [{**epoch, "number": 2}]})), "Senseless: without the first epoch"),
        ("4-short-key", packet(cbor2.dumps({**payload, "epochs": [{**epoch, "key": bytes(31)}]})), "Senseless: a key of 31 bytes"),
        ("4-no-roll", packet(without("roll")), "Senseless: without a roll"),
        ("4-empty-roll", packet(cbor2.dumps({**payload, "roll": []})), "Senseless: with an empty roll"),
        ("4-not-admitted", packet(cbor2.dumps({**payload, "roll": [first]})), "Senseless: a roll without the device"),
        ("4-bad-statement", packet(cbor2.dumps({**payload, "roll": [first, admitted[:-1]]})), "Senseless: a statement that is cut"),
        ("4-roll-order", packet(cbor2.dumps({**payload, "roll": [admitted, first]})), "Roll: a roll that doesn't hold together"),
    ]:
        write("enrolment/bad-" + name, data, note)


# Epochs and erasures: frame 5 of the golden log

def fifth():
    """The golden device, after its four frames."""
    device, _ = founded()
    frame = bytes.fromhex("".join((second.HERE / "frame/good-4-entry.hex").read_text().split("\n")[1:]))
    device.sequence = 4
    device.previous = sha(domain("frame hash", frame[:99], sha(frame[99:-64])))
    return device


def open_frame(purpose, name, number, key_id, plain, nonce, vault=None, content_name=None, derived=None):
    device = fifth()
    vault = vault or device.vault
    padded = second.pad(plain)
    header = b"\x01\x01" + vault + device.id + u64(5) + device.previous
    header += u32(number) + key_id + bytes([purpose]) + u32(len(padded) + 16)
    content = derive(vault, domain("content " + (content_name or name), device.id, derived or key_id))
    body = nonce + encrypt(padded, header, nonce, content)
    hashed = sha(domain("frame hash", header, sha(body)))
    return header + body + device.signing.sign(domain("frame signature", hashed))


def epochs():
    device, _ = founded()
    draws = ordinals(90)
    vault, key_id, key = device.vault, draws(16), draws(32)
    to, recovery = public(b"\x21" * 32), public(b"\x22" * 32)
    info = domain("epoch box", vault, u32(2), key_id, u64(3))
    boxes = []
    for each in (to, recovery):
        enc, sealed = hpke_seal(each, info, b"", key, draws(32))
        boxes.append({"to": each, "enc": enc, "sealed": sealed})
    about = vault + key_id + u32(1) + device.epoch_id + u64(0)
    outer_key = derive(key, domain("epoch wrap", vault))
    wrapped = wrap(draws, outer_key, device.epoch_key, "wrap older epoch", about)
    older = {"number": 1, "key_id": device.epoch_id, "roll": 0, "key": wrapped}
    payload = {
        "number": 2, "key_id": key_id, "roll": 3,
        "check": derive(key, domain("epoch check", vault)),
        "boxes": boxes, "recovery": recovery, "older": [older],
    }
    nonce = draws(24)

    def frame(payload=payload, number=2, header_key=key_id, **more):
        plain = payload if isinstance(payload, bytes) else cbor2.dumps(payload)
        return open_frame(4, "epoch", number, header_key, plain, nonce, **more)

    def boxed(**fields):
        return frame({**payload, "boxes": [{**boxes[0], **fields}, boxes[1]]})

    def rewrapped(number, identity, roll, inner):
        rebound = vault + key_id + u32(number) + identity + u64(roll)
        again = wrap(ordinals(120), outer_key, inner, "wrap older epoch", rebound)
        return {"number": number, "key_id": identity, "roll": roll, "key": again}

    flip = lambda data: bytes([data[0] ^ 1]) + data[1:]
    without = lambda name: {key: value for key, value in payload.items() if key != name}
    other = domain("epoch box", vault, u32(2), key_id, u64(4))
    enc, sealed = hpke_seal(to, other, b"", key, b"\x7a" * 32)
    enc_short, sealed_short = hpke_seal(to, info, b"", key[:31], b"\x7b" * 32)
    enc_lie, sealed_lie = hpke_seal(to, info, b"", bytes(32), b"\x7c" * 32)
    write("epoch/good", frame(), "frame 5: epoch 2, sealed to two keys, carrying epoch 1")
    write("epoch/good-with-more", frame({**payload, "later": "x"}), "with a field of a later version")
    for name, data, note in [
        ("not-cbor", frame(b"\xff" * 40), "Opaque: nonsense"),
        ("no-boxes", frame(without("boxes")), "Opaque: without its boxes"),
        ("no-check", frame(without("check")), "Opaque: without its check"),
        ("other-number", frame({**payload, "number": 3}), "Opaque: another number than the header's"),
        ("other-key-id", frame({**payload, "key_id": bytes(16)}), "Opaque: another key than the header's"),
        ("check-bit", frame({**payload, "check": flip(payload["check"])}), "Opaque: the check fits no key"),
        ("box-bit", boxed(sealed=flip(boxes[0]["sealed"])), "Opaque: one bit of a box"),
        ("enc-bit", boxed(enc=flip(boxes[0]["enc"])), "Opaque: one bit of an encapsulated key"),
        ("box-of-other-roll", boxed(enc=enc, sealed=sealed), "Opaque: a box that was sealed for another roll"),
        ("short-key", boxed(enc=enc_short, sealed=sealed_short), "Opaque: a key of 31 bytes"),
        ("other-key", boxed(enc=enc_lie, sealed=sealed_lie), "Opaque: another key than the check's"),
        ("older-bit", frame({**payload, "older": [{**older, "key": {**wrapped, "wrapped": flip(wrapped["wrapped"])}}]}),
         "Opaque: one bit of an older key"),
        ("older-renamed", frame({**payload, "older": [{**older, "roll": 1}]}), "Opaque: an older key under another roll"),
        ("no-older", frame({**payload, "older": []}), "Opaque: it carries no key that is known"),
        ("older-lies", frame({**payload, "older": [rewrapped(1, device.epoch_id, 0, bytes(32))]}),
         "Opaque: it carries another key for the first epoch"),
        ("older-is-newer", frame({**payload, "older": [older, rewrapped(1000, b"\x0b" * 16, 9, bytes(32))]}),
         "Opaque: it carries one that would be written under before it"),
        ("other-seal", frame(content_name="erasure"), "Opaque: its outer seal is an erasure's"),
        ("other-vault", frame(vault=b"\x0e" * 16), "OtherVault: another vault's"),
        ("not-ours", frame({**payload, "boxes": boxes[1:]}), "NotOurs: not sealed to the device that reads it"),
    ]:
        write("epoch/bad-" + name, data, note)


def erasures():
    device = fifth()
    nonce = ordinals(100)(24)
    erased = {"id": b"\x0c" * 16, "device": device.id, "sequence": 2}
    payload = {"subject": b"\xaa" * 16, "at": 1772600000000, "keys": [erased]}

    def frame(payload=payload, **more):
        plain = payload if isinstance(payload, bytes) else cbor2.dumps(payload)
        return open_frame(5, "erasure", 1, device.epoch_id, plain, nonce, **more)

    without = lambda name: {key: value for key, value in payload.items() if key != name}
    write("erasure/good", frame(), "frame 5: the person of frames 2 and 3 is erased")
    third = bytes.fromhex("".join((second.HERE / "frame/good-3-person-entry.hex").read_text().split("\n")[1:]))
    emptied = b"\x81" + third[:99] + sha(third[99:-64]) + third[-64:]
    write("erasure/good-emptied", emptied, "what stays of frame 3")
    for name, data, note in [
        ("not-cbor", frame(b"\xff" * 40), "Opaque: nonsense"),
        ("no-subject", frame(without("subject")), "Opaque: without whom"),
        ("short-subject", frame({**payload, "subject": bytes(15)}), "Opaque: whom in 15 bytes"),
        ("no-at", frame(without("at")), "Opaque: without when"),
        ("negative-at", frame({**payload, "at": -1}), "Opaque: before 1970"),
        ("at-text", frame({**payload, "at": "today"}), "Opaque: when as a text"),
        ("no-keys", frame(without("keys")), "Opaque: without keys"),
        ("keys-no-list", frame({**payload, "keys": erased}), "Opaque: a key in place of a list"),
        ("short-key", frame({**payload, "keys": [{**erased, "id": bytes(15)}]}), "Opaque: a key id of 15 bytes"),
        ("no-device", frame({**payload, "keys": [{"id": bytes(16), "sequence": 2}]}), "Opaque: a key in nobody's log"),
        ("other-seal", frame(content_name="epoch"), "Opaque: its outer seal is an epoch's"),
        ("other-key-id", frame(derived=bytes(16)), "Opaque: its outer seal is for another key id"),
        ("other-vault", frame(vault=b"\x0e" * 16), "OtherVault: another vault's"),
        ("emptied-cut", emptied[:-1], "Length: what stays of a frame, cut short"),
        ("emptied-longer", emptied + b"\0", "Length: what stays of a frame, with a byte more"),
        ("emptied-hash-bit", emptied[:100] + bytes([emptied[100] ^ 1]) + emptied[101:], "Unsigned: another content's hash"),
        ("emptied-header-bit", emptied[:20] + bytes([emptied[20] ^ 1]) + emptied[21:], "Unsigned: another device's"),
    ]:
        write("erasure/bad-" + name, data, note)


def main():
    for folder in ("slots", "checkpoint", "enrolment", "epoch", "erasure"):
        (second.HERE / folder).mkdir(exist_ok=True)
    slots()
    checkpoint()
    enrolment()
    epochs()
    erasures()


if __name__ == "__main__":
    main()
