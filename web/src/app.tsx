import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { ask, listen, send, type Answer, type Link, type State, type What } from "./api";
import { Against, FrameBlock } from "./after";
import { HandOver, Initials } from "./case";
import { useKeys } from "./keys";
import { Around, Ask, Open, Together } from "./open";
import { Picture } from "./picture";
import { SiteCard } from "./site";
import { texts } from "./texts";
import { useTheme, type Theme } from "./theme";
import type { Arch, Look } from "./view/arch";

export function App() {
  const [state, setState] = useState<State | null>(null);
  const [link, setLink] = useState<Link>("waiting");
  useEffect(() => listen(setState, setLink), []);
  useEffect(() => {
    const about = state?.case?.code ?? state?.result?.scan_file;
    document.title = about ? `${about} · ${texts.title}` : texts.title;
  }, [state?.case?.code, state?.result?.scan_file]);
  if (!state) return <main class="waiting"><p role="status">{link === "lost" ? texts.lost : texts.connecting}</p></main>;
  return <Page state={state} link={link} />;
}

function Page({ state, link }: { state: State; link: Link }) {
  const [theme, dark, setTheme] = useTheme();
  const [chosen, setChosen] = useState<string | null>(null);
  const [look, setLook] = useState<Look>({ range: 50, coloured: true, unseen: true, parts: true, posts: true, cutTurn: null });
  const [pointing, setPointing] = useState(false);
  const [note, setNote] = useState("");
  const [dragging, setDragging] = useState(false);
  const [keys, setKeys] = useState(false);
  const [lastFile, setLastFile] = useState<File | null>(null);
  const arch = useRef<Arch | null>(null);
  const { result } = state;
  const names = result?.sites.map((site) => site.site) ?? [];
  useEffect(() => {
    setChosen((now) => (now !== null && !names.includes(now) ? null : now));
    setPointing(false);
  }, [result?.run]);
  const choose = useCallback((site: string | null) => {
    setChosen(site);
    if (site === null) setLook((now) => ({ ...now, cutTurn: null }));
  }, []);
  const settled = (answer: Answer): void => { if (answer.refusal) setNote(answer.refusal.text); };
  const file = (what: What, given: File): void => {
    if (what === "scan") setLastFile(given);
    void send(what, given).then(settled);
  };
  const drop = (given: File): void => file(given.name.toLowerCase().endsWith(".zip") ? "parts" : "scan", given);
  const pointed = (point: [number, number, number] | null): void => {
    if (!point) return setNote(texts.open.pointMiss);
    setPointing(false);
    setNote("");
    void ask("site/add", { point }).then(settled);
  };
  const point = (): void => { setNote(""); setPointing(!pointing); };
  useKeys({ arch, names, chosen, choose, look, setLook, pointing, setPointing, pointed, keys, setKeys, canPoint: !state.read_only });
  const measure = (work: State["work"]): Promise<Answer> => {
    const request = ask("measure", { work });
    void request.then(settled);
    return request;
  };
  const actions = {
    file, point, stop: () => void ask("stop"), dismiss: () => void ask("dismiss"),
    measure,
    again: lastFile ? () => void send("scan", lastFile, true).then(settled) : null,
  };
  return (
    <div
      class="page"
      onDragOver={(event) => { event.preventDefault(); setDragging(!state.read_only); }}
      onDragLeave={(event) => { if (event.relatedTarget === null) setDragging(false); }}
      onDrop={(event) => {
        event.preventDefault();
        setDragging(false);
        const given = event.dataTransfer?.files[0];
        if (given && !state.read_only) drop(given);
      }}
    >
      <a class="skip" href="#sites">{texts.skip}</a>
      <Header state={state} theme={theme} setTheme={setTheme} setKeys={setKeys} />
      {link === "lost" && <div class="lost" role="alert"><p>{texts.lost}</p><p>{texts.lostHow(state.folder)}</p></div>}
      <main>
        <Picture {...{ state, chosen, look, dark, pointing, setLook, choose, pointed }} hold={(held) => { arch.current = held; }} />
        <div class="side" id="sites" tabIndex={-1}>
          <Open {...actions} state={state} pointing={pointing} note={note} />
          {result && <Sites state={state} chosen={chosen} choose={choose} settled={settled} />}
          {!state.read_only && state.job === null && <Ask {...actions} state={state} pointing={pointing} note={note} />}
          {result && <Further state={state} settled={settled} file={file} look={(point) => { setChosen(null); arch.current?.lookAt(point); }} />}
          <p class="caution">{texts.caution}</p>
        </div>
      </main>
      {dragging && <div class="dropping"><p>{texts.open.dropNow}</p></div>}
      {keys && <Keys close={() => setKeys(false)} />}
    </div>
  );
}

function Sites({ state, chosen, choose, settled }: {
  state: State; chosen: string | null; choose: (site: string | null) => void; settled: (answer: Answer) => void;
}) {
  const result = state.result!;
  return (
    <>
      <header class="headline">
        <h1>{texts.headline(result.sites, result.together?.verdict ?? null)}</h1>
        <p>
          {!state.case && <>{result.scan_file} · </>}{texts.triangles(result.triangles)} · {result.parts_name}
          {result.work && <> · {texts.work[result.work as State["work"]] ?? result.work}</>}
        </p>
        {state.scene && !state.scene.whole && <p class="note">{texts.partial}</p>}
        {result.sites.length === 0 && <p>{texts.none}</p>}
      </header>
      {state.case?.remarks.map((line) => <p class="notice" role="status">{line}</p>)}
      <Against state={state} />
      <Together state={state} />
      <ol class="sites">
        {result.sites.map((site) => (
          <SiteCard
            key={site.site} settled={settled} site={site} result={result} state={state} open={chosen === site.site} choose={choose}
            drop={(name) => void ask("site/drop", { site: name }).then(settled)}
            part={(name, body) => void ask("site/part", { site: name, scan_body: body }).then(settled)}
          />
        ))}
      </ol>
    </>
  );
}

/** What follows from the sites as a whole, down to handing over. */
function Further({ state, settled, file, look }: {
  state: State; settled: (answer: Answer) => void; file: (what: What, file: File) => void;
  look: (point: [number, number, number]) => void;
}) {
  const result = state.result!;
  return (
    <>
      {result.warnings.length > 0 && (
        <section class="block">
          <h2>{texts.warnings}</h2>
          <ul class="plain">{result.warnings.map((line) => <Warning line={line} look={look} />)}</ul>
        </section>
      )}
      <Around state={state} file={file} settled={settled} />
      <FrameBlock state={state} />
      {result.not_shown.length > 0 && (
        <section class="block">
          <h2>{texts.notShown}</h2>
          <p class="note">{texts.notShownLead}</p>
          <dl class="checks">{result.not_shown.map((item) => <div><dt>{item.what}</dt><dd>{item.check}</dd></div>)}</dl>
        </section>
      )}
      <HandOver state={state} settled={settled} />
    </>
  );
}

const PLACE = /\((-?[\d.]+), (-?[\d.]+), (-?[\d.]+)\)/;

/** A remark about the scan; where it names a place, the picture can show it. */
function Warning({ line, look }: { line: string; look: (point: [number, number, number]) => void }) {
  const place = PLACE.exec(line);
  return (
    <li>
      {texts.capital(line)}
      {place && <> <button type="button" class="quiet small" onClick={() => look([Number(place[1]), Number(place[2]), Number(place[3])])}>{texts.showPlace}</button></>}
    </li>
  );
}

function Header({ state, theme, setTheme, setKeys }: {
  state: State; theme: Theme; setTheme: (theme: Theme) => void; setKeys: (open: boolean) => void;
}) {
  const say = (choice: State["undo"]): string => (choice ? (texts.choice[choice.kind]?.(choice.detail) ?? choice.kind) : "");
  return (
    <header class="bar">
      <p class="brand"><img src="/static/icon.svg" alt="" width="22" height="22" /> {texts.title}</p>
      {state.case && <p class="code">{texts.case.title(state.case.code)}</p>}
      <p class="place" title={state.folder}>
        {state.watch ? texts.watch(state.watch.folder, state.watch.last) : state.read_only ? texts.shownFrom(state.folder) : texts.kept(state.folder)}
      </p>
      {state.case && <Initials />}
      {!state.read_only && (
        <>
          <button type="button" disabled={!state.undo || state.job !== null} onClick={() => void ask("undo")}>
            {texts.undo}{state.undo && <small>{say(state.undo)}</small>}
          </button>
          <button type="button" disabled={!state.redo || state.job !== null} onClick={() => void ask("redo")}>
            {texts.redo}{state.redo && <small>{say(state.redo)}</small>}
          </button>
        </>
      )}
      <select aria-label={texts.theme.auto} value={theme} onChange={(event) => setTheme(event.currentTarget.value as Theme)}>
        <option value="auto">Auto</option>
        <option value="light">{texts.theme.light}</option>
        <option value="dark">{texts.theme.dark}</option>
      </select>
      <button type="button" onClick={() => setKeys(true)}>{texts.keys}</button>
    </header>
  );
}

function Keys({ close }: { close: () => void }) {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => box.current?.showModal(), []);
  return (
    <dialog ref={box} onClose={close} aria-labelledby="keys-title">
      <h2 id="keys-title">{texts.keys}</h2>
      <dl class="keys">{texts.keysList.map(([key, what]: [string, string]) => <div><dt><kbd>{key}</kbd></dt><dd>{what}</dd></div>)}</dl>
      <button type="button" class="primary" onClick={() => box.current?.close()}>{texts.close}</button>
    </dialog>
  );
}
