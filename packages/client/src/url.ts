import type { Operation, Query } from "./operation.ts";

/** The URL of an operation. Rejects a path parameter that is empty, `.` or `..` with a TypeError: it would name another path. */
export function urlOf(baseUrl: string, { path, pathParameters = {}, ids = [], query }: Operation): string {
  const inOrder = ids.values();
  const filled = path.replace(/\{(\w+)\}/g, (_hole, name: string) =>
    segment(name, pathParameters[name] ?? inOrder.next().value),
  );
  const search = query === undefined ? "" : searchOf(query);
  return `${baseUrl}${filled}${search === "" ? "" : `?${search}`}`;
}

function segment(name: string, value: string | undefined): string {
  if (value === undefined || value === "" || value === "." || value === "..") {
    throw new TypeError(`${name} must be an id, not ${JSON.stringify(value)}.`);
  }
  return encodeURIComponent(value);
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
