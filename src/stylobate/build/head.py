"""What stands above the seat that carries a structure, its screw hole filled: the structure is hollowed for it."""

from __future__ import annotations

import numpy as np

from stylobate.build.model import PlacedSite
from stylobate.core.rigid import inverse
from stylobate.core.types import FloatArray
from stylobate.parts.model import MultiUnitAbutment

FLAT = 0.01
"""mm. What lies this near to the plane of a seat lies in it."""
RIM = 0.05
"""mm. What lies nearer to the edge of the platform than this is the edge, not the head's foot."""
DEEP = 0.5
"""mm below the seat to which the head's foot is drawn down: it passes through that plane."""


def head_of(site: PlacedSite) -> FloatArray | None:
    """Points (n, 3) whose hull is the head of the uppermost abutment, in that connection's frame; None without one."""
    abutments = [link.part for link in site.chain if isinstance(link.part, MultiUnitAbutment)]
    if not abutments:
        return None
    local = abutments[-1].surface.moved(inverse(abutments[-1].lower_from_upper)).vertices
    return standing(local, site.upper.connection.platform_diameter / 2.0 - RIM)


def standing(local: FloatArray, within: float) -> FloatArray | None:
    """What of a surface's vertices (n, 3) stands above z = 0, and its foot; None where nothing does.

    within: mm. The foot is what lies in z = 0 nearer to the axis than this; where nothing does, the rest's outline.
    """
    above = local[local[:, 2] > FLAT]
    if len(above) < 4:
        return None
    foot = local[(np.abs(local[:, 2]) <= FLAT) & (np.hypot(local[:, 0], local[:, 1]) < within)]
    foot = (foot if len(foot) > 2 else above) * [1.0, 1.0, 0.0]
    return np.concatenate([above, foot, foot - [0.0, 0.0, DEEP]])
