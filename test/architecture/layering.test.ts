import { describe, expect, it } from "vitest";
import { importCycles } from "./cycles.ts";
import { layerFaults } from "./layers.ts";
import { sourceFiles } from "./source-files.ts";

describe("imports point one way", () => {
  const files = sourceFiles([".ts"]);

  it("in the domain, the drawings, the client, the service and the demonstration", () => {
    expect(layerFaults(files)).toEqual([]);
  });

  it("and every one of them was looked at", () => {
    for (const room of [
      "packages/domain/src/plan/",
      "packages/drawing/src/svg/",
      "packages/client/src/",
      "services/shop/src/store/",
    ]) {
      expect(
        files.some(({ path }) => path.startsWith(room)),
        room,
      ).toBe(true);
    }
  });
});

describe("no file imports itself by way of others", () => {
  const files = sourceFiles([".ts"]);

  it.each([
    "packages/domain/",
    "packages/drawing/",
    "packages/client/",
    "services/shop/",
    "services/demo/",
    "test/",
  ])("in %s", (home) => {
    const own = files.filter(({ path }) => path.startsWith(home));
    expect(own.length).toBeGreaterThan(0);
    expect(importCycles(own)).toEqual([]);
  });

  it("and such a circle is found, of types too, by its shortest way", () => {
    const circle = [
      { path: "x/a.ts", text: 'import { b } from "./b.ts";\nimport { c } from "./y/c.ts";' },
      { path: "x/b.ts", text: 'import { d } from "./d.ts";' },
      { path: "x/y/c.ts", text: 'import type { A } from "../a.ts";' },
      { path: "x/d.ts", text: 'export { a } from "./a.ts";\nimport "./outside.ts";' },
    ];
    expect(importCycles(circle)).toEqual(["x/a.ts → x/y/c.ts → x/a.ts", "x/b.ts → x/d.ts → x/a.ts → x/b.ts"]);
    expect(importCycles(circle.slice(1))).toEqual([]);
    expect(importCycles([{ path: "x/a.ts", text: 'import "./a.ts";' }])).toEqual(["x/a.ts → x/a.ts"]);
  });
});

describe("the fence finds", () => {
  it.each([
    ["an upward import", "packages/domain/src/bit/x.ts", 'import { makePlan } from "../plan/make-plan.ts";'],
    [
      "an upward import of a type",
      "packages/domain/src/quantity/x.ts",
      'import type { Bit } from "../bit/bit.ts";',
    ],
    ["an upward re-export", "packages/domain/src/wood/x.ts", 'export { feedFor } from "../cut/feed.ts";'],
    ["an upward import by call", "packages/domain/src/cut/x.ts", 'const x = import("../plan/plan.ts");'],
    [
      "an upward import in a type",
      "packages/domain/src/cut/x.ts",
      'type X = import("../plan/plan.ts").Plan;',
    ],
    [
      "wording that computes",
      "packages/domain/src/wording/x.ts",
      'import { makePlan } from "../plan/make-plan.ts";',
    ],
    [
      "a room nobody knows",
      "packages/domain/src/misc/x.ts",
      'import { MM_PER_INCH } from "../quantity/units.ts";',
    ],
    [
      "a plan imported from a room",
      "packages/domain/src/limit/x.ts",
      'import type { Plan } from "../plan/plan.ts";',
    ],
    ["a library in the domain", "packages/domain/src/wood/x.ts", 'import fc from "fast-check";'],
    [
      "the platform in the domain",
      "packages/domain/src/wood/x.ts",
      'import { readFileSync } from "node:fs";',
    ],
    [
      "the service in the domain",
      "packages/domain/src/wood/x.ts",
      'import { buildApp } from "@rimwise/shop";',
    ],
    ["a drawing in the domain", "packages/domain/src/bit/x.ts", 'import { svg } from "@rimwise/drawing";'],
    ["a library in a drawing", "packages/drawing/src/svg/x.ts", 'import { create } from "fontkit";'],
    ["a file in a drawing", "packages/drawing/src/font/x.ts", 'import { readFileSync } from "node:fs";'],
    ["the service in a drawing", "packages/drawing/src/x.ts", 'import { buildApp } from "@rimwise/shop";'],
    ["a way out of the domain", "packages/domain/src/wood/x.ts", 'import "../../../client/src/index.ts";'],
    ["the domain in the client", "packages/client/src/x.ts", 'import type { Bit } from "@rimwise/domain";'],
    ["a library in the client", "packages/client/src/x.ts", 'import ky from "ky";'],
    [
      "the client in the service",
      "services/shop/src/bits/x.ts",
      'import { createClient } from "@rimwise/client";',
    ],
    [
      "a reach into the domain",
      "services/shop/src/x.ts",
      'import "../../../packages/domain/src/bit/bit.ts";',
    ],
    [
      "the service in the demonstration",
      "services/demo/src/x.ts",
      'import { buildApp } from "@rimwise/shop";',
    ],
    ["SQL in a route", "services/shop/src/bits/routes.ts", 'import { eq } from "drizzle-orm";'],
    ["SQL by the driver", "services/shop/src/app.ts", 'import Database from "better-sqlite3";'],
    ["the environment read elsewhere", "services/shop/src/app.ts", "const port = process.env.PORT;"],
    ["an async transaction", "services/shop/src/store/x.ts", "db.transaction(async (tx) => { await tx; });"],
    [
      "an async transaction function",
      "services/shop/src/store/x.ts",
      "db.transaction(async function () {});",
    ],
  ])("%s", (_what, path, text) => {
    expect(layerFaults([{ path, text }])).toHaveLength(1);
  });

  it.each([
    ["a room below", "packages/domain/src/plan/x.ts", 'import { feedFor } from "../cut/feed.ts";'],
    ["its own room", "packages/domain/src/cut/x.ts", 'import { feedFor } from "./feed.ts";'],
    [
      "types, for wording",
      "packages/domain/src/wording/x.ts",
      'import { type Plan } from "../plan/plan.ts";',
    ],
    [
      "everything, for the door",
      "packages/domain/src/index.ts",
      'export { makePlan } from "./plan/make-plan.ts";',
    ],
    [
      "anything, for a test",
      "packages/domain/src/bit/x.test.ts",
      'import { makePlan } from "../plan/make-plan.ts";',
    ],
    ["the domain, for the service", "services/shop/src/x.ts", 'import { makePlan } from "@rimwise/domain";'],
    ["the domain, for a drawing", "packages/drawing/src/x.ts", 'import { showIn } from "@rimwise/domain";'],
    ["a drawing, for the service", "services/shop/src/x.ts", 'import { svg } from "@rimwise/drawing";'],
    ["SQL, for reads", "services/shop/src/bits/reads.ts", 'import { eq } from "drizzle-orm";'],
    [
      "SQL, for the store",
      "services/shop/src/store/tables.ts",
      'import { text } from "drizzle-orm/sqlite-core";',
    ],
    ["the environment, for config", "services/shop/src/config.ts", "const read = () => process.env;"],
    [
      "the environment handed on, for the demonstration",
      "services/demo/src/x.ts",
      "const env = { ...process.env };",
    ],
    ["a transaction, not async", "services/shop/src/store/x.ts", "db.transaction((tx) => tx.run());"],
  ])("nothing against %s", (_what, path, text) => {
    expect(layerFaults([{ path, text }])).toEqual([]);
  });
});
