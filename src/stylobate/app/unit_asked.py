"""The number of the scan body at a site, and what the register of scan bodies says of it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from stylobate.case.checks import of_tooth

if TYPE_CHECKING:
    from stylobate.case import Case


def unit_words(case: Case, tooth: str, number: str, register: Path | None = None) -> tuple[bool, str]:
    """Whether a unit may stand at a site of the case, and the words that say so.

    register: its file, None: in the user's data folder, where there is one.
    Raises UsageError, CaseError, RegisterError.
    """
    from stylobate.register.asking import said_of

    site = of_tooth(case, tooth).site
    return said_of(" ".join(number.split()), site.scan_body, case.table.code, register)
