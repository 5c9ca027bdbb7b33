"""Promises about cases: kept whole, kept once, kept in order."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

import pytest
from sqlalchemy import Table, select, text, update

from coachbot.coach.case import Case, State
from coachbot.coach.events import Event, Held, Pressed, Ticked
from coachbot.programme.positions import Position
from coachbot.reading.readings import Word
from coachbot.store import Change, LawError, NoSuchCaseError, StaleCaseError, Store, Transaction
from coachbot.store.tables import alerts, cases, nights, swallows
from helpers.cases import EVENING, MINUTE, draft, on_day, save, with_alert, with_mark, with_night


def add(store: Store, case: Case | None = None, due_at: datetime | None = None) -> Case:
    """A new case in the store."""
    return store.run(lambda tx: tx.cases.add(case or draft(), EVENING, due_at))


def change(store: Store, new: Case, event: Event | None = None, due_at: datetime | None = None) -> None:
    """Load the case and keep `new` in its place."""
    store.run(lambda tx: save(tx, tx.cases.load(new.id), new, event, due_at))


def load(store: Store, case_id: int) -> Case:
    """The case as the store has it."""
    return store.run(lambda tx: tx.cases.load(case_id))


def rows(store: Store, table: Table) -> list[dict[str, Any]]:
    """All rows of a table."""
    return store.run(lambda tx: [dict(row) for row in tx._connection.execute(select(table)).mappings()])


def test_a_new_case_gets_an_id_and_comes_back_as_it_was(store: Store) -> None:
    """What is added is what is loaded, but for the id."""
    case = add(store)

    assert case.id > 0
    assert load(store, case.id) == case == replace(draft(), id=case.id)


def test_a_case_with_all_that_it_can_hold_comes_back_equal(store: Store) -> None:
    """Nights, swallows, notes, alerts and instants survive the way through JSON and the seal."""
    case = with_alert(with_night(add(store)))
    case = with_mark(case, Position.LEFT, Word.NOT_DOWN, note="trop d'eau 💧")
    change(store, case)

    assert load(store, case.id) == case


def test_there_is_no_case_that_was_never_added(store: Store) -> None:
    """An unknown id is an error that names it."""
    with pytest.raises(NoSuchCaseError, match="there is no case 4711"):
        load(store, 4711)


def test_rows_follow_the_case(store: Store) -> None:
    """Each rating has its row: number, not down, skipped, told apart; a correction changes only its own."""
    case = with_night(add(store))
    change(store, case)
    for position, mark in ((Position.CENTER, 2), (Position.LEFT, Word.NOT_DOWN), (Position.UP, Word.SKIPPED)):
        case = with_mark(case, position, mark)
        change(store, case)
    case = with_mark(case, Position.CENTER, 5)
    change(store, case)

    told = {
        row["position"]: (row["place"], row["rating"], row["went_down"], row["skipped"])
        for row in rows(store, swallows)
    }

    assert told == {"center": (1, 5, True, False), "left": (2, None, False, False), "up": (4, None, False, True)}
    assert [(row["number"], row["status"]) for row in rows(store, nights)] == [(1, "partial")]


def test_alerts_are_rows_too(store: Store) -> None:
    """An alert stands open in its table until somebody has acknowledged it."""
    case = with_alert(add(store))
    change(store, case)
    [before] = rows(store, alerts)
    taken = replace(case.alerts[0], acknowledged=EVENING + MINUTE, acknowledged_by="Dr Lindqvist")
    change(store, replace(case, alerts=(taken,)))
    [after] = rows(store, alerts)

    assert (before["level"], before["acknowledged_at"]) == (4, None)
    assert (after["acknowledged_at"], after["acknowledged_by"]) == (EVENING + MINUTE, "Dr Lindqvist")


def test_a_night_entered_from_paper_moves_the_others_on(store: Store) -> None:
    """Where days trade numbers, rows and ratings follow, although each day may stand only once."""
    case = with_mark(with_night(with_night(add(store))), Position.UP, 3)
    change(store, case)
    first, second = case.nights
    case = on_day(on_day(case, 1, second.day), 2, first.day)
    change(store, case)

    assert [(row["number"], row["day"]) for row in rows(store, nights)] == [(1, second.day), (2, first.day)]
    assert [(row["night"], row["day"], row["rating"]) for row in rows(store, swallows)] == [(2, first.day, 3)]


def test_two_nights_on_one_day_are_refused(store: Store) -> None:
    """Law 6, by the database: never two prompts for one night."""
    case = with_night(with_night(add(store)))

    with pytest.raises(LawError):
        change(store, on_day(case, 2, case.nights[0].day))

    assert load(store, case.id).nights == ()


def test_a_sixty_first_night_is_refused(store: Store) -> None:
    """Law 6, by the database: never more nights than any protocol may allow."""
    case = add(store)
    for _ in range(60):
        case = with_night(case)
    change(store, case)

    with pytest.raises(LawError):
        change(store, with_night(case))


@pytest.mark.parametrize("mark", [0, 6])
def test_a_rating_outside_one_to_five_is_refused(store: Store, mark: int) -> None:
    """A rating that the scale does not have cannot be kept."""
    case = with_mark(with_night(add(store)), Position.UP, mark)

    with pytest.raises(LawError):
        change(store, case)


def test_history_holds_the_opening_and_every_event_in_order(store: Store) -> None:
    """The first row is the case as it was opened, then one row for each event."""
    case = add(store)
    pressed = Pressed(contact=3, data="rate:1:up:4", message=9)
    change(store, case, pressed)
    change(store, case, Held(by="Dr Lindqvist", note="cough"))

    told = store.run(lambda tx: list(tx.cases.history(case.id)))

    assert told == [(EVENING, case), (EVENING, pressed), (EVENING, Held(by="Dr Lindqvist", note="cough"))]


@pytest.mark.parametrize("column", ["case_id", "seq", "kind", "actor", "at"])
def test_history_cannot_be_changed(store: Store, column: str) -> None:
    """What happened, when and in which order is only ever added to, whoever asks the database."""
    case = add(store)

    with pytest.raises(LawError, match="only ever added to"):
        store.run(lambda tx: tx._connection.execute(text(f"UPDATE history SET {column} = {column}")))
    assert len(store.run(lambda tx: list(tx.cases.history(case.id)))) == 1


def test_the_clock_finds_who_is_due_longest_first(store: Store) -> None:
    """Only cases whose time has come are claimed, in the order in which it came, as many as asked for."""
    late, later, tomorrow, never = (
        add(store, due_at=due) for due in (EVENING - 2 * MINUTE, EVENING, EVENING + timedelta(days=1), None)
    )

    assert [case.id for case in store.run(lambda tx: tx.cases.claim_due(EVENING, 10))] == [late.id, later.id]
    assert [case.id for case in store.run(lambda tx: tx.cases.claim_due(EVENING, 1))] == [late.id]
    assert store.run(lambda tx: tx.cases.next_due()) == EVENING - 2 * MINUTE
    assert {tomorrow.id, never.id} <= {case.id for case in store.run(lambda tx: list(tx.cases.all()))}


def test_a_case_that_cannot_be_carried_out_is_put_off(store: Store) -> None:
    """One poisoned case does not stand in the way of the others for ever."""
    case = add(store, due_at=EVENING)
    store.run(lambda tx: tx.cases.postpone(case.id, EVENING + MINUTE))

    assert store.run(lambda tx: tx.cases.claim_due(EVENING, 10)) == []


def test_a_case_that_was_not_loaded_here_cannot_be_saved(store: Store) -> None:
    """What was decided on an older reading of the case is refused."""
    case = add(store)

    with pytest.raises(StaleCaseError, match="not loaded"):
        store.run(lambda tx: save(tx, case, with_night(case)))


def test_a_case_changed_under_our_hands_cannot_be_saved(store: Store) -> None:
    """The version is checked once more as the row is written."""
    case = add(store)

    def work(tx: Transaction) -> None:
        loaded = tx.cases.load(case.id)
        tx._connection.execute(update(cases).values(version=cases.c.version + 1))
        save(tx, loaded, with_night(loaded))

    with pytest.raises(StaleCaseError, match="changed by somebody else"):
        store.run(work)
    assert load(store, case.id) == case


def test_many_are_saved_as_one_would_be(store: Store) -> None:
    """The bedtime wave writes the same rows as single saves do."""
    some = [add(store, due_at=EVENING) for _ in range(5)]

    def wave(tx: Transaction) -> None:
        claimed = tx.cases.claim_due(EVENING, 10)
        changes = [Change(old=old, new=with_night(old), event=Ticked(), due_at=None) for old in claimed]
        tx.cases.save(changes, EVENING)

    store.run(wave)

    assert [load(store, case.id) for case in some] == [with_night(case) for case in some]
    assert [row["case_id"] for row in rows(store, nights)] == [case.id for case in some]


def test_an_error_keeps_nothing(store: Store) -> None:
    """A transaction whose work fails at its end leaves no trace of its beginning."""
    case = add(store)

    def work(tx: Transaction) -> None:
        save(tx, tx.cases.load(case.id), with_night(case))
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        store.run(work)
    assert load(store, case.id) == case
    assert rows(store, nights) == []


def test_a_time_without_a_zone_is_refused(store: Store) -> None:
    """The store keeps instants: a naive time is an error where it is given, not an hour's mistake later."""
    with pytest.raises(ValueError, match="no time zone"):
        add(store, due_at=EVENING.replace(tzinfo=None))


def test_an_instant_given_in_another_zone_comes_back_in_utc(store: Store) -> None:
    """Both databases give aware UTC back, to the microsecond."""
    due = datetime.fromisoformat("2026-03-29T03:30:00.123456+02:00")
    add(store, due_at=due)

    [summary] = store.run(lambda tx: list(tx.cases.summaries()))

    assert summary.due_at == due
    assert summary.due_at.utcoffset() == timedelta(0)


def test_the_list_of_cases_tells_state_and_open_alerts(store: Store) -> None:
    """The desk's list needs no case to be opened."""
    quiet = add(store)
    held = with_alert(replace(add(store), state=State.ON_HOLD))
    change(store, held)

    told = [(one.id, one.state, one.open_alerts) for one in store.run(lambda tx: list(tx.cases.summaries()))]

    assert told == [(quiet.id, State.INVITED, 0), (held.id, State.ON_HOLD, 1)]


def test_days_are_dates_of_the_family(store: Store) -> None:
    """A night's day is a local date, kept as it is."""
    case = on_day(with_night(add(store)), 1, date(2026, 10, 25))
    change(store, case)

    assert [row["day"] for row in rows(store, nights)] == [date(2026, 10, 25)]
