"""Parts folders and results put together by hand, for the tests of placing."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from stylobate.core.result import PartsInfo, ScanInfo
from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray
from stylobate.parts.model import Connection, MultiUnitAbutment, PartsFolder, TitaniumBase
from stylobate.record import Record, RecordSite


def block(half: float, low: float, high: float) -> Surface:
    """An upright square block about z, outward faces."""
    corners = np.array(
        [[x, y, z] for z in (low, high) for x, y in ((-half, -half), (half, -half), (half, half), (-half, half))]
    )
    quads = [(0, 3, 2, 1), (4, 5, 6, 7), (0, 1, 5, 4), (1, 2, 6, 5), (2, 3, 7, 6), (3, 0, 4, 7)]
    faces = [face for a, b, c, d in quads for face in ((a, b, c), (a, c, d))]
    return Surface(corners, np.array(faces, np.int32))


def abutment(
    name: str, seats: str, provides: str, angle: float, collar: float, cone: float | None = 20.0
) -> MultiUnitAbutment:
    return MultiUnitAbutment(
        name, seats, provides, angle, collar, block(2.0, 0.0, collar + 1.0), name, cone, (15.0, 15.0)
    )


def base(
    name: str, seats: str, tilt: float = 0.0, engaging: bool = True, cone: float | None = 4.0, gum: float = 1.0
) -> TitaniumBase:
    surface = block(1.5, 0.0, gum + 4.0)
    return TitaniumBase(name, seats, gum, 4.0, engaging, surface, name, tilt, cone, (30.0, 35.0))


def folder(
    abutments: tuple[MultiUnitAbutment, ...], bases: tuple[TitaniumBase, ...], orders: dict[str, int]
) -> PartsFolder:
    """orders: index_order by connection."""
    connections = tuple(Connection(name, "other", order, 4.2) for name, order in orders.items())
    return PartsFolder(
        "Harbour Street", "1", "CC0-1.0", "ab" * 32, connections, (),
        multi_unit_abutments=abutments, titanium_bases=bases,
    )  # fmt: skip


def demo_folder() -> PartsFolder:
    """An indexed connection with straight and leaning abutments, and a round one above them."""
    return folder(
        (
            abutment("mu-0", "alder", "alder-mu", 0.0, 1.5),
            abutment("mu-16", "alder", "alder-mu", 16.0, 2.5),
            abutment("mu-28", "alder", "alder-mu", 28.0, 3.5),
        ),
        (
            base("base-tilt", "alder", 20.0),
            base("base-straight", "alder"),
            base("mu-base", "alder-mu", 5.0, engaging=False),
            base("hazel-base", "hazel", 10.0),
        ),
        {"alder": 6, "alder-mu": 0, "hazel": 3},
    )


def leaning_pose(
    tilt_deg: float, azimuth_deg: float, spin_deg: float = 0.0, at: FloatArray | None = None
) -> FloatArray:
    """A connection whose axis leans by `tilt_deg` from +z towards `azimuth_deg`."""
    azimuth = np.radians(azimuth_deg)
    lean = rotation_exp(np.radians(tilt_deg) * np.array([-np.sin(azimuth), np.cos(azimuth), 0.0]))
    spin = rotation_exp(np.array([0.0, 0.0, np.radians(spin_deg)]))
    return pose(lean @ spin, np.zeros(3) if at is None else at)


def random_pose(rng: np.random.Generator, lean_deg: float = 35.0, at: FloatArray | None = None) -> FloatArray:
    tilt, azimuth, spin = rng.uniform([0.0, 0.0, 0.0], [lean_deg, 360.0, 360.0])
    return leaning_pose(float(tilt), float(azimuth), float(spin), at)


def site(
    name: str, scan_from_connection: FloatArray, connection: str = "alder", order: int = 6, verdict: str | None = "use",
    covariance: FloatArray | None = None,
) -> RecordSite:  # fmt: skip
    spread = np.diag([1e-5, 1e-5, 1e-5, 1e-7, 1e-7, 1e-6]) if covariance is None else covariance
    return RecordSite(name, "alder-tall", connection, 4.2, order, scan_from_connection, spread, verdict=verdict)


def record(*sites: RecordSite, work: str = "bridge") -> Record:
    parts = PartsInfo("Harbour Street", "1", "ab" * 32)
    return Record(Path("result.json"), "case", ScanInfo("arch.stl", "cd" * 32, 1), parts, work, sites)
