import { threadId } from "node:worker_threads";
import { bundleService } from "../../services/shop/bundle.ts";

let bundled: Promise<string> | undefined;

/**
 * The service as one file, as it is built, and made once for all tests of a thread: starting it from its sources takes
 * five times as long.
 */
export function builtService(): Promise<string> {
  bundled ??= bundleService(`test-${threadId}.js`);
  return bundled;
}
