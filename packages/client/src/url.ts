import type { Operation, Query } from "./operation.ts";

/**
 * The path of an operation with its parameters in place. Rejects one that is empty, `.` or `..` with a TypeError: it would name another
 * path.
 */
export function pathOf({ path, pathParameters = {}, ids = [] }: Operation): string {
  const inOrder = ids.values();
  return path.replace(/\{(\w*)\}/g, (hole, name: string) =>
    segment(`${hole} of ${path}`, name === "" ? inOrder.next().value : pathParameters[name]),
  );
}

/** A query as the end of a URL. */
export function searchIn(query: Query = {}): string {
  const search = searchOf(query);
  return search && `?${search}`;
}

function segment(hole: string, value: string | undefined): string {
  const id = value ?? "";
  if (/^\.{0,2}$/.test(id)) throw new TypeError(`${hole} must be an id, not ${JSON.stringify(value)}.`);
  return encodeURIComponent(id);
}

/** Lists have commas between their items. */
function searchOf(query: Query): string {
  const search = new URLSearchParams();
  for (const [name, values] of Object.entries(query)) {
    if (values !== undefined) search.set(name, [values].flat().join());
  }
  return search.toString();
}

/** Throws a TypeError for a path that would lead out of the service, or hold a query. */
export function requirePath(path: string): void {
  const isWithin =
    /^\/[^?#\\\s]*$/.test(path) && !path.split("/").some((part) => /^(\.|%2e){1,2}$/i.test(part));
  if (!isWithin) {
    throw new TypeError(
      `path must be the API document's, such as "/v1/bits/{bitId}", not ${JSON.stringify(path)}.`,
    );
  }
}
