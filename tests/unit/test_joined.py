"""Scans that show some sites each, weighed into one: closed forms, statistics, refusals. The teeth are stood in for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stylobate.core import rigid
from stylobate.core.errors import JoinError, ResultError, UsageError
from stylobate.core.result import BudgetRow, Finding, Hidden, NotShown, PartsInfo, ScanInfo
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.joining import Laid, Motion
from stylobate.joining.cells import cells_of
from stylobate.joining.fine import Fit
from stylobate.record import Record, RecordSite
from stylobate.several.joined import mouth as mouths
from stylobate.several.joined.model import Joined
from stylobate.several.joined.mouth import Mouth, mouth_of
from stylobate.several.joined.verb import join
from stylobate.several.joined.weigh import Weighed, differing, weighed
from tests.unit.comparing_making import arch
from tests.unit.several_making import anywhere

OWN = np.diag([4e-6, 4e-6, 9e-6, 1e-7, 1e-7, 4e-7])
ONE = np.diag([2e-4, 2e-4, 2e-4, 2e-6, 2e-6, 2e-6])
"""Of a join at any one site; half of it is the same at all."""


def join_covariance(poses: FloatArray) -> FloatArray:
    """(6n, 6n) of a join: half the same motion everywhere in scan axes, half each site's own."""
    turned = np.concatenate([np.kron(np.eye(2), pose[:3, :3].T) for pose in poses])
    return np.asarray(0.5 * turned @ ONE @ turned.T + 0.5 * np.kron(np.eye(len(poses)), ONE))


class Teeth(Laid):
    """A scan laid on the first without any surface: what it leaves to move has mean zero and `join_covariance`."""

    def left_at(self, poses: FloatArray) -> Motion:
        return Motion(np.zeros(6 * len(poses)), join_covariance(poses))


def teeth(first_from_second: FloatArray) -> Teeth:
    none = np.zeros((0, 3))
    fit = Fit(first_from_second, none, none, none[:, 0], none[:, 0], 0.01)
    return Teeth("b on a", fit, cells_of(fit), 300.0, 0.9, np.zeros((0, 4, 4)), np.zeros(3), np.zeros(3))


def record(name: str, poses: Sequence[FloatArray], order: int = 6, budget: tuple[BudgetRow, ...] = ()) -> Record:
    sites = tuple(
        RecordSite(str(k), "alder-tall", "alder", 4.2, order, pose, OWN, budget=budget)
        for k, pose in enumerate(poses, start=1)
    )
    return Record(Path(name), name, ScanInfo(f"{name}.stl", name, 9), PartsInfo("p", "1", "c"), "bridge", sites)


def scan(name: str) -> Scan:
    return Scan(Surface(np.zeros((3, 3)), np.array([[0, 1, 2]], np.int32)), np.zeros(3), f"{name}.stl", name)


class World:
    """Implants in the first scan's frame; scans of some of them, drawn or exact, and how the teeth lay them."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, seed: int, count: int = 4) -> None:
        self.rng = np.random.default_rng(seed)
        self.truth = arch(count, self.rng)
        self.frames: dict[str, FloatArray] = {}
        self.shared = self.rng.normal(size=6 * count)
        monkeypatch.setattr(mouths, "laid", lambda _first, second, *_, **__: teeth(self.frames[second.sha256]))

    def first(self, which: Sequence[int], exact: bool = False) -> Record:
        return record("a", [self.truth[i] @ self._off(OWN, exact) for i in which])

    def later(self, name: str, which: Sequence[int], exact: bool = False, marks: int = 0) -> Record:
        """A scan in a frame of its own; the teeth are off by what `join_covariance` says, half of it the first's."""
        self.frames[name] = anywhere(self.rng)
        root = np.linalg.cholesky(join_covariance(self.truth))
        drawn = np.sqrt(0.5) * (self.shared + self.rng.normal(size=len(root)))
        left = np.zeros(len(root)) if exact else root @ drawn
        poses = []
        for i in which:
            shows = self.truth[i] @ rigid.exp(-left[6 * i : 6 * i + 6]) @ self._off(OWN, exact)
            turned = shows @ rigid.turn_z(marks * np.pi / 3)
            poses.append(rigid.inverse(self.frames[name]) @ turned)
        return record(name, poses)

    def _off(self, covariance: FloatArray, exact: bool) -> FloatArray:
        return np.eye(4) if exact else rigid.exp(np.linalg.cholesky(covariance) @ self.rng.normal(size=6))

    def errors(self, known: Weighed) -> FloatArray:
        """(6n,) ξ of what was weighed, from the truth; of equal index marks the nearest."""
        turns = [rigid.turn_z(k * np.pi / 3) for k in range(6)]
        marks = [true @ turn for true in self.truth for turn in turns]
        return np.concatenate(
            [min((rigid.log(rigid.inverse(pose) @ mark) for mark in marks), key=np.linalg.norm) for pose in known.poses]
        )


def joined(records: Sequence[Record], **options: object) -> Joined:
    return join(records, [scan(one.scan.sha256) for one in records], limit_um=1e6, **options)  # type: ignore[arg-type]


def seen(records: Sequence[Record]) -> Mouth:
    return mouth_of(records, [scan(one.scan.sha256) for one in records])


def test_bodies_in_turn_are_all_in_the_result_where_they_are(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 1)
    records = [world.first([0, 2], exact=True), world.later("b", [1, 3], exact=True)]
    assert np.abs(world.errors(weighed(seen(records), frozenset()))).max() < 1e-9
    found = joined(records)
    assert len(found.result.sites) == 4
    assert sorted(seen.scan for site in found.result.sites for seen in found.seen[site.site]) == [0, 0, 1, 1]


def test_what_any_of_the_scans_cannot_show_is_said_once(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 1)
    seating, bend, other = (
        NotShown(*words) for words in (("seating", "torque"), ("a bend", "1.2°"), ("a bend", "2.0°"))
    )
    first = replace(world.first([0, 2], exact=True), not_shown=(seating, bend))
    later = replace(world.later("b", [1, 3], exact=True), not_shown=(seating, other))
    assert joined([first, later]).result.not_shown == (seating, bend, other)


def test_a_joined_site_says_what_bend_its_scans_would_not_show(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of a body that stood in two scans, that of the scan that shows it better; none where a bend was found."""
    world = World(monkeypatch, 1)
    first, later = world.first([0, 1, 2], exact=True), world.later("b", [1, 2, 3], exact=True)
    much, little = Hidden("bent body", np.inf, np.inf, np.inf), Hidden("bent body", 1.2, 40.0, 0.5)
    bent = Finding("bent body", "Take another.", size_deg=2.0)

    def saying(one: Record, *hidden: Hidden, found: int = -1) -> Record:
        return replace(one, sites=tuple(
            replace(site, hidden=None if k == found else what, findings=(bent,) if k == found else ())
            for k, (site, what) in enumerate(zip(one.sites, hidden, strict=True))
        ))  # fmt: skip

    found = joined([saying(first, much, much, little), saying(later, little, much, much, found=1)])
    stated = {found.seen[site.site][0].site + "ab"[found.seen[site.site][0].scan]: site.hidden
              for site in found.result.sites}  # fmt: skip
    assert stated == {"1a": much, "2a": little, "3a": None, "3b": much}


def test_a_site_that_comes_over_is_as_sure_as_its_scan_and_the_join_together(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 2)
    found = joined([world.first([0, 2]), world.later("b", [1, 3])])
    whole = join_covariance(world.truth)
    names = {seen[0].site + "ab"[seen[0].scan]: name for name, seen in found.seen.items()}
    by_name = {site.site: site for site in found.result.sites}
    for name, i in (("1b", 1), ("2b", 3)):
        expected = OWN + whole[6 * i : 6 * i + 6, 6 * i : 6 * i + 6]
        np.testing.assert_allclose(by_name[names[name]].covariance, expected, rtol=1e-3, atol=2e-8)
    pair = tuple(sorted((names["1b"], names["2b"]), key=int))
    block = found.cross[pair[0], pair[1]]
    assert np.linalg.norm(block - whole[6:12, 18:24]) < 1e-6 or np.linalg.norm(block.T - whole[6:12, 18:24]) < 1e-6
    np.testing.assert_allclose(by_name[names["1a"]].covariance, OWN, rtol=1e-3, atol=2e-8)


def test_a_body_in_common_takes_from_the_join_what_all_sites_share(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 3)
    apart = joined([world.first([0]), world.later("b", [1, 3])])
    bound = max(site.u95.platform_um for site in apart.result.sites)
    world = World(monkeypatch, 3)
    common = joined([world.first([0]), world.later("b", [0, 1, 3])])
    assert len(common.result.sites) == 3
    assert max(site.u95.platform_um for site in common.result.sites) < 0.95 * bound


@pytest.mark.parametrize("scans", [[[0, 1], [1, 2, 3]], [[0], [1, 2], [2, 3]], [[0, 3], [1], [2]]])
def test_what_is_stated_is_true(monkeypatch: pytest.MonkeyPatch, scans: list[list[int]]) -> None:
    """ξᵀC⁻¹ξ over all sites at once has the mean of chi-square, 24 ± 4 standard errors over 150 draws."""
    squares = []
    for seed in range(150):
        world = World(monkeypatch, 1000 + seed)
        records = [world.first(scans[0])]
        records += [world.later("bc"[k], which, marks=k) for k, which in enumerate(scans[1:])]
        known = weighed(seen(records), frozenset())
        xi = world.errors(known)
        squares.append(float(xi @ np.linalg.solve(known.covariance, xi)))
    assert abs(np.mean(squares) - 24.0) < 4.0 * np.sqrt(48.0 / 150.0)


def test_the_distances_bounds_count_what_sites_of_one_scan_share(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 5)
    found = joined([world.first([0]), world.later("b", [1, 3])])
    from_b = {name for name, seen in found.seen.items() if seen[0].scan == 1}
    within = next(pair for pair in found.result.pairs if set(pair.sites) == from_b)
    across = [pair for pair in found.result.pairs if set(pair.sites) != from_b]
    assert all(
        within.total_um is not None and within.u95_um < 0.9 * np.hypot(pair.u95_um, pair.u95_um) for pair in across
    )
    blind = np.sqrt(2.0) * 1.96e3 * np.sqrt(ONE[0, 0])
    assert within.u95_um < 0.8 * blind


def test_a_body_that_stands_otherwise_is_named_does_not_count_and_leaves_its_site_undecided(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    world = World(monkeypatch, 6)
    first, later = world.first([0, 1, 2]), world.later("b", [1, 2, 3])
    high = later.sites[0].scan_from_connection @ rigid.exp(np.array([0.0, 0, 0.15, 0, 0, 0]))
    later = replace(later, sites=(replace(later.sites[0], scan_from_connection=high), *later.sites[1:]))
    found = joined([first, later])
    [site] = [s for s in found.result.sites if any(f.cause == "scans differ" for f in s.findings)]
    assert [(seen.scan, seen.site, seen.counts) for seen in found.seen[site.site]] == [(0, "2", True), (1, "1", False)]
    assert site.verdict is not None
    assert site.verdict.verdict == "undecided"
    assert site.findings[0].size_um == pytest.approx(150.0, abs=60.0)
    np.testing.assert_allclose(site.scan_from_connection, first.sites[1].scan_from_connection, atol=2e-3)
    again = joined([first, later], rescanned=["2"])
    [site] = [s for s in again.result.sites if [seen.counts for seen in again.seen[s.site]] == [False, True]]
    assert not site.findings


def test_nothing_is_said_to_differ_where_nothing_does(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of 200 joins with three bodies in common at most 1 % may name one: more than 7 happen once in 1,000."""
    named = 0
    for seed in range(200):
        world = World(monkeypatch, 7000 + seed)
        named += bool(differing(seen([world.first([0, 1, 2]), world.later("b", [0, 1, 2, 3])]), frozenset()))
    assert named <= 7


def test_another_index_mark_is_the_same_implant(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 8)
    found = joined([world.first([0, 1], exact=True), world.later("b", [1, 2], exact=True, marks=2)])
    assert len(found.result.sites) == 3
    off = [
        min(np.linalg.norm(site.scan_from_connection[:3, 3] - t[:3, 3]) for t in world.truth)
        for site in found.result.sites
    ]
    assert max(off) < 1e-9


def test_the_first_scans_coordinates_are_kept_whatever_the_others_are(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 9)
    first, later = world.first([0, 2]), world.later("b", [1, 2])
    plain = joined([first, later])
    away = anywhere(np.random.default_rng(4))
    moved = replace(
        later, sites=tuple(replace(s, scan_from_connection=away @ s.scan_from_connection) for s in later.sites)
    )
    world.frames["b"] = world.frames["b"] @ rigid.inverse(away)
    turned = joined([first, moved])
    for one, two in zip(plain.result.sites, turned.result.sites, strict=True):
        np.testing.assert_allclose(one.scan_from_connection, two.scan_from_connection, atol=1e-9)
        np.testing.assert_allclose(one.covariance, two.covariance, atol=1e-12)


def test_the_budget_says_what_the_join_adds_and_seat_counts_it_once(monkeypatch: pytest.MonkeyPatch) -> None:
    from stylobate.several.sources import sources_of

    world = World(monkeypatch, 10)
    found = joined([world.first([0, 2]), world.later("b", [1])])
    [brought] = [s for s in found.result.sites if found.seen[s.site][0].scan == 1]
    rows = {row.source: row for row in brought.budget}
    assert rows["scan"].platform_um == pytest.approx(1e3 * np.sqrt(np.trace(OWN[:3, :3])), rel=1e-3)
    assert rows["join"].platform_um == pytest.approx(1e3 * np.sqrt(np.trace(ONE[:3, :3])), rel=1e-2)
    site = replace(record("j", [brought.scan_from_connection]).sites[0], budget=brought.budget)
    read = replace(record("j", []), sites=(site,))
    assert "join" not in [source.name for source in sources_of(read).others]


def test_what_cannot_be_joined_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 11)
    first, later = world.first([0, 2]), world.later("b", [1, 3])
    with pytest.raises(UsageError, match="two results or more"):
        joined([first])
    with pytest.raises(UsageError, match="of the same scan"):
        joined([first, replace(later, scan=first.scan)])
    with pytest.raises(ResultError, match="other parts"):
        joined([first, replace(later, parts=PartsInfo("q", "2", "other"))])
    with pytest.raises(UsageError, match="not of a scan"):
        joined([first, replace(later, scan=replace(later.scan, triangles=0))])
    with pytest.raises(ResultError, match="no site"):
        joined([first, replace(later, sites=())])
    with pytest.raises(UsageError, match=r"its scan 'b\.stl' is not among those given"):
        join([first, later], [scan("a")])
    with pytest.raises(UsageError, match=r"none of the results was measured in it"):
        join([first, later], [scan("a"), scan("b"), scan("c")])
    with pytest.raises(UsageError, match="--rescan 9"):
        joined([first, later], rescanned=["9"])
    with pytest.raises(UsageError, match="no other scan shows"):
        joined([first, later], rescanned=["1"])
    with pytest.raises(JoinError, match="above the limit of 3 µm"):
        join([first, later], [scan("a"), scan("b")], limit_um=3.0)


def test_another_implant_in_the_same_place_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 12)
    first, later = world.first([0, 1]), world.later("b", [1, 2])
    hazel = replace(later, sites=tuple(replace(site, connection="hazel") for site in later.sites))
    with pytest.raises(ResultError, match="'hazel' instead of 'alder'"):
        joined([first, hazel])
    aside = later.sites[0].scan_from_connection @ rigid.exp(np.array([2.5, 0.0, 0, 0, 0, 0]))
    near = replace(later, sites=(replace(later.sites[0], scan_from_connection=aside), later.sites[1]))
    with pytest.raises(ResultError, match="nearer than two implants can"):
        joined([first, near])


def test_bodies_that_contradict_the_teeth_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    world = World(monkeypatch, 13)
    first, later = world.first([0, 1, 2]), world.later("b", [0, 1, 2, 3])
    lifts = [0.3, -0.3, 0.3, 0.0]
    sites = tuple(
        replace(site, scan_from_connection=site.scan_from_connection @ rigid.exp(np.array([0.0, 0, lift, 0, 0, 0])))
        for site, lift in zip(later.sites, lifts, strict=True)
    )
    with pytest.raises(JoinError, match="lie otherwise than the teeth say"):
        joined([first, replace(later, sites=sites)])


def test_drift_that_a_result_counts_has_to_be_stated_again(monkeypatch: pytest.MonkeyPatch) -> None:
    from stylobate.settings import Drift, Settings

    world = World(monkeypatch, 14)
    first, later = world.first([0, 2]), world.later("b", [1])
    row = BudgetRow("drift", 20.0, 0.05, 0.05, "settings: a profile")
    first = replace(first, sites=tuple(replace(site, budget=(row,)) for site in first.sites))
    with pytest.raises(UsageError, match="give the same --profile"):
        joined([first, later])
    found = joined([first, later], settings=Settings(drift=Drift(30.0, 0.1, "a profile")))
    rows = [next(row for row in site.budget if row.source == "drift") for site in found.result.sites]
    assert all(row.platform_um is not None and row.platform_um > 0.0 for row in rows)
    assert all(pair.total_um is not None and pair.total_um > pair.u95_um for pair in found.result.pairs)
