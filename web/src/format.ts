/** A number with a fixed count of digits and a true minus sign; a dash where it is not known. */
export function figure(value: number | null | undefined, digits: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return "–";
  return value.toFixed(digits).replace("-", "−");
}
