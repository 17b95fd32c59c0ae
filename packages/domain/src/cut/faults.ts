import type { Fault } from "../quantity/fault.ts";
import { fieldFaults, recordFaults } from "../quantity/field.ts";
import { EDGE_FIELDS } from "./edge.ts";
import { EVERY_CUT_FIELDS } from "./kind/define.ts";
import { type Cut, cutSummary } from "./kind/registry.ts";
import { WORK_FIELDS } from "./work.ts";
import { workFaults } from "./work-fit.ts";

/** Everything wrong with the fields of a cut, each by itself, then how it goes with its work. Pointers start at the cut. */
export function cutFaults(cut: Cut): Fault[] {
  if (cut.edges.length === 0) return [{ pointer: "/edges", code: "no-edges", values: {} }];
  const single = [
    ...cut.edges.flatMap((edge, index) => recordFaults(`/edges/${index}`, edge, EDGE_FIELDS, fieldFaults)),
    ...recordFaults("", cut, EVERY_CUT_FIELDS, fieldFaults),
    ...recordFaults("", cut, cutSummary(cut.kind).fields, fieldFaults),
    ...(cut.work === undefined ? [] : recordFaults("/work", cut.work, WORK_FIELDS, fieldFaults)),
  ];
  // How they go together means nothing while one of them is impossible by itself.
  return single.length > 0 ? single : [...workFaults(cut), ...bushingFaults(cut)];
}

/** A bushing and the guide that runs on it come together. */
function bushingFaults(cut: Cut): Fault[] {
  if (!("bushingDiameterMm" in cutSummary(cut.kind).fields) || cut.guide === undefined) return [];
  const isNamed = cut.guide === "template-and-bushing";
  if (isNamed === ("bushingDiameterMm" in cut && cut.bushingDiameterMm !== undefined)) return [];
  return isNamed
    ? [{ pointer: "/bushingDiameterMm", code: "bushing-not-given", values: {} }]
    : [{ pointer: "/guide", code: "unknown-choice", values: { names: ["template-and-bushing"] } }];
}
