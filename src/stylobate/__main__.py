"""The command `stylobate`: every failure becomes one line on stderr and an exit status (docs/conventions)."""

from __future__ import annotations

import gc
import os
import signal
import sys
import threading
from _thread import interrupt_main
from types import FrameType
from typing import NoReturn

from stylobate.core import durable, process

EXIT_REFUSED = 2
EXIT_INTERNAL = 70  # EX_SOFTWARE of sysexits.h
EXIT_INTERRUPTED = 128 + signal.SIGINT
EXIT_TERMINATED = 128 + signal.SIGTERM


GRACE_S = 5.0
AGAIN_S = 0.02
COMPILER = ("numba", "llvmlite")
COLLECT_AFTER = 300_000  # objects: importing makes many that stay, which Python would look through again and again

_interrupts: list[int] = []
_ending = threading.Lock()


def _interrupted(number: int, frame: FrameType | None) -> None:
    """Leave by an exception; noted, because compiled code hands on another one in its place.

    An exception can be lost in a callback, or leave a lock of the compiler closed behind it: whoever still runs after
    GRACE_S is ended.
    """
    if not _interrupts:
        late = threading.Timer(GRACE_S, _end_interrupted)
        late.daemon = True
        late.start()
    _interrupts.append(number)
    _leave(number, frame, KeyboardInterrupt())


def _end_interrupted() -> NoReturn:
    """Say so once and end, whatever other threads wait for. Files have their names only once they are whole."""
    _ending.acquire()
    durable.drop_all()
    _say("interrupted; nothing half-written is left")
    sys.stderr.flush()
    os._exit(EXIT_INTERRUPTED)


def _terminated(number: int, frame: FrameType | None) -> None:
    """Leave by an exception, so that partial files are removed on the way out."""
    _leave(number, frame, SystemExit(EXIT_TERMINATED))


def _leave(number: int, frame: FrameType | None, by: BaseException) -> None:
    """Raise it, unless compiled code is being made or loaded: that calls Python without looking whether an exception
    came of it, and then crashes. The signal is given again a little later."""
    while frame is not None:
        if str(frame.f_globals.get("__name__")).partition(".")[0] in COMPILER:
            again = threading.Timer(AGAIN_S, interrupt_main, (number,))
            again.daemon = True
            again.start()
            return
        frame = frame.f_back
    raise by


def _say(text: str) -> None:
    """One line on stderr, whatever line breaks the text brought along."""
    sys.stderr.write(f"stylobate: {' '.join(text.split())}\n")


def _quiet_pipe() -> None:
    """The reader of our output has gone: nothing more to say, and nothing to flush at exit."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def run() -> int:
    """Run the command line in sys.argv; returns the exit status."""
    gc.set_threshold(COLLECT_AFTER)
    process.ours = True
    try:
        signal.signal(signal.SIGINT, _interrupted)
        signal.signal(signal.SIGTERM, _terminated)
        from stylobate.app.cli import invoke

        status = invoke()
        sys.stdout.flush()
        return status
    except BrokenPipeError:
        _quiet_pipe()
        return 0
    except (KeyboardInterrupt, Exception) as error:
        if isinstance(error, Exception) and not _interrupts:
            return _failed(error)
        # CPython ends a process by the signal itself when the interrupt once passed through `exec` of a string (as
        # dataclasses do on import), even after it was handled: its note of that is never cleared.
        _end_interrupted()


def _failed(error: Exception) -> int:
    """Status of a refusal, or of a fault of this program; STYLOBATE_DEBUG=1 shows where it came from."""
    from stylobate.core.errors import StylobateError

    if os.environ.get("STYLOBATE_DEBUG") == "1":
        import traceback

        traceback.print_exc()
    if isinstance(error, StylobateError):
        _say(str(error))
        return EXIT_REFUSED
    if isinstance(error, MemoryError):
        _say("not enough memory; close other programs, or cut the scan down to the part with the scan bodies")
        return EXIT_INTERNAL
    _say(
        f"internal error ({type(error).__name__}: {error}); this is a fault of the program: please report it, "
        "with what STYLOBATE_DEBUG=1 shows"
    )
    return EXIT_INTERNAL


def main() -> None:
    """Entry point of the installed command."""
    status = run()
    gc.freeze()  # what is left goes with the process: no search for it at the end, which took 0.2 s
    sys.exit(status)


if __name__ == "__main__":
    main()
