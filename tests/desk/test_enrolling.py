"""Promises about enrolment at the desk."""

import re
from datetime import datetime
from functools import partial

import pytest

from coachbot.channels.rehearsal import RehearsalChannel
from coachbot.coach.case import Case
from coachbot.store import Invite, Transaction
from helpers.desk_bench import Bench, Browser, SignedIn

FORM = {
    "child": "Noor",
    "born": "2017-05-17",
    "swallowing": "no",
    "ill": "no",
    "allergy": "no",
    "neck": "sound",
    "confirm-asked": "yes",
    "confirm-adult": "yes",
    "confirm-never-forced": "yes",
    "position-center": "yes",
    "position-left": "yes",
    "position-down": "yes",
    "nights": "10",
    "bedtime": "19:30",
    "zone": "America/New_York",
    "language": "fr",
    "kind-1": "mint",
    "size-1": "6",
    "from-2": "4",
    "kind-2": "hard",
    "size-2": "9",
    "own": "yes",
}
"""A form that is right. The bench's day is 2 March 2026."""


@pytest.fixture
def client(signed_in: SignedIn) -> Browser:
    """A clinician's browser."""
    return signed_in("clinician")


def cases(bench: Bench) -> list[Case]:
    """All cases there are."""
    return bench.coachbot.store.run(lambda tx: list(tx.cases.all()))


def open_with(code: str, now: datetime, tx: Transaction) -> int | None:
    """The case that a code opens."""
    invite = tx.invites.use(code, now)
    return invite.case_id if isinstance(invite, Invite) else None


def test_a_family_is_enrolled_and_invited(bench: Bench, client: Browser) -> None:
    """The case is as the form has it, and a code for each chat is shown, which really opens."""
    answer = client.send("/enrol", **FORM)
    assert answer.status_code == 303, answer.text
    page = client.get(answer.headers["location"]).text
    codes = re.findall(r"[A-Z2-7]{4}-[A-Z2-7]{4}-[A-Z2-7]{5}", page)
    (case,) = cases(bench)

    assert case.child.name == "Noor"
    assert case.child.birth_year == 2017
    assert [str(one) for one in case.protocol.positions] == ["center", "left", "down"]
    assert len(case.orders) == 10
    assert [case.protocol.candy(night).size_mm for night in (1, 3, 4, 10)] == [6, 6, 9, 9]
    assert case.language == "fr"
    assert len(set(codes)) == 2
    opened = [bench.coachbot.store.run(partial(open_with, code, bench.clock.now)) for code in set(codes)]
    assert opened == [case.id, case.id]


def test_what_was_confirmed_is_kept_with_name_and_time(bench: Bench, client: Browser) -> None:
    """And the answers themselves are not: no diagnosis is kept."""
    client.send("/enrol", **FORM)
    (case,) = cases(bench)
    (note,) = bench.coachbot.store.run(lambda tx: tx.notes.of_case(case.id))

    assert (note.kind, note.by, note.at) == ("screening", "Imani Osei", bench.clock.now)
    assert "An adult will be there each night" in note.words
    assert "neck" not in note.words


def test_an_invitation_is_a_link_a_picture_and_a_card(client: Browser, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a channel makes links of codes: the link, its QR code drawn in the page, and a card to print."""
    link = "https://chat.test/clinic?start="
    monkeypatch.setattr(RehearsalChannel, "invite_link", lambda _, code: f"{link}{code}", raising=False)
    path = client.send("/enrol", **FORM).headers["location"]
    page = client.get(path).text
    card = client.get(f"{path}/0.pdf")

    assert re.search(rf'href="{re.escape(link)}[A-Z2-7-]+"', page)
    assert page.count("<svg") == 2
    assert card.content.startswith(b"%PDF")
    assert client.get(f"{path}/9.pdf").status_code == 422


STOPS = [
    ({"born": "2022-03-03"}, "Under 4"),  # four years old tomorrow; AAP, Pediatrics 2010;125:601: not under 4
    ({"born": "2027-01-01"}, "in the future"),
    ({"swallowing": "yes"}, "belongs with a specialist"),
    ({"ill": "yes"}, "wait until the child is well"),
    ({"allergy": "yes"}, "choose another candy"),
    ({"neck": "unstable"}, "Unstable neck"),
]


@pytest.mark.parametrize(("change", "said"), STOPS, ids=[said for _, said in STOPS])
def test_a_hard_stop_cannot_be_passed(bench: Bench, client: Browser, change: dict[str, str], said: str) -> None:
    """However often the form is sent and whatever is ticked, nobody is enrolled; what was typed stays."""
    ticked = {"confirm-young": "yes", "confirm-neck": "yes", "override": "yes"}
    for _ in range(2):
        answer = client.send("/enrol", **(FORM | change | ticked))
        assert answer.status_code == 422
        assert said in answer.text
        assert 'value="Noor"' in answer.text

    assert cases(bench) == []


def test_a_child_of_four_takes_one_more_confirmation(bench: Bench, client: Browser) -> None:
    """From 4 to under 5 the clinician is warned, and says that the risk was weighed; then it may go on."""
    young = FORM | {"born": "2022-03-02"}
    answer = client.send("/enrol", **young)

    assert answer.status_code == 422
    assert "under 5" in answer.text
    assert cases(bench) == []
    assert client.send("/enrol", **young, **{"confirm-young": "yes"}).status_code == 303


@pytest.mark.parametrize(
    "missing", ["child", "born", "swallowing", "neck", "confirm-adult", "bedtime", "zone", "size-1"]
)
def test_nothing_has_an_answer_of_its_own(bench: Bench, client: Browser, missing: str) -> None:
    """Whatever is left out is asked for again, beside its field, and nobody is enrolled."""
    answer = client.send("/enrol", **{name: value for name, value in FORM.items() if name != missing})

    assert answer.status_code == 422
    assert 'class="fault"' in answer.text
    assert cases(bench) == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"bedtime": "23:00"}, "must lie from 16:00 to 21:30"),
        ({"size-1": "40"}, "from 2 to 22"),
        ({"from-2": "1"}, "from 2 to 10"),
        ({"from-3": "4", "size-3": "9", "kind-3": "mint"}, "follow each other"),
        ({"position-left": "", "position-down": ""}, "at least two positions"),
        ({"nights": "61"}, "from 1 to 60"),
    ],
)
def test_a_programme_that_cannot_be_is_refused(client: Browser, change: dict[str, str], said: str) -> None:
    """With a sentence that says what can be."""
    answer = client.send("/enrol", **(FORM | change))

    assert answer.status_code == 422
    assert said in answer.text


def test_codes_are_shown_to_their_maker_only_and_not_for_ever(
    bench: Bench, client: Browser, signed_in: SignedIn
) -> None:
    """Somebody else who has the address sees no code, nor does the maker after half an hour; new ones can be made."""
    path = client.send("/enrol", **FORM).headers["location"]
    (case,) = cases(bench)

    assert signed_in("lead").get(path).status_code == 422
    assert client.get(path).status_code == 200
    assert client.get(path.replace(f"/{case.id}/", "/77/")).status_code == 422
    fresh = client.send(f"/children/{case.id}/invitation", role="child").headers["location"]
    assert len(re.findall(r"[A-Z2-7]{4}-[A-Z2-7]{4}-[A-Z2-7]{5}", client.get(fresh).text)) == 1


def test_the_clinics_settings_are_what_enrolment_starts_from(
    bench: Bench, client: Browser, signed_in: SignedIn
) -> None:
    """Hours, ladder and emergency number that a lead has set hold for the next family."""
    lead = signed_in("lead")
    set_up = {
        "position-center": "yes",
        "position-down": "yes",
        "zone": "Europe/Paris",
        "emergency_number": "15",
        "nights": "12",
        "max_nights": "18",
        "earliest": "17:00",
        "latest": "20:00",
        "late_limit": "60",
        "reminder_after": "30",
        "close_after": "120",
        "missed_limit": "2",
        "watch_days": "4",
        "kind": "hard",
        "size": "7",
        "ladder-after-0": "0",
        "ladder-who-0": "on_call",
        "ladder-after-1": "3",
        "ladder-who-1": "all",
        "calm_ladder-after-0": "0",
        "calm_ladder-who-0": "on_call",
    }
    assert lead.send("/clinic", **set_up).status_code == 303
    assert client.send("/enrol", **(FORM | {"bedtime": "20:30"})).status_code == 422
    assert client.send("/enrol", **FORM).status_code == 303
    (case,) = cases(bench)

    assert case.protocol.emergency_number == "15"
    assert [step.who for step in case.protocol.ladder] == ["on_call", "all"]
    assert case.protocol.missed_limit == 2
    fresh = client.get("/enrol").text
    assert re.findall(r'name="position-(\w+)" value="yes" checked', fresh) == ["center", "down"]
    assert case.protocol.max_nights == 16
    assert lead.send("/clinic", **(set_up | {"earliest": "21:00"})).status_code == 422
    assert lead.send("/clinic", **(set_up | {"position-down": ""})).status_code == 422
    assert lead.send("/clinic", **(set_up | {"ladder-after-0": "9"})).status_code == 422


def test_a_lead_makes_and_closes_accounts(bench: Bench, signed_in: SignedIn) -> None:
    """A new account's password and secret are shown once; a closed one opens nothing; one's own stays open."""
    lead = signed_in("lead")
    form = {"name": "Bo Marsh", "role": "clinician", "duty": "backup", "language": "es", "channel": "", "address": ""}
    page = lead.send("/clinic/people/add", **form).text

    assert "otpauth://totp/coachbot:Bo%20Marsh" in page
    assert "<svg" in page
    assert lead.send("/clinic/people/add", **form).status_code == 422
    assert lead.send("/clinic/people/add", **(form | {"name": "Kim", "channel": "pigeon"})).status_code == 422
    assert lead.send("/clinic/people/add", **(form | {"name": "Kim", "channel": "rehearsal"})).status_code == 422
    assert lead.send("/clinic/people/renew", name="Bo Marsh").status_code == 200
    own = {"name": "Lindiwe Sato", "role": "lead", "duty": "none", "active": "no"}
    assert lead.send("/clinic/people", **own).status_code == 422
    other = {"name": "Bo Marsh", "role": "clinician", "duty": "none", "active": "no"}
    assert lead.send("/clinic/people", **other).status_code == 303
    assert bench.coachbot.store.run(lambda tx: tx.clinicians.sign_in("Bo Marsh")) is None


@pytest.mark.parametrize("language", ["en", "es", "fr"])
def test_every_text_can_be_looked_at_in_every_language(signed_in: SignedIn, language: str) -> None:
    """The preview is whole: no text fails to be filled in, and the reader's own pages are in that language too."""
    lead = signed_in("lead")
    lead.send("/account/language", language=language)
    page = lead.get(f"/clinic/texts?language={language}")

    assert page.status_code == 200
    assert f'<html lang="{language}"' in page.text
    for path in ("/alerts", "/children", "/enrol", "/clinic", "/study", "/status", "/account", "/clinic/log"):
        assert lead.get(path).status_code == 200
