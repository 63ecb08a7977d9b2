"""How much less sure a pose is because its residual field is not known but estimated (method, eq. 8b)."""

from __future__ import annotations

import numpy as np

from stylobate.core.types import FloatArray
from stylobate.field import Field, Patches, correlation, larger, merged, squared_distances
from stylobate.likelihood import FEWER, plausible

UNCHANGED = 1e-3  # of the covariance: a motion that nothing but the prior fixes stays as it is


def stretched(covariance: FloatArray, gain: FloatArray, patches: Patches, field: Field) -> FloatArray:
    """The covariance (k, k) of parameters fitted under `field`, averaged over the fields that the residuals allow.

    gain (k, n): what a displacement of each patch does to the parameters. The weights of the fit stay, so each field
    gives G K Gᵀ, and their mean is the covariance. It is taken over larger patches, and enters as the ratio to the
    same sum under `field`.
    """
    group = larger(patches, FEWER)
    large = merged(patches, group)
    coarse = np.stack([np.bincount(group, weights=row) for row in gain])
    distance = np.sqrt(squared_distances(large.centre[None], large.spread[None])[0])
    white = (gain / patches.count) @ gain.T

    def carried(one: Field) -> FloatArray:
        smooth = coarse @ correlation(distance / one.length, one.smoothness) @ coarse.T
        return np.asarray(one.correlated_sd**2 * smooth + one.white_sd**2 * white)

    fields, weights = plausible(patches, field)
    mean = np.average([carried(one) for one in fields], axis=0, weights=weights)
    kept = UNCHANGED * covariance
    ratio = np.linalg.cholesky(mean + kept) @ np.linalg.inv(np.linalg.cholesky(carried(field) + kept))
    return np.asarray(ratio @ covariance @ ratio.T)
