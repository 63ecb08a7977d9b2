// Surfaces as the server sends them: header, then raw typed arrays (see app/web/scene.py).
import * as THREE from "three";

interface Entry {
  type: keyof typeof KINDS;
  width: number;
  offset: number;
  count: number;
}

export interface Packed {
  origin: [number, number, number];
  arrays: Record<string, Float32Array | Uint32Array | Int32Array | Uint16Array | Int16Array | Int8Array | Uint8Array>;
  bytes: number;
  step?: number;
  triangles?: number;
  of?: number;
}

const KINDS = {
  f32: Float32Array, u32: Uint32Array, i32: Int32Array, u16: Uint16Array, i16: Int16Array, i8: Int8Array, u8: Uint8Array,
};

export async function fetchPacked(key: string, signal?: AbortSignal): Promise<Packed> {
  const answer = await fetch(`/api/surface/${key}`, { signal });
  if (!answer.ok) throw new Error(`surface ${key}: ${answer.status}`);
  const data = await answer.arrayBuffer();
  const length = new DataView(data).getUint32(0, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(data, 4, length))) as {
    origin: [number, number, number];
    arrays: Record<string, Entry>;
    step?: number;
    triangles?: number;
    of?: number;
  };
  const arrays: Packed["arrays"] = {};
  for (const [name, entry] of Object.entries(header.arrays)) {
    arrays[name] = new KINDS[entry.type](data, 4 + length + entry.offset, entry.count * entry.width);
  }
  return { ...header, arrays, bytes: data.byteLength };
}

const DEVIATION_STEP_UM = 0.1;
const UNKNOWN = -32768;

/** A surface or its deviations in the small form (app/web/compact.py), as the plain form has them. */
export async function fetchCompact(key: string, signal?: AbortSignal): Promise<Packed> {
  const packed = await fetchPacked(`${key}-compact`, signal);
  const { position, index, deviation } = packed.arrays;
  if (position && packed.step) packed.arrays.position = Float32Array.from(position, (steps) => steps * packed.step!);
  if (index) {
    let sum = 0;
    packed.arrays.index = Uint32Array.from(index, (difference) => (sum += difference));
  }
  if (deviation) packed.arrays.deviation = Float32Array.from(deviation, (steps) => (steps === UNKNOWN ? NaN : steps * DEVIATION_STEP_UM));
  return packed;
}

export function surfaceGeometry(packed: Packed): THREE.BufferGeometry {
  const geometry = new THREE.BufferGeometry();
  const { position, normal, index } = packed.arrays;
  if (!position || !index) throw new Error("a surface without vertices");
  geometry.setAttribute("position", new THREE.BufferAttribute(position, 3));
  if (normal) {
    const four = new THREE.InterleavedBuffer(normal, 4);
    geometry.setAttribute("normal", new THREE.InterleavedBufferAttribute(four, 3, 0, true));
  }
  geometry.setIndex(new THREE.BufferAttribute(index, 1));
  const count = position.length / 3;
  for (const name of ["deviation", "known", "site"]) {
    const empty = name === "deviation" ? new Float32Array(count) : new Uint8Array(count);
    geometry.setAttribute(name, new THREE.BufferAttribute(empty, 1));
  }
  geometry.computeBoundingSphere();
  return geometry;
}

export function paint(geometry: THREE.BufferGeometry, deviation: Float32Array, site: Uint8Array): void {
  const values = new Float32Array(deviation.length);
  const known = new Uint8Array(deviation.length);
  for (let i = 0; i < deviation.length; i++) {
    const value = deviation[i]!;
    if (value === value) {
      values[i] = value;
      known[i] = 1;
    }
  }
  geometry.setAttribute("deviation", new THREE.BufferAttribute(values, 1));
  geometry.setAttribute("known", new THREE.BufferAttribute(known, 1));
  geometry.setAttribute("site", new THREE.BufferAttribute(site, 1));
}
