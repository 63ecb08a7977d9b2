"""What can go wrong, as one tree.

    StylobateError          one line: what, where, what to do; a command ends with status 2
    ├── ScanError           the scan file cannot be read as a surface
    ├── PartsError          the parts folder cannot be used (carries every fault)
    ├── ResultError         a result.json, or another file of our own, cannot be used
    ├── RegisterError       the register of scan bodies cannot be used, or refuses an entry (carries every fault)
    ├── SettingsError       a file of settings cannot be used
    ├── CaseError           the case folder cannot be used or changed; it stays as it was
    ├── PackageError        a hand-off package is not whole, not genuine, or cannot be made
    ├── UsageError          options that contradict each other or name what does not exist
    ├── FitError            a fit that did not converge or has too little surface
    ├── JoinError           two scans cannot be laid on each other well enough
    └── OutputError         the result cannot be written; what stood there before is kept

A scan in which fewer sites are found than asked for is not an error: the result is written and says so.
"""

from __future__ import annotations


class StylobateError(Exception):
    """Base of all refusals. `str(error)` is one line a user can act on."""


class ScanError(StylobateError):
    """The scan cannot be read: names the file, what is wrong in it, and what to do."""


class PartsError(StylobateError):
    """The parts folder is not usable. `faults` lists every fault found, one line each."""

    def __init__(self, message: str, faults: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.faults = faults


class ResultError(StylobateError):
    """A file that this program wrote earlier is not usable: names the file, the key, what is wrong and what to do."""


class RegisterError(StylobateError):
    """The register cannot be used, or an entry is refused. `faults` lists every fault found, one line each."""

    def __init__(self, message: str, faults: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.faults = faults


class SettingsError(StylobateError):
    """The settings cannot be used: names the file, the key, what is wrong, and what to do."""


class CaseError(StylobateError):
    """The case folder is not usable, busy, or does not allow the change asked for; it stays as it was."""


class PackageError(StylobateError):
    """A hand-off package is damaged, incomplete, hostile or not from whom it should be; nothing was unpacked."""


class UsageError(StylobateError):
    """The call itself is off."""


class FitError(StylobateError):
    """A pose could not be fixed: names the figure reached and the figure needed."""


class JoinError(StylobateError):
    """Two scans cannot be laid on each other well enough: says how much they share and what is lacking."""


class OutputError(StylobateError):
    """The output cannot be written; nothing half-written is left."""
