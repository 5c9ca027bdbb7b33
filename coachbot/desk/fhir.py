"""A family's record as a FHIR R4 (4.0.1) bundle of type collection.

No code of LOINC or SNOMED CT was found, and verified, for the ease of a swallow in a position of the head, so all codes
are of a code system of our own, which the bundle brings along: `CODES`. A swallow that was refused or skipped has a
`dataAbsentReason` and never the value 0; what did not go down has its own coded component. The patient is a bare
reference: no name and no date of birth.
"""

from collections.abc import Iterator
from datetime import datetime
from typing import Any

from coachbot.coach.case import Alert, Case, Night, Status, Swallow
from coachbot.programme.positions import Position
from coachbot.programme.zones import local
from coachbot.reading.readings import Word

BASE = "urn:coachbot"
CODES = f"{BASE}:codes"
"""The address of the local code system: a name, not a place on the net."""

QUESTIONNAIRE = f"{BASE}:questionnaire:night"
VERSION = "1"

ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
FLAG_CATEGORY = "http://terminology.hl7.org/CodeSystem/flag-category"

Resource = dict[str, Any]

CONCEPTS = {
    "swallow-ease": "Ease of swallowing a practice candy, 1 (hardest) to 5 (easiest, best liked)",
    "went-down": "Whether the practice candy was swallowed",
    "place": "Place of the swallow in its night's order, from 1",
    "alert": "Alert raised by what a family wrote, or by its silence",
    **{f"position-{position}": f"Head position while swallowing: {position}" for position in Position},
}


def bundle(case: Case, now: datetime) -> Resource:
    """The whole record: code system, questionnaire, a response per night, an observation per swallow, open alerts."""
    resources = [_codes(), _questionnaire(case), _patient(case)]
    for night in case.nights:
        if night.status in (Status.FINISHED, Status.PARTIAL):
            resources.append(_response(case, night))
            resources += _observations(case, night)
    resources += [_flag(case, alert) for alert in case.open_alerts]
    entries = [{"fullUrl": f"{BASE}:{one['resourceType']}:{one['id']}".lower(), "resource": one} for one in resources]
    return {"resourceType": "Bundle", "type": "collection", "timestamp": now.isoformat(), "entry": entries}


def _concept(code: str) -> Resource:
    return {"coding": [{"system": CODES, "code": code, "display": CONCEPTS[code]}]}


def _codes() -> Resource:
    return {
        "resourceType": "CodeSystem",
        "id": "codes",
        "url": CODES,
        "version": VERSION,
        "status": "active",
        "content": "complete",
        "concept": [{"code": code, "display": display} for code, display in CONCEPTS.items()],
    }


def _questionnaire(case: Case) -> Resource:
    items = [
        {"linkId": position, "text": CONCEPTS[f"position-{position}"], "type": "integer", "required": False}
        for position in case.protocol.positions
    ]
    return {
        "resourceType": "Questionnaire",
        "id": "night",
        "url": QUESTIONNAIRE,
        "version": VERSION,
        "status": "active",
        "item": [
            *items,
            {"linkId": "best", "text": "Best position of the night", "type": "string"},
            {"linkId": "note", "text": "Note", "type": "text"},
        ],
    }


def _patient(case: Case) -> Resource:
    return {"resourceType": "Patient", "id": str(case.id), "birthDate": str(case.child.birth_year)}


def _subject(case: Case) -> Resource:
    return {"reference": f"{BASE}:patient:{case.id}"}


def _at(case: Case, at: datetime) -> str:
    return local(at, case.zone).isoformat(timespec="seconds")


def _response_id(case: Case, night: Night) -> str:
    return f"{case.id}-{night.number}"


def _response(case: Case, night: Night) -> Resource:
    """One night's answers. A night answered in part is in progress until it closes, and then completed as it is."""
    items = [
        {"linkId": swallow.position, "answer": [{"valueInteger": swallow.mark}]}
        for swallow in night.swallows
        if not isinstance(swallow.mark, Word)
    ]
    words = {"best": night.best, "note": night.note}
    items += [{"linkId": name, "answer": [{"valueString": value}]} for name, value in words.items() if value]
    return {
        "resourceType": "QuestionnaireResponse",
        "id": _response_id(case, night),
        "questionnaire": f"{QUESTIONNAIRE}|{VERSION}",
        "status": "completed",
        "subject": _subject(case),
        "authored": _at(case, night.touched),
        **({"item": items} if items else {}),
    }


def _observations(case: Case, night: Night) -> Iterator[Resource]:
    for swallow in night.swallows:
        yield {
            "resourceType": "Observation",
            "id": f"{case.id}-{night.number}-{swallow.position}",
            "status": "final",
            "code": _concept("swallow-ease"),
            "subject": _subject(case),
            "effectiveDateTime": _at(case, night.touched),
            "bodySite": _concept(f"position-{swallow.position}"),
            "derivedFrom": [{"reference": f"{BASE}:questionnaireresponse:{_response_id(case, night)}"}],
            **_value(swallow),
            "component": [
                {"code": _concept("place"), "valueInteger": night.order.index(swallow.position) + 1},
                *_went_down(swallow),
            ],
            **({"note": [{"text": swallow.note}]} if swallow.note else {}),
        }


def _value(swallow: Swallow) -> Resource:
    """The rating; obs-6 allows a reason for its absence only where there is none."""
    if not isinstance(swallow.mark, Word):
        return {"valueInteger": swallow.mark}
    code = "not-applicable" if swallow.mark is Word.NOT_DOWN else "not-performed"
    return {"dataAbsentReason": {"coding": [{"system": ABSENT, "code": code}]}}


def _went_down(swallow: Swallow) -> list[Resource]:
    if swallow.mark is Word.SKIPPED:
        return []
    return [{"code": _concept("went-down"), "valueBoolean": swallow.mark is not Word.NOT_DOWN}]


def _flag(case: Case, alert: Alert) -> Resource:
    return {
        "resourceType": "Flag",
        "id": f"{case.id}-alert-{alert.number}",
        "status": "active",
        "category": [{"coding": [{"system": FLAG_CATEGORY, "code": "safety"}]}],
        "code": {**_concept("alert"), "text": f"{alert.level.word}: {alert.category}"},
        "subject": _subject(case),
        "period": {"start": _at(case, alert.raised)},
    }
