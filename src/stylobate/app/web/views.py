"""result.json → what the page is told of it."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, cast

from pydantic import BaseModel, ConfigDict

from stylobate.app.web.model import (
    AlternativeView,
    BoundsView,
    BudgetView,
    DeviationView,
    FindingView,
    NotShownView,
    PairView,
    ResultView,
    SiteView,
    TogetherView,
    Verdict,
)
from stylobate.core.errors import ResultError
from stylobate.record import read_result

if TYPE_CHECKING:
    from stylobate.core.result import Bounds
    from stylobate.record import RecordSite


class _Table(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True, allow_inf_nan=False)


class _Alternative(_Table):
    scan_body: str
    turn_deg: float | None = None
    odds: float | None = None


class _Site(_Table):
    alternatives: list[_Alternative] = []


class _Rest(_Table):
    """The keys that the shared reader leaves alone."""

    sites: list[_Site] = []


def read_view(path: Path, run: int) -> ResultView:
    """What the page shows of a result.json. Raises ResultError."""
    record = read_result(path)
    try:
        rest = _Rest.model_validate(json.loads(record.path.read_bytes()))
    except ValueError as error:
        line = " ".join(str(error).split())[:160]
        raise ResultError(f"{record.path}: {line}; write it again with 'stylobate measure'") from error
    sites = tuple(
        replace(
            _site(site),
            alternatives=tuple(
                AlternativeView(other.scan_body, other.turn_deg or 0.0, other.odds)
                for other in more.alternatives
                if other.odds is not None
            ),
        )
        for site, more in zip(record.sites, rest.sites, strict=True)
    )
    together = record.together
    return ResultView(
        run=run,
        work=record.work,
        scan_file=record.scan.file,
        triangles=record.scan.triangles,
        parts_name=record.parts.name,
        parts_revision=record.parts.revision,
        sites=sites,
        pairs=tuple(
            PairView((p.sites[0], p.sites[1]), *map(_known, (p.distance_mm, p.u95_um, p.angle_deg)))
            for p in record.pairs
        ),
        together=None if together is None else TogetherView(cast(Verdict, together.verdict), together.because),
        not_shown=tuple(NotShownView(item.what, item.check) for item in record.not_shown),
        warnings=record.warnings,
    )


def _site(site: RecordSite) -> SiteView:
    deviation = site.deviation
    return SiteView(
        site=site.site,
        scan_body=site.scan_body,
        connection=site.connection,
        platform_diameter=site.platform_diameter,
        index_order=site.index_order,
        scan_from_connection=tuple(float(value) for value in site.scan_from_connection.ravel()),
        u95=_bounds(site.u95, site.index_order),
        u95_total=_bounds(site.u95_total, site.index_order),
        deviation=None
        if deviation is None
        else DeviationView(deviation.points, *map(_known, (deviation.mean_um, deviation.rms_um, deviation.p95_um))),
        coverage=site.coverage,
        verdict=cast("Verdict | None", site.verdict),
        findings=tuple(
            FindingView(f.cause, f.advice, f.size_um, f.u95_um, f.size_deg, f.u95_deg) for f in site.findings
        ),
        budget=tuple(BudgetView(b.source, b.platform_um, b.axis_deg, b.index_deg, b.origin) for b in site.budget),
        alternatives=(),
        because=site.because,
        next=site.next,
    )


def _bounds(bounds: Bounds | None, index_order: int) -> BoundsView | None:
    if bounds is None:
        return None
    return BoundsView(bounds.platform_um, bounds.axis_deg, bounds.index_deg, bounds.any_turn(index_order))


def _known(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None
