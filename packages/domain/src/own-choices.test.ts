import { describe, expect, it } from "vitest";
import {
  BIT_RANGES,
  CUTS,
  type DimensionSpec,
  EDGE_FIELDS,
  EDGES_RANGE,
  EVERY_CUT_FIELDS,
  type FieldSpec,
  FORMS,
  GIVEN_OUTLINE_RANGES,
  GIVEN_SEGMENT_RANGES,
  JOINT_RANGES,
  PANEL_RANGES,
  ROUTER_RANGES,
  RULE_NAMES,
  RULES,
  VIBRATION_RANGE,
  WEAR_RANGES,
  WORK_FIELDS,
} from "./index.ts";

type Ranges = Readonly<Record<string, { readonly min: number; readonly max: number }>>;

// No evidence for any of it: these are our own choices, and a change here is deliberate. What can be checked against something
// outside the project is checked elsewhere.
describe("our own choices", () => {
  it("are those of the list; after a deliberate change: vitest run --update", async () => {
    await expect(`${CHOICES.join("\n")}\n`).toMatchFileSnapshot("./own-choices.txt");
  });
});

const CHOICES: readonly string[] = [
  ...FORMS.flatMap(({ kind, dimensions, suits, alsoCalled, work, wingFillRatio }) => [
    `form ${kind}: suits ${suits.join(", ")}; ${work}; wings filled ${wingFillRatio}`,
    `form ${kind}: also called ${alsoCalled.join(", ")}`,
    ...fieldLines(`form ${kind}`, dimensions),
  ]),
  ...rangeLines("bit", BIT_RANGES),
  ...rangeLines("given outline", GIVEN_OUTLINE_RANGES),
  ...rangeLines("given segment", GIVEN_SEGMENT_RANGES),
  ...rangeLines("cut", { edges: EDGES_RANGE }),
  ...fieldLines("edge", EDGE_FIELDS),
  ...fieldLines("work", WORK_FIELDS),
  ...fieldLines("cut", EVERY_CUT_FIELDS),
  ...CUTS.flatMap(({ kind, fields, sides, needs }) => [
    `cut ${kind}: cut on ${sides} of 2 sides; needs ${needs?.code ?? "nothing"}`,
    ...fieldLines(`cut ${kind}`, fields),
  ]),
  ...rangeLines("router", ROUTER_RANGES),
  ...rangeLines("panel", PANEL_RANGES),
  ...rangeLines("joint", JOINT_RANGES),
  ...rangeLines("wear", WEAR_RANGES),
  ...rangeLines("trial", { vibrationMmPerS: VIBRATION_RANGE }),
  ...RULE_NAMES.map((name) => {
    const { default: value, min, max, stricter, source } = RULES[name];
    return `policy ${name}: ${value}, ${min} to ${max}, ${stricter} is stricter (${source})`;
  }),
];

function rangeLines(of: string, ranges: Ranges): string[] {
  return Object.entries(ranges).map(([name, { min, max }]) => `${of} ${name}: ${min} to ${max}`);
}

function fieldLines(of: string, fields: Readonly<Record<string, DimensionSpec | FieldSpec>>): string[] {
  return Object.entries(fields).map(
    ([name, spec]) => `${of} ${name}: ${accepted(spec)}${spec.optional ? ", or absent" : ""}`,
  );
}

function accepted(spec: DimensionSpec | FieldSpec): string {
  switch (spec.type) {
    case "measure":
      return `${spec.min} to ${spec.max}`;
    case "segments":
      return `1 to ${spec.most}`;
    case "choice":
      return spec.names.join(", ");
    case "flag":
      return "true, false";
  }
}
