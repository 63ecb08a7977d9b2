"""What a measurement says: frozen values, the same in the library and in result.json."""

from __future__ import annotations

from dataclasses import dataclass, field

from stylobate.core.types import FloatArray, IntArray


@dataclass(frozen=True)
class Bounds:
    """95 % bounds of one pose. index_deg is None where the connection is not indexed."""

    platform_um: float
    axis_deg: float
    index_deg: float | None

    def any_turn(self, index_order: int) -> bool:
        """Whether the turn may be any: bounded no closer than half way to the next of so many equal index marks."""
        return bool(index_order) and self.index_deg is not None and self.index_deg >= 180.0 / index_order


@dataclass(frozen=True)
class Deviation:
    """Signed distance from the CAD surface to the scan at the fitted pose, over the scan region, µm."""

    points: int
    mean_um: float
    rms_um: float
    p95_um: float


@dataclass(frozen=True)
class Finding:
    """Something that stands against a pose, or against the choice of part: what, how large, how sure, what to do.

    size_um or size_deg with its 95 % bound u95_um or u95_deg. p: probability of so strong a sign on a faultless site,
    all tests of the site counted; None where nothing is tested. where: (3,) scan coordinates, mm. area_mm2: of a patch.
    side: unit vector, scan coordinates, towards the side of which the advice speaks.
    """

    cause: str
    advice: str
    size_um: float | None = None
    u95_um: float | None = None
    size_deg: float | None = None
    u95_deg: float | None = None
    p: float | None = None
    where: tuple[float, float, float] | None = None
    area_mm2: float | None = None
    side: tuple[float, float, float] | None = None


@dataclass(frozen=True)
class BudgetRow:
    """One source of uncertainty, as standard uncertainties; a figure that is not known is None.

    platform_um: root sum of squares over the three axes; axis_deg over the two tilts. origin: where the figure is from.
    """

    source: str
    platform_um: float | None
    axis_deg: float | None
    index_deg: float | None
    origin: str = ""


@dataclass(frozen=True)
class Chance:
    """Of one limit: probability that the true error lies within it, and what the limit rests on."""

    what: str
    limit: float
    probability: float
    source: str

    @property
    def consumers_risk(self) -> float:
        """Probability that what is used lies beyond the limit after all (JCGM 106:2012, 8.3.2)."""
        return 1.0 - self.probability


@dataclass(frozen=True)
class Verdict:
    """`use`, `undecided` or `do not use`: why, the one thing to do next, and the probability of meeting each limit."""

    verdict: str
    because: str
    next: str = ""
    chances: tuple[Chance, ...] = ()


@dataclass(frozen=True)
class Together:
    """The verdict on the sites as a set, and its reason."""

    verdict: str
    because: str = ""
    next: str = ""
    chances: tuple[Chance, ...] = ()


@dataclass(frozen=True)
class Alternative:
    """Another reading of the same site, and how much less likely the scan makes it.

    odds: likelihood of the chosen reading over this one, from 1 (cannot be told apart) to 1e300.
    turn_deg: how far this reading turns the part about its axis from the chosen one.
    """

    scan_body: str
    turn_deg: float
    odds: float


@dataclass(frozen=True)
class Hidden:
    """The smallest fault of a cause that this scan of this site would show (95 % power): a smaller one may be there.

    platform_um, axis_deg: by how much it would put the pose off. All infinite where none would show.
    """

    cause: str
    size_deg: float
    platform_um: float
    axis_deg: float


@dataclass(frozen=True)
class SiteMap:
    """The scan's surface around one site, scan coordinates, with the deviation at each vertex.

    vertices (n, 3) mm; faces (m, 3); deviation_um (n,), NaN where a vertex is not part of the scan body.
    """

    vertices: FloatArray
    faces: IntArray
    deviation_um: FloatArray


@dataclass(frozen=True)
class Site:
    """One measured implant position. Poses and covariances as in docs/conventions.

    covariance (6, 6), u95: of the scan alone. covariance_total, u95_total: with every source that has a figure.
    """

    site: str
    scan_body: str
    connection: str
    platform_diameter: float
    index_order: int
    scan_from_connection: FloatArray
    covariance: FloatArray
    u95: Bounds
    deviation: Deviation
    coverage: float
    findings: tuple[Finding, ...] = ()
    alternatives: tuple[Alternative, ...] = ()
    map: SiteMap | None = field(default=None, repr=False, compare=False)
    u95_total: Bounds | None = None
    budget: tuple[BudgetRow, ...] = ()
    verdict: Verdict | None = None
    covariance_total: FloatArray | None = None
    hidden: Hidden | None = None


@dataclass(frozen=True)
class Pair:
    """Two sites: distance of the platform centres and angle between the axes.

    total_um, angle_total_deg: 95 % bounds with every source counted that has a figure.
    """

    sites: tuple[str, str]
    distance_mm: float
    u95_um: float
    angle_deg: float
    angle_u95_deg: float
    total_um: float | None = None
    angle_total_deg: float | None = None


@dataclass(frozen=True)
class NotShown:
    """What no scan can show, and the check that closes it."""

    what: str
    check: str


@dataclass(frozen=True)
class ScanInfo:
    """Which scan a result is of."""

    file: str
    sha256: str
    triangles: int


@dataclass(frozen=True)
class PartsInfo:
    """Which parts folder a result was measured with."""

    name: str
    revision: str
    sha256: str


@dataclass(frozen=True)
class Result:
    """A whole measurement, sites in order along the arch."""

    scan: ScanInfo
    parts: PartsInfo
    work: str
    sites: tuple[Site, ...]
    pairs: tuple[Pair, ...]
    not_shown: tuple[NotShown, ...]
    warnings: tuple[str, ...] = ()
    together: Together | None = None
