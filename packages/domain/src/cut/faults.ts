import type { Fault } from "../quantity/fault.ts";
import { fieldFaults, recordFaults } from "../quantity/field.ts";
import { EDGE_FIELDS } from "./edge.ts";
import { EVERY_CUT_FIELDS } from "./kind/define.ts";
import { type Cut, cutSummary } from "./kind/registry.ts";

/** Everything wrong with the fields of a cut, each by itself. Pointers start at the cut. */
export function cutFaults(cut: Cut): Fault[] {
  if (cut.edges.length === 0) return [{ pointer: "/edges", code: "no-edges", values: {} }];
  return [
    ...cut.edges.flatMap((edge, index) => recordFaults(`/edges/${index}`, edge, EDGE_FIELDS, fieldFaults)),
    ...recordFaults("", cut, EVERY_CUT_FIELDS, fieldFaults),
    ...recordFaults("", cut, cutSummary(cut.kind).fields, fieldFaults),
  ];
}
