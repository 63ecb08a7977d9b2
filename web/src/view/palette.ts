// CET-D1A, from the very table that colours the files (its source and licence stand in it).
import text from "../../../src/stylobate/report/cet_d1a.txt?raw";
import * as THREE from "three";

export const COLOURS: number[][] = text
  .split("\n")
  .filter((line) => /^\d/.test(line))
  .map((line) => line.trim().split(/\s+/).map(Number));

export function paletteTexture(): THREE.DataTexture {
  const data = new Uint8Array(COLOURS.length * 4);
  COLOURS.forEach((colour, i) => data.set([...colour, 255], 4 * i));
  const texture = new THREE.DataTexture(data, COLOURS.length, 1);
  texture.magFilter = THREE.LinearFilter;
  texture.minFilter = THREE.LinearFilter;
  texture.needsUpdate = true;
  return texture;
}

export function drawLegend(canvas: HTMLCanvasElement): void {
  const context = canvas.getContext("2d");
  if (!context) return;
  canvas.width = COLOURS.length;
  canvas.height = 1;
  COLOURS.forEach(([r, g, b], i) => {
    context.fillStyle = `rgb(${r} ${g} ${b})`;
    context.fillRect(i, 0, 1, 1);
  });
}
