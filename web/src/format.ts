/** A number with a fixed count of digits and a true minus sign; a dash where it is not known. */
export function figure(value: number | null | undefined, digits: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return "–";
  return value.toFixed(digits).replace("-", "−");
}

/** A time of the log as the clock on the wall shows it: 2026-11-29 08:15. */
export function when(utc: string): string {
  const time = new Date(utc);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())} ${two(time.getHours())}:${two(time.getMinutes())}`;
}
