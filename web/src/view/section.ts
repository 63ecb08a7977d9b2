// Where a plane cuts a surface, as line segments.
import * as THREE from "three";
import type { MeshBVH } from "three-mesh-bvh";

/** plane, near: scene frame. scene_from_tree: where the surface stands, null: it is in the scene frame. */
export function contour(
  tree: MeshBVH, plane: THREE.Plane, near: THREE.Sphere, sceneFromTree: THREE.Matrix4 | null, colour: number,
): THREE.LineSegments {
  const local = plane.clone();
  const ball = near.clone();
  if (sceneFromTree) {
    const inverse = sceneFromTree.clone().invert();
    local.applyMatrix4(inverse);
    ball.applyMatrix4(inverse);
  }
  const points: number[] = [];
  const edge = new THREE.Line3();
  const hit = new THREE.Vector3();
  tree.shapecast({
    intersectsBounds: (box) => local.intersectsBox(box) && ball.intersectsBox(box),
    intersectsTriangle: (triangle) => {
      const found: number[] = [];
      for (const [a, b] of [[triangle.a, triangle.b], [triangle.b, triangle.c], [triangle.c, triangle.a]] as const) {
        edge.set(a, b);
        if (found.length < 6 && local.intersectLine(edge, hit)) found.push(hit.x, hit.y, hit.z);
      }
      if (found.length === 6) points.push(...found);
      return false;
    },
  });
  const geometry = new THREE.BufferGeometry();
  geometry.setAttribute("position", new THREE.Float32BufferAttribute(points, 3));
  if (sceneFromTree) geometry.applyMatrix4(sceneFromTree);
  geometry.translate(plane.normal.x * 0.02, plane.normal.y * 0.02, plane.normal.z * 0.02);
  const material = new THREE.LineBasicMaterial({ color: new THREE.Color().setHex(colour, THREE.LinearSRGBColorSpace) });
  const lines = new THREE.LineSegments(geometry, material);
  lines.frustumCulled = false;
  return lines;
}
