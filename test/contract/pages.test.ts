import { readdirSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addBit } from "./crib.ts";
import { openShop, type Shop } from "./shop.ts";

const SHELLS = ["/bits/bit_1", "/places/place_1", "/settings/approval_1"];

/** Every file there is: one that is served without being named here, or the other way round, fails. */
const FILES = readdirSync(new URL("../../services/shop/assets/", import.meta.url))
  .filter((name) => /\.(js|css)$/.test(name))
  .map((name) => `/pages/${name}`);

const TYPES: Readonly<Record<string, string>> = {
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
};

let shop: Shop;

beforeAll(async () => {
  shop = await openShop({}, undefined, (release) => afterAll(release));
});

describe("the pages", () => {
  test.each([...SHELLS, ...FILES])("%s allows nothing from elsewhere", async (url) => {
    const { statusCode, headers } = await shop.app.inject({ url });
    expect(statusCode).toBe(200);
    expect(headers["content-type"]).toBe(TYPES[url.split(".")[1] ?? ""] ?? "text/html; charset=utf-8");
    expect(String(headers["content-security-policy"]).split("; ").sort()).toEqual([
      "base-uri 'none'",
      "connect-src 'self'",
      "default-src 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
      "img-src 'self' blob:",
      "script-src 'self'",
      "style-src 'self'",
    ]);
    expect(headers).toMatchObject({
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cache-control": "no-cache",
    });
    expect(headers["set-cookie"]).toBeUndefined();
  });

  test("are the same bytes whatever they are asked for, by whom and with what in the rack", async () => {
    const { id } = await addBit(shop, { name: "Only in the records" });
    const headers = { authorization: `Bearer ${shop.managerKey}` };
    const answers = await Promise.all([
      ...[...SHELLS, `/bits/${id}`, "/bits/%3Cscript%3E"].map((url) => shop.app.inject({ url })),
      shop.app.inject({ url: `/bits/${id}`, headers }),
    ]);
    expect(new Set(answers.map(({ body }) => body)).size).toBe(1);
    expect(answers[0]?.body).not.toContain("Only in the records");
    expect(answers[0]?.body).not.toMatch(/<script>|style=| on[a-z]+=/);
  });

  test.each([
    "/pages/shell.html",
    "/pages/README.md",
    "/pages/",
    "/pages/..%2fpackage.json",
    "/pages/..%2F..%2Fpackage.json",
    "/pages/%2e%2e/package.json",
    "/pages/page.js%00",
    "/pages/x.js",
  ])("%s is no file of theirs", async (url) => {
    const { statusCode, body } = await shop.app.inject({ url });
    expect(statusCode).toBe(404);
    expect(JSON.parse(body).code).toBe("not-found");
  });

  test.each([...SHELLS, "/pages/page.js"])("%s takes nothing", async (url) => {
    const { statusCode, headers } = await shop.app.inject({ method: "POST", url, payload: {} });
    expect(statusCode).toBe(405);
    expect(headers["allow"]).toBe("GET, HEAD, OPTIONS");
  });

  test("stand in no description of the API", async () => {
    const { body } = await shop.ask("GET", "/openapi.json", { key: null });
    const paths = Object.keys(body.paths);
    expect(paths).toContain("/v1/bits/{bitId}/label");
    expect(paths.filter((path) => /^\/(bits|places|settings|pages)\b/.test(path))).toEqual([]);
  });
});
