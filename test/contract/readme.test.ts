import { readFileSync } from "node:fs";
import { createClient } from "@rimwise/client";
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

  test("names no client method that does not exist", () => {
    const client = createClient({ baseUrl: "http://shop.test", key: "none" });
    const methods = Object.entries(client).flatMap(([resource, own]) => [
      `client.${resource}`,
      ...Object.keys(own).map((method) => `client.${resource}.${method}`),
    ]);
    const named = namedIn(README);
    expect(named.length).toBeGreaterThan(30);
    for (const name of named) expect(methods).toContain(name);
  });

  test("such as one whose name is written wrong, also after another of the same resource", () => {
    expect(namedIn("`client.bits.lst`, `.remove`\nawait client.plans.preview(cut)")).toEqual([
      "client.bits.lst",
      "client.bits.remove",
      "client.plans.preview",
    ]);
  });
});

/** What of the client a text names: `client.bits.list`, also `.list` in backticks after another of its resource. */
function namedIn(text: string): string[] {
  const names: string[] = [];
  let resource = "";
  for (const [, whole, method] of text.matchAll(/((?<!\/)client(?:\.\w+){1,2})|`\.(\w+)[`(]/g)) {
    if (whole !== undefined) {
      resource = whole.split(".")[1] ?? "";
      names.push(whole);
    } else if (resource !== "") names.push(`client.${resource}.${method}`);
  }
  return names;
}
