"""Parts onto measured connections: the one file that knows the order of the steps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from stylobate.build.around import astray, require_near, room_along, tissue_around, unmet
from stylobate.build.below import below_of
from stylobate.build.carried import upper_of
from stylobate.build.choosing import DIGITS, Ranking, collar_height, leaning, options_of, ranked, seat_half_angle_deg
from stylobate.build.collisions import Shapes, around_of, into_tissue, nearnesses
from stylobate.build.cone import unit
from stylobate.build.footing import Footing, footings
from stylobate.build.insertion import insertion_of, joint_options
from stylobate.build.model import Channel, Joint, Link, PlacedSite, Placement, Tissue
from stylobate.build.planned import aim_at, exit_of, pieces, tooth_over
from stylobate.build.request import Step, require_sites
from stylobate.build.ways import Way, turned, ways_of, ways_on
from stylobate.build.wishes import CHANNEL_DIAMETER, Wishes, wishes_of
from stylobate.core.closest import SurfaceTree
from stylobate.core.errors import UsageError
from stylobate.core.result import PartsInfo
from stylobate.core.surface import Scan, Surface
from stylobate.core.types import FloatArray
from stylobate.joining import Join, joins, sites_of
from stylobate.parts import PartsFolder, load_parts
from stylobate.parts.model import MultiUnitAbutment, TitaniumBase
from stylobate.record import Record, RecordSite, read_result
from stylobate.scan import read_scan

LEAST_MEAN = 1e-3
"""Axes whose sum is shorter than this point everywhere."""
TISSUE_REACH = 12.0
"""mm around a platform within which the tissue scan can touch its parts (invented: longer than any chain)."""


@dataclass(frozen=True)
class Surroundings:
    """Surfaces around the sites, in scan coordinates; None where none was given. teeth: the planned ones."""

    tissue: Surface | None = None
    opposing: Surface | None = None
    teeth: Surface | None = None


def place(
    result: str | Path | Record,
    parts: str | Path | PartsFolder,
    sites: Sequence[str] = (),
    aims: Sequence[str] = (),
    tissue: str | Path | Scan | None = None,
    opposing: str | Path | Scan | None = None,
    teeth: str | Path | Scan | None = None,
    below: Sequence[str] = (),
    accept: Sequence[str] = (),
    one_path: bool = False,
    channel_diameter: float = CHANNEL_DIAMETER,
    join_to: str | Path | Scan | None = None,
    bite: str | Path | Scan | None = None,
    take: Sequence[str] = (),
) -> Placement:
    """Put parts on the connections of a measurement.

    sites: "SITE=PART[@TURN][,PART[@TURN]]…", one a site; without any, the best chain of every site is taken. take:
    "SITE=PART@TURN[,PART@TURN]…", the option to take at a site while the others keep their best. aims: "[SITE:]X,Y,Z",
    scan coordinates; without, the planned teeth's, or the mean of the axes. tissue, opposing, teeth: surfaces in scan
    coordinates. below: "SITE=ABUTMENT[@TURN]", the abutment in the mouth that carries the site. accept: "SITE=REASON"
    for a site whose verdict is `do not use`. one_path: where it has the choice, take the chains that share one path of
    insertion. join_to: the measured scan; then tissue and opposing come in frames of their own and are joined to it
    first, the latter by way of `bite`.

    Raises UsageError, ResultError, PartsError, ScanError or JoinError, each in one line.
    """
    record = result if isinstance(result, Record) else read_result(result)
    folder = parts if isinstance(parts, PartsFolder) else load_parts(parts)
    wishes = wishes_of(sites, aims, below, accept, one_path, channel_diameter, take)
    gum, other = _scan(tissue), _scan(opposing)
    found = _joins(record, gum, other, _scan(join_to), _scan(bite))
    around = Surroundings(
        _surface(gum, found.get("tissue")), _surface(other, found.get("opposing")), _surface(_scan(teeth), None)
    )
    made = placed(record, folder, wishes, around)
    said = tuple(f"{role}: {one.words()}" for role, one in found.items())
    return replace(made, joins=found, warnings=made.warnings + said)


def _scan(source: str | Path | Scan | None) -> Scan | None:
    return source if source is None or isinstance(source, Scan) else read_scan(source)


def _surface(scan: Scan | None, join: Join | None) -> Surface | None:
    """The surface of a scan, in the measured scan's coordinates."""
    if scan is None:
        return None
    return scan.whole() if join is None else scan.whole().moved(join.first_from_second)


def _joins(
    record: Record, tissue: Scan | None, opposing: Scan | None, bodies: Scan | None, bite: Scan | None
) -> Mapping[str, Join]:
    """Raises UsageError where the scan joined to is not the measured one, or nothing is to be joined."""
    if bodies is None:
        if bite is not None:
            raise UsageError("--bite: says where the opposing jaw lies only together with --join, the measured scan.")
        return {}
    if bodies.sha256 != record.scan.sha256:
        raise UsageError(
            f"--join {bodies.file}: is not the scan that was measured: its SHA-256 differs; give that one."
        )
    if tissue is None and (opposing is None or bite is None):
        raise UsageError("--join: there is nothing to join; give --tissue, or --opposing with --bite.")
    return joins(bodies, sites_of(record), tissue, opposing, bite)


def placed(record: Record, folder: PartsFolder, wishes: Wishes, around: Surroundings) -> Placement:
    """The whole of it. Raises UsageError."""
    known = tuple(site.site for site in record.sites)
    if not known:
        raise UsageError(
            f"{record.name}: the result has no site, so there is nothing to place parts on; measure again."
        )
    asked = (("--site", wishes.chains), ("take", wishes.taken), ("--aim", wishes.aims), ("--below", wishes.below))
    for option, named in asked:
        require_sites(option, named, known)
    chosen = tuple(site for site in record.sites if not wishes.chains or site.site in wishes.chains)
    feet = footings(chosen, wishes.accepted, known)
    for site in chosen:
        _require_connection(site, folder)
    _require_near(chosen, around)
    teeth = _teeth(chosen, wishes, around)
    aims = _aims(record, chosen, wishes, teeth)
    several = len(chosen) > 1 and record.work != "single"
    tissues = [_tissue(site, around) for site in chosen]
    rankings = [_ranking(site, folder, wishes, aim) for site, aim in zip(chosen, aims, strict=True)]
    joint = joint_options(rankings) if several else ()
    ways = _taken(chosen, rankings, joint, wishes)
    sites = tuple(
        _site(foot, folder, wishes, around, aim, ranking, way, tissue, tooth, several)
        for foot, aim, ranking, way, tissue, tooth in zip(feet, aims, rankings, ways, tissues, teeth, strict=True)
    )
    return _together(record, folder, sites, ways, joint, around)


def _require_connection(site: RecordSite, folder: PartsFolder) -> None:
    """Raises UsageError where the folder does not know the site's connection, or knows it otherwise."""
    try:
        connection = folder.connection(site.connection)
    except KeyError:
        known = ", ".join(connection.id for connection in folder.connections)
        raise UsageError(
            f"site {site.site}: the parts folder has no connection '{site.connection}', on which it was measured; it "
            f"has {known}. Give the folder that the scan was measured with."
        ) from None
    if connection.index_order != site.index_order:
        raise UsageError(
            f"site {site.site}: '{site.connection}' has {site.index_order} index marks in the result, "
            f"{connection.index_order} in the parts folder; give the folder that the scan was measured with."
        )


def _require_near(sites: tuple[RecordSite, ...], around: Surroundings) -> None:
    centres = np.array([site.scan_from_connection[:3, 3] for site in sites])
    if around.tissue is not None:
        require_near(around.tissue, centres, "--tissue")
    if around.teeth is not None:
        require_near(around.teeth, centres, "--teeth", 20.0)
    if around.opposing is not None:
        require_near(around.opposing, centres, "--opposing", 40.0)


Tooth = tuple[Surface, FloatArray] | None


def _teeth(sites: tuple[RecordSite, ...], wishes: Wishes, around: Surroundings) -> list[Tooth]:
    """The planned tooth over each site and the middle of its biting surface. Raises UsageError.

    A site without one is refused unless it has an aim without it.
    """
    if around.teeth is None:
        return [None] * len(sites)
    parts = pieces(around.teeth)
    found: list[Tooth] = []
    for site in sites:
        try:
            found.append(tooth_over(parts, site.scan_from_connection, site.site))
        except UsageError:
            if site.site not in wishes.aims and wishes.every_aim is None:
                raise
            found.append(None)
    return found


def _aims(
    record: Record, sites: tuple[RecordSite, ...], wishes: Wishes, teeth: list[Tooth]
) -> list[FloatArray]:  # fmt: skip
    """One a site: its own, the one for all, the planned tooth's, or the mean of all axes. Raises UsageError."""
    total = np.sum([site.scan_from_connection[:3, 2] for site in record.sites], axis=0)
    found = []
    for site, tooth in zip(sites, teeth, strict=True):
        aim = wishes.aims.get(site.site, wishes.every_aim)
        if aim is None and tooth is not None:
            aim = aim_at(tooth[1], site.scan_from_connection[:3, 3])
        if aim is None:
            if float(np.linalg.norm(total)) < LEAST_MEAN:
                raise UsageError(
                    "the axes have no mean direction; say by --aim=X,Y,Z where screw channels should leave."
                )
            aim = unit(total)
        found.append(aim)
    return found


def _tissue(site: RecordSite, around: Surroundings) -> Tissue | None:
    if around.tissue is None:
        return None
    return tissue_around(around.tissue, site.scan_from_connection, site.platform_diameter)


def _said(site: RecordSite, steps: Sequence[Step]) -> str:
    return f"{site.site}={','.join(step.part + ('' if step.turn is None else f'@{step.turn}') for step in steps)}"


def _names(steps: Sequence[Step]) -> tuple[tuple[str, int], ...]:
    return tuple((step.part, step.turn or 0) for step in steps)


def _ranking(site: RecordSite, folder: PartsFolder, wishes: Wishes, aim: FloatArray) -> Ranking:
    steps, taken = wishes.chains.get(site.site), wishes.taken.get(site.site)
    if steps is not None:
        ways = ways_of(folder, site.connection, steps, f"--site {_said(site, steps)}")
    else:
        ways = ways_on(folder, site.connection)
    if taken is not None and _names(taken) not in {way.names for way in ways}:
        ways = (*ways, *ways_of(folder, site.connection, taken, f"site {_said(site, taken)}"))
    return ranked(ways, site.scan_from_connection, aim)


def _taken(
    sites: tuple[RecordSite, ...], rankings: list[Ranking], joint: tuple[Joint, ...], wishes: Wishes
) -> list[Way]:
    """The chain of each site: its best, the one to take, or with one_path that of the best joint option."""
    by_name = [{way.names: way for way in ranking.ways} for ranking in rankings]
    if wishes.one_path and joint:
        return [names[chain] for names, chain in zip(by_name, joint[0].chains, strict=True)]
    ways = [ranking.ways[0] if ranking.ways else Way((), np.eye(4)) for ranking in rankings]
    for k, site in enumerate(sites):
        steps = wishes.taken.get(site.site)
        if steps is not None:
            ways[k] = by_name[k][_names(steps)]
    return ways


def _site(
    foot: Footing,
    folder: PartsFolder,
    wishes: Wishes,
    around: Surroundings,
    aim: FloatArray,
    ranking: Ranking,
    way: Way,
    tissue: Tissue | None,
    tooth: Tooth,
    several: bool,
) -> PlacedSite:
    site = foot.site
    upper = upper_of(way, folder, site.connection, site.scan_from_connection, site.covariance)
    channel = _channel(way, upper.scan_from_connection, aim, upper.u95.axis_deg)
    if tooth is not None:
        start = collar_height(way) - float(way.connection_from_upper[2, 3])
        out = exit_of(*tooth, channel.origin, channel.direction, start, wishes.channel_diameter)
        channel = replace(channel, exit=out)
    step = wishes.below.get(site.site)
    greatest = tissue.greatest if tissue is not None else None
    room = None if around.opposing is None else room_along(around.opposing, channel.origin, channel.direction)
    return PlacedSite(
        footing=foot,
        aim=aim,
        chain=_links(way, folder, site),
        upper=upper,
        channel=channel,
        options=options_of(ranking, folder, several, greatest),
        below=None if step is None else below_of(site, step, folder),
        tissue=tissue,
        room_mm=room,
        notes=_notes(foot, way, channel, around, room),
        chosen=site.site in wishes.chains or site.site in wishes.taken,
    )


def _channel(way: Way, scan_from_upper: FloatArray, aim: FloatArray, u95_deg: float) -> Channel:
    axis = scan_from_upper[:3, 2]
    off = float(np.degrees(np.arctan2(np.linalg.norm(np.cross(axis, aim)), axis @ aim)))
    lean = min(off, way.tilt_max_deg)
    angle = round(off - lean, DIGITS)
    return Channel(scan_from_upper[:3, 3], leaning(axis, aim, lean), angle, round(lean, DIGITS), u95_deg)


def _links(way: Way, folder: PartsFolder, site: RecordSite) -> tuple[Link, ...]:
    """scan_from_part = scan_from_connection · RotateZ(turn), each on what the part below it provides."""
    here, links = site.scan_from_connection, []
    for part, turn in way.steps:
        stands = here @ turned(turn, folder.connection(part.seats_on).index_order)
        links.append(Link(part, turn, stands))
        if isinstance(part, MultiUnitAbutment):
            here = stands @ part.lower_from_upper
    return tuple(links)


def _notes(foot: Footing, way: Way, channel: Channel, around: Surroundings, room: float | None) -> tuple[str, ...]:
    notes = [foot.note] if foot.note else []
    notes += [f"finding: {finding.cause}" for finding in foot.site.findings]
    if not way.steps:
        notes.append(f"no part of the folder fits on '{foot.site.connection}'")
    if around.opposing is not None and room is None:
        notes.append("the channel meets no opposing surface")
    top = way.steps[-1][0] if way.steps else None
    if room is not None and isinstance(top, TitaniumBase) and room < top.gingival_height + top.height:
        notes.append(f"{top.id} is {top.gingival_height + top.height:.1f} mm high; the room is {room:.1f} mm")
    if channel.exit is not None:
        if channel.exit.point is None:
            notes.append("the channel does not pass through the planned tooth")
        elif channel.exit.wall_mm is not None and channel.exit.wall_mm <= 0.0:
            notes.append("the channel breaks through the side of the planned tooth")
    return tuple(notes)


def _together(
    record: Record,
    folder: PartsFolder,
    sites: tuple[PlacedSite, ...],
    ways: list[Way],
    joint: tuple[Joint, ...],
    around: Surroundings,
) -> Placement:
    axes = np.array([site.upper.scan_from_connection[:3, 2] for site in sites])
    tilts = [site.upper.covariance[3:5, 3:5] for site in sites]
    shapes = Shapes()
    if around.tissue is not None:
        sites = tuple(_free(site, around.tissue, shapes) for site in sites)
    warnings = list(astray({site.site: site.tissue for site in sites if site.tissue is not None}))
    if around.opposing is not None:
        warnings += unmet([site.room_mm for site in sites])
    if record.parts.sha256 and record.parts.sha256 != folder.sha256:
        warnings.append(
            "the parts folder is not in the state in which the scan was measured; see that it is the right one"
        )
    if all(site.footing.site.verdict is None for site in sites):
        warnings.append("the result gives no verdict, so nothing says whether these positions are within the limits")
    if record.together is not None and record.together.verdict == "do not use" and len(sites) > 1:
        warnings.append(f"the sites as a set: verdict `do not use`: {record.together.because}")
    return Placement(
        result=record.name,
        scan_sha256=record.scan.sha256,
        parts=PartsInfo(folder.name, folder.revision, folder.sha256),
        work=record.work,
        sites=sites,
        insertion=insertion_of(axes, [seat_half_angle_deg(way) for way in ways], tilts),
        joint=joint,
        near=nearnesses([(site.site, site.chain) for site in sites], shapes),
        warnings=tuple(warnings),
    )


def _free(site: PlacedSite, tissue: Surface, shapes: Shapes) -> PlacedSite:
    """The site with a note where what should stand free lies in the tissue or in a neighbour."""
    centre = site.footing.site.scan_from_connection[:3, 3]
    near = around_of(tissue, centre[None], TISSUE_REACH)
    if not len(near.faces) or not site.chain:
        return site
    tree = SurfaceTree.of(Surface(near.vertices - centre, near.faces))
    notes = []
    for link in site.chain:
        depth = into_tissue(link, tree, shapes, centre)
        if depth > 0.0:
            what = "bonding surface" if isinstance(link.part, TitaniumBase) else "upper seat"
            notes.append(f"{link.part.id}: its {what} lies up to {depth:.1f} mm in the tissue or a neighbour")
    return replace(site, notes=site.notes + tuple(notes))
