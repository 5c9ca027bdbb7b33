"""A desk over an empty store, and people who are signed in."""

from collections.abc import Iterator
from functools import cache

import pytest
from argon2 import PasswordHasher

from coachbot.bootstrap import build
from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.desk import accounts, app
from coachbot.desk.wording import Wording
from coachbot.settings import Settings
from coachbot.store import Store
from conftest import KEY
from helpers.desk_bench import ORIGIN, Bench, Browser, Clock, Family, SignedIn, practising
from helpers.played import texts_read_once

_wording = cache(Wording.load)


@pytest.fixture(scope="module", autouse=True)
def quick() -> Iterator[None]:
    """Texts are read once for all tests, and passwords hashed with the least work: neither changes a promise."""
    wording = _wording()
    hasher = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)
    with pytest.MonkeyPatch.context() as patch, texts_read_once():
        patch.setattr(app, "Wording", type("Read", (), {"load": staticmethod(lambda: wording)}))
        patch.setattr(accounts, "_hasher", hasher)
        patch.setattr(accounts, "_nobody", cache(lambda: hasher.hash("nobody's")))
        yield


@pytest.fixture
def store(sqlite_url: str) -> Iterator[Store]:
    """An empty store; what the desk asks of it is the same over both databases."""
    store = Store.open(sqlite_url, KEY)
    yield store
    store.close()


@pytest.fixture
def bench(store: Store) -> Bench:
    """A desk with one clinician on call."""
    clock = Clock()
    phones = RehearsalChannel(clock)
    coachbot = build(store, {"rehearsal": phones}, emergency_number="112", clock=clock)
    made = Bench(coachbot, Settings({"COACHBOT_DESK_URL": ORIGIN}), clock, phones)
    store.run(lambda tx: (tx.clinic.beat("test", clock.now), tx.signs.up(["rehearsal"], clock.now)))  # type: ignore[func-returns-value]
    made.add("Imani Osei", "clinician", duty="on_call", reach=("rehearsal", "osei"))
    return made


@pytest.fixture
def signed_in(bench: Bench) -> SignedIn:
    """A browser signed in by role."""
    names = {"clinician": "Imani Osei", "lead": "Lindiwe Sato", "researcher": "Ravi Lund"}

    def sign_in(role: str) -> Browser:
        name = names[role]
        if name not in bench.people:
            bench.add(name, role)
        return bench.sign_in(name)

    return sign_in


@pytest.fixture
def family(bench: Bench) -> Family:
    """A family that has practised two nights, one swallow of which did not go down."""
    return practising(bench, nights=("43544", "53-24"))
