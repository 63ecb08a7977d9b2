"""What follows from a result, made by the library's verbs and put into words and figures for the page. No science."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from stylobate.app.web.model_after import (
    ComparedView,
    FrameSiteView,
    FrameView,
    LinkView,
    MovedView,
    OptionView,
    PlacedView,
    PlacementView,
    RepeatView,
    StepView,
)
from stylobate.app.web.words import key_of, one_line
from stylobate.build.footing import REFUSED
from stylobate.build.placing import place
from stylobate.core.errors import ScanError, StylobateError, UsageError
from stylobate.joining import moved_scan
from stylobate.record import Record, read_result
from stylobate.scan import read_scan

if TYPE_CHECKING:
    from stylobate.build.model import Option, PlacedSite, Placement
    from stylobate.core.surface import Scan
    from stylobate.parts.model import PartsFolder

UM = 1e3
MOST_OPTIONS = 24
"""Options of a site that the page is told of, best first."""


@dataclass(frozen=True)
class Beside:
    """A scan of the tissue or of the other jaw. scan_from_file: where it was joined, None: it lies as it is."""

    file: str
    scan_from_file: Sequence[Sequence[float]] | None = None

    def scan(self) -> Scan:
        """In the coordinates of the measured scan. Raises ScanError."""
        found = read_scan(self.file)
        return found if self.scan_from_file is None else moved_scan(found, np.array(self.scan_from_file))


def placed(
    result: Path,
    parts: PartsFolder,
    chains: Sequence[str],
    tissue: Beside | None = None,
    opposing: Beside | None = None,
) -> tuple[Placement, str]:
    """Parts on the sites that may be built on, and which scan was left out.

    chains: the chosen ones, as `place` takes them; a site without one has its best. Raises StylobateError.
    """
    record = _buildable(read_result(result))
    known = {site.site for site in record.sites}
    take = [word for word in chains if word.partition("=")[0] in known]
    try:
        gum, other = (None if beside is None else beside.scan() for beside in (tissue, opposing))
        return place(record, parts, take=take, tissue=gum, opposing=other), ""
    except (ScanError, UsageError) as error:
        if tissue is None and opposing is None:
            raise
        return place(record, parts, take=take), f"without the tissue and the other jaw: {one_line(error)}"


def _buildable(record: Record) -> Record:
    """The result without the sites that nothing is built on. Raises UsageError where none is left."""
    sites = tuple(site for site in record.sites if site.verdict != REFUSED)
    if not sites:
        raise UsageError(f"no site may be built on: the verdict of each is `{REFUSED}`; mend the cause and scan again")
    return replace(record, sites=sites)


def surface_key(parts: str, part: str) -> str:
    """Key of a placed part's CAD surface."""
    return key_of("part", parts, part)


def placement_view(placement: Placement, refused: str, parts: str) -> PlacementView:
    """What the page shows of a placement."""
    used = sorted({link.part.id for site in placement.sites for link in site.chain})
    return PlacementView(
        sites=tuple(map(_placed, placement.sites)),
        surfaces={part: surface_key(parts, part) for part in used},
        path=placement.insertion.because if len(placement.sites) > 1 else "",
        one_path=placement.insertion.one_path,
        warnings=placement.warnings,
        refused=refused,
    )


def _placed(site: PlacedSite) -> PlacedView:
    x, y, z = (float(value) for value in site.channel.origin)
    dx, dy, dz = (float(value) for value in site.channel.direction)
    return PlacedView(
        site=site.site,
        chain=tuple(LinkView(k.part.id, k.turn, tuple(map(float, k.scan_from_part.ravel()))) for k in site.chain),
        chosen=site.chosen,
        origin=(x, y, z),
        direction=(dx, dy, dz),
        angle_to_aim_deg=site.channel.angle_to_aim_deg,
        options=tuple(map(_option, site.options[:MOST_OPTIONS])),
        tissue_least_mm=site.tissue.least if site.tissue else None,
        tissue_greatest_mm=site.tissue.greatest if site.tissue else None,
        room_mm=site.room_mm,
        notes=tuple(note for note in site.notes if not note.startswith("finding: ")),
    )


def _option(option: Option) -> OptionView:
    chain = tuple(StepView(part, turn) for part, turn in option.chain)
    return OptionView(chain, option.angle_to_aim_deg, option.notes)


def frame_view(result: Path) -> FrameView:
    """What `stylobate seat` foretells of a frame made to a result, with its own defaults."""
    from stylobate.several.seating.verb import LIMIT_UM, seat

    try:
        found = seat(result)
    except StylobateError as error:
        return FrameView(LIMIT_UM, LIMIT_UM, (), None, None, None, (), (), (), one_line(error))
    within = found.all_within
    return FrameView(
        limit_um=found.limit_um,
        side_limit_um=found.side_limit_um,
        sites=tuple(FrameSiteView(s.site, s.gap_p95_um, s.side_p95_um, s.share_worst) for s in found.sites),
        worst_gap_p95_um=found.worst.gap_p95_um,
        worst_side_p95_um=found.worst.side_p95_um,
        probability_within_limits=within.value if within else None,
        repeat=tuple(
            RepeatView(r.site, r.probability_within_limits, r.worst_gap_p95_um, r.worst_side_p95_um)
            for r in found.repeat
        ),
        counted=found.counted,
        notes=found.notes,
        refused="",
    )


def compared_view(before: Path, now: Path) -> ComparedView:
    """What `stylobate compare` says of a scan and the one before it."""
    from stylobate.several.comparing.verb import compare

    name = ""
    try:
        records = [read_result(before), read_result(now)]
        name = records[0].scan.file
        found = compare(records)
    except StylobateError as error:
        return ComparedView(name, 0, 0, (), None, None, one_line(error))
    labels = found.union.labels()
    moved = []
    for one in found.moved:
        scan, implant = one.cell
        shown = found.union.sites[implant][scan]
        x, y, z = (UM * float(value) for value in one.shift)
        moved.append(
            MovedView(shown.site if shown else labels[implant], math.hypot(x, y), z, UM * one.u95, one.turn_deg, one.p)
        )
    common = found.union.common()
    heights = [UM * found.findable[k] for k in common if not math.isnan(found.findable[k])]
    both = [
        UM * abs(there - here) for pair in found.pairs for here, there in [pair.distances]
        if here is not None and there is not None
    ]  # fmt: skip
    return ComparedView(
        before=name, common=len(common), tried=found.tried, moved=tuple(moved), findable_um=max(heights, default=None),
        farthest_um=max(both, default=None), refused="",
    )  # fmt: skip
