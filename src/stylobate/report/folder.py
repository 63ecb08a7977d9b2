"""An output folder that changes as a whole or not at all."""

from __future__ import annotations

import errno
import os
import re
import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from stylobate.core import durable
from stylobate.core.errors import OutputError

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
"""What the system answers when the disk, the user's share of it, or a file has reached its limit."""


class Staging:
    """Files on their way into an output folder: kept in a hidden folder inside it until `commit`."""

    def __init__(self, out: Path, hidden: Path) -> None:
        self.out = out
        self._new = hidden / "new"
        self._old = hidden / "old"
        self._new.mkdir()
        self._old.mkdir()

    def write(self, name: str, content: bytes) -> None:
        """Stage one file. Raises OutputError."""
        try:
            with (self._new / name).open("wb") as file:
                file.write(content)
        except OSError as error:
            raise OutputError(_refusal(self.out, error)) from error

    def commit(self, last: str, owned: re.Pattern[str]) -> None:
        """Move every staged file into the folder, `last` at the end, and drop older files that match `owned`.

        Until `last` is in place whatever fails is undone; putting `last` in place is one atomic step of the file
        system. Signals wait meanwhile. Raises OutputError.
        """
        try:
            with (self._new / last).open("rb+") as file:
                os.fsync(file.fileno())
            staged = {path.name for path in self._new.iterdir()} - {last}
            outdated = {path.name for path in self.out.iterdir() if owned.fullmatch(path.name) and path.is_file()}
            with _signals_held():
                self._swap(sorted(outdated | staged), staged, last)
        except OSError as error:
            raise OutputError(_refusal(self.out, error)) from error

    def _swap(self, names: list[str], staged: set[str], last: str) -> None:
        """Old files of these names out, the staged ones in, then `last`; undone in full if a step raises OSError."""
        set_aside: list[str] = []
        moved: list[str] = []
        try:
            for name in names:
                if (self.out / name).exists():
                    (self.out / name).rename(self._old / name)
                    set_aside.append(name)
                if name in staged:
                    (self._new / name).rename(self.out / name)
                    moved.append(name)
            (self._new / last).replace(self.out / last)
        except OSError:
            for name in moved:
                (self.out / name).unlink()
            for name in set_aside:
                (self._old / name).rename(self.out / name)
            raise


@contextmanager
def staging(out: Path) -> Iterator[Staging]:
    """A staging area for `out`, made before the long work, so that a folder that cannot be written shows at once.

    Folders on the way to `out` are made; on failure they and every staged file are removed again.
    Raises OutputError: one line that names the folder and the cause.
    """
    made: list[Path] = []
    hidden: Path | None = None
    done = False
    try:
        try:
            with _signals_held():
                made = _make_folders(out)
                hidden = durable.hidden_folder(out)
            area = Staging(out, hidden)
        except OSError as error:
            raise OutputError(_refusal(out, error)) from error
        yield area
        done = True
    finally:
        with _signals_held():
            if hidden is not None:
                durable.drop(hidden)
            if not done:
                for folder in reversed(made):
                    _remove_empty(folder)


def _make_folders(out: Path) -> list[Path]:
    """Make `out` and what is missing above it; returns what was made, outermost first. Raises OSError."""
    missing = []
    folder = out
    while not folder.exists():
        missing.append(folder)
        folder = folder.parent
    made: list[Path] = []
    try:
        for folder in reversed(missing):
            folder.mkdir()
            made.append(folder)
    except OSError:
        for folder in reversed(made):
            _remove_empty(folder)
        raise
    if not out.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, "it is a file, not a folder")
    return made


def _remove_empty(folder: Path) -> None:
    try:
        folder.rmdir()
    except OSError:
        return


def _refusal(out: Path, error: OSError) -> str:
    cause = (error.strerror or str(error)).strip()
    remedy = "free some space or name another folder" if error.errno in _FULL else "name a folder you can write to"
    return f"--out {out}: cannot write there: {cause[:1].lower()}{cause[1:]}; nothing was changed; {remedy}"


@contextmanager
def _signals_held() -> Iterator[None]:
    """Ctrl-C and termination wait until the block is done. Outside the main thread Python sends none: nothing to do.

    By handlers, not by a signal mask: a mask holds for one thread only, and numerical libraries start others.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    received: list[int] = []
    before = {
        number: signal.signal(number, lambda arrived, _frame: received.append(arrived))
        for number in (signal.SIGINT, signal.SIGTERM)
    }
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler if handler is not None else signal.SIG_DFL)
        if received:
            signal.raise_signal(received[0])
