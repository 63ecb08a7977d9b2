"""Pastes the current --help texts into the docs: a line `<!-- help: stylobate measure -->` and the block below it."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
BLOCK = re.compile(r"<!-- help: stylobate(?P<command>[ a-z]*) -->\n```text\n.*?```\n", re.DOTALL)


def pages() -> list[Path]:
    """Every page that may hold a help text."""
    return [ROOT / "README.md", *sorted((ROOT / "docs").rglob("*.md"))]


def help_text(words: list[str]) -> str:
    """What `stylobate WORDS --help` prints on 80 columns. Raises CalledProcessError."""
    command = [sys.executable, "-m", "stylobate", *words, "--help"]
    environment = {**os.environ, "COLUMNS": "80"}
    return subprocess.run(command, capture_output=True, text=True, check=True, env=environment, cwd=ROOT).stdout


def pasted(page: str) -> str:
    """The page with each help text as it is now."""

    def current(match: re.Match[str]) -> str:
        command = match["command"]
        return f"<!-- help: stylobate{command} -->\n```text\n{help_text(command.split())}```\n"

    return BLOCK.sub(current, page)


if __name__ == "__main__":
    for path in pages():
        old = path.read_text(encoding="utf-8")
        new = pasted(old)
        if new != old:
            path.write_text(new, encoding="utf-8")
            print(f"{path.relative_to(ROOT)}: help text renewed")
