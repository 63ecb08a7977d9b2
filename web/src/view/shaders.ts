// Plaster where nothing is known, the diverging map where the deviation is; one light beside the eye.

export const SURFACE_VERTEX = /* glsl */ `
  attribute float deviation;
  attribute float known;
  attribute float site;
  varying float vDeviation;
  varying float vKnown;
  varying float vChosen;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform float chosen;
  void main() {
    vDeviation = deviation;
    vKnown = known;
    vChosen = (chosen < 0.5 || abs(site - chosen) < 0.5) ? 1.0 : 0.0;
    vNormal = normalMatrix * normal;
    vPlace = position;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }`;

export const SURFACE_FRAGMENT = /* glsl */ `
  precision highp float;
  varying float vDeviation;
  varying float vKnown;
  varying float vChosen;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform sampler2D palette;
  uniform float range;
  uniform float coloured;
  uniform vec3 plaster;
  uniform vec3 inside;
  uniform vec4 cut;
  uniform float posts;
  void main() {
    if (dot(cut.xyz, vPlace) > cut.w || (posts < 0.5 && vKnown > 0.5)) discard;
    vec3 n = normalize(vNormal);
    bool front = gl_FrontFacing;
    float light = 0.56 + 0.34 * abs(n.z) + 0.12 * n.y;
    vec3 base = front ? plaster : inside;
    if (front && coloured > 0.5 && vKnown > 0.98) {
      float t = clamp(0.5 + 0.5 * vDeviation / range, 0.002, 0.998);
      vec3 c = texture2D(palette, vec2(t, 0.5)).rgb;
      base = mix(mix(plaster, c, 0.55), c, vChosen);
      light = 0.78 + 0.22 * abs(n.z);
    }
    gl_FragColor = vec4(base * light, 1.0);
  }`;

// The CAD surface a little below itself: seen only where the scan shows nothing in front of it.
export const BODY_VERTEX = /* glsl */ `
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform float inset;
  void main() {
    vec3 place = position - normal * inset;
    vNormal = normalMatrix * normal;
    vPlace = (modelMatrix * vec4(place, 1.0)).xyz;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(place, 1.0);
  }`;

export const BODY_FRAGMENT = /* glsl */ `
  precision highp float;
  varying vec3 vNormal;
  varying vec3 vPlace;
  uniform vec3 ink;
  uniform vec3 paper;
  uniform vec4 cut;
  void main() {
    if (dot(cut.xyz, vPlace) > cut.w) discard;
    float stripe = step(0.5, fract((gl_FragCoord.x + gl_FragCoord.y) / 9.0));
    float light = 0.75 + 0.25 * abs(normalize(vNormal).z);
    gl_FragColor = vec4(mix(paper, ink, stripe) * light, 1.0);
  }`;
