"""case.json, key by key. Values are frozen: a change makes a new table. Importing this imports pydantic."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, StringConstraints

from stylobate.parts.source import why_unsafe

FORMAT = "stylobate-case"
VERSION = 2

Role = Literal["bodies", "tissue", "opposing", "bite"]
ROLES: tuple[Role, ...] = ("bodies", "tissue", "opposing", "bite")
JOINED: tuple[Literal["tissue", "opposing"], ...] = ("tissue", "opposing")
"""Scans that may come in frames of their own; the bite scan is on the way of the other jaw."""
Kind = Literal["clean", "seated", "torque", "radiograph", "unit"]
KINDS: tuple[Kind, ...] = ("clean", "seated", "torque", "radiograph", "unit")
Output = Literal["place", "seat", "compare"]
OUTPUTS: tuple[Output, ...] = ("place", "seat", "compare")
Work = Literal["single", "bridge", "arch"]

Sha = Annotated[str, StringConstraints(pattern=r"^[0-9a-f]{64}$")]
CODE = r"^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$"
Code = Annotated[str, StringConstraints(pattern=CODE)]
Initials = Annotated[str, StringConstraints(pattern=r"^\w[\w.-]{0,11}$")]
Time = Annotated[str, StringConstraints(pattern=r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$")]
Tooth = Annotated[str, StringConstraints(pattern=r"^[1-8][1-8]$")]
Words = Annotated[str, StringConstraints(max_length=2000)]


def _inside(name: str) -> str:
    reason = why_unsafe(name)
    if reason is not None:
        raise ValueError(reason)
    return name


Inside = Annotated[str, AfterValidator(_inside)]
Files = dict[Inside, Sha]


class Table(BaseModel):
    """An object of the file: no unknown key, no conversion of types, no NaN."""

    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False, frozen=True)


class Stamped(Table):
    """What somebody did, and when (UTC)."""

    by: Initials
    time: Time


class ScanEntry(Stamped):
    """A scan kept in the case. original_sha256: of the file as it was given, before names and comments were taken out;
    what was measured outside the case is known by it."""

    role: Role
    file: Inside
    sha256: Sha
    original_sha256: Sha


class PartsEntry(Stamped):
    """A copy of the parts folder. sha256: as result.json has it. files: each with its own hash."""

    folder: Inside
    name: Words
    revision: Words
    sha256: Sha
    files: Files


class ResultEntry(Stamped):
    """A measurement kept in the case. scan: hash of the scan as kept here. parts: hash of the parts folder.
    scan_bodies, count: what the measurement was told; empty and None where nothing, or where it is not known."""

    id: Inside
    folder: Inside
    scan: Sha
    parts: Sha
    files: Files
    scan_bodies: tuple[Words, ...] = ()
    count: int | None = None


class SiteEntry(Table):
    """Which tooth a site of a result stands for."""

    tooth: Tooth
    site: Words


class SitesEntry(Stamped):
    """The teeth of one result's sites."""

    result: Inside
    sites: tuple[SiteEntry, ...]


class OutputEntry(Stamped):
    """What another command made of a result: placed parts, a frame, repeat scans.

    result: id of the result that counted then, None where there was none. withdrawn: it was taken back.
    """

    kind: Output
    folder: Inside
    files: Files
    result: Inside | None
    withdrawn: bool = False


class JoinSite(Table):
    """95 % bounds of a join at one site, and the covariance (3 × 3), mm², of its shift there, connection frame.

    axis_deg: None in cases joined before it was stated.
    """

    site: Words
    platform_um: float
    axis_deg: float | None = None
    covariance: tuple[tuple[float, ...], ...]


class JoinEntry(Stamped):
    """Where a scan lies in that of the bodies. scan, bite, result: hashes and id of what it was found with."""

    role: Role
    scan: Sha
    bite: Sha | None = None
    result: Inside
    bodies_from_scan: tuple[tuple[float, ...], ...]
    shared_mm2: float
    places: int
    sites: tuple[JoinSite, ...]


class Check(Stamped):
    """One chairside check of one site. scan: hash of the scan it was made for. value: what was read, in words."""

    tooth: Tooth
    kind: Kind
    ok: bool
    scan: Sha
    value: Words = ""
    note: Words = ""


class Release(Stamped):
    """A person's release of a site, or its withdrawal (released: false). open: checks that were missing or failed."""

    tooth: Tooth
    released: bool
    result: Inside
    verdict: Words = ""
    open: tuple[Kind, ...] = ()
    reason: Words = ""


class CaseTable(Table):
    """The whole file. Lists are histories: the last entry of a kind is the one that counts."""

    format: Literal["stylobate-case"] = "stylobate-case"
    version: Literal[2] = 2
    code: Code
    created: Time
    work: Work
    scans: tuple[ScanEntry, ...] = ()
    parts: tuple[PartsEntry, ...] = ()
    results: tuple[ResultEntry, ...] = ()
    sites: tuple[SitesEntry, ...] = ()
    outputs: tuple[OutputEntry, ...] = ()
    joins: tuple[JoinEntry, ...] = ()
    checks: tuple[Check, ...] = ()
    releases: tuple[Release, ...] = ()
    keep_names: bool = Field(default=False, description="file names and comments of scans are kept")

    def scan(self, role: Role) -> ScanEntry | None:
        """The scan that counts for a role."""
        return next((entry for entry in reversed(self.scans) if entry.role == role), None)

    def current_parts(self) -> PartsEntry | None:
        """The parts folder that counts."""
        return self.parts[-1] if self.parts else None

    def result(self) -> ResultEntry | None:
        """The newest result of the current scan and parts, None where there is none."""
        scan, parts = self.scan("bodies"), self.current_parts()
        if scan is None or parts is None:
            return None
        fits = (entry for entry in reversed(self.results) if (entry.scan, entry.parts) == (scan.sha256, parts.sha256))
        return next(fits, None)

    def teeth(self) -> dict[str, str]:
        """Tooth → site of the current result; empty where its sites are not named yet."""
        result = self.result()
        named = next((entry for entry in reversed(self.sites) if result and entry.result == result.id), None)
        return {entry.tooth: entry.site for entry in named.sites} if named else {}

    def join(self, role: Role) -> JoinEntry | None:
        """The newest join of that role's current scan with the current result; None where something has changed."""
        scan, bite, result = self.scan(role), self.scan("bite"), self.result()
        if scan is None or result is None:
            return None
        for entry in reversed(self.joins):
            same_bite = entry.bite is None or (bite is not None and bite.sha256 == entry.bite)
            if (entry.role, entry.scan, entry.result) == (role, scan.sha256, result.id) and same_bite:
                return entry
        return None

    def lies_as_it_is(self, role: Role) -> bool:
        """Whether a scan needs no join: the other jaw without a bite scan counts as aligned."""
        return role == "opposing" and self.scan("bite") is None

    def to_join(self) -> tuple[Role, ...]:
        """The scans still to be laid on that of the bodies; none while there is no result to join at."""
        if self.result() is None:
            return ()
        return tuple(r for r in JOINED if self.scan(r) and not self.join(r) and not self.lies_as_it_is(r))

    def output(self, kind: Output) -> OutputEntry | None:
        """The newest output of that kind for the current result; None where there is none, or it was taken back."""
        result = self.result()
        identity = result.id if result else None
        found = next((e for e in reversed(self.outputs) if (e.kind, e.result) == (kind, identity)), None)
        return None if found is None or found.withdrawn else found

    def files(self) -> Files:
        """Every file that the case refers to, by its path inside the folder, with its hash."""
        found: Files = {entry.file: entry.sha256 for entry in self.scans}
        holders: tuple[PartsEntry | ResultEntry | OutputEntry, ...] = (*self.parts, *self.results, *self.outputs)
        for holder in holders:
            found |= {f"{holder.folder}/{name}": sha256 for name, sha256 in holder.files.items()}
        return found
