"""`coachbot key rotate` that kills itself: at its first argument's batch, before that is committed if so named.

Run as a program: ``rotating.py BATCH kept|undone``; with 0 it lives. Batches are small, so that there are many.
"""

import os
import signal
import sys

from sqlalchemy import Connection

from coachbot.cli import main
from coachbot.store import rotation
from coachbot.store import store as store_module
from coachbot.store.sealing import Sealer

DIE_AT, HOW = int(sys.argv[1]), sys.argv[2]
batches = 0


def reseal(connection: Connection, sealer: Sealer, limit: int, place: rotation.Place) -> rotation.Step:
    """The same, until it is the batch to die at."""
    global batches  # noqa: PLW0603 - one process, one count
    batches += 1
    if batches == DIE_AT and HOW == "kept":
        os.kill(os.getpid(), signal.SIGKILL)
    step = original(connection, sealer, limit, place)
    if batches == DIE_AT:
        os.kill(os.getpid(), signal.SIGKILL)
    return step


original = rotation.reseal
rotation.reseal = reseal
store_module.RESEAL_BATCH = 5
sys.exit(main(["key", "rotate"]))
