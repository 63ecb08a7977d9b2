import { useEffect, useState } from "preact/hooks";

export type Theme = "auto" | "light" | "dark";

/** Theme chosen, whether it comes out dark, and the way to choose; kept in this browser. */
export function useTheme(): [Theme, boolean, (theme: Theme) => void] {
  const [theme, setTheme] = useState<Theme>((localStorage.getItem("theme") as Theme | null) ?? "auto");
  const query = matchMedia("(prefers-color-scheme: dark)");
  const [system, setSystem] = useState(query.matches);
  useEffect(() => {
    const follow = (): void => setSystem(query.matches);
    query.addEventListener("change", follow);
    return () => query.removeEventListener("change", follow);
  }, []);
  const dark = theme === "dark" || (theme === "auto" && system);
  useEffect(() => {
    document.documentElement.dataset.theme = dark ? "dark" : "light";
    localStorage.setItem("theme", theme);
  }, [dark, theme]);
  return [theme, dark, setTheme];
}
