import { expect, test } from "vitest";
import { sourceFiles } from "./source-files.ts";

/** The one place where the defaults and what the shop tightens become the policy in force. */
const COMPOSED = "services/shop/src/policy/in-force.ts";

/** What gives a policy that no shop has tightened. */
const DEFAULTS = [
  /\bDEFAULT_POLICY\b/,
  /\bstrictestPolicy\b/,
  /\bpolicyInForce\(\s*\{\s*\}/,
  /\bRULES\b.*\bdefault\b/,
];

test("the service reaches no default policy but where the shop's is composed", () => {
  const files = sourceFiles([".ts"]).filter(
    ({ path }) =>
      path.startsWith("services/shop/src/") &&
      path.endsWith(".ts") &&
      !path.endsWith(".test.ts") &&
      path !== COMPOSED &&
      // What GET /v1/policy lists are the defaults themselves.
      !path.startsWith("services/shop/src/policy/"),
  );
  expect(files.length).toBeGreaterThan(100);
  const reached = files.flatMap(({ path, text }) =>
    DEFAULTS.filter((name) => name.test(text)).map((name) => `${path}: ${name}`),
  );
  expect(reached).toEqual([]);
});
