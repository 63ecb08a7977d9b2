"""Broken files: one clear line that says what, where and what to do; quickly and in the memory of the file's size."""

from __future__ import annotations

import gzip
import os
import struct
import subprocess
import sys
import time
import tracemalloc
from pathlib import Path

import numpy as np
import pytest

from fuzz import check
from fuzz.writers import Variant, write
from stylobate.core.errors import ScanError
from stylobate.core.surface import Surface
from stylobate.scan import read_mesh, read_scan, source

POINTS = np.array([[0.0, 0, 0], [40, 0, 0], [0, 30, 0], [0, 0, 20]])
FACES = [[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3]]
PLY = """ply
format {kind} 1.0
element vertex {vertices}
property float x
property float y
property float z
element face {faces}
property list {count} {index} vertex_indices
end_header
"""


def ply(kind: str = "binary_little_endian", vertices: str = "3", faces: str = "1", count: str = "uchar",
        index: str = "int") -> bytes:  # fmt: skip
    return PLY.format(kind=kind, vertices=vertices, faces=faces, count=count, index=index).encode()


CORNERS = struct.pack("<9f", 0, 0, 0, 40, 0, 0, 0, 30, 0)
FACET = b"facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 40 0 0\nvertex 0 %s 0\nendloop\nendfacet\n"
BROKEN = {
    "stl of 4 billion faces": (bytes(80) + b"\xff\xff\xff\xff" + bytes(5000), "announces 4294967295 triangles"),
    "stl with too many bytes": (bytes(80) + struct.pack("<I", 1) + bytes(150), "has room for 3"),
    "stl of no face": (bytes(84), "no triangle"),
    "stl of text": (b"A long letter to Harbour Street.\n" * 40, "this is text"),
    "stl with nan": (bytes(80) + struct.pack("<I12fH", 1, 0, 0, 1, *[0] * 5, np.nan, 1, 2, 3, 0), "triangle 1"),
    "stl with inf": (bytes(80) + struct.pack("<I12fH", 1, 0, 0, 1, *[0] * 5, -np.inf, 1, 2, 3, 0), "not a finite"),
    "ascii stl with nan": (b"solid\n" + FACET % b"nan" + b"endsolid\n", "line 6: 'nan' is no finite"),
    "ascii stl with 1e999": (b"solid\n" + FACET % b"1e999" + b"endsolid\n", "line 6"),
    "ascii stl with a huge token": (b"solid\n" + FACET % (b"9" * 3_000_000) + b"endsolid\n", "line 6"),
    "ascii stl cut in a triangle": ((b"solid\n" + FACET % b"1").split(b"endloop")[0], "ends inside a triangle"),
    "ascii stl, two vertices": (b"solid\nfacet\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nendloop\n", "line 6"),
    "ascii stl of no face": (b"solid a\nendsolid a\n", "no triangle"),
    "ascii stl with more after it": (b"solid\n" + FACET % b"1" + b"endsolid\nrubbish\n", "line 10: 'rubbish'"),
    "ply without end of header": (ply()[:-12] + b"\n" + CORNERS, "no end"),
    "ply of 4 billion faces": (ply(faces="4294967295") + CORNERS + bytes(13), "announces 4294967295 rows of 'face'"),
    "ply of 4 billion vertices": (ply(vertices="4294967295") + CORNERS, "4294967295 vertices"),
    "ply of 1e18 vertices": (ply(vertices="9" * 18) + CORNERS, "more than any scan"),
    "ply of 1e30 vertices": (ply(vertices="9" * 30) + CORNERS, "no PLY header line"),
    "ply of -1 faces": (ply(faces="-1") + CORNERS, "line 7"),
    "ply list of 2 billion": (ply(count="uint") + CORNERS + struct.pack("<I3i", 2_000_000_000, 0, 1, 2), "row 1"),
    "ply list of -3": (ply(count="int") + CORNERS + struct.pack("<i3i", -3, 0, 1, 2), "negative length"),
    "ply with a float for a count": (ply(count="float") + CORNERS + bytes(16), "no known type"),
    "ply with an unknown type": (ply(index="quad") + CORNERS + bytes(16), "no known type"),
    "ply, index 3 of 3": (ply() + CORNERS + struct.pack("<B3i", 3, 0, 1, 3), "face 1 names vertex 3"),
    "ply, index -1": (ply() + CORNERS + struct.pack("<B3i", 3, 0, 1, -1), "face 1 names vertex -1"),
    "ply, index 4 billion": (ply(index="uint") + CORNERS + struct.pack("<B3I", 3, 0, 1, 2**32 - 1), "4294967295"),
    "ply cut": (ply() + CORNERS + struct.pack("<B3i", 3, 0, 1, 2)[:-1], "cut short"),
    "ply too long": (ply() + CORNERS + struct.pack("<B3i", 3, 0, 1, 2) * 2, "13 bytes more"),
    "ply of points": (ply(faces="0") + CORNERS, "3 points and no faces"),
    "ply without elements": (b"ply\nformat ascii 1.0\nend_header\n", "no vertices"),
    "ply without format": (ply().replace(b"format binary_little_endian 1.0\n", b""), "no format line"),
    "ply without z": (ply().replace(b"property float z\n", b"") + CORNERS, "no x, y and z"),
    "ply with nan": (ply() + CORNERS[:-4] + struct.pack("<fB3i", np.nan, 3, 0, 1, 2), "vertex 3"),
    "ply of strips": (ply(faces="0").replace(b"element face", b"element tristrips") + CORNERS, "triangle strips"),
    "ascii ply, too few rows": (ply("ascii", faces="2") + b"0 0 0\n40 0 0\n0 30 0\n3 0 1 2\n", "rows of 'face'"),
    "ascii ply, too many rows": (ply("ascii") + b"0 0 0\n40 0 0\n0 30 0\n3 0 1 2\n3 0 1 2\n", "more follows"),
    "ascii ply, no number": (ply("ascii") + b"0 0 0\n40 x0 0\n0 30 0\n3 0 1 2\n", "line 11: 'x0'"),
    "ascii ply, half an index": (ply("ascii") + b"0 0 0\n40 0 0\n0 30 0\n3 0 1.5 2\n", "line 13: '1.5'"),
    "ascii ply, list of 2 billion": (ply("ascii") + b"0 0 0\n40 0 0\n0 30 0\n2000000000 0 1 2\n", "cut short"),
    "ascii ply of 1e9 faces": (ply("ascii", faces="1000000000") + b"0 0 0\n40 0 0\n0 30 0\n3 0 1 2\n", "cut short"),
    "obj, index 0": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\nf 0 1 2\n", "line 4: '0'"),
    "obj, index 4": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\nf 1 2 4\n", "line 4: corner '4'"),
    "obj, index -4": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\nf 1 2 -4\n", "line 4: corner '-4'"),
    "obj, index 1e30": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\nf 1 2 1" + b"0" * 30 + b"\n", "line 4"),
    "obj of points": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\n", "3 points only"),
    "obj, two coordinates": (b"v 0 0\nv 40 0 0\nv 0 30 0\nf 1 2 3\n", "line 1: a vertex has"),
    "obj with nan": (b"v 0 0 0\nv 40 NaN 0\nv 0 30 0\nf 1 2 3\n", "line 2: 'NaN'"),
    "obj with a binary line": (b"v 0 0 0\nv 40 0 0\nv 0 30 0\n\xff\xfe\nf 1 2 3\n", "line 4"),
    "obj without an area": (b"v 0 0 0\nv 40 0 0\nv 80 0 0\nf 1 2 3\n", "none of its 1 faces has an area"),
    "obj far beyond reason": (b"v 0 0 0\nv 4e30 0 0\nv 0 30 0\nf 1 2 3\n", "beyond 1e+09 mm"),
    "nothing": (b"", "empty"),
    "gzip of nothing": (gzip.compress(b""), "empty"),
    "gzip cut": (gzip.compress(write(POINTS, FACES, Variant("obj")))[:-9], "ends too early"),
    "gzip with rubbish": (gzip.compress(write(POINTS, FACES, Variant("obj"))) + b"rubbish", "damaged"),
    "gzip bomb": (gzip.compress(bytes(200_000_000)), "unpacks to more than"),
    "picture": (b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 4, "not STL, PLY or OBJ"),
}


@pytest.mark.parametrize("what", BROKEN)
def test_one_clear_line(what: str, tmp_path: Path) -> None:
    data, expected = BROKEN[what]
    suffix = ".stl" if what.startswith("stl") else ".dat"
    path = tmp_path / f"arch{suffix}"
    path.write_bytes(data)
    with pytest.raises(ScanError) as memory:
        read_mesh(data, f"arch{suffix}")
    tracemalloc.start()
    start = time.monotonic()
    with pytest.raises(ScanError) as disk:
        read_scan(path)
    spent, peak = time.monotonic() - start, tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    for refusal in (memory, disk):
        line = str(refusal.value)
        assert expected in line
        assert f"arch{suffix}" in line
        assert line.isprintable()
        assert len(line) < 300
    assert spent < 2.0
    assert peak < 3 * source.GZIP_FREE_BYTES + 20 * len(data)


@pytest.mark.parametrize(
    "stored", sorted((Path(__file__).parent.parent / "data" / "fuzz").glob("*"), key=str), ids=lambda p: p.name
)
def test_what_fuzzing_once_found(stored: Path, tmp_path: Path) -> None:
    assert check.fault_of(stored.read_bytes(), stored.name, None)[0] is None
    assert check.fault_of(stored.read_bytes(), stored.name, tmp_path)[0] is None


def test_what_is_no_readable_file(tmp_path: Path) -> None:
    for path, expected in [
        (tmp_path, "this is a folder"),
        (tmp_path / "none.stl", "no such file"),
        (tmp_path / ("x" * 3000 + ".stl"), "x.stl: cannot be read"),
        (Path("a\0b.stl"), "not a possible file name"),
        (Path(os.devnull), "not a regular file"),
    ]:
        with pytest.raises(ScanError, match=expected) as refusal:
            read_scan(path)
        assert str(refusal.value).isprintable()
        assert len(str(refusal.value)) < 400
    os.mkfifo(tmp_path / "pipe.stl")
    with pytest.raises(ScanError, match="not a regular file"):
        read_scan(tmp_path / "pipe.stl")
    (tmp_path / "part").write_bytes(b"x")
    with pytest.raises(ScanError, match="part of this path is a file"):
        read_scan(tmp_path / "part" / "arch.stl")


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_no_permission(tmp_path: Path) -> None:
    path = tmp_path / "arch.stl"
    path.write_bytes(write(POINTS, FACES, Variant("stl-binary")))
    path.chmod(0)
    with pytest.raises(ScanError, match="no permission"):
        read_scan(path)


def test_no_permission_is_told_by_the_reason_of_the_system(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    def refuse(*_: object) -> int:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", refuse)
    with pytest.raises(ScanError, match="no permission to read it; change its permissions"):
        read_scan(tmp_path / "arch.stl")


def test_a_sparse_file_of_a_terabyte_is_refused_by_its_size(tmp_path: Path) -> None:
    path = tmp_path / "arch.stl"
    with path.open("wb") as file:
        try:
            file.truncate(1 << 40)
        except OSError:
            file.truncate(source.MAX_BYTES + 1)
    with pytest.raises(ScanError, match="larger than 2 GiB"):
        read_scan(path)


def test_a_name_with_a_line_end_stays_one_line(tmp_path: Path) -> None:
    path = tmp_path / "arch\nhazel\udcff.stl"
    path.write_bytes(b"rubbish")
    with pytest.raises(ScanError) as refusal:
        read_scan(path)
    assert str(refusal.value).isprintable()
    str(refusal.value).encode("utf-8")


def test_the_memory_of_the_process_stays_near_the_size_of_the_file(tmp_path: Path) -> None:
    """Peak resident memory of a whole process, which the tracing of one interpreter cannot see."""
    path = tmp_path / "arch.ply"
    path.write_bytes(ply(vertices="4294967295") + CORNERS)
    script = (
        "import resource, sys; from stylobate.scan import read_scan; from stylobate.core.errors import ScanError\n"
        "peak = lambda: resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "before = peak()\n"
        "try: read_scan(sys.argv[1])\n"
        "except ScanError: print(peak() - before)\n"
    )
    done = subprocess.run([sys.executable, "-c", script, path], capture_output=True, text=True, check=True)
    assert int(done.stdout) < 20_000


def test_the_fuzzer_sees_a_cut_and_an_invented_triangle() -> None:
    data = write(POINTS, FACES, Variant("ply-big"))
    whole = read_mesh(data, "arch").surface
    assert check.mesh_fault(whole, np.zeros(3), data) is None
    cut, moved = Surface(whole.vertices, whole.faces[:-1]), Surface(whole.vertices + 1e-9, whole.faces)
    more = Surface(whole.vertices, np.vstack([whole.faces, whole.faces[:1]]))
    assert "cut" in str(check.mesh_fault(cut, np.zeros(3), data))
    assert "cut" in str(check.mesh_fault(moved, np.zeros(3), data))
    assert "invented" in str(check.mesh_fault(more, np.zeros(3), data))
