"""The checker of laws sees each of them broken: what it is silent about holds."""

from collections import Counter
from collections.abc import Callable
from datetime import timedelta

import pytest
from sqlalchemy import delete, update

from coachbot.rehearsal.stage import CHILD, CLINICIAN, PARENT, Stage
from coachbot.store import Store, Transaction
from coachbot.store.documents import encode
from coachbot.store.sealing import Purpose
from coachbot.store.tables import cases, messages, outbox
from helpers.laws import Phone, broken_laws
from helpers.played import played
from service.conftest import first_words, to_the_end_of_the_lesson

CHOKING = "she is choking and cant breathe"
SPOKEN = (CHOKING, "grandma baked a cake")


@pytest.fixture
def store_url(sqlite_url: str) -> str:
    """One database is enough to break things in."""
    return sqlite_url


@pytest.fixture
async def told(store: Store) -> tuple[Stage, dict[Phone, Counter[str]], Counter[str]]:
    """A family that had a prompt and an alarm, what arrived on the phones, and what was written."""
    stage = await played(store, up_to_the_alarm)
    arrived = {
        ("rehearsal", phone): Counter(one.sent.text.strip() for one in spoken if one.sent)
        for phone, spoken in stage.spoken.items()
    }
    return stage, arrived, Counter([*SPOKEN, *first_words(stage)])


async def up_to_the_alarm(stage: Stage) -> None:
    """From the invitation on."""
    await to_the_end_of_the_lesson(stage)
    await stage.to_bedtime()
    for words in SPOKEN:
        await stage.write(PARENT, words)


Told = tuple[Stage, dict[Phone, Counter[str]], Counter[str]]


def broken(told: Told) -> str:
    """What the checker says."""
    stage, arrived, written = told
    return "; ".join(broken_laws(stage.coachbot.store, arrived, written, stage.clock.now))


def change(stage: Stage, statement: object) -> None:
    """Break something in the database."""

    def work(tx: Transaction) -> None:
        tx._connection.execute(statement)  # type: ignore[call-overload]

    stage.coachbot.store.run(work)


async def test_nothing_is_said_where_nothing_is_broken(told: Told) -> None:
    """The starting point of all that follows."""
    assert broken(told) == ""


SAFETY = outbox.c.key.startswith("safety:")
PROMPT = outbox.c.key.startswith("prompt:")


@pytest.mark.parametrize(
    ("statement", "words"),
    [
        (delete(outbox).where(SAFETY), "got no safety text"),
        (delete(outbox).where(outbox.c.key.startswith("alert:")), "was told to nobody"),
        (update(messages).values(outcome=None), "has no outcome"),
        (update(outbox).where(SAFETY).values(status="unknown"), "given up as unknown"),
        (update(outbox).where(PROMPT).values(status="cancelled"), "may have at most 0"),
        (update(outbox).where(PROMPT).values(key="prompt:2026-01-01"), "belongs to no night"),
        (update(outbox).where(SAFETY).values(status="waiting", settled_at=None), "is still waiting"),
    ],
)
async def test_what_is_broken_in_the_database_is_seen(told: Told, statement: object, words: str) -> None:
    """Laws 3 to 7."""
    change(told[0], statement)

    assert words in broken(told)


@pytest.mark.parametrize(
    ("shift", "words"), [(timedelta(hours=6), "was written at"), (timedelta(hours=-30), "went out at")]
)
async def test_a_prompt_out_of_hours_is_seen(told: Told, shift: timedelta, words: str) -> None:
    """Written outside the family's hours; sent outside its own."""
    stage = told[0]
    column = outbox.c.created_at if shift > timedelta(0) else outbox.c.expires_at
    change(stage, update(outbox).where(PROMPT).values({column.name: stage.clock.now + shift}))

    assert words in broken(told)


async def test_a_case_that_its_history_does_not_make_is_seen(told: Told) -> None:
    """Somebody has changed the document."""
    stage = told[0]

    def work(tx: Transaction) -> None:
        opened = next(tx.cases.history(stage.case_id))[1]
        document = tx._sealer.seal(Purpose.CASE, encode(opened))
        tx._connection.execute(update(cases).where(cases.c.id == stage.case_id).values(document=document))

    stage.coachbot.store.run(work)
    assert "is not what its history makes of it" in broken(told)


def twice(arrived: dict[Phone, Counter[str]], _: Counter[str]) -> None:
    """A prompt comes a second time."""
    text = next(text for text in arrived["rehearsal", CHILD] if "Night 1 of 14" in text)
    arrived["rehearsal", CHILD][text] += 1


def lost(arrived: dict[Phone, Counter[str]], _: Counter[str]) -> None:
    """The alert never arrived."""
    arrived["rehearsal", CLINICIAN].clear()


def forgotten(_: dict[Phone, Counter[str]], written: Counter[str]) -> None:
    """Somebody wrote what was never kept."""
    written["something more"] += 1


def invented(_: dict[Phone, Counter[str]], written: Counter[str]) -> None:
    """Something was kept twice, or that nobody wrote."""
    written[CHOKING] -= 1


def unwritten(arrived: dict[Phone, Counter[str]], _: Counter[str]) -> None:
    """A phone got what stands in no outbox."""
    arrived["rehearsal", PARENT]["who are you?"] += 1


@pytest.mark.parametrize(
    ("deed", "words"),
    [
        (twice, "may have at most 1"),
        (lost, "arrived on no phone"),
        (forgotten, "was written 1 times and kept 0"),
        (invented, "was kept 1 times and written 0"),
        (unwritten, "something never written"),
    ],
)
async def test_what_differs_outside_is_seen(
    told: Told, deed: Callable[[dict[Phone, Counter[str]], Counter[str]], None], words: str
) -> None:
    """From the channel's log and from what people wrote."""
    deed(told[1], told[2])

    assert words in broken(told)


async def test_an_overdue_alert_is_seen(told: Told) -> None:
    """All is said to have come to rest, and yet nobody has taken its next step."""
    told[0].clock.now += timedelta(hours=2)

    assert "is open and does not climb" in broken(told)
