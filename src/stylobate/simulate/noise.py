"""Scanner noise along the surface normal, and its exact covariance (method, eqs. S3 to S6).

The correlated part is a sum of cosine waves whose wave vectors are drawn from the kernel's spectral density: its
second moments are those of the kernel at any set of points, with no lattice (Rahimi & Recht 2007, NIPS 20).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from stylobate.core.jit import compiled
from stylobate.core.types import FloatArray
from stylobate.simulate.settings import Noise

WAVES = 768
"""Cosine waves in the correlated part: excess kurtosis −1.5 / WAVES, far below what a scene can show."""
VIEWS = 5
"""Overlapping views about an upward cone, of which a fused scan is made (invented)."""
VIEW_TILT_DEG = 40.0
SEAM_MM = 0.25
"""Half width of the band over which two views are blended (invented)."""
UM = 1e-3
DEGREES_OF_FREEDOM = {"exponential": 1, "matern32": 3, "matern52": 5}

Generator = np.random.Generator


@dataclass(frozen=True)
class NoiseModel:
    """Noise of one scene. up: (3,) mean direction from which the scan was taken; views: (v, 3); middle: (3,) of it."""

    noise: Noise
    up: FloatArray
    views: FloatArray
    middle: FloatArray

    def white_sd(self, normals: FloatArray) -> FloatArray:
        """Standard deviation of the white part (n,), mm, at unit `normals` (n, 3) (eq. S4)."""
        facing = np.clip(normals @ self.up, 0.0, 1.0)
        return np.asarray(self.noise.white_um * UM * (1.0 + self.noise.view_share * (1.0 - facing) ** 2))

    def seams(self, points: FloatArray, normals: FloatArray) -> FloatArray:
        """Normal displacement by unit shifts of the views, (n, 3·views) (eq. S5)."""
        score = normals @ self.views.T + 0.25 * np.sin((points - self.middle) @ self.views.T)
        share = np.exp((score - score.max(axis=1, keepdims=True)) / SEAM_MM * 2.0)
        share /= share.sum(axis=1, keepdims=True)
        return np.asarray((share[:, :, None] * normals[:, None, :]).reshape(len(points), -1))

    def sample(self, points: FloatArray, normals: FloatArray, rng: Generator) -> FloatArray:
        """One draw of the displacement (n,) mm."""
        n = len(points)
        white = rng.standard_t(3, n) / math.sqrt(3.0) if self.noise.tails == "t3" else rng.normal(size=n)
        result = white * self.white_sd(normals)
        if self.noise.correlated_um > 0.0:
            vectors, phases = waves(self.noise.kernel, self.noise.length_mm, rng)
            result += self.noise.correlated_um * UM * wave_sum(points - self.middle, vectors, phases)
        if self.noise.seam_um > 0.0:
            result += self.seams(points, normals) @ rng.normal(0.0, self.noise.seam_um * UM, 3 * len(self.views))
        return result

    def covariance(self, points: FloatArray, normals: FloatArray) -> FloatArray:
        """Covariance (n, n) mm² of the displacement at `points`: second moments, whatever the tails (eq. S6)."""
        result = self.correlated(points, points)
        if self.noise.seam_um > 0.0:
            basis = self.seams(points, normals) * (self.noise.seam_um * UM)
            result += basis @ basis.T
        result[np.diag_indices(len(points))] += self.white_sd(normals) ** 2
        return result

    def correlated(self, first: FloatArray, second: FloatArray) -> FloatArray:
        """Covariance of the correlated part alone, (n, m) mm²."""
        return (self.noise.correlated_um * UM) ** 2 * kernel_matrix(
            first, second, self.noise.length_mm, DEGREES_OF_FREEDOM.get(self.noise.kernel, 0)
        )


def model_of(noise: Noise, up: FloatArray, middle: FloatArray, rng: Generator) -> NoiseModel:
    """The noise of a scan taken mostly from `up`, views drawn around it."""
    side = np.linalg.svd(up[None, :])[2][1:]
    azimuth = rng.uniform(0.0, 2.0 * math.pi) + np.arange(VIEWS) * 2.0 * math.pi / VIEWS
    tilt = math.radians(VIEW_TILT_DEG)
    across = np.cos(azimuth)[:, None] * side[0] + np.sin(azimuth)[:, None] * side[1]
    return NoiseModel(noise, up, math.cos(tilt) * up + math.sin(tilt) * across, middle)


def waves(kernel: str, length: float, rng: Generator) -> tuple[FloatArray, FloatArray]:
    """Wave vectors (WAVES, 3) rad/mm from the kernel's spectral density, and phases (WAVES,).

    Squared exponential: normal. Matérn of order ν: Student's t with 2ν degrees of freedom (Rasmussen & Williams 2006,
    4.15). The radii are stratified, which keeps the mean over draws exact and each draw closer to the kernel.
    """
    direction = rng.normal(size=(WAVES, 3))
    freedom = DEGREES_OF_FREEDOM.get(kernel, 0)
    scale = np.ones(WAVES)
    if freedom:
        from scipy.stats import chi2

        strata = (rng.permutation(WAVES) + rng.uniform(size=WAVES)) / WAVES
        scale = np.sqrt(freedom / chi2.ppf(strata, freedom))
    return direction * scale[:, None] / length, rng.uniform(0.0, 2.0 * math.pi, WAVES)


@compiled
def wave_sum(points: FloatArray, vectors: FloatArray, phases: FloatArray) -> FloatArray:
    """√(2/m) Σ cos(ω·x + φ) at `points` (n, 3): zero mean, unit variance."""
    n, m = points.shape[0], vectors.shape[0]
    result = np.empty(n)
    factor = np.sqrt(2.0 / m)
    turns = vectors / (2.0 * np.pi)
    shifts = phases / (2.0 * np.pi)
    for i in range(n):
        x, y, z = points[i, 0], points[i, 1], points[i, 2]
        total = 0.0
        for k in range(m):
            u = turns[k, 0] * x + turns[k, 1] * y + turns[k, 2] * z + shifts[k]
            u = abs(u - np.floor(u) - 0.5) - 0.25
            s = (2.0 * np.pi * u) ** 2
            total += u * (1.0 - s / 6.0 * (1.0 - s / 20.0 * (1.0 - s / 42.0 * (1.0 - s / 72.0))))
        result[i] = 2.0 * np.pi * total * factor
    return result


@compiled
def kernel_matrix(first: FloatArray, second: FloatArray, length: float, freedom: int) -> FloatArray:
    """Correlation (n, m) by distance: Matérn of order freedom/2 (1, 3, 5), squared exponential for 0 (eq. S3)."""
    result = np.empty((first.shape[0], second.shape[0]))
    root = np.sqrt(float(freedom)) if freedom else 1.0
    for i in range(first.shape[0]):
        for j in range(second.shape[0]):
            d2 = 0.0
            for k in range(3):
                d2 += (first[i, k] - second[j, k]) ** 2
            r = root * np.sqrt(d2) / length
            if freedom == 1:
                result[i, j] = np.exp(-r)
            elif freedom == 3:
                result[i, j] = (1.0 + r) * np.exp(-r)
            elif freedom == 5:
                result[i, j] = (1.0 + r + r * r / 3.0) * np.exp(-r)
            else:
                result[i, j] = np.exp(-0.5 * r * r)
    return result
