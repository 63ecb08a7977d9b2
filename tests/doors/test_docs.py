"""The docs say what is so: help texts, commands, links, options and constants."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from scripts.paste_help import BLOCK, help_text, pages, pasted
from stylobate.report.colours import RANGE_UM
from tests.doors.running import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")
SHELL = re.compile(r"```(?:sh|console)\n(.*?)```", re.DOTALL)


def shell_lines(text: str) -> list[str]:
    """Command lines of a page's shell blocks, without their comments."""
    lines = [line.split("#")[0].strip() for block in SHELL.findall(text) for line in block.splitlines()]
    return [line for line in lines if line]


ALL_PAGES = [*pages(), ROOT / "CONTRIBUTING.md"]
COMMANDS = sorted({line for page in ALL_PAGES for line in shell_lines(page.read_text(encoding="utf-8"))})


@pytest.mark.parametrize("page", pages(), ids=lambda page: str(page.relative_to(ROOT)))
def test_help_texts_are_current(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    assert pasted(text) == text, "run: make docs"


def test_every_help_marker_has_its_block() -> None:
    for page in pages():
        text = page.read_text(encoding="utf-8")
        assert text.count("<!-- help:") == len(BLOCK.findall(text)), page


def test_each_command_has_its_help_in_the_docs() -> None:
    found = {match["command"].strip() for page in pages() for match in BLOCK.finditer(page.read_text(encoding="utf-8"))}
    assert {"", "measure", "parts", "simulate"} <= {command.split(" ")[0] for command in found}


@pytest.mark.parametrize("line", [line for line in COMMANDS if line.startswith("make ")])
def test_make_targets_in_the_docs_exist(line: str) -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    assert re.search(rf"^{line.split()[1]}:.*##", makefile, re.MULTILINE)


@pytest.mark.parametrize("line", [line for line in COMMANDS if line.startswith("stylobate ")])
def test_options_in_the_docs_exist(line: str) -> None:
    words = line.split()[1:]
    command = words[:2] if words[0] in ("case", "parts", "register", "structure") else words[:1]
    known = help_text(command)
    for option in (word.split("=")[0] for word in words if word.startswith("--")):
        assert re.search(rf"^  (-\w, )?{option}\b", known, re.MULTILINE), option


def test_the_readme_opens_with_the_job_and_two_commands() -> None:
    first = README.split("\n\n")[1]
    for word in ("scan", "implant positions", "parts", "evidence", "hand-off", "no remake"):
        assert word in first.replace("\n", " ")
    assert shell_lines(README)[:2] == ["make demo", "make test"]


@pytest.mark.parametrize("page", ALL_PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_links_lead_somewhere(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", text):
        assert "://" in target or (page.parent / target).exists(), target


def test_the_range_of_the_colours_is_as_documented() -> None:
    text = (ROOT / "docs" / "conventions.md").read_text(encoding="utf-8")
    assert f"blue (−{RANGE_UM:g} µm, inside)" in text
    assert f"red (+{RANGE_UM:g} µm, outside)" in text


def test_the_lock_files_name_no_address() -> None:
    for lock in ROOT.glob("requirements*.lock"):
        text = lock.read_text(encoding="utf-8")
        assert "://" not in text
        pinned = re.findall(r"^[a-z0-9][\w.-]*==[\w.+!-]+", text, re.MULTILINE | re.IGNORECASE)
        assert len(pinned) > 20
        assert text.count("--hash=sha256:") >= len(pinned)
