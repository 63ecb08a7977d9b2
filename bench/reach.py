"""`python -m bench.reach`: how often the best test there can be would name a body 60 µm high, noise known, no drift.

The cases of `bench.repeats`. Frames and implants unknown, all covariances known: by the lemma of Neyman & Pearson no
test of that false-alarm rate finds more, on average over sites and signs, than one by the mean likelihood ratio of all.
"""

from __future__ import annotations

import numpy as np

from bench.repeats import SITES, VARIANCES, arch
from stylobate.core import rigid
from stylobate.core.types import FloatArray

HEIGHT = 0.06
ALARMS = 0.01
ARCHES, DRAWS = 30, 20_000


def heights(poses: FloatArray, scans: int) -> FloatArray:
    """(cells, scans · 24) what the height of each site of a scan does to whitened residuals, across all unknowns.

    Of two scans the sites of the later one; the last scan comes last.
    """
    size = 6 * SITES
    root = np.tile(1.0 / np.sqrt(VARIANCES), SITES)
    lever = np.concatenate([rigid.adjoint(rigid.inverse(pose)) for pose in poses]) * root[:, None]
    unknown = np.hstack([np.kron(np.eye(scans), lever), np.tile(np.diag(root), (scans, 1))])
    u, s, _ = np.linalg.svd(unknown, full_matrices=False)
    basis = u[:, s > 1e-9 * s[0]]
    across = np.eye(scans * size) - basis @ basis.T
    tried = range(1, 2) if scans == 2 else range(scans)
    return np.array([across[:, size * k + 6 * i + 2] * root[2] for k in tried for i in range(SITES)])


def named(scans: int, rng: np.random.Generator) -> FloatArray:
    """(arches, SITES) share of draws in which the site of the last scan that stands high is named, and no other."""
    found = np.zeros((ARCHES, SITES))
    for row in found:
        effect = heights(arch(rng), scans)
        joint = effect @ effect.T
        values, vectors = np.linalg.eigh(joint)
        still = rng.standard_normal((DRAWS, len(joint))) @ (vectors * np.sqrt(np.clip(values, 0.0, None))).T
        critical = np.quantile(np.logaddexp.reduce(_ratios(still, joint), axis=1), 1.0 - ALARMS)
        for i in range(SITES):
            cell = len(joint) - SITES + i
            ratios = _ratios(still + HEIGHT * joint[cell], joint)
            row[i] = np.mean((np.logaddexp.reduce(ratios, axis=1) > critical) & (ratios.argmax(axis=1) == cell))
    return found


def _ratios(pulls: FloatArray, joint: FloatArray) -> FloatArray:
    """(draws, cells) log likelihood ratios of each site being HEIGHT high or low."""
    half = HEIGHT**2 * np.diag(joint) / 2.0
    return np.logaddexp(HEIGHT * pulls - half, -HEIGHT * pulls - half)


def main() -> None:
    """Two to four scans."""
    for scans in (2, 3, 4):
        share = 100.0 * named(scans, np.random.default_rng(5)).mean(axis=0)
        ends, between = share[[0, -1]].mean(), share[1:-1].mean()
        print(f"{scans} scans: {share.mean():.1f} % (at an end {ends:.1f}, between {between:.1f})")


if __name__ == "__main__":
    main()
