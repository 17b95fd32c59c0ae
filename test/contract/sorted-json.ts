/** JSON with sorted members, as RFC 8785 writes plain ASCII names and these numbers. */
export function sortedJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(sortedJson).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const members = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${members.map(([name, each]) => `${JSON.stringify(name)}:${sortedJson(each)}`).join(",")}}`;
}
