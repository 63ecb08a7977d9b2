"""How a large scan comes to the browser and moves there: python -m bench.picture [EDGE_MM [full]].

An invented full arch with six scan bodies, every triangle cut into four: about a million at the default edge. The
result is put together from the truth, not measured. Printed: bytes sent for the whole picture and for the reduced one;
then, for the reduced one (or the whole one, where `full` is asked for), time to the picture, time of picking, frames a
second while it turns. Headless Chromium draws by software here; times depend on the machine and on what else runs.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
from playwright.sync_api import Browser, sync_playwright

from stylobate.core.result import SiteMap
from stylobate.core.surface import Surface
from stylobate.core.types import FloatArray, IntArray
from stylobate.report.folder import staging
from stylobate.report.meshes import ply_bytes
from stylobate.report.save import save
from stylobate.simulate import Noise, Settings, demo_bodies, scene
from stylobate.simulate.demo import demo_parts
from tests.doors.handmade import measurement, site_at

BODIES = ("alder-tall", "alder-wide") * 3
REACH = 3.0
"""mm about a site's axis within which the surface counts as its body's."""
TURNS = 30
READY_JS = "Boolean(window.arch && window.arch.stats.treeMs > 0 && window.arch.paintKey)"
TURN_JS = """async (turns) => {
  const frame = () => new Promise(requestAnimationFrame);
  const began = performance.now();
  for (let k = 0; k < turns; k++) { window.arch.nudge(0.05, 0, 0); await frame(); }
  return (performance.now() - began) / turns;
}"""
SENT_JS = """async () => {
  const { scene } = await (await fetch('/api/state')).json();
  const sizes = async (keys) => {
    let sum = 0;
    for (const key of keys) sum += Number((await fetch(`/api/surface/${key}`)).headers.get('content-length'));
    return sum;
  };
  const keys = [scene.geometry, scene.paint];
  return [await sizes([...keys, `${scene.geometry}-coarse`]), await sizes(keys.map((key) => `${key}-compact`))];
}"""
PICK_JS = """() => {
  const box = document.querySelector('.picture canvas').getBoundingClientRect();
  const took = [];
  for (let k = 0; k < 25; k++) {
    const began = performance.now();
    window.arch.pick(box.left + box.width * (0.3 + 0.016 * k), box.top + box.height * 0.55);
    took.push(performance.now() - began);
  }
  return Math.max(...took);
}"""


def cut_in_four(vertices: FloatArray, faces: IntArray) -> tuple[FloatArray, IntArray]:
    """Each triangle in four by the middles of its edges."""
    edges = np.sort(faces[:, [[0, 1], [1, 2], [2, 0]]].reshape(-1, 2), axis=1)
    unique, index = np.unique(edges, axis=0, return_inverse=True)
    middle = vertices[unique].mean(axis=1)
    m = index.reshape(-1, 3) + len(vertices)
    a, b, c = faces.T
    parts = [(a, m[:, 0], m[:, 2]), (m[:, 0], b, m[:, 1]), (m[:, 2], m[:, 1], c), (m[:, 0], m[:, 1], m[:, 2])]
    cut = np.concatenate([np.column_stack(part) for part in parts])
    return np.concatenate([vertices, middle]), cut.astype(np.int32)


def made(folder: Path, edge_mm: float) -> int:
    """Scan, parts and result as files; returns the number of triangles."""
    drawn = scene(Settings(seed=3, arch="full", bodies=BODIES, edge_mm=edge_mm, noise=Noise(7, 7, 0.8)), demo_bodies())
    vertices, faces = cut_in_four(drawn.surface.vertices, drawn.surface.faces)
    rng = np.random.default_rng(3)
    vertices = (vertices + rng.normal(0.0, 0.003, vertices.shape)).astype(np.float32).astype(np.float64)
    (folder / "arch.ply").write_bytes(ply_bytes(Surface(vertices, faces), "mm"))
    demo_parts(folder / "parts")
    sites = []
    for k, truth in enumerate(drawn.sites):
        local = (vertices - truth.scan_from_connection[:3, 3]) @ truth.scan_from_connection[:3, :3]
        on = (np.hypot(local[:, 0], local[:, 1]) < REACH) & (local[:, 2] > 2.0) & (local[:, 2] < 11.0)
        used = np.flatnonzero(on[faces].any(axis=1))
        kept = np.unique(faces[used])
        number = np.zeros(len(vertices), np.int32)
        number[kept] = np.arange(len(kept))
        deviation = np.where(on[kept], rng.normal(0.0, 12.0, len(kept)), np.nan)
        site = site_at(k + 1, truth.scan_from_connection, rng)
        sites.append(replace(site, scan_body=BODIES[k], map=SiteMap(vertices[kept], number[faces[used]], deviation)))
    result = measurement(1)[0]
    from stylobate.scan import read_scan

    info = replace(result.scan, file="arch.ply", sha256=read_scan(folder / "arch.ply").sha256, triangles=len(faces))
    with staging(folder / "result") as area:
        save(replace(result, scan=info, sites=tuple(sites), pairs=()), area, maps=True)
    return len(faces)


def seen(browser: Browser, folder: Path, kind: str) -> dict[str, Any]:
    """The page's own counts for one way of showing it."""
    command = [sys.executable, "-m", "stylobate", "open", str(folder / "result"), "--scan", str(folder / "arch.ply"),
               "--parts", str(folder / "parts"), "--no-browser"]  # fmt: skip
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        address = process.stdout.readline().strip()
        try:
            context = browser.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
            context.add_init_script(f"localStorage.setItem('picture', '{kind}')")
            tab = context.new_page()
            tab.goto(address)
            while not tab.evaluate(READY_JS):
                tab.wait_for_timeout(200)
            tab.wait_for_timeout(1500)
            stats: dict[str, Any] = tab.evaluate("window.arch.stats")
            tab.evaluate(TURN_JS, 6)
            stats["fps"] = 1000.0 / float(tab.evaluate(TURN_JS, TURNS))
            tab.wait_for_timeout(600)
            stats["pick"] = tab.evaluate(PICK_JS)
            stats["sent"] = tab.evaluate(SENT_JS)
            context.close()
        finally:
            process.terminate()
    return stats


def main(edge_mm: float, kind: str) -> None:
    """Make the scan, show it, print."""
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        folder = Path(name)
        print(f"{made(folder, edge_mm):,} triangles, {len(BODIES)} sites", flush=True)
        browser = driver.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        s = seen(browser, folder, kind)
        print("sent: {:.1f} MB whole, {:.1f} MB reduced".format(*(size / 1e6 for size in s["sent"])))
        print(f"{kind}: {s['triangles']:,.0f} triangles drawn, picture after {s['fullMs']:.0f} ms, picking at most "
              f"{s['pick']:.1f} ms, {s['fps']:.0f} frames/s turning")  # fmt: skip
        browser.close()


if __name__ == "__main__":
    main(float(sys.argv[1]) if len(sys.argv) > 1 else 0.16, "full" if "full" in sys.argv else "reduced")
