"""What surrounds a site: tissue over the rim of its platform, and room along the channel to the opposing teeth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from stylobate.build.model import Tissue
from stylobate.build.rays import crossings, tops
from stylobate.core.errors import UsageError
from stylobate.core.rigid import inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

DIRECTIONS = 8
DEEPEST, HIGHEST = -5.0, 15.0
"""mm from the platform along the axis between which the tissue's surface is looked for (invented: wide enough)."""
LOW, HIGH = -4.0, 8.0
"""mm from the platform, between which gingiva around an implant or an abutment lies (common practice, no source)."""
OUT, STEP = 3.0, 0.1
"""mm. A socket's wall is followed outward from the rim so far, in such steps (invented)."""
HOLE = 1.0
"""mm. A hole in the scan over the rim is bridged outward up to this far (invented)."""
STEEP = 1.0
"""Rise over run from which on a surface is a socket's wall, not the top of the tissue: 45° (invented)."""
NEAR = 10.0
"""mm. A surface that comes no nearer than this to a platform does not lie in the scan's frame."""


def tissue_around(tissue: Surface, scan_from_connection: FloatArray, platform_diameter: float) -> Tissue:
    """Height of the tissue along the axis over the rim of a platform, in eight directions 45° apart from +x.

    Over the rim the lowest surface that faces up is taken. Where an open socket's wall stands there, it is followed
    outward to where it stops being steeper than 45°: the height of the margin (method/place, eq. 8). Where the scan has
    a hole there, the next surface outward within HOLE is taken.
    """
    local = tissue.moved(inverse(scan_from_connection)).vertices
    angle = np.arange(DIRECTIONS) * 2.0 * np.pi / DIRECTIONS
    radius = platform_diameter / 2.0 + np.arange(0.0, OUT + STEP / 2, STEP)
    places = np.stack([np.outer(np.cos(angle), radius), np.outer(np.sin(angle), radius)], axis=-1)
    heights = tops(local, tissue.faces, places.reshape(-1, 2), DEEPEST, HIGHEST).reshape(DIRECTIONS, -1)
    return Tissue(tuple(_margin(profile) for profile in heights))


def astray(tissues: Mapping[str, Tissue]) -> tuple[str, ...]:
    """Questions where the tissue lies at most sites (by name) as gingiva around a platform does not.

    Raises UsageError where it shows nothing around any.
    """
    nothing = [name for name, tissue in tissues.items() if tissue.least is None]
    if tissues and len(nothing) == len(tissues):
        raise UsageError(
            "--tissue: shows nothing around any platform, so it is not in the frame of the scan, or shows another "
            "place; give the measured scan with --join, or leave it out."
        )
    odd = [
        name
        for name, tissue in tissues.items()
        if tissue.least is None or tissue.greatest is None or tissue.least < LOW or tissue.greatest > HIGH
    ]
    if 2 * len(odd) <= len(tissues):
        return ()
    return (
        f"the tissue lies far below or above the platform, or nowhere, at site {', '.join(odd)}: is it in the "
        "coordinates of the scan? If not, give the measured scan with --join",
    )


def unmet(rooms: Sequence[float | None]) -> tuple[str, ...]:
    """A question where no channel meets the opposing surface."""
    if not rooms or any(room is not None for room in rooms):
        return ()
    return (
        "no channel meets the opposing surface: is it in the coordinates of the scan? If not, give the measured scan "
        "with --join, and the bite with --bite",
    )


def _margin(profile: FloatArray) -> float | None:
    """Height at the rim, or at the top of the wall that stands there."""
    seen = np.flatnonzero(np.isfinite(profile[: round(HOLE / STEP) + 1]))
    if not len(seen):
        return None
    k = int(seen[0])
    while k + 1 < len(profile) and profile[k + 1] - profile[k] > STEEP * STEP:
        k += 1
    return float(profile[k])


def room_along(opposing: Surface, origin: FloatArray, direction: FloatArray) -> float | None:
    """mm from `origin` along `direction` to the first opposing surface; None where the channel meets none."""
    found = crossings(opposing, origin, direction)
    return float(found[0]) if len(found) else None


def require_near(surface: Surface, points: FloatArray, what: str, near: float = NEAR) -> None:
    """Refuse a surface that lies elsewhere than the platforms at `points` (n, 3). Raises UsageError.

    Only the box of the surface is looked at, so a coarse surface does as well as a fine one.
    """
    low, high = surface.vertices.min(axis=0), surface.vertices.max(axis=0)
    away = np.linalg.norm(np.maximum(np.maximum(low - points, points - high), 0.0), axis=1)
    nearest = float(away.min())
    if nearest > near:
        raise UsageError(
            f"{what}: lies {nearest:.0f} mm from the nearest site, so it is not in the frame of the scan; "
            "bring it into the scan's coordinates first."
        )
