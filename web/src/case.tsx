import { useState } from "preact/hooks";
import { ask, download, initials, type Answer, type CaseSite, type Check, type Site, type State } from "./api";
import { Beam, type Marks } from "./beam";
import { when } from "./format";
import { texts } from "./texts";

const QUADRANTS = [[18, 11, -1], [21, 28, 1], [38, 31, -1], [41, 48, 1]] as const;
const TEETH = QUADRANTS.map(([from, to, step]) =>
  Array.from({ length: 8 }, (_, i) => String(step > 0 ? from + i : from - i)).filter((n) => Number(n) >= Math.min(from, to)));

export function Initials() {
  const [value, setValue] = useState(initials.get());
  return (
    <label class={`initials ${value ? "" : "wanted"}`}>
      {texts.case.initials}
      <input
        type="text" size={5} maxLength={12} autocomplete="off" spellcheck={false} value={value}
        onKeyDown={(event) => { if (event.key === "Enter") event.currentTarget.blur(); }}
        onInput={(event) => { setValue(event.currentTarget.value.trim()); initials.set(event.currentTarget.value.trim()); }}
      />
    </label>
  );
}

/** How much is still open at a site of a case, in words; "" where nothing is. */
export function openWords(held: CaseSite | undefined): string {
  if (!held) return texts.case.noTooth;
  const missing = held.checks.filter((check) => !check.ok).length;
  if (held.released_by) return texts.case.released(held.released_by);
  return missing > 0 ? texts.case.checksOpen(missing) : texts.case.toRelease;
}

export function CaseSection({ site, state, settled }: { site: Site; state: State; settled: (answer: Answer) => void }) {
  const t = texts.case;
  const held = state.case?.sites.find((item) => item.site === site.site);
  const name = (tooth: string): void => void ask("case/tooth", { site: site.site, tooth }).then(settled);
  return (
    <section class="case-site">
      <label class="tooth">
        {t.tooth}
        <select value={held?.tooth ?? ""} onChange={(event) => name(event.currentTarget.value)}>
          <option value="">{t.toothNone}</option>
          {TEETH.map((teeth, k) => (
            <optgroup label={t.quadrants[k]!}>{teeth.map((tooth) => <option value={tooth}>{tooth}</option>)}</optgroup>
          ))}
        </select>
      </label>
      {held && (
        <>
          <h3>{t.checks}</h3>
          <ul class="checks-list">
            {held.checks.map((check) => <CheckRow key={`${held.tooth}-${check.kind}-${check.time}`} held={held} check={check} settled={settled} />)}
          </ul>
          <ReleaseRow held={held} site={site} settled={settled} />
        </>
      )}
    </section>
  );
}

function CheckRow({ held, check, settled }: { held: CaseSite; check: Check; settled: (answer: Answer) => void }) {
  const t = texts.case;
  const [value, setValue] = useState("");
  const [again, setAgain] = useState(false);
  const [marks, setMarks] = useState<Marks | null>(null);
  const wants = check.kind === "torque" || check.kind === "unit";
  const note = (ok: boolean): void => void ask("case/check", { tooth: held.tooth, kind: check.kind, ok, value, marks }).then(settled);
  const made = check.ok !== null;
  const target = check.kind === "torque" && held.torque_ncm ? t.target(held.torque_ncm[0], held.torque_ncm[1]) : "";
  return (
    <li class={check.ok ? "passed" : made ? "failed" : "missing"}>
      <p>
        <strong>{check.question}</strong>{target && <i> {target}</i>}
        <span class="made">{made ? `${check.ok ? t.passed : t.failed}${check.value ? `: ${check.value}` : ""} · ${check.by}, ${when(check.time)}` : t.missing}</span>
      </p>
      {made && !again ? (
        <button type="button" class="quiet small" onClick={() => setAgain(true)}>{t.again}</button>
      ) : (
        <>
        {check.kind === "radiograph" && <Beam tell={setMarks} />}
        <div class="row">
          {wants && (
            <input
              type="text" size={9} value={value} inputMode={check.kind === "torque" ? "decimal" : "text"}
              aria-label={check.kind === "torque" ? t.ncm : t.unit} placeholder={check.kind === "torque" ? "N·cm" : "AT-0042"}
              onInput={(event) => setValue(event.currentTarget.value)}
            />
          )}
          <button type="button" class="small" disabled={wants && !value.trim()} aria-label={`${check.question}: ${t.pass}`} onClick={() => note(true)}>{t.pass}</button>
          <button type="button" class="small quiet" aria-label={`${check.question}: ${t.fail}`} onClick={() => note(false)}>{t.fail}</button>
        </div>
        </>
      )}
    </li>
  );
}

function ReleaseRow({ held, site, settled }: { held: CaseSite; site: Site; settled: (answer: Answer) => void }) {
  const t = texts.case;
  const [reason, setReason] = useState("");
  const against = site.verdict !== "use" || held.checks.some((check) => !check.ok);
  const act = (withdraw: boolean): void => void ask("case/release", { tooth: held.tooth, reason, withdraw }).then(settled);
  if (held.released_by) {
    return (
      <div class="release done">
        <p><strong>{t.released(held.released_by)}</strong>, {when(held.released_at)}{held.reason && `: ${held.reason}`}</p>
        <button type="button" class="quiet small" onClick={() => act(true)}>{t.withdraw}</button>
      </div>
    );
  }
  return (
    <div class="release">
      {against && (
        <label>
          {t.reason(held.checks.filter((check) => !check.ok).length, site.verdict !== "use")}
          <input type="text" maxLength={2000} value={reason} onInput={(event) => setReason(event.currentTarget.value)} />
        </label>
      )}
      <button type="button" class={against ? "" : "primary"} disabled={against && reason.trim().length < 3} onClick={() => act(false)}>{t.release(held.tooth)}</button>
    </div>
  );
}

export function HandOver({ state, settled }: { state: State; settled: (answer: Answer) => void }) {
  const t = texts.case;
  const busy = state.job !== null;
  const open = state.case ? state.result!.sites.length - state.case.sites.filter((site) => site.released_by).length : 0;
  return (
    <section class="block hand-over">
      <h2>{t.handOver}</h2>
      {state.case && <p class="note">{open > 0 ? t.notReleased(open) : t.allReleased}</p>}
      <div class="row">
        <button type="button" disabled={busy} onClick={() => void download("report.pdf").then(settled)}>{t.report}</button>
        {state.case && <button type="button" class={open ? "" : "primary"} disabled={busy} onClick={() => void download("package.zip").then(settled)}>{t.package}</button>}
      </div>
    </section>
  );
}
