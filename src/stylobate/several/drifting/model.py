"""How a scanner drifts, as frozen values."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.settings import DRIFT_MM, Drift
from stylobate.several.sources import DRIFT, Source, walk_covariance


@dataclass(frozen=True)
class Estimate:
    """A figure, its standard uncertainty, and the interval that holds the truth with 95 % probability."""

    value: float
    u: float
    low: float
    high: float


@dataclass(frozen=True)
class Profile:
    """A scale error and a random walk along the arch (method/profile, eq. 1).

    shift_um: standard deviation of the walk along each direction, after 50 mm; turn_deg: about each direction.
    value is the root of the mean square, so that it counts how well it is known. scale_ppm: None where no reference
    was measured (precision only). scans, sites, span_mm: what it was made from; span_mm along the arch.
    """

    scanner: str
    unit: str
    shift_um: Estimate
    turn_deg: Estimate
    scale_ppm: Estimate | None
    scans: tuple[str, ...]
    reference: str | None
    sites: int
    span_mm: float

    @property
    def shift_per_mm(self) -> float:
        """Variance of the shift along each direction, mm² a mm of way."""
        return (self.shift_um.value * 1e-3) ** 2 / DRIFT_MM

    @property
    def turn_per_mm(self) -> float:
        """Variance of the turn about each direction, rad² a mm of way."""
        return math.radians(self.turn_deg.value) ** 2 / DRIFT_MM

    @property
    def scale(self) -> float:
        """Root mean square of the scale error, a known mean and its uncertainty together; 0 where it is not known."""
        return 0.0 if self.scale_ppm is None else math.hypot(self.scale_ppm.value, self.scale_ppm.u) * 1e-6

    def source(self, poses: FloatArray) -> Source:
        """Covariance (6n, 6n) of ξ of sites at `poses` (n, 4, 4), in the order of the scan (method/seat, eq. 11)."""
        stretch = stretch_of(poses)
        walk = walk_covariance(poses, self.shift_per_mm, self.turn_per_mm)
        return Source(DRIFT, walk + self.scale**2 * np.outer(stretch, stretch))


def drift_of(profile: Profile) -> Drift:
    """The profile as a figure for the budget of a measurement."""
    name = f"{profile.scanner} {profile.unit}".strip()
    return Drift(
        distance_um=profile.shift_um.value,
        angle_deg=profile.turn_deg.value,
        source=f"profile of {name}, {len(profile.scans)} scans",
        scale_ppm=profile.scale * 1e6,
    )


def stretch_of(poses: FloatArray) -> FloatArray:
    """(6n,): ξ of sites (n, 4, 4) when the scan is larger by the factor 1 + 1 about the first site; mm."""
    off = poses[:, :3, 3] - poses[0, :3, 3]
    moved = np.zeros((len(poses), 6))
    moved[:, :3] = np.einsum("nji,nj->ni", poses[:, :3, :3], off)
    return moved.ravel()
