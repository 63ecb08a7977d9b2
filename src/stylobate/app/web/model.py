"""What the page is told: frozen values, the same in Python, in the OpenAPI description and in TypeScript.

Lengths are mm unless a name ends in `_um`; angles degrees where it ends in `_deg`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from stylobate.app.web.model_after import ComparedView, FrameView, PlacementView, StepView

Finite = Annotated[float, Field(allow_inf_nan=False)]
Verdict = Literal["use", "undecided", "do not use"]
Work = Literal["single", "bridge", "arch"]
ChoiceKind = Literal["scan", "again", "add", "drop", "part", "build"]
About = Literal["scan", "parts", "measure", "folder", "site", "around"]
Role = Literal["tissue", "opposing", "bite"]
Kind = Literal["clean", "seated", "torque", "radiograph", "unit"]
KINDS: tuple[Kind, ...] = ("clean", "seated", "torque", "radiograph", "unit")


@dataclass(frozen=True)
class BoundsView:
    """95 % bounds; index_deg is null where the connection is not indexed. any_turn: the scan does not show the turn."""

    platform_um: float
    axis_deg: float
    index_deg: float | None
    any_turn: bool


@dataclass(frozen=True)
class DeviationView:
    """Signed distance from the CAD surface to the scan, µm, positive outside."""

    points: int
    mean_um: float | None
    rms_um: float | None
    p95_um: float | None


@dataclass(frozen=True)
class FindingView:
    """What stands against a pose, how large it is, and what to do."""

    cause: str
    advice: str
    size_um: float | None
    u95_um: float | None
    size_deg: float | None
    u95_deg: float | None


@dataclass(frozen=True)
class BudgetView:
    """One source of uncertainty as standard uncertainties; null where there is no figure."""

    source: str
    platform_um: float | None
    axis_deg: float | None
    index_deg: float | None
    origin: str


@dataclass(frozen=True)
class AlternativeView:
    """Another reading of a site, and how many times less likely the scan makes it."""

    scan_body: str
    turn_deg: float
    odds: float


@dataclass(frozen=True)
class SiteView:
    """One measured site. scan_from_connection: 16 numbers, row by row. because, next: the verdict's reason, remedy."""

    site: str
    scan_body: str
    connection: str
    platform_diameter: float
    index_order: int
    scan_from_connection: tuple[float, ...]
    u95: BoundsView | None
    u95_total: BoundsView | None
    deviation: DeviationView | None
    coverage: float | None
    verdict: Verdict | None
    findings: tuple[FindingView, ...]
    budget: tuple[BudgetView, ...]
    alternatives: tuple[AlternativeView, ...]
    because: str
    next: str


@dataclass(frozen=True)
class PairView:
    """Two sites: distance of the platform centres and angle between the axes."""

    sites: tuple[str, str]
    distance_mm: float | None
    u95_um: float | None
    angle_deg: float | None


@dataclass(frozen=True)
class TogetherView:
    """The verdict on the sites as a set."""

    verdict: Verdict
    because: str


@dataclass(frozen=True)
class NotShownView:
    """What no scan can show, and the check that closes it."""

    what: str
    check: str


@dataclass(frozen=True)
class ResultView:
    """A measurement. run: counts the measurements of a folder, from 1."""

    run: int
    work: str
    scan_file: str
    triangles: int
    parts_name: str
    parts_revision: str
    sites: tuple[SiteView, ...]
    pairs: tuple[PairView, ...]
    together: TogetherView | None
    not_shown: tuple[NotShownView, ...]
    warnings: tuple[str, ...]


@dataclass(frozen=True)
class BodyView:
    """A scan body of the parts folder."""

    id: str
    seats_on: str
    material: str


@dataclass(frozen=True)
class PartsView:
    """The parts folder in use."""

    name: str
    revision: str
    bodies: tuple[BodyView, ...]


@dataclass(frozen=True)
class JobView:
    """What is being done now. share: 0 to 1 of the stage."""

    file: str
    stage: str
    share: float


@dataclass(frozen=True)
class RefusalView:
    """One line: what is wrong, where, what to do; about: what it stands beside."""

    about: About
    text: str


@dataclass(frozen=True)
class SceneView:
    """Surfaces ready to be fetched under /api/surface.

    geometry: key of the scan's surface (key-coarse: its proxy). paint: key of the deviations of the result shown, ""
    until they are ready. whole: the scan itself is at hand, and not only the surroundings of the sites.
    bodies: keys of the CAD surfaces, by the scan body's id.
    """

    geometry: str
    paint: str
    whole: bool
    bodies: dict[str, str]


@dataclass(frozen=True)
class WatchView:
    """The folder that is watched, and the last scan taken from it ("" until there is one)."""

    folder: str
    last: str


@dataclass(frozen=True)
class CheckView:
    """A chairside check. ok: null where it was not made for this scan. value: what was read."""

    kind: Kind
    question: str
    ok: bool | None
    by: str
    time: str
    value: str


@dataclass(frozen=True)
class CaseSiteView:
    """A named site of a case. torque_ncm: least and greatest, as the parts folder states it. released_by: "" if not."""

    tooth: str
    site: str
    checks: tuple[CheckView, ...]
    torque_ncm: tuple[float, float] | None
    released_by: str
    released_at: str
    reason: str


@dataclass(frozen=True)
class AroundView:
    """A scan beside that of the bodies. joined: how, in words, "" where it is not; as_it_lies: it needs no join."""

    role: Role
    joined: str
    as_it_lies: bool


@dataclass(frozen=True)
class CaseView:
    """A case: its code, what will be built, its named sites, and the scans beside that of the bodies.

    remarks: what to look at again, one sentence each.
    """

    code: str
    work: Work
    sites: tuple[CaseSiteView, ...]
    around: tuple[AroundView, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class ChoiceView:
    """One step of the history: what kind it was, and of what."""

    kind: ChoiceKind
    detail: str


@dataclass(frozen=True)
class State:
    """All that the page shows. undo, redo: what would be taken back or done again.

    placement, frame, compared: what follows from the result, null until it is known or where nothing does. notice: what
    happened to earlier choices, to be read once.
    """

    revision: int
    version: str
    folder: str
    read_only: bool
    work: Work
    parts: PartsView | None
    result: ResultView | None
    scene: SceneView | None
    placement: PlacementView | None
    frame: FrameView | None
    compared: ComparedView | None
    job: JobView | None
    refusal: RefusalView | None
    notice: str
    undo: ChoiceView | None
    redo: ChoiceView | None
    case: CaseView | None
    watch: WatchView | None
    largest_upload_bytes: int


@dataclass(frozen=True)
class Offer:
    """A file about to be sent."""

    what: Literal["scan", "parts", "tissue", "opposing", "bite"]
    name: str
    size: int


@dataclass(frozen=True)
class Measure:
    """Measure the scan at hand again. count: how many sites there are, null for all that are found."""

    work: Work
    count: int | None = None


@dataclass(frozen=True)
class AddSite:
    """A point on a scan body that was missed, scan coordinates."""

    point: tuple[Finite, Finite, Finite]


@dataclass(frozen=True)
class DropSite:
    """A site that is none."""

    site: str


@dataclass(frozen=True)
class ChoosePart:
    """The scan body that stands at a site."""

    site: str
    scan_body: str


@dataclass(frozen=True)
class ChooseChain:
    """Parts for a site, from below: one of its options."""

    site: str
    chain: tuple[StepView, ...]


@dataclass(frozen=True)
class NameTooth:
    """Which tooth (ISO 3950) a site of a case stands for; "" takes the name away."""

    site: str
    tooth: str


@dataclass(frozen=True)
class Marks:
    """A part marked in a radiograph. length: its true one, mm; ends: x, y of its two ends, pixels; pixel: width, mm."""

    length: Finite
    ends: tuple[Finite, Finite, Finite, Finite]
    pixel: Finite


@dataclass(frozen=True)
class NoteCheck:
    """A chairside check, made. value: of torque the N·cm used, of unit the scan body's number.

    marks: of radiograph, where its beam was measured; a picture too oblique is then not passed.
    """

    tooth: str
    kind: Kind
    ok: bool
    value: str = ""
    marks: Marks | None = None


@dataclass(frozen=True)
class ReleaseSite:
    """A person's release of a site, or its withdrawal."""

    tooth: str
    reason: str = ""
    withdraw: bool = False
