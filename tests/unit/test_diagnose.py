"""Causes on evidence made by hand: what is put in is found, and what is not is not."""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
import pytest

from stylobate.core.result import Hidden
from stylobate.core.types import FloatArray
from stylobate.diagnose import signs
from stylobate.diagnose.bumps import strongest
from stylobate.diagnose.evidence import weighed
from stylobate.diagnose.forms import averaged
from stylobate.diagnose.hidden import hidden_bend
from stylobate.diagnose.material import judged, reaching
from stylobate.diagnose.shapes import leaning, step_across, uneven_layer
from stylobate.diagnose.significance import Z95, any_of, chi2_tail, corrected, upper_tail
from stylobate.diagnose.signs import split
from stylobate.diagnose.state import State
from stylobate.fit.edges import SHAPES
from stylobate.measuring.notshown import not_shown
from stylobate.uncertainty.field import groups_of
from stylobate.uncertainty.pose import OFFSET, PROFILE
from tests.doors.handmade import measurement
from tests.unit.evidence_making import FIELD, HEIGHT, RADIUS, drawn, evidence, post

CLEAN = drawn(40, 11)


def test_amplitudes_are_unbiased_and_as_sure_as_they_say() -> None:
    """A lean of 0.5° on 40 draws: mean within 3.3 standard errors, χ² of all within its 99.9 % band (80 of freedom)."""
    points, normals = post()
    true = np.radians([0.5, -0.2])
    shape = leaning(points, normals, 0.5, HEIGHT, False)
    found, spreads = [], []
    for noise in CLEAN:
        one = evidence(noise + shape @ true)
        size, spread = one.amplitudes(leaning(one.patches.centre, one.normal, 0.5, HEIGHT, False))
        found.append(size - true)
        spreads.append(spread)
    off, spread = np.array(found), np.mean(spreads, axis=0)
    assert np.all(np.abs(off.mean(axis=0)) < 3.3 * np.sqrt(np.diag(spread) / len(off)))
    chi2 = float(np.sum(np.linalg.solve(spread, off.T).T * off))
    assert 41 < chi2 < 129


def test_freeing_a_shape_is_fitting_it_with_the_pose() -> None:
    """By hand: least squares with the shape as one more column."""
    points, normals = post()
    one = evidence(CLEAN[0] + 0.05 * step_across(points, normals, 0.3)[:, 0])
    shapes = step_across(one.patches.centre, one.normal, 0.3)
    freed = one.freeing(shapes)
    from stylobate.uncertainty.pose import PRIOR_SD

    wide = np.hstack([one.patches.matrix, shapes])
    information = wide.T @ one.weight @ wide
    information[: len(PRIOR_SD), : len(PRIOR_SD)] += np.diag(1 / PRIOR_SD**2)
    covariance = np.linalg.inv(information)
    assert np.allclose(freed.covariance, covariance[: len(PRIOR_SD), : len(PRIOR_SD)], rtol=1e-6, atol=1e-16)
    assert np.allclose(
        freed.step, (covariance @ wide.T @ one.weight @ one.patches.residual)[: len(PRIOR_SD)], atol=1e-10
    )


def test_leaving_patches_out_is_not_having_them() -> None:
    one = evidence(CLEAN[1])
    gone = np.arange(0, 60, dtype=np.int64)
    kept = np.delete(np.arange(len(one.patches.count)), gone)
    weight = np.linalg.inv(one.field.covariance(one.patches)[np.ix_(kept, kept)])
    matrix = one.patches.matrix[kept]
    from stylobate.uncertainty.pose import PRIOR_SD

    covariance = np.linalg.inv(matrix.T @ weight @ matrix + np.diag(1 / PRIOR_SD**2))
    step = covariance @ matrix.T @ weight @ one.patches.residual[kept]
    assert np.allclose(one.without(gone).step, step, atol=1e-9)


@pytest.mark.parametrize(("width", "depth"), [(0.6, 0.08), (1.2, 0.09)])
def test_a_dent_is_found_where_it_is(width: float, depth: float) -> None:
    points, _ = post()
    centre = points[700]
    cap = np.clip(1 - 4 * np.sum((points - centre) ** 2, axis=1) / width**2, 0, None)
    for noise in CLEAN[:5]:
        one = evidence(noise - depth * cap)
        bump = strongest(one, np.ones(len(one.patches.count), np.bool_))
        assert bump is not None
        assert corrected(bump.p) < 0.01
        assert bump.z < 0
        assert np.linalg.norm(bump.centre - centre) < width


def test_wear_along_an_edge_is_found_where_no_round_dent_is() -> None:
    """A strip 0.25 mm wide and 3 mm long, up to 120 µm deep on either face of the rim."""
    points, normals = post()
    to_edge = np.where(normals[:, 2] > 0.5, RADIUS - np.hypot(points[:, 0], points[:, 1]), HEIGHT - points[:, 2])
    away = np.linalg.norm(points - np.array([0.0, RADIUS, HEIGHT]), axis=1)
    worn = 0.12 * np.clip(1.0 - to_edge / 0.25, 0.0, None) * np.clip(1.0 - (away / 1.5) ** 2, 0.0, None)
    found = {"edge": 0, "none": 0}
    for noise in CLEAN[:8]:
        plain = evidence(noise - worn)
        edged = weighed(replace(plain.points, to_edge=to_edge, edge_angle=np.full(len(points), np.pi / 2)), FIELD)
        for name, one in (("edge", edged), ("none", plain)):
            bump = strongest(one, np.ones(len(one.patches.count), np.bool_))
            assert bump is not None
            if corrected(bump.p) < 0.01:
                assert bump.z < 0
                assert np.linalg.norm(bump.centre - np.array([0.0, RADIUS, HEIGHT])) < 1.5
                found[name] += 1
    assert found["edge"] >= 7
    assert found["none"] <= 2


def test_a_dent_of_one_far_patch_takes_in_what_leans_its_way() -> None:
    """Of a small chip one patch lies far off, which is left out at once."""
    points, _ = post()
    centre = points[700]
    cap = np.clip(1 - 4 * np.sum((points - centre) ** 2, axis=1) / 0.9**2, 0, None)
    one = evidence(CLEAN[1] - 0.12 * cap)
    far = one.patches.residual == one.patches.residual.min()
    wider = reaching(one.without(np.nonzero(far)[0]), far)
    found = judged(one, wider)
    assert wider.sum() > far.sum()
    assert corrected(found[0].p) < 0.01
    assert found[0].depth == pytest.approx(-0.12, abs=2.0 * Z95 * found[0].sd)


def test_a_lump_that_fell_apart_is_one() -> None:
    points, _ = post()
    centre = points[700]
    cap = np.clip(1 - 4 * np.sum((points - centre) ** 2, axis=1) / 1.6**2, 0, None)
    one = evidence(CLEAN[3] + 0.2 * cap)
    away = np.abs(one.patches.centre[:, 2] - centre[2])
    out = (one.points.mean(cap) > 0.1) & (away > 0.25)
    found = judged(one, out)
    assert len(found) == 1
    assert len(found[0].members) == out.sum()


def test_a_slip_and_its_neighbour_are_no_defect() -> None:
    one = evidence(CLEAN[2])
    two = np.argsort(np.linalg.norm(one.patches.centre - one.patches.centre[60], axis=1))[:2]
    slipped = np.zeros(len(CLEAN[2]))
    slipped[np.nonzero(one.points.group == two[0])[0][0]] = 0.5
    one = evidence(CLEAN[2] + slipped)
    out = np.zeros(len(one.patches.count), np.bool_)
    out[two] = True
    assert judged(one, out) == []


@pytest.mark.parametrize(("width", "height"), [(1.0, 0.20), (1.6, 0.12), (1.2, -0.15)])
def test_a_defect_is_as_deep_as_it_is_said_to_be(width: float, height: float) -> None:
    """Within twice its bound each time, and right on average: patches alone would take a tenth to a half off."""
    points, _ = post()
    where = np.nonzero((points[:, 1] > 0.5) & (points[:, 2] > 1.5) & (points[:, 2] < 4.5))[0]
    told = []
    for k, noise in enumerate(CLEAN[:8]):
        centre = points[where[(k + 1) * len(where) // 9]]
        cap = np.clip(1 - 4 * np.sum((points - centre) ** 2, axis=1) / width**2, 0, None)
        one = evidence(noise + height * cap)
        out = one.points.mean((cap > 0.1).astype(np.float64)) > 0.5
        found = judged(one, out)[0]
        assert abs(found.depth - height) < 2.0 * Z95 * found.sd
        told.append(found.depth)
    assert np.mean(told) == pytest.approx(height, abs=0.012)


@pytest.mark.parametrize("azimuth", [0.0, 0.37, 1.45])
def test_a_split_is_as_wide_as_it_is_said_to_be_whatever_its_plane(azimuth: float) -> None:
    points, normals = post()
    shift = np.array([0.05, -0.03, 0.06])
    told = []
    for noise in CLEAN[:6]:
        one = evidence(noise + step_across(points, normals, azimuth) @ shift)
        told.append(averaged(one, split(one)).size)
    assert np.mean([np.linalg.norm(size) for size in told]) == pytest.approx(np.linalg.norm(shift), rel=0.1)


def test_clean_evidence_has_no_sign() -> None:
    """40 draws, all causes: at 1 % a site, three or more findings have probability 0.007."""
    alarms = 0
    for noise in CLEAN:
        one = evidence(noise)
        bump = strongest(one, np.ones(len(one.patches.count), np.bool_))
        p = [sign.p for sign in signs.lean(one, 0.3, HEIGHT) + signs.split(one)]
        offset = one.step[OFFSET] / np.sqrt(one.covariance[OFFSET, OFFSET])
        assert bump is not None
        alarms += corrected(min(*p, bump.p, upper_tail(offset))) < 0.01
    assert alarms < 3


def test_one_spike_is_no_dent() -> None:
    points, _ = post()
    noise = CLEAN[2].copy()
    noise[900] += 0.3
    one = evidence(noise)
    bump = strongest(one, np.ones(len(one.patches.count), np.bool_))
    assert bump is not None
    assert bump.spike >= 0
    assert np.linalg.norm(one.patches.centre[bump.spike] - points[900]) < 0.3


def test_a_thick_layer_may_be_another_body_and_is_not_used() -> None:
    from stylobate.diagnose.layer import THICK, another_body
    from stylobate.settings import DEFAULT
    from stylobate.verdict.rules import judge

    assert another_body(0.9 * THICK) is None
    doubted = another_body(0.065)
    assert doubted is not None
    assert "130 µm larger diameter" in doubted.advice
    sure = np.diag([1e-3] * 3 + [1e-4] * 3) ** 2
    assert judge(sure, True, (), DEFAULT.limits["bridge"], (), ()).verdict == "use"
    assert judge(sure, True, (doubted,), DEFAULT.limits["bridge"], (), ()).verdict == "undecided"


def test_a_seam_is_allowed_for_but_not_named() -> None:
    from stylobate.diagnose.forms import SEAM, Form, parted

    def form(size: float, sd: float = 1e-6) -> Form:
        return Form(np.array([size, 0.0, 0.0]), sd**2 * np.eye(3), np.zeros(7), np.eye(7))

    assert parted(form(0.9 * SEAM), 1e-9) is None
    assert parted(form(1.5 * SEAM, 0.4 * SEAM), 1e-9) is None  # which may be as little as a seam
    named = parted(form(0.06), 1e-9)
    assert named is not None
    assert named.size_um == pytest.approx(60.0, abs=0.1)


def test_an_uneven_layer_costs_certainty() -> None:
    one = evidence(CLEAN[3] + 0.04)
    shapes = uneven_layer(one.patches.centre, one.normal)
    freed = one.freeing(shapes, np.full(5, 0.01))
    assert freed.step[OFFSET] == pytest.approx(0.04, abs=0.02)
    assert np.linalg.eigvalsh(freed.covariance - one.covariance).min() > -1e-12
    assert freed.covariance[2, 2] > 1.2 * one.covariance[2, 2]


@pytest.mark.parametrize(
    ("x", "freedom", "p"), [(3.841, 1, 0.05), (5.991, 2, 0.05), (7.815, 3, 0.05), (16.266, 3, 0.001)]
)
def test_tails_of_chi_square_by_the_tables(x: float, freedom: int, p: float) -> None:
    assert chi2_tail(x, freedom) == pytest.approx(p, rel=2e-3)


def test_correction_for_many_tests() -> None:
    assert any_of(0.01, 5) == pytest.approx(1 - 0.99**5)
    assert any_of(1e-20, 1000) == pytest.approx(1e-17)


def test_a_bend_as_large_as_the_scan_shows_is_found_and_half_of_it_is_not() -> None:
    """Of 40 draws at 95 % fewer than 33 are found with probability 0.001 (binomial); half the size lies 2 sd lower."""
    points, normals = post()
    clean = evidence(np.zeros(len(points)))
    said = hidden_bend(clean, 0.5, HEIGHT)
    lean = np.radians(said.size_deg) * np.array([0.6, 0.8])
    shape = leaning(points, normals, 0.5, HEIGHT, False) @ lean

    def found(share: float) -> int:
        tried = [signs.lean(evidence(noise + share * shape), 0.5, HEIGHT) for noise in CLEAN]
        return sum(corrected(min(sign.p for sign in one)) < 0.01 for one in tried)

    assert found(1.0) >= 33
    assert found(0.5) <= 20
    step = evidence(shape).step
    assert 1e3 * np.linalg.norm(step[:3]) == pytest.approx(said.platform_um, rel=0.15)
    assert np.degrees(np.linalg.norm(step[3:5])) == pytest.approx(said.axis_deg, rel=0.15)


def test_what_a_shift_puts_on_another_face_does_not_tell_its_size() -> None:
    """Points beside an edge are measured against the wrong face and show nothing of the shift."""
    points, normals = post()
    true = np.array([0.05, 0.06, 0.13])
    shift = step_across(points, normals, 0.7) @ true
    to_edge = np.where(
        normals[:, 2] > 0.5, np.abs(np.hypot(points[:, 0], points[:, 1]) - RADIUS), HEIGHT - points[:, 2]
    )
    seen = np.where(to_edge < 0.2, 0.0, shift)
    found = []
    for noise in CLEAN[:10]:
        one = evidence(noise + seen)
        one = replace(one, points=replace(one.points, to_edge=to_edge))
        form = averaged(one, split(one))
        found.append(np.linalg.norm(form.size))
    spread = np.std(found, ddof=1) / np.sqrt(len(found))
    assert abs(np.mean(found) - np.linalg.norm(true)) < 4.0 * max(spread, 0.002)


@pytest.mark.parametrize("seen", ["top", "flat"])
def test_where_no_bend_would_show_none_is_said_to(seen: str) -> None:
    """Of a top alone any lean is a tilt, and of a flat alone a lean along it is nothing: no size is small enough."""
    points, normals = post()
    kept = normals[:, 2] > 0.5 if seen == "top" else normals[:, 0] > 0.999
    whole = evidence(np.zeros(len(points))).points
    some = replace(whole, **{f.name: getattr(whole, f.name)[kept] for f in fields(whole) if f.name != "profile"})
    alone = weighed(replace(some, group=groups_of(some.feet, some.gradient)), FIELD)
    assert hidden_bend(alone, float(points[kept, 2].min()), HEIGHT).size_deg == np.inf
    assert np.isfinite(hidden_bend(evidence(np.zeros(len(points))), 0.5, HEIGHT).size_deg)


def test_what_cannot_show_at_all_is_said_so() -> None:
    site = measurement(1)[0].sites[0]
    for size, words in ((0.84, "bent above it by less than 0.8°"), (np.inf, "bent above it, however much")):
        shown = not_shown([replace(site, hidden=Hidden("bent body", size, size, size))])
        assert any(words in item.check for item in shown)
        assert "inf" not in " ".join(item.check for item in shown).replace("confirm", "")


def test_shifted_views_are_no_bend_or_split_and_a_split_is() -> None:
    """Views off by 12 µm each: more than half of such scans were said to be bent or split."""
    points, normals = post()
    cosine = normals @ normals.T
    root = np.linalg.cholesky(cosine * np.exp((cosine - 1.0) / 0.2) + 1e-9 * np.eye(len(points)))
    rng = np.random.default_rng(4)

    def strongest_sign(displacement: FloatArray) -> tuple[State, signs.Sign]:
        one = evidence(displacement)
        none = np.zeros(len(one.patches.count), np.bool_)
        state = State(one, one, none, (), none, 0.3, HEIGHT, RADIUS)
        return state, max(state.whole_surface_signs, key=lambda sign: sign.gain)

    significant = held = 0
    for noise in CLEAN[:12]:
        state, sign = strongest_sign(noise + 0.012 * root @ rng.normal(size=len(points)))
        if corrected(sign.p) < 0.01:
            significant += 1
            held += state.holds_beside_views(sign)
    assert significant >= 5
    assert held <= 1
    for noise in CLEAN[:4]:
        state, sign = strongest_sign(noise + step_across(points, normals, 0.4) @ np.array([0.03, -0.015, 0.015]))
        assert sign.cause == "split surface"
        assert state.holds_beside_views(sign)


def test_a_profile_already_fitted_changes_neither_what_is_likeliest_nor_what_is_left() -> None:
    """Of the profile at edges is known where it lies beforehand, whatever the pose came with."""
    points = evidence(drawn(1, 8)[0]).points
    rows = points.rows.copy()
    rows[:, PROFILE] = np.random.default_rng(2).uniform(0.0, 1.0, (len(rows), SHAPES)) * (points.feet[:, 2:] > 5.5)
    profile = np.linspace(-0.02, 0.01, SHAPES)
    none = replace(points, rows=rows)
    fitted = replace(none, profile=profile, residual=points.residual - rows[:, PROFILE] @ profile)
    one, two = weighed(none, FIELD), weighed(fitted, FIELD)
    assert two.step[PROFILE] + profile == pytest.approx(one.step[PROFILE], abs=1e-12)
    assert two.step[:6] == pytest.approx(one.step[:6], abs=1e-12)
    assert two.score == pytest.approx(one.score, abs=1e-9 * np.abs(one.score).max())
