"""The page as its user starts it: a process of its own, an address, a client that holds the cookie."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx

from stylobate.simulate import Noise, Settings, demo_bodies, scene
from stylobate.simulate.demo import demo_parts
from stylobate.simulate.files import scene_files

PATIENCE_S = 120.0


@dataclass
class Page:
    """A running page. client: has been let in."""

    process: subprocess.Popen[str]
    address: str
    client: httpx.Client

    @property
    def base(self) -> str:
        """Scheme, host and port."""
        return self.address.split("/open/")[0]

    def state(self) -> dict[str, Any]:
        """What the page is told."""
        values: dict[str, Any] = self.client.get("/api/state").json()
        return values

    def settled(self) -> dict[str, Any]:
        """The state once nothing is under way and, where there is a result, its surfaces are painted."""
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            state = self.state()
            if state["job"] is None and (state["result"] is None or state["scene"] is None or state["scene"]["paint"]):
                return state
            time.sleep(0.1)
        raise AssertionError(f"still busy after {PATIENCE_S:g} s: {self.state()['job']}")


@contextmanager
def page(*words: str | Path) -> Iterator[Page]:
    """`stylobate open WORDS --no-browser`, ended afterwards."""
    command = [sys.executable, "-m", "stylobate", "open", *map(str, words), "--no-browser"]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=os.environ
    ) as process:
        assert process.stdout is not None
        try:
            address = process.stdout.readline().strip()
            assert address, process.stderr.read() if process.stderr else ""
            base = address.split("/open/")[0]
            with httpx.Client(base_url=base, headers={"origin": base}, timeout=30.0) as client:
                yield Page(process, address, client)
        finally:
            process.terminate()
            process.wait(30)
            assert process.stderr is not None
            process.stderr.read()


def enter(running: Page) -> None:
    """Use the one-time address for the client."""
    assert running.client.get(running.address).status_code == 303


def small_scene(folder: Path) -> tuple[Path, Path]:
    """A scan with one body and the parts, as files: the path of each."""
    made = scene(Settings(seed=5, arch="single", bodies=("alder-tall",), edge_mm=0.25, teeth=False,
                          noise=Noise(6.0, 6.0, 0.8)), demo_bodies())  # fmt: skip
    demo_parts(folder / "parts")
    scan = folder / "arch.stl"
    scan.write_bytes(scene_files(made, "stl")["scan.stl"])
    return scan, folder / "parts"
