"""The tests over nights, in one line for the clinician."""

from collections.abc import Iterator

from coachbot.insight.summary import ChildSummary
from coachbot.report.wording import Say

SMALL = 0.001
"""Smaller chances are not told apart."""


def numbers(found: ChildSummary, say: Say) -> Iterator[str]:
    """Do positions differ (Friedman, Kendall's W), do ratings rise (Page), and what such numbers are worth."""
    if found.difference is None:
        yield say("numbers-few")
        return
    if found.difference.p is None or found.difference.agreement is None:
        yield say("numbers-level", nights=found.difference.rows)
        return
    agreement = round(found.difference.agreement, 2)
    yield say("numbers", nights=found.difference.rows, agreement=agreement, **_chance(found.difference.p))
    if found.trend:
        yield say("numbers-trend", **_chance(found.trend.p))
    yield say("numbers-caution")


def _chance(p: float) -> dict[str, float | str]:
    return {"p": round(p, 3), "edge": "small" if p < SMALL else "plain"}
