"""The desk in a real browser: Debian's Chromium, driven by Playwright, and axe-core for WCAG 2.2 AA."""

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from coachbot.coach.case import State
from coachbot.coach.events import TargetSet
from coachbot.programme.sizes import CAPSULES, Target
from helpers.desk_bench import NOON, Bench, Family
from helpers.served import served

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
AXE = Path(__file__).parents[1] / "peers" / "node_modules" / "axe-core" / "axe.min.js"
expect.set_options(timeout=20_000)  # on a busy machine a page may take longer than the five seconds that are usual
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(not CHROMIUM.exists(), reason="Debian's chromium is not installed: apt-get install chromium"),
]


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """One browser for all tests here."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def site(bench: Bench) -> Iterator[str]:
    """The desk on a port of its own."""
    with served(bench.app) as address:
        yield address


@pytest.fixture
def page(bench: Bench, site: str, chromium: Browser) -> Iterator[Page]:
    """A page at which the lead has just signed in, by keyboard."""
    bench.add("Lindiwe Sato", "lead")
    context = chromium.new_context(base_url=site, viewport={"width": 1280, "height": 900})
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.goto("/")
    page.get_by_label("Name").focus()
    page.keyboard.type("Lindiwe Sato")
    page.keyboard.press("Tab")
    page.keyboard.type(bench.people["Lindiwe Sato"].password)
    page.keyboard.press("Tab")
    page.keyboard.type(bench.code("Lindiwe Sato"))
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("What needs you now")
    yield page
    context.close()
    assert [one for one in complaints if "status of 4" not in one] == [], (
        "the browser complained, perhaps of the policy"
    )


def fits_and_is_accessible(page: Page) -> None:
    """On a phone and at a desk: no violation that axe-core sees, and nothing wider than the screen."""
    page.wait_for_load_state()  # a click returns when the next page begins, perhaps before its style sheet is there
    page.evaluate(AXE.read_text(encoding="utf-8"))
    for width in (390, 1280):
        page.set_viewport_size({"width": width, "height": 900})
        found = page.evaluate("rules => axe.run(document, {runOnly: rules, resultTypes: ['violations']})", RULES)
        faults = [(one["id"], one["nodes"][0]["html"][:200]) for one in found["violations"]]
        over = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        assert faults == [], f"{page.url} at {width}: {faults}"
        assert over <= 0, f"{page.url} is {over} pixels wider than a screen of {width}"


def test_a_family_is_enrolled_by_keyboard_up_to_its_invitation(page: Page) -> None:
    """From the first field to the code, without a mouse; the stop for a young child cannot be passed on the way."""
    page.goto("/enrol")
    expect(page.get_by_label("Name to be called by")).to_be_focused()
    page.keyboard.type("Noor")
    page.get_by_label("Born").fill("2023-05-17")
    for question in ("Is there a known swallowing", "Is the child too ill", "Is there an allergy"):
        page.get_by_role("group", name=re.compile(question)).get_by_label("No").focus()
        page.keyboard.press("Space")
    page.get_by_label("No known trouble").focus()
    page.keyboard.press("Space")
    for tick in page.locator("input[name^=confirm-]").all():
        tick.focus()
        page.keyboard.press("Space")
    page.get_by_label("Bedtime").press("Enter")
    expect(page.get_by_role("alert")).to_contain_text("Under 4")
    page.get_by_label("Born").fill("2017-05-17")
    page.get_by_label("Bedtime").press("Enter")

    expect(page.get_by_role("heading", level=1)).to_have_text("Noor: invitation")
    assert re.search(r"[A-Z2-7]{4}-[A-Z2-7]{4}-[A-Z2-7]{5}", page.locator(".code").inner_text())


def test_an_alert_appears_by_itself_and_is_taken_on(family: Family, page: Page) -> None:
    """The page is open before the family writes; nobody reloads it."""
    expect(page.get_by_text("Nothing is open")).to_be_visible()
    family.says("she is choking and cannot breathe")
    expect(page.get_by_role("heading", name="Zebulonia")).to_be_visible()
    expect(page.locator("#alert-count")).to_have_text("1")
    page.get_by_role("button", name="I take this on").click()

    expect(page.get_by_role("status").first).to_contain_text("It climbs no further")
    assert family.case.alerts[0].acknowledged_by == "Lindiwe Sato"


def test_words_being_typed_are_not_swept_away_by_news(family: Family, page: Page) -> None:
    """While a note is under way a new alert is announced, not thrown in between."""
    family.says("she is choking and cannot breathe")
    page.goto("/alerts")
    page.get_by_text("Note, hold, end").click()
    page.get_by_label("Note for your colleagues").fill("On the phone with the mother")
    family.says("she cried and did not want to do it")

    expect(page.locator("#fresh")).to_be_visible()
    expect(page.get_by_label("Note for your colleagues")).to_have_value("On the phone with the mother")


def test_one_childs_page_and_its_report(family: Family, page: Page) -> None:
    """The page shows the grid, the drawings and the talk; the report comes as a file."""
    page.goto(f"/children/{family.id}")
    expect(page.locator("table.grid tbody tr")).to_have_count(6)
    expect(page.locator("svg.course")).to_have_count(5)
    with page.expect_download() as download:
        page.get_by_role("link", name="Follow-up report (PDF)").click()

    assert Path(download.value.path()).read_bytes().startswith(b"%PDF")


@pytest.mark.skipif(not AXE.exists(), reason="axe-core is not installed: run deploy/test")
def test_every_page_is_accessible_and_fits(family: Family, page: Page) -> None:
    """WCAG 2.2 AA as far as axe-core sees it; nothing is wider than the screen; the same on a phone."""
    family.says("she is choking and cannot breathe")
    happened = TargetSet(
        by="Imani Osei", target=Target(size=CAPSULES["00"].size, capsule="00", steps=(CAPSULES["4"].size,))
    )
    coachbot = family.bench.coachbot
    coachbot.store.run(lambda tx: coachbot.deciding.happen(tx, tx.cases.load(family.id), happened, NOON))
    stopped = replace(family.case, id=0, contacts=(), alerts=(), state=State.WITHDRAWN, nights=family.case.nights[:1])
    coachbot.store.run(lambda tx: [tx.cases.add(stopped, NOON) for _ in range(5)])
    paths = ["/alerts", "/children", f"/children/{family.id}", f"/children/{family.id}/night", "/enrol", "/study"]
    for path in [*paths, "/clinic", "/clinic/log", "/account", "/status", "/children/999", "/sign-in"]:
        page.goto(path)
        fits_and_is_accessible(page)
    page.goto(f"/children/{family.id}/target")
    page.get_by_label("Length (longest side)").fill("8")
    page.get_by_role("button", name="Keep the size").click()
    expect(page.get_by_role("alert")).to_be_visible()
    fits_and_is_accessible(page)
    page.goto(f"/children/{family.id}")
    page.get_by_role("button", name="Invite the child").click()
    expect(page).to_have_url(re.compile("/invitation/"))
    fits_and_is_accessible(page)
