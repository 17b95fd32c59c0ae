import { DEFAULT_POLICY, makePlan, type PlanInput, woodById } from "@rimwise/domain";
import { expect, test } from "vitest";
import { Problem } from "../problems/problem.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import { planBatch } from "./batch.ts";
import { presentPlan } from "./present.ts";
import type { PlanRequest } from "./schema.ts";
import { sealOf } from "./seal.ts";

const REQUEST: PlanRequest = {
  bit: {
    form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
    shankDiameterMm: 12.7,
    wings: 2,
  },
  router: { minRpm: 8000, maxRpm: 24_000, dial: { marks: { first: 1, last: 6 } } },
  mounting: "table",
  woodId: "black-cherry",
  cut: { kind: "groove", depthMm: 6, edges: [{ lengthMm: 600, grain: "long" }] },
};
const REQUESTS = [REQUEST, { ...REQUEST, woodId: "a wood with a slip" }, REQUEST];

function sound(): PlanAnswer {
  const wood = woodById("black-cherry");
  if (wood === undefined || !("form" in REQUEST.bit) || !("minRpm" in REQUEST.router))
    throw new Error("unsound");
  const { bit, router, mounting, cut } = REQUEST;
  const input: PlanInput = { bit, router, mounting, wood, cut, policy: DEFAULT_POLICY };
  return presentPlan(makePlan(input), wood, sealOf(input), undefined);
}

/** A batch whose plans are made by this. */
async function resultsOf(plan: (request: PlanRequest) => Promise<PlanAnswer>) {
  const faults: unknown[] = [];
  const fault = (error: unknown) => void faults.push(error);
  const work = { faultsIn: () => undefined, plan, fault, turns: async () => {} };
  const text = await planBatch(REQUESTS, work, { requestId: "r", instance: "/v1/plans/preview-batch" });
  return { faults, results: JSON.parse(text.toString()).results };
}

test("a fault of the service's own in one item is that item's problem, is noted, and spares the others", async () => {
  const { faults, results } = await resultsOf(async ({ woodId }) => {
    if (woodId !== REQUEST.woodId) throw new TypeError("a slip in the code");
    return sound();
  });
  const plan = { verdict: "run" };
  expect(results).toMatchObject([{ plan }, { problem: { status: 500, code: "internal" } }, { plan }]);
  expect(JSON.stringify(results)).not.toContain("slip in the code");
  expect(faults).toHaveLength(1);
});

test("what holds for all of them ends the batch", async () => {
  const busy = new Problem("busy", "Try again shortly.");
  expect(busy.status).toBeGreaterThan(500);
  await expect(resultsOf(() => Promise.reject(busy))).rejects.toBe(busy);
});
