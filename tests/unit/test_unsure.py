"""The field's own uncertainty in the covariance of what was fitted under it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stylobate.core.types import FloatArray
from stylobate.diagnose.evidence import Evidence
from stylobate.uncertainty import likelihood
from stylobate.uncertainty.field import EDGE_LENGTH, Field, same_edge, same_view
from stylobate.uncertainty.likelihood import FEWER, SMOOTHNESS, STEPS, Whole, estimate, plausible, shifts_of_views
from stylobate.uncertainty.unsure import doubt
from tests.unit.evidence_making import FIELD, HEIGHT, drawn, evidence, post

LONG = Field(0.004, 0.012, 2.0, 1.5)


def seen(field: Field, seed: int) -> tuple[Evidence, Field]:
    """Evidence of one draw from a field, weighed by the field that it makes likeliest."""
    displacement = drawn(1, seed, field)[0]
    first = evidence(displacement, field)
    likeliest = estimate(first.patches, estimate(first.patches))
    return evidence(displacement, likeliest), likeliest


def widened(one: Evidence) -> FloatArray:
    """Ratio (6,) of standard deviations of the pose, averaged over fields to under the likeliest."""
    wide = doubt(one.covariance, one.gain, one.patches, one.field).on(one.covariance)
    return np.asarray(np.sqrt(np.diag(wide) / np.diag(one.covariance))[:6])


def test_the_average_is_the_one_over_all_patches_and_fields() -> None:
    one, _ = seen(FIELD, 3)
    gain = one.gain[:6]
    fields, weights = plausible(Whole(one.patches, FEWER), one.field)
    some = np.argsort(-weights)[:40]
    shifted = [replace(fields[k], view_sd=one.field.view_sd, edge_sd=one.field.edge_sd) for k in some]
    whole = np.average([gain @ f.covariance(one.patches) @ gain.T for f in shifted], axis=0, weights=weights[some])
    whole += shifts_of_views(Whole(one.patches, FEWER), one.field) * gain @ same_view(one.patches) @ gain.T
    plain = gain @ one.field.covariance(one.patches) @ gain.T
    assert np.allclose(widened(one), np.sqrt(np.diag(whole) / np.diag(plain)), rtol=0.05)


def test_plausible_fields_are_about_the_likeliest_and_hold_the_true_one() -> None:
    one, likeliest = seen(FIELD, 4)
    fields, weights = plausible(Whole(one.patches, FEWER), likeliest)
    assert np.isclose(weights.sum(), 1.0)
    for name in ("correlated_sd", "length"):
        logarithm = np.log([getattr(field, name) for field in fields])
        mean = weights @ logarithm
        sd = np.sqrt(weights @ (logarithm - mean) ** 2)
        assert abs(mean - np.log(getattr(FIELD, name))) < 3.0 * sd + 0.1
        assert 0.02 < sd < 0.6
    assert all(field.white_sd == likeliest.white_sd for field in fields)


@pytest.mark.parametrize("field", [FIELD, LONG])
def test_fields_that_are_not_looked_at_have_no_odds(field: Field, monkeypatch: pytest.MonkeyPatch) -> None:
    one, likeliest = seen(field, 5)
    whole = Whole(one.patches, FEWER)
    looked_at, _ = plausible(whole, likeliest)
    monkeypatch.setattr(likelihood, "UNHEARD", np.inf)
    fields, weights = plausible(whole, likeliest)
    assert len(looked_at) < len(fields) == len(SMOOTHNESS) * len(STEPS) ** 2
    known = set(looked_at)
    assert sum(weight for one_of, weight in zip(fields, weights, strict=True) if one_of not in known) < 1e-5


def test_few_correlation_lengths_leave_the_field_less_known_than_many() -> None:
    """And what that does to the pose is a few per cent where there are many."""

    def unknown(field: Field, seed: int) -> float:
        one, likeliest = seen(field, seed)
        fields, weights = plausible(Whole(one.patches, FEWER), likeliest)
        logarithm = np.log([each.correlated_sd for each in fields])
        return float(np.sqrt(weights @ (logarithm - weights @ logarithm) ** 2))

    short, long = (np.mean([unknown(field, seed) for seed in (5, 6, 7, 8)]) for field in (FIELD, LONG))
    assert long > 1.5 * short
    assert 1.0 < np.mean([widened(seen(FIELD, seed)[0]) for seed in (5, 6, 7)]) < 1.2


def test_a_motion_that_nothing_shows_stays_as_it_is() -> None:
    one, _ = seen(FIELD, 8)
    blind = one.gain.copy()
    blind[5] = 0.0
    wide = doubt(one.covariance, blind, one.patches, one.field).on(one.covariance)
    assert np.isclose(wide[5, 5], one.covariance[5, 5], rtol=0.02)


def test_views_that_are_shifted_against_each_other_are_seen_as_such() -> None:
    """Four sides of a post displaced as a scanner that joins views badly would: more than noise alone asks for."""
    _, normals = post()
    side = np.floor((np.arctan2(normals[:, 1], normals[:, 0]) + np.pi) / (np.pi / 2.0) - 1e-9).astype(int) % 4
    plain: list[float] = []
    shifted: list[float] = []
    for seed in range(4):
        noise = drawn(1, 100 + seed)[0]
        shift = np.random.default_rng(seed).normal(0.0, 0.012, (5, 3))
        views = np.where(normals[:, 2] > 0.9, 4, side)
        for displacement, found in ((noise, plain), (noise + np.einsum("ij,ij->i", normals, shift[views]), shifted)):
            one = evidence(displacement)
            found.append(shifts_of_views(Whole(one.patches, FEWER), one.field))
    assert np.mean(shifted) > 3.0 * np.mean(plain)


def test_parameters_that_nothing_shows_take_nothing_away() -> None:
    """A body without sharp edges has empty columns for the profile at them."""
    one, _ = seen(FIELD, 9)
    plain = one.patches
    shown = plain.matrix[:, plain.matrix.any(axis=0)]
    assert shown.shape[1] < plain.matrix.shape[1]
    without, many = (replace(plain, matrix=m) for m in (shown, np.hstack([plain.matrix, np.zeros((len(shown), 20))])))
    of = [shifts_of_views(Whole(each, FEWER), one.field) for each in (without, plain, many)]
    assert of[1:] == pytest.approx([of[0]] * 2, rel=1e-9)


def test_what_edges_and_views_bring_is_known_and_not_scaled_with_the_field() -> None:
    """Where they are most of the covariance, little doubt of the field is left; over three draws."""
    widened_by = np.zeros(3)
    for seed in (3, 4, 5):
        one, _ = seen(FIELD, seed)
        gain = one.gain[:6]
        patches = replace(one.patches, edge=np.where(one.patches.centre[:, 2] > 5.0, 1.0, 0.0))
        for k, (view_sd, edge_sd) in enumerate(((0.0, 0.0), (0.01, 0.0), (0.01, 0.05))):
            field = replace(one.field, view_sd=view_sd, edge_sd=edge_sd)
            full = gain @ field.covariance(patches) @ gain.T
            ratio = doubt(full, gain, patches, field).ratio
            widened_by[k] += np.trace(np.linalg.solve(full, ratio @ full @ ratio.T)) / 6.0 - 1.0
    bare, viewed, edged = widened_by / 3.0
    assert bare > 0.02
    assert viewed < 0.5 * bare
    assert edged < 0.5 * bare


def test_edges_enter_the_covariance() -> None:
    one, _ = seen(FIELD, 3)
    edge = np.where(one.patches.centre[:, 2] > 5.0, 0.5, 0.0)
    patches, plain = replace(one.patches, edge=edge), replace(one.field, view_sd=0.0, edge_sd=0.0)
    edged = replace(plain, edge_sd=0.02).covariance(patches) - plain.covariance(patches)
    beside = edge > 0.0
    assert np.all(edged[~beside] == pytest.approx(0.0, abs=1e-15))
    near = np.sqrt(2.0 * patches.spread[beside])  # two points of one patch
    assert np.diag(edged)[beside] == pytest.approx(0.02**2 * 0.25 * np.exp(-near / EDGE_LENGTH), rel=1e-3)


def test_how_untrue_a_surface_is_at_edges_is_estimated() -> None:
    """Beside the edge of the top residuals are drawn with and without such an error, 20 µm."""
    one, _ = seen(FIELD, 5)
    below = np.clip(1.0 - (HEIGHT - one.patches.centre[:, 2]) / 0.45, 0.0, 1.0)
    inside = np.clip(1.0 - (2.0 - np.hypot(one.patches.centre[:, 0], one.patches.centre[:, 1])) / 0.45, 0.0, 1.0)
    patches = replace(one.patches, edge=np.where(one.normal[:, 2] > 0.9, inside, below))
    assert patches.edge is not None
    beside = np.flatnonzero(patches.edge)
    factor = np.linalg.cholesky(same_edge(patches, beside) + 1e-9 * np.eye(len(beside)))
    rng = np.random.default_rng(1)
    plain: list[float] = []
    untrue: list[float] = []
    for seed in range(6):
        residual = evidence(drawn(1, 200 + seed)[0]).patches.residual
        worse = residual.copy()
        worse[beside] += 0.02 * factor @ rng.standard_normal(len(beside))
        for some, found in ((residual, plain), (worse, untrue)):
            found.append(estimate(replace(patches, residual=some), one.field).edge_sd)
    assert np.all(np.array(untrue) > plain)
    assert np.mean(untrue) > 1.3 * np.mean(plain)
    assert np.mean(untrue) == pytest.approx(0.02, rel=0.3)


def test_edges_shown_less_truly_widen_what_is_stated_beyond_their_weight() -> None:
    one, _ = seen(FIELD, 3)
    gain = one.gain[:6]
    patches = replace(one.patches, edge=np.where(one.patches.centre[:, 2] > 5.0, 1.0, 0.0))
    known, doubted = replace(one.field, edge_sd=0.004), replace(one.field, edge_sd=0.004, edge_doubt=0.012)
    added = doubt(np.eye(6), gain, patches, doubted).added - doubt(np.eye(6), gain, patches, known).added
    more = replace(one.field, edge_sd=0.012).covariance(patches) - known.covariance(patches)
    assert np.diag(added) == pytest.approx(np.diag(gain @ more @ gain.T), rel=0.3)
    assert np.allclose(doubt(np.eye(6), gain, patches, replace(doubted, edge_doubt=0.003)).added,
                       doubt(np.eye(6), gain, patches, known).added)  # fmt: skip
