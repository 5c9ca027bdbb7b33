"""What leaves the desk, or is erased there: a family's record in two forms, and the proof of an erasure."""

import json
from datetime import timedelta
from typing import Any

import msgspec
from starlette.responses import Response

from coachbot.coach.events import Erased
from coachbot.desk import fhir
from coachbot.desk.papers import file
from coachbot.desk.visit import FormError, Visit
from coachbot.store import Transaction

JSON = "application/json"


async def kept(visit: Visit) -> Response:
    """Everything that is kept about a family and no other, as JSON (GDPR, articles 15 and 20)."""
    record = await visit.read(lambda tx: everything(tx, visit.case_id))
    data = msgspec.json.format(msgspec.json.encode(record), indent=2)
    return file(f"family-{visit.case_id}.json", JSON, data)


async def bundle(visit: Visit) -> Response:
    """The record as a FHIR R4 bundle."""
    case = await visit.read(lambda tx: tx.cases.load(visit.case_id))
    data = json.dumps(fhir.bundle(case, visit.now), ensure_ascii=False, indent=2).encode()
    return file(f"fhir-{visit.case_id}.json", "application/fhir+json", data)


async def erase(visit: Visit) -> Response:
    """Erase a family, asked for by the number of its case, and show the proof."""
    if visit.field("sure") != str(visit.case_id):
        raise FormError("erase-sure", number=str(visit.case_id))

    def work(tx: Transaction) -> None:
        case = tx.cases.load(visit.case_id)
        visit.desk.coachbot.deciding.happen(tx, case, Erased(by=visit.name), visit.now)

    await visit.transact(work)
    return visit.go(f"/erased/{visit.case_id}")


async def erased(visit: Visit) -> Response:
    """The proof: that there was a family, when it was erased, and how much."""
    number = int(visit.request.path_params["number"])
    stone, access = await visit.read(lambda tx: (tx.access.tombstone(number), tx.access.of_case(number)))
    if stone is None:
        raise FormError("erased-none", number=str(number))
    gone = stone.erased_at + timedelta(days=visit.desk.settings.number("BACKUP_DAYS"))
    return await visit.page("erased.html", stone=stone, access=access, gone=gone)


def everything(tx: Transaction, case_id: int) -> dict[str, Any]:
    """All that the store holds about a family."""
    case = tx.cases.load(case_id)
    return {
        "case": case,
        "contacts": [{"contact": one, "address": tx.people.address_of(one.id)} for one in tx.people.of_case(case_id)],
        "conversation": tx.conversation(case_id),
        "history": [
            {"at": at, "kind": type(event).__name__, "event": event} for at, event in tx.cases.history(case_id)
        ],
        "notes": tx.notes.of_case(case_id),
        "access": tx.access.of_case(case_id),
    }
