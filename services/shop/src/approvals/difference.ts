/** One place where two answers differ. A side that has nothing there is omitted. */
export type Differing = { readonly pointer: string; readonly before?: unknown; readonly after?: unknown };

/**
 * Every place where two JSON values differ, by JSON Pointer (RFC 6901), in order. Lists are compared place by place: what one
 * has beyond the other is on one side only.
 */
export function differencesBetween(before: unknown, after: unknown, pointer = ""): Differing[] {
  if (isTree(before) && isTree(after) && Array.isArray(before) === Array.isArray(after)) {
    const names = new Set([...Object.keys(before), ...Object.keys(after)]);
    return [...names].flatMap((name) =>
      differencesBetween(Reflect.get(before, name), Reflect.get(after, name), `${pointer}/${escaped(name)}`),
    );
  }
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  return [{ pointer, ...(before !== undefined && { before }), ...(after !== undefined && { after }) }];
}

function isTree(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

function escaped(name: string): string {
  return name.replaceAll("~", "~0").replaceAll("/", "~1");
}
