"""Figures → a scan, with the truth."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from scipy.spatial.transform import Rotation

from bench.fused.scene import Figures, Standing, mouth
from bench.fused.views import views_of
from bench.fused.volume import Volume
from stylobate.core import rigid
from stylobate.core.surface import Surface

MARGIN = 1.0  # mm of the volume about everything
SMOOTHINGS = 10  # half of them outwards again


@dataclass(frozen=True)
class Made:
    """A scan, and what stands in it where."""

    figures: Figures
    surface: Surface
    sites: tuple[Standing, ...]


def made(figures: Figures) -> Made:
    """Scan the mouth of these figures; the whole is then turned at random. Raises ImportError without scikit-image."""
    true = mouth(figures)
    points = true.corners.reshape(-1, 3)
    volume = Volume.over(points.min(axis=0) - MARGIN, points.max(axis=0) + MARGIN, figures.voxel_mm)
    for view in views_of(true, figures):
        volume.add(view)
    surface = volume.surface(figures.blurred)
    if figures.smoothed:
        surface = _smoothed(surface)
    rng = np.random.default_rng([figures.seed, 0x7042])
    turned = rigid.pose(Rotation.random(None, rng).as_matrix(), rng.uniform(-50.0, 50.0, 3))
    sites = tuple(replace(s, scan_from_connection=turned @ s.scan_from_connection) for s in true.sites)
    return Made(figures, surface.moved(turned), sites)


def _smoothed(surface: Surface) -> Surface:
    """Taubin (1995), SIGGRAPH 351, by trimesh."""
    import trimesh
    import trimesh.smoothing

    mesh: Any = trimesh.Trimesh(surface.vertices, surface.faces, process=False)
    taubin: Any = trimesh.smoothing.filter_taubin
    taubin(mesh, lamb=0.5, nu=0.53, iterations=SMOOTHINGS)
    return Surface(np.array(mesh.vertices, dtype=np.float64), surface.faces)
