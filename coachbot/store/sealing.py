"""Encryption at rest, with keys that the clinic holds.

A sealed value is a format byte, four bytes naming the key, a 12-byte random nonce, then AES-256-GCM's ciphertext and
tag (NIST SP 800-38D). The purpose is authenticated with it, so that a sealed address cannot be passed off as a message.
Random nonces bound the use of one key to 2^32 sealings (SP 800-38D, 8.3): at about 60 a family and evening, some two
years of a hundred thousand families, so a clinic that rotates its key once a year stays far below.

Each key given is only a master: what seals, what looks up and what names the key are derived from it by HKDF (RFC
5869). The first key seals; all open. To rotate, put a new key in front, seal everything anew (`coachbot key rotate`),
then drop the old one.
"""

import base64
import binascii
import hmac
import os
from dataclasses import dataclass
from enum import StrEnum

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF

from coachbot.store.errors import BadKeyError, UnsealError

KEY_BYTES = 32
NONCE_BYTES = 12
NAME_BYTES = 4
FORMAT = b"\x01"
HEAD_BYTES = len(FORMAT) + NAME_BYTES


class Purpose(StrEnum):
    """What a sealed value, or a looked-up one, is. Stored values depend on these words: they may not change."""

    CASE = "case"
    EVENT = "event"
    MESSAGE = "message"
    EVIDENCE = "evidence"
    OUTGOING = "outgoing"
    ADDRESS = "address"
    INVITE = "invite"
    SIGN_IN = "sign-in"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class _Key:
    name: bytes
    cipher: AESGCM
    lookup: bytes


class Sealer:
    """Seals, opens, and makes what equal texts can be found by without being readable."""

    def __init__(self, keys: str) -> None:
        """Take one key or several, each 32 bytes in URL-safe base64, separated by commas.

        Raises:
            BadKeyError: if there is none, or one is not such a key.
        """
        self._keys = [_derive(_decode(text)) for text in keys.split(",") if text.strip()]
        if not self._keys:
            raise BadKeyError(
                "no key is set: make one with coachbot.store.new_key() and keep it apart from the database"
            )
        self._by_name = {key.name: key for key in self._keys}

    def seal(self, purpose: Purpose, plain: bytes) -> bytes:
        """Encrypt with the first key."""
        key = self._keys[0]
        nonce = os.urandom(NONCE_BYTES)
        return FORMAT + key.name + nonce + key.cipher.encrypt(nonce, plain, purpose.encode())

    def open(self, purpose: Purpose, sealed: bytes) -> bytes:
        """Decrypt what any of the keys has sealed for this purpose.

        Raises:
            UnsealError: if none of the keys has, or the bytes are not what was sealed.
        """
        key = self._by_name.get(sealed[len(FORMAT) : HEAD_BYTES])
        if key is None or sealed[: len(FORMAT)] != FORMAT:
            raise UnsealError(
                "sealed with a key that is not among those given: add the clinic's earlier key after a comma"
            )
        nonce, body = sealed[HEAD_BYTES : HEAD_BYTES + NONCE_BYTES], sealed[HEAD_BYTES + NONCE_BYTES :]
        try:
            return key.cipher.decrypt(nonce, body, purpose.encode())
        except InvalidTag as error:
            raise UnsealError(f"a sealed {purpose} has been changed or is out of place") from error

    @property
    def head(self) -> bytes:
        """What everything begins with that is sealed now; what begins otherwise was sealed with an earlier key."""
        return FORMAT + self._keys[0].name

    @property
    def first(self) -> str:
        """The name of the first key."""
        return self._keys[0].name.hex()

    @property
    def names(self) -> set[str]:
        """The names of all keys."""
        return {key.name.hex() for key in self._keys}

    def lookup(self, purpose: Purpose, text: str) -> bytes:
        """What the text is found by: HMAC-SHA256 under a key derived from the first."""
        return _hmac(self._keys[0], purpose, text)

    def lookups(self, purpose: Purpose, text: str) -> list[bytes]:
        """All that the text may stand under, one for each key."""
        return [_hmac(key, purpose, text) for key in self._keys]


def new_key() -> str:
    """A fresh random key, as `Sealer` takes it."""
    return base64.urlsafe_b64encode(os.urandom(KEY_BYTES)).decode()


def _hmac(key: _Key, purpose: Purpose, text: str) -> bytes:
    return hmac.digest(key.lookup, f"{purpose}\0{text}".encode(), "sha256")


def _decode(text: str) -> bytes:
    try:
        key = base64.b64decode(text.strip(), altchars=b"-_", validate=True)
    except (binascii.Error, ValueError) as error:
        raise BadKeyError(
            f"the key is not URL-safe base64 ({error}): give 44 characters that stand for 32 bytes"
        ) from error
    if len(key) != KEY_BYTES:
        raise BadKeyError(
            f"the key has {len(key)} bytes: give 44 characters of URL-safe base64 that stand for 32 bytes"
        )
    return key


def _derive(master: bytes) -> _Key:
    return _Key(
        name=_hkdf(master, "key name", NAME_BYTES),
        cipher=AESGCM(_hkdf(master, "sealing", KEY_BYTES)),
        lookup=_hkdf(master, "lookup", KEY_BYTES),
    )


def _hkdf(master: bytes, use: str, length: int) -> bytes:
    return HKDF(algorithm=SHA256(), length=length, salt=None, info=f"coachbot {use}".encode()).derive(master)
