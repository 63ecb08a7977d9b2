"""`profile`: repeat scans of one arch or reference → how the scanner drifts."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np

from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray
from stylobate.record import Record, read_result
from stylobate.several.drifting.estimate import estimate, repeats
from stylobate.several.drifting.model import Profile
from stylobate.several.match import matched

LEAST_SCANS = 3
LEAST_SITES = 3


def profile(
    scans: Sequence[Record | str | Path],
    scanner: str,
    *,
    unit: str = "",
    reference: Record | str | Path | None = None,
) -> Profile:
    """Drift of a scanner, from results of repeat scans of the same scan bodies, not touched in between.

    scanner: its name; unit: which one, where there are several. reference: the same bodies measured better (a result
    or its file), with its covariance; without it the profile is of precision only: an error that all scans share,
    a wrong scale above all, is not seen.

    Raises ResultError, UsageError.
    """
    records = [scan if isinstance(scan, Record) else read_result(scan) for scan in scans]
    known = reference if reference is None or isinstance(reference, Record) else read_result(reference)
    if not scanner.strip():
        raise UsageError("the scanner must have a name: a profile speaks of one scanner only")
    if len(records) < LEAST_SCANS:
        raise UsageError(f"a profile needs {LEAST_SCANS} repeat scans or more, not {len(records)}; scan again")
    _no_duplicates(records)
    base = known or records[0]
    ways = [dict(matched(base, record).pairs) for record in records]
    common = [k for k in range(len(base.sites)) if all(k in way for way in ways)]
    if len(common) < LEAST_SITES:
        raise UsageError(
            f"only {len(common)} sites stand in all {len(records)} scans; a profile needs {LEAST_SITES} or more"
        )
    poses = _poses(base, common)
    of = repeats(
        poses,
        [_poses(record, [way[k] for k in common]) for record, way in zip(records, ways, strict=True)],
        [_covariance(record, [way[k] for k in common]) for record, way in zip(records, ways, strict=True)],
        None if known is None else _covariance(known, common),
    )
    shift, turn, scale = estimate(of)
    return Profile(
        scanner=scanner.strip(),
        unit=unit.strip(),
        shift_um=shift,
        turn_deg=turn,
        scale_ppm=scale,
        scans=tuple(record.name for record in records),
        reference=None if known is None else known.name,
        sites=len(common),
        span_mm=float(np.linalg.norm(np.diff(poses[:, :3, 3], axis=0), axis=1).sum()),
    )


def _no_duplicates(records: Sequence[Record]) -> None:
    seen: dict[str, str] = {}
    for record in records:
        key = record.scan.sha256
        if key and key in seen:
            raise UsageError(f"{seen[key]} and {record.name} are of the same scan file; name each scan once")
        seen[key] = record.name


def _poses(record: Record, which: Sequence[int]) -> FloatArray:
    return np.array([record.sites[k].scan_from_connection for k in which])


def _covariance(record: Record, which: Sequence[int]) -> FloatArray:
    keep = np.concatenate([np.arange(6 * k, 6 * k + 6) for k in which])
    return np.asarray(record.covariance()[np.ix_(keep, keep)])
