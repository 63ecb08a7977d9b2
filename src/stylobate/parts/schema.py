"""parts.toml, key by key: types, ranges and an example of each. Importing this imports pydantic."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Discriminator, Field, StringConstraints, Tag, field_validator
from pydantic_core import PydanticCustomError

from stylobate.parts.source import why_unsafe

FORMAT = "stylobate-parts"
VERSION = 1

Identifier = Annotated[str, StringConstraints(pattern=r"^\w[\w.+-]*$", max_length=64)]
Text = Annotated[str, StringConstraints(max_length=500)]
Kind = Literal["external hex", "internal hex", "trilobe", "conical", "multi-unit", "other"]


def _safe_file(name: str) -> str:
    wrong = why_unsafe(name)
    if wrong is not None:
        raise PydanticCustomError("unsafe_file", "names a file outside the folder: {wrong}", {"wrong": wrong})
    return name


class Table(BaseModel):
    """A table of parts.toml: only the keys named here, no conversion of types, no NaN and no infinity."""

    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False, frozen=True)


class WithSurface(Table):
    """A part with a CAD surface."""

    surface: Annotated[str, Field(examples=["scan-bodies/alder-tall.stl"])]

    _surface_is_inside = field_validator("surface")(_safe_file)


Torque = Annotated[list[Annotated[float, Field(ge=0.0, le=200.0)]], Field(min_length=2, max_length=2)]


class WithTorque(Table):
    """A part that is screwed in: least and greatest torque, N·cm."""

    torque_ncm: Annotated[Torque | None, Field(examples=[[10.0, 15.0]])] = None

    @field_validator("torque_ncm")
    @classmethod
    def _least_first(cls, value: list[float] | None) -> list[float] | None:
        if value is not None and value[0] > value[1]:
            raise PydanticCustomError("torque_order", "the first torque is the least, but it is above the second")
        return value


class ConnectionTable(Table):
    """[[connection]]"""

    id: Annotated[Identifier, Field(examples=["alder"])]
    kind: Annotated[Kind, Field(examples=["internal hex"])]
    index_order: Annotated[int, Field(ge=0, le=72, examples=[6])]
    play_deg: Annotated[float | None, Field(ge=0.0, le=90.0, examples=[1.5])] = None
    platform_diameter: Annotated[float, Field(gt=0.0, le=20.0, examples=[4.2])]


class ImplantTable(Table):
    """[[implant]]"""

    id: Annotated[Identifier, Field(examples=["alder-42-10"])]
    connection: Annotated[Identifier, Field(examples=["alder"])]
    length: Annotated[float, Field(gt=0.0, le=80.0, examples=[10.0])]


class Above(Table):
    """scan_region = { above = z }"""

    above: Annotated[float, Field(ge=-50.0, le=50.0, examples=[4.0])]


class RegionFile(WithSurface):
    """scan_region = { surface = "file.stl" }"""


def _region_form(value: object) -> str | None:
    if isinstance(value, str):
        return "word"
    if isinstance(value, dict) and "above" in value and "surface" in value:
        return None
    if isinstance(value, dict) and "surface" in value:
        return "surface"
    return "above" if isinstance(value, dict) and "above" in value else None


Region = Annotated[
    Annotated[Literal["whole"], Tag("word")]
    | Annotated[Above, Tag("above")]
    | Annotated[RegionFile, Tag("surface")],
    Discriminator(_region_form),
]  # fmt: skip


class ScanBodyTable(WithSurface, WithTorque):
    """[[scan_body]]"""

    id: Annotated[Identifier, Field(examples=["alder-tall"])]
    seats_on: Annotated[Identifier, Field(examples=["alder"])]
    scan_region: Annotated[Region, Field(examples=["whole"])] = "whole"
    material: Annotated[Text, Field(examples=["titanium, sandblasted"])] = ""
    single_use: Annotated[bool, Field(examples=[False])] = False
    max_cycles: Annotated[int | None, Field(ge=1, le=100_000, examples=[50])] = None
    made_u_um: Annotated[float | None, Field(ge=0.0, le=1000.0, examples=[6.0])] = None


class MultiUnitAbutmentTable(WithSurface, WithTorque):
    """[[multi_unit_abutment]]"""

    id: Annotated[Identifier, Field(examples=["alder-mu-16-25"])]
    seats_on: Annotated[Identifier, Field(examples=["alder"])]
    provides: Annotated[Identifier, Field(examples=["alder-mu"])]
    angle_deg: Annotated[float, Field(ge=0.0, lt=90.0, examples=[16.0])]
    collar_height: Annotated[float, Field(ge=0.0, le=20.0, examples=[2.5])]
    cone_half_angle_deg: Annotated[float | None, Field(ge=0.0, lt=90.0, examples=[20.0])] = None


class TitaniumBaseTable(WithSurface, WithTorque):
    """[[titanium_base]]"""

    id: Annotated[Identifier, Field(examples=["alder-base-10"])]
    seats_on: Annotated[Identifier, Field(examples=["alder"])]
    gingival_height: Annotated[float, Field(ge=0.0, le=20.0, examples=[1.0])]
    height: Annotated[float, Field(gt=0.0, le=30.0, examples=[5.0])]
    engaging: Annotated[bool, Field(examples=[True])]
    channel_tilt_max_deg: Annotated[float, Field(ge=0.0, lt=90.0, examples=[20.0])] = 0.0
    cone_half_angle_deg: Annotated[float | None, Field(ge=0.0, lt=90.0, examples=[4.0])] = None


class AnalogTable(WithSurface):
    """[[analog]]"""

    id: Annotated[Identifier, Field(examples=["alder-analog"])]
    connection: Annotated[Identifier, Field(examples=["alder"])]


class PartsTable(Table):
    """The whole of parts.toml."""

    format: Annotated[Literal["stylobate-parts"], Field(examples=[FORMAT])]
    version: Annotated[int, Field(ge=VERSION, le=VERSION, examples=[VERSION])]
    name: Annotated[Text, StringConstraints(min_length=1), Field(examples=["Harbour Street demo parts"])]
    revision: Annotated[Text, Field(examples=["2026-11"])] = ""
    licence: Annotated[Text, Field(examples=["CC0-1.0"])] = ""
    connection: Annotated[list[ConnectionTable], Field(min_length=1)]
    implant: list[ImplantTable] = []
    scan_body: list[ScanBodyTable] = []
    multi_unit_abutment: list[MultiUnitAbutmentTable] = []
    titanium_base: list[TitaniumBaseTable] = []
    analog: list[AnalogTable] = []


TABLES: dict[str, type[Table]] = {
    "connection": ConnectionTable,
    "implant": ImplantTable,
    "scan_body": ScanBodyTable,
    "multi_unit_abutment": MultiUnitAbutmentTable,
    "titanium_base": TitaniumBaseTable,
    "analog": AnalogTable,
}
