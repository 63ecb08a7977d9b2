"""A mirrored scan is said to be one where a body's shape can tell, and only there."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core.surface import Scan, Surface
from stylobate.measuring import measure
from stylobate.measuring.handedness import only_in_the_mirror
from stylobate.parts.model import Connection, PartsFolder, ScanBody
from stylobate.simulate import Scene, Settings, draw_body, scene

FLIP = np.array([-1.0, 1.0, 1.0])
CHIRAL, PLAIN = "two-flats", "flatted-cylinder"


def body_of(family: str) -> ScanBody:
    """Two unlike flats at an odd angle have no plane of symmetry; a cylinder with one flat has."""
    return draw_body(np.random.default_rng(920_001), family, "alder", family)


def made(family: str) -> tuple[Scene, PartsFolder]:
    body = body_of(family)
    settings = Settings(seed=920_002, arch="single", bodies=1, edge_mm=0.2, teeth=False)
    return scene(settings, (body,)), PartsFolder(
        "drawn", "1", "", "0", (Connection("alder", "other", 1, 4.2),), (body,)
    )


def scan_of(surface: Surface) -> Scan:
    origin = np.round(surface.vertices.mean(axis=0))
    return Scan(replace(surface, vertices=surface.vertices - origin), origin, "scan.stl", "0")


def mirrored(surface: Surface) -> Surface:
    """As an export with one axis reversed: the triangles still face outwards."""
    return Surface(surface.vertices * FLIP, np.ascontiguousarray(surface.faces[:, ::-1]))


@pytest.mark.parametrize("family", [CHIRAL, "bevelled"])
def test_a_mirrored_scan_of_a_body_that_can_tell_is_warned_of(family: str) -> None:
    """Whether the body is measured all the same, its odd half left out, or nothing is: the user is told."""
    made_scene, parts = made(family)
    result = measure(scan_of(mirrored(made_scene.surface)), parts, maps=False)
    assert any("mirrored" in warning for warning in result.warnings)
    plain = measure(scan_of(made_scene.surface), parts, maps=False)
    assert [site.scan_body for site in plain.sites] == [family]
    assert not any("mirrored" in warning for warning in plain.warnings)


def test_a_mirrored_scan_of_a_symmetric_body_is_measured() -> None:
    made_scene, parts = made(PLAIN)
    result = measure(scan_of(mirrored(made_scene.surface)), parts, maps=False)
    assert len(result.sites) == 1
    assert not any("mirrored" in warning for warning in result.warnings)


def test_a_scan_turned_inside_out_is_warned_of_as_such() -> None:
    made_scene, parts = made(PLAIN)
    turned = Surface(made_scene.surface.vertices, np.ascontiguousarray(made_scene.surface.faces[:, ::-1]))
    result = measure(scan_of(turned), parts, maps=False)
    assert result.sites == ()
    assert "inside out" in result.warnings[0]


@pytest.mark.parametrize(("family", "tells"), [(CHIRAL, True), (PLAIN, False)])
def test_only_a_shape_without_symmetry_speaks_for_the_mirror(
    family: str, tells: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever the reason for which nothing was measured in the scan as it is, a symmetric body claims nothing."""
    from stylobate.measuring import verb as measuring

    said: list[bool] = []
    monkeypatch.setattr(measuring, "only_in_the_mirror", lambda bench, m: said.append(only_in_the_mirror(bench, m)))
    original = measuring._places
    blind = [True]

    def first_time_nothing(*given: object) -> object:
        if blind and blind.pop():
            return [], []
        return original(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(measuring, "_places", first_time_nothing)
    made_scene, parts = made(family)
    measure(scan_of(mirrored(made_scene.surface)), parts, maps=False)
    assert said
    assert said[0] is tells
