import { ask, type Answer, type Option, type Placed, type Site, type State } from "./api";
import { useAsked } from "./asked";
import { figure } from "./format";
import { texts } from "./texts";

const FIRST_OPTIONS = 5;

/** The parts of a site: what stands there, and what else could. */
export function Parts({ site, state, settled }: { site: Site; state: State; settled: (answer: Answer) => void }) {
  const t = texts.build;
  const { placement } = state;
  if (!placement) return null;
  const placed = placement.sites.find((item) => item.site === site.site);
  if (!placed) {
    return <section class="parts"><h3>{t.title}</h3><p>{site.verdict === "do not use" ? t.notBuilt : placement.refused}</p></section>;
  }
  return (
    <section class="parts">
      <h3>{t.title}</h3>
      <p>{placed.chain.length === 0 ? t.none : t.lead(named(placed.chain, placed), placed)}</p>
      {placed.chain.length > 0 && <Figures placed={placed} />}
      {placed.notes.length > 0 && <ul class="plain">{placed.notes.map((note) => <li>{note}</li>)}</ul>}
      {placement.refused && <p class="note">{t.left(placement.refused)}</p>}
      {placed.options.length > 1 && <Options placed={placed} state={state} settled={settled} />}
    </section>
  );
}

function Figures({ placed }: { placed: Placed }) {
  const t = texts.build;
  return (
    <dl class="numbers">
      <div><dt>{t.off}</dt><dd>{figure(placed.angle_to_aim_deg, 1)}<i>°</i></dd></div>
      {placed.tissue_least_mm !== null && placed.tissue_greatest_mm !== null && (
        <div><dt>{t.tissue}</dt><dd>{t.tissueOf(placed.tissue_least_mm, placed.tissue_greatest_mm)} <i>mm</i></dd></div>
      )}
      {placed.room_mm !== null && <div><dt>{t.room}</dt><dd>{figure(placed.room_mm, 1)} <i>mm</i></dd></div>}
    </dl>
  );
}

function Options({ placed, state, settled }: { placed: Placed; state: State; settled: (answer: Answer) => void }) {
  const t = texts.build;
  const name = `options-${placed.site}`;
  const [taken, choose] = useAsked(placed.chosen ? words(placed.chain) : "", state);
  const take = (option: Option): void => {
    const request = ask("site/chain", { site: placed.site, chain: option.chain });
    choose(words(option.chain), request);
    void request.then(settled);
  };
  const row = (option: Option) => (
    <li>
      <label class="option">
        <input
          type="radio" name={name} checked={words(option.chain) === taken} disabled={state.read_only || state.job !== null}
          onChange={() => take(option)}
        />
        <span>
          {named(option.chain, placed)}
          <small>{[t.leaves(option.angle_to_aim_deg), ...option.notes].join("; ")}</small>
        </span>
      </label>
    </li>
  );
  const rest = placed.options.slice(FIRST_OPTIONS);
  return (
    <fieldset class="options">
      <legend>{t.options}</legend>
      <ul class="plain">{placed.options.slice(0, FIRST_OPTIONS).map(row)}</ul>
      {rest.length > 0 && <details open={rest.some((option) => words(option.chain) === taken)}><summary>{t.more(rest.length)}</summary><ul class="plain">{rest.map(row)}</ul></details>}
    </fieldset>
  );
}

/** A chain in words; the lowest part's turn where the same parts could stand otherwise. */
function named(chain: { part: string; turn: number }[], placed: Placed): string {
  const ids = chain.map((step) => step.part).join();
  const several = placed.options.filter((option) => option.chain.map((step) => step.part).join() === ids).length > 1;
  return chain.map((step, k) => (several && k === 0 ? `${step.part} (${texts.build.turn(step.turn)})` : step.part)).join(" + ");
}

function words(chain: { part: string; turn: number }[]): string {
  return chain.map((step) => `${step.part}@${step.turn}`).join(",");
}

/** This scan against the one before, in a sentence. */
export function Against({ state }: { state: State }) {
  const { compared } = state;
  if (!compared) return null;
  return (
    <section class="block against" role="status">
      <h2>{texts.compared.title}</h2>
      <p>{texts.compared.lead(compared)}</p>
      {compared.moved.length > 0 && <p><b>{texts.doThis}</b> {texts.compared.moved}</p>}
    </section>
  );
}

/** How a frame over the sites would rest: the sentence, then the figures. */
export function FrameBlock({ state }: { state: State }) {
  const t = texts.frame;
  const { frame } = state;
  if (!frame) return null;
  const doubtful = state.result!.sites.filter((site) => site.verdict !== null && site.verdict !== "use").map((site) => site.site);
  return (
    <section class="block frame">
      <h2>{t.title}</h2>
      {!frame.refused && doubtful.length > 0 && <p class="doubtful"><strong>{t.doubtful(doubtful)}</strong></p>}
      <p><strong>{t.lead(frame)}</strong> {!frame.refused && t.cause(frame)}</p>
      {!frame.refused && (
        <>
          <table class="pairs">
            <thead><tr><th scope="col">{t.site}</th><th scope="col">{t.gap}</th><th scope="col">{t.side}</th><th scope="col">{t.worst}</th></tr></thead>
            <tbody>
              {frame.sites.map((site) => (
                <tr>
                  <th scope="row">{site.site}</th>
                  <td>{figure(site.gap_p95_um, 0)} <i>µm</i></td><td>{figure(site.side_p95_um, 0)} <i>µm</i></td>
                  <td>{figure(100 * (site.share_worst ?? 0), 0)} <i>%</i></td>
                </tr>
              ))}
              <tr><th scope="row">{t.largest}</th><td>{figure(frame.worst_gap_p95_um, 0)} <i>µm</i></td><td>{figure(frame.worst_side_p95_um, 0)} <i>µm</i></td><td /></tr>
            </tbody>
          </table>
          {state.placement?.path && <p>{t.path(state.placement)}</p>}
          <p class="note">{t.counted(frame.counted)} {frame.notes.join(" ")} {t.limits}</p>
        </>
      )}
    </section>
  );
}
