"""Who may sign in: accounts, passwords and one-time codes.

Passwords: Argon2id with the library's RFC 9106 settings; at least 15 signs, any signs, no rules of composition, no
forced change, none that is commonly used or expected (NIST SP 800-63B-4, section 3.1.1.2). One-time codes: RFC 6238,
six digits, 30 seconds, SHA-1.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime
from functools import cache

import pyotp
from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from coachbot.store import SignIn, Transaction

ROLES = ("clinician", "lead", "researcher")
DUTIES = ("on_call", "backup", "none")

SHORTEST, LONGEST = 15, 256
"""Signs of a password."""

FIRST_PASSWORD_BYTES = 15
"""Random bytes of a first password: 120 bits, written as 20 signs."""

STEP = 30
"""Seconds for which a one-time code stands; one step before and after is taken too, for clocks that differ."""

LIKELY = 3
"""Of zxcvbn's five scores the first that is no likely guess: it would take 10^8 guesses or more. Lists of common
passwords hold hardly any of 15 signs; it sees what people make of them, such as one twice, or a walk over the keys."""

JUDGED = 72
"""Signs that it judges at most: the time that it takes grows faster than they do."""

_hasher = PasswordHasher()


@cache
def _nobody() -> str:
    """What a stranger's password is compared with, so that a name nobody has takes as long as one that somebody has."""
    return _hasher.hash(secrets.token_urlsafe())


@dataclass(frozen=True, slots=True)
class Account:
    """What a new account needs to sign in; shown once, kept nowhere."""

    name: str
    password: str
    totp_uri: str


class AccountError(ValueError):
    """An account cannot be made or changed so; `text` is the desk's text that says why."""

    def __init__(self, text: str, words: str) -> None:
        super().__init__(words)
        self.text = text


def add(
    tx: Transaction,
    name: str,
    now: datetime,
    *,
    role: str = "clinician",
    duty: str = "none",
    language: str = "en",
    reach: tuple[str, str] | None = None,
) -> Account:
    """Make an account with a first password and a secret for one-time codes.

    `reach` is the (channel, address) at which alerts reach this clinician.

    Raises:
        AccountError: if the name is empty, too long or taken.
    """
    name = " ".join(name.split())
    if not 1 <= len(name) <= 80:  # noqa: PLR2004 - as long as names get
        raise AccountError("account-name", "give a name of 1 to 80 signs")
    if tx.clinicians.named(name):
        raise AccountError("account-taken", f"there is already an account named {name}")
    tx.clinicians.add(name, now, role=role, duty=duty, language=language, reach=reach)
    return renew(tx, name)


def renew(tx: Transaction, name: str) -> Account:
    """Give an account a new password and a new secret, for one who has lost either. Its sessions are ended."""
    password, secret = secrets.token_urlsafe(FIRST_PASSWORD_BYTES), pyotp.random_base32()
    tx.clinicians.set_sign_in(name, SignIn(password_hash=_hasher.hash(password), totp=secret.encode()))
    if clinician := tx.clinicians.named(name):
        tx.sessions.end_all(clinician.id)
    return Account(name, password, pyotp.TOTP(secret).provisioning_uri(name=name, issuer_name="coachbot"))


def disable(tx: Transaction, name: str) -> None:
    """Close an account: all its sessions end at once."""
    tx.clinicians.change(name, active=False)
    if clinician := tx.clinicians.named(name):
        tx.sessions.end_all(clinician.id)


def right_password(sign_in: SignIn | None, password: str) -> bool:
    """Whether it is the password. Takes as long for an account that does not exist."""
    nobody = _nobody()  # whoever asks: the first time that it is made is then no sign of a name that nobody has
    known = sign_in.password_hash if sign_in and sign_in.password_hash else nobody
    try:
        _hasher.verify(known, password if len(password) <= LONGEST else "")
    except (VerificationError, InvalidHashError):
        return False
    return known is not nobody


def code_step(sign_in: SignIn | None, code: str, now: datetime) -> int | None:
    """The time step that a one-time code belongs to, or None if it is no code of this moment."""
    if sign_in is None or sign_in.totp is None:
        return None
    totp, step = pyotp.TOTP(sign_in.totp.decode(), interval=STEP), int(now.timestamp()) // STEP
    digits = code.replace(" ", "")
    return next((one for one in (step, step - 1, step + 1) if _same(digits, totp.generate_otp(one))), None)


def change_password(tx: Transaction, name: str, old: str, new: str) -> None:
    """Change a password, given the old one.

    Raises:
        AccountError: if the old one is wrong, or the new one too short, too long, too plain or a likely guess.
    """
    sign_in = tx.clinicians.sign_in(name)
    if sign_in is None or not right_password(sign_in, old):
        raise AccountError("password-wrong", "the present password is another")
    if not SHORTEST <= len(new) <= LONGEST or len(set(new)) < 5 or name.lower() in new.lower():  # noqa: PLR2004
        raise AccountError("password-weak", f"take {SHORTEST} to {LONGEST} signs, not your name, not one sign again")
    if _score(new, name) < LIKELY:
        raise AccountError("password-common", "that is among the first that somebody would guess")
    tx.clinicians.set_sign_in(name, SignIn(password_hash=_hasher.hash(new), totp=sign_in.totp))


def _score(password: str, name: str) -> int:
    from zxcvbn import zxcvbn  # noqa: PLC0415 - its lists of words take a while to load, and few change their password

    return int(zxcvbn(password[:JUDGED], user_inputs=["coachbot", *name.split()])["score"])


def _same(given: str, right: str) -> bool:
    return secrets.compare_digest(given.encode(), right.encode())
