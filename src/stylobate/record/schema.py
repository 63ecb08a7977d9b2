"""result.json, key by key, as far as this program reads it. Importing this imports pydantic.

Keys that are not named here are left alone: the interface says that more may be added.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

FORMAT = "stylobate-result"
VERSION = 1

Name = Annotated[str, StringConstraints(min_length=1, max_length=200)]
Text = Annotated[str, StringConstraints(max_length=10_000)]
Length = Annotated[float, Field(ge=0.0, le=1e6)]
Row4 = Annotated[list[float], Field(min_length=4, max_length=4)]
Row6 = Annotated[list[float], Field(min_length=6, max_length=6)]
Pose = Annotated[list[Row4], Field(min_length=4, max_length=4)]
Covariance = Annotated[list[Row6], Field(min_length=6, max_length=6)]
Verdict = Literal["use", "undecided", "do not use"]


class Table(BaseModel):
    """An object of the file: no conversion of types, no NaN and no infinity."""

    model_config = ConfigDict(extra="ignore", strict=True, allow_inf_nan=False, frozen=True)


class ScanTable(Table):
    """`scan`"""

    file: Text = ""
    sha256: Text = ""
    triangles: Annotated[int, Field(ge=0)] = 0


class PartsTable(Table):
    """`parts`"""

    name: Text = ""
    revision: Text = ""
    sha256: Text = ""


class BoundsTable(Table):
    """`u95`, `u95_total`"""

    platform_um: float | None = None
    axis_deg: float | None = None
    index_deg: float | None = None


class DeviationTable(Table):
    """`deviation`"""

    points: Annotated[int, Field(ge=0)]
    mean_um: float | None = None
    rms_um: float | None = None
    p95_um: float | None = None


class FindingTable(Table):
    """One of `findings`"""

    cause: Text
    advice: Text = ""
    size_um: float | None = None
    u95_um: float | None = None
    size_deg: float | None = None
    u95_deg: float | None = None
    p: float | None = None
    where: Annotated[list[float], Field(min_length=3, max_length=3)] | None = None
    area_mm2: float | None = None


class BudgetTable(Table):
    """One of `budget`"""

    source: Text
    platform_um: Length | None = None
    axis_deg: Length | None = None
    index_deg: Length | None = None
    origin: Annotated[Text, Field(alias="from")] = ""


class HiddenTable(Table):
    """`hidden`; null where no fault of the cause would show, however large"""

    cause: Text
    size_deg: Length | None = None
    platform_um: Length | None = None
    axis_deg: Length | None = None


class DetailsTable(Table):
    """`verdict_details`"""

    because: Text = ""
    next: Text = ""


class SeenTable(Table):
    """One of `seen_in`"""

    sha256: Text = ""
    counts: bool = True


class SiteTable(Table):
    """One of `sites`"""

    site: Name
    scan_body: Text = ""
    connection: Name
    platform_diameter: Length
    index_order: Annotated[int, Field(ge=0, le=1000)]
    scan_from_connection: Pose
    covariance: Covariance
    u95: BoundsTable | None = None
    u95_total: BoundsTable | None = None
    deviation: DeviationTable | None = None
    coverage: float | None = None
    verdict: Verdict | None = None
    findings: list[FindingTable] = []
    budget: list[BudgetTable] = []
    map: Text | None = None
    verdict_details: DetailsTable = DetailsTable()
    seen_in: list[SeenTable] = []
    hidden: HiddenTable | None = None


class PairTable(Table):
    """One of `pairs`"""

    sites: Annotated[list[Name], Field(min_length=2, max_length=2)]
    distance_mm: float | None = None
    u95_um: float | None = None
    angle_deg: float | None = None
    angle_u95_deg: float | None = None
    u95_total_um: float | None = None
    angle_u95_total_deg: float | None = None


class NotShownTable(Table):
    """One of `not_shown`"""

    what: Text
    check: Text = ""


class SoftwareTable(Table):
    """`software`"""

    name: Text = ""
    version: Text = ""


class CrossTable(Table):
    """One of `cross`"""

    sites: Annotated[list[Name], Field(min_length=2, max_length=2)]
    covariance: Covariance


class TogetherTable(Table):
    """`together`"""

    verdict: Verdict
    because: Text = ""
    next: Text = ""


class UppermostTable(Table):
    """`sites[].uppermost` of place.json"""

    connection: Name
    platform_diameter: Length
    index_order: Annotated[int, Field(ge=0, le=1000)]
    scan_from_connection: Pose
    covariance: Covariance
    u95: BoundsTable | None = None


class PlacedTable(Table):
    """One of `sites` of place.json"""

    site: Name
    uppermost: UppermostTable
    verdict: Verdict | None = None


class ResultFileTable(Table):
    """`result` of place.json"""

    file: Text = ""
    scan_sha256: Text = ""


class PlaceTable(Table):
    """place.json, as far as its uppermost connections go"""

    format: Literal["stylobate-place"]
    version: Literal[1]
    result: ResultFileTable = ResultFileTable()
    parts: PartsTable = PartsTable()
    work: Text = ""
    sites: list[PlacedTable]


class ResultTable(Table):
    """The whole file"""

    format: Literal["stylobate-result"]
    version: Literal[1]
    scan: ScanTable = ScanTable()
    parts: PartsTable = PartsTable()
    work: Text = ""
    sites: list[SiteTable]
    cross: list[CrossTable] = []
    together: TogetherTable | None = None
    pairs: list[PairTable] = []
    not_shown: list[NotShownTable] = []
    warnings: list[Text] = []
    software: SoftwareTable = SoftwareTable()
