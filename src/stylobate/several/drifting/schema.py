"""profile.json, key by key. Importing this imports pydantic."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from stylobate.record.schema import Name, Table, Text


class EstimateTable(Table):
    """A figure with its uncertainty"""

    value: float
    u: Annotated[float, Field(ge=0.0)]
    low: float
    high: float


class WalkTable(EstimateTable):
    """A standard deviation"""

    value: Annotated[float, Field(ge=0.0, le=1e5)]


class ProfileTable(Table):
    """The whole file"""

    format: Literal["stylobate-profile"]
    version: Literal[1]
    scanner: Name
    unit: Text = ""
    shift_um: WalkTable
    turn_deg: WalkTable
    scale_ppm: EstimateTable | None = None
    scans: Annotated[list[Text], Field(default_factory=list)]
    reference: Text | None = None
    sites: Annotated[int, Field(ge=2)]
    span_mm: Annotated[float, Field(gt=0.0)]
