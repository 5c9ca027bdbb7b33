"""A whole coachbot over each of the two databases, with phones in memory and a clock moved by hand."""

from collections.abc import Iterator

import pytest

from coachbot.coach.case import Role
from coachbot.rehearsal.stage import CHILD, PARENT, Stage, cast
from coachbot.store import Store
from helpers.played import played, texts_read_once


@pytest.fixture(scope="module", autouse=True)
def quick() -> Iterator[None]:
    """Texts are read once for all tests."""
    with texts_read_once():
        yield


@pytest.fixture
async def stage(store: Store) -> Stage:
    """A family that has been enrolled and has not yet opened its invitation."""
    return await cast(store)


@pytest.fixture
async def practising(store: Store) -> Stage:
    """The same family with both phones linked and the lesson behind it."""
    return await played(store, to_the_end_of_the_lesson)


def first_words(stage: Stage) -> list[str]:
    """What that family has written."""
    return [f"/start {stage.codes[Role.PARENT]}", stage.codes[Role.CHILD], "yes"]


async def to_the_end_of_the_lesson(stage: Stage) -> None:
    """Invitation, consent, every step of the lesson."""
    for phone, words in zip((PARENT, CHILD, PARENT), first_words(stage), strict=True):
        await stage.write(phone, words)
    await stage.to_bedtime()
    for step in range(9):
        await stage.press(PARENT, f"{stage.case_id}:next:{step}")
    await stage.press(PARENT, f"{stage.case_id}:candy:down")
