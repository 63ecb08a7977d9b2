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


@dataclass(frozen=True)
class Deviation:
    """Signed distance from the CAD surface to the scan at the fitted pose, over the scan region, µm."""

    points: int
    mean_um: float
    rms_um: float
    p95_um: float


@dataclass(frozen=True)
class Finding:
    """Something that stands against a pose, or against the choice of part: what, how large, what to do."""

    cause: str
    advice: str
    size_um: float | None = None
    u95_um: float | None = None


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
class SiteMap:
    """The scan's surface around one site, scan coordinates, with the deviation at each vertex.

    vertices (n, 3) mm; faces (m, 3); deviation_um (n,), NaN where a vertex is not part of the scan body.
    """

    vertices: FloatArray
    faces: IntArray
    deviation_um: FloatArray


@dataclass(frozen=True)
class Site:
    """One measured implant position. Poses and covariances as in docs/conventions."""

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


@dataclass(frozen=True)
class Pair:
    """Two sites: distance of the platform centres and angle between the axes."""

    sites: tuple[str, str]
    distance_mm: float
    u95_um: float
    angle_deg: float
    angle_u95_deg: float


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
