"""What a seed draws: settings, bodies that nobody has seen, and the scan with its truth."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray, IntArray
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.simulate import Noise, Scene, Settings, draw_bodies, scene

KERNELS = ("exponential", "matern32", "matern52", "squared-exponential")
ARCHES = (("single", 0.35, 0.05, (1, 1)), ("quadrant", 0.45, 0.08, (1, 4)), ("full", 0.2, 0.12, (3, 8)))
"""Kind, how often, finest mesh edge (mm; finer ones would take minutes to simulate), least and most bodies."""
COARSEST = 0.3  # mm
CANDIDATES = 6
START_MM, START_DEG = 1.0, 10.0  # how far off a near start is


@dataclass(frozen=True)
class Task:
    """What a method is given: the scan as a mesh (mm), the parts, and near starts where the table gives them.

    starts: (scan body id, scan_from_connection (4, 4)) for each site, or empty: search without a hint.
    """

    vertices: FloatArray
    faces: IntArray
    parts: PartsFolder
    starts: tuple[tuple[str, FloatArray], ...] = ()

    def scan(self) -> Scan:
        """The scan as ours reads it: in a local frame."""
        origin = np.round(self.vertices.mean(axis=0))
        return Scan(Surface(np.ascontiguousarray(self.vertices - origin), self.faces), origin, "scan", "")


PLAIN, TAILS, GRAZING, SEAMS = "white and correlated alone", "heavy tails", "more at grazing view", "seams"


def noise_of(made: Settings) -> list[str]:
    """What its noise is besides white and correlated, or that it is nothing else."""
    noise = made.noise
    more = ((TAILS, noise.tails != "normal"), (GRAZING, noise.view_share > 0.0), (SEAMS, noise.seam_um > 0.0))
    return [name for name, has in more if has] or [PLAIN]


def settings(seed: int) -> Settings:
    """A scene drawn by its seed, over the whole range that `measure` is made for."""
    rng = np.random.default_rng(seed)
    arch, _, finest, (least, most) = ARCHES[int(rng.choice(3, p=[row[1] for row in ARCHES]))]
    noise = Noise(
        white_um=float(rng.uniform(3.0, 15.0)),
        correlated_um=float(rng.uniform(5.0, 15.0)),
        length_mm=float(rng.uniform(0.3, 1.5)),
        kernel=str(rng.choice(KERNELS)),
        tails=str(rng.choice(["normal", "t3"], p=[0.8, 0.2])),
        view_share=float(rng.choice([0.0, 1.0], p=[0.7, 0.3])),
        seam_um=float(rng.choice([0.0, 5.0], p=[0.8, 0.2])),
    )
    return Settings(
        seed=seed,
        arch=arch,
        bodies=int(rng.integers(least, most + 1)),
        edge_mm=float(np.exp(rng.uniform(np.log(finest), np.log(COARSEST)))),
        adaptive=bool(rng.random() < 0.3),
        gum=(0.05, 0.33),
        unseen=((0.0, 0.25), (0.25, 0.6))[int(rng.random() < 2 / 3)],
        stumps=int(rng.integers(0, 2)) if arch == "single" else int(rng.integers(0, 3)),
        palate=bool(arch == "full" and rng.random() < 0.3),
        noise=noise,
        rounding_mm=float(rng.choice([0.0, rng.uniform(0.0, 0.1)])),
    )


def parts_of(bodies: tuple[ScanBody, ...]) -> PartsFolder:
    """A folder of these bodies; one index mark, so that every wrong turn counts."""
    names = sorted({body.seats_on for body in bodies})
    return PartsFolder("drawn", "1", "", "", tuple(Connection(n, "other", 1, 4.2) for n in names), bodies)


def task_of(made: Scene, bodies: tuple[ScanBody, ...], near: bool = False) -> Task:
    """The scene as a task, with a start START_MM and START_DEG off each true pose if `near`."""
    starts = []
    for k, site in enumerate(made.sites if near else ()):
        rng = np.random.default_rng([made.settings.seed, k, 0x57A7])
        shift, turn = rng.normal(size=3), rng.normal(size=3)
        start = site.scan_from_connection @ _off(shift, turn)
        starts.append((site.body.id, start))
    return Task(made.surface.vertices, made.surface.faces, parts_of(bodies), tuple(starts))


def _off(shift: FloatArray, turn: FloatArray) -> FloatArray:
    from scipy.spatial.transform import Rotation

    off = np.eye(4)
    off[:3, :3] = Rotation.from_rotvec(np.radians(START_DEG) * turn / np.linalg.norm(turn)).as_matrix()
    off[:3, 3] = START_MM * shift / np.linalg.norm(shift)
    return off


def drawn(seed: int) -> tuple[Scene, tuple[ScanBody, ...]]:
    """The scene of a seed and the bodies it was drawn from."""
    bodies = draw_bodies(seed, CANDIDATES)
    return scene(settings(seed), bodies), bodies
