import { Problem } from "../problems/problem.ts";

const RETRY_AFTER_S = "5";

/**
 * Refuses a job while another runs. Two imports at once could be the same file twice, and each would hold up the other.
 */
export function oneAtATime(): <Value>(job: () => Promise<Value>) => Promise<Value> {
  let isRunning = false;
  return async (job) => {
    if (isRunning) {
      throw new Problem("import-running", "Send this file again when it has ended.", {
        headers: { "Retry-After": RETRY_AFTER_S },
      });
    }
    isRunning = true;
    try {
      return await job();
    } finally {
      isRunning = false;
    }
  };
}
