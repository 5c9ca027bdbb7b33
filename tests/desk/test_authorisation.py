"""Promises about who may open what: every page times every role, none left out."""

import pytest

from coachbot.desk import sessions
from coachbot.desk.app import PAGES
from coachbot.desk.pages import Page
from helpers.cases import draft
from helpers.desk_bench import NOON, Bench, SignedIn

NOBODY, CLINICIAN, LEAD, RESEARCHER = "nobody", "clinician", "lead", "researcher"
ROLES = (NOBODY, CLINICIAN, LEAD, RESEARCHER)

ALL = {NOBODY, CLINICIAN, LEAD, RESEARCHER}
STAFF = {CLINICIAN, LEAD, RESEARCHER}
CLINICAL = {CLINICIAN, LEAD}

MATRIX = {
    "GET /live": ALL,
    "GET /ready": ALL,
    "GET /sign-in": ALL,
    "POST /sign-in": ALL,
    "GET /": STAFF,
    "POST /sign-out": STAFF,
    "GET /account": STAFF,
    "POST /account/password": STAFF,
    "POST /account/language": STAFF,
    "GET /alerts": CLINICAL,
    "GET /alerts/list": CLINICAL,
    "GET /alerts/pulse": CLINICAL,
    "POST /messages/{message:int}/read": CLINICAL,
    "GET /children": CLINICAL,
    "GET /children/{case:int}": CLINICAL,
    "POST /children/{case:int}/do/{deed}": CLINICAL,
    "POST /children/{case:int}/note": CLINICAL,
    "GET /children/{case:int}/report.{form}": CLINICAL,
    "GET /children/{case:int}/certificate.png": CLINICAL,
    "GET /children/{case:int}/sheets.pdf": CLINICAL,
    "GET /children/{case:int}/night": CLINICAL,
    "POST /children/{case:int}/night": CLINICAL,
    "GET /children/{case:int}/target": CLINICAL,
    "POST /children/{case:int}/target": CLINICAL,
    "POST /children/{case:int}/invitation": CLINICAL,
    "GET /children/{case:int}/invitation/{key}": CLINICAL,
    "GET /children/{case:int}/invitation/{key}/{index:int}.pdf": CLINICAL,
    "GET /children/{case:int}/kept.json": CLINICAL,
    "GET /children/{case:int}/fhir.json": CLINICAL,
    "POST /children/{case:int}/erase": {LEAD},
    "GET /erased/{number:int}": {LEAD},
    "GET /enrol": CLINICAL,
    "POST /enrol": CLINICAL,
    "GET /study": {LEAD, RESEARCHER},
    "GET /study/files.zip": {LEAD, RESEARCHER},
    "GET /clinic": {LEAD},
    "POST /clinic": {LEAD},
    "POST /clinic/people": {LEAD},
    "POST /clinic/people/add": {LEAD},
    "POST /clinic/people/renew": {LEAD},
    "GET /clinic/log": {LEAD},
    "GET /clinic/texts": CLINICAL,
    "GET /status": ALL,  # asked for directly; what comes through another server must sign in
    "GET /metrics": ALL,
}
"""Who may open each page. Written out, so that a change of the table in the code must be meant."""

REFUSED = {303, 401, 403}


def address(page: Page, case: int) -> str:
    """The page's address, filled in."""
    fill: dict[str, object] = {"{case:int}": case, "{number:int}": case, "{message:int}": 1, "{index:int}": 0}
    fill |= {"{deed}": "nothing", "{form}": "nothing", "{key}": "nothing"}
    path = page.path
    for name, value in fill.items():
        path = path.replace(name, str(value))
    return path


def test_every_page_is_in_the_matrix() -> None:
    """No page can be added without saying here who may open it."""
    assert sorted(MATRIX) == sorted(f"{page.method} {page.path}" for page in PAGES)


@pytest.mark.parametrize("role", ROLES)
def test_each_page_opens_for_its_roles_only(bench: Bench, signed_in: SignedIn, role: str) -> None:
    """Every page is asked for by every role, a form with its token; whoever may not is turned away unheard."""
    case = bench.coachbot.store.run(lambda tx: tx.cases.add(draft(), NOON)).id
    client = bench.client() if role == NOBODY else signed_in(role)
    for page in PAGES:
        if page.path == "/sign-out":
            continue
        form = {"csrf": sessions.csrf(client.cookies.get("desk") or "")}
        path = address(page, case)
        answer = client.get(path) if page.method == "GET" else client.post(path, data=form)
        name = f"{page.method} {page.path}"
        if role in MATRIX[name]:
            refused = answer.status_code in REFUSED and answer.headers.get("location") in (None, "/sign-in")
            assert not refused or page.path == "/sign-in", f"{role} is refused {name}: {answer.status_code}"
            assert answer.status_code < 500, f"{name} broke: {answer.status_code}"
        else:
            assert answer.status_code in REFUSED, f"{role} opens {name}: {answer.status_code}"
            assert answer.headers.get("location") in (None, "/sign-in")
            assert draft().child.name not in answer.text


@pytest.mark.parametrize(
    "page", [page for page in PAGES if page.method == "POST" and page.roles], ids=lambda page: page.path
)
def test_no_form_is_taken_without_its_token(signed_in: SignedIn, page: Page) -> None:
    """A form of somebody else's making does nothing, whoever is signed in."""
    client = signed_in("lead")
    answer = client.post(address(page, 1), data={"csrf": "0" * 64})

    assert answer.status_code == 403


def test_no_form_is_taken_from_another_site(bench: Bench, signed_in: SignedIn) -> None:
    """Browsers name the origin of a form; another than ours is refused even with the token."""
    client = signed_in("clinician")
    form = {"csrf": sessions.csrf(client.cookies["desk"]), "language": "fr"}

    assert client.post("/account/language", data=form, headers={"origin": "https://elsewhere.test"}).status_code == 403
    assert client.post("/account/language", data=form, headers={"origin": "http://desk.test"}).status_code == 303
    assert bench.client().post("/sign-in", data={}, headers={"origin": "null"}).status_code == 403
