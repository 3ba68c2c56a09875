"""A second implementation of the carry file, written from the layout in the documentation of `sync::carry`, so that the
golden files are not this code checking itself. The frames are the vault's frozen ones.

    python3 second.py        writes the .hex files beside it; a frozen file that would change is an error
"""
import hashlib
import pathlib
import sys

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

HERE = pathlib.Path(__file__).parent
FRAMES = HERE / "../../vault/golden/frame"


def frame(name):
    lines = (FRAMES / (name + ".hex")).read_text().splitlines()[1:]
    return bytes.fromhex("".join(lines))


def public(device):
    """The frozen devices' seeds are one ordinal number, repeated; which, their id tells."""
    for ordinal in range(1, 256):
        key = Ed25519PrivateKey.from_private_bytes(bytes([ordinal]) * 32).public_key().public_bytes_raw()
        if hashlib.sha256(key).digest()[:16] == device:
            return key
    sys.exit("no such device")


def log(frames, key=None, count=None):
    key = key or public(frames[0][18:34])
    count = len(frames) if count is None else count
    body = b"".join(len(one).to_bytes(4, "big") + one for one in frames)
    return key + count.to_bytes(4, "big") + body


def carry(logs, vault, count=None, form=1, magic=b"lightround carry", after=b""):
    count = len(logs) if count is None else count
    body = magic + bytes([form]) + vault + count.to_bytes(2, "big") + b"".join(logs) + after
    return body + summed(body)


def summed(body):
    return hashlib.sha256(b"lightround v1 carry sum\0" + body).digest()


def statement(vault, number, previous, about, role, lead):
    """A statement of the roll that admits a device: see docs/formats.md of the vault."""
    by = lead.public_key().public_bytes_raw()
    body = bytes([1, 1]) + vault + number.to_bytes(8, "big") + previous + about + bytes([role]) + bytes(8) + by
    made = hashlib.sha256(b"lightround v1 roll hash\0" + body).digest()
    return body + lead.sign(b"lightround v1 roll signature\0" + made), made


def roll(statements, count=None):
    count = len(statements) if count is None else count
    return count.to_bytes(2, "big") + b"".join(statements)


def signing(device):
    for ordinal in range(1, 256):
        key = Ed25519PrivateKey.from_private_bytes(bytes([ordinal]) * 32)
        if key.public_key().public_bytes_raw() == public(device):
            return key
    sys.exit("no such device")


def write(name, data, note):
    path = HERE / "carry" / (name + ".hex")
    lines = [data.hex()[at:at + 96] for at in range(0, len(data.hex()), 96)]
    text = "# " + note + "\n" + "\n".join(lines) + "\n"
    if path.exists() and path.read_text() != text:
        sys.exit(f"{name} is frozen and would change")
    path.write_text(text)


def flip(data, at):
    return data[:at] + bytes([data[at] ^ 1]) + data[at + 1:]


def main():
    own = [frame(name) for name in ("good-1-introduction", "good-2-person-key", "good-3-person-entry", "good-4-entry")]
    other = [frame(name) for name in ("other-1-introduction", "other-2-person-entry", "other-3-later")]
    vault = own[0][2:18]
    pair = sorted([own, other], key=lambda frames: frames[0][18:34])
    logs = [log(frames) for frames in pair]
    good = carry(logs, vault)
    write("good", good, "both devices' logs")
    write("good-other", carry([log(other)], vault), "the second device's log")
    write("good-later", carry([log(other[1:])], vault), "the second device's log without its first frame")

    write("bad-empty", b"", "NotCarry: nothing at all")
    write("bad-magic", carry(logs, vault, magic=b"Lightround carry"), "NotCarry: another first word")
    write("bad-letter", b"dear colleague, the drops are in the bag", "NotCarry: something else")
    write("bad-first-word", good[:9], "Damaged: cut within the first word")
    write("bad-after-first-word", good[:16], "Damaged: cut after the first word")
    write("bad-format-0", carry(logs, vault, form=0), "Format: 0")
    write("bad-format-2", carry(logs, vault, form=2), "Format: a later one")
    write("bad-header-only", good[:35], "Damaged: cut after the header")
    write("bad-cut", good[:-1], "Damaged: the last byte is missing")
    write("bad-cut-in-half", good[:len(good) // 2], "Damaged: half of it")
    write("bad-longer", good + b"\0", "Damaged: a byte too many")
    write("bad-bit-in-vault", flip(good, 20), "Damaged: one bit of the vault's id")
    write("bad-bit-in-frame", flip(good, 300), "Damaged: one bit of a frame")
    write("bad-bit-in-sum", flip(good, len(good) - 1), "Damaged: one bit of the sum")

    write("bad-no-logs", carry([], vault), "Senseless: no log")
    write("bad-logs-lie-more", carry(logs, vault, count=3), "Senseless: a log fewer than announced")
    write("bad-logs-lie-fewer", carry(logs, vault, count=1), "Senseless: a log more than announced")
    write("bad-order", carry(logs[::-1], vault), "Senseless: the logs in another order")
    write("bad-twice", carry([logs[0], logs[0]], vault), "Senseless: the same log twice")
    write("bad-no-frames", carry([log([], key=public(own[0][18:34]))], vault), "Senseless: a log without frames")
    write("bad-frames-lie", carry([log(own, count=2 ** 32 - 1)], vault), "Senseless: more frames announced than there are")
    write("bad-weak-key", carry([log(own, key=bytes(32))], vault), "Senseless: a key that is none")
    short = log(own[:1])
    write("bad-length-lies", carry([flip(short, 39)], vault), "Senseless: a frame's length that is one off")
    write("bad-length-huge", carry([short[:36] + b"\xff\xff\xff\xff" + short[40:]], vault), "Senseless: a frame longer than the file")
    write("bad-no-frame", carry([log([b"no frame at all"], key=public(own[0][18:34]))], vault), "Senseless: something that is no frame")

    write("bad-gap", carry([log([own[0], own[2]])], vault), "Forged: a frame left out in the middle")
    write("bad-reordered", carry([log([own[0], own[2], own[1], own[3]])], vault), "Forged: two frames exchanged")
    write("bad-repeated", carry([log([own[0], own[0]])], vault), "Forged: the same frame twice")
    write("bad-signature", carry([log([own[0][:-1] + bytes([own[0][-1] ^ 1])])], vault), "Forged: one bit of a signature")
    write("bad-header", carry([log([flip(own[0], 80)])], vault), "Forged: one bit of the id of a frame's key")
    write("bad-other-key", carry([log(own, key=public(other[0][18:34]))], vault), "Forged: under another device's key")
    write("bad-mixed", carry([log([own[0], other[1]])], vault), "Forged: another device's frame among them")
    write("bad-vault", carry(logs, bytes(16)), "Forged: frames of another vault than the file says")

    lead = signing(own[0][18:34])
    first, made = statement(vault, 1, bytes(32), public(own[0][18:34]), 3, lead)
    second, _ = statement(vault, 2, made, public(other[0][18:34]), 2, lead)
    both = roll([first, second])
    write("good-roll", carry(logs, vault, form=3, after=both), "both devices' logs, and the roll that has both")
    write("bad-roll-none", carry(logs, vault, form=3), "Senseless: a roll is announced and isn't there")
    write("bad-roll-empty", carry(logs, vault, form=3, after=roll([])), "Senseless: a roll without statements")
    write("bad-roll-lies-more", carry(logs, vault, form=3, after=roll([first, second], 3)), "Senseless: a statement fewer than announced")
    write("bad-roll-lies-fewer", carry(logs, vault, form=3, after=roll([first, second], 1)), "Senseless: a statement more than announced")
    write("bad-roll-cut", carry(logs, vault, form=3, after=both[:-1]), "Senseless: a statement that is a byte short")
    write("bad-roll-no-statement", carry(logs, vault, form=3, after=roll([bytes(195)])), "Senseless: something that is no statement")
    write("bad-roll-in-format-1", carry(logs, vault, after=both), "Senseless: a roll where the format has none")
    write("bad-roll-alone", carry([], vault, form=3, after=both), "Senseless: a roll, and no log")
    write("bad-format-4", carry(logs, vault, form=4, after=both), "Format: a later one")


main()
