import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["packages/**/*.test.ts", "services/**/*.test.ts", "test/**/*.test.ts"],
    setupFiles: ["test/quiet.ts"],
    testTimeout: 30_000,
  },
});
