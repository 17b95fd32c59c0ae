import { hash } from "node:crypto";
import {
  type Bit,
  bitFaults,
  ENGINE_VERSION,
  makePlan,
  type PlanInput,
  RULE_NAMES,
  RULES,
  strictestPolicy,
  usualCut,
  WOODS,
} from "@rimwise/domain";
import { expect, test } from "vitest";
import { INDEX_AND_ENGINE } from "../../services/shop/src/bits/index-version.ts";
import { columnsUnder } from "../../services/shop/src/bits/query-columns.ts";
import type { BitRecord } from "../../services/shop/src/bits/schema.ts";
import { EXAMPLE_FORMS, nameOf } from "../reference/example-forms.ts";
import { DERIVED } from "./derived-digests.ts";

const BITS: readonly Bit[] = EXAMPLE_FORMS.flatMap((form) =>
  [12.7, 6.35].map((shankDiameterMm) => ({ form, shankDiameterMm, wings: 2 })),
).filter((bit) => bitFaults(bit).length === 0);

const ROUTERS: readonly PlanInput["router"][] = [
  { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 5 }, steps: 2 }, inputPowerW: 2200 },
  {
    minRpm: 10_000,
    maxRpm: 22_000,
    dial: { marks: { first: "A", last: "F" }, readings: [{ mark: "B", rpm: 12_000 }] },
    colletDiametersMm: [12.7],
  },
  { minRpm: 23_000, maxRpm: 23_000 },
];

const POLICIES = [
  strictestPolicy(),
  strictestPolicy(
    Object.fromEntries(RULE_NAMES.map((name) => [name, (RULES[name].default + strictest(name)) / 2])),
  ),
];

function strictest(name: (typeof RULE_NAMES)[number]): number {
  return RULES[name].stricter === "lower" ? RULES[name].min : RULES[name].max;
}

/** Twelve digits of every number: the last ones are the machine's own. */
function digestOf(values: readonly unknown[]): string {
  const text = JSON.stringify(values, (_, value) =>
    typeof value === "number" && !Number.isInteger(value) ? Number(value.toPrecision(12)) : value,
  );
  return `sha256:${hash("sha256", text)}`;
}

function plans(): unknown[] {
  const [wood, other] = WOODS;
  if (wood === undefined || other === undefined) throw new Error("no woods");
  return BITS.flatMap((bit) =>
    ROUTERS.flatMap((router) =>
      POLICIES.flatMap((policy) =>
        (["table", "handheld"] as const).map((mounting) =>
          planOrFaults({
            bit,
            router,
            mounting,
            wood: mounting === "table" ? wood : other,
            cut: usualCut(bit),
            policy,
          }),
        ),
      ),
    ),
  );
}

function planOrFaults(input: PlanInput): unknown {
  try {
    return makePlan(input);
  } catch (error) {
    return String(error);
  }
}

function columns(): unknown[] {
  return BITS.flatMap((bit) => POLICIES.map((policy) => columnsUnder(recordOf(bit), policy)));
}

function recordOf(bit: Bit): BitRecord {
  return {
    ...bit,
    id: "bit_1",
    name: nameOf(bit.form),
    notes: "Upper drawer; lent to the évening class",
    toothMaterial: "carbide-tipped",
    state: "in-rack",
    homePlaceId: "place_1",
    used: { uses: 1, metres: 2, minutes: 3, metresSinceInspection: 2, equivalentMetresSinceSharpening: 2 },
    version: 1,
    createdAt: "2026-03-02T08:00:00.000Z",
    updatedAt: "2026-03-02T08:00:00.000Z",
  };
}

// A failure says: what is derived has changed, so raise its version, and add a line with the new digest. Never change a line.
test.each([
  ["engine", ENGINE_VERSION, plans],
  ["index", INDEX_AND_ENGINE, columns],
] as const)("what the %s derives is what its version %s derived before", (name, version, derived) => {
  const lines = DERIVED[name];
  expect(new Set(lines.map((line) => line.version)).size).toBe(lines.length);
  expect(lines.at(-1)).toEqual({ version, digest: digestOf(derived()) });
});
