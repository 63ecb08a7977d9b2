"""From a mesh file to a surface: STL, PLY and OBJ, each also gzipped; the content decides, not the name."""

from stylobate.scan.corners import merge_corners
from stylobate.scan.read import Mesh, read_mesh, read_scan, read_surface

__all__ = ["Mesh", "merge_corners", "read_mesh", "read_scan", "read_surface"]
