"""Segments are money: what every text costs as a text message, counted by us and by a library that others wrote.

Sources: 3GPP TS 23.038 section 6.2.1 and TS 23.040 section 9.2.3.24.1; the library is PyPI's `smsutil`.
"""

import itertools
from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
import smsutil
from hypothesis import given
from hypothesis import strategies as st

from coachbot.channels.sms.segments import DEFAULT, UCS2
from coachbot.channels.sms.segments import segments as cut
from coachbot.coach.actions import Line, Value
from coachbot.coach.case import Child, Role
from coachbot.coach.texts import TEXTS, Audience
from coachbot.programme.protocol import Candy, CandyKind, Protocol
from coachbot.service.writer import Reader, Writer, common_values
from coachbot.voice.catalogue import Catalogue
from coachbot.voice.gsm import ALPHABET, EXTENSION, segments
from coachbot.voice.proof import SAMPLES, TONES
from coachbot.voice.vocabulary import LANGUAGES
from helpers.conversation import Conversation, invited
from helpers.segments import PUBLISHED

CHILD = "Maximiliana-Luz"
"""A long name to be called by; the longest that enrolment takes, forty letters, is no name to be called by."""

ALWAYS = {"consent-ask": 5}
"""What may take more than three segments."""


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """The project's own texts."""
    return Catalogue.load()


@pytest.mark.parametrize(("text", "count"), PUBLISHED)
def test_a_text_is_cut_as_it_is_counted(text: str, count: int) -> None:
    """By the channel, by the count, and by the library alike."""
    assert len(cut(text)) == segments(text) == len(smsutil.split(text).parts) == count


LETTERS = st.one_of(st.sampled_from(sorted(ALPHABET | EXTENSION)), st.characters(exclude_categories=["Cs"]))


@given(st.text(LETTERS, min_size=1, max_size=400))
def test_any_text_is_cut_as_the_library_cuts_it(text: str) -> None:
    """Piece by piece, also in the alphabet; what is sent and what is counted never differ."""
    pieces = cut(text)
    theirs = smsutil.split(text)
    assert len(pieces) == segments(text) == len(theirs.parts)
    assert (pieces[0].coding == UCS2) == (theirs.encoding == "utf_16_be")


def everything(catalogue: Catalogue, language: str) -> Iterator[tuple[str, str]]:
    """Every text in its typed form, for everyone who may be told it, with a long name: (where, words)."""
    for name, text in TEXTS.items():
        for audience, tone in itertools.product(sorted(text.audiences), TONES):
            line = Line(id=name, args={variable: SAMPLES[variable] for variable in text.variables})
            common: dict[str, Value] = {"child": CHILD, "emergency": "112", "tone": tone}
            words = catalogue.render(line, language=language, audience=audience, common=common, form="sms")
            yield f"{language}/{audience}/{name}/{tone}", words


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_every_text_costs(
    catalogue: Catalogue, language: str, record_property: Callable[[str, object], None]
) -> None:
    """Septets and segments of each, kept in the run's report; the cheap alphabet throughout, three segments at most."""
    for where, words in everything(catalogue, language):
        pieces = cut(words)
        septets = sum(len(piece.data) - 6 * piece.headed for piece in pieces)
        record_property(where, f"{septets} septets, {len(pieces)} segments")
        assert {piece.coding for piece in pieces} == {DEFAULT}, where
        assert len(pieces) == segments(words) == len(smsutil.split(words).parts), where
        assert len(pieces) <= ALWAYS.get(where.split("/")[2], 3), where


@pytest.mark.parametrize(("kind", "role"), list(itertools.product(CandyKind, Role)))
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_nightly_prompt_as_it_goes_out_takes_two_segments(
    catalogue: Catalogue, language: str, role: Role, kind: CandyKind
) -> None:
    """All its lines as the coach chooses them and the writer puts them together."""
    protocol = Protocol(candies=(Candy(kind=kind, size_mm=12),))
    opening = replace(invited(protocol), child=Child(name=CHILD, birth_year=2017), language=language)
    talk = Conversation(opening).learns().at("19:30")
    [told] = [say.lines for say in talk.heard if say.key.startswith("prompt:")]
    audience = Audience.CHILD if role is Role.CHILD else Audience.PARENT
    reader = Reader(audience=audience, language=language, channel="sms", to={})
    words = Writer(catalogue).words(told, reader, common_values(talk.case, talk.now))

    assert [line.id for line in told] == ["night-prompt", "night-howto-1", "night-safety", "ask-swallow"]
    assert {piece.coding for piece in cut(words)} == {DEFAULT}
    assert len(cut(words)) <= 2, words


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_cheer_before_a_night_is_a_message_of_its_own(catalogue: Catalogue, language: str) -> None:
    """After missed nights a kind word is worth a segment; the night's order keeps to its two."""
    talk = Conversation(replace(invited(), child=Child(name=CHILD, birth_year=2017), language=language))
    talk.learns().misses().at("19:30")
    cheer, told = (say.lines for say in talk.heard if say.key.startswith(("cheer:", "prompt:")))
    reader = Reader(audience=Audience.PARENT, language=language, channel="sms", to={})
    common = common_values(talk.case, talk.now)

    assert cheer[0].id.startswith("cheer-one-missed")
    assert len(cut(Writer(catalogue).words(cheer, reader, common))) == 1
    assert len(cut(Writer(catalogue).words(told, reader, common))) <= 2
