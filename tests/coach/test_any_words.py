"""Any words at all: no reply crashes the coach, and none is dropped.

The suite gives some thousand; COACHBOT_TEST_REPLIES=100000 is the long form.
"""

import os
import random
from collections.abc import Iterator

from coachbot.coach.case import Case, Role
from coachbot.coach.decide import decide
from coachbot.coach.events import Replied
from helpers.conversation import CHILD, PARENT, Conversation, with_child

REPLIES = int(os.environ.get("COACHBOT_TEST_REPLIES", "3000"))

EMOJI = "🙂😭👍🔋🧲💊⭐1️⃣5️⃣⬅️➡️⬆️⬇️🇨🇦👩‍👧"
RIGHT_TO_LEFT = "اختنقت ابنتي نعم 4 שלום לא \u202e\u2067"
ENGLISH = (
    "left right center up down no yes not choking choke blue lips cough help stop pause skip better mint water throat"
)
OTHER = (
    "izquierda derecha bajó asfixia gauche droite avaler 3/5 7:30 10 0 1 2 3 4 5 half all rest best first last and but"
)
WORDS = (*ENGLISH.split(), *OTHER.split())
CHARACTERS = [
    chr(code) for block in ((0x20, 0x7F), (0xA0, 0x250), (0x370, 0x500), (0x4E00, 0x4E80)) for code in range(*block)
]


def replies(chance: random.Random) -> Iterator[str]:
    """Words in any order, bytes read as text, emoji, right-to-left, and now and then ten thousand signs of it."""
    while True:
        kind = chance.randrange(6)
        size = chance.choice((1, 3, 8, 20, 60)) if chance.random() > 0.002 else 10_000
        if kind < 3:
            yield " ".join(chance.choice(WORDS) for _ in range(size))[:10_000]
        elif kind == 3:
            yield chance.randbytes(size).decode("utf-8", errors="replace")
        else:
            letters = (CHARACTERS, [*EMOJI, *RIGHT_TO_LEFT, *" 12345"])[kind - 4]
            yield "".join(chance.choice(letters) for _ in range(size))


def states() -> list[Case]:
    """A family in each of the states in which it may write."""
    night = with_child().at("19:30")
    rated = with_child().at("19:30").says("4 4 4 4 4")
    noted = with_child().at("19:30").says("4 4 4 4 4").presses("best:1:left")
    return [
        Conversation().joins().joins(CHILD, Role.CHILD).case,
        with_child().case,
        night.case,
        rated.case,
        noted.case,
        with_child().says("pause").case,
        with_child().says("she is choking and cant breathe").case,
        with_child().says("stop").case,
    ]


def test_no_reply_crashes_the_coach_and_none_is_dropped() -> None:
    """Each is answered, recorded, or put before the clinician."""
    chance = random.Random(20261125)
    cases, now = states(), with_child().at("19:31").now
    for number, text in zip(range(REPLIES), replies(chance), strict=False):
        case = chance.choice(cases)
        event = Replied(contact=chance.choice((PARENT, CHILD)), text=text, message=number)
        decision = decide(case, event, now)

        assert decision.actions or decision.case != case, f"{text!r} was dropped"
