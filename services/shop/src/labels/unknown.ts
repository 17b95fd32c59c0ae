import type { FieldFault } from "../problems/problem.ts";

/** What is wrong with an id of which there is no record. */
export function unknownIn(noun: string, path: string, id: string): FieldFault {
  const accepted = `ids that GET ${path} lists`;
  return { in: "query", pointer: "/ids", message: `There is no ${noun} ${id}.`, accepted };
}
