import { useEffect, useRef } from "preact/hooks";
import type { Answer, Budget, Result, Site, State } from "./api";
import { Parts } from "./after";
import { CaseSection, openWords } from "./case";
import { figure } from "./format";
import { Mark } from "./mark";
import { causeText, texts } from "./texts";

export interface SiteActions {
  choose: (site: string | null) => void;
  drop: (site: string) => void;
  part: (site: string, body: string) => void;
  settled: (answer: Answer) => void;
}

const GAP_PX = 12;
const FAR_LESS = 1e6; // times less likely: not worth a line

interface Props extends SiteActions {
  site: Site;
  result: Result;
  state: State;
  open: boolean;
}

export function SiteCard({ site, result, state, open, choose, drop, part, settled }: Props) {
  const { lead, because, remedy } = texts.reason(site);
  const held = state.case?.sites.find((item) => item.site === site.site);
  const head = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (open && head.current) toTop(head.current);
  }, [open]);
  return (
    <li class={`site ${open ? "open" : ""} is-${(site.verdict ?? "none").replaceAll(" ", "-")}`}>
      <h2>
        <button ref={head} type="button" class="site-head" aria-expanded={open} onClick={() => choose(open ? null : site.site)}>
          <Mark verdict={site.verdict} size={36} text={site.site} />
          <span class="sentence">
            <span class="visually-hidden">{texts.site(site.site)}: </span>
            <strong>{lead}{because ? ":" : ""}</strong> {because}
            {because && "."}
            {remedy && <span class="remedy"><b>{texts.doThis}</b> {remedy}</span>}
            {site.verdict === "use" && site.findings.length > 0 && <span class="remedy">{texts.seen(site.findings)}</span>}
            <span class="figures"><Bounds site={site} /></span>
            {state.case && <span class="still">{held && <b>{held.tooth}</b>} {openWords(held)}</span>}
          </span>
        </button>
      </h2>
      {open && <Evidence {...{ site, result, state, drop, part, settled }} />}
    </li>
  );
}

/** Scroll the list until the site stands at its top; on a narrow screen the page itself scrolls, as little as it must. */
function toTop(head: HTMLElement): void {
  const list = head.closest(".side");
  if (!list || list.scrollHeight <= list.clientHeight) return head.scrollIntoView({ block: "nearest" });
  list.scrollTop += head.getBoundingClientRect().top - list.getBoundingClientRect().top - GAP_PX;
}

function Bounds({ site }: { site: Site }) {
  const b = site.u95_total ?? site.u95;
  if (!b) return null;
  const t = texts.bounds;
  const turn = b.index_deg === null ? "" : `, ${t.index} ${b.any_turn ? t.anyTurn : `± ${figure(b.index_deg, 2)}°`}`;
  return (
    <>
      <span>{site.scan_body}</span>
      <span title={site.u95_total ? t.total : t.of}>
        {t.platform} ± {figure(b.platform_um, 0)} {t.um}, {t.axis} ± {figure(b.axis_deg, 2)}°{turn}
      </span>
    </>
  );
}

function Evidence({ site, result, state, drop, part, settled }: Omit<Props, "open" | "choose">) {
  const e = texts.evidence;
  const d = site.deviation;
  const others = site.alternatives.filter((other) => other.odds < FAR_LESS).sort((a, b) => a.odds - b.odds).slice(0, 4);
  return (
    <div class="evidence">
      {site.findings.length > 0 && (
        <section>
          <h3>{e.findings}</h3>
          <ul class="findings">
            {site.findings.map((finding) => (
              <li><strong>{causeText(finding)}.</strong> {finding.advice}</li>
            ))}
          </ul>
        </section>
      )}
      {state.case && <CaseSection site={site} state={state} settled={settled} />}
      <Parts site={site} state={state} settled={settled} />
      {d && (
        <section>
          <h3>{e.deviation}</h3>
          <dl class="numbers">
            <div><dt>{e.rms}</dt><dd>{figure(d.rms_um, 1)} <i>µm</i></dd></div>
            <div><dt>{e.mean}</dt><dd>{figure(d.mean_um, 1)} <i>µm</i></dd></div>
            <div><dt>{e.p95}</dt><dd>± {figure(d.p95_um, 0)} <i>µm</i></dd></div>
            {site.coverage !== null && <div><dt>{e.coverage}</dt><dd>{figure(100 * site.coverage, 0)} <i>%</i></dd></div>}
          </dl>
        </section>
      )}
      <section>
        <h3>{e.budget}</h3>
        <BudgetBars site={site} />
      </section>
      <Distances site={site} result={result} />
      {site.alternatives.length > 0 && (
        <section>
          <h3>{e.alternatives}</h3>
          <ul class="plain">
            {others.length === 0 && <li>{e.noAlternatives}</li>}
            {others.map((other) => (
              <li>{other.scan_body}{e.turned(other.turn_deg)}: {e.odds(other.odds)}</li>
            ))}
          </ul>
        </section>
      )}
      {!state.read_only && state.parts && (
        <section class="by-hand">
          <label>
            {texts.actions.part}
            <select
              value={site.scan_body} disabled={state.job !== null}
              onChange={(event) => part(site.site, event.currentTarget.value)}
            >
              {state.parts.bodies.map((body) => <option value={body.id}>{texts.siteOn(body.id, body.seats_on)}</option>)}
            </select>
          </label>
          <button type="button" class="quiet" disabled={state.job !== null} onClick={() => drop(site.site)}>{texts.actions.drop}</button>
        </section>
      )}
    </div>
  );
}

function BudgetBars({ site }: { site: Site }) {
  const e = texts.evidence;
  const t = texts.bounds;
  const total = site.u95_total;
  const list = (
    <dl class="numbers">
      {site.u95 && <div><dt>{t.of}</dt><dd>± {figure(site.u95.platform_um, 0)} <i>µm</i> · ± {figure(site.u95.axis_deg, 2)}<i>°</i></dd></div>}
      {total && <div><dt>{t.total}</dt><dd>± {figure(total.platform_um, 0)} <i>µm</i> · ± {figure(total.axis_deg, 2)}<i>°</i></dd></div>}
    </dl>
  );
  if (site.budget.length === 0) return <>{list}<p class="note">{e.noBudget}</p></>;
  const greatest = Math.max(...site.budget.map((row) => row.platform_um ?? 0), 1e-9);
  return (
    <>
      <p class="note">{e.budgetNote}</p>
      <table class="budget">
        <tbody>{site.budget.map((row) => <BudgetRow row={row} greatest={greatest} />)}</tbody>
      </table>
      {list}
    </>
  );
}

function BudgetRow({ row, greatest }: { row: Budget; greatest: number }) {
  const known = row.platform_um !== null;
  return (
    <tr class={known ? "" : "unknown"}>
      <th scope="row">{row.source}{row.origin && <small>{row.origin}</small>}</th>
      <td class="bar"><span style={{ width: known ? `${(100 * row.platform_um!) / greatest}%` : "100%" }} /></td>
      <td class="value">{known ? figure(row.platform_um, 1) : row.index_deg === null ? texts.evidence.noFigure : texts.evidence.turnOnly(row.index_deg)}</td>
    </tr>
  );
}

function Distances({ site, result }: { site: Site; result: Result }) {
  const pairs = result.pairs.filter((pair) => pair.sites.includes(site.site));
  if (pairs.length === 0) return null;
  return (
    <section>
      <h3>{texts.evidence.distances}</h3>
      <table class="pairs">
        <tbody>
          {pairs.map((pair) => (
            <tr>
              <th scope="row">{texts.site(pair.sites[0] === site.site ? pair.sites[1] : pair.sites[0])}</th>
              <td>{figure(pair.distance_mm, 3)} <i>mm</i></td>
              <td>± {figure(pair.u95_um, 0)} <i>µm</i></td>
              <td>{figure(pair.angle_deg, 2)}<i>°</i></td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
