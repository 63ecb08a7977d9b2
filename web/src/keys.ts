import { useEffect } from "preact/hooks";
import { ask } from "./api";
import { stepRange } from "./picture";
import type { Arch, Look } from "./view/arch";

interface Hands {
  arch: { current: Arch | null };
  names: string[];
  chosen: string | null;
  choose: (site: string | null) => void;
  look: Look;
  setLook: (look: Look) => void;
  pointing: boolean;
  setPointing: (on: boolean) => void;
  pointed: (point: [number, number, number] | null) => void;
  keys: boolean;
  setKeys: (open: boolean) => void;
  canPoint: boolean;
}

const TURN = Math.PI / 24;
const NEARER = 0.12;
const VIEW_KEYS: Record<string, [number, number, number]> = {
  ArrowLeft: [-TURN, 0, 0], ArrowRight: [TURN, 0, 0], ArrowUp: [0, -TURN, 0], ArrowDown: [0, TURN, 0],
  "+": [0, 0, NEARER], "=": [0, 0, NEARER], "-": [0, 0, -NEARER],
};

export function useKeys(hands: Hands): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || hands.keys) return;
      const target = event.target as HTMLElement;
      const view = VIEW_KEYS[event.key];
      if (target.tagName === "CANVAS" && view) {
        event.preventDefault();
        return hands.arch.current?.nudge(...view);
      }
      if (target.matches("select, textarea, input[type=text]") && event.key !== "Escape") return;
      if (event.key === "Enter" && target.tagName !== "CANVAS" && target !== document.body) return;
      if (act(event, hands)) event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  });
}

function act(event: KeyboardEvent, hands: Hands): boolean {
  const { names, chosen, choose, look, setLook } = hands;
  const at = chosen === null ? -1 : names.indexOf(chosen);
  const to = (index: number): void => choose(names[(index + names.length) % names.length] ?? null);
  const deeds: Record<string, () => void> = {
    "0": () => choose(null),
    n: () => to(at + 1),
    p: () => to(at < 0 ? names.length - 1 : at - 1),
    "[": () => setLook({ ...look, range: stepRange(look.range, -1) }),
    "]": () => setLook({ ...look, range: stepRange(look.range, +1) }),
    s: () => { if (chosen) setLook({ ...look, cutTurn: look.cutTurn === null ? 0 : null }); },
    h: () => setLook({ ...look, unseen: !look.unseen }),
    d: () => document.querySelector<HTMLButtonElement>("[data-choose]")?.click(),
    u: () => void ask("undo"),
    U: () => void ask("redo"),
    "?": () => hands.setKeys(true),
    Escape: () => { if (hands.pointing) hands.setPointing(false); else choose(null); },
  };
  if (/^[1-9]$/.test(event.key) && names[Number(event.key) - 1]) {
    to(Number(event.key) - 1);
    return true;
  }
  if (event.key === "Enter" && hands.pointing) {
    hands.pointed(middle(hands.arch.current));
    return true;
  }
  const deed = deeds[event.key] ?? (event.shiftKey ? undefined : deeds[event.key.toLowerCase()]);
  deed?.();
  return deed !== undefined;
}

function middle(arch: Arch | null): [number, number, number] | null {
  const box = document.querySelector("canvas")?.getBoundingClientRect();
  return box && arch ? arch.pick(box.left + box.width / 2, box.top + box.height / 2) : null;
}
