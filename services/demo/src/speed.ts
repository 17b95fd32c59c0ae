/** A speed as people say it: the mark and what it turns at. */
export function speedOf({
  mark,
  rpm,
}: {
  readonly mark: number | string | null;
  readonly rpm: number | null;
}): string {
  return rpm === null ? "do not run" : `mark ${mark}, ${rpm.toLocaleString("en")} rpm`;
}
