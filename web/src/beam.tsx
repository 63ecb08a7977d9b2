import { useEffect, useRef, useState } from "preact/hooks";
import { texts } from "./texts";

export interface Marks {
  length: number;
  ends: [number, number, number, number];
  pixel: number;
}

type Point = [number, number];
const STEP = 2;
const FAR = 20;
const CROSS = 9;

/** Two marked ends of a part in a radiograph: the server tells from them what the picture could show. */
export function Beam({ tell }: { tell: (marks: Marks | null) => void }) {
  const t = texts.beam;
  const [picture, setPicture] = useState<ImageBitmap | null>(null);
  const [broken, setBroken] = useState(false);
  const [ends, setEnds] = useState<Point[]>([]);
  const [length, setLength] = useState("");
  const [pixel, setPixel] = useState("");
  const choose = useRef<HTMLInputElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const cross = useRef<Point>([0, 0]);
  useEffect(() => {
    const [one, two] = ends;
    const [long, wide] = [length, pixel].map((text) => Number(text.replace(",", ".")));
    tell(one && two && long! > 0 && wide! > 0 ? { length: long!, ends: [...one, ...two], pixel: wide! } : null);
  }, [ends, length, pixel]);
  const paint = (): void => { if (canvas.current && picture) draw(canvas.current, picture, [...ends, cross.current]); };
  useEffect(paint, [picture, ends]);
  const read = (file: File): void => {
    createImageBitmap(file).then((found) => {
      cross.current = [found.width / 2, found.height / 2];
      setPicture(found);
      setEnds([]);
      setBroken(false);
    }, () => setBroken(true));
  };
  const mark = (): void => setEnds((now) => (now.length < 2 ? [...now, cross.current] : [cross.current]));
  const move = (event: KeyboardEvent): void => {
    const step = event.shiftKey ? FAR : STEP;
    const by: Record<string, Point> = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
    const way = by[event.key];
    if (!way && event.key !== "Enter") return;
    event.preventDefault();
    event.stopPropagation();
    if (!way) return mark();
    cross.current = [cross.current[0] + way[0], cross.current[1] + way[1]];
    paint();
  };
  return (
    <details class="beam">
      <summary>{t.title}</summary>
      <p class="note">{t.lead} {t.local}</p>
      <button type="button" class="small" onClick={() => choose.current?.click()}>{t.choose}</button>
      <input
        ref={choose} type="file" accept="image/*" hidden aria-label={t.choose}
        onChange={(event) => { const file = event.currentTarget.files?.[0]; if (file) read(file); }}
      />
      {broken && <p role="alert">{t.broken}</p>}
      {picture && (
        <>
          <p role="status">{[t.first, t.second, t.both][ends.length]}</p>
          <canvas
            ref={canvas} width={picture.width} height={picture.height} tabIndex={0} role="img" aria-label={t.picture} onKeyDown={move}
            onClick={(event) => {
              const box = event.currentTarget.getBoundingClientRect();
              const scale = picture.width / box.width;
              cross.current = [(event.clientX - box.left) * scale, (event.clientY - box.top) * scale];
              mark();
            }}
          />
          <label>{t.length} <input type="text" inputMode="decimal" size={7} value={length} onInput={(event) => setLength(event.currentTarget.value)} /></label>
          <label>{t.pixel} <input type="text" inputMode="decimal" size={7} value={pixel} onInput={(event) => setPixel(event.currentTarget.value)} /></label>
        </>
      )}
    </details>
  );
}

/** The picture, a cross at each mark, and the last one where the next mark would be set. */
function draw(canvas: HTMLCanvasElement, picture: ImageBitmap, points: Point[]): void {
  const pen = canvas.getContext("2d");
  if (!pen) return;
  pen.drawImage(picture, 0, 0);
  const size = (CROSS * picture.width) / Math.max(canvas.clientWidth, 1);
  for (const [colour, width] of [["#000", size / 2.5], ["#ffd166", size / 6]] as const) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    for (const [x, y] of points) {
      pen.moveTo(x - size, y);
      pen.lineTo(x + size, y);
      pen.moveTo(x, y - size);
      pen.lineTo(x, y + size);
    }
    pen.stroke();
  }
}
