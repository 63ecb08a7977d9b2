"""Scans of one mouth into one frame, over the teeth that they share (docs/method/join.md)."""

from __future__ import annotations

from stylobate.joining.model import Join
from stylobate.joining.roles import joins, moved_scan, sites_of
from stylobate.joining.verb import LIMIT_UM, Jaw, Site, join

__all__ = ["LIMIT_UM", "Jaw", "Join", "Site", "join", "joins", "moved_scan", "sites_of"]
