"""The case folder: opened, changed one step at a time, put right after a process died in the middle of a change.

A change is three steps: the new case.json under another name, one line in the log that holds its hash, then the
rename. The line in the log is the moment it counts: a process that dies before leaves the case as it was, one that
dies after leaves a change that whoever opens the folder next completes.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from stylobate.case.log import Log, digest, line_bytes, parse
from stylobate.case.migrate import current
from stylobate.case.model import CODE, FORMAT, VERSION, CaseTable
from stylobate.core import durable
from stylobate.core.errors import CaseError
from stylobate.record import RESULT

CASE, NEXT, LOG, LOCK = "case.json", ".case.json.next", "log.jsonl", ".lock"
WAIT_S = 20.0
"""How long a second writer waits for the first; a change takes milliseconds, adding a large scan a second or two."""

Edit = Callable[[CaseTable], CaseTable]


def now() -> str:
    """The time as the case writes it: UTC, to the second."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


@dataclass(frozen=True)
class Case:
    """A case as it stood when it was read. Every change gives a new value."""

    path: Path
    table: CaseTable
    log: Log

    @staticmethod
    def create(path: str | Path, code: str, work: str, who: str, keep_names: bool = False) -> Case:
        """Make a case folder. Raises CaseError: there is one already, the folder is not empty, a bad code or name."""
        root = Path(path)
        if not re.fullmatch(CODE, code):
            raise CaseError(
                f"'{code}' is not a code for a case; write up to 40 letters, digits, '.', '_' or '-', no name of a "
                "person, like --code H-0421"
            )
        fresh = validated(
            {"format": FORMAT, "version": VERSION, "code": code, "created": now(), "work": work,
             "keep_names": keep_names}, "the new case")  # fmt: skip
        require_initials(who)
        with writing(root, make=True):
            if _content(root / LOG):
                raise CaseError(f"{root}: there is a case already; name another folder")
            strange = [item.name for item in root.iterdir() if item.name not in (NEXT, LOG, LOCK)]
            if strange:
                raise CaseError(f"{root}: the folder is not empty ({strange[0]}); name a new one")
            return _commit(root, Log((), 0), fresh, who, "new case", {"code": code, "work": work})

    @staticmethod
    def open(path: str | Path) -> Case:
        """Read a case; a change that a dying process left open is completed first.

        Raises CaseError: no case, from a newer version, changed by something else, or busy.
        """
        root = Path(path)
        root = root.parent if root.name == CASE else root
        if not root.is_dir():
            raise CaseError(f"{root}: no such folder; make a case with 'stylobate case new'")
        found = _settled(root)
        if found is None:
            with writing(root):
                found = _recovered(root)
        return found

    def change(self, who: str, what: str, about: Mapping[str, Any], edit: Edit) -> Case:
        """Read the case anew, apply `edit`, write it. Raises CaseError; then the case is as it was."""
        require_initials(who)
        with writing(self.path):
            fresh = _recovered(self.path)
            return _commit(self.path, fresh.log, edit(fresh.table), who, what, dict(about))

    def put(self, files: Mapping[str, bytes]) -> dict[str, str]:
        """Keep files by their path inside the folder, before a change refers to them; returns the hash of each.

        Raises CaseError where the disk refuses.
        """
        with writing(self.path):
            for name, content in files.items():
                durable.write(self.path / name, content)
        return {name: digest(content) for name, content in files.items()}

    def read(self, name: str) -> bytes:
        """A file of the case, its hash checked. Raises CaseError: it is gone, or not what the case holds."""
        wanted = self.table.files().get(name)
        content = _content(self.path / name)
        if wanted is None or content is None:
            raise CaseError(f"{self.path}: {name} is missing; restore the folder from a copy")
        if digest(content) != wanted:
            raise CaseError(f"{self.path}: {name} was changed since it was added; restore it from a copy")
        return content

    def unchanged(self, name: str) -> Path:
        """Where a file of the case lies, its hash checked. Raises CaseError: it is gone, or not what the case holds."""
        self.read(name)
        return self.path / name

    def result_file(self) -> Path | None:
        """Where the result.json that counts lies, None where there is none. Raises CaseError as `unchanged` does."""
        result = self.table.result()
        return None if result is None else self.unchanged(f"{result.folder}/{RESULT}")

    def faults(self) -> list[str]:
        """What is wrong with the files of the case, one line each; the log was checked when it was opened."""
        found = []
        for name in self.table.files():
            try:
                self.read(name)
            except CaseError as error:
                found.append(str(error))
        return found


@contextmanager
def writing(root: Path, make: bool = False) -> Iterator[None]:
    """Hold the folder for one change. Raises CaseError: busy for longer than WAIT_S, or it cannot be written."""
    from filelock import FileLock, Timeout

    try:
        if make:
            root.mkdir(parents=True, exist_ok=True)
        with FileLock(root / LOCK, timeout=WAIT_S):
            yield
    except Timeout as error:
        raise CaseError(
            f"{root}: another program has been writing this case for {WAIT_S:g} s; try again when it is done"
        ) from error
    except OSError as error:
        raise CaseError(_refusal(root, error)) from error


def require_initials(who: str) -> None:
    """Raises CaseError unless `who` is up to 12 letters, digits, '.', '_' or '-'."""
    if not who:
        raise CaseError(
            "nobody's initials are given; write those of who does this, up to 12 letters or digits, like AB"
        )
    if not (0 < len(who) <= 12 and all(c.isalnum() or c in "._-" for c in who) and (who[0].isalnum() or who[0] == "_")):
        raise CaseError(f"'{who}' is not a sign for a person; write initials, up to 12 letters or digits, like AB")


def validated(values: dict[str, Any], name: str) -> CaseTable:
    """The table of these values. Raises CaseError with the first key at fault."""
    from pydantic import ValidationError

    try:
        return CaseTable.model_validate_json(json.dumps(values))
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        key = ".".join(str(step) for step in first["loc"])
        raise CaseError(f"{name}: {key}: {first['msg'].lower()}, not {str(first['input'])[:60]!r}") from error


def text_of(table: CaseTable) -> bytes:
    """case.json as bytes."""
    return (table.model_dump_json(indent=1) + "\n").encode()


def _commit(root: Path, log: Log, table: CaseTable, who: str, what: str, about: dict[str, Any]) -> Case:
    text = text_of(validated(json.loads(text_of(table)), str(root)))
    line = line_bytes(log, now(), who, what, about, digest(text))
    durable.flushed(root / NEXT, text)
    durable.flush_folder(root)
    durable.append(root / LOG, line)
    (root / NEXT).replace(root / CASE)
    durable.flush_folder(root)
    return Case(root, table, parse((root / LOG).read_bytes(), f"{root}/{LOG}"))


def _settled(root: Path) -> Case | None:
    """The case where nothing is left open, else None. A reader needs no lock for that: each file changes at once."""
    log = _log(root)
    content = _content(root / CASE)
    if not log.lines or log.torn or content is None or digest(content) != log.lines[-1].state:
        return None
    return Case(root, _table(root, content), log)


def _recovered(root: Path) -> Case:
    """The case, with what a dying process left open completed or taken back. To be called under the lock."""
    log = _log(root)
    if not log.lines and (root / CASE).exists():
        raise CaseError(f"{root}: {LOG}, which says what counts, is gone or empty; restore the folder from a copy")
    if not log.lines:
        raise CaseError(f"{root}: this folder holds no case; make one with 'stylobate case new'")
    if log.torn:
        with (root / LOG).open("rb+") as file:
            file.truncate((root / LOG).stat().st_size - log.torn)
            os.fsync(file.fileno())
        log = _log(root)
    wanted = log.lines[-1].state
    content, following = _content(root / CASE), _content(root / NEXT)
    if content is None or digest(content) != wanted:
        if following is None or digest(following) != wanted:
            raise CaseError(
                f"{root}: {CASE} is not what the last line of {LOG} says: something else changed it; "
                "restore the folder from a copy"
            )
        (root / NEXT).replace(root / CASE)
        durable.flush_folder(root)
        content = following
    (root / NEXT).unlink(missing_ok=True)
    for unfinished in root.glob("**/.*.part"):
        unfinished.unlink(missing_ok=True)
    return Case(root, _table(root, content), log)


def _log(root: Path) -> Log:
    return parse(_content(root / LOG) or b"", f"{root}/{LOG}")


def _table(root: Path, content: bytes) -> CaseTable:
    try:
        values = json.loads(content)
    except (ValueError, RecursionError):
        raise CaseError(f"{root}/{CASE}: is not JSON; restore the folder from a copy") from None
    return validated(current(values, f"{root}/{CASE}"), f"{root}/{CASE}")


def _content(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise CaseError(_refusal(path, error)) from error


def _refusal(path: Path, error: OSError) -> str:
    cause = (error.strerror or str(error)).strip()
    return f"{path}: {cause[:1].lower()}{cause[1:]}; the case is as it was; check the disk and the folder's rights"
