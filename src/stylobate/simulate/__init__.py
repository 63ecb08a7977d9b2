"""Truth to scan: invented bodies, scenes, faults and the least uncertainty that a scene allows.

Sees core and parts only, never a stage: the judge shares no code with what it judges.
"""

from __future__ import annotations

from stylobate.simulate.bodies import FAMILIES, draw_bodies, draw_body, near_twins
from stylobate.simulate.cramer_rao import bound
from stylobate.simulate.demo import demo_bodies, demo_files, demo_parts
from stylobate.simulate.files import write
from stylobate.simulate.making import Scene, Truth, scene
from stylobate.simulate.settings import Drift, Fault, Noise, Placed, Settings
from stylobate.simulate.visits import Visit, again, bite

__all__ = [
    "FAMILIES",
    "Drift",
    "Fault",
    "Noise",
    "Placed",
    "Scene",
    "Settings",
    "Truth",
    "Visit",
    "again",
    "bite",
    "bound",
    "demo_bodies",
    "demo_files",
    "demo_parts",
    "draw_bodies",
    "draw_body",
    "near_twins",
    "scene",
    "write",
]
