// The server: its state as a stream, and what can be asked of it.
import type { components } from "./api.d";

type Schemas = components["schemas"];
export type State = Schemas["State"];
export type Result = Schemas["ResultView"];
export type Site = Schemas["SiteView"];
export type Pair = Schemas["PairView"];
export type CaseSite = Schemas["CaseSiteView"];
export type Check = Schemas["CheckView"];
export type Budget = Schemas["BudgetView"];
export type Finding = Schemas["FindingView"];
export type Placed = Schemas["PlacedView"];
export type Placement = Schemas["PlacementView"];
export type Option = Schemas["OptionView"];
export type Frame = Schemas["FrameView"];
export type Compared = Schemas["ComparedView"];
export type Refusal = Schemas["RefusalView"];
export type Verdict = Schemas["TogetherView"]["verdict"];
export type Work = State["work"];
export type Link = "waiting" | "on" | "lost";

const LOST_AFTER_MS = 12_000;

/** Listen to the state; returns the way to stop. A connection that breaks is taken up again by itself. */
export function listen(onState: (state: State) => void, onLink: (link: Link) => void): () => void {
  const source = new EventSource("/api/stream");
  let timer = 0;
  const alive = (): void => {
    onLink("on");
    window.clearTimeout(timer);
    timer = window.setTimeout(() => onLink("lost"), LOST_AFTER_MS);
  };
  source.addEventListener("open", alive);
  source.addEventListener("here", alive);
  source.addEventListener("message", (event) => {
    alive();
    onState(JSON.parse(event.data as string) as State);
  });
  source.addEventListener("error", () => onLink("lost"));
  return () => {
    window.clearTimeout(timer);
    source.close();
  };
}

export interface Answer {
  ok: boolean;
  lost: boolean;
  refusal: Refusal | null;
}

async function answered(request: Promise<Response>): Promise<Answer> {
  try {
    const response = await request;
    if (response.ok) return { ok: true, lost: false, refusal: null };
    const body = (await response.json().catch(() => null)) as Refusal | null;
    return { ok: false, lost: false, refusal: body };
  } catch {
    return { ok: false, lost: true, refusal: null };
  }
}

/** Who works here: initials for a case's log, kept in this browser. */
export const initials = {
  get: (): string => localStorage.getItem("initials") ?? "",
  set: (value: string): void => localStorage.setItem("initials", value),
};

function signed(): Record<string, string> {
  return /^[\x21-\x7e]{1,12}$/.test(initials.get()) ? { "stylobate-initials": initials.get() } : {};
}

export function ask(path: string, body?: unknown): Promise<Answer> {
  const headers = { "content-type": "application/json", ...signed() };
  return answered(fetch(`/api/${path}`, { method: "POST", headers, body: body === undefined ? null : JSON.stringify(body) }));
}

export type What = Schemas["Offer"]["what"];
export type Around = Schemas["AroundView"];
export type Role = Schemas["AroundView"]["role"];

/** Ask first, so that a file too large, or one that comes too early, is refused before it is sent. */
export async function send(what: What, file: File, again = false): Promise<Answer> {
  const first = await ask("offer", { what, name: file.name, size: file.size });
  if (!first.ok) return first;
  const query = new URLSearchParams({ name: file.name, ...(again ? { again: "1" } : {}) });
  return answered(fetch(`/api/${what}?${query}`, { method: "PUT", body: file, headers: signed() }));
}

/** Have a file made, and hand it to the browser's downloads. */
export async function download(path: string): Promise<Answer> {
  const answer = fetch(`/api/${path}`);
  const result = await answered(answer.then((response) => response.clone()));
  if (!result.ok) return result;
  const response = await answer;
  const name = /filename="?([^";]+)/.exec(response.headers.get("content-disposition") ?? "")?.[1] ?? path;
  const link = document.createElement("a");
  link.href = URL.createObjectURL(await response.blob());
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  return result;
}
