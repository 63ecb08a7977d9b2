"""The one file that knows the order of joining."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np

from stylobate.core.errors import JoinError, UsageError
from stylobate.core.surface import Scan
from stylobate.joining import LIMIT_UM
from stylobate.record import Record, read_result
from stylobate.scan import read_scan
from stylobate.settings import DEFAULT, WORKS, Settings, read_settings
from stylobate.several.comparing.layout import Cell
from stylobate.several.joined.model import Joined
from stylobate.several.joined.mouth import Mouth, mouth_of
from stylobate.several.joined.weigh import Differs, Weighed, differing, weighed
from stylobate.several.joined.written import joined


def join(
    results: Sequence[str | Path | Record],
    scans: Sequence[str | Path | Scan],
    rescanned: Sequence[str] = (),
    work: str = "",
    settings: Settings | str | Path | None = None,
    limit_um: float = LIMIT_UM,
) -> Joined:
    """One result from scans of one mouth that each show some of the sites, over their teeth and the bodies in common.

    results: result.json files, folders that hold one, or records; the first gives the coordinates. scans: those that
    the results were measured in, in any order. rescanned: sites (names as in the first result) of which only the last
    scan that shows them counts. work: single, bridge or arch, the first result's where empty. settings: limits, and how
    the scanner drifts. limit_um: 95 % bound above which a site that comes over is refused.

    Raises ResultError, ScanError, SettingsError, UsageError and JoinError.
    """
    records = [one if isinstance(one, Record) else read_result(one) for one in results]
    chosen = settings if isinstance(settings, Settings) else DEFAULT if settings is None else read_settings(settings)
    kind = _work(work, records)
    _require_drift(records, chosen)
    mouth = mouth_of(records, [one if isinstance(one, Scan) else read_scan(one) for one in scans])
    outdated = _outdated(mouth, rescanned)
    differs = differing(mouth, outdated)
    _require_agreement(mouth, differs)
    known = weighed(mouth, outdated | {one.cell for one in differs})
    _require_near(mouth, known, limit_um)
    return joined(mouth, known, differs, kind, chosen, _warnings(mouth, differs))


def _work(work: str, records: Sequence[Record]) -> str:
    kind = work or (records[0].work if records else "") or "bridge"
    if kind not in WORKS:
        raise UsageError(f"work '{kind}' is unknown; choose one of: {', '.join(WORKS)}")
    return kind


def _require_drift(records: Sequence[Record], settings: Settings) -> None:
    """Drift over the sites of all scans follows from no single scan's budget. Raises UsageError."""
    for record in records:
        stated = [row for site in record.sites for row in site.budget if row.source == "drift" and row.platform_um]
        if stated and settings.drift is None:
            raise UsageError(
                f"{record.name}: counts how the scanner drifts; give the same --profile or --settings here, as the "
                "sites of all scans now stand along one arch"
            )


def _outdated(mouth: Mouth, rescanned: Sequence[str]) -> frozenset[Cell]:
    """Cells that a rescan replaces. Raises UsageError where a site was not scanned again."""
    cells: set[Cell] = set()
    for name in rescanned:
        named = [i for i, row in enumerate(mouth.sites) if row[0] is not None and row[0].site == name]
        if not named:
            have = ", ".join(site.site for site in mouth.records[0].sites)
            raise UsageError(f"--rescan {name}: {mouth.records[0].name} has no such site; it has {have}")
        shown = [k for k, site in enumerate(mouth.sites[named[0]]) if site is not None]
        if len(shown) < 2:
            raise UsageError(f"--rescan {name}: no other scan shows this site; add the scan that does")
        cells |= {(k, named[0]) for k in shown[:-1]}
    return frozenset(cells)


def _require_agreement(mouth: Mouth, differs: Sequence[Differs]) -> None:
    """Raises JoinError where most of the bodies in common contradict the teeth: one of both is laid wrongly."""
    odd, common = {one.cell[1] for one in differs}, mouth.common()
    if len(odd) > 1 and 2 * len(odd) > len(common):
        raise JoinError(
            f"{len(odd)} of {len(common)} bodies that stand in several scans lie otherwise than the teeth say; see "
            "that the scans are of one mouth and the bodies seated, or compare them by 'stylobate compare'"
        )


def _require_near(mouth: Mouth, known: Weighed, limit_um: float) -> None:
    """Raises JoinError where a site that the first scan lacks is known too badly there."""
    from stylobate.uncertainty.bounds import length_95

    for i, row in enumerate(mouth.sites):
        if known.used[0, i]:
            continue
        k = int(np.argmax(known.used[:, i]))
        site = row[k]
        assert site is not None
        bound = 1e3 * length_95(known.covariance[6 * i : 6 * i + 3, 6 * i : 6 * i + 3])
        if bound > limit_um:
            raise JoinError(
                f"site {site.site} of {mouth.records[k].name}: {bound:.0f} µm (95 %) are left open by joining, above "
                f"the limit of {limit_um:.0f} µm; scan more of the teeth in both, or a body in common"
            )


def _warnings(mouth: Mouth, differs: Sequence[Differs]) -> list[str]:
    """How each scan was joined, where scans differ, and what each measurement warned of."""
    said = []
    for k, record in enumerate(mouth.records[1:], start=1):
        one = mouth.laid[k - 1]
        common = sum(row[k] is not None and any(row[:k]) for row in mouth.sites)
        bodies = f"{common} scan bod{'y' if common == 1 else 'ies'}" if common else "no scan body"
        said.append(
            f"{record.name}: joined over {one.shared_mm2:.0f} mm² of teeth in {one.cells.places} places, with "
            f"{bodies} in common"
        )
    for odd in differs:
        site = mouth.sites[odd.cell[1]][odd.cell[0]]
        assert site is not None
        off_um = 1e3 * float(np.linalg.norm(odd.shift))
        said.append(
            f"site {site.site} of {mouth.records[odd.cell[0]].name} stands {off_um:.0f} µm otherwise than elsewhere "
            f"(p = {odd.p:.1g}); it does not count"
        )
    return said + [f"{record.name}: {warning}" for record in mouth.records for warning in record.warnings]
