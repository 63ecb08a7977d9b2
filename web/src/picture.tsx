import { useEffect, useRef, useState } from "preact/hooks";
import type { State } from "./api";
import { Mark } from "./mark";
import { texts } from "./texts";
import { Arch, type Look, type Pin } from "./view/arch";
import { drawLegend } from "./view/palette";

interface Props {
  state: State;
  chosen: string | null;
  look: Look;
  dark: boolean;
  pointing: boolean;
  setLook: (look: Look) => void;
  choose: (site: string | null) => void;
  pointed: (point: [number, number, number] | null) => void;
  hold: (arch: Arch | null) => void;
}

const KEPT = "picture"; // in this browser: "full" or "reduced", where somebody has chosen

export function Picture(props: Props) {
  const { state, chosen, look, dark, pointing, choose, pointed } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const arch = useRef<Arch | null>(null);
  const [pins, setPins] = useState<Pin[]>([]);
  const [ready, setReady] = useState(true);
  const [broken, setBroken] = useState(false);
  const [reduced, setReduced] = useState<boolean | null>(null);
  const [share, setShare] = useState(1);
  useEffect(() => {
    try {
      arch.current = new Arch(canvas.current!, setPins, setReady, setShare);
      const asked = localStorage.getItem(KEPT);
      setReduced(asked ? asked === "reduced" : arch.current.weak());
      props.hold(arch.current);
      (window as unknown as { arch: Arch }).arch = arch.current;
    } catch {
      setBroken(true);
    }
  }, []);
  const { result, scene } = state;
  useEffect(() => {
    if (reduced === null) return;
    const stands = scene && result && (scene.paint || !scene.whole)
      ? result.sites.map((s) => ({ site: s.site, body: s.scan_body, pose: s.scan_from_connection }))
      : [];
    arch.current?.show(scene?.geometry ?? "", scene?.paint ?? "", stands, scene?.bodies ?? {}, reduced)
      .catch((error: unknown) => { if (!(error instanceof DOMException)) console.error(error); });
  }, [scene, result, reduced]);
  const reduce = (on: boolean): void => { localStorage.setItem(KEPT, on ? "reduced" : "full"); setReduced(on); };
  const { placement } = state;
  useEffect(() => {
    arch.current?.place(placement?.sites ?? [], placement?.surfaces ?? {})
      .catch((error: unknown) => { if (!(error instanceof DOMException)) console.error(error); });
  }, [placement, scene]);
  useEffect(() => arch.current?.choose(chosen), [chosen]);
  useEffect(() => arch.current?.set(look), [look]);
  useEffect(() => arch.current?.theme(dark), [dark]);

  const press = useRef<[number, number]>([0, 0]);
  const verdicts = new Map(result?.sites.map((site) => [site.site, site.verdict]));
  return (
    <section class={`picture ${pointing ? "pointing" : ""}`} aria-label={texts.picture}>
      <canvas
        ref={canvas} tabIndex={0} role="img" aria-label={texts.picture}
        onPointerDown={(event) => { press.current = [event.clientX, event.clientY]; }}
        onClick={(event) => {
          const [x, y] = press.current;
          if (pointing && Math.hypot(event.clientX - x, event.clientY - y) < 5) {
            pointed(arch.current?.pick(event.clientX, event.clientY) ?? null);
          }
        }}
      />
      {scene && pins.map((pin) => pin.shown && (
        <button
          type="button" key={pin.site} class={`pin ${pin.site === chosen ? "chosen" : ""}`}
          style={{ transform: `translate(${pin.x}px, ${pin.y}px)` }}
          aria-label={texts.actions.show(pin.site)} aria-pressed={pin.site === chosen}
          onClick={() => choose(pin.site === chosen ? null : pin.site)}
        >
          <Mark verdict={verdicts.get(pin.site) ?? null} size={34} text={pin.site} />
        </button>
      ))}
      {broken && <p class="overlay">{texts.noGl}</p>}
      {!broken && !ready && scene && <p class="overlay" role="status">{texts.loading}</p>}
      {result && !scene && !state.job && <p class="overlay">{texts.noSurface}</p>}
      {pointing && <div class="cross" aria-hidden="true" />}
      {scene && share < 1 && <p class="reduced">{texts.reduced(share)}</p>}
      {scene && <Instruments {...props} reduced={reduced === true} reduce={reduce} />}
    </section>
  );
}

const RANGES = [10, 20, 30, 50, 75, 100, 150, 200, 300, 500];

export function stepRange(range: number, by: number): number {
  const at = RANGES.reduce((best, value, i) => (Math.abs(value - range) < Math.abs(RANGES[best]! - range) ? i : best), 0);
  return RANGES[Math.min(RANGES.length - 1, Math.max(0, at + by))]!;
}

function Instruments({ state, chosen, look, setLook, choose, reduced, reduce }: Props & { reduced: boolean; reduce: (on: boolean) => void }) {
  const legend = useRef<HTMLCanvasElement>(null);
  const t = texts.actions;
  const painted = Boolean(state.scene?.paint) && state.result !== null;
  useEffect(() => { if (legend.current) drawLegend(legend.current); }, [painted]);
  const bodies = Object.keys(state.scene?.bodies ?? {}).length > 0;
  return (
    <>
      {chosen && (
        <div class="tools top">
          <button type="button" onClick={() => choose(null)}>{t.whole}</button>
          <button type="button" aria-pressed={look.cutTurn !== null} onClick={() => setLook({ ...look, cutTurn: look.cutTurn === null ? 0 : null })}>{t.section}</button>
          {look.cutTurn !== null && (
            <input
              type="range" min="0" max="360" step="5" aria-label={t.sectionTurn} value={Math.round((look.cutTurn * 180) / Math.PI)}
              onInput={(event) => setLook({ ...look, cutTurn: (Number(event.currentTarget.value) * Math.PI) / 180 })}
            />
          )}
        </div>
      )}
      {painted && (
        <div class="tools bottom">
          <div class="legend">
            <canvas ref={legend} aria-hidden="true" />
            <div class="ticks"><span>−{look.range}<small>{t.inside}</small></span><span>0</span><span>+{look.range} µm<small>{t.outside}</small></span></div>
          </div>
          <label class="range">
            <span class="visually-hidden">{t.range}</span>
            <input
              type="range" min="0" max={RANGES.length - 1} step="1" value={RANGES.indexOf(look.range)}
              aria-valuetext={t.rangeValue(look.range)}
              onInput={(event) => setLook({ ...look, range: RANGES[Number(event.currentTarget.value)]! })}
            />
          </label>
          <label class="tick"><input type="checkbox" checked={look.coloured} onChange={() => setLook({ ...look, coloured: !look.coloured })} /> {t.colours}</label>
          {(state.placement?.sites.length ?? 0) > 0 && <label class="tick"><input type="checkbox" checked={look.parts} onChange={() => setLook({ ...look, parts: !look.parts })} /> {texts.build.shown}</label>}
          {(state.placement?.sites.length ?? 0) > 0 && <label class="tick"><input type="checkbox" checked={look.posts} onChange={() => setLook({ ...look, posts: !look.posts })} /> {t.posts}</label>}
          {bodies && <label class="tick"><input type="checkbox" checked={look.unseen} onChange={() => setLook({ ...look, unseen: !look.unseen })} /> {t.unseen}</label>}
          <label class="tick"><input type="checkbox" checked={reduced} onChange={() => reduce(!reduced)} /> {t.reduced}</label>
        </div>
      )}
    </>
  );
}
