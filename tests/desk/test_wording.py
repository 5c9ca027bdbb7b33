"""Promises about the desk's texts."""

import re
from pathlib import Path

import pytest

from coachbot.coach.actions import Urgency
from coachbot.coach.case import Role, State, Status
from coachbot.coach.events import Event
from coachbot.desk import accounts, alerts, app, caseload, clinic, deeds, enrol, wording
from coachbot.desk.wording import Wording
from coachbot.programme.protocol import CandyKind, Who
from coachbot.programme.screening import Caution, Neck, Stop
from coachbot.programme.sizes import Caution as Limit
from coachbot.reading.readings import Word
from coachbot.store.envelopes import Status as Sent
from coachbot.triage import Level
from coachbot.voice.sources import default_folder, read
from coachbot.voice.wording import WordingError

CODE = Path(app.__file__).parent
NAMED = (
    r'\bt\(\s*"([\w-]+)"',
    r'(?:FormError|AccountError|fault)\(\s*"([\w-]+)"',
    r'faults\.add\([^,()]+, "([\w-]+)"',
    r'\.text\([^,]+, "([\w-]+)"',
)
"""How code and templates name a text outright."""

EVENTS = [kind.__name__ for kind in Event.__args__]
UNTOLD = ("Replied", "Pressed", "Ticked", "SendEnded", "StrangerWrote", "Stuck")
FAMILIES: dict[str, list[str]] = {
    "ago-": ["minutes", "hours", "days"],
    "in-": ["minutes", "hours", "days"],
    "ask-": [*enrol.QUESTIONS, "neck"],
    "confirm-": [*enrol.CONFIRMATIONS, *Caution],
    "candy-": list(CandyKind),
    "limit-": list(Limit),
    "stop-": list(Stop),
    "neck-": list(Neck),
    "state-": list(State),
    "night-": list(Status),
    "night-short-": list(Status),
    "mark-": list(Word),
    "level-": [level.word for level in Level],
    "role-": [*Role, "clock", "channel"],
    "who-": list(Who),
    "staff-": list(accounts.ROLES),
    "duty-": list(accounts.DUTIES),
    "ours-": list(alerts.OURS),
    "note-": ["note", "call", "screening"],
    "send-": list(Sent),
    "show-": ["all", "needs", *caseload.GROUPS],
    "sort-": list(caseload.SORTS),
    "done-": [*deeds.DEEDS, "target", "note", "call", "night", "password", "clinic", "people"],
    "set-": [*clinic.LADDERS, *clinic.MINUTES, "nights", "max_nights", "missed_limit", "watch_days"],
    "texts-": ["parent", "child", "clinician"],
    "urgency-": [urgency.name.lower() for urgency in Urgency],
    "did-": [name for name in EVENTS if name not in UNTOLD],
}
"""Texts that are named by what they are about, with all that this can be."""


def named() -> set[str]:
    """Every id that the desk can ask for."""
    sources = [path.read_text(encoding="utf-8") for ending in ("py", "html") for path in CODE.rglob(f"*.{ending}")]
    outright = {name for source in sources for pattern in NAMED for name in re.findall(pattern, source)}
    outright = {name for name in outright if not name.endswith("-")}
    return outright | {f"{start}{end}" for start, ends in FAMILIES.items() for end in ends}


def test_every_text_is_there_and_none_is_idle() -> None:
    """What code and templates ask for is what the file has, no more and no less."""
    there = set(read(default_folder() / "en" / wording.FILE).entries)

    assert sorted(there) == sorted(named())


@pytest.mark.parametrize(
    ("line", "complaint"),
    [
        ("", "missing"),
        ("skip = Ir { $where }", "variables"),
        ("skip = Ir\nother = Otro", "no such text"),
        ("skip = Ir\nskip = Ir", "twice"),
        ("skip = { $", "mis-formed"),
    ],
)
def test_a_language_that_differs_stops_the_start(tmp_path: Path, line: str, complaint: str) -> None:
    """A missing, idle, doubled or mis-formed text, or other variables, is told with its file and id."""
    for language, words in {"en": "skip = Skip", "es": line, "fr": "skip = Aller"}.items():
        (tmp_path / language).mkdir()
        (tmp_path / language / wording.FILE).write_text(words, encoding="utf-8")

    with pytest.raises(WordingError, match=complaint):
        Wording.load(tmp_path)
