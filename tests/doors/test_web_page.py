"""The page in a real browser, as its user meets it: drop, read, decide by hand, sign, hand over, lose the server."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, ConsoleMessage, Route, expect, sync_playwright
from playwright.sync_api import Page as Tab

import stylobate
from stylobate.case import Case, intake
from stylobate.report.folder import staging
from stylobate.report.save import save
from tests.doors.page_server import Page, page, small_scene

SLOW_MS = 300_000
PAINT_JS = "fetch('/api/state').then((answer) => answer.json()).then((state) => state.scene?.paint)"
SERIOUS = {"serious", "critical"}


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    found = next((path for path in map(shutil.which, ("chromium", "chromium-browser", "google-chrome")) if path), None)
    assert found, "no Chromium on this machine; install Debian's package chromium (scripts/setup.sh does)"
    with sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=found, args=["--no-sandbox"])
        yield opened
        opened.close()


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    return small_scene(tmp_path_factory.mktemp("files"))


def tab_of(browser: Browser, running: Page, **settings: Any) -> tuple[Tab, list[str]]:
    """A tab with the page in it, and the errors that the browser reports (a refusal, 409, is an answer)."""
    context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce", **settings)
    tab = context.new_page()
    tab.set_default_timeout(SLOW_MS)
    said: list[str] = []

    def hear(message: ConsoleMessage) -> None:
        if message.type == "error" and "409 (Conflict)" not in message.text:
            said.append(message.text)

    tab.on("console", hear)
    tab.on("pageerror", lambda error: said.append(str(error)))
    tab.on("request", lambda request: said.append(request.url) if outside(request.url, running) else None)
    tab.goto(running.address)
    return tab, said


def outside(url: str, running: Page) -> bool:
    """Whether a request leaves the page's own server."""
    return not url.startswith((running.base, "blob:", "data:"))


def comes_true(tab: Tab, what: str) -> None:
    """Wait for an expression; the page's own policy forbids Playwright's way."""
    for _ in range(SLOW_MS // 100):
        if tab.evaluate(what):
            return
        tab.wait_for_timeout(100)
    raise AssertionError(what)


def no_serious_fault(tab: Tab) -> None:
    """axe-core finds nothing serious on what is shown."""
    found = Axe().run(tab).response["violations"]
    bad = [(fault["id"], [node["html"][:120] for node in fault["nodes"]]) for fault in found
           if fault["impact"] in SERIOUS]  # fmt: skip
    assert not bad, bad


def test_a_case_from_scan_to_package(browser: Browser, files: tuple[Path, Path], tmp_path: Path) -> None:
    scan, parts = files
    folder = tmp_path / "case"
    intake.add_parts(Case.create(folder, "H-0421", "bridge", "AB"), parts, "AB")
    with page(folder) as running:
        tab, said = tab_of(browser, running)
        expect(tab.get_by_text("Drop a scan here")).to_be_visible(timeout=SLOW_MS)
        no_serious_fault(tab)
        tab.locator("input[type=file]").set_input_files(scan)
        expect(tab.get_by_role("alert")).to_contain_text("initials", timeout=SLOW_MS)
        no_serious_fault(tab)
        tab.get_by_label("Your initials").fill("AB")
        tab.get_by_role("button", name="All right").click()
        tab.locator("input[type=file]").set_input_files(scan)
        expect(tab.get_by_role("progressbar")).to_be_visible()
        expect(tab.get_by_role("heading", level=1)).to_have_text("Use this site", timeout=SLOW_MS)
        no_serious_fault(tab)

        first = tab.locator(".site").first
        first.locator(".site-head").click()
        first.get_by_label("Scan body at this site").select_option("alder-wide")
        expect(first.locator(".sentence")).to_contain_text("Don't use", timeout=SLOW_MS)
        tab.get_by_role("button", name="Undo").click()
        expect(tab.get_by_role("heading", level=1)).to_have_text("Use this site", timeout=SLOW_MS)

        sign(tab, "16")
        expect(first.locator(".still")).to_contain_text("Released by AB")
        no_serious_fault(tab)
        with tab.expect_download(timeout=SLOW_MS) as got:
            tab.get_by_role("button", name="Package for the laboratory").click()
        package = tmp_path / "h-0421.zip"
        got.value.save_as(package)
        assert said == []
    checked = subprocess.run(
        [sys.executable, "-m", "stylobate", "receive", str(package), "--no-measure"], capture_output=True, text=True,
        check=False,
    )  # fmt: skip
    assert checked.returncode == 0, checked.stderr
    table = Case.open(folder).table
    assert {check.kind for check in table.checks if check.ok} == {"clean", "seated", "torque", "radiograph", "unit"}
    assert [(act.tooth, act.by, act.released) for act in table.releases] == [("16", "AB", True)]


def sign(tab: Tab, tooth: str) -> None:
    """Name the first site's tooth, pass its checks with the keyboard alone, and release it."""
    first = tab.locator(".site").first
    if first.locator(".evidence").count() == 0:
        tab.locator("body").press("1")
    first.get_by_label("Which tooth?").select_option(tooth)
    first.get_by_role("textbox", name="Torque used").fill("12")
    first.get_by_role("textbox", name="Number of the scan body").fill("AT-0042")
    for done in range(5):
        expect(first.locator(".passed")).to_have_count(done)
        button = first.locator(".missing").first.get_by_role("button", name="Passed", exact=False).first
        button.focus()
        button.press("Enter")
    expect(first.locator(".passed")).to_have_count(5)
    tab.get_by_role("button", name=f"Release tooth {tooth} for the work").press("Enter")


@pytest.fixture(scope="module")
def measured(files: tuple[Path, Path], tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("measured") / "result"
    scan, parts = files
    result = stylobate.measure(scan, parts)
    with staging(out) as area:
        save(result, area, maps=True)
    return out


@pytest.mark.parametrize("looks", [{"color_scheme": "dark"}, {"viewport": {"width": 820, "height": 1180}}])
def test_a_result_is_shown_and_found_by_keyboard(
    browser: Browser, files: tuple[Path, Path], measured: Path, looks: dict[str, Any]
) -> None:
    scan, parts = files
    with page(measured, "--parts", parts, "--scan", scan) as running:
        tab, said = tab_of(browser, running)
        if "viewport" in looks:
            tab.set_viewport_size(looks["viewport"])
        else:
            tab.emulate_media(color_scheme="dark")
        expect(tab.locator(".pin")).to_have_count(1, timeout=SLOW_MS)
        expect(tab.locator(".overlay")).to_have_count(0, timeout=SLOW_MS)
        tab.locator("body").press("1")
        expect(tab.locator(".site").first).to_contain_text("Where the uncertainty comes from")
        expect(tab.locator(".legend")).to_contain_text("+50 µm")
        tab.locator("body").press("]")
        expect(tab.locator(".legend")).to_contain_text("+75 µm")
        tab.locator("body").press("s")
        expect(tab.get_by_role("button", name="Section")).to_have_attribute("aria-pressed", "true")
        no_serious_fault(tab)
        tab.locator("body").press("?")
        expect(tab.get_by_role("dialog")).to_be_visible()
        no_serious_fault(tab)
        assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth"), "wider than the screen"
        assert not tab.get_by_role("button", name="Undo").is_visible(), "a finished result is changed by nothing"
        assert said == []


def test_colours_come_however_long_the_surface_takes(
    browser: Browser, files: tuple[Path, Path], measured: Path
) -> None:
    """The colours are asked for while the whole surface is still on its way."""
    with page(measured, "--scan", files[0]) as running:
        context = browser.new_context(reduced_motion="reduce")
        context.add_init_script("localStorage.setItem('picture', 'full')")
        tab = context.new_page()
        held: list[Route] = []
        tab.route(re.compile(r"/api/surface/scan-\w+$"), lambda route: held.append(route))
        tab.goto(running.address)
        expect(tab.locator(".pin")).to_have_count(1, timeout=SLOW_MS)
        comes_true(tab, PAINT_JS)
        tab.wait_for_timeout(500)
        for route in held:
            route.continue_()
        tab.unroute_all()
        comes_true(tab, f"({PAINT_JS}).then((key) => window.arch.paintKey === key)")


def test_a_killed_program_is_said_and_comes_back_in_the_same_tab(browser: Browser, files: tuple[Path, Path],
                                                                 measured: Path) -> None:  # fmt: skip
    with page(measured, "--scan", files[0]) as running:
        tab, _ = tab_of(browser, running)
        other = tab.context.new_page()
        other.goto(running.base)
        expect(other.get_by_role("heading", level=1)).to_be_visible(timeout=SLOW_MS)
        os.kill(running.process.pid, signal.SIGKILL)
        running.process.wait()
        expect(tab.get_by_role("alert")).to_contain_text("Nothing is lost", timeout=SLOW_MS)
        expect(tab.get_by_role("heading", level=1)).to_be_visible()
        with page(measured, "--scan", files[0]):
            expect(tab.get_by_role("alert")).to_have_count(0, timeout=SLOW_MS)
            expect(tab.get_by_role("heading", level=1)).to_be_visible()
