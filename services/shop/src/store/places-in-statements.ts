import { is, Param, Placeholder } from "drizzle-orm";
import type { Values } from "./query.ts";
import type { Value } from "./values.ts";

/** What stands at one place of a statement, as a driver takes it: a given value by its name, or one that never changes. */
export function placeIn(param: unknown, driverValue: (value: Value) => unknown): (given: Values) => unknown {
  const place = is(param, Param) ? param.value : param;
  if (!is(place, Placeholder)) return () => param;
  const name: unknown = place.name;
  return (given) => driverValue(given[String(name)]);
}
