import { useEffect, useRef, useState } from "preact/hooks";
import type { Answer, State } from "./api";

/** What somebody has just asked for, shown in place of what holds until the server has done or refused it. */
export function useAsked<T>(holds: T, state: State): [T, (wanted: T, request: Promise<Answer>) => void] {
  const [wanted, setWanted] = useState<{ value: T } | null>(null);
  const accepted = useRef(false);
  const latest = useRef(0);
  useEffect(() => {
    if (accepted.current && state.job === null) setWanted(null);
  }, [state]);
  const ask = (value: T, request: Promise<Answer>): void => {
    const mine = ++latest.current;
    accepted.current = false;
    setWanted({ value });
    void request.then((answer) => {
      if (mine !== latest.current) return; // something newer was asked for meanwhile
      accepted.current = answer.ok;
      if (!answer.ok) setWanted(null);
    });
  };
  return [wanted ? wanted.value : holds, ask];
}
