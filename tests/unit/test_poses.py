"""Poses from a table: what stands in it comes out as a result that the other commands read."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from stylobate.core.errors import ResultError
from stylobate.core.rigid import exp
from stylobate.core.types import FloatArray
from stylobate.record import Record, read_result
from stylobate.report.document import document
from stylobate.several import poses, seat
from stylobate.several.elsewhere.table import COVARIANCE
from tests.unit.several_making import anywhere, arch, record, upright

PLAIN = "site,x,y,z,ax,ay,az"
FULL = f"{PLAIN},mx,my,mz,u_um,u_axis_deg,u_turn_deg,connection,platform_diameter,index_order"


def line(name: str, pose: FloatArray, *more: object) -> str:
    cells = [*pose[:3, 3], *pose[:3, 2]]
    return ",".join([name, *(repr(float(cell)) for cell in cells), *map(str, more)])


def marked(name: str, pose: FloatArray) -> str:
    return line(name, pose, *pose[:3, 0], 5.0, 0.05, 0.2, "alder", 4.2, 6)


def kept(folder: Path, text: str) -> Path:
    (folder / "table.csv").write_text(text, encoding="utf-8")
    return folder / "table.csv"


def read_back(folder: Path, **options: object) -> Record:
    (folder / "result.json").write_text(json.dumps(document(poses(folder / "table.csv", **options), False)))  # type: ignore[arg-type]
    return read_result(folder)


def test_a_table_is_read_as_a_result(tmp_path: Path) -> None:
    placed = arch(4, np.random.default_rng(1))
    kept(tmp_path, "\n".join([FULL, *(marked(f"p{k}", pose) for k, pose in enumerate(placed))]))
    found = read_back(tmp_path)
    for k, pose in enumerate(placed):
        site = found.site(f"p{k}")
        assert np.abs(site.scan_from_connection - pose).max() < 1e-12
        expected = [5e-3] * 3 + [np.radians(0.05)] * 2 + [np.radians(0.2)]
        assert np.sqrt(np.diag(site.covariance)) == pytest.approx(expected)
        assert (site.connection, site.platform_diameter, site.index_order) == ("alder", 4.2, 6)
        assert (site.deviation is None or site.deviation.points == 0, site.coverage) == (True, None)
    assert seat(found, record(placed, "b")).worst.gap_um < 0.01


def test_semicolons_and_decimal_commas(tmp_path: Path) -> None:
    placed = arch(2, np.random.default_rng(2))
    text = "\n".join([FULL, *(marked(str(k), pose) for k, pose in enumerate(placed))])
    kept(tmp_path, text.replace(",", ";").replace(".", ","))
    assert np.abs(read_back(tmp_path).site("0").scan_from_connection - placed[0]).max() < 1e-12


def test_a_whole_covariance(tmp_path: Path) -> None:
    rng = np.random.default_rng(3)
    root = rng.normal(size=(6, 6)) * 1e-3
    covariance = root @ root.T
    cells = [covariance[i, j] for i in range(6) for j in range(i, 6)]
    placed = arch(2, rng)
    names = f"{PLAIN},connection,platform_diameter,{','.join(COVARIANCE)}"
    kept(
        tmp_path,
        "\n".join(
            [names, *(line(str(k), p, "alder", 4.2, *map(repr, map(float, cells))) for k, p in enumerate(placed))]
        ),
    )
    assert np.allclose(read_back(tmp_path).sites[0].covariance, covariance, rtol=1e-12)


def test_what_the_table_does_not_say_is_that_of_a_like_result(tmp_path: Path) -> None:
    """In another frame, without marks: the turn follows the like result, and is said to be unknown."""
    rng = np.random.default_rng(4)
    placed = arch(4, rng)
    motion = anywhere(rng)
    kept(tmp_path, "\n".join([PLAIN, *(line(f"p{k}", motion @ pose) for k, pose in enumerate(placed))]))
    found = read_back(tmp_path, like=record(placed), u_um=8.0, u_axis_deg=0.1)
    for k, pose in enumerate(placed):
        site = found.site(f"p{k}")
        assert np.abs(site.scan_from_connection - motion @ pose).max() < 1e-9
        assert (site.connection, site.platform_diameter, site.index_order) == ("alder", 4.2, 6)
        assert np.degrees(np.sqrt(site.covariance[5, 5])) > 100
    assert found.sites[0].u95 is not None
    assert found.sites[0].u95.index_deg == 180.0
    assert np.isfinite(seat(found, draws=200).worst.gap_um)


def test_the_turn_of_a_mark_is_kept_where_like_has_another(tmp_path: Path) -> None:
    placed = arch(3, np.random.default_rng(5))
    turned = [pose @ exp(np.array([0, 0, 0, 0, 0, 0.2])) for pose in placed]
    kept(tmp_path, "\n".join([f"{PLAIN},mx,my,mz", *(line(str(k), p, *p[:3, 0]) for k, p in enumerate(turned))]))
    found = read_back(tmp_path, like=record(placed), u_um=8.0, u_axis_deg=0.1, u_turn_deg=0.3)
    assert np.abs(found.site("1").scan_from_connection - turned[1]).max() < 1e-9


GOOD = "1,0,0,0,0,0,1"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "missing: site, x"),
        ("site,x,y,z,ax,ay\n1,0,0,0,0,0", "missing: az"),
        (f"{PLAIN},colour\n{GOOD},red", "unknown column 'colour'"),
        (f"{PLAIN},x\n{GOOD},0", "twice"),
        (f"{PLAIN},mx\n{GOOD},1", "'my' is missing"),
        (f"{PLAIN},c_tx_tx\n{GOOD},1", "all 21"),
        (PLAIN, "holds no row"),
        (f"{PLAIN}\n{GOOD}\n1,9,0,0,0,0,1", "line 3: site '1' stands there twice"),
        (f"{PLAIN}\n1,0,0,0,0,0,0\n2,zero,0,0,0,0,1\n3,0,0", "line 2: the axis.*line 3: x is no.*line 4: 3 val"),
        (f"{PLAIN}\n1,nan,0,0,0,0,1", "x is no number"),
        (f"{PLAIN}\n1,,0,0,0,0,1", "no x"),
        (f"{PLAIN},mx,my,mz\n{GOOD},0,0,1", "across the axis"),
        (f"{PLAIN},u_um\n{GOOD},-1", "below 0"),
        (f"{PLAIN},index_order\n{GOOD},1.5", "whole number"),
        (f"{PLAIN}\n{GOOD}", "no uncertainty: neither a column u_um nor --u-um"),
        (f"{PLAIN},u_um,u_axis_deg\n{GOOD},5,0.1", "no connection"),
        (f"{PLAIN},u_um,u_axis_deg,connection\n{GOOD},5,0.1,alder", "no platform_diameter"),
    ],
)  # fmt: skip
def test_tables_that_are_none(text: str, words: str, tmp_path: Path) -> None:
    with pytest.raises(ResultError, match=words) as caught:
        poses(kept(tmp_path, text))
    assert "\n" not in str(caught.value)
    assert "table.csv" in str(caught.value)


def test_a_table_of_other_implants(tmp_path: Path) -> None:
    far = upright([(0, 0, 0), (50, 0, 0), (0, 70, 0)])
    kept(tmp_path, "\n".join([PLAIN, *(line(str(k), pose) for k, pose in enumerate(far))]))
    with pytest.raises(ResultError, match="stand alike"):
        poses(
            tmp_path / "table.csv", like=record(upright([(0, 0, 0), (9, 0, 0), (20, 5, 0)])), u_um=5.0, u_axis_deg=0.1
        )
    with pytest.raises(ResultError, match="no such file"):
        poses(tmp_path / "absent.csv")
    (tmp_path / "table.csv").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(ResultError, match="UTF-8"):
        poses(tmp_path / "table.csv")
