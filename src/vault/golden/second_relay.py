"""A second implementation of what a vault and a relay say to each other: the roll, signed requests, invitations. Written
from the layouts in docs/formats.md and on another library (cryptography 48), so that the golden files are not this code
checking itself.

    python3 second_relay.py        writes the files beside it; a frozen file that would change is an error
"""
import hashlib
import pathlib
import sys

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

HERE = pathlib.Path(__file__).parent
VAULT = bytes([0x0A]) * 16
ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def domain(name, *parts):
    return b"lightround v1 " + name.encode() + b"\0" + b"".join(parts)


def sha(data):
    return hashlib.sha256(data).digest()


def u64(number):
    return number.to_bytes(8, "big")


def signer(byte):
    return Ed25519PrivateKey.from_private_bytes(bytes([byte]) * 32)


def public(key):
    return key.public_key().public_bytes_raw()


def statement(number, previous, about, change, role, last, by):
    body = bytes([1, change]) + VAULT + u64(number) + previous + public(about) + bytes([role]) + u64(last) + public(by)
    made = sha(domain("roll hash", body))
    return body + by.sign(domain("roll signature", made)), made


def freeze(name, text):
    file = HERE / name
    file.parent.mkdir(exist_ok=True)
    if file.exists() and file.read_text() != text:
        sys.exit(f"{file.name} is frozen and would change")
    file.write_text(text)


def rows(data):
    digits = data.hex()
    return "\n".join(digits[at:at + 64] for at in range(0, len(digits), 64))


def roll():
    lead, other = signer(1), signer(2)
    first, made = statement(1, bytes(32), lead, 1, 3, 0, lead)
    second, made_then = statement(2, made, other, 1, 2, 0, lead)
    third, _ = statement(3, made_then, other, 2, 0, 7, lead)
    for name, note, data in [
        ("1-founded", "the device of seed 01… founds the vault 0a… and is its lead", first),
        ("2-admitted", "it admits the device of seed 02… as a clinician", second),
        ("3-removed", "it removes that device; its first 7 frames count", third),
    ]:
        freeze(f"roll/{name}.hex", f"{note}\n{rows(data)}\n")


def request():
    key, time, nonce = signer(1), 1_700_000_000_123, bytes(range(16))
    method, path, body = "POST", f"/relay/v1/vaults/{VAULT.hex()}/heads", bytes.fromhex("a2677665727369")
    said = domain("request signature", u64(time), nonce, sha(body), f"{method} {path}".encode())
    field = f"Lightround key={public(key).hex()}, time={time}, nonce={nonce.hex()}, signature={key.sign(said).hex()}"
    freeze("request/good.txt", f"{method}\n{path}\n{body.hex()}\n{field}\n")


def invitation():
    code = bytes(range(1, 16))
    number = int.from_bytes(code, "big")
    signs = "".join(ALPHABET[number >> (115 - 5 * at) & 31] for at in range(24))
    text = "-".join(signs[at:at + 4] for at in range(0, 24, 4))
    freeze("invitation/good.txt", f"{code.hex()}\n{text}\n{sha(domain('invitation', code)).hex()}\n")


roll()
request()
invitation()
