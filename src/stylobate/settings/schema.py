"""A settings file, key by key. Importing this imports pydantic."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from stylobate.settings.model import NO_SOURCE

Source = Annotated[str, StringConstraints(min_length=1, max_length=500)]
LimitUm = Annotated[float, Field(gt=0.0, le=10_000.0)]
LimitDeg = Annotated[float, Field(gt=0.0, le=180.0)]
Um = Annotated[float, Field(ge=0.0, le=10_000.0)]
Deg = Annotated[float, Field(ge=0.0, le=180.0)]


class Table(BaseModel):
    """Only the keys named here; integers count as numbers, nothing else is converted; no NaN, no infinity."""

    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False, frozen=True)


class LimitsTable(Table):
    """[limits.single], [limits.bridge], [limits.arch]"""

    platform_um: LimitUm
    axis_deg: LimitDeg
    index_deg: LimitDeg
    distance_um: LimitUm
    angle_deg: LimitDeg
    source: Source = NO_SOURCE


class WorksTable(Table):
    """[limits]"""

    single: LimitsTable | None = None
    bridge: LimitsTable | None = None
    arch: LimitsTable | None = None

    def __iter__(self) -> Iterator[tuple[str, LimitsTable]]:  # type: ignore[override]
        """Those that are given."""
        pairs = (("single", self.single), ("bridge", self.bridge), ("arch", self.arch))
        return iter([(work, one) for work, one in pairs if one is not None])


class SeatingTable(Table):
    """[seating]"""

    height_um: Um
    side_um: Um
    tilt_deg: Deg
    source: Source = NO_SOURCE


class TemperatureTable(Table):
    """[temperature]"""

    coefficient_ppm: Annotated[float, Field(ge=0.0, le=1000.0)]
    kelvin: Annotated[float, Field(ge=0.0, le=100.0)]
    source: Source = NO_SOURCE


class DriftTable(Table):
    """[drift]"""

    distance_um: Um
    angle_deg: Deg
    source: Source = NO_SOURCE


class SettingsTable(Table):
    """The whole file."""

    format: Literal["stylobate-settings"]
    version: Literal[1]
    limits: WorksTable = WorksTable()
    seating: SeatingTable | None = None
    temperature: TemperatureTable | None = None
    drift: DriftTable | None = None
