"""Laws 3 to 7 of the design, checked from outside: from the database, and from what really arrived on the phones.

One checker for every test of faults. It trusts no counter of the program: it replays each history, triages each reply
anew, and compares the outbox with the channel's own log.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cached_property
from typing import Any

from sqlalchemy import select

from coachbot.coach import events as happened
from coachbot.coach.actions import Urgency
from coachbot.coach.case import Case, State
from coachbot.coach.decide import decide
from coachbot.programme.zones import local
from coachbot.store import Message, Store, Transaction
from coachbot.store.envelopes import Body
from coachbot.store.outbox import _decode as decode_body
from coachbot.store.sealing import Purpose
from coachbot.store.tables import clinicians, contacts, messages, outbox
from coachbot.triage import Level, assess

GRAVE = (Urgency.SAFETY, Urgency.ALERT)
REFUSED = ("never", "gone")
"""How a message stands that its channel will not take: that nobody on duty can be reached is for the health check."""

ENDED_OUT = ("sent", "unknown")
"""How a message stands that may have reached its phone."""

SENDING = timedelta(minutes=1)
"""How long a message may be under way once it was claimed."""

Phone = tuple[str, str]
"""Channel and address."""

LIFTING = (happened.HoldLifted, happened.ClinicianWrote, happened.ClinicianPressed, happened.Ended, happened.Erased)


@dataclass(frozen=True, kw_only=True)
class Posted:
    """One row of the outbox, opened; `phone` is None where nobody is reached any more."""

    case_id: int | None
    key: str
    contact_id: int | None
    urgency: Urgency
    status: str
    created: datetime
    settled: datetime | None
    expires: datetime | None
    phone: Phone | None
    text: str

    @property
    def kind(self) -> str:
        """What the key begins with."""
        return self.key.partition(":")[0]


@dataclass(frozen=True)
class Told:
    """One event of a case, with the case before and after it."""

    at: datetime
    event: happened.Event
    before: Case
    after: Case


@dataclass(frozen=True)
class Kept:
    """All that a store holds, read in one transaction."""

    cases: dict[int, Case]
    histories: dict[int, list[Told]]
    posted: list[Posted]
    messages: list[Message]

    @cached_property
    def by_case(self) -> dict[int, list[Posted]]:
        """The outbox by case."""
        found: dict[int, list[Posted]] = {case_id: [] for case_id in self.cases}
        for one in self.posted:
            found.setdefault(one.case_id or 0, []).append(one)
        return found


def broken_laws(
    store: Store, arrived: Mapping[Phone, Counter[str]], written: Counter[str], now: datetime | None
) -> list[str]:
    """What is broken, each in a sentence; empty when all laws hold.

    Args:
        store: over the database that is looked at.
        arrived: by phone, how often each text arrived there, from the channel's own log.
        written: how often each text was written by families and strangers, as they know it.
        now: the present instant if all has come to rest, so that nothing may be under way or overdue; else None.
    """
    kept = store.run(read_all)
    checks = (
        *_replays(kept),
        *_law_3(kept),
        *_law_4(kept, arrived, now),
        *_law_5(kept, written, settled=now is not None),
        *_law_6(kept),
        *_law_7(kept, arrived, settled=now is not None),
    )
    return list(checks)


def read_all(tx: Transaction) -> Kept:
    """Open everything."""
    cases = {case.id: case for case in tx.cases.all()}
    histories = {case_id: list(_told(tx, case_id)) for case_id in cases}
    ids = tx._connection.execute(select(messages.c.id).order_by(messages.c.id)).scalars()
    received = [found for found in map(tx.messages.get, ids) if found]
    return Kept(cases, histories, list(_posted(tx)), received)


def _told(tx: Transaction, case_id: int) -> Iterator[Told]:
    case: Case | None = None
    for at, event in tx.cases.history(case_id):
        if isinstance(event, Case):
            case = event
            continue
        assert case is not None
        after = decide(case, event, at).case
        yield Told(at, event, case, after)
        case = after


def _posted(tx: Transaction) -> Iterator[Posted]:
    query = (
        select(outbox, contacts.c.channel.label("chat"), contacts.c.address.label("number"))
        .add_columns(clinicians.c.channel.label("own_chat"), clinicians.c.address.label("own_number"))
        .outerjoin(contacts, contacts.c.id == outbox.c.contact_id)
        .outerjoin(clinicians, clinicians.c.id == outbox.c.clinician_id)
        .order_by(outbox.c.id)
    )
    for row in tx._connection.execute(query):
        body = decode_body(tx._sealer.open(Purpose.OUTGOING, row.body))
        yield Posted(
            case_id=row.case_id,
            key=row.key,
            contact_id=row.contact_id,
            urgency=Urgency(row.urgency),
            status=row.status,
            created=row.created_at,
            settled=row.settled_at,
            expires=row.expires_at,
            phone=_phone(tx, row, body),
            text=body.text.strip(),
        )


def _phone(tx: Transaction, row: Any, body: Body) -> Phone | None:
    if body.stranger:
        return body.stranger
    channel, sealed = (row.chat, row.number) if row.contact_id else (row.own_chat, row.own_number)
    return (channel, tx._sealer.open(Purpose.ADDRESS, sealed).decode()) if sealed else None


def _replays(kept: Kept) -> Iterator[str]:
    """The store is the only truth: a case is its opening and the events since."""
    for case_id, history in kept.histories.items():
        if history and history[-1].after != kept.cases[case_id]:
            yield f"case {case_id} is not what its history makes of it"


def _law_3(kept: Kept) -> Iterator[str]:
    """Safety text, alert and hold with a troubling reply; nothing asks anyone to swallow while on hold."""
    for case_id, history in kept.histories.items():
        safety = {(one.key, one.contact_id) for one in kept.by_case[case_id] if one.urgency is Urgency.SAFETY}
        for told in history:
            if isinstance(told.event, happened.Replied) and _level(told, told.event) >= Level.URGENT:
                number = told.event.message
                if told.after.state is not State.ON_HOLD:
                    yield f"message {number} left case {case_id} {told.after.state}, not on hold"
                if (f"safety:{number}", told.event.contact) not in safety:
                    yield f"message {number} got no safety text"
                if not any(alert.message == number for alert in told.after.alerts):
                    yield f"message {number} raised no alert"
            lifted = told.before.state is State.ON_HOLD and told.after.state is not State.ON_HOLD
            if lifted and not isinstance(told.event, LIFTING):
                yield f"the hold of case {case_id} was lifted by {type(told.event).__name__}"
            if told.after.state is State.ON_HOLD and len(told.after.nights) > len(told.before.nights):
                yield f"case {case_id} began a night while on hold"


def _level(told: Told, event: happened.Replied) -> Level:
    contact = told.before.contact(event.contact)
    return assess(event.text, lang=contact.language, sender=contact.role).level


def _law_4(kept: Kept, arrived: Mapping[Phone, Counter[str]], now: datetime | None) -> Iterator[str]:
    """An open alert goes on climbing, and each has been told to somebody."""
    for case_id, case in kept.cases.items():
        for alert in case.alerts:
            name = f"alert {case_id}-{alert.number}"
            steps = [one for one in kept.by_case[case_id] if one.key.startswith(f"alert:{alert.number}:")]
            if not steps:
                yield f"{name} was told to nobody"
            if alert.open and (alert.next_step is None or (now and alert.next_step <= now)):
                yield f"{name} is open and does not climb"
            if not alert.open and (alert.next_step or not alert.acknowledged_by):
                yield f"{name} is taken and still climbs, or by nobody"
            refused = all(one.status in REFUSED for one in steps)
            if (
                now
                and not refused
                and not any(one.phone and arrived.get(one.phone, Counter())[one.text] for one in steps)
            ):
                yield f"{name} arrived on no phone"


def _law_5(kept: Kept, written: Counter[str], *, settled: bool) -> Iterator[str]:
    """What was written is kept once, with its outcome."""
    texts = Counter(one.text for one in kept.messages if one.text is not None)
    for text in (texts | written) if settled else texts:
        if texts[text] > written[text]:
            yield f"{text!r} was kept {texts[text]} times and written {written[text]}"
        if settled and texts[text] < written[text]:
            yield f"{text!r} was written {written[text]} times and kept {texts[text]}"
    yield from (f"message {one.id} has no outcome" for one in kept.messages if one.outcome is None)


def _law_6(kept: Kept) -> Iterator[str]:
    """Never two prompts for a night, none out of hours or to who stopped, and no more nights and candies than set."""
    for case_id, case in kept.cases.items():
        days = [night.day for night in case.nights]
        if len(days) != len(set(days)) or len(days) > case.protocol.max_nights:
            yield f"case {case_id} has nights {days} of at most {case.protocol.max_nights}"
        for night in case.nights:
            if len(night.swallows) > len(night.order):
                yield f"night {night.number} of case {case_id} has more candies than positions"
        began = {told.after.nights[-1].day: told for told in kept.histories[case_id] if _begins(told)}
        seen: set[tuple[int | None, str]] = set()
        for one in kept.by_case[case_id]:
            if one.kind == "prompt":
                yield from _prompt(case, one, began, seen)


def _begins(told: Told) -> bool:
    return len(told.after.nights) > len(told.before.nights) and isinstance(told.event, happened.Ticked)


def _prompt(case: Case, one: Posted, began: dict[date, Told], seen: set[tuple[int | None, str]]) -> Iterator[str]:
    told = began.get(date.fromisoformat(one.key.partition(":")[2]))
    if told is None or told.after.state is not State.PRACTISING:
        yield f"{one.key} of case {case.id} belongs to no night that began while practising"
    if (one.contact_id, one.key) in seen:
        yield f"{one.key} of case {case.id} was written twice"
    seen.add((one.contact_id, one.key))
    here = local(one.created, case.zone).time()
    if not case.protocol.earliest <= here <= case.protocol.latest:
        yield f"{one.key} of case {case.id} was written at {here}"
    useful = one.expires and one.settled and one.created - SENDING <= one.settled <= one.expires + SENDING
    if one.status == "sent" and not useful:
        yield f"{one.key} of case {case.id} went out at {one.settled}, useful from {one.created} to {one.expires}"


def _law_7(kept: Kept, arrived: Mapping[Phone, Counter[str]], *, settled: bool) -> Iterator[str]:
    """What is sent has arrived; what has not ended well arrived nowhere; only what is grave may come twice."""
    for phone in {one.phone for one in kept.posted if one.phone} | set(arrived):
        mine = [one for one in kept.posted if one.phone == phone]
        log = arrived.get(phone, Counter())
        for text in {one.text for one in mine} | set(log):
            rows = [one for one in mine if one.text == text]
            what = f"{rows[0].key if rows else 'something never written'} to {phone}"
            least = sum(one.status == "sent" for one in rows)
            most = sum(one.status in ENDED_OUT or not settled for one in rows)
            if log[text] < least:
                yield f"{what} is said to be sent {least} times and arrived {log[text]}"
            if log[text] > most and not any(one.urgency in GRAVE for one in rows):
                yield f"{what} arrived {log[text]} times, and may have at most {most}"
    for one in kept.posted:
        if one.urgency in GRAVE and one.status in ("unknown", "expired", "cancelled"):
            yield f"{one.key} of case {one.case_id} was given up as {one.status}"
        if settled and one.status in ("waiting", "claimed"):
            yield f"{one.key} of case {one.case_id} is still {one.status}"
