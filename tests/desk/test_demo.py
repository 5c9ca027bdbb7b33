"""Promises about the invented clinic."""

import asyncio
from collections import Counter

from coachbot.coach.case import State
from coachbot.desk import demo
from coachbot.triage import Level
from helpers.desk_bench import Bench


def test_an_invented_clinic_has_children_in_different_states(bench: Bench) -> None:
    """Played through the real service: some practise, wait, have finished; tonight's worry is open."""
    bench.add(demo.CLINICIAN, "lead", duty="on_call", reach=("rehearsal", "imani"))
    asyncio.run(demo.seed(bench.coachbot, bench.clock.now, children=8))
    cases = bench.coachbot.store.run(lambda tx: list(tx.cases.all()))
    families = [case for case in cases if case.orders]
    alerts = bench.coachbot.store.run(lambda tx: tx.board.open_alerts())

    assert len(families) == 8
    assert len(Counter(case.state for case in families)) >= 3
    assert any(case.practised >= 5 for case in families)
    assert any(level >= Level.URGENT for _, _, level in alerts)
    assert any(case.state is State.ON_HOLD for case in families)
    assert bench.phones.phones == {}, "nobody's phone rings"
