"""Repeatability and reproducibility of values with unknowns in between: variances by the method of moments.

ISO 5725-2 unbalanced one-way analysis, for several kinds of values at once and with frames estimated from the same
values: what the frames took up is put back in expectation (method/compare, eqs. 10–13).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.types import FloatArray, LongArray

LEVEL = 0.95


@dataclass(frozen=True)
class Spread:
    """A standard deviation, its degrees of freedom (Satterthwaite 1946) and 95 % interval; None where nothing tells."""

    sd: float
    freedom: float
    low: float
    high: float


@dataclass(frozen=True)
class Values:
    """N values y with what they are of.

    kind: (N,) which variance. quantity: (N,) which true value. group: (N,) which scanner, material or operator.
    frames: (N, p) unknowns besides the true values, linear. weight: (N,) by which these are fitted.
    """

    y: FloatArray
    kind: LongArray
    quantity: LongArray
    group: LongArray
    frames: FloatArray
    weight: FloatArray

    def kinds(self) -> int:
        """Number of kinds."""
        return int(self.kind.max()) + 1 if len(self.kind) else 0


@dataclass(frozen=True)
class Moments:
    """residual: (N, N) R with R y free of the unknowns. expected: (kinds, kinds) how each variance enters each sum."""

    residual: FloatArray
    expected: FloatArray
    squares: FloatArray


def within(values: Values) -> Moments:
    """Sums of squares about the mean of each quantity in each group."""
    return _moments(values, values.quantity * (int(values.group.max(initial=0)) + 1) + values.group)


def over_all(values: Values) -> Moments:
    """Sums of squares about the mean of each quantity."""
    return _moments(values, values.quantity)


def _moments(values: Values, means: LongArray) -> Moments:
    root = np.sqrt(values.weight)
    known = np.unique(means, return_inverse=True)[1]
    design = np.concatenate([values.frames, np.eye(int(known.max(initial=-1)) + 1)[known]], axis=1) * root[:, None]
    u, s, _ = np.linalg.svd(design, full_matrices=False)
    basis = u[:, s > 1e-9 * s.max(initial=0.0)]
    residual = (np.eye(len(values.y)) - basis @ basis.T) * root / root[:, None]
    kinds = np.eye(values.kinds())[values.kind]
    left = residual @ values.y
    return Moments(residual, kinds.T @ residual**2 @ kinds, kinds.T @ left**2)


def repeatability(values: Values, moments: Moments, mix: FloatArray, model: FloatArray) -> Spread | None:
    """sqrt(Σ mix_j σ_j²) within groups; model: (N, N) covariance of y, up to scale, for the degrees of freedom."""
    share = _share(moments, mix)
    return None if share is None else spread(_form(moments.residual, share[values.kind]), values.y, model)


def reproducibility(
    values: Values, inside: Moments, whole: Moments, mix: FloatArray, model: FloatArray
) -> tuple[Spread | None, float | None]:
    """sqrt(Σ mix_j (σ_j² + σ_Lj²)), and sqrt(Σ mix_j σ_Lj²) between the groups; None where there are not two."""
    kinds = values.kinds()
    key = (values.quantity * (int(values.group.max(initial=0)) + 1) + values.group) * kinds + values.kind
    block = np.eye(int(key.max(initial=0)) + 1)[key]
    block = block[:, block.any(axis=0)]
    of_block = values.kind[block.argmax(axis=0)]
    rows = np.eye(kinds)[values.kind]
    between = rows.T @ (whole.residual @ block) ** 2 @ np.eye(kinds)[of_block]
    if not _solvable(between - 1e-9) or _share(inside, mix) is None:
        return None, None
    share = np.asarray(np.linalg.solve(between.T, mix), np.float64)
    rest = np.asarray(np.linalg.solve(inside.expected.T, whole.expected.T @ share), np.float64)
    form = _form(whole.residual, share[values.kind]) - _form(inside.residual, rest[values.kind])
    variance = float(values.y @ form @ values.y)
    own_share = np.asarray(np.linalg.solve(inside.expected.T, mix), np.float64)
    own = _form(inside.residual, own_share[values.kind])
    per_kind = np.maximum(np.linalg.solve(between, whole.squares - whole.expected @ _variances(inside)), 0.0)
    scale = _scale(own, values.y, model)
    grouped = model * scale + (block * per_kind[of_block]) @ block.T
    if variance <= 0.0:
        return spread(own, values.y, model), 0.0
    return spread(form + own, values.y, grouped), float(np.sqrt(variance))


def spread(form: FloatArray, y: FloatArray, model: FloatArray) -> Spread | None:
    """sqrt(yᵀ form y) with the degrees of freedom that it has where y has the covariance `model` (up to scale)."""
    from scipy.stats import chi2

    crossed = form @ model
    spoken = float(np.sum(crossed * crossed.T))
    variance = float(y @ form @ y)
    if spoken <= 0.0 or variance <= 0.0:
        return None
    freedom = float(np.trace(crossed)) ** 2 / spoken
    low, high = (variance * freedom / chi2.ppf(q, freedom) for q in ((1 + LEVEL) / 2, (1 - LEVEL) / 2))
    return Spread(float(np.sqrt(variance)), freedom, float(np.sqrt(low)), float(np.sqrt(high)))


def _form(residual: FloatArray, share: FloatArray) -> FloatArray:
    return np.asarray(residual.T @ (share[:, None] * residual))


def _variances(moments: Moments) -> FloatArray:
    return np.asarray(np.maximum(np.linalg.solve(moments.expected, moments.squares), 0.0), np.float64)


def _scale(form: FloatArray, y: FloatArray, model: FloatArray) -> float:
    expected = float(np.sum(form * model))
    return max(float(y @ form @ y), 0.0) / expected if expected > 0.0 else 1.0


def _share(moments: Moments, mix: FloatArray) -> FloatArray | None:
    """How each sum of squares enters Σ mix_j σ_j²; None where the sums do not tell."""
    if not _solvable(moments.expected):
        return None
    return np.asarray(np.linalg.solve(moments.expected.T, mix), np.float64)


def _solvable(matrix: FloatArray) -> bool:
    return matrix.size > 0 and bool(np.all(np.diag(matrix) > 1e-6)) and bool(np.linalg.cond(matrix) < 1e8)
