import type { Turns } from "../http/turns.ts";
import type { Validator } from "../http/validation.ts";
import { fieldFaults } from "../problems/from-ajv.ts";
import { problemFrom } from "../problems/from-error.ts";
import { notValid, problemBody } from "../problems/problem.ts";
import type { PlanOrPartsResult } from "./batch-schema.ts";
import type { PlanOrParts } from "./parts.ts";
import type { PlanRequest } from "./schema.ts";

type Asked = { readonly requestId: string; readonly instance: string };

/** How a batch is computed. */
export type BatchWork = {
  /** What is wrong with one request by its schema; undefined if nothing is. */
  readonly faultsIn: Validator;
  readonly plan: (request: PlanRequest) => Promise<PlanOrParts>;
  /** Learns of a fault of the service's own. */
  readonly fault: (error: unknown) => void;
  readonly turns: Turns;
};

/**
 * Each request's own plan or problem, in order, as the JSON text of the whole answer in UTF-8: what is wrong with one changes nothing
 * for the others. It is written and encoded plan by plan, so that no moment of it is long.
 */
export async function planBatch(
  requests: readonly PlanRequest[],
  { faultsIn, plan, fault, turns }: BatchWork,
  { requestId, instance }: Asked,
): Promise<Buffer> {
  const pieces: Buffer[] = [];
  for (const request of requests) {
    await turns();
    const before = pieces.length === 0 ? '{"results":[' : ",";
    pieces.push(Buffer.from(before + JSON.stringify(await resultOf(request))));
  }
  pieces.push(Buffer.from(pieces.length === 0 ? '{"results":[]}' : "]}"));
  return Buffer.concat(pieces);

  async function resultOf(request: PlanRequest): Promise<PlanOrPartsResult> {
    try {
      const errors = faultsIn(request);
      if (errors !== undefined) throw notValid(fieldFaults(errors, "body"));
      return { outcome: "planned", plan: await plan(request) };
    } catch (error) {
      const problem = problemFrom(error);
      // A fault of the service's own in one is no reason to give up the others; what holds for all is.
      if (problem.status > 500) throw error;
      if (problem.status === 500) fault(error);
      return { outcome: "refused", problem: problemBody(problem, requestId, instance) };
    }
  }
}
