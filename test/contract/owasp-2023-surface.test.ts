import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { OPERATIONS, urlOf } from "./bodies.ts";
import { made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { openShop, type Shop } from "./shop.ts";

// The tests are named after the OWASP API Security Top 10, edition 2023: owasp.org/API-Security/editions/2023.

let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
}, 60_000);

const METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"] as const;
type Method = (typeof METHODS)[number];

const inject = (method: Method, url: string, headers: Record<string, string> = {}) =>
  shop.app.inject({ method, url, headers });
const ofManager = () => ({ authorization: `Bearer ${furnished.keys.manager}` });

describe("API8:2023 Security Misconfiguration", () => {
  test("every operation, answered or refused, carries the headers that say what browsers may not do", async () => {
    for (const operation of OPERATIONS.filter(({ isEndless }) => !isEndless)) {
      const url = urlOf(operation, furnished.ids);
      for (const headers of operation.method === "GET" ? [ofManager(), {}] : [{}]) {
        const answer = await inject(operation.method, url, headers);
        expect(answer.headers, `${operation.id} ${answer.statusCode}`).toMatchObject({
          "x-content-type-options": "nosniff",
          "referrer-policy": "no-referrer",
        });
        expect(answer.headers["content-security-policy"]).toMatch(/default-src 'none'|default-src 'self'/);
        expect(answer.headers["cache-control"], operation.id).toMatch(/no-store|no-cache|private/);
        for (const telling of ["server", "x-powered-by", "via"])
          expect(answer.headers[telling]).toBeUndefined();
      }
    }
  });

  test("pages of other origins may call nothing unless a setting says so", async () => {
    const origin = "https://elsewhere.example";
    for (const operation of OPERATIONS.filter(({ isEndless }) => !isEndless)) {
      const url = urlOf(operation, furnished.ids);
      const asked = { origin, "access-control-request-method": operation.method };
      for (const answer of [
        await inject("OPTIONS", url, asked),
        await inject(operation.method, url, { origin }),
      ]) {
        expect(Object.keys(answer.headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
      }
    }
  });

  test("a fault of the service's own shows nothing of its insides, in any operation", async () => {
    const own = await openShop();
    const inside = await furnish((path, body, key) => made(own, path, body, key));
    await behindTheService(own, async ({ tables, drop }) =>
      drop((await tables()).filter((name) => !["keys", "people"].includes(name))),
    );
    let faults = 0;
    const whole = OPERATIONS.filter(
      ({ id, method, isEndless }) => method === "GET" && !isEndless && id !== "exportBits",
    );
    for (const operation of whole) {
      const { statusCode, body } = await own.app.inject({
        url: urlOf(operation, inside.ids),
        headers: { authorization: `Bearer ${inside.keys.manager}` },
      });
      // That the service is not ready is what one of them is there to say.
      if (statusCode < 500 || operation.id === "getReadiness") continue;
      faults += 1;
      expect(JSON.parse(body).code, operation.id).toMatch(/^(internal|busy)$/);
      expect(body, operation.id).not.toMatch(
        /sqlite|no such table|postgres|relation "|\.ts\b|node_modules|\bat .*\(/i,
      );
    }
    expect(faults).toBeGreaterThan(30);
  });
});

describe("API9:2023 Improper Inventory Management", () => {
  /** What is served for people to look at, and so is no part of the API. */
  const PAGES = /^\/(pages\/[\w.]+|(bits|places|settings)\/:\w+)$/;

  /** The paths of the router's own tree: each line is a part under the line that is less indented. */
  function running(): string[] {
    const above: string[] = [];
    const lines = shop.app.printRoutes({ commonPrefix: false }).split("\n");
    return lines.flatMap((line) => {
      const [, indent = "", part = "", methods] = /^([│├└─\s]*)([^\s(]*)(?: \((.+)\))?$/.exec(line) ?? [];
      const depth = indent.length / 4;
      above.splice(depth - 1, above.length, part);
      const url = above.join("");
      return methods === undefined || PAGES.test(url) ? [] : [url];
    });
  }

  const ENDLESS = OPERATIONS.filter(({ isEndless }) => isEndless).map(({ path }) => path);
  const documented = new Map<string, Set<Method>>();
  for (const { path, method } of OPERATIONS) {
    const methods = documented.get(path) ?? new Set<Method>();
    documented.set(path, methods.add(method));
  }

  test("every path that runs is documented, and the other way round", () => {
    const paths = running().map((url) => url.replaceAll(/:(\w+)/g, "{$1}"));
    expect([...new Set(paths)].sort()).toEqual([...documented.keys()].sort());
  });

  test("every method that is not documented at a path is a 405 that says which are, and OPTIONS says so too", async () => {
    for (const [path, methods] of documented) {
      const url = path.replaceAll(/\{\w+\}/g, "none_0");
      for (const method of METHODS) {
        if (method === "GET" && ENDLESS.includes(path)) continue;
        const { statusCode, headers } = await inject(method, url, ofManager());
        const isOffered = methods.has(method) || (method === "HEAD" && methods.has("GET"));
        if (isOffered) {
          if (method !== "HEAD") expect(statusCode, `${method} ${url}`).not.toBe(405);
          continue;
        }
        expect(statusCode, `${method} ${url}`).toBe(method === "OPTIONS" ? 204 : 405);
        for (const each of methods) expect(headers["allow"]).toContain(each);
      }
    }
  });

  test("there is one version of the API, and what stands outside it is for operators, readers of signatures and whoever installs the client", () => {
    const outside = [...documented.keys()].filter((path) => !path.startsWith("/v1/"));
    expect(outside.sort()).toEqual([
      "/.well-known/jwks.json",
      "/client.tgz",
      "/livez",
      "/metrics",
      "/openapi.json",
      "/readyz",
      "/version",
    ]);
  });
});
