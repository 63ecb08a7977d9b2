"""A package at the other end: whole, genuine, unpacked, and measured again."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from stylobate import __version__
from stylobate.case import Case
from stylobate.case.checks import current_record
from stylobate.core import durable
from stylobate.core.errors import CaseError, OutputError, PackageError, UsageError
from stylobate.core.result import Bounds
from stylobate.core.rigid import inverse, log, turn_z
from stylobate.core.types import FloatArray
from stylobate.handoff.archive import Package
from stylobate.handoff.sign import fingerprint, signed_by
from stylobate.record import Record, RecordSite

if TYPE_CHECKING:
    from collections.abc import Callable

    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    from stylobate.core.result import Result

SAME_UM, SAME_DEG = 1.0, 0.01
"""Measured again, a pose within these is the same: a tenth of what a good scan fixes (common practice, no source)."""
MIDDLE = 4.0
"""mm above the platform: about the middle of a scan body."""
REACH = 2.0
"""mm within which a site measured again is looked for."""


@dataclass(frozen=True)
class Again:
    """One site measured again: how far it lies from what the package says; None where it was not found.

    scan_body: which one was found there. within: not the same, but within the 95 % bounds of the scan that the package
    states. joined: the package's pose rests on other scans as well, so that more than this can't be asked. told: found
    only where the package says that it stands, with the scan body that it names, as a person can tell a measurement.
    """

    site: str
    shift_um: float | None
    turn_deg: float | None
    scan_body: str
    same: bool
    within: bool
    joined: bool = False
    told: bool = False


@dataclass(frozen=True)
class Received:
    """signer: fingerprint of the key that signed, None where nothing did. again: empty where not measured. elsewhere:
    sites that only another scan than the package's shows, which are not measured again.

    software: that the package was measured and written with.
    """

    code: str
    files: int
    log_head: str
    log_lines: int
    signer: str | None
    again: tuple[Again, ...]
    elsewhere: tuple[str, ...]
    software: str

    @property
    def other_version(self) -> bool:
        """Whether another version of the program than this one wrote the package."""
        return self.software != f"stylobate {__version__}"

    @property
    def same(self) -> bool:
        """Every site measured again is where the package says: by the same version and in one scan to SAME_UM and
        SAME_DEG, else within the bounds that the package states."""
        return all(site.same or (site.within and (self.other_version or site.joined)) for site in self.again)


def receive(
    package: str | Path,
    sender: Ed25519PublicKey | None = None,
    out: str | Path | None = None,
    measure: bool = True,
    progress: Callable[[str, float], None] | None = None,
) -> Received:
    """Verify every byte of a package, unpack it into `out` if given, and measure its scan again.

    Raises PackageError where the package is not whole, or not signed by `sender`; OutputError.
    """
    held = Package(Path(package))
    signer = None if held.signature is None else signed_by(held.signature, held.manifest_bytes, str(package))
    if sender is not None and (signer is None or signer.public_bytes_raw() != sender.public_bytes_raw()):
        what = "is not signed" if signer is None else "is signed by another key"
        raise PackageError(f"{package}: {what}; do not use it, ask the sender")
    with _unpacked(held, None if out is None else Path(out)) as root:
        case = _case(held, root / "case")
        again, elsewhere = _again(case, progress) if measure else ((), ())
    manifest = held.manifest
    return Received(
        code=manifest.code,
        files=len(manifest.files),
        log_head=manifest.log_head,
        log_lines=manifest.log_lines,
        signer=None if signer is None else fingerprint(signer),
        again=again,
        elsewhere=elsewhere,
        software=manifest.software,
    )


@contextlib.contextmanager
def _unpacked(held: Package, out: Path | None) -> Iterator[Path]:
    """The files in a folder of their own, which becomes `out` when all went well. Raises OutputError."""
    if out is not None and out.exists() and (not out.is_dir() or any(out.iterdir())):
        raise OutputError(f"--out {out}: there is something already; nothing was changed; name a new folder")
    try:
        beside = None
        if out is not None:
            out.parent.mkdir(parents=True, exist_ok=True)
            beside = out.parent
        root = durable.hidden_folder(beside)
        try:
            held.unpack(root)
            yield root
            if out is not None:
                if out.exists():
                    out.rmdir()
                root.rename(out)
                out.chmod(0o755)
        finally:
            durable.drop(root)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        place = f"--out {out}" if out is not None else "the folder for temporary files"
        raise OutputError(f"{place}: cannot write there: {reason}; nothing was changed; free some space") from error


def _case(held: Package, root: Path) -> Case:
    """The case inside, whole in itself and with the log that the manifest names. Raises PackageError."""
    try:
        case = Case.open(root)
        faults = case.faults()
    except CaseError as error:
        raise PackageError(f"{held.path}: the case in it is not whole ({_without(error, root)})") from error
    if faults:
        raise PackageError(f"{held.path}: the case in it is not whole ({faults[0].replace(str(root), 'case')})")
    if (case.log.head, len(case.log.lines)) != (held.manifest.log_head, held.manifest.log_lines):
        raise PackageError(f"{held.path}: the log in it is not the one that the manifest names; do not use it")
    return case


def _without(error: Exception, root: Path) -> str:
    return str(error).replace(str(root), "case")


def _again(case: Case, progress: Callable[[str, float], None] | None) -> tuple[tuple[Again, ...], tuple[str, ...]]:
    """Every site of the case's result that the case's scan shows, measured again in it with the case's parts; and the
    names of the others."""
    from stylobate.measuring import measure

    record, scan, parts, kept = (
        current_record(case), case.table.scan("bodies"), case.table.current_parts(), case.table.result()
    )  # fmt: skip
    if record is None or scan is None or parts is None or kept is None:
        return (), ()
    away = tuple(s.site for s in record.sites if s.seen_in and record.scan.sha256 not in s.seen_in)
    record = replace(record, sites=tuple(site for site in record.sites if site.site not in away))
    result = measure(
        case.path / scan.file, case.path / parts.folder, scan_bodies=kept.scan_bodies,
        count=kept.count or len(record.sites) or None, work=record.work or "bridge", maps=False, progress=progress,
    )  # fmt: skip
    found = compared(record, result)
    if all(one.same for one in found):
        return found, away
    try:
        result = measure(
            case.path / scan.file, case.path / parts.folder, near=[_middle(site) for site in record.sites],
            near_bodies=[site.scan_body for site in record.sites], work=record.work or "bridge", maps=False,
            progress=progress,
        )  # fmt: skip
    except UsageError:
        return found, away
    told = tuple(replace(one, told=True) for one in compared(record, result))
    return tuple(two if _closer(two, one) else one for one, two in zip(found, told, strict=True)), away


def _middle(site: RecordSite) -> tuple[float, float, float]:
    """About the middle of the scan body, scan coordinates: a rough point, as for `measure --near`."""
    x, y, z = (float(value) for value in site.scan_from_connection[:3, 3] + MIDDLE * site.scan_from_connection[:3, 2])
    return x, y, z


def _closer(told: Again, found: Again) -> bool:
    return (told.same and not found.same) or (told.within and not found.within)


def compared(record: Record, result: Result) -> tuple[Again, ...]:
    """How each site of `record` was found again in `result`."""
    found = []
    for site in record.sites:
        nearest, gap = None, REACH
        for other in result.sites:
            distance = float(np.linalg.norm(other.scan_from_connection[:3, 3] - site.scan_from_connection[:3, 3]))
            if distance < gap:
                nearest, gap = other, distance
        if nearest is None:
            found.append(Again(site.site, None, None, "", same=False, within=False))
            continue
        shift, turn = _apart(site.scan_from_connection, nearest.scan_from_connection, site.index_order)
        alike = nearest.scan_body == site.scan_body
        same = alike and shift <= SAME_UM and turn <= SAME_DEG
        within = alike and site.u95 is not None and shift <= site.u95.platform_um and turn <= _turn_bound_deg(site.u95)
        found.append(Again(site.site, shift, turn, nearest.scan_body, same, within, len(site.seen_in) > 1))
    return tuple(found)


def _turn_bound_deg(bounds: Bounds) -> float:
    return bounds.axis_deg if bounds.index_deg is None else max(bounds.axis_deg, bounds.index_deg)


def _apart(one: FloatArray, two: FloatArray, index_order: int) -> tuple[float, float]:
    """Distance of the origins in µm, and the turn between in degrees, equal index marks and a free turn left out."""
    shift = 1000.0 * float(np.linalg.norm(one[:3, 3] - two[:3, 3]))
    motion = inverse(one) @ two
    if index_order == 0:
        cosine = float(np.clip(one[:3, 2] @ two[:3, 2], -1.0, 1.0))
        sine = float(np.linalg.norm(np.cross(one[:3, 2], two[:3, 2])))
        return shift, float(np.degrees(np.arctan2(sine, cosine)))
    turns = []
    for k in range(index_order):
        back = turn_z(-2.0 * np.pi * k / index_order)
        turns.append(float(np.linalg.norm(log(motion @ back)[3:])))
    return shift, float(np.degrees(min(turns)))
