"""Scans of one mouth into one frame, over the teeth that they share (docs/method/join.md)."""

from __future__ import annotations

from stylobate.joining.model import Join
from stylobate.joining.motion import Motion
from stylobate.joining.roles import joins, moved_scan, sites_of
from stylobate.joining.verb import LIMIT_UM, Jaw, Laid, Site, join, laid

__all__ = ["LIMIT_UM", "Jaw", "Join", "Laid", "Motion", "Site", "join", "joins", "laid", "moved_scan", "sites_of"]
