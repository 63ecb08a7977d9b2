"""Seats of a made frame: found in its scan, noise and all, and what is wrong with the frame shows."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest

from stylobate.core.errors import FitError, UsageError
from stylobate.core.rigid import exp, inverse, log
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.parts import PartsFolder, load_parts
from stylobate.record import Record
from stylobate.several import frame, seat
from stylobate.several.made.seats import forms_of
from stylobate.simulate import demo_parts, solids
from tests.unit.several_making import anywhere, record

NOISE = 0.010
EDGE = 0.25


@pytest.fixture(scope="module")
def parts(tmp_path_factory: pytest.TempPathFactory) -> PartsFolder:
    folder: Path = tmp_path_factory.mktemp("parts")
    demo_parts(folder)
    return load_parts(folder)


@pytest.fixture(scope="module")
def poses() -> list[FloatArray]:
    rng = np.random.default_rng(1)
    return [
        exp(np.array([x, y, 0.1 * k, *rng.uniform(-0.1, 0.1, 2), rng.uniform(-3, 3)]))
        for k, (x, y) in enumerate(((0, 0), (9, 4), (19, 0)))
    ]


def solid_of(surface: Surface) -> Any:
    import manifold3d

    return manifold3d.Manifold(manifold3d.Mesh(surface.vertices.astype(np.float32), surface.faces.astype(np.uint32)))


def made(
    parts: PartsFolder, poses: list[FloatArray], milled: bool, rng: np.random.Generator, scale: float = 1.0
) -> Scan:
    """A bar over these connections, milled to abutments or on bonded bases, scanned with noise."""
    bar = solids.box((-5.0, -5.0, 0.0 if milled else 0.9), (24.0, 9.0, 5.0))
    for placed in poses:
        if milled:
            abutment = next(a for a in parts.multi_unit_abutments if a.id == "alder-mu-0-15")
            upper = abutment.surface.moved(exp(np.array([0, 0, -abutment.collar_height, 0, 0, 0])))
            bar -= solids.cylinder(3.2, -4.0, 0.0).transform(placed[:3])
            bar -= solid_of(upper).transform(placed[:3])
        else:
            base = next(b for b in parts.titanium_bases if b.id == "alder-base-10")
            bar += solid_of(base.surface).transform(placed[:3])
            bar -= solids.cylinder(1.1, -3.0, 12.0).transform(placed[:3])
    fine = solids.surface_of(bar.refine_to_length(EDGE))
    noisy = scale * fine.vertices + rng.normal(0.0, NOISE, fine.vertices.shape)
    return Scan(Surface(noisy, fine.faces), np.zeros(3), "frame.stl", "f" * 64)


def rough(poses: list[FloatArray], rng: np.random.Generator, **options: Any) -> Record:
    """The result it was made to, as far off as measuring and milling may be."""
    return record([placed @ exp(rng.normal(size=6) * ([0.1] * 3 + [0.01] * 3)) for placed in poses], **options)


@pytest.mark.parametrize("milled", [False, True], ids=["bonded bases", "milled to abutments"])
def test_seats_are_found_within_5_um_and_0_05_deg(milled: bool, parts: PartsFolder, poses: list[FloatArray]) -> None:
    rng = np.random.default_rng(2)
    like = rough(poses, rng, connection="alder-mu" if milled else "alder", index_order=0)
    found = frame(made(parts, poses, milled, rng), like, parts)
    for site, placed in zip(found.sites, poses, strict=True):
        error = log(inverse(placed) @ site.scan_from_connection)
        assert np.linalg.norm(error[:3]) < 5e-3
        assert np.degrees(np.linalg.norm(error[3:5])) < 0.05
        assert 1e3 * np.linalg.norm(error[:3]) < 3 * site.u95.platform_um
        assert site.connection == ("alder-mu" if milled else "alder")
        assert milled or site.scan_body == "alder-base-10"
    assert found.warnings == ()


def test_a_frame_scanned_elsewhere_a_wrong_scale_and_a_wrong_part(parts: PartsFolder, poses: list[FloatArray]) -> None:
    rng = np.random.default_rng(3)
    scale, motion = 1.005, anywhere(rng)
    scan = made(parts, poses, False, rng, scale)
    moved = Scan(scan.surface.moved(motion), np.zeros(3), scan.file, scan.sha256)
    centres = [motion[:3, :3] @ (scale * placed[:3, 3]) + motion[:3, 3] for placed in poses]
    near = [(centre + rng.normal(0, 0.2, 3)).tolist() for centre in (centres[2], centres[0], centres[1])]
    found = frame(moved, rough(poses, rng), parts, near=near)
    made_to = [site.scan_from_connection for site in found.sites]
    rested = seat(record(made_to, index_order=6), record(poses, "b"))
    half = 0.5 * 1e3 * 0.005 * float(np.linalg.norm(poses[2][:3, 3] - poses[0][:3, 3]))
    assert rested.worst.side_um == pytest.approx(half, abs=8.0)
    with pytest.raises(FitError, match="no seat was found"):
        frame(moved, rough(poses, rng), parts)
    with pytest.raises(UsageError, match="2 rough points for 3 sites"):
        frame(moved, rough(poses, rng), parts, near=near[:2])
    with pytest.raises(UsageError, match="do not stand as the sites"):
        frame(moved, rough(poses, rng), parts, near=[near[0], near[1], [0.0, 0.0, 0.0]])
    wrong = frame(scan, rough(poses, rng, connection="hazel"), parts)
    assert "made for alder; the implant has hazel" in wrong.warnings[0]


def test_forms_face_out_of_the_frame(parts: PartsFolder) -> None:
    """A base shows its underside downwards; the negative of an abutment has its platform facing down as well."""
    forms = {form.part: form for form in forms_of(parts)}
    for name in ("alder-base-10", "alder-mu-0-15"):
        surface = forms[name].surface
        normal = surface.corner_products()
        flat = np.abs(surface.vertices[surface.faces][:, :, 2]).max(axis=1) < 1e-6
        assert flat.any()
        assert (normal[flat, 2] < 0).all()
        assert surface.vertices[:, 2].min() > -0.03
    assert forms["alder-mu-0-15"].connection == "alder-mu"
