"""The catalogue: what it refuses to load, how it fills in, what it does when it cannot."""

import shutil
from collections.abc import Callable
from datetime import date, time
from functools import cache
from pathlib import Path
from typing import cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import Audience
from coachbot.programme.positions import Position
from coachbot.reading.readings import Word
from coachbot.voice.catalogue import Catalogue, CatalogueError, Form
from coachbot.voice.sources import default_folder
from coachbot.voice.vocabulary import LANGUAGES

COMMON: dict[str, Value] = {"child": "Sam", "emergency": "112", "tone": "middle"}
PARENT, CHILD, CLINICIAN = Audience.PARENT, Audience.CHILD, Audience.CLINICIAN


@cache
def ours() -> Catalogue:
    """The project's own texts."""
    return Catalogue.load()


@pytest.fixture
def catalogue() -> Catalogue:
    """The same, as most tests take it."""
    return ours()


@pytest.fixture
def prompts(tmp_path: Path) -> Path:
    """A copy of the texts that a test may spoil."""
    folder = tmp_path / "prompts"
    shutil.copytree(default_folder(), folder)
    return folder


def say(
    catalogue: Catalogue,
    name: str,
    language: str = "en",
    audience: Audience = PARENT,
    form: Form = "chat",
    **args: Value,
) -> str:
    """One text with the usual common values."""
    return catalogue.render(Line(id=name, args=args), language=language, audience=audience, common=COMMON, form=form)


def edit(path: Path, change: Callable[[str], str]) -> None:
    """Rewrite a file."""
    path.write_text(change(path.read_text(encoding="utf-8")), encoding="utf-8")


SPOILED: list[tuple[str, Callable[[str], str], str, str]] = [
    ("parent", lambda text: text.replace("note-kept =", "note-lost ="), "note-kept", "missing"),
    ("parent", lambda text: text + "\nnobody-says-this = Hello\n", "nobody-says-this", "no such text"),
    ("parent", lambda text: text + "\nnote-kept = Once more\n", "note-kept", "twice"),
    ("parent", lambda text: text + "\nclock = 7\n", "clock", "no such text"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { $mood } "), "note-kept", "$mood"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { $position } "), "note-kept", "$position"),
    (
        "parent",
        lambda text: text.replace("night-best = ", "night-best = { $position ->\n   *[left] L\n} "),
        "night-best",
        "-key",
    ),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { candy } "), "note-kept", "$size"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { nothing } "), "note-kept", "nothing"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { -brand } "), "note-kept", "-brand"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { NUMBER(3) } "), "note-kept", "NUMBER"),
    ("parent", lambda text: text.replace("note-kept = ", "note-kept = { "), "note-kept", "mis-formed"),
    ("parent", lambda text: text + "\n    .long = Longer\n", "tip-gag-2", ".long"),
    ("child", lambda text: text + "\nalert-again = Hello\n", "alert-again", "no such text"),
    ("shared", lambda text: text + "\nnote-kept = Hello\n", "note-kept", "stands also in"),
    ("shared", lambda text: text.replace("\nnone =", "\nnothing ="), "none", "missing"),
    ("clinician", lambda text: text + "\nsummary =\n    .sms = Short\n", "summary", "no words"),
]


@pytest.mark.parametrize(("file", "change", "name", "what"), SPOILED)
def test_a_fault_in_any_language_stops_the_start_with_its_file_and_id(
    prompts: Path, file: str, change: Callable[[str], str], name: str, what: str
) -> None:
    """What is missing, unknown, double, mis-formed or given a strange variable never reaches a phone."""
    edit(prompts / "fr" / f"{file}.ftl", change)
    with pytest.raises(CatalogueError) as refused:
        Catalogue.load(prompts)
    found = [fault for fault in refused.value.faults if fault.id == name and what in fault.what]
    assert found
    assert all("/fr/" in fault.file for fault in found)


def test_all_faults_are_listed_at_once(prompts: Path) -> None:
    """Whoever mends texts sees everything in one go."""
    edit(prompts / "en" / "parent.ftl", lambda text: text.replace("note-kept =", "note-lost ="))
    (prompts / "es" / "child.ftl").unlink()
    (prompts / "fr" / "child.ftl").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(CatalogueError) as refused:
        Catalogue.load(prompts)
    text = str(refused.value)
    for part in ("en/parent.ftl: note-kept: missing", "note-lost", "es/child.ftl: file", "fr/child.ftl: file"):
        assert part in text


def test_a_clinic_may_put_its_own_words_in_place_of_single_texts(tmp_path: Path) -> None:
    """An override holds only what it changes, and the rest stays ours."""
    (tmp_path / "es").mkdir()
    (tmp_path / "es" / "parent.ftl").write_text("note-kept = Lo guardamos, { $child }.\n", encoding="utf-8")
    catalogue = Catalogue.load(overrides=tmp_path)
    assert say(catalogue, "note-kept", "es") == "Lo guardamos, Sam."
    assert say(catalogue, "note-kept", "en") == say(ours(), "note-kept", "en")
    assert say(catalogue, "passed-on", "es") == say(ours(), "passed-on", "es")


@pytest.mark.parametrize(
    ("path", "content", "what"),
    [
        ("es/parent.ftl", "note-keep = Hola\n", "no such text"),
        ("es/parent.ftl", "note-kept = { $age }\n", "$age"),
        ("es/parents.ftl", "note-kept = Hola\n", "never read"),
        ("de/parent.ftl", "note-kept = Hallo\n", "never read"),
    ],
)
def test_an_override_is_checked_like_our_own(tmp_path: Path, path: str, content: str, what: str) -> None:
    """A clinic's mistake is found at the start, even a file that would never be read."""
    (tmp_path / path).parent.mkdir()
    (tmp_path / path).write_text(content, encoding="utf-8")
    with pytest.raises(CatalogueError, match=what.replace("$", r"\$")):
        Catalogue.load(overrides=tmp_path)


def test_a_position_reads_in_its_language(catalogue: Catalogue) -> None:
    """Left is left in each."""
    shown = [say(catalogue, "night-best", language, position=Position.LEFT) for language in LANGUAGES]
    assert [text.split()[-1] for text in shown] == ["Left.", "Izquierda.", "Gauche."]


def test_an_order_is_a_numbered_list_in_chat_and_one_line_in_a_text_message(catalogue: Catalogue) -> None:
    """The list is as short as its form allows."""

    def prompt(form: Form) -> str:
        order = (Position.UP, Position.LEFT)
        return say(catalogue, "night-prompt", form=form, night=3, nights=14, candy="mint", size=8, order=order)

    assert "1. Up\n2. Left\n" in prompt("chat")
    assert "1 Up, 2 Left." in prompt("sms")


def test_marks_read_as_words(catalogue: Catalogue) -> None:
    """Each position stands with what was said of it."""
    marks = ((Position.UP, 4), (Position.LEFT, Word.NOT_DOWN), (Position.DOWN, Word.SKIPPED))
    assert "Up: 4\nLeft: did not go down\nDown: skipped" in say(catalogue, "night-done", marks=marks)
    assert "Arriba: 4" in say(catalogue, "night-done", "es", marks=marks)


@pytest.mark.parametrize(
    ("at", "en", "es", "fr"),
    [
        (time(19, 30), "7:30 pm", "19:30", "19\u00a0h\u00a030"),
        (time(19, 5), "7:05 pm", "19:05", "19\u00a0h\u00a005"),
        (time(19, 0), "7:00 pm", "19:00", "19\u00a0h"),
        (time(0, 15), "12:15 am", "0:15", "0\u00a0h\u00a015"),
        (time(12, 0), "12:00 pm", "12:00", "12\u00a0h"),
    ],
)
def test_a_time_reads_as_the_clock_is_read_there(catalogue: Catalogue, at: time, en: str, es: str, fr: str) -> None:
    """Twelve hours in English, twenty-four in Spanish and French (common practice, no source)."""
    for language, shown in (("en", en), ("es", es), ("fr", fr)):
        assert shown in say(catalogue, "resumed", language, bedtime=at)


def test_a_date_reads_as_weekday_and_day(catalogue: Catalogue) -> None:
    """2026-12-01 is a Tuesday by the Gregorian calendar; French says "1er"."""
    day = date(2026, 12, 1)
    assert "Tuesday, December 1." in say(catalogue, "paused-until", day=day)
    assert "martes 1 de diciembre." in say(catalogue, "paused-until", "es", day=day)
    assert "mardi 1er décembre." in say(catalogue, "paused-until", "fr", day=day)


def test_the_tone_fits_the_age(catalogue: Catalogue) -> None:
    """A child of five and one of fifteen are not spoken to alike."""
    said = {
        tone: catalogue.render(
            Line(id="lesson-posture"), language="en", audience=CHILD, common={**COMMON, "tone": tone}
        )
        for tone in ("young", "middle", "teen")
    }
    assert len(set(said.values())) == 3
    assert "king or a queen" in said["young"]


def test_a_name_is_set_as_it_stands(catalogue: Catalogue) -> None:
    """Whatever looks like markup in a name is only a name."""
    for name in ("{ $emergency }", "<b>Al</b>", "José Ñandú", "李小龙", "a" * 40):
        common = {**COMMON, "child": name}
        shown = catalogue.render(Line(id="certificate"), language="en", audience=PARENT, common=common)
        assert shown.startswith(f"This is for {name}.")


@given(name=st.text(min_size=1, max_size=3000), tone=st.text(max_size=8))
def test_no_name_breaks_a_text(name: str, tone: str) -> None:
    """Whatever a name is made of, it stands in the text as it is, and an unknown tone gets the middle wording."""
    common = {"child": name, "emergency": "112", "tone": tone}
    shown = ours().render(Line(id="consent-wait"), language="en", audience=CHILD, common=common)
    assert shown == f"Hi {name}! A grown-up has to say yes first. Ask them to look at their phone."
    posture = ours().render(Line(id="lesson-posture"), language="en", audience=CHILD, common={**common, "tone": "old"})
    assert posture.startswith("Sit tall on a firm chair.")


def test_long_words_of_a_clinician_arrive_whole(catalogue: Catalogue) -> None:
    """A message as long as the channel allows is not cut."""
    words = "word " * 800
    assert words in say(catalogue, "from-clinician", words=words)


def test_an_alert_without_evidence_says_so(catalogue: Catalogue) -> None:
    """No empty quotes."""
    shown = say(catalogue, "alert", audience=CLINICIAN, level="urgent", category="choked", words="", code="12-1")
    assert "What decided: none" in shown


@pytest.mark.parametrize("form", ["chat", "sms"])
def test_a_text_that_cannot_be_filled_in_is_replaced_by_a_safe_one(catalogue: Catalogue, form: Form) -> None:
    """Neither an id nor a placeholder ever reaches a phone."""
    strange = cast("Value", object())
    for args in ({}, {"position": strange}):
        line = Line(id="ask-swallow", args=args)
        shown = catalogue.render(line, language="en", audience=PARENT, common={}, form=form)
        assert "emergency number" in shown
        assert "{" not in shown
        assert "ask-swallow" not in shown


def test_an_unknown_text_audience_or_language_is_the_callers_fault(catalogue: Catalogue) -> None:
    """No guess is made for an id that nobody wrote, nor for a reader who must not have it."""
    for name, audience, language in (("no-such", PARENT, "en"), ("alert", CHILD, "en"), ("help", PARENT, "de")):
        with pytest.raises(KeyError):
            say(catalogue, name, language, audience)


def test_a_text_message_is_folded_into_the_cheap_alphabet(catalogue: Catalogue) -> None:
    """Accents that would cost double are dropped; those in the alphabet stay."""
    shown = say(catalogue, "lesson-sip", "es", form="sms")
    assert "¿Cuánta" not in shown
    assert "¿Cuanta agua?" in shown
