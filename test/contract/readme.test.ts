import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { openShop } from "./shop.ts";

const README = readFileSync(new URL("../../README.md", import.meta.url), "utf8");

describe("the README", () => {
  test("asks for a plan that the service gives", async () => {
    const [, body = ""] = /curl -s \S+\/v1\/plans\/preview[\s\S]*? -d '([\s\S]*?)'\n/.exec(README) ?? [];
    const { status, body: plan } = await (await openShop()).ask("POST", "/v1/plans/preview", {
      body: JSON.parse(body),
    });
    expect(status).toBe(200);
    expect(plan.verdict).toBe("run-with-care");
    expect(plan.passes.length).toBeGreaterThan(1);
  });

  test("names no client method that does not exist", async () => {
    const shop = await openShop();
    const document = (await shop.ask("GET", "/openapi.json", { key: null })).body;
    const tags = new Set(
      Object.values(document.paths).flatMap((path) =>
        Object.values(Object(path)).flatMap((operation) => Object(operation).tags),
      ),
    );
    const named = [...README.matchAll(/`client\.(\w+)/g)].map(([, resource]) => resource);
    expect(named.length).toBeGreaterThan(5);
    for (const resource of named) expect(tags, resource).toContain(resource);
  });
});
