"""Comparing repeat scans: matching, what moved, spreads, pooling."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.errors import ResultError, UsageError
from stylobate.record import read_result
from stylobate.several.comparing.verb import compare
from tests.unit.comparing_making import SD_MM, TILT, TURN, arch, document, drifted, unseated, write


def scans(
    folder: Path, count: int, rng: np.random.Generator, height: float = 0.0, site: int = 1, shuffled: bool = False,
    index_order: int = 6, drift: float = 0.0,
) -> list[Path]:  # fmt: skip
    """`count` scans of four implants; in the last the body at `site` stands `height` mm high."""
    poses = arch(4, rng)
    files = []
    for k in range(count):
        shown = drifted(poses, rng, drift) if drift else poses
        if k == count - 1 and height:
            shown = unseated(shown, site, height)
        name = "abcdefghijklmnopqrst"[k]
        files.append(write(folder / name, document(shown, rng, name, index_order, shuffled and k > 0)))
    return files


def test_an_unseated_body_is_named_whatever_frame_order_and_mark(tmp_path: Path) -> None:
    rng = np.random.default_rng(3)
    files = scans(tmp_path, 3, rng, height=0.12, shuffled=True)
    found = compare(files)
    assert [moved.cell for moved in found.moved] == [(2, 1)]
    moved = found.moved[0]
    assert np.linalg.norm(moved.shift - [0.0, 0.0, 0.12]) < moved.u95 < 0.06
    assert moved.p < 0.01
    assert moved.turn_deg is not None
    assert abs(moved.turn_deg) < 0.6
    assert found.pooled is not None
    assert found.pooled.result.sites[1].site == "2"


def test_a_turned_body_is_named_and_its_turn_given(tmp_path: Path) -> None:
    rng = np.random.default_rng(4)
    poses = arch(4, rng)
    turned = poses.copy()
    turned[2] = poses[2] @ rigid.exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, np.radians(12.0)]))
    files = [write(tmp_path / n, document(p, rng, n)) for n, p in (("a", poses), ("b", turned))]
    found = compare(files)
    assert [moved.cell for moved in found.moved] == [(1, 2)]
    assert found.moved[0].turn_deg == pytest.approx(12.0, abs=1.0)
    assert None not in found.pairs[0].distances
    assert found.pooled is None
    assert "--rescan 3" in found.why_not_pooled


def test_a_turn_to_another_equal_mark_is_no_turn_and_no_index_means_no_turn(tmp_path: Path) -> None:
    rng = np.random.default_rng(5)
    assert compare(scans(tmp_path / "marks", 2, rng, shuffled=True)).moved == ()
    poses = arch(4, rng)
    spun = np.array(
        [pose @ rigid.exp(np.array([0, 0, 0, 0, 0, a])) for pose, a in zip(poses, (0, 1, 2, 3), strict=True)]
    )
    files = [write(tmp_path / n, document(p, rng, n, index_order=0)) for n, p in (("a", poses), ("b", spun))]
    found = compare(files)
    assert found.moved == ()
    assert found.repeats.within["index"] is None
    assert found.pooled is not None
    assert found.pooled.result.sites[0].u95.index_deg is None


def test_with_two_common_sites_none_is_named_and_the_distance_shows_it(tmp_path: Path) -> None:
    rng = np.random.default_rng(6)
    poses = arch(2, rng)
    longer = poses.copy()
    longer[1, :3, 3] += [0.3, 0.0, 0.0]
    files = [write(tmp_path / n, document(p, rng, n)) for n, p in (("a", poses), ("b", longer))]
    found = compare(files)
    assert found.moved == ()
    assert found.tried == 0
    platform = found.repeats.within["platform"]
    assert platform is not None, "height and sideways are taken together where two scans cannot tell them apart"
    first, second = found.pairs[0].distances
    assert first is not None
    assert second is not None
    assert second - first == pytest.approx(0.3, abs=5 * 2 * SD_MM)
    assert "cannot be named" in found.notes[0]


def test_repeatability_is_that_of_one_scan(tmp_path: Path) -> None:
    rng = np.random.default_rng(7)
    found = compare(scans(tmp_path, 20, rng)).repeats.within
    truth = {
        "platform": SD_MM * 3**0.5, "side": SD_MM, "height": SD_MM, "axis": TILT * 2**0.5, "index": TURN,
        "distance": SD_MM * 2**0.5,
    }  # fmt: skip
    for key, expected in truth.items():
        spread = found[key]
        assert spread is not None
        assert abs(spread.sd / expected - 1.0) < 4.0 / np.sqrt(2.0 * spread.freedom), key
        assert spread.low < spread.sd < spread.high
    height, side = found["height"], found["side"]
    assert height is not None
    assert side is not None
    assert 38 < side.freedom < 4 * 2 * 19
    assert height.freedom < 4 * 19, "laying the scans on each other costs freedom"


def test_a_shift_of_whole_scans_is_no_spread(tmp_path: Path) -> None:
    """Without errors nothing is left after laying the scans on each other."""
    rng = np.random.default_rng(8)
    poses = arch(4, rng)
    files = [write(tmp_path / n, document(poses, rng, n, noise=None, shuffled=n != "a")) for n in "abc"]
    found = compare(files)
    assert np.abs(found.residual).max() < 1e-7
    platform = found.repeats.within["platform"]
    assert platform is None or platform.sd < 1e-7


@pytest.mark.parametrize(
    ("files", "error", "words"),
    [
        (["a"], UsageError, "two results"),
        (["a", "a"], UsageError, "same result"),
        (["a", "copy"], UsageError, "same result"),
        (["a", "again"], UsageError, "of the same scan"),
        (["a", "mirror"], ResultError, "mirror"),
        (["a", "other"], ResultError, "stand alike"),
    ],
)
def test_what_cannot_be_compared_is_refused(
    files: list[str], error: type[Exception], words: str, tmp_path: Path
) -> None:
    rng = np.random.default_rng(9)
    poses = arch(5, rng)
    wider = poses.copy()
    wider[:, :3, 3] *= 1.4
    values = document(poses, rng, "a")
    write(tmp_path / "a", values)
    write(tmp_path / "copy", values)
    write(tmp_path / "again", values | {"work": "arch"})
    flip = np.diag([-1.0, 1.0, 1.0, 1.0])
    write(tmp_path / "mirror", document(flip @ poses @ np.diag([1.0, -1.0, 1.0, 1.0]), rng, "mirror"))
    write(tmp_path / "other", document(wider, rng, "other"))
    with pytest.raises(error, match=words):
        compare([tmp_path / name for name in files])


def test_a_rescan_replaces_the_earlier_pose(tmp_path: Path) -> None:
    rng = np.random.default_rng(10)
    poses = arch(4, rng)
    files = [
        write(tmp_path / "a", document(unseated(poses, 2, 0.3), rng, "a")),
        write(tmp_path / "b", document(poses, rng, "b", which=[1, 2, 3])),
    ]
    found = compare(files, rescanned=["3"])
    assert found.pooled is not None
    assert [site.site for site in found.pooled.result.sites] == ["1", "2", "3", "4"]
    first = read_result(files[0])
    expected = first.site("2").scan_from_connection @ rigid.inverse(poses[1]) @ poses[2]
    off = rigid.log(rigid.inverse(expected) @ found.pooled.result.sites[2].scan_from_connection)
    assert np.linalg.norm(off[:3]) < 0.06
    own = found.pooled.cross["2", "3"]
    assert np.abs(own).max() > 0.0, "a site joined over the others is not independent of them"
    with pytest.raises(UsageError, match="--rescan 1"):
        compare(files, rescanned=["1"])
    with pytest.raises(UsageError, match="--rescan 9"):
        compare(files, rescanned=["9"])


def test_bodies_scanned_in_turn_are_joined(tmp_path: Path) -> None:
    rng = np.random.default_rng(11)
    poses = arch(5, rng)
    files = [
        write(tmp_path / "a", document(poses, rng, "a", which=[0, 1, 2])),
        write(tmp_path / "b", document(poses, rng, "b", which=[1, 2, 3, 4])),
    ]
    found = compare(files)
    assert found.pooled is not None
    sites = found.pooled.result.sites
    assert len(sites) == 5
    distance = np.linalg.norm(sites[0].scan_from_connection[:3, 3] - sites[4].scan_from_connection[:3, 3])
    pair = next(p for p in found.pooled.result.pairs if set(p.sites) == {"1", "5"})
    assert abs(distance - np.linalg.norm(poses[0, :3, 3] - poses[4, :3, 3])) < 2e-3 * pair.u95_um


def test_groups_tell_scanners_apart(tmp_path: Path) -> None:
    rng = np.random.default_rng(12)
    poses = arch(3, rng)
    larger = poses.copy()
    larger[:, :3, 3] *= 1.002
    files = [
        write(tmp_path / f"{n}{k}", document(p, rng, f"{n}{k}"))
        for n, p in (("a", poses), ("b", larger))
        for k in range(5)
    ]
    found = compare(files, groups={"one": range(5), "two": range(5, 10)})
    overall, within = found.repeats.overall["distance"], found.repeats.within["distance"]
    assert overall is not None
    assert within is not None
    assert overall.sd > 3 * within.sd
    ends = next(one for one in found.contrasts if one.implants == (0, 2))
    assert ends.difference == pytest.approx(0.002 * 44.0, abs=ends.u95)
    with pytest.raises(UsageError, match="in no group"):
        compare(files, groups={"one": range(5)})
