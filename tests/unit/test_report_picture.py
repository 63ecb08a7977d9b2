"""The picture of a measurement opens, repeats to the byte, and shows what was measured where it was measured."""

from __future__ import annotations

import dataclasses
import io

import numpy as np
import pytest
from PIL import Image

from stylobate.core.result import Bounds
from stylobate.report.colours import table
from stylobate.report.picture import Page, picture_png
from tests.doors.handmade import measurement


def opened(png: bytes) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    with Image.open(io.BytesIO(png)) as image:
        assert image.format == "PNG"
        return np.asarray(image.convert("RGB"))


def test_same_measurement_same_bytes() -> None:
    result, scan = measurement(2)
    before = scan.surface.vertices.copy()
    assert picture_png(result, scan) == picture_png(result, scan)
    assert np.array_equal(scan.surface.vertices, before)


@pytest.mark.parametrize("count", [0, 1, 4])
def test_any_number_of_sites(count: int) -> None:
    pixels = opened(picture_png(*measurement(count)))
    assert pixels.shape[1] == 2000
    assert pixels.std() > 5


def test_a_site_without_a_map_still_has_its_figures() -> None:
    result, scan = measurement(1)
    bare = dataclasses.replace(result, sites=(dataclasses.replace(result.sites[0], map=None),))
    assert opened(picture_png(bare, scan)).shape == opened(picture_png(result, scan)).shape


def share_of(pixels: np.ndarray[tuple[int, ...], np.dtype[np.uint8]], warm: bool) -> float:
    """Share of the cards' pixels that are clearly red (warm) or clearly blue."""
    cards = pixels[1250:1700].astype(int)
    difference = cards[..., 0] - cards[..., 2]
    return float((difference > 90).mean() if warm else (difference < -90).mean())


@pytest.mark.parametrize("sign", [-1.0, 1.0])
def test_a_body_that_is_too_large_is_red_and_one_too_small_is_blue(sign: float) -> None:
    assert len(table()) == 256
    result, scan = measurement(1)
    site = result.sites[0]
    assert site.map is not None
    shifted = dataclasses.replace(site.map, deviation_um=np.full_like(site.map.deviation_um, sign * 35.0))
    pixels = opened(picture_png(dataclasses.replace(result, sites=(dataclasses.replace(site, map=shifted),)), scan))
    assert share_of(pixels, warm=sign > 0) > 0.1
    assert share_of(pixels, warm=sign < 0) < 0.001


def test_a_turn_that_the_scan_does_not_show_has_no_figure(monkeypatch: pytest.MonkeyPatch) -> None:
    """Three index marks: bounded by 60° either way the turn may be any."""
    said: list[str] = []
    monkeypatch.setattr(Page, "text", lambda *given, **_: said.append(given[3]))
    result, scan = measurement(1)
    for bound in (59.9, 60.0):
        site = dataclasses.replace(result.sites[0], index_order=3, u95=Bounds(9.0, 0.05, bound))
        picture_png(dataclasses.replace(result, sites=(site,)), scan)
    assert [word for word in said if word in ("59.90°", "60.00°", "any")] == ["59.90°", "any"]
