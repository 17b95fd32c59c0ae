import { Problem } from "./problem.ts";

/** Seconds a caller is asked to wait when nothing better is known. */
const RETRY_AFTER_S = "1";

/** The 503 for what may well be answered when it is asked again. */
export function tryAgainShortly(code: "busy" | "took-too-long"): Problem {
  return new Problem(code, "Try again shortly.", { headers: { "Retry-After": RETRY_AFTER_S } });
}
