"""What a method answers, and which methods there are."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module

from bench.scenes import Task
from stylobate.core.types import FloatArray


@dataclass(frozen=True)
class Found:
    """One site as a method gives it. covariance (6, 6), u95 (platform mm, axis rad, index rad) where it has them.

    flags: causes of its findings, and its verdict where that is not `use`.
    """

    scan_body: str
    scan_from_connection: FloatArray
    covariance: FloatArray | None = None
    u95: tuple[float, float, float | None] | None = None
    flags: tuple[str, ...] = ()


Method = Callable[[Task], list[Found]]

BLIND = {
    "ours": "bench.ours:blind",
    "open3d-ransac": "bench.peers:ransac",
    "open3d-fgr": "bench.peers:fgr",
    "kiss-matcher": "bench.peers:kiss",
}
NEAR = {
    "ours": "bench.ours:near",
    "open3d-plane": "bench.near:open3d_plane",
    "small-gicp": "bench.near:gicp",
    "small-gicp-plane": "bench.near:gicp_plane",
    "trimesh": "bench.near:trimesh_icp",
}
"""Name in the tables → module:function. A package that is not installed is said so in the table."""


def load(where: str) -> Method:
    """The function behind `module:function`. Raises ImportError where its package is not installed."""
    module, name = where.split(":")
    method: Method = getattr(import_module(module), name)
    return method
