"""Promises about what leaves the desk, and what is erased."""

import io
import json
import re
import zipfile
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from fhir.resources.R4B.bundle import Bundle

from coachbot.coach.case import State
from coachbot.reading.readings import Word
from helpers.desk_bench import NOON, Bench, Browser, Family, SignedIn, practising


@pytest.fixture
def family(family: Family) -> Family:
    """The family of two nights, with an open alert."""
    family.says("she is choking and cannot breathe")
    return family


@pytest.fixture
def client(family: Family, signed_in: SignedIn) -> Browser:
    """A lead's browser."""
    assert family.case.open_alerts
    return signed_in("lead")


def of_kind(bundle: dict[str, Any], kind: str) -> list[dict[str, Any]]:
    """The resources of one kind."""
    return [one["resource"] for one in bundle["entry"] if one["resource"]["resourceType"] == kind]


def test_the_bundle_is_fhir(family: Family, client: Browser) -> None:
    """Validated by `fhir.resources`, whose R4B models cover these resources of R4 (4.0.1) unchanged."""
    answer = client.get(f"/children/{family.id}/fhir.json")
    bundle = json.loads(answer.content)

    Bundle.model_validate(bundle)
    assert answer.headers["content-type"].startswith("application/fhir+json")


def test_each_swallow_is_an_observation_and_none_is_a_zero(family: Family, client: Browser) -> None:
    """One response a night, one observation a swallow derived from it; what did not go down has a reason, no value."""
    bundle = json.loads(client.get(f"/children/{family.id}/fhir.json").content)
    observations = of_kind(bundle, "Observation")
    swallows = [one for night in family.case.nights for one in night.swallows]
    failed = [one for one in swallows if one.mark is Word.NOT_DOWN]

    assert len(of_kind(bundle, "QuestionnaireResponse")) == 2
    assert len(observations) == len(swallows) == 10
    assert len(failed) == 1
    assert sorted(one["valueInteger"] for one in observations if "valueInteger" in one) == sorted(
        one.mark for one in swallows if isinstance(one.mark, int)
    )
    assert [("valueInteger" in one) for one in observations if "dataAbsentReason" in one] == [False]
    assert all(len(one["derivedFrom"]) == 1 for one in observations)
    urls = {one["fullUrl"] for one in bundle["entry"]}
    assert {one["derivedFrom"][0]["reference"] for one in observations} <= urls
    assert {one["subject"]["reference"] for one in observations} <= urls


def test_open_alerts_are_flags_and_no_name_goes_along(family: Family, client: Browser) -> None:
    """A flag for each alert that nobody has taken on; no name in the whole bundle; times carry their zone."""
    text = client.get(f"/children/{family.id}/fhir.json").text
    bundle = json.loads(text)

    assert [one["status"] for one in of_kind(bundle, "Flag")] == ["active"]
    assert "Zebulonia" not in text
    assert of_kind(bundle, "Flag")[0]["period"]["start"].endswith("+00:00")
    client.send(f"/children/{family.id}/do/acknowledge", alert="1")
    again = json.loads(client.get(f"/children/{family.id}/fhir.json").content)
    assert of_kind(again, "Flag") == []


def test_what_is_kept_is_everything_of_this_family_and_of_no_other(
    bench: Bench, family: Family, client: Browser, signed_in: SignedIn
) -> None:
    """GDPR, article 20: every rating and message of the family, and nothing of another."""
    other = practising(bench, "Othilde")
    other.says("our own business")
    client.send(f"/children/{family.id}/target", length="16.5", width="8")
    bench.clock.passes(timedelta(minutes=1))
    kept = signed_in("lead").get(f"/children/{family.id}/kept.json").content.decode()
    record = json.loads(kept)

    assert "Zebulonia" in kept
    assert "she is choking and cannot breathe" in kept
    assert family.address in kept
    assert len(record["case"]["nights"]) == 2
    assert record["case"]["target"]["size"] == {"length_mm": 16.5, "width_mm": 8.0}
    assert "TargetSet" in {one["kind"] for one in record["history"]}
    assert "Othilde" not in kept
    assert "our own business" not in kept
    assert other.address not in kept


def test_a_family_is_erased_with_proof(bench: Bench, family: Family, client: Browser) -> None:
    """Only with the number typed; then counts stay, and who looked at the record, and no word or name."""
    assert client.send(f"/children/{family.id}/erase", sure="yes").status_code == 422
    client.send(f"/children/{family.id}/note", kind="note", note="About Zebulonia")
    proof = client.get(client.send(f"/children/{family.id}/erase", sure=str(family.id)).headers["location"]).text

    assert "is erased" in proof
    assert "takeout.erase" in proof
    assert "Zebulonia" not in proof
    assert client.get(f"/children/{family.id}").status_code == 404
    assert "Zebulonia" not in client.get("/children").text
    assert bench.coachbot.store.run(lambda tx: tx.notes.of_case(family.id)) == []
    assert client.get("/erased/999").status_code == 422


def test_the_study_files_name_nobody(family: Family, signed_in: SignedIn) -> None:
    """A researcher gets tables and their dictionary, without names; that they were taken is written down."""
    copies(family, 5)
    answer = signed_in("researcher").get("/study/files.zip")
    archive = zipfile.ZipFile(io.BytesIO(answer.content))
    text = {name: archive.read(name).decode() for name in archive.namelist()}

    assert sorted(text) == ["cohort-dictionary.csv", "cohort.csv", "dictionary.csv", "swallows.csv"]
    assert "Zebulonia" not in str(text)
    assert family.address not in str(text)
    assert "adherence,1,,6,6,1.0000,0.6097,1.0000,\r\n" in text["cohort.csv"]
    assert access(family) == ["study.files"]


@pytest.mark.parametrize(
    ("children", "said"),
    [
        (0, "No child has had a night yet"),
        (4, "Fewer than 5 children have had a night"),
    ],
)
def test_a_cohort_of_few_is_said_to_be_so(bench: Bench, signed_in: SignedIn, children: int, said: str) -> None:
    """No figure, no drawing, and no entry for having seen one."""
    if children:
        copies(practising(bench, nights=("43544", "53-24")), children - 1)
    page = signed_in("researcher").get("/study").text

    assert said in page
    assert "<svg" not in page
    assert bench.coachbot.store.run(lambda tx: tx.access.latest(1)) == []


def test_the_cohort_page_shows_figures_without_small_cells(family: Family, signed_in: SignedIn) -> None:
    """Nine alike and three who stopped after one night: what few did is bounded, what many did is told."""
    copies(family, 8)
    copies(family, 3, state=State.WITHDRAWN, nights=family.case.nights[:1])
    client = signed_in("researcher")
    page = client.get("/study").text

    assert "12 children whose first night is over" in page
    assert "Stopped early: &lt;5 of 12 families. Fewer than 5 have, so there is no curve of staying in" in page
    assert page.count('<svg class="course"') == 1
    assert re.search(r'<th scope="row">1</th><td>12 of 12</td><td>100 %</td><td>76 to 100 %</td>', page)
    assert re.search(r'<th scope="row">\w+</th><td>&lt;5 of 12</td><td>&lt;42 %</td>', page), "three had one night only"
    assert "Cochran’s Q over the 12 children" in page
    assert "Zebulonia" not in page
    assert access(family) == ["study.study"]
    copies(family, 5, state=State.WITHDRAWN, nights=family.case.nights[:1])
    page = client.get("/study").text
    assert page.count('<svg class="course"') == 2
    assert '<th scope="row">1</th><td>53 %</td>' in page


def copies(family: Family, count: int, **changes: object) -> None:
    """More children like this one, but for what is changed."""
    case = replace(family.case, id=0, contacts=(), alerts=(), **changes)  # type: ignore[arg-type]
    family.bench.coachbot.store.run(lambda tx: [tx.cases.add(case, NOON) for _ in range(count)])


def access(family: Family) -> list[str]:
    """What was looked at last."""
    return [one.what for one in family.bench.coachbot.store.run(lambda tx: tx.access.latest(1))]
