"""Every source of a site's uncertainty with its figure, or said to have none (JCGM 100:2008; method/trust, eq. 6–8).

A source without a figure is listed with none: it counts neither as zero nor as anything else.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stylobate.core.result import BudgetRow
from stylobate.core.types import FloatArray
from stylobate.parts.model import Connection, ScanBody
from stylobate.settings import DRIFT_MM, Drift, Seating, Settings, Temperature

NOT_STATED = "not stated"
UM = 1e-3
REMEDIES = {
    "scan": "scan the scan body again, from the sides that are missing",
    "join": "scan these bodies and more of the teeth in one scan",
    "made part": "use scan bodies that their maker makes, or has measured, more closely",
    "seating": "tighten to the maker's torque and confirm the seat on a radiograph",
    "play": "turn the scan body, and later the part, to the same stop before tightening",
    "temperature": "let the scan body take the mouth's temperature, or use one of metal",
    "drift": "scan again, or bind the scan to a reference of known distances",
}


@dataclass(frozen=True)
class Source:
    """One source: covariance (6, 6) of ξ, mm and radians, None where no figure is known, and where it is from.

    turn_only: the source acts on the turn alone, and says nothing of platform and axis.
    """

    name: str
    covariance: FloatArray | None
    origin: str
    turn_only: bool = False

    def row(self, indexed: bool) -> BudgetRow:
        """Standard uncertainties: platform over three axes, axis over two tilts, turn where the connection has one."""
        if self.covariance is None:
            return BudgetRow(self.name, None, None, None, self.origin)
        variance = np.diag(self.covariance)
        turn = float(np.degrees(np.sqrt(variance[5]))) if indexed else None
        if self.turn_only:
            return BudgetRow(self.name, None, None, turn, self.origin)
        platform = 1e3 * float(np.sqrt(variance[:3].sum()))
        return BudgetRow(self.name, platform, float(np.degrees(np.sqrt(variance[3:5].sum()))), turn, self.origin)


@dataclass(frozen=True)
class Leg:
    """From one site to another: way along the sites between them, mm; straight (3,) mm, in the connection frame."""

    way: float
    straight: FloatArray


def sources(
    scan: FloatArray, made: FloatArray, body: ScanBody, connection: Connection, settings: Settings, farthest: Leg | None
) -> tuple[Source, ...]:
    """All sources of one site.

    scan: covariance (6, 6) of the scan alone. made (6, 2): ξ for one mm more diameter and for one mm more height of
    the made part. farthest: to the site farthest along the arch, None for a single site.
    """
    return (
        Source("scan", scan, "this scan"),
        _made_part(made, body),
        _seating(settings.seating),
        _play(connection),
        _temperature(settings.temperature, made, body),
        _drift(settings.drift, farthest),
    )


def total(parts: tuple[Source, ...]) -> FloatArray:
    """Covariance (6, 6) of all sources that have a figure, taken as independent (JCGM 100:2008, 5.1.2)."""
    return combined([part.covariance for part in parts if part.covariance is not None])


def combined(covariances: list[FloatArray]) -> FloatArray:
    """Sum of the covariances of independent contributions."""
    return np.asarray(np.sum(covariances, axis=0))


def propagated(jacobian: FloatArray, covariance: FloatArray) -> FloatArray:
    """Covariance J·U·Jᵀ of outputs whose inputs have covariance U, correlations counted (JCGM 100:2008, 5.2; F.1)."""
    return np.asarray(jacobian @ covariance @ jacobian.T)


def without_figure(parts: tuple[Source, ...]) -> tuple[str, ...]:
    """Names of the sources whose figure nobody has stated."""
    return tuple(part.name for part in parts if part.covariance is None and part.origin.startswith(NOT_STATED))


def largest(rows: tuple[BudgetRow, ...]) -> BudgetRow:
    """The row that moves the platform most."""
    return max(rows, key=lambda row: row.platform_um or 0.0)


def _made_part(made: FloatArray, body: ScanBody) -> Source:
    if body.made_u_um is None:
        return Source("made part", None, f"{NOT_STATED} in the parts folder (made_u_um)")
    inputs = np.eye(2) * (body.made_u_um * UM) ** 2
    return Source("made part", propagated(made, inputs), f"parts folder, made_u_um = {body.made_u_um:g}")


def _seating(seating: Seating | None) -> Source:
    if seating is None:
        return Source("seating", None, f"{NOT_STATED}; it depends on torque and material, and no scan shows it")
    side, height, tilt = seating.side_um * UM, seating.height_um * UM, np.radians(seating.tilt_deg)
    return Source("seating", np.diag([side, side, height, tilt, tilt, 0.0]) ** 2, f"settings: {seating.source}")


def _play(connection: Connection) -> Source:
    if connection.index_order == 0:
        return Source("play", None, "the connection is not indexed: its turn means nothing", True)
    if connection.play_deg is None:
        return Source("play", None, f"{NOT_STATED} in the parts folder (play_deg)", True)
    turn = np.radians(connection.play_deg) / 2.0 / np.sqrt(3.0)  # anywhere between the stops: rectangular
    origin = f"parts folder, play_deg = {connection.play_deg:g}, anywhere between the stops"
    return Source("play", np.diag([0.0, 0.0, 0.0, 0.0, 0.0, turn**2]), origin, True)


def _temperature(temperature: Temperature | None, made: FloatArray, body: ScanBody) -> Source:
    if temperature is None:
        return Source("temperature", None, f"{NOT_STATED}; a polymer body of 10 mm grows by 8 µm from 20 to 37 °C")
    strain = temperature.coefficient_ppm * 1e-6 * temperature.kelvin
    grown = made @ (size_of(body) * np.array([2.0, 1.0]) * strain)
    return Source("temperature", np.outer(grown, grown), f"settings: {temperature.source}")


def _drift(drift: Drift | None, farthest: Leg | None) -> Source:
    if farthest is None:
        return Source("drift", None, "one site: nothing to drift from")
    if drift is None:
        return Source("drift", None, f"{NOT_STATED}: no scanner profile")
    origin = f"settings: {drift.source}; towards the site {farthest.way:.0f} mm along the arch"
    return Source("drift", drift_over(drift, farthest), origin)


def drift_over(drift: Drift, leg: Leg) -> FloatArray:
    """Covariance (6, 6) of ξ of a site as seen from the one at the leg's end (method/profile, eqs. 6 and 7)."""
    walk = np.repeat([drift.distance_um * UM, np.radians(drift.angle_deg)], 3) ** 2 * leg.way / DRIFT_MM
    stretch = np.concatenate([drift.scale_ppm * 1e-6 * leg.straight, np.zeros(3)])
    return np.asarray(np.diag(walk) + np.outer(stretch, stretch))


def size_of(body: ScanBody) -> FloatArray:
    """Widest radius and top of a scan body, mm."""
    vertices = body.surface.vertices
    return np.array([np.linalg.norm(vertices[:, :2], axis=1).max(), vertices[:, 2].max()])
