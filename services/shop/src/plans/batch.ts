import { setImmediate as nextTurn } from "node:timers/promises";
import type { ErrorObject } from "ajv";
import { fieldFaults } from "../problems/from-ajv.ts";
import { problemFrom } from "../problems/from-error.ts";
import { notValid, problemBody } from "../problems/problem.ts";
import type { PlanAnswer } from "./answer-schema.ts";
import type { PlanBatchAnswer } from "./batch-schema.ts";
import type { PlanRequest } from "./schema.ts";

/** Plans computed before other requests get a turn. */
const PLANS_PER_TURN = 25;

const AT_REQUEST = /^\/requests\/(\d+)(?=\/|$)/;

type Asked = { readonly requestId: string; readonly instance: string };
type Result = PlanBatchAnswer["results"][number];

/**
 * Each request's own plan or problem, in order: what is wrong with one changes nothing for the others. `errors` are those of the
 * whole body; what is wrong outside the requests refuses it whole.
 */
export async function planBatch(
  requests: readonly PlanRequest[],
  errors: readonly ErrorObject[],
  plan: (request: PlanRequest) => Promise<PlanAnswer>,
  { requestId, instance }: Asked,
): Promise<PlanBatchAnswer> {
  const wrong = errorsByRequest(errors);
  const results: Result[] = [];
  for (const [index, request] of requests.entries()) {
    if (index % PLANS_PER_TURN === 0) await nextTurn();
    try {
      refuse(wrong.get(index));
      results.push({ plan: await plan(request) });
    } catch (error) {
      const problem = problemFrom(error);
      if (problem.status >= 500) throw error;
      results.push({ problem: problemBody(problem, requestId, instance) });
    }
  }
  return { results };
}

function refuse(errors: readonly ErrorObject[] | undefined): void {
  if (errors !== undefined) throw notValid(fieldFaults(errors, "body"));
}

function errorsByRequest(errors: readonly ErrorObject[]): ReadonlyMap<number, ErrorObject[]> {
  const byRequest = new Map<number, ErrorObject[]>();
  for (const error of errors) {
    const [prefix, place] = AT_REQUEST.exec(error.instancePath) ?? [];
    if (prefix === undefined) throw notValid(fieldFaults(errors, "body"));
    const own = byRequest.get(Number(place)) ?? [];
    own.push({ ...error, instancePath: error.instancePath.slice(prefix.length) });
    byRequest.set(Number(place), own);
  }
  return byRequest;
}
