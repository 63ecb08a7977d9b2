"""Scale and walk from repeat scans laid on each other: the whole posterior on a grid (method/profile, eq. 2–5)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.core.rigid import adjoint, exp, inverse, log, turn_of, turn_z
from stylobate.core.types import FloatArray
from stylobate.settings import DRIFT_MM
from stylobate.several.drifting.model import Estimate, stretch_of
from stylobate.several.lay import laid, landmarks
from stylobate.several.sources import walk_covariance

KEPT = 5
"""Motions of a site that are used: the turn about its axis says nothing of the scan where a body can turn."""
COARSE, FINE = 25, 41
SPREAD = 6.0
"""The coarse grid reaches to this multiple of what the scatter itself would make of the walk."""
SEEN = 1e-5
"""Share of the highest posterior below which the grid is cut."""


@dataclass(frozen=True)
class Repeats:
    """Repeat scans on one set of poses. base (n, 4, 4): the reference, or the first scan.

    off (scans, 5n): motion of each site from the base, mm and radians, without the turn about its axis. noise (5n, 5n):
    mean covariance of the scans; base_noise (5n, 5n): of the reference, None without one.
    """

    base: FloatArray
    off: FloatArray
    noise: FloatArray
    base_noise: FloatArray | None


def repeats(
    base: FloatArray, scans: Sequence[FloatArray], noises: Sequence[FloatArray], base_noise: FloatArray | None
) -> Repeats:
    """Lay scans (n, 4, 4 each, sites in the order of `base`, any frames) on the base; noises (6n, 6n) as in results."""
    found, covariances = [], []
    for poses, noise in zip(scans, noises, strict=True):
        motion = laid(landmarks(poses), landmarks(base))
        off, back = [], np.zeros((6 * len(base),) * 2)
        for k, (one, two) in enumerate(zip(base, motion @ poses, strict=True)):
            between = inverse(one) @ two
            turn = turn_of(between)
            off.append(log(between @ exp(np.array([0.0, 0.0, 0.0, 0.0, 0.0, -turn])))[:KEPT])
            back[6 * k : 6 * k + 6, 6 * k : 6 * k + 6] = adjoint(turn_z(turn))
        found.append(np.concatenate(off))
        covariances.append(_kept(back @ noise @ back.T))
    return Repeats(
        base, np.array(found), np.mean(covariances, axis=0), None if base_noise is None else _kept(base_noise)
    )


def estimate(of: Repeats) -> tuple[Estimate, Estimate, Estimate | None]:
    """Walk's shift (µm) and turn (°) after 50 mm, and the scale (ppm; None without a reference)."""
    view = _View(of)
    top = SPREAD * view.crude()
    shifts, turns = np.linspace(0.0, top[0], COARSE), np.linspace(0.0, top[1], COARSE)
    weight, _, _ = view.posterior(shifts, turns)
    shifts, turns = _zoomed(shifts, weight.sum(axis=1)), _zoomed(turns, weight.sum(axis=0))
    weight, scale, variance = view.posterior(shifts, turns)
    shift = _summary(shifts * 1e3, weight.sum(axis=1))
    turn = _summary(np.degrees(turns), weight.sum(axis=0))
    if of.base_noise is None:
        return shift, turn, None
    mean = float(np.sum(weight * scale))
    sd = float(np.sqrt(np.sum(weight * (variance + (scale - mean) ** 2))))
    low, high = _mixture_interval(weight, scale, variance, (mean - 8 * sd, mean + 8 * sd))
    return shift, turn, Estimate(1e6 * mean, 1e6 * sd, 1e6 * low, 1e6 * high)


class _View:
    """The data seen across all rigid motions of the scans, and what walk and scale do there."""

    def __init__(self, of: Repeats) -> None:
        n, count = len(of.base), len(of.off)
        u, _, _ = np.linalg.svd(_rigid(of.base))
        across = u[:, 6:]
        contrasts = of.off - of.off.mean(axis=0)
        self.within = contrasts @ across
        self.degrees = count - 1
        self.mean = of.off.mean(axis=0) @ across * np.sqrt(count) if of.base_noise is not None else None
        self.stretch = np.sqrt(count) * stretch_of(of.base).reshape(n, 6)[:, :KEPT].ravel() @ across
        self.noise = across.T @ of.noise @ across
        base = of.noise * 0.0 if of.base_noise is None else count * of.base_noise
        self.base_noise = across.T @ base @ across
        self.walks = [across.T @ _kept(walk_covariance(of.base, *rate)) @ across for rate in ((1.0, 0.0), (0.0, 1.0))]
        self.scatter = self.within.T @ self.within

    def crude(self) -> FloatArray:
        """(2,): walk's shift (mm) and turn (rad) after 50 mm if it alone made all of the scatter."""
        whole, degrees = float(np.trace(self.scatter)), self.degrees
        if self.mean is not None:
            whole, degrees = whole + float(self.mean @ self.mean), degrees + 1
        return np.array([np.sqrt(whole / degrees / np.trace(walk) * DRIFT_MM) for walk in self.walks])

    def posterior(self, shifts: FloatArray, turns: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Posterior (shifts, turns), summing to 1, priors even in both; with it the scale's mean and variance there."""
        rates = [values**2 / DRIFT_MM for values in (shifts, turns)]
        walk = rates[0][:, None, None, None] * self.walks[0] + rates[1][None, :, None, None] * self.walks[1]
        within = self.noise + walk
        inside = np.linalg.inv(within)
        value = -0.5 * self.degrees * np.linalg.slogdet(within)[1] - 0.5 * np.einsum(
            "abij,ij->ab", inside, self.scatter
        )
        scale = variance = np.zeros_like(value)
        if self.mean is not None:
            inside = np.linalg.inv(within + self.base_noise)
            value = value + 0.5 * np.linalg.slogdet(inside)[1]
            pull = np.einsum("abij,j->abi", inside, self.stretch)
            variance = 1.0 / (pull @ self.stretch)
            scale = (pull @ self.mean) * variance
            left = np.einsum("i,abij,j->ab", self.mean, inside, self.mean) - scale**2 / variance
            value += 0.5 * np.log(variance) - 0.5 * left
        weight = np.exp(value - value.max())
        return weight / weight.sum(), scale, variance


def _kept(covariance: FloatArray) -> FloatArray:
    """(5n, 5n) of (6n, 6n): without the turn of each site about its axis."""
    keep = np.arange(len(covariance)) % 6 < KEPT
    return covariance[np.ix_(keep, keep)]


def _rigid(base: FloatArray) -> FloatArray:
    """(5n, 6): what the six motions of a whole scan do to its sites."""
    return np.concatenate([adjoint(inverse(one))[:KEPT] for one in base])


def _zoomed(values: FloatArray, weight: FloatArray) -> FloatArray:
    seen = np.flatnonzero(weight > SEEN * weight.max())
    low, high = max(int(seen[0]) - 1, 0), min(int(seen[-1]) + 1, len(values) - 1)
    return np.linspace(values[low], values[high], FINE)


def _summary(values: FloatArray, weight: FloatArray) -> Estimate:
    """Root mean square (it is variances that are used), standard deviation, and the 95 % interval by interpolation."""
    mean, square = float(weight @ values), float(weight @ values**2)
    rising = np.cumsum(weight) - weight / 2.0
    low, high = np.interp([0.025, 0.975], rising, values)
    if weight[0] > weight.max() / 2.0:  # nothing speaks against none at all
        low, high = values[0], np.interp(0.95, rising, values)
    return Estimate(square**0.5, max(square - mean**2, 0.0) ** 0.5, float(low), float(high))


def _mixture_interval(
    weight: FloatArray, mean: FloatArray, variance: FloatArray, ends: tuple[float, float]
) -> tuple[float, float]:
    from scipy.special import ndtr

    points = np.linspace(*ends, 2001)
    seen = weight > SEEN * weight.max()
    below = np.array([np.sum(weight[seen] * ndtr((x - mean[seen]) / np.sqrt(variance[seen]))) for x in points])
    low, high = np.interp([0.025, 0.975], below, points)
    return float(low), float(high)
