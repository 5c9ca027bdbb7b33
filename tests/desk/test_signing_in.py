"""Promises about who gets in, and for how long."""

from datetime import UTC, datetime, timedelta
from hashlib import sha1, sha256, sha512

import pyotp
import pytest

from coachbot.desk import accounts, sessions
from coachbot.store import SignIn
from helpers.desk_bench import Bench, SignedIn

SEED = b"12345678901234567890"
# RFC 6238, appendix B: time, SHA-1, SHA-256, SHA-512; the keys are 20, 32 and 64 bytes of the repeated digits.
RFC_6238 = [
    (59, "94287082", "46119246", "90693936"),
    (1111111109, "07081804", "68084774", "25091201"),
    (1111111111, "14050471", "67062674", "99943326"),
    (1234567890, "89005924", "91819424", "93441116"),
    (2000000000, "69279037", "90698825", "38618901"),
    (20000000000, "65353130", "77737706", "47863826"),
]


def secret(size: int) -> str:
    """The RFC's key of so many bytes, as authenticator apps take it."""
    from base64 import b32encode  # noqa: PLC0415

    return b32encode((SEED * 4)[:size]).decode()


@pytest.mark.parametrize(("at", "one", "two", "three"), RFC_6238)
def test_the_library_gives_the_codes_of_rfc_6238(at: int, one: str, two: str, three: str) -> None:
    """RFC 6238, appendix B, all three hashes, leading zeros kept."""
    made = [
        pyotp.TOTP(secret(size), digits=8, digest=digest).at(at)
        for size, digest in ((20, sha1), (32, sha256), (64, sha512))
    ]

    assert [one, two, three] == made


@pytest.mark.parametrize(("at", "code"), [(at, one) for at, one, _, _ in RFC_6238])
def test_our_check_takes_the_last_six_digits_of_those(at: int, code: str) -> None:
    """RFC 4226, section 5.3: six digits are the eight modulo 10^6; the step is the time in halves of a minute."""
    sign_in = SignIn(password_hash=None, totp=secret(20).encode())
    now = datetime.fromtimestamp(at, UTC)

    assert accounts.code_step(sign_in, code[2:], now) == at // 30
    assert accounts.code_step(sign_in, code[2:], now + timedelta(minutes=2)) is None


def test_name_password_and_code_together_open_the_desk(bench: Bench) -> None:
    """A session begins, in a cookie that scripts and other sites cannot use."""
    client = bench.client()
    name = "Imani Osei"
    form = {"name": name, "password": bench.people[name].password, "code": bench.code(name)}
    cookie = client.post("/sign-in", data=form).headers["set-cookie"].lower()

    assert "httponly" in cookie
    assert "samesite=lax" in cookie
    assert client.get("/alerts").status_code == 200


@pytest.mark.parametrize("wrong", ["name", "password", "code", "all"])
def test_whatever_is_wrong_the_answer_is_the_same(bench: Bench, wrong: str) -> None:
    """ASVS 5.0, 6.3.8: nobody learns which names there are."""
    name = "Imani Osei"
    form = {"name": name, "password": bench.people[name].password, "code": bench.code(name)}
    bad = {"name": "Nobody Here", "password": "not the password", "code": "000000"}
    answer = bench.client().post("/sign-in", data=form | (bad if wrong == "all" else {wrong: bad[wrong]}))
    other = bench.client().post("/sign-in", data=bad)

    assert answer.status_code == other.status_code == 403
    assert answer.text == other.text


def test_a_name_that_nobody_has_takes_a_password_check_too(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """The time of an answer says nothing: the same costly comparison is made."""
    compared: list[str] = []
    verify = accounts._hasher.verify

    def counting(known: str, password: str) -> bool:
        compared.append(known)
        return verify(known, password)

    monkeypatch.setattr(accounts, "_hasher", type("Hasher", (), {"verify": staticmethod(counting)}))
    bench.client().post("/sign-in", data={"name": "Nobody Here", "password": "whatever it is", "code": "123456"})

    assert len(compared) == 1


def test_a_code_works_once(bench: Bench) -> None:
    """ASVS 5.0, 6.5.1: a code that was looked over a shoulder opens nothing."""
    bench.sign_in("Imani Osei")
    name = "Imani Osei"
    form = {"name": name, "password": bench.people[name].password, "code": bench.code(name)}

    assert bench.client().post("/sign-in", data=form).status_code == 403
    bench.clock.passes(timedelta(seconds=30))
    bench.sign_in(name)


def test_tries_are_limited(bench: Bench) -> None:
    """After ten wrong ones within a quarter of an hour even the right one waits, and then works again."""
    name = "Imani Osei"
    right = {"name": name, "password": bench.people[name].password}

    client = bench.client()
    for _ in range(10):
        client.post("/sign-in", data={"name": name, "password": "a guess", "code": "000000"})
    assert client.post("/sign-in", data=right | {"code": bench.code(name)}).status_code == 429
    bench.clock.passes(timedelta(minutes=16))
    assert client.post("/sign-in", data=right | {"code": bench.code(name)}).status_code == 303


def test_each_sign_in_begins_a_new_session_and_ends_the_browsers_old_one(bench: Bench) -> None:
    """ASVS 5.0, 7.2.4; at least 128 random bits (7.2.3), of which the store has only a hash."""
    client = bench.sign_in("Imani Osei")
    first = client.cookies["desk"]
    bench.clock.passes(timedelta(minutes=1))
    second = bench.sign_in("Imani Osei", client).cookies["desk"]
    found = bench.coachbot.store.run(lambda tx: [tx.sessions.get(sessions.hashed(one)) for one in (first, second)])

    assert len(first) * 6 >= 128
    assert first != second
    assert found[0] is None
    assert found[1] is not None


def test_signing_out_ends_the_session_at_the_server(signed_in: SignedIn) -> None:
    """ASVS 5.0, 7.4.1: a cookie kept aside opens nothing afterwards."""
    client = signed_in("clinician")
    token = client.cookies["desk"]
    client.post("/sign-out", data={"csrf": sessions.csrf(token)})
    client.cookies.set("desk", token)

    assert client.get("/alerts").headers["location"] == "/sign-in"


def test_a_session_ends_when_it_lies_idle(bench: Bench, signed_in: SignedIn) -> None:
    """ASVS 5.0, 7.3.1: 30 minutes; looking for alerts by itself does not keep it awake, using a page does."""
    client = signed_in("clinician")
    for _ in range(3):
        bench.clock.passes(timedelta(minutes=20))
        assert client.get("/children").status_code == 200
    for _ in range(2):
        bench.clock.passes(timedelta(minutes=16))
        client.get("/alerts/pulse")

    assert client.get("/children").status_code == 303


def test_a_session_ends_after_twelve_hours_however_busy(bench: Bench, signed_in: SignedIn) -> None:
    """ASVS 5.0, 7.3.2."""
    client = signed_in("clinician")
    for _ in range(12 * 3 - 1):
        bench.clock.passes(timedelta(minutes=20))
        assert client.get("/children").status_code == 200
    bench.clock.passes(timedelta(minutes=20))

    assert client.get("/children").status_code == 303


def test_closing_an_account_ends_its_sessions_and_its_sign_in(bench: Bench, signed_in: SignedIn) -> None:
    """ASVS 5.0, 7.4.2."""
    client = signed_in("clinician")
    bench.coachbot.store.run(lambda tx: accounts.disable(tx, "Imani Osei"))
    bench.clock.passes(timedelta(minutes=1))
    name = "Imani Osei"
    form = {"name": name, "password": bench.people[name].password, "code": bench.code(name)}

    assert client.get("/alerts").status_code == 303
    assert bench.client().post("/sign-in", data=form).status_code == 403


def test_a_password_is_changed_with_the_old_one_and_other_sessions_end(bench: Bench) -> None:
    """ASVS 5.0, 6.2.3 and 7.4.3; NIST SP 800-63B-4: 15 signs, no rules of composition."""
    here = bench.sign_in("Imani Osei")
    bench.clock.passes(timedelta(minutes=1))
    there = bench.sign_in("Imani Osei")
    token = sessions.csrf(here.cookies["desk"])
    old = bench.people["Imani Osei"].password

    def change(given: str, new: str) -> int:
        form = {"csrf": token, "old": given, "new": new, "again": new}
        return here.post("/account/password", data=form).status_code

    assert change("not the old one", "four plain words are fine") == 422
    assert change(old, "short one") == 422
    assert change(old, "aaaaaaaaaaaaaaaaaaaa") == 422
    assert change(old, "four plain words are fine") == 303
    assert here.get("/alerts").status_code == 200
    assert there.get("/alerts").status_code == 303
    assert change(old, "another four plain words") == 422


@pytest.mark.parametrize(
    "common",
    [
        "passwordpassword",
        "Password1Password1",
        "123456789qwerty",
        "q1w2e3r4t5y6u7i8",
        "abcdefghijklmnopqrst",
        "iloveyouiloveyou",
        "coachbotcoachbot2026",
    ],
)
def test_a_password_that_many_would_guess_is_refused(bench: Bench, common: str) -> None:
    """NIST SP 800-63B-4, section 3.1.1.2: no commonly used, expected or compromised one; the page says why.

    The first words are among the ten commonest of every published list; those of digits and keys stand in the list of
    leaked passwords that comes with zxcvbn; the last is the service's own name, which the standard names too.
    """
    client = bench.sign_in("Imani Osei")
    form = {"old": bench.people["Imani Osei"].password, "new": common, "again": common}
    answer = client.send("/account/password", **form)

    assert answer.status_code == 422
    assert "first that somebody would guess" in answer.text


def test_a_name_is_given_once(bench: Bench) -> None:
    """Two people never share an account, so that every deed has one name."""
    with pytest.raises(accounts.AccountError, match="already"):
        bench.add("Imani  Osei", "lead")


def test_passwords_are_kept_as_argon2id(bench: Bench) -> None:
    """RFC 9106: the hash names the variant; the password itself is nowhere."""
    kept = bench.coachbot.store.run(lambda tx: tx.clinicians.sign_in("Imani Osei"))

    assert kept is not None
    assert kept.password_hash is not None
    assert kept.password_hash.startswith("$argon2id$")
