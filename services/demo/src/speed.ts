/** A speed as people say it: the mark and what it turns at. */
export function speedOf({
  dialMark,
  rpm,
}: {
  readonly dialMark: number | string | null;
  readonly rpm: number | null;
}): string {
  return rpm === null ? "do not run" : `mark ${dialMark}, ${rpm.toLocaleString("en")} rpm`;
}
