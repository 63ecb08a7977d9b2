"""Where a signal may end the command: not inside the loader of compiled code, which crashes on an exception there."""

from __future__ import annotations

import signal
import time
from collections.abc import Callable, Iterator

import pytest

from stylobate import __main__ as command

PATIENCE_S = 20.0


@pytest.fixture(autouse=True)
def terminated() -> Iterator[None]:
    before = signal.signal(signal.SIGTERM, command._terminated)
    yield
    signal.signal(signal.SIGTERM, before)


def signalled_in(module: str, then: Callable[[], None]) -> None:
    """Get SIGTERM in a frame of this module, and do `then` in it."""
    exec(
        "def called():\n    signal.raise_signal(signal.SIGTERM)\n    then()\ncalled()",
        {"__name__": module, "signal": signal, "then": then},
    )


@pytest.mark.parametrize("module", ["numba.core.serialize", "llvmlite.binding"])
def test_a_loader_of_compiled_code_returns_before_the_signal_ends_the_command(module: str) -> None:
    returned = False

    def mark() -> None:
        nonlocal returned
        returned = True

    with pytest.raises(SystemExit) as ended:
        signalled_in(module, mark)
        until = time.monotonic() + PATIENCE_S
        while time.monotonic() < until:
            time.sleep(0.001)
    assert returned
    assert ended.value.code == command.EXIT_TERMINATED


@pytest.mark.parametrize("module", ["stylobate.find.vote", "numbat"])
def test_elsewhere_the_signal_ends_it_at_once(module: str) -> None:
    with pytest.raises(SystemExit):
        signalled_in(module, lambda: pytest.fail("went on"))
