"""The command line with a measurement by hand in place of the real one: for what the door does with a result.

Environment: FAKE_SITES (default 3); FAKE_VERDICT, of the last site (the others: use); FAKE_WAIT,
seconds that the measurement takes after it has written a line; FAKE_DEAF, it then waits for ever, deaf to an interrupt.
"""

from __future__ import annotations

import contextlib
import os
import sys
import threading
import time
from dataclasses import replace
from types import ModuleType
from typing import Any

from stylobate import scan
from stylobate.__main__ import main
from stylobate.core.result import Result, Verdict
from tests.doors.handmade import measurement


def measure(*_arguments: object, **_options: object) -> Result:
    """The measurement by hand."""
    if wait := float(os.environ.get("FAKE_WAIT", "0")):
        sys.stdout.write("measuring\n")
        sys.stdout.flush()
        time.sleep(wait)
    if "FAKE_DEAF" in os.environ:
        sys.stdout.write("measuring\n")
        sys.stdout.flush()
        with contextlib.suppress(KeyboardInterrupt):
            threading.Event().wait()
        threading.Event().wait()
    result = measurement(int(os.environ.get("FAKE_SITES", "3")))[0]
    if word := os.environ.get("FAKE_VERDICT"):
        judged = [replace(site, verdict=Verdict("use", "by hand")) for site in result.sites]
        judged[-1] = replace(judged[-1], verdict=Verdict(word, "by hand"))
        result = replace(result, sites=tuple(judged))
    return result


if __name__ == "__main__":
    fake: Any = ModuleType("stylobate.measuring")
    fake.measure = measure
    fake.made_ready = lambda parts, _: parts
    scan.read_scan = lambda _: None  # type: ignore[assignment, return-value]
    sys.modules["stylobate.measuring"] = fake
    main()
