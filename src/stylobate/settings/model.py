"""Settings as frozen values, with the limits used where the user gives none."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

NO_SOURCE = "common practice, no source"
WORKS = ("single", "bridge", "arch")


@dataclass(frozen=True)
class Limits:
    """How large an error of a site may be, and of the distance and angle between two sites. All are empirical.

    source: what they rest on.
    """

    platform_um: float
    axis_deg: float
    index_deg: float
    distance_um: float
    angle_deg: float
    source: str = NO_SOURCE


@dataclass(frozen=True)
class Seating:
    """Standard uncertainties of how the scan body sits on its connection."""

    height_um: float
    side_um: float
    tilt_deg: float
    source: str = NO_SOURCE


@dataclass(frozen=True)
class Temperature:
    """Expansion of the scan body: coefficient in 1e-6/K and standard uncertainty of its temperature, K."""

    coefficient_ppm: float
    kelvin: float
    source: str = NO_SOURCE


DRIFT_MM = 50.0
"""Way from site to site along the arch for which drift is stated."""


@dataclass(frozen=True)
class Drift:
    """How a scan wanders from site to site: a random walk (method/profile, eq. 6).

    distance_um: standard deviation that it gives the distance between two sites DRIFT_MM of way apart; angle_deg: the
    angle between their axes. Both grow with the root of the way. scale_ppm: standard deviation of a scale error.
    """

    distance_um: float
    angle_deg: float
    source: str = NO_SOURCE
    scale_ppm: float = 0.0


_PAIRS = "distance 100 µm and angle 0.5°: Gintaute, quoted by Sanda 2021, as judged acceptable by the authors"
LIMITS: Mapping[str, Limits] = MappingProxyType(
    {
        "single": Limits(100.0, 0.5, 2.0, 100.0, 0.5, f"{NO_SOURCE}; no threshold of misfit is proven"),
        "bridge": Limits(50.0, 0.4, 5.0, 100.0, 0.5, f"{_PAIRS}; a site: {NO_SOURCE}, half the distance's limit"),
        "arch": Limits(50.0, 0.4, 5.0, 100.0, 0.5, f"{_PAIRS}; a site: {NO_SOURCE}, half the distance's limit"),
    }
)


@dataclass(frozen=True)
class Settings:
    """Limits for each kind of work, and the figures known for sources that a scan does not show."""

    limits: Mapping[str, Limits] = field(default_factory=lambda: LIMITS)
    seating: Seating | None = None
    temperature: Temperature | None = None
    drift: Drift | None = None


DEFAULT = Settings()
