"""What was said on stage, as Markdown to be read aloud: when, who, the words, pictures and buttons in brackets."""

from collections.abc import Iterator
from datetime import datetime
from itertools import groupby
from pathlib import Path

from coachbot.programme.zones import local
from coachbot.rehearsal.stage import Spoken, Stage
from coachbot.voice.wording import Wording


def transcript(stage: Stage) -> str:
    """All that was said on every phone, oldest first; what went to several phones alike stands once."""
    case = stage.case
    wording = Wording.load("rehearsal.ftl")
    blocks = [f"# {case.child.name}"]
    said = sorted(_said(stage), key=lambda one: (one[0], one[2].sent is not None))
    for day, moments in groupby(said, key=lambda one: local(one[0], case.zone).date()):
        blocks.append(f"## {day:%Y-%m-%d}")
        for (at, _), alike in groupby(moments, key=lambda one: (one[0], _words(wording, case.language, one[2]))):
            spoken = list(alike)
            phones = ", ".join(phone for _, phone, _ in spoken)
            who = "transcript-own" if spoken[0][2].sent is None else "transcript-sent"
            time = f"{local(at, case.zone):%H:%M}"
            blocks.append(wording.text(case.language, who, time=time, phones=phones))
            blocks.append(_words(wording, case.language, spoken[0][2]))
    return "\n\n".join(blocks) + "\n"


def _said(stage: Stage) -> Iterator[tuple[datetime, str, Spoken]]:
    for phone, spoken in stage.spoken.items():
        yield from ((one.at, phone, one) for one in spoken)


def _words(wording: Wording, language: str, spoken: Spoken) -> str:
    return "\n>\n".join(_quoted(part) for part in _parts(wording, language, spoken))


def _parts(wording: Wording, language: str, spoken: Spoken) -> Iterator[str]:
    if spoken.sent is None:
        yield spoken.own or ""
        return
    if file := spoken.sent.file:
        kind = "picture" if file.media.startswith("image/") else "file"
        yield wording.text(language, f"transcript-{kind}", name=Path(file.name).stem)
    yield spoken.sent.text
    if spoken.sent.buttons:
        yield "\n".join(" ".join(f"[{label}]" for label, _ in row) for row in spoken.sent.buttons)


def _quoted(part: str) -> str:
    """A part as a Markdown quotation that keeps its lines."""
    return "  \n".join(f"> {line}".rstrip() for line in part.splitlines())
