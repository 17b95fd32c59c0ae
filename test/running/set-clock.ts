import { readFileSync } from "node:fs";

/**
 * Loaded before the service with `--import`: a wall clock that a test can set, since no test may set the machine's. On SIGWINCH it
 * is as many milliseconds ahead of the true one as the file named by CLOCK_FILE says.
 */
const trueNow = Date.now;
let aheadMs = 0;

process.on("SIGWINCH", () => {
  aheadMs = Number(readFileSync(String(process.env["CLOCK_FILE"]), "utf8"));
  process.stderr.write(`clock ${aheadMs}\n`);
});

Date.now = () => trueNow() + aheadMs;
globalThis.Date = new Proxy(Date, {
  construct: (target, given) =>
    given.length === 0 ? new target(target.now()) : Reflect.construct(target, given),
});
