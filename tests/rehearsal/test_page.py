"""The rehearsal's page in a real browser: one night, its buttons, and an alarm that reaches the clinician's phone."""

import asyncio
import re
import shutil
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest
import uvicorn
from playwright.sync_api import Page, expect, sync_playwright

from coachbot.rehearsal.page import build_page

HOME = "http://127.0.0.1"
FLAGS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip


expect.set_options(timeout=20_000)  # on a busy machine a step may take longer than the five seconds that are usual


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """The page, served on a free port of this machine."""
    server = uvicorn.Server(uvicorn.Config(build_page(), host="127.0.0.1", port=0, log_level="warning"))
    thread = threading.Thread(target=server.run)
    thread.start()
    while not server.started:
        time.sleep(0.05)
    port = server.servers[0].sockets[0].getsockname()[1]
    yield f"http://127.0.0.1:{port}"
    server.should_exit = True
    thread.join()


@pytest.fixture
def page(address: str) -> Iterator[Page]:
    """A browser window on the page; what the browser complains of fails the test."""
    chromium = shutil.which("chromium")
    if chromium is None:
        pytest.skip("no chromium: install Debian's package")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=list(FLAGS))
        window = browser.new_page(viewport={"width": 1440, "height": 900})
        complaints: list[str] = []
        window.on("console", lambda message: complaints.append(message.text))
        window.on("pageerror", lambda error: complaints.append(str(error)))
        window.goto(f"{address}/phones/")
        yield window
        browser.close()
        assert not complaints


@pytest.mark.browser
def test_a_phone_can_be_one_for_text_messages(page: Page) -> None:
    """All starts over; the code is texted, nothing has a button, and each message shows what it costs."""
    parent = page.locator("[data-phone=parent]")
    parent.get_by_role("button", name="By text message").click()
    expect(parent.get_by_role("button", name="By text message")).to_have_attribute("aria-pressed", "true")
    parent.locator(".invite").click()
    expect(parent.locator(".talk li:last-child")).to_contain_text("Reply YES or NO")
    expect(parent.locator(".talk li:last-child")).to_contain_text(re.compile(r"Segments: [2-5]$"))
    expect(parent.locator(".talk li button")).to_have_count(0)
    parent.get_by_role("button", name="By text message").click()
    expect(parent.locator(".invite")).to_be_visible()


@pytest.mark.browser
def test_a_night_is_played_by_tapping(page: Page, tmp_path: Path) -> None:
    """Invitation, consent, lesson, the first night's buttons; then a choking reply climbs on the clinician's phone."""
    parent, child, clinician = (page.locator(f"[data-phone={name}]") for name in ("parent", "child", "clinician"))
    parent.locator(".invite").click()
    child.locator(".invite").click()
    parent.get_by_role("button", name="I agree").click()
    expect(child.locator(".talk")).to_contain_text("I am your swallow coach")
    expect(parent.get_by_role("button", name="I agree")).to_have_count(0)
    expect(parent.get_by_role("button", name="No, thank you")).to_have_count(0)
    page.get_by_role("button", name="To the next bedtime").click()
    for _ in range(9):
        button = parent.locator(".talk li:last-child button", has_text="Next")
        data = button.get_attribute("data-data")
        button.click()
        expect(parent.locator(f".talk li:last-child button[data-data='{data}']")).to_have_count(0)
    parent.get_by_role("button", name="It went down").click()
    page.get_by_role("button", name="To the next bedtime").click()
    rates = child.locator(".talk li:last-child .row").first.locator("button")
    expect(rates).to_have_text(["1", "2", "3", "4", "5"])
    expect(child.locator(".talk li:last-child img")).to_be_visible()
    rates.nth(3).click()
    expect(child.locator(".talk li:last-child")).to_contain_text("How was")
    page.screenshot(path=tmp_path / "night.png")

    parent.get_by_label("Write a message").fill("she is choking and cant breathe")
    parent.get_by_role("button", name="Send").click()
    expect(parent.locator(".talk li:last-child")).to_contain_text("Call 911 now")
    expect(clinician.locator(".talk li:last-child")).to_contain_text("EMERGENCY")
    page.get_by_role("button", name="Five minutes on").click()
    expect(clinician.locator(".talk li:last-child")).to_contain_text("call number 2")
    page.screenshot(path=tmp_path / "alarm.png")
    assert (tmp_path / "alarm.png").stat().st_size > 20_000
    expect(page.locator("#clock")).to_have_text(re.compile("October 25, 2026.*19:35"))
    page.get_by_role("button", name="Start over").click()
    for phone in (parent, child, clinician):
        expect(phone.locator(".talk li")).to_have_text(["Nothing here yet."])


async def test_the_desk_is_signed_in_to_with_what_the_page_shows() -> None:
    """The same store and clock: the family that is played stands on the desk, among an invented clinic's children.

    These live through their last weeks once the desk is opened; what is going on in the family is left as it is.
    """
    app = build_page(children=2)
    transport = httpx.ASGITransport(app=app)
    async with app.router.lifespan_context(app), httpx.AsyncClient(transport=transport, base_url=HOME) as client:
        await client.post("/phones/do", json={"what": "invite", "phone": "parent"})
        said = {"what": "write", "phone": "parent", "text": "she is choking and cant breathe"}
        before = (await client.post("/phones/do", json=said)).json()["phones"]
        assert (await client.get("/alerts")).status_code in (302, 303)
        await asyncio.sleep(0)  # they set out, and the step waits until they are there
        shown = (await client.post("/phones/do", json={"what": "step", "step": "five-minutes"})).json()
        key, after = shown["key"], shown["phones"]
        assert after["parent"] == before["parent"]
        assert "call number 2" in after["clinician"][-1]["text"]
        form = (await client.get("/sign-in")).text
        token = re.findall(r'name="(\w*token\w*|csrf\w*)" value="([^"]+)"', form)
        given = {"name": "Dr Imani Osei", "password": key["password"], "code": key["code"], **dict(token)}
        answer = await client.post("/sign-in", data=given, headers={"Origin": HOME})
        assert answer.status_code in (302, 303), answer.text
        listed = (await client.get("/children")).text
        assert "Noor" in listed
        assert "3 children" in listed


async def test_what_cannot_be_done_says_so_and_the_page_speaks_three_languages() -> None:
    """A phone or button that is not there, empty words, a strange host."""
    app = build_page()
    transport = httpx.ASGITransport(app=app)
    async with app.router.lifespan_context(app), httpx.AsyncClient(transport=transport, base_url=HOME) as client:
        assert (await client.get("/phones/", params={"language": "fr"})).status_code == 200
        assert (await client.get("/phones/", params={"language": "de"})).status_code == 404
        assert (await client.get("/phones/file/parent/0")).status_code == 404
        mistakes: tuple[object, ...] = (
            {"what": "press", "phone": "parent", "data": "1:candy:down"},
            {"what": "write", "phone": "nobody", "text": "hi"},
            {"what": "write", "phone": "parent", "text": "  "},
            {"what": "dance"},
            [],
        )
        for wanted in mistakes:
            assert (await client.post("/phones/do", json=wanted)).status_code == 400
        assert (await client.post("/phones/do", json={"what": "invite", "phone": "parent"})).json()["phones"]["parent"]
        assert (await client.post("/phones/do", json={"what": "step", "step": "hour"})).status_code == 200
        assert not (await client.post("/phones/do", json={"what": "restart"})).json()["phones"]["parent"]
        assert (await client.get("/phones/state", headers={"Host": "evil.example"})).status_code == 400
