"""Is an interface in a finished surface where it should be? It is fitted again, as if it were not known."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import FitError
from stylobate.core.rigid import exp, inverse
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray

NEAR_MM = 0.05
"""Points of the finished surface this near to an interface belong to it."""
ROBUST, LEAST_MM = 4.4, 5e-4
"""Points farther from the interface than this many median distances, and this many mm, do not count."""
FEWEST = 40
ALLOWED_UM = 2.0
"""What an interface may be off."""


@dataclass(frozen=True)
class Interface:
    """A seat in a structure. scan_from_connection: (4, 4); surface: its exact shape in that connection's frame.

    low, high: between which heights, mm, it is left as it is by the rest of the structure.
    """

    site: str
    scan_from_connection: FloatArray
    surface: Surface
    low: float
    high: float


@dataclass(frozen=True)
class Structure:
    """A finished solid. kind: bar, blank or model. interfaces: where parts seat in it.

    wall_mm: the least wall around what is hollow in it, where that was looked at.
    """

    kind: str
    surface: Surface
    interfaces: tuple[Interface, ...]
    warnings: tuple[str, ...] = ()
    wall_mm: float | None = None

    @property
    def volume(self) -> float:
        """What the surface encloses, mm³ (divergence theorem, from its middle)."""
        corners = (self.surface.vertices - self.surface.vertices.mean(axis=0))[self.surface.faces]
        return float(np.einsum("ij,ij->", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0)


@dataclass(frozen=True)
class Refit:
    """How far a fitted interface lies from where it should. scan_from_connection: (4, 4), as fitted."""

    site: str
    shift_um: float
    tilt_deg: float
    points: int
    scan_from_connection: FloatArray


def refit(finished: Surface, interface: Interface) -> Refit:
    """Fit an interface to the finished surface by least squares of exact distances; a turn that nothing shows stays 0.

    Raises FitError where too little of it is there, or where it is off by more than ALLOWED_UM at the platform.
    """
    tree = SurfaceTree.of(interface.surface)
    pose = interface.scan_from_connection
    local = _samples(finished.moved(inverse(pose)), interface)
    for _ in range(3):
        near = tree.closest(local, NEAR_MM)
        on = np.isfinite(near.distance) & ~near.on_boundary
        if np.count_nonzero(on) < FEWEST:
            raise FitError(f"site {interface.site}: its interface is not in the finished surface; look at the sizes")
        # What else comes near, such as a beam beside a pillar, is no part of the interface.
        away = np.abs(near.distance)
        on &= away <= max(ROBUST * float(np.median(away[on])), LEAST_MM)
        points, gradient = local[on], near.gradient[on]
        rows = np.column_stack([gradient, np.cross(points, gradient)])
        step = np.asarray(np.linalg.lstsq(rows, near.distance[on], rcond=1e-6)[0], np.float64)
        pose = pose @ exp(step)
        local = local @ exp(-step)[:3, :3].T + exp(-step)[:3, 3]
    motion = inverse(interface.scan_from_connection) @ pose
    shift_um = 1e3 * float(np.linalg.norm(motion[:3, 3]))
    tilt = float(np.degrees(np.arctan2(np.hypot(motion[0, 2], motion[1, 2]), motion[2, 2])))
    if shift_um > ALLOWED_UM:
        raise FitError(f"site {interface.site}: its interface is {shift_um:.1f} µm off in the finished surface")
    return Refit(interface.site, shift_um, tilt, int(np.count_nonzero(on)), pose)


def _samples(local: Surface, interface: Interface) -> FloatArray:
    """Vertices and middles of the faces that lie between the interface's heights."""
    corners = local.vertices[local.faces]
    reach = float(np.linalg.norm(interface.surface.vertices[:, :2], axis=1).max()) + 1.0
    inside = (corners[:, :, 2] > interface.low - NEAR_MM) & (corners[:, :, 2] < interface.high)
    near = (inside & (np.linalg.norm(corners[:, :, :2], axis=2) < reach)).all(axis=1)
    return np.concatenate([corners[near].reshape(-1, 3), corners[near].mean(axis=1)])
