import { fileURLToPath } from "node:url";
import { setFlagsFromString } from "node:v8";
import { defineConfig } from "vitest/config";
import { sayWhatWasSkipped } from "./pages-skipped.ts";

// Half a minute of a run is the collection of what lived for one test; with more room for it that is done seldom.
setFlagsFromString("--min-semi-space-size=32");
setFlagsFromString("--max-semi-space-size=64");

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["packages/**/*.test.ts", "services/**/*.test.ts", "test/**/*.test.ts"],
    reporters: ["default", sayWhatWasSkipped],
    setupFiles: ["test/quiet.ts"],
    // Two threads that keep their modules: most of a file's time was to load them and to compile the service's validators.
    pool: "threads",
    isolate: false,
    maxWorkers: 3,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
