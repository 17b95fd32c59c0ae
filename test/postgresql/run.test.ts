import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { exited, run } from "../running/service-process.ts";

const RUN = fileURLToPath(new URL("run.ts", import.meta.url));

test("where PostgreSQL cannot be found, the tests on it fail and say what to install", async () => {
  const child = run(["--conditions=source", "--import", "tsx", RUN], { POSTGRESQL_PATH: "/nowhere" });
  expect(await exited(child)).toBe(1);
  expect(child.err()).toMatch(
    /^PostgreSQL is not installed\. Install Debian's package \(apt-get install postgresql\)/,
  );
});
