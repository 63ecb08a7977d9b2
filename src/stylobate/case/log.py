"""log.jsonl: who did what and when, each line holding the hash of the line before and of the case it led to."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from typing import Any

from stylobate.core.errors import CaseError

START = "0" * 64
"""What stands for the line before the first."""
_KEYS = {"n", "time", "who", "what", "about", "state", "before"}


@dataclass(frozen=True)
class Line:
    """One line. state: SHA-256 of case.json after it. sha256: of the line itself, without its line end."""

    n: int
    time: str
    who: str
    what: str
    about: dict[str, Any]
    state: str
    before: str
    sha256: str


@dataclass(frozen=True)
class Log:
    """The whole of it. torn: bytes after the last complete line, from a process that died while writing."""

    lines: tuple[Line, ...]
    torn: int

    @property
    def head(self) -> str:
        """Hash of the last line: it stands for the whole log."""
        return self.lines[-1].sha256 if self.lines else START


def digest(content: bytes) -> str:
    """SHA-256, 64 hexadecimal digits."""
    return hashlib.sha256(content).hexdigest()


def line_bytes(log: Log, time: str, who: str, what: str, about: dict[str, Any], state: str) -> bytes:
    """The next line of `log`, with its line end."""
    values = {"n": len(log.lines) + 1, "time": time, "who": who, "what": what, "about": about, "state": state,
              "before": log.head}  # fmt: skip
    return json.dumps(values, ensure_ascii=False, allow_nan=False).encode() + b"\n"


def parse(content: bytes, name: str) -> Log:
    """Read and check a log. Raises CaseError with the number of the first line that does not follow."""
    complete, _, rest = content.rpartition(b"\n")
    raw = complete.split(b"\n") if complete else []
    lines: list[Line] = []
    before = START
    for n, text in enumerate(raw, start=1):
        line = _line(text)
        if line is None or line.n != n or line.before != before:
            raise CaseError(
                f"{name}: line {n} does not follow from the one before: the log was changed or cut by something else; "
                "restore the folder from a copy"
            )
        lines.append(line)
        before = line.sha256
    return Log(tuple(lines), len(rest))


def _line(text: bytes) -> Line | None:
    try:
        values = json.loads(text)
    except (ValueError, RecursionError):
        return None
    if not isinstance(values, dict) or set(values) != _KEYS or not isinstance(values["about"], dict):
        return None
    words = [values[key] for key in ("time", "who", "what", "state", "before")]
    if not all(isinstance(word, str) for word in words) or not isinstance(values["n"], int):
        return None
    return Line(**values, sha256=digest(text))
