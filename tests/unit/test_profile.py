"""A scanner's profile: what was put into simulated repeats comes out, with intervals that hold."""

from __future__ import annotations

import dataclasses
import json
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from click import UsageError as ClickUsageError

from stylobate.app.commands.measure import chosen_settings
from stylobate.core.errors import ResultError, UsageError
from stylobate.core.result import ScanInfo
from stylobate.core.rigid import exp, pose, rotation_exp
from stylobate.core.types import FloatArray
from stylobate.measuring.verb import _farthest, _legs, _pairs
from stylobate.record import Record
from stylobate.report.profile import document
from stylobate.settings import DRIFT_MM, Drift
from stylobate.several import profile, read_profile, seat
from stylobate.several.comparing.errors import prior_of
from stylobate.several.draws import drawn
from stylobate.several.drifting import Profile, drift_of
from stylobate.several.drifting.model import stretch_of
from stylobate.several.sources import sources_of, walk_covariance
from stylobate.uncertainty.budget import _drift, drift_over
from tests.doors.handmade import measurement
from tests.unit.several_making import anywhere, arch, record

BENT = [
    pose(rotation_exp(np.array([0.3 * lean, 0.0, 0.5])), np.array(at, dtype=np.float64))
    for at, lean in (((0, 0, 0), -1), ((50, 0, 0), 1), ((50, 50, 0), -1))
]
SHIFT, TURN, SCALE = 0.03, np.radians(0.08), 400e-6
SITE = np.diag([2e-5] * 3 + [1e-7] * 3)
BETTER = SITE / 100


def wander(
    true: list[FloatArray], rng: np.random.Generator, shift: float = SHIFT, turn: float = TURN, scale: float = SCALE
) -> list[FloatArray]:
    """One scan of these connections: noise, walk and scale, in a frame of its own."""
    n = len(true)
    walk = walk_covariance(true, shift**2 / DRIFT_MM, turn**2 / DRIFT_MM)
    noisy = drawn(np.array(true), np.asarray(np.kron(np.eye(n), SITE) + walk), rng.standard_normal((1, 6 * n)))[0]
    motion, stretch = anywhere(rng), scale * stretch_of(np.array(true)).reshape(n, 6)
    return [motion @ pose @ exp(xi) for pose, xi in zip(noisy, stretch, strict=True)]


def scanned(true: list[FloatArray], rng: np.random.Generator, count: int, **drift: float) -> list[Record]:
    found = [record(wander(true, rng, **drift), f"s{k}", covariance=SITE) for k in range(count)]
    return [dataclasses.replace(one, scan=ScanInfo("s.stl", one.name, 1)) for one in found]


def reference(true: list[FloatArray], rng: np.random.Generator) -> Record:
    n = len(true)
    poses = drawn(np.array(true), np.asarray(np.kron(np.eye(n), BETTER)), rng.standard_normal((1, 6 * n)))[0]
    return record(list(poses), "reference", covariance=BETTER)


def test_intervals_hold_the_truth_at_their_rate() -> None:
    """Of 24 profiles each interval may miss 4: a binomial with 5 % misses more in 0.6 % of such tests."""
    missed = np.zeros(3)
    for seed in range(24):
        rng = np.random.default_rng(seed)
        true = arch(5, rng)
        found = profile(scanned(true, rng, 4), "demo", reference=reference(true, rng))
        assert found.scale_ppm is not None
        for k, (one, truth) in enumerate(
            ((found.shift_um, 1e3 * SHIFT), (found.turn_deg, np.degrees(TURN)), (found.scale_ppm, 1e6 * SCALE))
        ):
            missed[k] += not one.low <= truth <= one.high
    assert missed.max() <= 4, missed


def test_more_scans_tell_more_and_precision_needs_no_reference() -> None:
    rng = np.random.default_rng(100)
    true = arch(6, rng)
    scans = scanned(true, rng, 24)
    few, many = profile(scans[:4], "demo"), profile(scans, "demo")
    assert many.scale_ppm is None
    assert many.shift_um.u < few.shift_um.u / 1.5
    assert many.shift_um.low < 1e3 * SHIFT < many.shift_um.high
    assert many.turn_deg.low < np.degrees(TURN) < many.turn_deg.high


def test_where_nothing_drifts_none_is_claimed() -> None:
    rng = np.random.default_rng(101)
    true = arch(6, rng)
    found = profile(scanned(true, rng, 8, shift=0.0, turn=0.0, scale=0.0), "demo", reference=reference(true, rng))
    assert found.scale_ppm is not None
    assert (found.shift_um.low, found.turn_deg.low) == (0.0, 0.0)
    assert found.shift_um.high < 6.0
    assert found.scale_ppm.low < 0.0 < found.scale_ppm.high


def test_turned_bodies_and_other_numbering_change_nothing() -> None:
    rng = np.random.default_rng(102)
    scans = scanned(arch(5, rng), rng, 4)
    plain = profile(scans, "demo")
    turned = [scans[0]]
    for scan in scans[1:]:
        order = rng.permutation(5)
        sites = []
        for place, k in enumerate(order):
            turn = np.array([0, 0, 0, 0, 0, np.pi / 3 * int(rng.integers(6))])
            pose = scan.sites[k].scan_from_connection @ exp(turn)
            sites.append(dataclasses.replace(scan.sites[k], site=str(place), scan_from_connection=pose))
        turned.append(dataclasses.replace(scan, sites=tuple(sites)))
    again = profile(turned, "demo")
    assert again.shift_um.value == pytest.approx(plain.shift_um.value, rel=1e-6)
    assert again.turn_deg.value == pytest.approx(plain.turn_deg.value, rel=1e-6)


@pytest.fixture(scope="module")
def made() -> Profile:
    rng = np.random.default_rng(103)
    true = arch(5, rng)
    return profile(scanned(true, rng, 4), "demo", unit="7", reference=reference(true, rng))


def test_the_file_says_the_same(made: Profile, tmp_path: Path) -> None:
    (tmp_path / "profile.json").write_text(json.dumps(document(made)))
    assert read_profile(tmp_path) == made
    assert read_profile(tmp_path / "profile.json", "demo 7") == made
    with pytest.raises(UsageError, match="not of 'other'"):
        read_profile(tmp_path, "other")
    chosen = chosen_settings(None, tmp_path, "demo")
    assert chosen.drift == drift_of(made)
    with pytest.raises(UsageError, match="not of 'other'"):
        chosen_settings(None, tmp_path, "other")
    with pytest.raises(ClickUsageError, match="--profile"):
        chosen_settings(None, None, "demo")


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("format", "other", "stylobate-profile"),
        ("version", 2, "newer"),
        ("shift_um", None, "shift_um"),
        ("scanner", "", "scanner"),
    ],
)
def test_files_that_are_none(key: str, value: Any, words: str, made: Profile, tmp_path: Path) -> None:
    (tmp_path / "profile.json").write_text(json.dumps({**document(made), key: value}))
    with pytest.raises(ResultError, match=words):
        read_profile(tmp_path)
    with pytest.raises(ResultError, match="holds no"):
        read_profile(tmp_path.parent / "..")


def rows(drift: Drift, poses: list[FloatArray]) -> Record:
    """A result of these connections as `measure` writes its rows of drift."""
    made = record(poses)
    legs = _legs(poses)
    sites = tuple(
        dataclasses.replace(site, budget=(_drift(drift, _farthest(own)).row(True),))
        for site, own in zip(made.sites, legs, strict=True)
    )
    return dataclasses.replace(made, sites=sites)


def test_the_drift_of_a_profile_is_the_same_by_the_budget(made: Profile) -> None:
    """measure --profile writes a row a site; seat makes a walk of it: without scale nothing is lost."""
    plain = dataclasses.replace(made, scale_ppm=None)
    poses = arch(4, np.random.default_rng(104))
    by_budget = sources_of(rows(drift_of(plain), poses)).others[0].covariance
    assert np.allclose(by_budget, plain.source(np.array(poses)).covariance, rtol=1e-9, atol=1e-18)


NAMED = Drift(30.0, 0.1)


def test_draws_have_the_distance_and_the_angle_that_drift_names() -> None:
    """Eq. 6: three sites 50 mm of way apart on a bent way, leaning: 2·10⁴ draws know a deviation to 0.5 %."""
    walk = sources_of(rows(NAMED, BENT)).others[0].covariance
    draws = drawn(np.array(BENT), walk, np.random.default_rng(108).standard_normal((20_000, 18)))
    for i, j, share in ((0, 1, 1.0), (1, 2, 1.0), (0, 2, np.sqrt(2.0))):
        apart = np.linalg.norm(draws[:, i, :3, 3] - draws[:, j, :3, 3], axis=1)
        assert np.std(apart) == pytest.approx(30e-3 * share, rel=0.02)
        cosine = np.einsum("ka,ka->k", draws[:, i, :3, 2], draws[:, j, :3, 2])
        if i + j != 2:  # the outer two are parallel: their angle is a length, not a component
            assert np.std(np.degrees(np.arccos(cosine))) == pytest.approx(0.1, rel=0.02)


def test_every_user_of_drift_takes_it_so() -> None:
    """The pairs of `measure` (verdict together), the prior of `compare`."""
    legs = _legs(BENT)
    sites = []
    for site, at, own in zip(measurement(3)[0].sites, BENT, legs, strict=True):
        farthest = _farthest(own)
        assert farthest is not None
        still, whole = np.zeros((6, 6)), drift_over(NAMED, farthest)
        sites.append(dataclasses.replace(site, scan_from_connection=at, covariance=still, covariance_total=whole))
    with ThreadPoolExecutor(1) as pool:
        pairs = _pairs(sites, legs, NAMED, pool)
    for pair, share in zip(pairs, (1.0, np.sqrt(2.0), 1.0), strict=True):
        assert pair.total_um == pytest.approx(1.96 * 30.0 * share, rel=0.03)
        if share == 1.0:
            assert pair.angle_total_deg == pytest.approx(1.96 * 0.1, rel=0.03)
    held = prior_of([rows(NAMED, BENT)], None)
    assert held.median[1:3] == pytest.approx([30e-3, np.radians(0.1)])


def test_scale_stretches_the_whole_arch(made: Profile) -> None:
    poses = np.array(arch(5, np.random.default_rng(105)))
    still = dataclasses.replace(made.shift_um, value=0.0)
    only = dataclasses.replace(made, shift_um=still, turn_deg=still)
    covariance = only.source(poses).covariance
    apart = np.linalg.norm(poses[4, :3, 3] - poses[0, :3, 3])
    assert np.sqrt(np.trace(covariance[24:27, 24:27])) == pytest.approx(only.scale * apart)


def test_seat_counts_the_profile(made: Profile) -> None:
    frame = record(arch(5, np.random.default_rng(106)), covariance=BETTER)
    without, counted = seat(frame, draws=500), seat(frame, draws=500, profile=made)
    assert counted.counted == ("scan", "drift")
    assert counted.worst.side_um > 2 * without.worst.side_um
    assert any("profile of demo 7" in note for note in counted.notes)
    with pytest.raises(UsageError, match="profile"):
        seat(frame, frame, profile=made)


def test_refusals() -> None:
    rng = np.random.default_rng(107)
    scans = scanned(arch(4, rng), rng, 3)
    with pytest.raises(UsageError, match="3 repeat scans"):
        profile(scans[:2], "demo")
    with pytest.raises(UsageError, match="same scan file"):
        profile([*scans, scans[0]], "demo")
    with pytest.raises(UsageError, match="must have a name"):
        profile(scans, " ")
    with pytest.raises(UsageError, match="only 2 sites"):
        profile([*scans[:2], dataclasses.replace(scans[2], sites=scans[2].sites[:2])], "demo")
