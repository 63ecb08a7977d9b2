"""Sites of two results find each other by how they stand, in any frame and any numbering."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from stylobate.core.errors import ResultError
from stylobate.core.result import Bounds
from stylobate.core.rigid import exp
from stylobate.several.comparing.union import united
from stylobate.several.lay import laid
from stylobate.several.match import best_match, matched
from tests.unit.several_making import anywhere, arch, record, upright

SQUARE = [(0, 0, 0), (10, 0, 0), (10, 10, 0), (0, 10, 0)]


def test_laying_agrees_with_scipy() -> None:
    rng = np.random.default_rng(1)
    source, target = rng.normal(size=(2, 7, 3)) * 20
    motion = laid(source, target)
    middle_s, middle_t = source.mean(axis=0), target.mean(axis=0)
    other = Rotation.align_vectors(target - middle_t, source - middle_s)[0].as_matrix()
    assert np.allclose(motion[:3, :3], other, atol=1e-12)
    assert np.allclose(motion[:3, 3], middle_t - other @ middle_s, atol=1e-12)


def test_laying_many_at_once_is_laying_each() -> None:
    rng = np.random.default_rng(2)
    source, target = rng.normal(size=(2, 5, 6, 3))
    assert np.allclose(laid(source, target), [laid(s, t) for s, t in zip(source, target, strict=True)])


@pytest.mark.parametrize("count", [2, 3, 4, 6, 10])
def test_any_numbering_any_frame(count: int) -> None:
    rng = np.random.default_rng(count)
    for _ in range(5):
        poses, motion = arch(count, rng), anywhere(rng)
        order = rng.permutation(count)
        marks = [exp(np.array([0, 0, 0, 0, 0, k * np.pi / 3])) for k in rng.integers(0, 6, count)]
        noise = [exp(rng.normal(size=6) * ([0.03] * 3 + [0.003] * 3)) for _ in poses]
        second = [motion @ poses[k] @ noise[k] @ marks[k] for k in order]
        match = matched(record(poses), record(second, "b"))
        assert match.pairs == tuple(sorted((int(k), place) for place, k in enumerate(order)))
        assert np.abs((np.linalg.inv(match.b_from_a) @ motion)[:3, :3] - np.eye(3)).max() < 0.02
        assert match.rms < 0.15


def test_sites_that_stand_alike_only_roughly_are_asked_about() -> None:
    rng = np.random.default_rng(11)
    poses = arch(2, rng)
    other = [poses[0], poses[1] @ exp(np.array([0.7, 0.6, 0.0, 0.0, 0.0, 0.0]))]
    (asked,) = matched(record(poses), record(other, "b")).doubts("a", "b")
    assert asked.startswith("Are a and b of the same implants?")
    assert united([record(poses), record(other, "b")]).doubts[0].startswith("Are ")
    lifted = [*poses[:1], poses[1] @ exp(np.array([0.0, 0.0, 0.3, 0.0, 0.0, 0.0]))]
    assert matched(record(poses), record(lifted, "b")).doubts("a", "b") == ()


def test_sites_that_only_one_has_are_left_over() -> None:
    rng = np.random.default_rng(7)
    poses = arch(6, rng)
    match = matched(record(poses[:5]), record([anywhere(rng) @ poses[k] for k in (0,)] + poses[1:], "b"))
    assert match.pairs == ((1, 1), (2, 2), (3, 3), (4, 4))


def test_an_unseated_and_a_turned_body_still_match() -> None:
    rng = np.random.default_rng(3)
    poses = arch(4, rng)
    second = [anywhere(rng)] * 4
    second = [second[0] @ p for p in poses]
    second[1] = second[1] @ exp(np.array([0, 0, 0.5, 0, 0, 0.5]))
    assert matched(record(poses), record(second, "b")).pairs == tuple((k, k) for k in range(4))


def test_what_looks_alike_every_way_is_matched_by_name_and_said_to_be_ambiguous() -> None:
    names = ["4", "1", "2", "3"]
    match = best_match(
        record(upright(SQUARE), index_order=0).sites, record(upright(SQUARE), names=names, index_order=0).sites
    )
    assert match is not None
    assert match.ambiguous
    assert match.pairs == ((0, 1), (1, 2), (2, 3), (3, 0))


def test_index_marks_tell_two_like_sites_apart() -> None:
    poses = upright([(0, 0, 0), (9, 0, 0)])
    poses[1] = poses[1] @ exp(np.array([0, 0, 0, 0, 0, 0.4]))
    match = matched(record(poses), record(poses[::-1], "b"))
    assert match.pairs == ((0, 1), (1, 0))


def test_other_implants_are_refused() -> None:
    rng = np.random.default_rng(5)
    a, b = record(arch(4, rng)), record(arch(4, rng)[::2], "b", names=["1", "2"])
    with pytest.raises(ResultError, match=r"none of 4 and 2 sites stand alike .* 70\.0 mm apart"):
        matched(a, record(upright([(0, 0, 0), (70, 0, 0)]), "b"))
    with pytest.raises(ResultError, match=r"alder.*hazel"):
        matched(b, record([s.scan_from_connection for s in b.sites], "c", connection="hazel"))
    with pytest.raises(ResultError, match="none of 4 and 1"):
        matched(a, record(upright([(0, 0, 0)]), "b"))


def test_a_mirror_image_is_refused() -> None:
    rng = np.random.default_rng(6)
    mirror = np.diag([-1.0, 1, 1, 1])
    poses = arch(4, rng)
    with pytest.raises(ResultError, match="mirror"):
        matched(record(poses), record([mirror @ p @ np.diag([1.0, -1, 1, 1]) for p in poses], "b"))


def test_turns_that_nobody_knows_do_not_undo_a_match() -> None:
    """Two plain seats come to rest at any turn: swapped, their axes stand off, but the turns may suit by chance."""
    rng = np.random.default_rng(0)
    for _ in range(40):
        poses = [placed @ exp(np.array([0, 0, 0, *rng.normal(0, 0.02, 2), 0])) for placed in upright(SQUARE[:2])]
        made = record([placed @ exp(np.array([0, 0, 0, 0, 0, rng.uniform(-3, 3)])) for placed in poses], index_order=3)
        plain = replace(made, sites=tuple(replace(site, u95=Bounds(1.0, 0.1, 180.0)) for site in made.sites))
        assert matched(plain, record(poses, "b", index_order=3)).pairs == ((0, 0), (1, 1))
