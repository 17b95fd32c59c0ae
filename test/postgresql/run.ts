import { spawn } from "node:child_process";
import { SERVER } from "../../services/shop/testing/database-under-test.ts";
import { startServer } from "./server.ts";

/** Tests of what asks the store or the service, whatever keeps it. */
const ON_BOTH = [
  "test/postgresql/",
  "test/engines/",
  "services/shop/src/rooms/",
  "services/shop/src/store/",
  "services/shop/src/bits/reads",
  "services/shop/src/events/reads",
  "test/contract/",
  "test/sdk/",
  "test/browser/",
  "test/crash/",
  "test/running/new-sealing-key",
  "test/fuzz/",
  "test/properties/folded",
  "test/properties/lapse",
  "test/simulation/",
  "test/upgrades/derive-again",
  "test/upgrades/older-plans",
];

const asked = process.argv.slice(2);
try {
  const server = startServer();
  const words = ["run", "--config", "test/vitest.config.ts", ...(asked.length > 0 ? asked : ON_BOTH)];
  const tests = spawn("vitest", words, {
    cwd: new URL("../..", import.meta.url),
    env: { ...process.env, [SERVER]: server.url },
    stdio: "inherit",
  });
  // Whoever ends this ends the tests, and then the server.
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => tests.kill(signal));
  tests.on("exit", (code) => {
    server.stop();
    process.exitCode = code ?? 1;
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
