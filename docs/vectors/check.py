"""Leaf, certificates, pairing and key file once more, over other libraries: `cryptography` for the curves and
ciphers, `PyNaCl` for XChaCha20, the standard library for the rest. Works everything out from the secrets in
trust.json as docs/leaf.md says it, opens the sealed file beside it, and compares. The four words alone are copied:
their list stands in the core.

With --age the sealed file is opened by the programs `age` and `gzip` instead.
"""

import base64
import hashlib
import hmac
import json
import os
import struct
import subprocess
import sys
import tempfile
import uuid
import zlib
from pathlib import Path

VECTORS = Path(__file__).resolve().parent
CROCKFORD = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def sha(*parts):
    return hashlib.sha256(b"".join(parts)).digest()


def label(name):
    text = f"holdfast/{name}/1\0".encode()
    assert len(text) == 16
    return text


def base32(data):
    bits, count, text = 0, 0, ""
    for byte in data:
        bits, count = bits << 8 | byte, count + 8
        while count >= 5:
            count -= 5
            text += CROCKFORD[bits >> count & 31]
    return text + (CROCKFORD[bits << 5 - count & 31] if count else "")


def read_base32(text):
    bits, count, data = 0, 0, bytearray()
    for sign in text.upper().replace("-", "").replace("O", "0").replace("I", "1").replace("L", "1"):
        bits, count = bits << 5 | CROCKFORD.index(sign), count + 5
        if count >= 8:
            count -= 8
            data.append(bits >> count & 255)
    return bytes(data)


def base64url(data):
    return base64.urlsafe_b64encode(data).decode().rstrip("=")


def read_base64url(text):
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


def identity(kind, key):
    """A UUID of version 8."""
    data = bytearray(sha(label("idof"), kind, key)[:16])
    data[6] = data[6] & 0x0F | 0x80
    data[8] = data[8] & 0x3F | 0x80
    return uuid.UUID(bytes=bytes(data))


def bech32(prefix, data):
    """BIP 173, as age writes its keys."""
    alphabet = "qpzry9x8gf2tvdw0s3jn54khce6mua7l"

    def polymod(values):
        check = 1
        for value in values:
            top = check >> 25
            check = (check & 0x1FFFFFF) << 5 ^ value
            for bit, generator in enumerate([0x3B6A57B2, 0x26508E6D, 0x1EA119FA, 0x3D4233DD, 0x2A1462B3]):
                check ^= generator if top >> bit & 1 else 0
        return check

    bits, count, values = 0, 0, []
    for byte in data:
        bits, count = bits << 8 | byte, count + 8
        while count >= 5:
            count -= 5
            values.append(bits >> count & 31)
    if count:
        values.append(bits << 5 - count & 31)
    expanded = [ord(sign) >> 5 for sign in prefix] + [0] + [ord(sign) & 31 for sign in prefix]
    check = polymod(expanded + values + [0] * 6) ^ 1
    values += [check >> 5 * (5 - at) & 31 for at in range(6)]
    return prefix + "1" + "".join(alphabet[value] for value in values)


class Somebody:
    """A person and one device, from a recovery code and two secrets."""

    def __init__(self, vectors):
        from cryptography.hazmat.primitives import hashes
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
        from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey
        from cryptography.hazmat.primitives.kdf.hkdf import HKDF

        code = read_base32(vectors["recovery_code"])
        self.secret = code[:16]
        assert code[16:] == sha(label("code"), self.secret)[:4]

        def derived(name):
            return HKDF(hashes.SHA256(), 32, None, label(name)).derive(self.secret)

        self.person_open_secret = derived("open")
        self.device_sign_secret = bytes.fromhex(vectors["device_sign_secret"])
        self.device_open_secret = bytes.fromhex(vectors["device_open_secret"])
        self.person = Ed25519PrivateKey.from_private_bytes(derived("sign"))
        self.device = Ed25519PrivateKey.from_private_bytes(self.device_sign_secret)

        def opening(secret):
            return X25519PrivateKey.from_private_bytes(secret).public_key().public_bytes_raw()

        self.person_sign = self.person.public_key().public_bytes_raw()
        self.person_open = opening(self.person_open_secret)
        self.device_sign = self.device.public_key().public_bytes_raw()
        self.device_open = opening(self.device_open_secret)
        keys = self.person_sign + self.person_open + self.device_sign + self.device_open
        signed = b"\x01" + keys + b"\x01"
        self.certificate = signed + self.person.sign(label("cert") + signed)
        self.person_id = identity(b"p", self.person_sign)
        self.device_id = identity(b"d", self.device_sign)

    def said(self):
        code = base32(self.secret + sha(label("code"), self.secret)[:4])
        return {
            "recovery_code": "-".join(code[at : at + 4] for at in range(0, 32, 4)),
            "age_key": bech32("age-secret-key-", self.person_open_secret).upper(),
            "person_sign": self.person_sign.hex(),
            "person_open": self.person_open.hex(),
            "device_sign_secret": self.device_sign_secret.hex(),
            "device_open_secret": self.device_open_secret.hex(),
            "device_sign": self.device_sign.hex(),
            "device_open": self.device_open.hex(),
            "person": str(self.person_id),
            "device": str(self.device_id),
            "certificate": base64url(self.certificate),
        }


def open_age(file, secret):
    """age-encryption.org/v1 with X25519, as its specification says it."""
    from cryptography.hazmat.primitives import hashes
    from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey, X25519PublicKey
    from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305
    from cryptography.hazmat.primitives.kdf.hkdf import HKDF

    def derived(key, salt, info):
        return HKDF(hashes.SHA256(), 32, salt, info).derive(key)

    def unpadded(text):
        return base64.b64decode(text + "=" * (-len(text) % 4))

    own = X25519PrivateKey.from_private_bytes(secret)
    end = file.index(b"\n--- ") + 5
    lines = file[:end].decode().split("\n")
    assert lines[0] == "age-encryption.org/v1"
    key, to = None, 0
    for at, line in enumerate(lines):
        if not line.startswith("-> X25519 "):
            continue
        to += 1
        share, body = unpadded(line.split(" ")[2]), unpadded(lines[at + 1])
        shared = own.exchange(X25519PublicKey.from_public_bytes(share))
        salt = share + own.public_key().public_bytes_raw()
        wrap = derived(shared, salt, b"age-encryption.org/v1/X25519")
        try:
            key = ChaCha20Poly1305(wrap).decrypt(bytes(12), body, None)
        except Exception:
            continue
    head, rest = file[: end - 1], file[end:]
    mac, body = rest.split(b"\n", 1)
    wanted = hmac.new(derived(key, None, b"header"), head, hashlib.sha256).digest()
    assert hmac.compare_digest(wanted, unpadded(mac.decode())), "the head was altered"
    nonce, body = body[:16], body[16:]
    payload = ChaCha20Poly1305(derived(key, nonce, b"payload"))
    chunk, text = 64 * 1024 + 16, b""
    for at in range(0, len(body), chunk):
        last = at + chunk >= len(body)
        counter = struct.pack(">Q", at // chunk).rjust(11, b"\0") + (b"\x01" if last else b"\0")
        text += payload.decrypt(counter, body[at : at + chunk], None)
    return text, to


def check_leaf(text, writer, crew, of):
    """Line 1 and the chain's first link; gives the content hash."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    first, body = text.split(b"\n", 1)
    assert len(first) == 362
    begin, certificate, signature = first.decode().split(" ")
    assert begin == "holdfast-leaf-1" and certificate == base64url(writer.certificate)
    content = sha(body)
    signed = label("leaf") + sha(writer.certificate) + content
    assert len(signed) == 80
    key = Ed25519PublicKey.from_public_bytes(writer.device_sign)
    key.verify(read_base64url(signature), signed)
    # Ed25519 signs alike each time.
    assert read_base64url(signature) == writer.device.sign(signed)
    header = json.loads(body.split(b"\n")[0])
    link = sha(label("lane"), crew.bytes, of.bytes, writer.certificate)
    assert header["previous"] == link.hex() and header["sequence"] == 1
    assert header["count"] == body.count(b"\n") - 1
    return content, link


def check():
    from cryptography.hazmat.primitives import hashes
    from cryptography.hazmat.primitives.kdf.hkdf import HKDF
    from nacl import bindings

    vectors = json.loads((VECTORS / "trust.json").read_text())
    sealed = (VECTORS / "sealed.leaf").read_bytes()
    coach, member = Somebody(vectors["coach"]), Somebody(vectors["member"])
    crew, of = identity(b"c", coach.person_sign), member.person_id
    opened = []
    secrets = [coach.device_open_secret, coach.person_open_secret, member.device_open_secret, member.person_open_secret]
    for secret in secrets:
        packed, to = open_age(sealed, secret)
        assert to == 8 and len(packed) == 2048, (to, len(packed))
        opened.append(unpacked(packed))
    assert all(text == opened[0] for text in opened)
    content, link = check_leaf(opened[0], member, crew, of)
    tag = sha(label("name"), crew.bytes, of.bytes, member.device_id.bytes)[:4].hex()
    name = f"{member.device_id.hex}-{tag}-00000001-{hashlib.sha256(sealed).hexdigest()[:16]}.leaf"

    head = b"\x01" + member.person_sign + member.device_id.bytes + of.bytes + struct.pack(">Q", 1) + content
    stop = head + member.person.sign(label("stop") + head)

    pairing = vectors["pairing"]
    coach_nonce, member_nonce = (bytes.fromhex(pairing[key]) for key in ("coach_nonce", "member_nonce"))
    invitation = b"\x01" + coach.device_open + sha(label("pair"), coach.certificate, coach_nonce)
    reply = b"\x01" + member.certificate + member_nonce + b"\x03Ana"
    opening = b"\x01" + coach.certificate + coach_nonce
    numbers = list(sha(label("word"), invitation, reply, opening)[:4])

    wrap = bytes.fromhex(vectors["key_file"]["wrap"])
    secrets = b"\x01" + member.device_sign_secret + member.device_open_secret + b"\x01" + member.secret
    key = HKDF(hashes.SHA256(), 32, None, label("keys")).derive(wrap)
    nonce = sha(label("keys"), wrap, secrets)[:24]
    associated = label("keys") + member.device_id.bytes
    wrapped = bindings.crypto_aead_xchacha20poly1305_ietf_encrypt(secrets, associated, nonce, key)
    return {
        "coach": coach.said(),
        "member": member.said(),
        "crew": str(crew),
        "lane": {"tag": tag, "first_link": link.hex()},
        "leaf": {"text": opened[0].decode(), "content": content.hex(), "file": name},
        "stop": base64url(stop),
        "pairing": {
            "coach_nonce": coach_nonce.hex(),
            "member_nonce": member_nonce.hex(),
            "invitation": "HF1:" + base32(invitation),
            "reply": "HF1:" + base32(reply),
            "opening": "HF1:" + base32(opening),
            "post_tag": sha(label("post"), invitation)[:8].hex(),
            "numbers": numbers,
            "words": pairing["words"],
        },
        "key_file": {
            "wrap": wrap.hex(),
            "wrapped": (label("keys") + nonce + wrapped).hex(),
            "open": (label("keys") + secrets).hex(),
        },
    }


def unpacked(packed):
    """One gzip member, then zeros."""
    reader = zlib.decompressobj(wbits=31)
    text = reader.decompress(packed)
    assert reader.eof and not reader.unused_data.strip(b"\0")
    assert packed[:8] == b"\x1f\x8b\x08\0\0\0\0\0"
    return text


def with_age():
    """A person's own data, by the programs `age` and `gzip` alone."""
    vectors = json.loads((VECTORS / "trust.json").read_text())
    with tempfile.TemporaryDirectory() as folder:
        key = Path(folder) / "key"
        key.touch(0o600)
        for who in ("member", "coach"):
            key.write_text(vectors[who]["age_key"] + "\n")
            age = [os.environ.get("AGE", "age"), "-d", "-i", str(key), str(VECTORS / "sealed.leaf")]
            packed = subprocess.run(age, check=True, capture_output=True).stdout
            gunzip = subprocess.run(["gzip", "-d"], input=packed, check=True, capture_output=True)
            assert gunzip.stderr == b"", gunzip.stderr
            assert gunzip.stdout.decode() == vectors["leaf"]["text"], who
    body = gunzip.stdout.split(b"\n", 1)[1]
    assert hashlib.sha256(body).hexdigest() == vectors["leaf"]["content"]


if __name__ == "__main__":
    if "--age" in sys.argv:
        with_age()
    else:
        found, wanted = check(), json.loads((VECTORS / "trust.json").read_text())
        assert found == wanted, [key for key in wanted if found.get(key) != wanted[key]]
    print("docs/vectors: the same")
