"""Every text that the coach can say, by id: who may be told it, and what must be filled in.

The words themselves live in `prompts/`. This table is what they are tested against, and what the coach's own lines
are tested against, so that neither side can name a text or a variable that the other does not have. Besides its own
variables each text may use `$child` (the name to be called by), `$emergency` (the local emergency number) and `$tone`
(``young`` 5 to 7, ``middle`` 8 to 12, ``teen`` 13 and over).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from coachbot.reading.causes import Cause


class Audience(StrEnum):
    """Which version of a text: each is a file of its own in `prompts/<language>/`."""

    PARENT = "parent"
    CHILD = "child"
    CLINICIAN = "clinician"


class Situation(StrEnum):
    """What happened, as far as encouragement tells it apart."""

    FIRST_NIGHT = "first-night"
    FIRST_NIGHT_HARD = "first-night-hard"
    NOTHING_DOWN = "nothing-down"
    ONE_MISSED = "one-missed"
    SEVERAL_MISSED = "several-missed"
    COMING_BACK = "coming-back"
    STEADY = "steady"
    IMPROVING = "improving"
    FAVOURITE_CHANGED = "favourite-changed"
    HALF_WAY = "half-way"
    LAST_NIGHTS = "last-nights"
    LAST_NIGHT = "last-night"
    YUCKY = "yucky"
    TIRED = "tired"
    PARTIAL = "partial"
    SKIPPED = "skipped"


WORDINGS: dict[Situation, int] = dict.fromkeys(Situation, 3) | {Situation.STEADY: 7}
"""How many wordings each situation has. The one that can come up every night has one for each night of a week."""

HOW_TO = 3
"""How many wordings "how to" has, in turn: the same one every night is soon not read."""

TIPS = 2
"""How many tips each cause has."""

CONCERNS = ("distress", "refusal", "gag", "pressure", "exhausted", "shame", "ill")
"""Categories at level `concern` that have an answer of their own."""

SAFETY = ("breathing", "allergy", "object", "poison", "self-harm", "danger", "urgent", "forced")
"""The safety texts; `hold.py` says which category of reply gets which."""


@dataclass(frozen=True, slots=True)
class Text:
    """Who may be told it and which variables of its own it takes."""

    audiences: frozenset[Audience]
    variables: frozenset[str]


FAMILY = (Audience.PARENT, Audience.CHILD)
PARENT = (Audience.PARENT,)
CHILD = (Audience.CHILD,)
CLINICIAN = (Audience.CLINICIAN,)


def _table() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield from _enrolment()
    yield from _lesson()
    yield from _evening()
    yield from _wishes()
    yield from _safety()
    yield from _end()
    yield from _clinician()
    yield from _buttons()
    for situation in Situation:
        for number in range(1, WORDINGS[situation] + 1):
            yield f"cheer-{situation}-{number}", FAMILY, "night nights left"
    for cause in Cause:
        for number in range(1, TIPS + 1):
            yield f"tip-{cause}-{number}", FAMILY, ""


def _enrolment() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "stranger-hello", PARENT, ""
    yield "which-child", PARENT, "names"
    yield "code-unknown", PARENT, ""
    yield "code-used", PARENT, ""
    yield "code-expired", PARENT, ""
    yield "code-wait", PARENT, ""
    yield "consent-ask", PARENT, ""
    yield "consent-needed", PARENT, ""
    yield "consent-declined", PARENT, ""
    yield "consent-wait", CHILD, ""
    yield "welcome", FAMILY, "bedtime nights"
    yield "welcome-also", FAMILY, "bedtime"


def _lesson() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "lesson-intro", FAMILY, ""
    yield "lesson-again", FAMILY, ""
    yield "lesson-throat", FAMILY, ""
    yield "lesson-posture", FAMILY, ""
    yield "lesson-water", FAMILY, "position"
    yield "lesson-tongue", FAMILY, ""
    yield "lesson-sip", FAMILY, ""
    yield "lesson-candy", FAMILY, "candy size"
    yield "lesson-unclear", FAMILY, ""
    yield "lesson-went-down", FAMILY, ""
    yield "lesson-not-down", FAMILY, ""
    yield "lesson-later", FAMILY, ""
    yield "lesson-done", FAMILY, "bedtime nights"


def _evening() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "night-prompt", FAMILY, "night nights order candy size"
    for number in range(1, HOW_TO + 1):
        yield f"night-howto-{number}", FAMILY, ""
    yield "night-safety", FAMILY, ""
    yield "night-late", FAMILY, ""
    yield "night-reminder", FAMILY, ""
    yield "ask-swallow", FAMILY, "position"
    yield "ask-best", FAMILY, ""
    yield "ask-note", FAMILY, ""
    yield "unclear-swallow", FAMILY, "position"
    yield "unclear-best", FAMILY, ""
    yield "unclear-note", FAMILY, ""
    yield "night-done", FAMILY, "marks"
    yield "night-best", FAMILY, "position"
    yield "corrected", FAMILY, "marks"
    yield "corrected-best", FAMILY, "position"
    yield "note-kept", FAMILY, ""
    yield "stale-button", FAMILY, ""
    yield "tonight-over", FAMILY, ""
    yield "passed-on", FAMILY, ""


def _wishes() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "only-parent", CHILD, ""
    yield "help", FAMILY, "bedtime"
    yield "asked-for", FAMILY, ""
    yield "paused", FAMILY, ""
    yield "paused-until", FAMILY, "day"
    yield "paused-reply", FAMILY, ""
    yield "resumed", FAMILY, "bedtime"
    yield "bedtime-changed", FAMILY, "bedtime"
    yield "bedtime-outside", FAMILY, "earliest latest"
    yield "candy-changed", FAMILY, "candy size"
    yield "stopped", FAMILY, ""
    yield "started", FAMILY, "bedtime"
    yield "start-closed", FAMILY, ""
    yield "delete-ask", PARENT, ""
    yield "delete-kept", PARENT, ""
    yield "delete-waits", PARENT, ""
    yield "deleted", FAMILY, ""
    yield "wrong-number", PARENT, ""
    yield "from-clinician", FAMILY, "words"


def _safety() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    for name in SAFETY:
        yield f"safety-{name}", FAMILY, ""
    yield "safety-child-wrote", PARENT, ""
    yield "hold", FAMILY, ""
    yield "hold-reply", FAMILY, ""
    yield "hold-by-clinician", FAMILY, ""
    yield "hold-lifted", FAMILY, "bedtime"
    yield "hold-lifted-rest", FAMILY, ""
    yield "watch-ask", PARENT, ""
    yield "watch-fine", PARENT, ""
    for name in CONCERNS:
        yield f"concern-{name}", FAMILY, ""
    yield "medicine", FAMILY, ""


def _end() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "finish", FAMILY, "practised nights"
    yield "finish-favourites", FAMILY, "first last"
    yield "finish-same", FAMILY, "last"
    yield "finish-next", FAMILY, ""
    yield "certificate", FAMILY, ""
    yield "ended", FAMILY, ""


def _clinician() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    yield "alert", CLINICIAN, "level category words code"
    yield "alert-again", CLINICIAN, "steps"
    yield "alert-hold", CLINICIAN, ""
    yield "alert-missed", CLINICIAN, "count code"
    yield "alert-unreachable", CLINICIAN, "code"
    yield "alert-undelivered", CLINICIAN, "code"
    yield "alert-lesson", CLINICIAN, "count code"
    yield "alert-stranger", CLINICIAN, "level words code"
    yield "alert-stuck", CLINICIAN, "words code"
    yield "alert-taken", CLINICIAN, "by"
    yield "alert-taken-already", CLINICIAN, "by"
    yield "lift-ask-note", CLINICIAN, ""
    yield "end-ask-note", CLINICIAN, ""
    yield "lift-done", CLINICIAN, "by"
    yield "lift-not-held", CLINICIAN, ""
    yield "ended-already", CLINICIAN, ""
    yield "no-such-alert", CLINICIAN, ""
    yield "not-running", CLINICIAN, ""
    yield "night-taken", CLINICIAN, "day"
    yield "night-none-left", CLINICIAN, ""
    yield "night-wrong-positions", CLINICIAN, ""
    yield "bedtime-refused", CLINICIAN, "earliest latest"
    yield "end-done", CLINICIAN, "by"
    yield "note-empty", CLINICIAN, ""
    yield "clinician-help", CLINICIAN, ""
    yield "news-unread", CLINICIAN, ""
    yield "news-declined", CLINICIAN, ""
    yield "news-stopped", CLINICIAN, ""
    yield "news-deleted", CLINICIAN, ""
    yield "summary", CLINICIAN, "practised nights evenings"
    yield "summary-favourites", CLINICIAN, "first last"
    yield "summary-clear", CLINICIAN, "favourite percent"
    yield "summary-unclear", CLINICIAN, "favourite percent"
    yield "summary-cautions", CLINICIAN, ""


def _buttons() -> Iterator[tuple[str, tuple[Audience, ...], str]]:
    for name in ("agree", "decline"):
        yield f"button-{name}", PARENT, ""
    for name in ("next", "down", "not-down", "later", "skip", "no-best", "no-note", "yes", "no"):
        yield f"button-{name}", FAMILY, ""
    yield "button-rate", FAMILY, "rating"
    yield "button-position", FAMILY, "position"
    for name in ("acknowledge", "lift", "end"):
        yield f"button-{name}", CLINICIAN, ""


TEXTS: dict[str, Text] = {
    name: Text(frozenset(audiences), frozenset(variables.split())) for name, audiences, variables in _table()
}
"""All texts by id."""
