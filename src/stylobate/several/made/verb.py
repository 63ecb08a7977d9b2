"""`frame`: the surface of a finished frame → the poses of its seats, as a result."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import combinations, permutations
from pathlib import Path

import numpy as np

from stylobate.core.errors import FitError, UsageError
from stylobate.core.result import Deviation, NotShown, PartsInfo, Result, ScanInfo, Site
from stylobate.core.rigid import pose, rotation_exp
from stylobate.core.surface import Scan
from stylobate.core.types import FloatArray, LongArray
from stylobate.parts import PartsFolder, load_parts
from stylobate.record import Record, RecordSite, read_standing
from stylobate.scan import read_scan
from stylobate.several.lay import laid, landmarks
from stylobate.several.made.points import surface_points
from stylobate.several.made.seats import PLAIN, Form, forms_of, plain_form
from stylobate.several.made.settle import Seated, reach_of, seated
from stylobate.uncertainty.bounds import axis_angle_deg, bounds, pair

MOST_POINTS = 8
"""Rough points whose order is tried in full."""
LEANS_DEG = (0.0, 5.0, -5.0, 10.0, -10.0)
"""Turns about the line of the seats that are tried where rough points place them."""
TRIES = 2
"""Times that missed seats are looked for again."""
OFF_MM, OFF_DEG = 0.5, 3.0
"""How far a seat may stand from where it was to be made, the others laid on theirs: beyond it is no error of making."""
ASTRAY = 10.0
"""mm of the surface, beyond what a seat's form may reach, that are kept about each start: how far a seat is looked for
again, once others are found."""
POINTS_OFF = 2.0
"""mm rms by which rough points may stand off from the sites."""
NOT_SHOWN = (
    NotShown("fit of the frame", "Lay it on the implants with `stylobate seat`; then try it in, one screw at a time."),
)


def frame(
    surface: Scan | str | Path,
    like: Record | str | Path,
    parts: PartsFolder | str | Path,
    *,
    near: Sequence[Sequence[float]] = (),
) -> Result:
    """Find the seats in the surface of a designed or scanned frame.

    like: the result that the frame was made to. near: rough points at the seats, one for each site in any order, in
    the coordinates of `surface`; without them the surface lies in the coordinates of `like`, as a design does.

    Raises ScanError, PartsError, ResultError, UsageError; FitError where a seat is not found.
    """
    known = like if isinstance(like, Record) else read_standing(like)
    folder = parts if isinstance(parts, PartsFolder) else load_parts(parts)
    read = surface if isinstance(surface, Scan) else read_scan(surface)
    forms = _forms(known, folder)
    moved = np.eye(4)
    moved[:3, 3] = -read.origin
    starts = [moved @ here for here in _starts(known, near)]
    places = np.array([here[:3, 3] for here in starts])
    points, normals = surface_points(
        read.surface, places, reach_of(tuple(f for some in forms.values() for f in some)) + ASTRAY
    )

    def look(start: FloatArray, site: RecordSite) -> Seated | None:
        return seated(points, normals, forms[site.connection], start)

    found: list[Seated | None] = []
    for lean in LEANS_DEG if near else (0.0,):
        leaning = _leaning(starts, np.radians(lean))
        found = _found(known, leaning, look)
        if all(found):
            break
    seats = [_at(*one, read) for one in zip(known.sites, found, starts, strict=True)]
    sites = tuple(_site(site, one, folder, read.origin) for site, one in zip(known.sites, seats, strict=True))
    return Result(
        scan=ScanInfo(Path(read.file).name, read.sha256, len(read.surface.faces)),
        parts=PartsInfo(folder.name, folder.revision, folder.sha256),
        work=known.work or "bridge",
        sites=sites,
        pairs=tuple(
            pair((a.site, b.site), (a.scan_from_connection, b.scan_from_connection), (a.covariance, b.covariance))
            for a, b in combinations(sites, 2)
        ),
        not_shown=NOT_SHOWN,
        warnings=(*read.warnings, *_wrong_parts(known.sites, seats), *_otherwise(known, seats)),
    )


def _forms(like: Record, folder: PartsFolder) -> dict[str, tuple[Form, ...]]:
    """The forms that each connection's seats may have; a plain one only where the folder says how wide it is.

    Raises UsageError where there is no site, or one for whose seat there is no form.
    """
    if not like.sites:
        raise UsageError(f"{like.name}: holds no site, so no seat can be looked for; name what the frame was made to")
    known = {connection.id: connection for connection in folder.connections}
    forms = forms_of(folder)
    found = {}
    for name in {site.connection for site in like.sites}:
        found[name] = (*forms, plain_form(known[name])) if name in known else forms
        if not found[name]:
            raise UsageError(
                f"the parts folder '{folder.name}' has no base, abutment or analog that a frame could seat by, and no "
                f"connection '{name}'; name the folder that {like.name} was measured with"
            )
    return found


def _starts(like: Record, near: Sequence[Sequence[float]]) -> list[FloatArray]:
    """Where the seats about are, in the coordinates of the surface."""
    poses = [site.scan_from_connection for site in like.sites]
    if not near:
        return poses
    points = np.array(near, dtype=np.float64)
    if len(points) != len(poses):
        raise UsageError(f"{len(points)} rough points for {len(poses)} sites; give one for each, in any order")
    if not 3 <= len(points) <= MOST_POINTS:
        raise UsageError(f"rough points serve 3 to {MOST_POINTS} sites; bring the frame into the scan's coordinates")
    centres = np.array(poses)[:, :3, 3]
    orders = np.array(list(permutations(range(len(points)))))
    motions = laid(np.broadcast_to(centres, (len(orders), *centres.shape)), points[orders])
    off = np.einsum("dij,nj->dni", motions[:, :3, :3], centres) + motions[:, None, :3, 3] - points[orders]
    rms = np.sqrt(np.mean(np.sum(off**2, axis=2), axis=1))
    best = int(rms.argmin())
    if rms[best] > POINTS_OFF:
        raise UsageError(
            f"the rough points do not stand as the sites of {like.name} do ({rms[best]:.1f} mm off at best); "
            "give one at each seat, in the coordinates of the frame's surface"
        )
    return [motions[best] @ one for one in poses]


def _found(
    like: Record, starts: list[FloatArray], look: Callable[[FloatArray, RecordSite], Seated | None]
) -> list[Seated | None]:
    """A seat at every start; where one is missed, those found say better where it is."""
    poses = np.array([site.scan_from_connection for site in like.sites])
    found = [look(start, site) for start, site in zip(starts, like.sites, strict=True)]
    for _ in range(TRIES):
        known = [k for k, one in enumerate(found) if one is not None]
        if not 2 <= len(known) < len(found):  # one seat may turn about its axis
            break
        there = np.array([one.scan_from_connection for one in found if one is not None])
        motion = laid(landmarks(poses[known]), landmarks(there))
        for k in set(range(len(found))) - set(known):
            found[k] = look(motion @ poses[k], like.sites[k])
    return found


def _leaning(starts: list[FloatArray], angle: float) -> list[FloatArray]:
    """The starts turned together about the line along which they mostly lie: rough points hold that turn least."""
    centres = np.array(starts)[:, :3, 3]
    middle = centres.mean(axis=0)
    line = np.linalg.svd(centres - middle)[2][0]
    turned = pose(rotation_exp(angle * line), np.zeros(3))
    turned[:3, 3] = middle - turned[:3, :3] @ middle
    return [turned @ start for start in starts]


def _at(site: RecordSite, one: Seated | None, start: FloatArray, surface: Scan) -> Seated:
    if one is None:
        x, y, z = start[:3, 3] + surface.origin
        raise FitError(
            f"no seat was found in the frame's surface for site {site.site}, near {x:.1f}, {y:.1f}, {z:.1f} mm; check "
            "coordinates (--near gives rough points), units, and that the parts folder holds the part below the frame"
            + "".join(f"; {warning}" for warning in surface.warnings)
        )
    return one


def _wrong_parts(sites: Sequence[RecordSite], found: Sequence[Seated]) -> tuple[str, ...]:
    names = [site.site for site, one in zip(sites, found, strict=True) if one.form.part == PLAIN]
    plain = (
        f"Site{'s' if len(names) > 1 else ''} {', '.join(names)}: the frame shows no part of the folder there but"
        " a plain ring as wide as the platform, which has no turn."
    )
    return ((plain,) if names else ()) + tuple(
        f"Site {site.site}: the frame seats by {one.form.part}, made for {one.form.connection}; "
        f"the implant has {site.connection}."
        for site, one in zip(sites, found, strict=True)
        if one.form.connection != site.connection
    )


def _otherwise(like: Record, found: Sequence[Seated]) -> tuple[str, ...]:
    """Whether the seats stand to each other as in `like`; else the one without which the rest does so best."""
    poses = np.array([site.scan_from_connection for site in like.sites])
    made = np.array([one.scan_from_connection for one in found])
    every = np.arange(len(poses))
    if len(poses) < 2 or _within(poses, made, every, every):
        return ()
    rest = [every[every != k] for k in every]
    k = min(every, key=lambda k: float(np.max(_off(poses, made, rest[k], rest[k]) / [OFF_MM, OFF_DEG])))
    if len(poses) > 2 and _within(poses, made, rest[k], rest[k]):
        shift, lean = _off(poses, made, rest[k], every[k : k + 1])[0]
        return (
            f"Site {like.sites[k].site}: the seat stands {shift:.2f} mm and {lean:.1f}° from where {like.name} has it, "
            "the others laid on theirs. Is the part below turned otherwise, or another one?",
        )
    shift, lean = _off(poses, made, every, every).max(axis=0)
    return (f"The seats do not stand to each other as in {like.name}: up to {shift:.2f} mm and {lean:.1f}° off.",)


def _within(poses: FloatArray, made: FloatArray, held: LongArray, asked: LongArray) -> bool:
    return bool((_off(poses, made, held, asked) <= [OFF_MM, OFF_DEG]).all())


def _off(poses: FloatArray, made: FloatArray, held: LongArray, asked: LongArray) -> FloatArray:
    """(k, 2) mm and degrees between the seats `asked` and where they were to be, those `held` laid on theirs."""
    there = laid(landmarks(poses[held]), landmarks(made[held])) @ poses[asked]
    shift = np.linalg.norm(there[:, :3, 3] - made[asked][:, :3, 3], axis=1)
    lean = [axis_angle_deg(one, two) for one, two in zip(there, made[asked], strict=True)]
    return np.stack([shift, lean], axis=1)


def _site(like: RecordSite, one: Seated, folder: PartsFolder, origin: FloatArray) -> Site:
    form: Form = one.form
    connection = folder.connection(form.connection)
    placed = one.scan_from_connection.copy()
    placed[:3, 3] += origin
    residual = 1e3 * one.residual
    return Site(
        site=like.site,
        scan_body=form.part,
        connection=form.connection,
        platform_diameter=connection.platform_diameter,
        index_order=connection.index_order,
        scan_from_connection=placed,
        covariance=one.covariance,
        u95=bounds(one.covariance, connection.index_order),
        deviation=Deviation(
            len(residual),
            float(residual.mean()),
            float(np.sqrt(np.mean(residual**2))),
            float(np.quantile(np.abs(residual), 0.95)),
        ),
        coverage=one.seen,
    )
