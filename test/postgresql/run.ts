import { spawn } from "node:child_process";
import { startServer } from "./server.ts";
import { SERVER } from "./shop-database.ts";

/** Tests of which every one asks the store or the service, whatever keeps it. */
const ON_BOTH = ["test/postgresql/", "services/shop/src/rooms/", "test/contract/"];

const asked = process.argv.slice(2);
try {
  const server = startServer();
  const words = ["run", "--config", "test/vitest.config.ts", ...(asked.length > 0 ? asked : ON_BOTH)];
  const tests = spawn("vitest", words, {
    cwd: new URL("../..", import.meta.url),
    env: { ...process.env, [SERVER]: server.url },
    stdio: "inherit",
  });
  tests.on("exit", (code) => {
    server.stop();
    process.exitCode = code ?? 1;
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
