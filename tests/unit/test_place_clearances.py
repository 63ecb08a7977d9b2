"""Collisions and walls of random placements against other means: exact gaps of solids, and many more rays."""

from __future__ import annotations

import manifold3d
import numpy as np
import pytest
import trimesh

from stylobate.build.collisions import LISTED, SPACING, Shapes, nearnesses
from stylobate.build.model import Link
from stylobate.build.planned import exit_of
from stylobate.core.surface import Surface
from stylobate.parts import PartsFolder, load_parts
from stylobate.simulate import demo_parts
from tests.unit.placing_making import random_pose


@pytest.fixture(scope="module")
def parts(tmp_path_factory: pytest.TempPathFactory) -> PartsFolder:
    folder = tmp_path_factory.mktemp("clearances") / "parts"
    demo_parts(folder)
    return load_parts(folder)


def solid(link: Link) -> manifold3d.Manifold:
    surface = link.surface()
    return manifold3d.Manifold(
        manifold3d.Mesh64(np.ascontiguousarray(surface.vertices), surface.faces.astype(np.uint64))
    )


def test_clearances_are_those_of_exact_solids(parts: PartsFolder) -> None:
    """By the exact least gap of two solids, and whether they share volume, of manifold3d."""
    rng = np.random.default_rng(3)
    shapes = Shapes()
    kinds = (*parts.multi_unit_abutments, *parts.titanium_bases)
    seen = {"apart": 0, "near": 0, "within": 0}
    for _ in range(36):
        one, two = (kinds[k] for k in rng.integers(len(kinds), size=2))
        shift = np.array([rng.uniform(3.5, 6.5), 0.0, rng.uniform(-1.0, 1.0)])
        a = Link(one, 0, random_pose(rng, 25.0))
        b = Link(two, 0, random_pose(rng, 25.0, shift))
        found = nearnesses([("1", [a]), ("2", [b])], shapes)
        gap = solid(a).min_gap(solid(b), 3.0)
        shared = float((solid(a) ^ solid(b)).volume())
        if shared > 1e-3:
            seen["within"] += 1
            assert len(found) == 1
            assert found[0].clearance_mm < 0.0
        elif gap == 0.0:  # they just touch
            assert found[0].clearance_mm < SPACING / 2
        elif gap > LISTED:
            seen["apart"] += 1
            assert not found
        elif gap < LISTED - SPACING / 2:
            seen["near"] += 1
            assert gap - 1e-5 <= found[0].clearance_mm <= gap + SPACING / 2
    assert min(seen.values()) >= 3


@pytest.mark.parametrize("seed", range(3))
def test_the_wall_beside_a_channel_is_that_of_many_rays(seed: int) -> None:
    """An egg-shaped tooth, its rays solved exactly: every 0.05 mm along the channel, every degree around it."""
    rng = np.random.default_rng(seed)
    ball = trimesh.creation.icosphere(5, 1.0)
    axes, middle = rng.uniform(3.5, 5.5, 3), np.append(rng.uniform(-0.5, 0.5, 2), 4.0)
    tooth = Surface(np.array(ball.vertices) * axes + middle, np.array(ball.faces, np.int32))
    direction, origin = random_pose(rng, 15.0)[:3, 2], np.zeros(3)
    out = exit_of(tooth, middle + [0.0, 0.0, axes[2]], origin, direction, 1.0, 2.5)
    assert out.point is not None
    assert out.wall_mm is not None
    heights = np.arange(1.0, float(np.linalg.norm(out.point)) - 1.0, 0.05)
    across = np.linalg.svd(direction[None])[2][1:]
    angle = np.radians(np.arange(360.0))
    rays = (np.outer(np.cos(angle), across[0]) + np.outer(np.sin(angle), across[1])) / axes
    starts = ((heights[:, None] * direction - middle) / axes)[:, None]
    a, b, c = (rays**2).sum(axis=-1), (starts * rays).sum(axis=-1), (starts**2).sum(axis=-1) - 1.0
    least = float(((np.sqrt(b**2 - a * c) - b) / a).min()) - 1.25
    assert least - 0.005 <= out.wall_mm <= least + 0.1
