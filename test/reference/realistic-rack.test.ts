import {
  type Bit,
  DEFAULT_POLICY,
  type Mounting,
  makePlan,
  type Router,
  usualCut,
  woodById,
} from "@rimwise/domain";
import { expect, it } from "vitest";
import { EXAMPLE_FORMS } from "./example-forms.ts";

/** Above this, "with care" is said so often that nobody reads it. Ours. */
const SHARE_MAX = 0.35;

const WOODS = ["black-cherry", "white-oak", "sugar-pine", "plywood", "mdf"];

// A strong router in a table, and one that many hold in their hands. Common practice.
const SET_UPS: readonly (readonly [Mounting, Router])[] = [
  [
    "table",
    { minRpm: 8000, maxRpm: 22_000, dial: { marks: { first: 1, last: 6 }, steps: 2 }, inputPowerW: 2200 },
  ],
  [
    "handheld",
    { minRpm: 10_000, maxRpm: 24_000, dial: { marks: { first: 1, last: 6 }, steps: 2 }, inputPowerW: 1400 },
  ],
];

it("of the plans of a realistic rack that may run, fewer than a third ask for care", () => {
  const counts = { run: 0, "run-with-care": 0, "do-not-run": 0 };
  for (const form of EXAMPLE_FORMS) {
    const bit: Bit = { form, shankDiameterMm: 12.7, wings: 2, stickOutMm: 8, runOutMm: 0.03 };
    for (const [mounting, router] of SET_UPS) {
      for (const id of WOODS) {
        const wood = woodById(id);
        if (wood === undefined) throw new Error(`no wood ${id}`);
        const { verdict } = makePlan({
          bit,
          router,
          mounting,
          wood,
          cut: usualCut(bit),
          policy: DEFAULT_POLICY,
        });
        counts[verdict] += 1;
      }
    }
  }
  const runnable = counts.run + counts["run-with-care"];
  expect(runnable).toBeGreaterThan(EXAMPLE_FORMS.length * WOODS.length);
  expect(counts["run-with-care"] / runnable).toBeLessThan(SHARE_MAX);
});
