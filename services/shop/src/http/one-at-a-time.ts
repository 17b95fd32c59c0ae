import type { ProblemCode } from "../problems/codes.ts";
import { Problem } from "../problems/problem.ts";

const RETRY_AFTER_S = "5";

/** Refuses a job while another runs, with a problem that says so. */
export function oneAtATime(
  code: ProblemCode,
  detail: string,
): <Value>(job: () => Promise<Value>) => Promise<Value> {
  let isRunning = false;
  return async (job) => {
    if (isRunning) throw new Problem(code, detail, { headers: { "Retry-After": RETRY_AFTER_S } });
    isRunning = true;
    try {
      return await job();
    } finally {
      isRunning = false;
    }
  };
}
