"""The pace of a channel, against the limits that the Bot API's FAQ gives: 30 a second in all, 1 a second to a chat."""

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from coachbot.channels.pace import NO_WAIT, Pace

START = datetime(2026, 3, 1, 20, 0, tzinfo=UTC)
SECOND = timedelta(seconds=1)


def pace() -> Pace:
    """The pace that the Telegram channel keeps."""
    return Pace(per_second=25, burst=5, per_address=SECOND)


def test_a_message_to_each_of_a_few_people_goes_at_once() -> None:
    """A small burst does not wait."""
    paced = pace()

    assert [paced.ask(f"chat {n}", START) for n in range(5)] == [NO_WAIT] * 5


def test_a_second_message_to_one_person_waits_out_the_second() -> None:
    """One a second to a chat, and the wait that is told is enough."""
    paced = pace()
    paced.ask("chat", START)

    wait = paced.ask("chat", START + 0.3 * SECOND)

    assert wait == 0.7 * SECOND
    assert paced.ask("chat", START + 0.3 * SECOND + wait) == NO_WAIT


def test_a_hold_stops_everyone_and_the_longest_counts() -> None:
    """A 429 with a shorter wait, heard later, does not shorten the one that stands."""
    paced = pace()
    paced.hold(30 * SECOND, START)
    paced.hold(3 * SECOND, START + SECOND)

    assert paced.ask("one", START + 2 * SECOND) == 28 * SECOND
    assert paced.ask("other", START + 29 * SECOND) == SECOND
    assert paced.ask("one", START + 30 * SECOND) == NO_WAIT


def test_a_clock_set_back_gives_nothing_away() -> None:
    """Time that runs backwards counts as standing still."""
    paced = pace()
    for n in range(5):
        paced.ask(f"chat {n}", START)

    assert paced.ask("chat 5", START - timedelta(hours=1)) > NO_WAIT
    assert paced.ask("chat 0", START - timedelta(hours=1)) > NO_WAIT


def test_a_clock_set_back_stops_nothing_for_long() -> None:
    """What was to be waited for is waited for by the new clock, not until the old one comes round."""
    paced = pace()
    for n in range(5):
        paced.ask(f"chat {n}", START)
    paced.hold(30 * SECOND, START)
    back = START - timedelta(hours=1)

    assert paced.ask("chat 0", back) == 30 * SECOND
    assert paced.ask("chat 0", back + 31 * SECOND) == NO_WAIT


@given(
    st.lists(
        st.tuples(st.integers(0, 4), st.floats(0, 0.4), st.one_of(st.none(), st.integers(1, 3))),
        min_size=1,
        max_size=150,
    )
)
def test_no_second_ever_holds_more_than_the_limits(asked: list[tuple[int, float, int | None]]) -> None:
    """In any one second at most 30 in all and one to a chat; nothing at all while held."""
    paced, now = pace(), START
    gone: list[tuple[datetime, str]] = []
    held = START
    for n, (chat, step, hold) in enumerate(asked):
        now += timedelta(seconds=step)
        if hold:
            paced.hold(hold * SECOND, now)
            held = max(held, now + hold * SECOND)
        for address in (f"chat {chat}", *(f"crowd {n} {m}" for m in range(8))):
            if paced.ask(address, now) == NO_WAIT:
                assert now >= held
                gone.append((now, address))

    for at, address in gone:
        within = [other for when, other in gone if at <= when < at + SECOND]
        assert len(within) <= 30
        assert within.count(address) == 1


@given(st.floats(0, 3), st.integers(1, 40))
def test_the_wait_that_is_told_is_enough(later: float, before: int) -> None:
    """Asking again after it lets the message go, to the nearest microsecond, which is the clock's own grain."""
    paced = pace()
    waits = [paced.ask(f"chat {n}", START) for n in range(before)]
    now = START + timedelta(seconds=later)

    wait = paced.ask("chat 0", now)

    assert waits[0] == NO_WAIT
    assert wait == NO_WAIT or paced.ask("chat 0", now + wait) <= timedelta(microseconds=1)


@given(st.floats(0, 3), st.integers(0, 40), st.booleans())
def test_there_is_room_for_just_as_many_as_are_let_through(later: float, before: int, held: bool) -> None:
    """What the outbox claims by `room`, it can send."""
    paced = pace()
    for n in range(before):
        paced.ask(f"chat {n}", START)
    now = START + timedelta(seconds=later)
    if held:
        paced.hold(SECOND, now)

    room = paced.room(now)

    assert [paced.ask(f"new chat {n}", now) == NO_WAIT for n in range(room + 1)] == [True] * room + [False]
