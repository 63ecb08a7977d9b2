"""The command line with a measurement by hand in place of the real one: for what the door does with a result.

Environment: FAKE_SITES (default 3); FAKE_WAIT, seconds that the measurement takes after it has written a line.
"""

from __future__ import annotations

import os
import sys
import time
from types import ModuleType
from typing import Any

from stylobate.__main__ import main
from stylobate.core.result import Result
from tests.doors.handmade import measurement


def measure(*_arguments: object, **_options: object) -> Result:
    """The measurement by hand."""
    if wait := float(os.environ.get("FAKE_WAIT", "0")):
        sys.stdout.write("measuring\n")
        sys.stdout.flush()
        time.sleep(wait)
    return measurement(int(os.environ.get("FAKE_SITES", "3")))[0]


if __name__ == "__main__":
    fake: Any = ModuleType("stylobate.measuring")
    fake.measure = measure
    sys.modules["stylobate.measuring"] = fake
    main()
