"""What a join says: where one scan lies in another, how well that is known at each site, and on what it rests."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stylobate.core.types import FloatArray
from stylobate.uncertainty.bounds import length_95


@dataclass(frozen=True)
class Placed:
    """One site: 95 % bounds of the join there, and the covariance (3, 3), mm², of its shift, connection frame."""

    site: str
    platform_um: float
    axis_deg: float
    covariance: FloatArray


def placed(names: Sequence[str], covariance: FloatArray) -> tuple[Placed, ...]:
    """Each site by itself, from the covariance (6n, 6n) of the ξ of all together."""
    result = []
    for k, name in enumerate(names):
        shift, tilt = (covariance[6 * k + a : 6 * k + b, 6 * k + a : 6 * k + b] for a, b in ((0, 3), (3, 5)))
        result.append(Placed(name, 1e3 * length_95(shift), math.degrees(length_95(tilt)), shift))
    return tuple(result)


def join_words(shared_mm2: float, places: int, bounds: Iterable[tuple[str, float, float | None]]) -> str:
    """A join in one sentence; bounds: of each site its name, µm and, where known, degrees, 95 %."""
    words = ", ".join(
        f"{shift:.0f} µm{'' if axis is None else f' and {axis:.2f}°'} at site {site}" for site, shift, axis in bounds
    )
    return f"joined over {shared_mm2:.0f} mm² of teeth in {places} places; within {words} (95 %)"


@dataclass(frozen=True)
class Join:
    """first_from_second: (4, 4). shared_mm2: area that agrees; share: of what of the second scan lies by the first.

    patches: how many pieces of surface that area has; sd_um: standard deviation by which they differ from a rigid
    motion, robust. sites: in the first scan's order. covariance (6n, 6n): of the ξ of all n sites together.
    """

    first_from_second: FloatArray
    shared_mm2: float
    share: float
    patches: int
    sd_um: float
    sites: tuple[Placed, ...]
    covariance: FloatArray

    def words(self) -> str:
        """What a reader wants to know of it."""
        return join_words(self.shared_mm2, self.patches, [(s.site, s.platform_um, s.axis_deg) for s in self.sites])

    @property
    def worst_um(self) -> float:
        """Largest 95 % bound at any site."""
        return max(site.platform_um for site in self.sites)
