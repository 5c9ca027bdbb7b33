"""A whole coachbot over each of the two databases, with phones in memory and a clock moved by hand."""

import pytest

from coachbot.coach.case import Role
from coachbot.rehearsal.stage import CHILD, PARENT, Stage, cast
from coachbot.store import Store


@pytest.fixture
async def stage(store: Store) -> Stage:
    """A family that has been enrolled and has not yet opened its invitation."""
    return await cast(store)


@pytest.fixture
async def practising(stage: Stage) -> Stage:
    """The same family with both phones linked and the lesson behind it."""
    await stage.write(PARENT, f"/start {stage.codes[Role.PARENT]}")
    await stage.write(CHILD, stage.codes[Role.CHILD])
    await stage.write(PARENT, "yes")
    await stage.to_bedtime()
    for step in range(9):
        await stage.press(PARENT, f"{stage.case_id}:next:{step}")
    await stage.press(PARENT, f"{stage.case_id}:candy:down")
    return stage
