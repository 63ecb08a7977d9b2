"""`python -m bench.made [--runs N] [--seed S]`: how near `frame` finds the seats of made frames, and whether it covers.

Bars over three connections, on bonded bases or milled to abutments, each scanned anew with noise of 10 µm along the
normals: white, or white 8 µm and correlated 6 µm over 0.8 mm. Poses and starts are drawn for each. Beside the errors
stands what no unbiased estimator can better (Cramér–Rao), from the noise's own covariance over the seat's points.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path
from typing import Any

import numpy as np

from stylobate.core.result import PartsInfo, ScanInfo
from stylobate.core.rigid import exp, inverse, log, pose, rotation_exp, turn_z
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.find.thin import vertex_normals
from stylobate.parts import PartsFolder, load_parts
from stylobate.record import Record, RecordSite
from stylobate.several import frame
from stylobate.several.made.seats import Form, forms_of
from stylobate.simulate import demo_parts, solids
from stylobate.simulate.noise import NoiseModel, model_of
from stylobate.simulate.settings import Noise
from stylobate.uncertainty.bounds import length_95

EDGE = 0.25
ON_SEAT = 2e-3
"""mm from the form within which a point of the frame, before noise, is of the seat."""
WHITE, CORRELATED = Noise(white_um=10.0, correlated_um=0.0), Noise(white_um=8.0, correlated_um=6.0)
BASE, ABUTMENT = "alder-base-10", "alder-mu-0-15"


def connections(rng: np.random.Generator) -> list[FloatArray]:
    """Three leaning connections, none in line."""
    return [
        pose(rotation_exp(np.array([*rng.uniform(-0.1, 0.1, 2), 0.0])) @ turn_z(rng.uniform(-3, 3))[:3, :3], centre)
        for centre in np.array([[0.0, 0.0, 0.0], [9.0, 4.0, 0.1], [19.0, 0.0, 0.2]])
    ]


def bar_over(parts: PartsFolder, poses: list[FloatArray], milled: bool) -> Surface:
    """The surface of a bar over these connections, milled to abutments or on bonded bases, without error."""
    bar = solids.box((-5.0, -5.0, 1.5 if milled else 0.9), (24.0, 9.0, 5.0))
    for placed in poses:
        if milled:
            abutment = next(a for a in parts.multi_unit_abutments if a.id == ABUTMENT)
            upper = abutment.surface.moved(exp(np.array([0, 0, -abutment.collar_height, 0, 0, 0])))
            bar += solids.cylinder(3.2, 0.0, 4.0).transform(placed[:3])
            bar -= _solid(upper).transform(placed[:3])
        else:
            base = next(b for b in parts.titanium_bases if b.id == BASE)
            bar += _solid(base.surface).transform(placed[:3])
            bar -= solids.cylinder(1.1, -3.0, 12.0).transform(placed[:3])
    return solids.surface_of(bar.refine_to_length(EDGE))


def scan_of(surface: Surface, rng: np.random.Generator, noise: Noise) -> tuple[Scan, NoiseModel]:
    """The surface scanned, and the noise that it got."""
    normals = _normals(surface)
    model = model_of(noise, np.array([0.0, 0.0, -1.0]), surface.vertices.mean(axis=0), rng)
    off = model.sample(surface.vertices, normals, rng)
    scan = Scan(Surface(surface.vertices + off[:, None] * normals, surface.faces), np.zeros(3), "frame.stl", "f" * 64)
    return scan, model


def least(surface: Surface, noise: NoiseModel, form: Form, placed: FloatArray) -> FloatArray:
    """(2,) least 95 % bounds of a seat's centre (µm) and axis (°); a uniform offset is free, the turn not asked."""
    from scipy.linalg import cho_factor, cho_solve

    local = (surface.vertices - placed[:3, 3]) @ placed[:3, :3]
    near = np.flatnonzero(np.linalg.norm(local - form.middle, axis=1) < form.reach + 0.5)
    closest = form.tree.closest(local[near], ON_SEAT)
    normals = _normals(surface)[near] @ placed[:3, :3]
    on = (closest.face >= 0) & (np.einsum("ij,ij->i", normals, closest.gradient) > 0.9)
    points, normals, mine = local[near][on], normals[on], near[on]
    design = np.concatenate([normals, np.cross(points, normals)[:, :2], np.ones((len(mine), 1))], axis=1)
    covariance = noise.covariance(surface.vertices[mine], _normals(surface)[mine])
    information = design.T @ cho_solve(cho_factor(covariance + 1e-12 * np.eye(len(mine))), design)
    known = np.linalg.inv(information)
    return np.array([1e3 * length_95(known[:3, :3]), np.degrees(length_95(known[3:5, 3:5]))])


def _normals(surface: Surface) -> FloatArray:
    normals = vertex_normals(surface.vertices, surface.faces)
    return np.asarray(normals / np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-12))


def made_to(poses: list[FloatArray], milled: bool, rng: np.random.Generator) -> Record:
    """The result it was made to, as far off as measuring and milling may be."""
    sites = tuple(
        RecordSite(
            str(k), "alder-tall", "alder-mu" if milled else "alder", 4.2, 0 if milled else 6,
            placed @ exp(rng.normal(size=6) * ([0.1] * 3 + [0.01] * 3)), np.diag([1e-6] * 3 + [1e-8] * 3),
        )
        for k, placed in enumerate(poses, start=1)
    )  # fmt: skip
    return Record(Path("a"), "a", ScanInfo("a.stl", "a", 1), PartsInfo("p", "1", "c"), "bridge", sites)


def _solid(surface: Surface) -> Any:
    import manifold3d

    return manifold3d.Manifold(manifold3d.Mesh(surface.vertices.astype(np.float32), surface.faces.astype(np.uint32)))


def study(parts: PartsFolder, milled: bool, noise: Noise, runs: int, seed: int) -> None:
    """Print one line: errors, bounds that hold, and ξᵀC⁻¹ξ over its expectation, turn about the axis left out."""
    errors, bounds, squares, leasts = [], [], [], []
    form = next(one for one in forms_of(parts) if one.part == (ABUTMENT if milled else BASE))
    for run in range(runs):
        rng = np.random.default_rng([seed, run, milled, noise.correlated_um > 0.0])
        poses = connections(rng)
        bar = bar_over(parts, poses, milled)
        scan, model = scan_of(bar, rng, noise)
        found = frame(scan, made_to(poses, milled, rng), parts)
        for site, placed in zip(found.sites, poses, strict=True):
            xi = log(inverse(site.scan_from_connection) @ placed)
            errors.append([1e3 * np.linalg.norm(xi[:3]), np.degrees(np.linalg.norm(xi[3:5])), *(1e3 * xi[:3])])
            bounds.append([site.u95.platform_um, site.u95.axis_deg])
            leasts.append(least(bar, model, form, placed))
            squares.append(xi[:5] @ np.linalg.solve(site.covariance[:5, :5], xi[:5]) / 5.0)
    off, limit, nees = np.array(errors), np.array(bounds), np.array(squares)
    kind = f"{'milled to abutments' if milled else 'bonded bases'}, {noise.white_um:g} + {noise.correlated_um:g} µm"
    centre_least, axis_least = np.median(leasts, axis=0)
    inside = np.mean(off[:, :2] <= limit, axis=0)
    print(
        f"{kind}: {runs} frames, {len(off)} seats; centre off 95 %: {np.quantile(off[:, 0], 0.95):.2f} µm, most "
        f"{off[:, 0].max():.2f}; axis 95 %: {np.quantile(off[:, 1], 0.95):.4f}°, most {off[:, 1].max():.4f}; mean "
        f"{np.round(off[:, 2:].mean(axis=0), 2)} µm; within u95: centre {100 * inside[0]:.1f} %, axis "
        f"{100 * inside[1]:.1f} %; u95 median {np.median(limit[:, 0]):.2f} µm, {np.median(limit[:, 1]):.4f}°, "
        f"least possible {centre_least:.2f} µm, {axis_least:.4f}°; "
        f"ξᵀC⁻¹ξ/5: mean {nees.mean():.2f}, median {np.median(nees):.2f}"
    )


def main() -> None:
    """Both kinds of frame."""
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--runs", type=int, default=50)
    reader.add_argument("--seed", type=int, default=3101)
    asked = reader.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        demo_parts(Path(folder))
        parts = load_parts(Path(folder))
    for milled in (False, True):
        for noise in (WHITE, CORRELATED):
            study(parts, milled, noise, asked.runs, asked.seed)


if __name__ == "__main__":
    main()
