import type { Verdict } from "./api";

/** The verdict as a shape, so that no colour is needed: disc with tick, octagon with bar, triangle with ?, open ring. */
export function Mark({ verdict, size = 28, text }: { verdict: Verdict | null; size?: number; text?: string }) {
  const kind = verdict ?? "none";
  return (
    <svg class={`mark mark-${kind.replaceAll(" ", "-")}`} width={size} height={size} viewBox="0 0 28 28" aria-hidden="true">
      {kind === "use" && <circle cx="14" cy="14" r="13" />}
      {kind === "do not use" && <path d="M8.6 1h10.8L27 8.6v10.8L19.4 27H8.6L1 19.4V8.6z" />}
      {kind === "undecided" && <path d="M14 1.5 27 25.5H1z" stroke-linejoin="round" />}
      {kind === "none" && <circle cx="14" cy="14" r="12" class="ring" />}
      {text !== undefined ? (
        <text x="14" y={kind === "undecided" ? 22.5 : 19} text-anchor="middle">{text}</text>
      ) : (
        <>
          {kind === "use" && <path class="sign" d="m7.5 14.5 4.5 4.5 8.5-9.5" />}
          {kind === "do not use" && <path class="sign" d="M7 14h14" />}
          {kind === "undecided" && <text x="14" y="22.5" text-anchor="middle">?</text>}
          {kind === "none" && <path class="sign" d="M9 14h.01M14 14h.01M19 14h.01" />}
        </>
      )}
    </svg>
  );
}
