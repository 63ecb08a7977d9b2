"""Running the command as its user does: a process, its two outputs and its exit status."""

from __future__ import annotations

import ctypes
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[2]
REAL = (sys.executable, "-m", "stylobate")
BY_HAND = (sys.executable, "-m", "tests.doors.fake_measure")
PATIENCE_S = 300
PR_CAPBSET_DROP, CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH = 24, 1, 2  # linux/prctl.h, linux/capability.h


def environment(**extra: str) -> dict[str, str]:
    """This process's environment, a fixed terminal width, and what is added."""
    return {**os.environ, "COLUMNS": "80", "PYTHONPATH": os.pathsep.join([str(ROOT / "src"), str(ROOT)]), **extra}


def run(
    *arguments: object,
    program: tuple[str, ...] = REAL,
    before: Callable[[], None] | None = None,
    **extra: str,
) -> subprocess.CompletedProcess[str]:
    """One run of the command. before: called in the new process before it starts."""
    return subprocess.run(
        [*program, *map(str, arguments)],
        capture_output=True,
        text=True,
        env=environment(**extra),
        timeout=PATIENCE_S,
        check=False,
        preexec_fn=before,
        cwd=ROOT,
    )


def bound_by_permissions() -> None:
    """Called in a new process before it starts: file permissions bind it even if it runs as root (see prctl(2))."""
    libc = ctypes.CDLL(None)
    for capability in (CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH):
        libc.prctl(PR_CAPBSET_DROP, capability, 0, 0, 0)


def refused(done: subprocess.CompletedProcess[str], *words: str) -> None:
    """Bad input as promised: status 2, one line on stderr that holds these words, nothing on stdout."""
    assert done.returncode == 2, done.stderr
    assert done.stderr.startswith("stylobate: ")
    assert done.stderr.count("\n") == 1, done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""
    for word in words:
        assert word in done.stderr, done.stderr
