"""What a join says: where one scan lies in another, how well that is known at each site, and on what it rests."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stylobate.bounds import length_95
from stylobate.core.types import FloatArray


@dataclass(frozen=True)
class Placed:
    """One site: 95 % bound of the join there, and the covariance (3, 3), mm², of its shift, connection frame.

    No bound of the axis is stated: it held in 85 of 100 simulated joins only (docs/method/join.md).
    """

    site: str
    platform_um: float
    covariance: FloatArray


def placed(names: Sequence[str], covariance: FloatArray) -> tuple[Placed, ...]:
    """Each site by itself, from the covariance (6n, 6n) of the ξ of all together."""
    blocks = [covariance[6 * k : 6 * k + 3, 6 * k : 6 * k + 3] for k in range(len(names))]
    return tuple(Placed(name, 1e3 * length_95(block), block) for name, block in zip(names, blocks, strict=True))


def join_words(shared_mm2: float, places: int, bounds_um: Iterable[tuple[str, float]]) -> str:
    """A join in one sentence; bounds_um: of each site by name, 95 %."""
    bounds = ", ".join(f"{bound:.0f} µm at site {site}" for site, bound in bounds_um)
    return f"joined over {shared_mm2:.0f} mm² of teeth in {places} places; within {bounds} (95 %)"


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
        return join_words(self.shared_mm2, self.patches, [(site.site, site.platform_um) for site in self.sites])

    @property
    def worst_um(self) -> float:
        """Largest 95 % bound at any site."""
        return max(site.platform_um for site in self.sites)
