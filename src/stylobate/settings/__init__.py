"""What a user may set: limits of the verdict, and figures for sources of uncertainty that no scan shows."""

from stylobate.settings.model import DEFAULT, DRIFT_MM, NO_SOURCE, WORKS, Drift, Limits, Seating, Settings, Temperature
from stylobate.settings.read import read_settings

__all__ = [
    "DEFAULT",
    "DRIFT_MM",
    "NO_SOURCE",
    "WORKS",
    "Drift",
    "Limits",
    "Seating",
    "Settings",
    "Temperature",
    "read_settings",
]
