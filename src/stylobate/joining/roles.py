"""Which scan is joined to which: the tissue scan to that of the bodies, the opposing jaw by way of a bite scan."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from stylobate.core import rigid
from stylobate.core.errors import JoinError
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray
from stylobate.joining.model import Join, placed
from stylobate.joining.verb import LIMIT_UM, Jaw, Site, join
from stylobate.record.model import Record

OPPOSING_LIMIT_UM = 300.0
"""95 % bound above which the opposing jaw's place is refused: room is stated to 0.1 mm and judged to a few of these."""


def sites_of(record: Record) -> tuple[Site, ...]:
    """The sites of a result, at which joins state their uncertainty."""
    return tuple(Site(site.site, site.scan_from_connection, site.platform_diameter) for site in record.sites)


def moved_scan(scan: Scan, first_from_second: FloatArray) -> Scan:
    """A scan in the coordinates of that to which it is joined."""
    return replace(scan, surface=scan.whole().moved(first_from_second), origin=np.zeros(3))


def joins(
    bodies: Scan, sites: tuple[Site, ...], tissue: Scan | None = None, opposing: Scan | None = None,
    bite: Scan | None = None, limit_um: float = LIMIT_UM,
) -> Mapping[str, Join]:  # fmt: skip
    """The joins of what is given, by role, each to the scan with the bodies.

    Without a bite scan the opposing one counts as already aligned and gets none. Raises JoinError.
    """
    if not sites:
        raise JoinError(f"{bodies.file}: the result has no site at which a join could be judged; measure again")
    found: dict[str, Join] = {}
    if tissue is not None:
        found["tissue"] = join(bodies, tissue, sites, limit_um)
    if opposing is not None and bite is not None:
        found["opposing"] = _through(bodies, bite, opposing, sites)
    return found


def _through(bodies: Scan, bite: Scan, opposing: Scan, sites: tuple[Site, ...]) -> Join:
    near = join(bodies, bite, sites, OPPOSING_LIMIT_UM)
    bite_from_bodies = rigid.inverse(near.first_from_second)
    moved = tuple(replace(site, pose=bite_from_bodies @ site.pose) for site in sites)
    far = join(bite, opposing, moved, OPPOSING_LIMIT_UM, Jaw(sense=-1.0, of_second=True))
    covariance = near.covariance + far.covariance
    both = replace(
        far, first_from_second=near.first_from_second @ far.first_from_second,
        sites=placed([site.name for site in sites], covariance), covariance=covariance,
        shared_mm2=min(near.shared_mm2, far.shared_mm2), share=min(near.share, far.share),
        patches=min(near.patches, far.patches),
    )  # fmt: skip
    if both.worst_um > OPPOSING_LIMIT_UM:
        raise JoinError(
            f"{opposing.file} by way of {bite.file}: {both.worst_um:.0f} µm (95 %) are left open at a site, above the "
            f"limit of {OPPOSING_LIMIT_UM:.0f} µm; scan the bite over more teeth"
        )
    return both
