import type { ProblemCode } from "../problems/codes.ts";
import { Problem } from "../problems/problem.ts";
import { type Leases, whileLeased } from "../store/leases.ts";

const RETRY_AFTER_S = "5";

/** Refuses a job while another runs, in whichever process, with a problem that says so. The code names the lease. */
export function oneAtATime(
  leases: Leases,
  code: ProblemCode,
  detail: string,
): <Value>(job: () => Promise<Value>) => Promise<Value> {
  let isRunning = false;
  const running = () => new Problem(code, detail, { headers: { "Retry-After": RETRY_AFTER_S } });
  return async (job) => {
    if (isRunning) throw running();
    isRunning = true;
    try {
      const done = await whileLeased(leases, code, job);
      if (done === undefined) throw running();
      return done.value;
    } finally {
      isRunning = false;
    }
  };
}
