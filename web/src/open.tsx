import { useRef } from "preact/hooks";
import { ask, type Answer, type Role, type State, type What, type Work } from "./api";
import { useAsked } from "./asked";
import { Mark } from "./mark";
import { texts } from "./texts";

export interface OpenActions {
  file: (what: What, file: File) => void;
  stop: () => void;
  dismiss: () => void;
  point: () => void;
  measure: (work: Work) => Promise<Answer>;
  again: (() => void) | null;
}

const SCANS = ".stl,.ply,.obj,.gz";

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
      {state.notice && (
        <div class="notice" role="status">
          <p>{state.notice}</p>
          <button type="button" class="quiet small" onClick={props.dismiss}>{t.dismiss}</button>
        </div>
      )}
      {job && (
        <div class="job" role="status">
          {!state.result && <h1 class="visually-hidden">{texts.measuring}</h1>}
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
  if (!state.result) {
    return (
      <>
        <Chooser big title={t.noScan} more={t.noScanMore} button={t.choose} accept={SCANS} onFile={(f) => file("scan", f)} />
        {state.case ? state.scene && <button type="button" class="quiet" onClick={() => void measure(state.work)}>{t.measureThis}</button> : <WorkChoice state={state} measure={measure} />}
      </>
    );
  }
  return (
    <div class="again">
      {!state.case && <WorkChoice state={state} measure={measure} />}
      <Chooser button={t.replace} accept={SCANS} onFile={(f) => file("scan", f)} />
      <button type="button" class="quiet" aria-pressed={pointing} onClick={point}>{t.missed}</button>
    </div>
  );
}

const ROLES: Role[] = ["tissue", "opposing", "bite"];

/** The scans beside that of the bodies: which are here, how they are joined, and the way to give one. */
export function Around({ state, file, settled }: {
  state: State; file: (what: What, file: File) => void; settled: (answer: Answer) => void;
}) {
  const t = texts.around;
  const held = state.case?.around;
  if (!held || !state.result) return null;
  const busy = state.job !== null;
  const apart = held.some((one) => !one.joined && !one.as_it_lies);
  return (
    <section class="block around">
      <h2>{t.title}</h2>
      <ul class="plain">
        {ROLES.map((role) => {
          const one = held.find((item) => item.role === role);
          return (
            <li>
              <p><strong>{t.role[role]}</strong> <span>{one ? t.state(one) : t.what[role]}</span></p>
              {!busy && <Chooser small button={one ? t.other : t.choose} label={t.chooseFor(role)} accept={SCANS} onFile={(f) => file(role, f)} />}
            </li>
          );
        })}
      </ul>
      {apart && <button type="button" disabled={busy} onClick={() => void ask("join").then(settled)}>{t.join}</button>}
    </section>
  );
}

function WorkChoice({ state, measure }: { state: State; measure: (work: Work) => Promise<Answer> }) {
  const [shown, choose] = useAsked(state.work, state);
  return (
    <fieldset class="work">
      <legend>{texts.workLabel}</legend>
      {(Object.keys(texts.work) as Work[]).map((work) => (
        <label><input type="radio" name="work" checked={shown === work} onChange={() => choose(work, measure(work))} /><span>{texts.work[work]}</span></label>
      ))}
    </fieldset>
  );
}

interface ChooserProps {
  big?: boolean;
  small?: boolean;
  label?: string;
  title?: string;
  more?: string;
  button: string;
  accept: string;
  onFile: (file: File) => void;
}

function Chooser({ big, small, label, title, more, button, accept, onFile }: ChooserProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class={big ? "chooser big" : "chooser"}>
      {title && <h1 class="chooser-title">{title}</h1>}
      {more && <p>{more}</p>}
      <button type="button" class={big ? "primary" : small ? "quiet small" : "quiet"} aria-label={label} data-choose={small ? undefined : ""} onClick={() => input.current?.click()}>{button}</button>
      <input
        ref={input} type="file" accept={accept} hidden aria-label={label ?? button}
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
