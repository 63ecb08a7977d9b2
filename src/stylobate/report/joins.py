"""A join as JSON."""

from __future__ import annotations

from typing import Any

from stylobate.joining import Join


def join_values(join: Join) -> dict[str, Any]:
    """bodies_from_scan: the pose; what it rests on; and its 95 % bounds and covariance (of the shift) at each site."""
    return {
        "bodies_from_scan": join.first_from_second.tolist(),
        "shared_mm2": join.shared_mm2,
        "places": join.patches,
        "sites": [
            {
                "site": site.site,
                "platform_um": site.platform_um,
                "axis_deg": site.axis_deg,
                "covariance": site.covariance.tolist(),
            }
            for site in join.sites
        ],
    }
