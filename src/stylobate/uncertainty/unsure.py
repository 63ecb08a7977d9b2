"""How much less sure a pose is because its residual field is not known but estimated (method, eq. 8b–8d)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from stylobate.core.types import FloatArray, LongArray
from stylobate.uncertainty.field import Field, Patches, like_normals, merged, same_edge, same_view
from stylobate.uncertainty.likelihood import FEWER, Whole, plausible, shifts_of_views

UNCHANGED = 1e-3  # of the covariance: a motion that nothing but the prior fixes stays as it is


@dataclass(frozen=True)
class Doubt:
    """What the field's own uncertainty does to a covariance C (k, k) of parameters fitted under it: S C Sᵀ + A."""

    ratio: FloatArray
    added: FloatArray

    def on(self, covariance: FloatArray) -> FloatArray:
        """The covariance with the field not known."""
        return np.asarray(self.ratio @ covariance @ self.ratio.T + self.added)

    def and_more(self, added: FloatArray | float) -> Doubt:
        """With a further covariance (k, k) added."""
        return replace(self, added=self.added + added)


def doubt(covariance: FloatArray, gain: FloatArray, patches: Patches, field: Field) -> Doubt:
    """Of parameters with this covariance (k, k), fitted under `field`.

    gain (k, n): what a displacement of each patch does to the parameters. The weights of the fit stay, so each field
    that the residuals allow gives G K Gᵀ, and their mean is the covariance. It is taken over larger patches, and enters
    as the ratio to the same sum under `field`. What larger shifts of views, and edges shown less truly, do comes to it.
    """
    whole = Whole(patches, FEWER)
    coarse = _by(whole.group, gain)
    white = (gain / patches.count) @ gain.T
    alike = like_normals(patches)
    by_view = _by(alike, gain)
    of_views = by_view @ same_view(merged(patches, alike)) @ by_view.T
    of_edges = _at_edges(whole, coarse)
    fixed = field.view_sd**2 * of_views + field.edge_sd**2 * of_edges

    @cache
    def smooth(length: float, smoothness: float) -> FloatArray:
        return np.asarray(coarse @ whole.shape(length, smoothness) @ coarse.T)

    def carried(one: Field) -> FloatArray:
        shape = smooth(one.length, one.smoothness)
        return np.asarray(one.correlated_sd**2 * shape + one.white_sd**2 * white + fixed)

    fields, weights = plausible(whole, field)
    mean = np.average([carried(one) for one in fields], axis=0, weights=weights)
    kept = UNCHANGED * covariance
    ratio = np.linalg.cholesky(mean + kept) @ np.linalg.inv(np.linalg.cholesky(carried(field) + kept))
    more = max(field.edge_doubt**2 - field.edge_sd**2, 0.0)
    added = shifts_of_views(whole, field) * of_views + more * of_edges
    return Doubt(np.asarray(ratio, dtype=np.float64), added)


def _at_edges(whole: Whole, gain: FloatArray) -> FloatArray:
    """(k, k) that a surface off by one mm at sharp edges brings to the parameters."""
    if whole.large.edge is None:
        return np.zeros((len(gain), len(gain)))
    beside = np.flatnonzero(whole.large.edge)
    return np.asarray(gain[:, beside] @ same_edge(whole.large, beside) @ gain[:, beside].T)


def _by(group: LongArray, gain: FloatArray) -> FloatArray:
    """(k, m): what a displacement of all patches of a group (n,) does to the parameters."""
    return np.stack([np.bincount(group, weights=row) for row in gain])
