import { useRef } from "preact/hooks";
import type { State, Work } from "./api";
import { Mark } from "./mark";
import { texts } from "./texts";

export interface OpenActions {
  file: (what: "scan" | "parts", file: File) => void;
  stop: () => void;
  dismiss: () => void;
  point: () => void;
  measure: (work: Work) => void;
  again: (() => void) | null;
}

interface Props extends OpenActions {
  state: State;
  pointing: boolean;
  note: string;
}

/** What is still open, most urgent first. */
export function Open(props: Props) {
  const { state, pointing, note } = props;
  const t = texts.open;
  const { job, refusal } = state;
  return (
    <div class="open-list">
      {refusal && (
        <div class="refusal" role="alert">
          <p>{refusal.text}</p>
          <div class="row">
            {props.again && refusal.about === "scan" && <button type="button" onClick={props.again}>{t.again}</button>}
            <button type="button" class="quiet" onClick={props.dismiss}>{t.dismiss}</button>
          </div>
        </div>
      )}
      {job && (
        <div class="job" role="status">
          <p><strong>{job.file}</strong><span>{texts.stage(job.stage, job.share)}</span></p>
          <progress max="1" value={job.share > 0 ? job.share : undefined} aria-label={texts.stage(job.stage, job.share)} />
          {!state.read_only && <button type="button" class="quiet" onClick={props.stop}>{t.stop}</button>}
        </div>
      )}
      {pointing && <p class="asking" role="status">{note || t.pointNow}</p>}
    </div>
  );
}

/** What can be given: parts, a scan, another one, a point. */
export function Ask({ state, file, point, measure, pointing }: Props) {
  const t = texts.open;
  if (!state.parts) return <Chooser big title={t.noParts} more={t.noPartsMore} button={t.chooseParts} accept=".zip" onFile={(f) => file("parts", f)} />;
  const scans = ".stl,.ply,.obj,.gz";
  if (!state.result) {
    return (
      <>
        <Chooser big title={t.noScan} more={t.noScanMore} button={t.choose} accept={scans} onFile={(f) => file("scan", f)} />
        {state.case ? state.scene && <button type="button" class="quiet" onClick={() => measure(state.work)}>{t.measureThis}</button> : <WorkChoice state={state} measure={measure} />}
      </>
    );
  }
  return (
    <div class="again">
      {!state.case && <WorkChoice state={state} measure={measure} />}
      <Chooser button={t.replace} accept={scans} onFile={(f) => file("scan", f)} />
      <button type="button" class="quiet" aria-pressed={pointing} onClick={point}>{t.missed}</button>
    </div>
  );
}

function WorkChoice({ state, measure }: { state: State; measure: (work: Work) => void }) {
  return (
    <fieldset class="work">
      <legend>{texts.workLabel}</legend>
      {(Object.keys(texts.work) as Work[]).map((work) => (
        <label><input type="radio" name="work" checked={state.work === work} onChange={() => measure(work)} /><span>{texts.work[work]}</span></label>
      ))}
    </fieldset>
  );
}

interface ChooserProps {
  big?: boolean;
  title?: string;
  more?: string;
  button: string;
  accept: string;
  onFile: (file: File) => void;
}

function Chooser({ big, title, more, button, accept, onFile }: ChooserProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class={big ? "chooser big" : "chooser"}>
      {title && <p class="chooser-title">{title}</p>}
      {more && <p>{more}</p>}
      <button type="button" class={big ? "primary" : "quiet"} data-choose onClick={() => input.current?.click()}>{button}</button>
      <input
        ref={input} type="file" accept={accept} hidden aria-label={button}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) onFile(file);
          event.currentTarget.value = "";
        }}
      />
    </div>
  );
}

export function Together({ state }: { state: State }) {
  const together = state.result?.together;
  if (!together) return null;
  return (
    <div class={`together is-${together.verdict.replaceAll(" ", "-")}`}>
      <Mark verdict={together.verdict} size={28} />
      <p><span class="eyebrow">{texts.together}</span><strong>{texts.verdict[together.verdict]}{together.because ? ":" : ""}</strong> {together.because}</p>
    </div>
  );
}
