"""What the register says of a unit that stands at a site, where there is a register."""

from __future__ import annotations

from pathlib import Path

from stylobate.core.errors import RegisterError
from stylobate.register.store import default_path, open_register
from stylobate.register.units import objections, units

PATIENCE_S = 3.0
"""How long to wait for another program that is writing: somebody stands at the chair."""


def said_of(number: str, scan_body: str, case: str, file: Path | None = None) -> tuple[bool, str]:
    """Whether nothing speaks against the unit at a site that was measured as `scan_body`, and the words for it.

    file: the register; None: that in the user's data folder, and where there is none nothing is said. A unit that the
    register does not hold is only said not to stand in it. Raises RegisterError where `file` cannot be read.
    """
    try:
        path = default_path() if file is None else file
        if file is None and not path.exists():
            return True, number
        with open_register(path, patience_s=PATIENCE_S) as register:
            found = units(register, [number])
    except RegisterError:
        if file is not None:
            raise
        return True, f"{number} (the register could not be asked)"
    if not found:
        return True, f"{number} (not in the register)"
    unit = found[0]
    against = objections(unit, case)
    if unit.kind.scan_body != scan_body:
        against.insert(0, f"it is of {unit.kind.scan_body}, the site was measured as {scan_body}")
    return not against, f"{unit.number}, not to be used: {'; '.join(against)}" if against else unit.number
