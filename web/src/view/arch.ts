// The arch in 3D: one surface coloured by deviation, drawn when something changes and not otherwise.
import * as THREE from "three";
import { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
import { MeshBVH } from "three-mesh-bvh";
import { fetchCompact, fetchPacked, paint, surfaceGeometry } from "./load";
import { paletteTexture } from "./palette";
import { contour } from "./section";
import { BODY_FRAGMENT, BODY_VERTEX, SURFACE_FRAGMENT, SURFACE_VERTEX } from "./shaders";

export interface Stand {
  site: string;
  body: string;
  pose: number[];
}

/** Parts that stand on a site, and the screw channel through them, scan coordinates. */
export interface Built {
  site: string;
  chain: { part: string; scan_from_part: number[] }[];
  origin: number[];
  direction: number[];
}

export interface Pin {
  site: string;
  x: number;
  y: number;
  shown: boolean;
}

export interface Look {
  range: number;
  coloured: boolean;
  unseen: boolean;
  parts: boolean;
  posts: boolean;
  cutTurn: number | null;
}

const SLOW_FRAME_MS = 45;
const LITTLE_GB = 2; // memory below which the whole of a large scan is not asked for
const REST_MS = 220;
const PIN_HEIGHT = 10;
const SITE_DISTANCE = 34;
const LEGEND_PX = 76; // the picture's middle lies above the legend
const INSET = 0.09;
const CHANNEL = { radius: 0.25, length: 22 }; // drawn as a rod; not its true width
const NO_CUT = new THREE.Vector4(0, 0, 0, 1);
const THEMES = {
  light: { back: 0xe9eeea, plaster: 0xcdbfa8, inside: 0x8f8474, ink: 0x14201e, paper: 0xffffff, line: 0x10201e },
  dark: { back: 0x0c1312, plaster: 0xa3977f, inside: 0x4d473c, ink: 0xe8f1ee, paper: 0x24302e, line: 0xffffff },
};

function raw(hex: number): THREE.Vector3 {
  return new THREE.Vector3((hex >> 16) / 255, ((hex >> 8) & 255) / 255, (hex & 255) / 255);
}

export class Arch {
  private renderer: THREE.WebGLRenderer;
  private scene = new THREE.Scene();
  private camera = new THREE.PerspectiveCamera(28, 1, 1, 2000);
  private controls: OrbitControls;
  private material: THREE.ShaderMaterial;
  private bodyMaterial: THREE.ShaderMaterial;
  private fine: THREE.Mesh | null = null;
  private coarse: THREE.Mesh | null = null;
  private bodies = new THREE.Group();
  private parts = new THREE.Group();
  private partMaterial = new THREE.MeshLambertMaterial({ side: THREE.DoubleSide, flatShading: true });
  private channelMaterial = new THREE.MeshBasicMaterial();
  private marker = new THREE.Mesh(
    new THREE.SphereGeometry(1, 24, 16),
    new THREE.MeshBasicMaterial({ color: 0xffb020, transparent: true, opacity: 0.6, depthTest: false }),
  );
  private partKeys = "";
  private built: { sites: Built[]; surfaces: Record<string, string> } = { sites: [], surfaces: {} };
  private lines = new THREE.Group();
  private lineColours = { scan: 0x10201e, body: 0xd1490c };
  private tree: MeshBVH | null = null;
  private origin = new THREE.Vector3();
  private stands: Stand[] = [];
  private chosen: string | null = null;
  private look: Look = { range: 50, coloured: true, unseen: true, parts: true, posts: true, cutTurn: null };
  private geometryKey = "";
  private paintKey = "";
  private wantedPaint = "";
  private reduced = false;
  private bodyKeys = "";
  private pending = 0;
  private moving = false;
  private slow = false;
  private frames: number[] = [];
  private lastFrame = 0;
  private restTimer = 0;
  private flight: number | null = null;
  private abort: AbortController | null = null;
  private still = matchMedia("(prefers-reduced-motion: reduce)");
  stats = { firstPictureMs: 0, fullMs: 0, frameMs: 0, bytes: 0, treeMs: 0, pickMs: 0, triangles: 0 };

  constructor(
    private canvas: HTMLCanvasElement,
    private onPins: (pins: Pin[]) => void,
    private onReady: (ready: boolean) => void,
    private onShare: (share: number) => void,
  ) {
    this.renderer = new THREE.WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: false });
    this.renderer.localClippingEnabled = true;
    this.renderer.outputColorSpace = THREE.LinearSRGBColorSpace; // colours of the map reach the screen unchanged
    const uniforms = {
      palette: { value: paletteTexture() },
      range: { value: 50 },
      coloured: { value: 1 },
      chosen: { value: 0 },
      plaster: { value: raw(THEMES.light.plaster) },
      inside: { value: raw(THEMES.light.inside) },
      cut: { value: NO_CUT.clone() },
      posts: { value: 1 },
    };
    this.material = new THREE.ShaderMaterial({
      uniforms, vertexShader: SURFACE_VERTEX, fragmentShader: SURFACE_FRAGMENT, side: THREE.DoubleSide,
    });
    this.bodyMaterial = new THREE.ShaderMaterial({
      uniforms: { ink: { value: raw(0) }, paper: { value: raw(0) }, cut: uniforms.cut, inset: { value: INSET } },
      vertexShader: BODY_VERTEX, fragmentShader: BODY_FRAGMENT, side: THREE.DoubleSide,
    });
    const light = new THREE.DirectionalLight(0xffffff, 1.6);
    this.camera.add(light);
    this.scene.add(this.camera, new THREE.AmbientLight(0xffffff, 1.4), this.bodies, this.parts, this.lines, this.marker);
    this.marker.visible = false;
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.enableDamping = false;
    this.controls.addEventListener("start", () => this.stir());
    this.controls.addEventListener("change", () => this.stir());
    new ResizeObserver(() => this.resize()).observe(canvas.parentElement ?? canvas);
    this.theme(false);
    this.resize();
  }

  /** Whether the drawing is done without a graphics processor, or the browser asks to be spared. */
  weak(): boolean {
    const gl = this.renderer.getContext();
    const about = gl.getExtension("WEBGL_debug_renderer_info");
    const name = String(gl.getParameter(about ? about.UNMASKED_RENDERER_WEBGL : gl.RENDERER));
    const { deviceMemory = 8, connection } = navigator as { deviceMemory?: number; connection?: { saveData?: boolean } };
    return /swiftshader|llvmpipe|software|basic render/i.test(name) || deviceMemory <= LITTLE_GB || connection?.saveData === true;
  }

  theme(dark: boolean): void {
    const colours = dark ? THEMES.dark : THEMES.light;
    this.renderer.setClearColor(new THREE.Color().setHex(colours.back, THREE.LinearSRGBColorSpace));
    this.material.uniforms.plaster!.value = raw(colours.plaster);
    this.material.uniforms.inside!.value = raw(colours.inside);
    this.bodyMaterial.uniforms.ink!.value = raw(dark ? 0x9fb8b2 : 0x4d6460);
    this.bodyMaterial.uniforms.paper!.value = raw(dark ? 0x24302e : 0xf4f7f5);
    this.lineColours = { scan: colours.line, body: dark ? 0xffa15c : 0xc2410c };
    this.partMaterial.color.setHex(dark ? 0x7fa9c9 : 0x5b86a8, THREE.LinearSRGBColorSpace);
    this.channelMaterial.color.setHex(dark ? 0xffa15c : 0xb23a0a, THREE.LinearSRGBColorSpace);
    this.recut();
    this.draw();
  }

  // ── what is shown ──

  /** reduced: the surface in its small form. */
  async show(geometry: string, painted: string, stands: Stand[], bodies: Record<string, string>, reduced: boolean): Promise<void> {
    this.stands = stands;
    this.wantedPaint = painted;
    if (reduced !== this.reduced) this.geometryKey = "";
    this.reduced = reduced;
    const began = performance.now();
    if (geometry !== this.geometryKey) {
      this.abort?.abort();
      this.abort = new AbortController();
      const signal = this.abort.signal;
      this.geometryKey = geometry;
      this.paintKey = "";
      this.bodyKeys = "";
      this.clear();
      this.onReady(false);
      if (!geometry) return this.draw();
      const coarse = await (reduced ? fetchCompact(geometry, signal) : fetchPacked(`${geometry}-coarse`, signal));
      this.origin.fromArray(coarse.origin);
      this.coarse = this.mesh(surfaceGeometry(coarse));
      this.overview(true);
      this.draw();
      this.stats.firstPictureMs = performance.now() - began;
      const fine = reduced ? coarse : await fetchPacked(geometry, signal);
      this.fine = reduced ? this.coarse : this.mesh(surfaceGeometry(fine));
      this.stats.bytes = reduced ? coarse.bytes : coarse.bytes + fine.bytes;
      this.stats.triangles = fine.arrays.index!.length / 3;
      this.onShare(reduced ? coarse.triangles! / coarse.of! : 1);
      this.coarse.visible = this.coarse === this.fine;
      this.draw();
      this.stats.fullMs = performance.now() - began;
      this.onReady(true);
      this.plant(this.fine.geometry);
    }
    // The newest asked for: a call that came while the surface was on its way has found nothing to paint.
    const paintKey = this.wantedPaint;
    if (paintKey && paintKey !== this.paintKey && this.fine && this.coarse) {
      const packed = await (reduced ? fetchCompact : fetchPacked)(paintKey, this.abort?.signal);
      if (geometry !== this.geometryKey || paintKey !== this.wantedPaint) return;
      this.paintKey = paintKey;
      paint(this.fine.geometry, packed.arrays.deviation as Float32Array, packed.arrays.site as Uint8Array);
      if (!reduced) paint(this.coarse.geometry, packed.arrays.coarse_deviation as Float32Array, packed.arrays.coarse_site as Uint8Array);
      this.stats.bytes += packed.bytes;
      this.overview(true);
    }
    await this.standBodies(bodies);
    await this.standParts();
    this.draw();
  }

  private async standBodies(keys: Record<string, string>): Promise<void> {
    const wanted = JSON.stringify([keys, this.stands]);
    if (wanted === this.bodyKeys) return;
    this.bodyKeys = wanted;
    this.bodies.clear();
    const loaded = new Map<string, THREE.BufferGeometry>();
    for (const [name, key] of Object.entries(keys)) {
      const geometry = surfaceGeometry(await fetchPacked(key, this.abort?.signal));
      const faceted = geometry.toNonIndexed();
      faceted.computeVertexNormals();
      loaded.set(name, faceted);
    }
    if (wanted !== this.bodyKeys) return;
    for (const stand of this.stands) {
      const geometry = loaded.get(stand.body);
      if (!geometry) continue;
      const body = new THREE.Mesh(geometry, this.bodyMaterial);
      body.matrixAutoUpdate = false;
      body.matrix.copy(this.pose(stand));
      body.name = stand.site;
      this.bodies.add(body);
    }
    this.bodies.visible = this.look.unseen && this.look.posts;
    this.recut();
  }

  async place(sites: Built[], surfaces: Record<string, string>): Promise<void> {
    this.built = { sites, surfaces };
    await this.standParts();
  }

  /** Parts and channels, once the surface is there whose origin they need. */
  private async standParts(): Promise<void> {
    const { sites, surfaces: keys } = this.built;
    const wanted = JSON.stringify([sites.map(({ chain, origin, direction }) => [chain, origin, direction]), this.origin.toArray()]);
    if (!this.coarse || wanted === this.partKeys) return;
    this.partKeys = wanted;
    const loaded = new Map<string, THREE.BufferGeometry>();
    for (const [part, key] of Object.entries(keys)) {
      const packed = await fetchPacked(key);
      const geometry = new THREE.BufferGeometry();
      geometry.setAttribute("position", new THREE.BufferAttribute(packed.arrays.position!, 3));
      geometry.setIndex(new THREE.BufferAttribute(packed.arrays.index!, 1));
      loaded.set(part, geometry);
    }
    if (wanted !== this.partKeys) return;
    this.parts.clear();
    for (const site of sites.filter((item) => item.chain.length > 0)) {
      for (const link of site.chain) {
        const part = new THREE.Mesh(loaded.get(link.part), this.partMaterial);
        part.matrixAutoUpdate = false;
        part.matrix.copy(this.pose({ site: site.site, body: link.part, pose: link.scan_from_part }));
        this.parts.add(part);
      }
      this.parts.add(this.channel(site));
    }
    this.parts.visible = this.look.parts;
    this.draw();
  }

  private channel(site: Built): THREE.Mesh {
    const way = new THREE.Vector3().fromArray(site.direction);
    const rod = new THREE.Mesh(new THREE.CylinderGeometry(CHANNEL.radius, CHANNEL.radius, CHANNEL.length, 12), this.channelMaterial);
    rod.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), way);
    rod.position.fromArray(site.origin).sub(this.origin).addScaledVector(way, CHANNEL.length / 2);
    return rod;
  }

  private mesh(geometry: THREE.BufferGeometry): THREE.Mesh {
    const mesh = new THREE.Mesh(geometry, this.material);
    mesh.frustumCulled = false;
    this.scene.add(mesh);
    return mesh;
  }

  private clear(): void {
    for (const mesh of [this.fine, this.coarse]) {
      if (!mesh) continue;
      this.scene.remove(mesh);
      mesh.geometry.dispose();
    }
    this.fine = this.coarse = this.tree = null;
    this.bodies.clear();
    this.parts.clear();
    this.partKeys = "";
    this.marker.visible = false;
    this.lines.clear();
  }

  private plant(geometry: THREE.BufferGeometry): void {
    const later = window.requestIdleCallback ?? ((f: () => void) => window.setTimeout(f, 50));
    later(() => {
      if (this.fine?.geometry !== geometry) return;
      const began = performance.now();
      this.tree = new MeshBVH(geometry, { indirect: true, targetLeafSize: 12 } as never);
      this.stats.treeMs = performance.now() - began;
      this.recut();
      this.draw();
    });
  }

  set(look: Look): void {
    const recut = look.cutTurn !== this.look.cutTurn;
    this.look = look;
    this.material.uniforms.range!.value = look.range;
    this.material.uniforms.coloured!.value = look.coloured ? 1 : 0;
    this.material.uniforms.posts!.value = look.posts ? 1 : 0;
    this.bodies.visible = look.unseen && look.posts;
    this.parts.visible = look.parts;
    if (recut) {
      this.recut();
      const stand = this.stands.find((item) => item.site === this.chosen);
      if (stand) this.goTo(stand);
    }
    this.draw();
  }

  choose(site: string | null): void {
    this.marker.visible = false;
    if (site === this.chosen) return this.draw();
    this.chosen = site;
    const index = this.stands.findIndex((stand) => stand.site === site);
    this.material.uniforms.chosen!.value = index + 1;
    this.recut();
    if (index >= 0) this.goTo(this.stands[index]!);
    else this.overview(false);
  }

  // ── section ──

  private recut(): void {
    this.lines.clear();
    const cut = this.material.uniforms.cut!.value as THREE.Vector4;
    const stand = this.stands.find((item) => item.site === this.chosen);
    if (this.look.cutTurn === null || !stand) {
      cut.copy(NO_CUT);
      this.partMaterial.clippingPlanes = null;
      return;
    }
    const pose = this.pose(stand);
    const centre = new THREE.Vector3().setFromMatrixPosition(pose);
    const normal = this.sideways(pose, this.look.cutTurn);
    cut.set(normal.x, normal.y, normal.z, normal.dot(centre) + 0.002);
    const plane = new THREE.Plane().setFromNormalAndCoplanarPoint(normal, centre);
    this.partMaterial.clippingPlanes = [plane.clone().negate()];
    const near = new THREE.Sphere(centre, 16);
    if (this.tree) this.lines.add(contour(this.tree, plane, near, null, this.lineColours.scan));
    const body = this.bodies.children.find((child) => child.name === stand.site) as THREE.Mesh | undefined;
    if (body) {
      const tree = new MeshBVH(body.geometry);
      this.lines.add(contour(tree, plane, near, pose, this.lineColours.body));
    }
  }

  private sideways(pose: THREE.Matrix4, turn: number): THREE.Vector3 {
    const x = new THREE.Vector3().setFromMatrixColumn(pose, 0);
    const y = new THREE.Vector3().setFromMatrixColumn(pose, 1);
    return x.multiplyScalar(Math.cos(turn)).addScaledVector(y, Math.sin(turn)).normalize();
  }

  // ── where the eye stands ──

  private pose(stand: Stand): THREE.Matrix4 {
    const matrix = new THREE.Matrix4();
    matrix.set(...(stand.pose as Parameters<THREE.Matrix4["set"]>));
    const shift = new THREE.Vector3().setFromMatrixPosition(matrix).sub(this.origin);
    return matrix.setPosition(shift);
  }

  private up(): THREE.Vector3 {
    const sum = new THREE.Vector3();
    for (const stand of this.stands) sum.add(new THREE.Vector3().setFromMatrixColumn(this.pose(stand), 2));
    return sum.length() > 0.1 ? sum.normalize() : this.facing();
  }

  /** Where an open surface faces as a whole: the biting side of a scan, before any site is known. */
  private facing(): THREE.Vector3 {
    const normals = this.coarse?.geometry.getAttribute("normal");
    const sum = new THREE.Vector3();
    const one = new THREE.Vector3();
    for (let i = 0; i < (normals?.count ?? 0); i++) sum.add(one.fromBufferAttribute(normals!, i));
    return sum.length() > 0.1 ? sum.normalize() : new THREE.Vector3(0, 0, 1);
  }

  /** Turn the picture to a point, scan coordinates. */
  lookAt(point: [number, number, number]): void {
    const target = new THREE.Vector3().fromArray(point).sub(this.origin);
    const up = this.up();
    const away = target.clone().sub(this.centre());
    away.addScaledVector(up, -away.dot(up)).normalize().multiplyScalar(0.85).addScaledVector(up, 0.53);
    this.marker.position.copy(target);
    this.marker.visible = true;
    this.fly(target, away.normalize(), 1.5 * SITE_DISTANCE, up, false);
  }

  private centre(): THREE.Vector3 {
    const sphere = (this.fine ?? this.coarse)?.geometry.boundingSphere;
    return sphere ? sphere.center.clone() : new THREE.Vector3();
  }

  /** Away from the middle of the arch, at a site: the cheek's side. */
  private outward(stand: Stand): THREE.Vector3 {
    const pose = this.pose(stand);
    const axis = new THREE.Vector3().setFromMatrixColumn(pose, 2);
    const out = new THREE.Vector3().setFromMatrixPosition(pose).sub(this.centre());
    out.addScaledVector(axis, -out.dot(axis));
    if (out.length() < 2) out.copy(new THREE.Vector3().setFromMatrixColumn(pose, 0));
    return out.normalize();
  }

  overview(jump: boolean): void {
    if (this.chosen && jump) {
      const stand = this.stands.find((item) => item.site === this.chosen);
      if (stand) return this.goTo(stand);
    }
    const mesh = this.fine ?? this.coarse;
    const sphere = mesh?.geometry.boundingSphere;
    if (!sphere) return;
    const up = this.up();
    const mean = new THREE.Vector3();
    for (const stand of this.stands) mean.add(this.outward(stand));
    if (mean.length() < 0.1) mean.set(0, -1, 0);
    mean.addScaledVector(up, -mean.dot(up)).normalize();
    const away = up.clone().multiplyScalar(0.86).addScaledVector(mean, 0.5).normalize();
    const height = Math.max(this.canvas.clientHeight, 2 * LEGEND_PX);
    const free = Math.min((height - LEGEND_PX) / height, this.camera.aspect);
    const half = Math.tan((this.camera.fov * Math.PI) / 360) * free;
    this.fly(sphere.center.clone(), away, (1.04 * sphere.radius) / half, up, jump);
  }

  private goTo(stand: Stand): void {
    const pose = this.pose(stand);
    const axis = new THREE.Vector3().setFromMatrixColumn(pose, 2);
    const centre = new THREE.Vector3().setFromMatrixPosition(pose).addScaledVector(axis, 4);
    const turn = this.look.cutTurn;
    const side = turn === null ? this.outward(stand) : this.sideways(pose, turn);
    const away = side.multiplyScalar(turn === null ? 0.85 : 1).addScaledVector(axis, turn === null ? 0.53 : 0.12);
    this.fly(centre, away.normalize(), SITE_DISTANCE, this.up(), false);
  }

  private fly(target: THREE.Vector3, away: THREE.Vector3, distance: number, up: THREE.Vector3, jump: boolean): void {
    const from = { target: this.controls.target.clone(), place: this.camera.position.clone() };
    const place = target.clone().addScaledVector(away, distance);
    this.camera.up.copy(up);
    if (this.flight !== null) cancelAnimationFrame(this.flight);
    const began = performance.now();
    const step = (now: number): void => {
      const share = jump || this.still.matches ? 1 : Math.min(1, Math.max(0, now - began) / 380);
      const eased = 1 - (1 - share) ** 3;
      this.controls.target.lerpVectors(from.target, target, eased);
      this.camera.position.lerpVectors(from.place, place, eased);
      this.controls.update();
      this.stir();
      this.flight = share < 1 ? requestAnimationFrame(step) : null;
    };
    if (jump || this.still.matches) step(began);
    else this.flight = requestAnimationFrame(step);
  }

  /** Turn about the target by fractions of a circle, or come nearer: the keyboard's way. */
  nudge(across: number, along: number, nearer: number): void {
    const offset = this.camera.position.clone().sub(this.controls.target);
    const side = new THREE.Vector3().crossVectors(this.camera.up, offset).normalize();
    offset.applyAxisAngle(this.camera.up.clone().normalize(), across);
    const tilted = offset.clone().applyAxisAngle(side, along);
    if (Math.abs(tilted.angleTo(this.camera.up) - Math.PI / 2) < 1.5) offset.copy(tilted);
    offset.multiplyScalar(1 - nearer);
    this.camera.position.copy(this.controls.target).add(offset);
    this.controls.update();
    this.stir();
  }

  // ── picking ──

  /** The point of the scan under a place of the canvas, scan coordinates, or null. */
  pick(clientX: number, clientY: number): [number, number, number] | null {
    if (!this.tree) return null;
    const began = performance.now();
    const box = this.canvas.getBoundingClientRect();
    const at = new THREE.Vector2(
      ((clientX - box.left) / box.width) * 2 - 1, 1 - ((clientY - box.top) / box.height) * 2,
    );
    const caster = new THREE.Raycaster();
    caster.setFromCamera(at, this.camera);
    const hit = this.tree.raycastFirst(caster.ray, THREE.DoubleSide);
    this.stats.pickMs = performance.now() - began;
    if (!hit) return null;
    const p = hit.point.add(this.origin);
    return [p.x, p.y, p.z];
  }

  // ── drawing ──

  private stir(): void {
    this.moving = true;
    window.clearTimeout(this.restTimer);
    this.restTimer = window.setTimeout(() => {
      this.moving = false;
      this.frames = [];
      this.draw();
    }, REST_MS);
    this.draw();
  }

  draw(): void {
    if (this.pending) return;
    this.pending = requestAnimationFrame((now) => {
      this.pending = 0;
      if (this.moving && this.lastFrame) this.clock(now - this.lastFrame);
      this.lastFrame = this.moving ? now : 0;
      this.render();
    });
  }

  private clock(ms: number): void {
    this.frames.push(ms);
    if (this.frames.length < 3) return;
    this.frames = this.frames.slice(-8);
    this.stats.frameMs = [...this.frames].sort((a, b) => a - b)[this.frames.length >> 1]!;
    if (this.stats.frameMs > SLOW_FRAME_MS) this.slow = true;
  }

  private render(): void {
    if (this.fine && this.coarse && this.fine !== this.coarse) {
      const proxy = this.moving && this.slow;
      this.coarse.visible = proxy;
      this.fine.visible = !proxy;
    }
    this.renderer.render(this.scene, this.camera);
    this.onPins(this.pins());
  }

  private pins(): Pin[] {
    const { clientWidth, clientHeight } = this.canvas;
    return this.stands.map((stand) => {
      const pose = this.pose(stand);
      const axis = new THREE.Vector3().setFromMatrixColumn(pose, 2);
      const top = new THREE.Vector3().setFromMatrixPosition(pose).addScaledVector(axis, PIN_HEIGHT).project(this.camera);
      const x = ((top.x + 1) / 2) * clientWidth;
      const y = ((1 - top.y) / 2) * clientHeight;
      return { site: stand.site, x, y, shown: top.z < 1 && x > 0 && y > 0 && x < clientWidth && y < clientHeight };
    });
  }

  private resize(): void {
    const parent = this.canvas.parentElement;
    if (!parent) return;
    const { clientWidth, clientHeight } = parent;
    if (!clientWidth || !clientHeight) return;
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.setSize(clientWidth, clientHeight, false);
    this.camera.aspect = clientWidth / clientHeight;
    this.camera.setViewOffset(clientWidth, clientHeight, 0, LEGEND_PX / 2, clientWidth, clientHeight);
    this.camera.updateProjectionMatrix();
    this.draw();
  }
}
