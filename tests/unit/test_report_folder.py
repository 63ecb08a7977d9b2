"""An output folder changes as a whole or not at all."""

from __future__ import annotations

import re
import signal
import threading
from pathlib import Path

import pytest

from stylobate.core.errors import OutputError
from stylobate.report.folder import _signals_held, staging

OWNED = re.compile(r"map-\d\.txt")


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def write(folder: Path, *names: str) -> None:
    with staging(folder) as area:
        for name in names:
            area.write(name, b"new " + name.encode())
        area.commit("last", OWNED)


def test_a_new_folder_holds_what_was_staged(tmp_path: Path) -> None:
    write(tmp_path / "a" / "b", "map-1.txt", "last")
    assert contents(tmp_path) == {"map-1.txt": b"new map-1.txt", "last": b"new last"}


def test_older_files_of_ours_go_and_those_of_others_stay(tmp_path: Path) -> None:
    for name in ("map-1.txt", "map-2.txt", "map-x.txt", "notes.txt", "last"):
        (tmp_path / name).write_text("old")
    write(tmp_path, "map-1.txt", "last")
    assert contents(tmp_path) == {
        "map-1.txt": b"new map-1.txt",
        "map-x.txt": b"old",
        "notes.txt": b"old",
        "last": b"new last",
    }


def test_a_failing_last_step_undoes_the_others(tmp_path: Path) -> None:
    (tmp_path / "last").mkdir()  # a file cannot take the place of a folder
    (tmp_path / "last" / "inside").write_text("old")
    for name in ("map-1.txt", "map-2.txt"):
        (tmp_path / name).write_text("old")
    with pytest.raises(OutputError, match="nothing was changed"):
        write(tmp_path, "map-1.txt", "map-3.txt", "last")
    assert contents(tmp_path) == {"map-1.txt": b"old", "map-2.txt": b"old", "inside": b"old"}
    assert not list(tmp_path.glob(".*"))


def test_a_failing_body_leaves_no_trace(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), staging(tmp_path / "a" / "b") as area:
        area.write("last", b"x")
        raise ZeroDivisionError
    assert not list(tmp_path.iterdir())


def test_folders_made_stay_if_another_put_something_there(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), staging(tmp_path / "a" / "b"):
        (tmp_path / "a" / "theirs").write_text("kept")
        raise ZeroDivisionError
    assert contents(tmp_path) == {"theirs": b"kept"}


def test_an_interrupt_waits_for_the_end_of_the_block() -> None:
    signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell that starts pytest with & has it ignored
    steps = []
    with pytest.raises(KeyboardInterrupt):
        with _signals_held():
            signal.raise_signal(signal.SIGINT)
            steps.append("held")
        steps.append("not reached")
    assert steps == ["held"]
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler


def test_outside_the_main_thread_nothing_is_touched(tmp_path: Path) -> None:
    thread = threading.Thread(target=write, args=(tmp_path, "last"))
    thread.start()
    thread.join()
    assert contents(tmp_path) == {"last": b"new last"}
