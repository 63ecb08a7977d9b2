"""What a scene is made of: frozen settings, checked once."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray

KERNELS = ("exponential", "matern32", "matern52", "squared-exponential")
ARCHES = ("single", "quadrant", "full")
CAUSES = (
    "added layer", "bent body", "lost material", "added material", "rough surface", "missing surface",
    "split surface", "other part fits better", "no part fits", "index ambiguous", "unseated",
)  # fmt: skip
STYLES = {
    "added layer": ("even", "pooled"),
    "bent body": ("progressive", "hinge", "low hinge"),
    "lost material": ("chip", "worn edge"),
}
"""How a fault can look; the first is the default. Causes not named here have one look."""


@dataclass(frozen=True)
class Noise:
    """Scanner noise along the surface normal.

    white_um, correlated_um: standard deviations. length_mm and kernel: of the correlated part (method, eq. S3).
    tails: "normal" or "t3" (white part from Student's t with 3 degrees of freedom, scaled to the same sd).
    view_share: by how much the white sd grows from a surface seen square on to one seen edge on (0: nowhere).
    seam_um: sd of each of the three shifts of every overlapping view that the scan is fused from (0: one view).
    """

    white_um: float = 8.0
    correlated_um: float = 10.0
    length_mm: float = 0.8
    kernel: str = "matern32"
    tails: str = "normal"
    view_share: float = 0.0
    seam_um: float = 0.0


@dataclass(frozen=True)
class Drift:
    """Stitching error along the arch, growing from its low end: bodies stay rigid, their poses move.

    scale_ppm: change of length. walk_um, walk_deg: sd of shift (each axis) and turn (each axis) after 50 mm of arch.
    """

    scale_ppm: float = 0.0
    walk_um: float = 0.0
    walk_deg: float = 0.0


@dataclass(frozen=True)
class Fault:
    """One fault at one site (counted from 1 along the arch).

    size: µm for added layer, lost material (depth), added material (height), rough surface (sd), split surface (shift)
    and unseated (rise); degrees for bent body; share of the body's surface for missing surface; of no meaning for the
    last three. style: one of STYLES.
    """

    site: int
    cause: str
    size: float
    style: str = ""


@dataclass(frozen=True)
class Placed:
    """A body asked for by name; slot along the arch and pose (4×4, mouth frame) are drawn where None."""

    scan_body: str
    mouth_from_connection: FloatArray | None = None


@dataclass(frozen=True)
class Settings:
    """A scene. Ranges are drawn from uniformly, for each body anew.

    bodies: how many, or which. gum: share of the body's height below the gum. unseen: share of the body's free surface
    that the scan does not show. edge_mm: median mesh edge; adaptive: up to 3 times that where the surface is flat.
    rounding_mm: radius at sharp edges. made_um: sd of the made body's diameter and of its height. decimate: share of
    the vertices left by merging after noise. spin: scan frame at random (else the mouth frame).
    """

    seed: int = 0
    arch: str = "quadrant"
    bodies: int | tuple[str | Placed, ...] = 2
    edge_mm: float = 0.15
    adaptive: bool = False
    gum: tuple[float, float] = (0.05, 0.33)
    fillet_mm: tuple[float, float] = (0.1, 0.5)
    unseen: tuple[float, float] = (0.0, 0.1)
    lean_deg: float = 20.0
    teeth: bool = True
    stumps: int = 0
    palate: bool = False
    noise: Noise = field(default_factory=Noise)
    rounding_mm: float = 0.0
    made_um: float = 0.0
    drift: Drift = field(default_factory=Drift)
    faults: tuple[Fault, ...] = ()
    decimate: float = 1.0
    spin: bool = True

    @property
    def count(self) -> int:
        """Number of bodies."""
        return self.bodies if isinstance(self.bodies, int) else len(self.bodies)

    def __post_init__(self) -> None:
        """Raises UsageError naming the first setting out of range."""
        checks = (
            (self.arch in ARCHES, f"arch '{self.arch}' is not one of {', '.join(ARCHES)}"),
            (0 <= self.count <= 8, f"{self.count} bodies: a scene holds 0 to 8"),
            (0.03 <= self.edge_mm <= 0.5, f"edge length {self.edge_mm:g} mm is outside 0.03 to 0.5"),
            (_range(self.gum, 0.0, 0.5), "gum: the share of the body below the gum lies within 0 to 0.5"),
            (_range(self.fillet_mm, 0.02, 1.0), "fillet: the radius at the gum line lies within 0.02 to 1 mm"),
            (_range(self.unseen, 0.0, 0.8), "unseen: the share of the body not shown lies within 0 to 0.8"),
            (0.0 <= self.lean_deg <= 40.0, f"lean {self.lean_deg:g}° is outside 0 to 40"),
            (0 <= self.stumps <= 8, f"{self.stumps} stumps: a scene holds 0 to 8"),
            (0.0 <= self.rounding_mm <= 0.2, f"edge rounding {self.rounding_mm:g} mm is outside 0 to 0.2"),
            (0.0 <= self.made_um <= 200.0, f"made-part error {self.made_um:g} µm is outside 0 to 200"),
            (0.1 <= self.decimate <= 1.0, f"decimate {self.decimate:g} is outside 0.1 to 1"),
            (self.noise.kernel in KERNELS, f"kernel '{self.noise.kernel}' is not one of {', '.join(KERNELS)}"),
            (self.noise.tails in ("normal", "t3"), f"tails '{self.noise.tails}' is neither normal nor t3"),
            (
                all(0.0 <= v <= 500.0 for v in (self.noise.white_um, self.noise.correlated_um, self.noise.seam_um)),
                "noise: each standard deviation lies within 0 to 500 µm",
            ),
            (0.02 <= self.noise.length_mm <= 50.0, f"noise length {self.noise.length_mm:g} mm is outside 0.02 to 50"),
            (0.0 <= self.noise.view_share <= 10.0, "view share lies within 0 to 10"),
        )
        for fine, message in checks:
            if not fine:
                raise UsageError(f"{message}; choose a value within that range.")
        for fault in self.faults:
            _check_fault(fault, self.count)


LIMITS = {"bent body": 15.0, "missing surface": 0.9}
"""Greatest size of a fault, in its own unit."""
GREATEST_UM = 1000.0


def _check_fault(fault: Fault, count: int) -> None:
    if fault.cause not in CAUSES:
        raise UsageError(f"fault '{fault.cause}' is unknown; choose one of: {', '.join(CAUSES)}.")
    if not 1 <= fault.site <= count:
        raise UsageError(f"fault at site {fault.site}: there are {count} bodies; choose a site from 1 to {count}.")
    limit = LIMITS.get(fault.cause, GREATEST_UM)
    if not 0.0 <= fault.size <= limit:
        raise UsageError(f"fault '{fault.cause}' of size {fault.size:g}: choose a size within 0 to {limit:g}.")
    styles = STYLES.get(fault.cause, ("",))
    if fault.style and fault.style not in styles:
        raise UsageError(f"fault '{fault.cause}' has no style '{fault.style}'; choose one of: {', '.join(styles)}.")


def _range(pair: tuple[float, float], low: float, high: float) -> bool:
    return all(math.isfinite(v) for v in pair) and low <= pair[0] <= pair[1] <= high
