"""Promises about how SQLite looks for work: by index, however much else there is. Read in its plans, not on a clock."""

from collections.abc import Callable
from typing import Any

import pytest
from sqlalchemy import event

from coachbot.coach.actions import Urgency
from coachbot.coach.events import Outcome
from coachbot.store import Envelope, Store, Transaction
from conftest import KEY
from helpers.cases import EVENING, MINUTE


def plan(tx: Transaction, work: Callable[[Transaction], object]) -> str:
    """SQLite's plans for all statements that the work sends, a step a line."""
    sent: list[tuple[str, Any]] = []
    connection = tx._connection

    def keep(_connection: Any, _cursor: Any, statement: str, parameters: Any, *_rest: Any) -> None:
        sent.append((statement, parameters))

    event.listen(connection, "before_cursor_execute", keep)
    work(tx)
    event.remove(connection, "before_cursor_execute", keep)
    steps = [
        row.detail
        for statement, parameters in sent
        if not statement.startswith("INSERT")
        for row in connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", parameters)
    ]
    return "\n".join(steps)


def claim(tx: Transaction) -> None:
    """Put one message in and take it out."""
    tx.outbox.add([Envelope(case_id=1, key="a", urgency=Urgency.SAFETY, text="", contact_id=1)], EVENING)
    assert tx.outbox.claim(EVENING, 10, MINUTE)


def unnamed(tx: Transaction) -> None:
    """The same words twice by a channel that gives them no name."""
    for _ in range(2):
        tx.messages.receive("sms", None, "777", text="4", button=None, at=EVENING)


@pytest.mark.parametrize(
    ("work", "indexes"),
    [
        (lambda tx: tx.cases.claim_due(EVENING, 9), ["ix_cases_due"]),
        (claim, ["ix_outbox_waiting", "ix_outbox_line", "uq_outbox_in_flight"]),
        (lambda tx: tx.outbox.settle(1, Outcome.SENT, EVENING), []),
        (lambda tx: tx.outbox.lapse(EVENING), ["ix_outbox_lease", "ix_outbox_expiry"]),
        (lambda tx: tx.outbox.take_back(1, list(Urgency), EVENING), ["sqlite_autoindex_outbox_1"]),
        (lambda tx: tx.messages.unread(), ["ix_messages_unread"]),
        (lambda tx: tx.people.find("chat", "777"), ["ix_contacts_address"]),
        (lambda tx: tx.conversation(1), ["sqlite_autoindex_outbox_1", "ix_messages_case_id"]),
        (lambda tx: list(tx.cases.history(1)), []),
        (unnamed, ["ix_messages_address_hash", "ix_contacts_address"]),
        (lambda tx: tx.messages.asked_which("sms", "777", EVENING), ["ix_messages_address_hash"]),
        (lambda tx: tx.outbox.unsent(), ["ix_outbox_waiting", "ix_outbox_lease"]),
        (lambda tx: tx.signs.undelivered(EVENING), ["ix_alerts_open", "sqlite_autoindex_outbox_1"]),
        (lambda tx: tx.signs.unreachable(), ["ix_cases_unreachable"]),
        (lambda tx: tx.cases.idle_since(EVENING), ["ix_cases_idle"]),
        (lambda tx: tx.forget_strangers(1, EVENING), ["ix_messages_case_id", "sqlite_autoindex_outbox_1"]),
        (lambda tx: tx.deliveries.find("sms", ["1", "2"], "777"), ["ix_deliveries_name"]),
    ],
)
def test_work_is_found_by_index(sqlite_url: str, work: Callable[[Transaction], object], indexes: list[str]) -> None:
    """No table is read from end to end for it, only at most an index that holds nothing else."""
    store = Store.open(sqlite_url, KEY)
    steps = store.run(lambda tx: plan(tx, work))
    store.close()

    scans = [step for step in steps.splitlines() if step.startswith("SCAN") and step != "SCAN picked"]
    assert [index for index in indexes if index not in steps] == []
    assert [scan for scan in scans if not any(index in scan for index in indexes)] == []
